/* A pattern's page -> so many pieces of it on the shopping list, which is kept in this browser. */
(function () {
  "use strict";
  var key = "sitegen:list", part = document.querySelector(".put"), name = part.dataset.name;
  var many = part.querySelector("input"), there = part.querySelector("a");

  function list() {
    try { return Object.assign({}, JSON.parse(localStorage.getItem(key))); } catch (error) { return {}; }
  }
  part.querySelector("button").addEventListener("click", function () {
    var all = list();
    many.value = all[name] = Math.min(Math.max(Math.round(many.value), 1), many.max);
    try { localStorage.setItem(key, JSON.stringify(all)); } catch (error) { there.hash = name + "=" + all[name]; }
    there.hidden = false;
  });
  if (list()[name] > 0) many.value = list()[name];
  there.hidden = !(list()[name] > 0);
  part.hidden = false;
})();
