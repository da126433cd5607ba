/* Ticks of steps and rows -> kept in this browser; and one step at a time, large, for the work table.
   The page is whole without this file: it fills its own template into the page, and moves a step's own
   drawing and words to the table and back again. */
"use strict";
{
  const about = document.currentScript.dataset;
  const key = `sitegen:ticks:${about.pattern}:${about.revision}`;
  const kept = {
    read() {
      try {
        return JSON.parse(localStorage.getItem(key)) || {};
      } catch {
        return {}; // no store, or not ours
      }
    },
    write(state) {
      try {
        localStorage.setItem(key, JSON.stringify(state));
      } catch {} // the ticks last as long as the page
    },
  };
  const fill = (text, values) => text.replace(/\{(\w+)\}/g, (_, name) => values[name]);
  const boxes = [...document.querySelectorAll("[data-tick]")];
  const steps = [...document.querySelectorAll("[data-step]")].map((row) => ({
    row,
    box: row.querySelector("[data-tick]"),
    part: row.closest("section").querySelector("h3").dataset.part,
  }));
  const parts = document.getElementById("bench-parts").content.cloneNode(true);
  const bar = parts.querySelector(".bench-bar");
  const bench = parts.querySelector("dialog");
  const the = Object.fromEntries([...parts.querySelectorAll("[data-is]")].map((one) => [one.dataset.is, one]));
  let at = 0, moved = [], awake = null, asked = 0, left = false;

  /* Ticks */
  const ticked = (step) => step.box.checked;
  const first = () => Math.max(0, steps.findIndex((step) => !ticked(step)));
  function tell() {
    const done = steps.filter(ticked).length, total = steps.length;
    const progress = fill(about.progress, { done, total });
    the.told.textContent = done === total ? about.done : progress;
    the.open.textContent = fill(done || at ? about.goOn : about.begin, { step: steps[at].row.dataset.step });
    the.clear.hidden = !boxes.some((box) => box.checked);
    for (const line of [the.line, the.lineOpen]) Object.assign(line, { max: total, value: done });
    the.done.textContent = ticked(steps[at]) ? about.isDone : about.markDone;
    the.back.disabled = at === 0;
    the.next.disabled = at === total - 1;
    the.count.textContent = progress;
    const told = { part: steps[at].part, step: steps[at].row.dataset.step, progress };
    the.toldOpen.textContent = fill(about.place, told) + (done === total ? ` ${about.done}` : "");
  }
  function keep() {
    kept.write({ at: steps[at].box.dataset.tick, done: boxes.filter((box) => box.checked).map((box) => box.dataset.tick) });
    tell();
  }
  function recall() {
    const state = kept.read(), done = new Set(Array.isArray(state.done) ? state.done : []);
    boxes.forEach((box) => (box.checked = done.has(box.dataset.tick)));
    const here = steps.findIndex((step) => step.box.dataset.tick === state.at);
    at = here < 0 ? first() : here;
  }

  /* A step's own nodes go to the table; a stand-in keeps each one's place. */
  function borrow(node, place) {
    const standIn = document.createComment("");
    node.replaceWith(standIn);
    place.append(node);
    moved.push({ node, standIn });
  }
  function giveBack() {
    dispatchEvent(new Event("still")); // a drawing that moves is put back first
    moved.reverse().forEach(({ node, standIn }) => standIn.replaceWith(node));
    moved = [];
    the.words.replaceChildren();
    the.drawing.replaceChildren();
  }
  const drawings = (row) => row.querySelectorAll("td.drawing > *, div.drawing");
  function show() {
    giveBack();
    const { row, part } = steps[at], table = row.closest("table");
    the.title.textContent = fill(about.title, { part, step: row.dataset.step });
    const shared = [...table.querySelectorAll("[data-steps]")]
      .filter((one) => one.dataset.steps.split(" ").includes(row.dataset.step));
    drawings(row).forEach((one) => borrow(one, the.drawing));
    [...row.querySelector(".doing").childNodes].forEach((one) => borrow(one, the.words));
    shared.forEach((one) => one.querySelectorAll("p:not(.row-name)").forEach((line) => the.words.append(line.cloneNode(true))));
    if (!the.drawing.childElementCount && row.dataset.see) {
      const same = table.querySelector(`[data-step="${row.dataset.see}"]`);
      drawings(same).forEach((one) => borrow(one, the.drawing));
    }
    the.stage.scrollTop = 0;
    keep();
  }
  function go(by) {
    at = Math.min(steps.length - 1, Math.max(0, at + by));
    show();
  }

  /* The screen stays on while the table is in use: the browser lets go when the page is hidden. */
  async function wake() {
    const mine = ++asked;
    try {
      const lock = await navigator.wakeLock.request("screen");
      if (mine !== asked || !bench.open) return lock.release();
      awake = lock;
      the.awake.hidden = false;
      lock.addEventListener("release", () => awake === lock && (the.awake.hidden = true));
    } catch {} // not offered, or not now
  }
  function sleep() {
    asked++;
    awake?.release();
    awake = null;
    the.awake.hidden = true;
  }

  function open() {
    left = true;
    bench.showModal();
    document.documentElement.classList.add("at-bench");
    show();
    wake();
  }
  function closed() {
    sleep();
    giveBack();
    document.documentElement.classList.remove("at-bench");
    if (history.state?.bench) history.back();
    else settle();
  }
  function settle() {
    history.scrollRestoration = "auto";
    steps[at].row.scrollIntoView({ block: "center", behavior: "instant" });
    the.open.focus({ preventScroll: true });
    left = false;
  }

  the.open.onclick = () => {
    history.scrollRestoration = "manual"; // the page comes back at the step
    history.pushState({ bench: true }, ""); // so that a phone's own way back leads to the page
    open();
  };
  the.leave.onclick = () => bench.close();
  the.back.onclick = () => go(-1);
  the.next.onclick = () => go(1);
  the.done.onclick = () => {
    steps[at].box.checked = true;
    go(1);
  };
  the.clear.onclick = () => {
    if (!confirm(about.sure)) return;
    boxes.forEach((box) => (box.checked = false));
    at = 0;
    keep();
    the.open.focus();
  };
  bench.onclose = closed;
  bench.onkeydown = (event) => {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!by || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    go(by);
  };
  document.addEventListener("change", ({ target }) => {
    const place = steps.findIndex((step) => step.box === target);
    if (place >= 0 && target.checked) at = Math.min(place + 1, steps.length - 1);
    if (target.dataset.tick) keep();
  });
  document.addEventListener("visibilitychange", () => {
    if (!bench.open) return;
    if (document.visibilityState === "visible") wake();
    else sleep();
  });
  addEventListener("popstate", ({ state }) => {
    if (!state?.bench && bench.open) bench.close();
    else if (state?.bench && !bench.open) open();
    else if (left) settle();
  });
  addEventListener("storage", (event) => {
    if (event.key !== key) return;
    const here = at;
    recall();
    if (bench.open) at = here;
    tell();
  });
  addEventListener("beforeprint", giveBack);
  addEventListener("afterprint", () => bench.open && show());

  recall();
  const started = boxes.some((box) => box.checked);
  (started ? document.querySelector("main") : document.querySelector(".making")).append(bar);
  document.body.append(bench);
  document.documentElement.classList.add("has-bench");
  tell();
  if (history.state?.bench) open();
}
