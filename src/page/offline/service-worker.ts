// Keeps the page's own files, so that it works without a network once it has been opened: in a workshop, or at a stall.

// Libraries' types bring a window's globals along, where there is none.
const worker = globalThis as unknown as ServiceWorkerGlobalScope;

/** Written in by the build: every file of the page, and a name that changes with any of them. */
declare const pageFiles: readonly string[];
declare const pageVersion: string;

const store = `seamwright-${pageVersion}`;

worker.addEventListener('install', (event) => {
  const fetched = caches.open(store).then((cache) => cache.addAll([...pageFiles]));
  event.waitUntil(fetched.then(() => worker.skipWaiting()));
});

/** Older versions are let go once this one has every file. */
async function clear(): Promise<void> {
  for (const name of await caches.keys())
    if (name.startsWith('seamwright-') && name !== store) await caches.delete(name);
  await worker.clients.claim();
}

worker.addEventListener('activate', (event) => event.waitUntil(clear()));

worker.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  const kept = caches.open(store).then((cache) => cache.match(event.request, { ignoreSearch: true }));
  event.respondWith(kept.then((answer) => answer ?? fetch(event.request)));
});
