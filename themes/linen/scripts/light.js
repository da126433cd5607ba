/* Light or dark pages: makes the switch in the foot and remembers a choice that differs from the device's. */
(function () {
  "use strict";
  var key = "sitegen:light", root = document.documentElement, words = document.currentScript.dataset;
  var device = matchMedia("(prefers-color-scheme: dark)"), foot = document.querySelector(".foot");
  var button = document.createElement("button");

  function remembered() {
    try { return localStorage.getItem(key); } catch (error) { return null; }
  }
  function remember(light) {
    try {
      if (light) localStorage.setItem(key, light); else localStorage.removeItem(key);
    } catch (error) { /* the choice holds for this page alone */ }
  }
  function isDark() {
    return root.dataset.light ? root.dataset.light === "dark" : device.matches;
  }
  function show(light) {
    if (light === "dark" || light === "light") root.dataset.light = light; else delete root.dataset.light;
    button.textContent = isDark() ? words.toLight : words.toDark;
  }

  button.type = "button";
  button.className = "light-switch";
  button.addEventListener("click", function () {
    var wanted = isDark() ? "light" : "dark", chosen = (wanted === "dark") === device.matches ? "" : wanted;
    remember(chosen);
    show(chosen);
  });
  device.addEventListener("change", function () { show(root.dataset.light); });
  addEventListener("storage", function (event) { if (event.key === key) show(event.newValue); });
  show(remembered());
  if (foot) foot.append(button);
})();
