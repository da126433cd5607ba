/* Catalogue: choices, order and words -> the list, at once; the address remembers them behind its `#`.
   Without this script the whole list stands there, shelf by shelf. */
(function () {
  "use strict";
  var panel = document.querySelector(".narrow");
  if (!panel) return;
  var list = document.querySelector(".list"), shelves = [].slice.call(list.querySelectorAll(".shelf"));
  var plates = [].slice.call(list.querySelectorAll(".plate"));
  var boxes = [].slice.call(panel.querySelectorAll("input[type=checkbox]"));
  var find = panel.querySelector("#find"), order = panel.querySelector("#order");
  var details = panel.querySelector("details"), jump = document.querySelector(".jump");
  var told = list.querySelector(".told"), nothing = list.querySelector(".nothing");
  var status = told.querySelector("p"), back = told.querySelector("button");
  var first = order.options[0].value, language = document.documentElement.lang;
  if (!plates.length) return;

  /* Small letters without marks; anything but letters and figures parts words. */
  function words(text) {
    var plain = text.toLowerCase().replace(/ß/g, "ss").replace(/æ/g, "ae").replace(/œ/g, "oe").replace(/ø/g, "o");
    return plain.normalize("NFKD").replace(/\p{M}/gu, "").split(/[^\p{L}\p{N}]+/u).filter(Boolean);
  }

  var known = plates.map(function (plate) {
    return { plate: plate, home: plate.parentNode, words: words(plate.dataset.find) };
  });

  /* What is chosen: {group: [values]}, the words looked for, the order. */
  function chosen() {
    var groups = {};
    boxes.forEach(function (box) {
      groups[box.name] = groups[box.name] || [];
      if (box.checked) groups[box.name].push(box.value);
    });
    return { groups: groups, find: find.value.trim(), order: order.value };
  }

  function has(one, group, values) {
    var own = (one.plate.dataset[group] || "").split(" ");
    return values.some(function (value) { return own.indexOf(value) >= 0; });
  }

  /* Whether a pattern answers to the words and to every group but the one left out. */
  function fits(one, choice, leftOut) {
    var found = words(choice.find).every(function (word) {
      return one.words.some(function (own) { return own.indexOf(word) === 0; });
    });
    return found && Object.keys(choice.groups).every(function (group) {
      return group === leftOut || !choice.groups[group].length || has(one, group, choice.groups[group]);
    });
  }

  function compare(by) {
    var key = "by" + by.charAt(0).toUpperCase() + by.slice(1);
    return function (one, other) {
      var a = one.plate.dataset[key], b = other.plate.dataset[key];
      if (by === "name") return a.localeCompare(b, language);
      if (by === "newest") return a < b ? 1 : a > b ? -1 : 0;
      return a - b;
    };
  }

  function show() {
    var choice = chosen(), shelved = choice.order === first;
    var sorted = shelved ? known : known.slice().sort(compare(choice.order));
    var room = shelves[0].querySelector("ol"), count = 0;
    sorted.forEach(function (one) {
      (shelved ? one.home : room).append(one.plate);
      one.plate.hidden = !fits(one, choice);
      if (!one.plate.hidden) count += 1;
    });
    shelves.forEach(function (shelf) {
      var left = shelf.querySelectorAll(".plate:not([hidden])").length;
      shelf.hidden = !left;
      shelf.firstElementChild.hidden = !shelved;
      shelf.querySelector("h2 .also").hidden = count !== known.length;
    });
    boxes.forEach(function (box) {
      var number = known.filter(function (one) {
        return fits(one, choice, box.name) && has(one, box.name, [box.value]);
      }).length;
      box.parentNode.lastElementChild.textContent = number;
      box.parentNode.classList.toggle("none", !number && !box.checked);
    });
    var narrowed = choice.find || boxes.some(function (box) { return box.checked; });
    nothing.hidden = count > 0;
    told.hidden = !narrowed;
    jump.hidden = Boolean(narrowed) || !shelved;
    status.textContent = panel.dataset.shown.replace("{shown}", count).replace("{all}", known.length);
  }

  /* `#stitch=brick&stitch=peyote&find=fern`; a `#` without `=` is a place on the page. */
  function written() {
    var choice = chosen(), state = new URLSearchParams();
    boxes.forEach(function (box) { if (box.checked) state.append(box.name, box.value); });
    if (choice.find) state.append("find", choice.find);
    if (choice.order !== first) state.append("order", choice.order);
    return state.toString();
  }

  function read() {
    var hash = location.hash.slice(1), state = new URLSearchParams(hash.indexOf("=") < 0 ? "" : hash);
    boxes.forEach(function (box) { box.checked = state.getAll(box.name).indexOf(box.value) >= 0; });
    find.value = state.get("find") || "";
    order.value = state.get("order") || first;
    if (order.selectedIndex < 0) order.value = first;
    show();
  }

  function remember(anew) {
    var address = "#" + written();
    if (address === (location.hash || "#")) return;
    try {
      history[anew ? "pushState" : "replaceState"](null, "", address);
    } catch (refused) {
      location.hash = address;
    }
  }

  function changed() { show(); remember(true); }

  boxes.forEach(function (box) { box.addEventListener("change", changed); });
  order.addEventListener("change", changed);
  find.addEventListener("input", function () { show(); remember(false); });
  back.addEventListener("click", function () {
    boxes.forEach(function (box) { box.checked = false; });
    find.value = "";
    changed();
    find.focus();
  });
  addEventListener("popstate", read);
  addEventListener("hashchange", read);

  status.setAttribute("role", "status");
  panel.hidden = false;
  list.classList.add("narrowed");
  document.querySelector(".catalogue").classList.add("working");
  details.open = matchMedia("(min-width: 58rem)").matches;
  read();
})();
