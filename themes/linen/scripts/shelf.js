/* An opened pattern -> kept by this browser for where there is no net, on a site that is served.
   The worker does the keeping; this file tells it what the page is made of. */
"use strict";
{
  const about = document.currentScript.dataset;
  const mine = (address) => new URL(address, location.href).origin === location.origin;
  function used() {
    const shown = [...document.querySelectorAll("link[rel=stylesheet], link[rel=icon], script[src], img")]
      .map((one) => one.currentSrc || one.src || one.href);
    const fetched = performance.getEntriesByType("resource").map((one) => one.name);
    return [...new Set([location.href, ...shown, ...fetched])].filter(mine);
  }
  async function keep() {
    await navigator.serviceWorker.register(about.worker);
    const { active } = await navigator.serviceWorker.ready;
    const told = new MessageChannel();
    told.port1.onmessage = () => (document.querySelector("[data-when-kept]").hidden = false);
    active.postMessage(used(), [told.port2]);
  }
  if (location.protocol.startsWith("http") && "serviceWorker" in navigator)
    addEventListener("load", () => document.fonts.ready.then(keep).catch(() => {})); // a host may forbid it
}
