// The service worker of a copy on a server: it takes the whole edition in at the first visit, and
// answers from it afterwards, with a network or without. It never asks for anything but the files
// of its own folder. What is kept is named after the content: another edition, another store.

/** What the bindery writes before this script. */
declare const edition: { store: string; kind: string; files: string[] };

interface LastingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface AskedEvent extends LastingEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

const folder = new URL("./", location.href);
const atOnce = 8; // files asked for at the same time
const summed = /\.[0-9a-f]{12}\.[a-z0-9]+$/; // a name with the sum of the bytes in it: these never change

addEventListener("install", (e) => (e as LastingEvent).waitUntil(takeIn()));
addEventListener("activate", (e) => (e as LastingEvent).waitUntil(forgetOthers()));
addEventListener("fetch", (e) => {
  const event = e as AskedEvent;
  const url = new URL(event.request.url);
  if (event.request.method === "GET" && url.href.startsWith(folder.href)) event.respondWith(answer(event.request, url));
});

/** All files, or none: an edition that is half there would be worse than the network. */
async function takeIn(): Promise<void> {
  const store = await caches.open(edition.store);
  const waiting = edition.files.slice();
  const take = async () => {
    for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
      const url = new URL(file, folder);
      const had = summed.test(file) ? await caches.match(url) : undefined; // from the edition before
      const response = had ?? (await fetch(url, { cache: summed.test(file) ? "default" : "no-cache" }));
      if (!response.ok) throw new Error(`${file}: ${response.status}`);
      await store.put(url, response);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, take));
}

async function forgetOthers(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name.startsWith(edition.kind) && name !== edition.store) await caches.delete(name);
  }
}

async function answer(request: Request, url: URL): Promise<Response> {
  const store = await caches.open(edition.store);
  const bare = new URL(url.pathname.endsWith("/") ? `${url.pathname}index.html` : url.pathname, url);
  return (await store.match(bare)) ?? fetch(request);
}
