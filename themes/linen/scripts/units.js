/* Millimetres and grams, or inches and ounces: the switch in the head. Until one is chosen, both show. */
(function () {
  "use strict";
  var key = "sitegen:units", root = document.documentElement, group = document.querySelector(".units");
  if (!group) return;

  function show(units) {
    if (units) root.dataset.units = units; else delete root.dataset.units;
    [].forEach.call(group.children, function (one) { one.ariaPressed = one.value === units; });
  }
  group.addEventListener("click", function (event) {
    if (event.target === group) return;
    show(event.target.value === root.dataset.units ? "" : event.target.value);
    try { localStorage.setItem(key, root.dataset.units || ""); } catch (error) { /* it holds for this page */ }
  });
  addEventListener("storage", function (event) { if (event.key === key) show(event.newValue); });
  try { show(localStorage.getItem(key)); } catch (error) { show(); }
  group.hidden = false;
})();
