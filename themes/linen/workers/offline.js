/* Requests for a page that was kept -> the newest there is: from the net, or without it as it was kept.
   The build writes a line before this file: BUILT, which changes with anything in the site. A new build is
   fetched whole for all that was kept before the old one goes. */
"use strict";
const OURS = "sitegen:", NAME = OURS + registration.scope + BUILT;
const PATIENCE = 4000; // ms that a net which does not answer is waited for

const plain = (address) => {
  const url = new URL(address);
  return url.origin + url.pathname.replace(/index\.html$/, "");
};
const kept = async (address) => (await caches.open(NAME)).match(plain(address), { ignoreVary: true });

/* Puts one address on the shelf. What came by a detour is copied, or no page could be opened with it. */
async function put(shelf, address, answer) {
  const copy = answer.redirected ? new Response(await answer.blob(), { headers: answer.headers }) : answer;
  if (answer.ok) await shelf.put(plain(address), copy);
}

async function keep(addresses) {
  const shelf = await caches.open(NAME);
  await Promise.all(addresses.map(async (address) => put(shelf, address, await fetch(address, { cache: "no-cache" }))));
}

async function formerShelves() {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(OURS + registration.scope) && name !== NAME);
}

async function renew() {
  for (const name of await formerShelves()) {
    const old = await (await caches.open(name)).keys();
    await keep(old.map((request) => request.url));
  }
  await skipWaiting();
}

async function takeOver() {
  for (const name of await formerShelves()) await caches.delete(name);
  await clients.claim();
}

async function answer(request) {
  const old = await kept(request.url);
  if (!old) return fetch(request);
  const fresh = fetch(request).then(async (found) => {
    if (found.ok) await put(await caches.open(NAME), request.url, found.clone());
    return found.status < 500 ? found : old;
  });
  fresh.catch(() => {}); // told below, or too late to matter
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE, old));
  return Promise.race([fresh, late]).catch(() => old);
}

addEventListener("install", (event) => event.waitUntil(renew()));
addEventListener("activate", (event) => event.waitUntil(takeOver()));
addEventListener("message", (event) => {
  event.waitUntil(keep(event.data).then(() => event.ports[0].postMessage("kept")));
});
addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method === "GET" && url.startsWith(registration.scope)) event.respondWith(answer(event.request));
});
