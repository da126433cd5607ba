/* Step drawings -> drawings that move when asked: thread grows as the needle goes.
   A page is whole without it: it makes the buttons and puts drawings back. */
"use strict";

const words = document.currentScript.dataset;
const calm = matchMedia("(prefers-reduced-motion: reduce)");
const SLOWEST = 4, FASTER = 0.1; // mm a second, and more for each mm of thread
const NEAR = 0.5; // mm
const MARKS = ["beads-new", "letters", "arrows", "order", "ends", "hitches"];
const players = [];
const set = (element, values) => Object.entries(values).forEach((pair) => element.setAttribute(...pair));
const see = (shape, seen) => set(shape, { visibility: seen ? "visible" : "hidden" });
const drawn = (name) => document.createElementNS("http://www.w3.org/2000/svg", name);

/* Copies of each contour of a path or letter of a text take its place. */
function split(shape) {
  const group = drawn("g"), d = shape.getAttribute("d"), text = shape.textContent;
  const xs = d || shape.getAttribute("x").split(" ");
  const parts = d ? d.split(/(?=M)/) : xs[1] ? [...text] : [text];
  parts.forEach((part, place) => {
    const copy = group.appendChild(shape.cloneNode());
    set(copy, d ? { d: part } : { x: xs[place] });
    if (!d) copy.textContent = part;
  });
  see(shape, false);
  shape.after(group);
  return group;
}

/* Takes a drawing apart: runs of thread, and marks that appear as the needle gets there. */
function takeApart(svg) {
  const find = (kind) => [...svg.querySelectorAll(`[data-kind="${kind}"] :is(path, text)`)];
  const added = [], samples = [], runs = [], marks = [];
  let length = 0, sewn = 0, counted = 0;
  const copies = (shape) => {
    added.push(split(shape));
    return [...added.at(-1).children];
  };
  const reach = (x, y, from, near) => { // mm of thread as it first comes near a point
    const ahead = samples.filter((one) => one.at >= from);
    const away = ahead.map((one) => Math.hypot(one.x - x, one.y - y));
    const enough = Math.min(...away) + near;
    return ahead.find((_, place) => away[place] <= enough).at;
  };
  const [line] = find("thread-line"), [track = line] = find("thread-ground");
  for (const copy of copies(track)) {
    runs.push({ copy, from: length });
    for (let at = 0; at <= copy.getTotalLength(); at += 0.1) {
      const { x, y } = copy.getPointAtLength(at);
      samples.push({ at: length + at, x, y });
    }
    length += copy.getTotalLength();
  }
  for (const copy of track === line ? [] : copies(line)) { // in strokes, out of sight
    const { x, y } = copy.getPointAtLength(0);
    sewn = reach(x, y, sewn, 0.1);
    runs.push({ copy, from: sewn });
  }
  for (const kind of MARKS)
    for (const copy of find(kind).flatMap(copies)) {
      const { x, y, width, height } = copy.getBBox(), counts = kind === "order";
      const at = reach(x + width / 2, y + height / 2, counts ? counted : 0, NEAR);
      marks.push({ copy, at });
      if (counts) counted = at;
    }
  const needle = svg.appendChild(drawn("path")), size = line.getAttribute("stroke-width");
  set(needle, { d: "M9-.2V.2L-11 1.4Q-14 0-11-1.4ZM-7 0h-4", fill: "#69727a", stroke: "#fff", "stroke-width": 0.6 });
  const stops = marks.map(({ at }) => at).sort((a, b) => a - b)
    .reduce((all, at) => (at > all.at(-1) + 2 * NEAR ? [...all, at] : all), [0]).concat(length);
  return {
    length, stops,
    draw(done) {
      for (const { copy, from } of runs) {
        see(copy, done > from);
        set(copy, { "stroke-dasharray": `${Math.max(0, done - from)} ${length}` });
      }
      for (const { copy, at } of marks) see(copy, done >= at);
      const here = samples.findLastIndex((one) => one.at <= done);
      const { x, y } = samples[here], back = samples[Math.max(0, here - 10)];
      const turn = (Math.atan2(y - back.y, x - back.x) * 180) / Math.PI;
      set(needle, { transform: `translate(${x} ${y}) rotate(${turn}) scale(${size})` });
    },
    putBack() {
      added.forEach((group) => group.previousSibling.removeAttribute("visibility"));
      [...added, needle].forEach((one) => one.remove());
    },
  };
}

function player(svg) {
  const [bar, main, told] = ["p", "button", "span"].map((tag) => document.createElement(tag));
  const title = svg.querySelector("title").textContent;
  let apart, done, moving, last;
  const tell = (label, state) => {
    main.textContent = label;
    main.ariaLabel = `${label}: ${title}`;
    told.textContent = state;
  };
  const end = () => {
    apart.putBack();
    apart = moving = false;
    tell(words.again, words.shown);
  };
  const hold = () => {
    if (moving) tell(words.goOn, words.held);
    moving = false;
  };
  const frame = (now) => {
    if (!moving) return;
    done += (Math.min(now - last, 100) / 1000) * (SLOWEST + FASTER * apart.length);
    last = now;
    if (done >= apart.length) return end();
    apart.draw(done);
    requestAnimationFrame(frame);
  };
  const step = () => { // at once: no motion is wanted
    const { length, stops } = apart;
    done = stops.find((at) => at > done) || length;
    if (done === length) return end();
    apart.draw(done);
    tell(words.next, `${stops.indexOf(done)} / ${stops.length - 1}`);
  };
  main.onclick = () => {
    if (moving) return hold();
    players.forEach((other) => other.hold());
    if (!apart) {
      apart = takeApart(svg);
      done = 0;
    }
    if (calm.matches) return step();
    moving = true;
    tell(words.hold, words.moving);
    requestAnimationFrame((now) => frame((last = now)));
  };
  bar.className = "play";
  told.className = "unseen";
  told.role = "status";
  main.type = "button";
  bar.append(main, told);
  svg.after(bar);
  tell(calm.matches ? words.passes : words.show, "");
  players.push({ hold, end: () => apart && end() });
}

for (const svg of document.querySelectorAll(".drawing svg"))
  if (svg.querySelector('[data-kind="thread-line"] path')) player(svg);
for (const why of ["beforeprint", "still"]) addEventListener(why, () => players.forEach((one) => one.end()));
