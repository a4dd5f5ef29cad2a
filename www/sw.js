// Keeps every file of the site, so that it opens without a network. The build fills in both lines below: each file
// comes with the hash of its content, so that what is kept is one version, and whole.
const version = "VERSION";
const files = ["FILES"];

// Another copy of the site in another folder of this host keeps its own files.
const copy = `holdround ${registration.scope} `;
const cacheName = copy + version;

addEventListener("install", (event) => {
  const fresh = files.map(([file, integrity]) => new Request(file, { cache: "reload", integrity }));
  event.waitUntil(caches.open(cacheName).then((cache) => cache.addAll(fresh)));
});

addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => names.filter((name) => name.startsWith(copy) && name !== cacheName))
      .then((old) => Promise.all(old.map((name) => caches.delete(name)))),
  );
});

addEventListener("message", (event) => {
  if (event.data === "use the new version") skipWaiting();
});

addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(registration.scope)) {
    event.respondWith(answer(request));
  }
});

async function answer(request) {
  const cache = await caches.open(cacheName);
  const kept = await cache.match(request.url.replace(/index\.html(?=$|[?#])/, ""), { ignoreSearch: true });
  return kept ?? fetch(request);
}
