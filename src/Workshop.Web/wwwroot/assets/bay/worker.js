// Keeps the bay screen for when there is no network: its own files, and the pages that were seen last. The first line, which the
// service writes, says which files and which version of them. Pages are those of one person, for as long as a sign-in lasts.
/* global shell */
const shellCache = `workshop-shell-${shell.version}`;
const pageCache = "workshop-bay-pages";
const whose = "/bay-kept-for";
const keptFor = 14 * 60 * 60 * 1000;
const mostPages = 40;

// One after the other: two at once would both find that nothing is kept for this person yet, and the second empty what the first kept.
let keeping = Promise.resolve();

self.addEventListener("install", event => {
  event.waitUntil((async () => {
    const cache = await caches.open(shellCache);
    await cache.addAll(shell.files.map(file => new Request(file, { cache: "no-cache" })));
    await self.skipWaiting();
  })());
});

self.addEventListener("activate", event => {
  event.waitUntil((async () => {
    const old = (await caches.keys()).filter(name => name.startsWith("workshop-shell-") && name !== shellCache);
    await Promise.all(old.map(name => caches.delete(name)));
    await self.clients.claim();
  })());
});

self.addEventListener("message", event => {
  if (event.data?.keep) {
    keeping = keeping.then(() => keep(event.data.keep, event.data.person)).catch(() => {});
    event.waitUntil(keeping);
  }
});

self.addEventListener("fetch", event => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== location.origin) {
    return;
  }
  if (request.method === "POST" && url.pathname === "/sign-out") {
    event.waitUntil(caches.delete(pageCache));
  }
  if (request.method !== "GET") {
    return;
  }
  if (url.pathname.startsWith("/assets/") || url.pathname === "/bay.webmanifest") {
    event.respondWith(file(request, url));
  } else if (request.mode === "navigate" && (url.pathname.startsWith("/bays/") || url.pathname === "/bays")) {
    event.respondWith(page(request, url));
  }
});

// A file with a version in its address never changes; any other is asked for, and taken from here where nobody answers.
async function file(request, url) {
  const cache = await caches.open(shellCache);
  if (url.searchParams.has("v")) {
    const kept = await cache.match(request);
    if (kept) {
      return kept;
    }
  }
  try {
    const response = await fetch(request);
    if (response.ok && shell.files.some(f => f.split("?")[0] === url.pathname)) {
      await cache.put(request, response.clone());
    }
    return response;
  } catch (fault) {
    const kept = await cache.match(request, { ignoreSearch: true });
    if (kept) {
      return kept;
    }
    throw fault;
  }
}

async function page(request, url) {
  try {
    const response = await fetch(request);
    if (response.status < 500) {
      if (isBay(url) && isPage(response)) {
        await put(url.href, response.clone());
      }
      return response;
    }
    return await kept(url) ?? response;
  } catch {
    return await kept(url) ?? await nothingKept();
  }
}

async function keep(addresses, person) {
  const cache = await caches.open(pageCache);
  const before = await (await cache.match(whose))?.text();
  if (before !== person) {
    await caches.delete(pageCache);
    await (await caches.open(pageCache)).put(whose, new Response(person));
  }
  for (const address of addresses) {
    try {
      const response = await fetch(address, { redirect: "error", headers: { Accept: "text/html" } });
      if (isPage(response)) {
        await put(address, response);
      }
    } catch {
      return;
    }
  }
}

// What was kept before gives way in one step, when the whole of the new page is here: a reload finds the one or the other. Once
// somebody signed out nothing is kept any more, not even what was on its way: the cache is there only from the word of a page that
// says whose it is.
async function put(address, response) {
  const body = await response.blob();
  if (!await caches.has(pageCache)) {
    return;
  }
  const cache = await caches.open(pageCache);
  await cache.put(address, new Response(body, { headers: response.headers }));
  const old = (await cache.keys()).filter(r => new URL(r.url).pathname !== whose);
  await Promise.all(old.slice(0, Math.max(0, old.length - mostPages)).map(r => cache.delete(r)));
}

async function kept(url) {
  const cache = await caches.open(pageCache);
  const match = await cache.match(url.href) ?? await near(cache, url);
  return match && Date.now() - Date.parse(match.headers.get("Date") ?? "") < keptFor ? match : null;
}

// The same bay, job and step, whatever else stood in the address.
async function near(cache, url) {
  const wanted = key(url);
  const requests = await cache.keys();
  const found = requests.findLast(r => key(new URL(r.url)) === wanted);
  return found ? cache.match(found) : null;
}

function key(url) {
  return `${url.pathname}|${url.searchParams.get("card") ?? ""}|${url.searchParams.get("step") ?? ""}`;
}

async function nothingKept() {
  const cache = await caches.open(pageCache);
  const pages = (await cache.keys()).map(r => new URL(r.url)).filter(isBay);
  const items = pages.map(u => `<li><a href="${escape(u.pathname + u.search)}">${escape(u.pathname + u.search)}</a></li>`).join("");
  return new Response(
    `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>No network</title>
     <link rel="stylesheet" href="/assets/workshop.css"><main><h1>No network</h1>
     <p>This page is not kept on this device. What was entered waits here and is sent when the network is back.</p>
     ${items ? `<h2>Kept on this device</h2><ul>${items}</ul>` : ""}</main></html>`,
    { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
}

function escape(text) {
  return text.replace(/[&<>"]/g, c => `&#${c.charCodeAt(0)};`);
}

function isBay(url) {
  return /^\/bays\/[0-9a-f-]{36}$/.test(url.pathname);
}

function isPage(response) {
  return response.ok && !response.redirected && (response.headers.get("Content-Type") ?? "").startsWith("text/html");
}
