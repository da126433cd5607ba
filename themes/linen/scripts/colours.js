/* Colours chosen for the letters -> all drawings, chips and beads to buy on the page; its address keeps them.
   A drawing says what its colours follow: `data-fill` and `data-stroke` hold a letter and, where it is mixed,
   the other colour and its share; `data-ink` holds the letter whose bead a text is written on. One style
   sheet gives them other colours. The page is whole without this file: its parts lie in templates. */
"use strict";
if (document.adoptedStyleSheets) {
  const START = "#colours&";
  const all = (what, within = document) => [...within.querySelectorAll(what)];
  all("[data-own-part]").forEach((part) => part.replaceWith(part.content));
  const the = Object.fromEntries(all("[data-own]").map((one) => [one.dataset.own, one]));
  const [picture, about] = all(".frontispiece :is(svg, desc)"), look = new CSSStyleSheet();
  const paints = ["fill", "stroke"].flatMap((name) =>
    [...new Set(all(`[data-${name}]`).map((one) => one.dataset[name]))].map((made) => [name, made]));
  const rows = all("li[data-letter]").map((place) => {
    const [colour, bead, { content }] = all("input, select, template", place);
    return { ...place.dataset, colour, bead, lines: content.children, own: bead.value, value: bead.value };
  });
  const chosen = () => rows.filter((row) => row.value !== row.own);
  const hex = (row) => "#" + row.value.slice(0, 6);
  const lineOf = (row) => row.lines[row.bead.selectedIndex].cloneNode(true);
  const cell = (line, name = "title") => line.querySelector(`[data-cell=${name}]`);

  /* Colours, reckoned as where the drawings were made */
  const channels = (colour) => [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16));
  const mixed = (colour, toward = colour, share = 0) =>
    `rgb(${channels(colour).map((one, at) => Math.round(one + (channels(toward)[at] - one) * share))})`;
  function ink(colour) { // WCAG 2.2: black or white, whichever has the higher contrast
    const [red, green, blue] = channels(colour)
      .map((value) => (value <= 10 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4));
    return (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05) ** 2 >= 0.05 * 1.05 ? "#000" : "#fff";
  }
  function alike(one, other) { // weights and limit are own judgement, near CIEDE2000 of 10
    const [red, green, blue] = channels(hex(one)).map((value, at) => value - channels(hex(other))[at]);
    const touched = one.value !== one.own || other.value !== other.own;
    return touched && one.kind === other.kind && red ** 2 + 2 * green ** 2 + blue ** 2 < 48 ** 2;
  }

  /* Drawings and chips; the key to the step drawings shows no bead of the design. */
  function rules(row) {
    const { letter } = row, colour = hex(row), black = ink(colour);
    const drawn = (what, name, value) => `[data-${what}]:not(.legend *) { ${name}: ${value} }`;
    const painted = paints.filter(([, made]) => made[0] === letter)
      .map(([name, made]) => drawn(`${name}="${made}"`, name, mixed(colour, ...made.split(" ").slice(1))));
    const chips = `.bead-${letter} { background: ${colour}; color: ${black} }`;
    return [...painted, drawn(`ink="${letter}"`, "fill", black), chips].join("");
  }

  /* Words */
  function tell(row) {
    const { letter, colour, bead } = row;
    colour.value = colour.nextElementSibling.textContent = hex(row);
    bead.value = row.value;
    bead.value ||= ""; // any other colour
    const line = lineOf(row);
    for (const one of bead.value ? [] : [cell(line, "name"), cell(line)])
      one.textContent = one.textContent.replace("{hex}", hex(row));
    row.name = cell(line, "name").textContent;
    for (const place of all(`tr[data-letter="${letter}"] :is([data-cell], title)`))
      place.replaceChildren(...cell(line, place.dataset.cell).childNodes);
    for (const chip of all(`.bead-${letter}[title]`)) chip.title = row.name;
  }
  const names = () => [...new Set(rows.map((row) => row.name))].join(", ");
  function show() {
    const before = names(), none = !chosen().length;
    look.replaceSync(chosen().map(rules).join(""));
    rows.forEach(tell);
    about.textContent = about.textContent.replace(before, names);
    the.remark.textContent = rows.flatMap((one, at) => rows.slice(at + 1)
      .filter((other) => alike(one, other))
      .map((other) => the.remark.dataset.words.replace("{one}", one.letter).replace("{other}", other.letter))).join(" ");
    the.keys.hidden = the.told.hidden = none;
    the.address.href = address();
  }

  /* `#colours&G=3c6b45`: the letters whose colours are not the page's own */
  function address() {
    const values = chosen().map((row) => `${row.letter}=${row.value}`).join("&");
    return location.href.split("#")[0] + (values && START + values);
  }
  function changed() {
    show();
    history.replaceState(history.state, "", address());
  }
  function read() {
    const given = new URLSearchParams(location.hash.slice(1));
    for (const row of rows) row.value = /^[0-9a-f]{6}(-\d)?$/.exec(given.get(row.letter))?.[0] || row.own;
    show();
  }

  for (const row of rows) {
    row.name = cell(lineOf(row), "name").textContent;
    row.colour.oninput = () => {
      row.value = row.colour.value.slice(1);
      show();
    };
    row.colour.onchange = changed;
    row.bead.onchange = () => {
      if (!row.bead.value) row.colour.click();
      row.value = row.bead.value || row.value;
      changed();
    };
  }
  the.back.onclick = () => {
    for (const row of rows) row.value = row.own;
    changed();
    rows[0].colour.focus();
  };
  addEventListener("hashchange", () => {
    if (!location.hash || location.hash.startsWith(START)) read();
    else if (chosen().length) changed(); // a place on the page: the address still keeps the colours
  });
  the.picture.append(picture.cloneNode(true));
  all("title, desc", the.picture).forEach((words) => words.remove());
  document.adoptedStyleSheets = [look];
  if (location.hash.startsWith(START)) read();
}
