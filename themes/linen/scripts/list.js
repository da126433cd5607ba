/* The shopping list: patterns and numbers of pieces -> what they take together, beads summed by kind and colour.
   The list lies in this browser, or behind the `#` of an address that somebody shares. Beads are counted in
   whole numbers; grams, packs, lengths and prices follow from the sums, as for a single pattern. */
(function () {
  "use strict";
  const KEY = "sitegen:list", GRAMS_PER_OUNCE = 28.349523125, MM_PER_INCH = 25.4, root = document.documentElement;
  const page = document.querySelector(".made"), words = page.dataset;
  const known = JSON.parse(document.getElementById("list-data").textContent);
  const patterns = new Map(Object.entries(known.patterns)), is = named(page);
  const most = Number(model("list-pattern").querySelector("input").max);
  let shared = fromAddress(), own = stored(), before = null;

  function named(part) {
    return Object.fromEntries([...part.querySelectorAll("[data-is]")].map((one) => [one.dataset.is, one]));
  }
  function model(id) {
    return document.getElementById(id).content.firstElementChild.cloneNode(true);
  }
  function fill(text, values) {
    return text.replace(/\{(\w+)\}/g, (field, name) => (name in values ? values[name] : field));
  }

  /* The list itself: {name: pieces} */
  function whole(pieces) {
    return Math.min(Math.max(Math.round(pieces), 0) || 0, most);
  }
  function stored() {
    try { return Object.assign({}, JSON.parse(localStorage.getItem(KEY))); } catch (error) { return {}; }
  }
  function fromAddress() {
    const found = [...new URLSearchParams(location.hash.slice(1))].filter(([name]) => patterns.has(name));
    return found.length ? Object.fromEntries(found) : null;
  }
  function wanted() {
    const list = shared || own;
    return Object.keys(list).filter((name) => patterns.has(name) && whole(list[name]))
      .map((name) => ({ name, pieces: whole(list[name]), ...patterns.get(name) }));
  }
  function address() {
    return "#" + new URLSearchParams(wanted().map((one) => [one.name, one.pieces]));
  }
  function keep(list) {
    if (!shared) {
      own = list;
      try { localStorage.setItem(KEY, JSON.stringify(own)); return; } catch (error) { /* then in the address */ }
    }
    shared = list;
    history.replaceState(null, "", address());
  }

  /* Sums */
  function add(sums, counts, times) {
    for (const [kind, count] of Object.entries(counts)) sums[kind] = (sums[kind] || 0) + count * times;
  }
  function summed() {
    const counts = known.beads.map(() => 0), threads = {}, findings = {}, needles = new Set();
    for (const one of wanted()) {
      for (const [bead, each] of one.beads) counts[bead] += each * one.pieces;
      add(threads, one.threads, one.pieces);
      add(findings, one.findings, one.pieces);
      one.needles.forEach((needle) => needles.add(needle));
    }
    const beads = known.beads.map((bead, place) => bought(bead, counts[place])).filter((bead) => bead.count);
    return { beads, threads, findings, needles: [...needles] };
  }
  function bought(bead, count) {
    const grams = count / bead.per_gram;
    const packs = Math.ceil(Number((grams * (1 + known.spare) / bead.pack).toFixed(9)));
    return { ...bead, count, grams, packs, cost: "price" in bead ? packs * bead.price : null };
  }

  /* Numbers as the page's language writes them, as the pages of the patterns round them */
  function number(value, least, places) {
    const form = { minimumFractionDigits: least, maximumFractionDigits: places, useGrouping: false };
    return new Intl.NumberFormat(root.lang, { ...form, roundingMode: "halfEven" }).format(value);
  }
  function money(value) {
    return new Intl.NumberFormat(root.lang, { style: "currency", currency: known.currency }).format(value);
  }
  function weight(grams) {
    const ounces = grams / GRAMS_PER_OUNCE, places = grams >= 0.1 ? 1 : 2;
    const fine = ounces >= 0.1 ? 2 : 1 - Math.floor(Math.log10(ounces));
    return [fill(words.g, { value: number(grams, places, places) }), fill(words.oz, { value: number(ounces, 0, fine) })];
  }
  function length(mm) {
    const inches = Math.ceil(Number((mm / MM_PER_INCH).toFixed(6)));
    const feet = { feet: Math.floor(inches / 12), inches: inches % 12 };
    const imperial = inches < 12 ? fill(words.in, { value: inches }) : fill(words.ft, feet);
    return [fill(words.m, { value: number(mm / 1000, 2, 2) }), imperial];
  }
  function packed(bead) {
    return fill(words.packs, { count: bead.packs, grams: number(bead.pack, 0, 1) });
  }
  function asText([metric, imperial]) {
    return { metric, imperial }[root.dataset.units] || `${metric} (${imperial})`;
  }
  function asParts([metric, imperial]) {
    const [inMetric, inImperial] = ["metric", "imperial"].map((name) => {
      const part = document.createElement("span");
      part.className = name;
      return part;
    });
    const brackets = ["(", ")"].map((text) => Object.assign(document.createElement("span"), { textContent: text }));
    inMetric.textContent = metric;
    inImperial.append(brackets[0], imperial, brackets[1]);
    return [inMetric, " ", inImperial];
  }

  /* The page */
  function lines(target, texts) {
    target.replaceChildren(...texts.map((text) => {
      const line = document.createElement("div");
      line.append(...[].concat(text));
      return line;
    }));
  }
  function row(one) {
    const part = model("list-pattern"), link = part.querySelector("a"), input = part.querySelector("input");
    part.querySelector(".thumb").append(Object.assign(new Image(), { alt: "", loading: "lazy", src: one.picture }));
    link.href = one.href;
    link.textContent = one.title;
    if (one.language) link.lang = one.language;
    part.querySelector(".also").textContent = one.makes;
    input.value = one.pieces;
    input.setAttribute("aria-label", fill(words.piecesOf, one));
    input.addEventListener("input", () => {
      if (!whole(input.value)) return;
      keep({ ...(shared || own), [one.name]: whole(input.value) });
      showSums();
    });
    input.addEventListener("change", () => { input.value = whole((shared || own)[one.name]); });
    part.querySelector("button").setAttribute("aria-label", fill(words.offOf, one));
    part.querySelector("button").addEventListener("click", () => {
      const { [one.name]: gone, ...rest } = shared || own;
      takeOff(rest, fill(words.takenOff, one));
    });
    return part;
  }
  function takeOff(rest, said) {
    before = { ...(shared || own) };
    keep(rest);
    show();
    is.status.textContent = said;
    is.said.hidden = false;
    is.back.focus();
  }
  function beadRow(bead) {
    const part = model("list-bead"), cells = named(part);
    part.querySelector(".swatch").style.backgroundColor = bead.hex;
    cells.name.textContent = bead.name;
    cells.kind.textContent = bead.kind;
    cells.count.textContent = bead.count;
    cells.grams.append(...asParts(weight(bead.grams)));
    cells.packs.textContent = packed(bead);
    if (bead.cost !== null) cells.price.textContent = money(bead.cost);
    return part;
  }
  function estimate(beads) {
    const priced = beads.filter((bead) => bead.cost !== null);
    const part = fill(words.estimatePart, { priced: priced.length, all: beads.length });
    if (!priced.length) return [];
    return [money(priced.reduce((cost, bead) => cost + bead.cost, 0)), priced.length < beads.length ? part : ""];
  }
  function showSums() {
    const sums = summed(), cost = estimate(sums.beads);
    is.beads.replaceChildren(...sums.beads.map(beadRow));
    is.cost.textContent = `${words.estimate}: ${cost[0]}`;
    is.costOf.textContent = cost[1];
    is.estimate.hidden = !cost.length;
    lines(is.needles, sums.needles);
    lines(is.threads, Object.entries(sums.threads).map(([kind, mm]) => [`${kind}: `, ...asParts(length(mm))]));
    lines(is.findings, Object.entries(sums.findings).map(([name, count]) => fill(words.finding, { name, count })));
    is.findingsRow.hidden = !Object.keys(sums.findings).length;
    is.text.value = asPlainText(sums, cost);
    is.address.href = address();
    is.copied.textContent = "";
  }
  function show() {
    const some = wanted();
    is.wanted.replaceChildren(...some.map(row));
    is.shared.hidden = !shared;
    is.said.hidden = true;
    is.empty.hidden = some.length > 0;
    is.full.hidden = !some.length;
    showSums();
  }

  /* What is taken along */
  function asPlainText(sums, cost) {
    const threads = Object.entries(sums.threads).map(([kind, mm]) => `${kind}: ${asText(length(mm))}`);
    const findings = Object.entries(sums.findings).map(([name, count]) => fill(words.finding, { name, count }));
    const beads = sums.beads.map((bead) => fill(words.line, {
      name: bead.name, bead: bead.kind, count: bead.count, grams: asText(weight(bead.grams)), packs: packed(bead),
    }));
    const groups = [
      [words.wanted, wanted().map((one) => `${one.pieces} × ${one.title}`)], [words.beads, beads],
      [words.needle, sums.needles], [words.thread, threads], [words.findingLabel, findings],
      [words.estimate, cost.length ? [cost.filter(Boolean).join(", ")] : []],
    ];
    const told = groups.filter(([, texts]) => texts.length).map(([head, texts]) => [head, ...texts].join("\n"));
    return [words.title, ...told].join("\n\n") + "\n";
  }
  function cell(value) {
    const text = String(value), safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
    return /[",\r\n]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
  }
  function asTable() {
    const sums = summed(), head = words.columns.split("|");
    const fine = (value) => Number(value.toFixed(3));
    const rows = [
      ...wanted().map((one) => [words.pattern, one.title, "", "", one.pieces]),
      ...sums.beads.map((bead) => [words.bead, bead.name, bead.kind, bead.hex, bead.count, fine(bead.grams),
        bead.packs, bead.pack, "", bead.cost === null ? "" : bead.cost.toFixed(2)]),
      ...sums.needles.map((needle) => [words.needle, needle]),
      ...Object.entries(sums.threads).map(([kind, mm]) =>
        [words.thread, kind, "", "", "", "", "", "", fine(mm / 1000)]),
      ...Object.entries(sums.findings).map(([kind, count]) => [words.findingLabel, kind, "", "", count]),
    ];
    const padded = [head, ...rows].map((one) => head.map((_, place) => cell(one[place] ?? "")).join(","));
    return padded.join("\r\n") + "\r\n";
  }
  async function copy() {
    is.text.select();
    try { await navigator.clipboard.writeText(is.text.value); } catch (error) {
      is.copied.textContent = document.execCommand("copy") ? words.copied : words.copyByHand;
      return;
    }
    is.copied.textContent = words.copied;
  }
  function save() {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([asTable()], { type: "text/csv;charset=utf-8" }));
    link.download = words.file;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  }
  function toOwn() {
    shared = null;
    history.replaceState(null, "", location.pathname + location.search);
    own = stored();
  }

  is.print.addEventListener("click", () => print());
  is.copy.addEventListener("click", copy);
  is.csv.addEventListener("click", save);
  is.clear.addEventListener("click", () => {
    const others = Object.entries(shared || own).filter(([name]) => !patterns.has(name));
    takeOff(Object.fromEntries(others), words.cleared);
  });
  is.back.addEventListener("click", () => {
    keep(before);
    show();
    document.querySelector("h1").focus();
  });
  is.takeOver.addEventListener("click", () => {
    const list = shared;
    toOwn();
    keep({ ...own, ...list });
    show();
    document.querySelector("h1").focus();
  });
  is.own.addEventListener("click", () => {
    toOwn();
    show();
    document.querySelector("h1").focus();
  });
  addEventListener("hashchange", () => {
    const found = fromAddress();
    if (location.hash && !found) return; // a place on this page
    shared = found;
    show();
  });
  addEventListener("storage", (event) => {
    if (event.key !== KEY || shared) return;
    own = stored();
    show();
  });
  new MutationObserver(showSums).observe(root, { attributeFilter: ["data-units"] });
  document.querySelector(".by-hand").hidden = true;
  page.hidden = false;
  show();
})();
