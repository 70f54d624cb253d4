// Keeps the pages of the bench usable while it cannot be reached: the app itself, and the answers that this device has seen last.
const APP = 'salvor-app-1';
const DATA = 'salvor-data-1';
/** Streams, whole copies, and what is about who may come in are never kept. */
const NEVER = /^\/(?:api\/(?:changes|bundle|backups|devices|join|me)|openapi\.json|health|metrics)(?:\/|$)/;

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(APP)
      .then((cache) => cache.add('/'))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  const others = (names) => names.filter((name) => name !== APP && name !== DATA);
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(others(names).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin || NEVER.test(pathname)) return;
  if (request.mode === 'navigate') event.respondWith(pageFor(request));
  else if (pathname.startsWith('/assets/')) event.respondWith(keptOrFetched(request));
  else event.respondWith(freshOrKept(request, /^\/(?:api|photos)\//.test(pathname) ? DATA : APP));
});

/** The one page of the app serves every address. */
async function pageFor(request) {
  try {
    return await fetch(request);
  } catch {
    return (await caches.match('/')) ?? Response.error();
  }
}

/** Files whose name changes with their content. */
async function keptOrFetched(request) {
  const kept = await caches.match(request);
  if (kept) return kept;
  const response = await fetch(request);
  if (response.ok) await (await caches.open(APP)).put(request, response.clone());
  return response;
}

/** A device that is let in no more forgets what it saw. */
async function freshOrKept(request, name) {
  try {
    const response = await fetch(request);
    if (response.status === 401) await caches.delete(DATA);
    else if (response.ok) await (await caches.open(name)).put(request, response.clone());
    return response;
  } catch (error) {
    const kept = await caches.match(request);
    if (kept) return kept;
    throw error;
  }
}
