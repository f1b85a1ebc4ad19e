export type {};

declare const self: ServiceWorkerGlobalScope;
declare const __PRECACHE__: readonly { url: string; size: number; revision: string | null }[];
declare const __VERSION__: string;

const CACHE = 'blockworth-files';
const keyOf = (url: string, revision: string | null): string => {
  const address = new URL(url, self.registration.scope);
  if (revision) address.searchParams.set('r', revision);
  return address.href;
};

/** Fetches one file past every cache and refuses what is not the file of this build: a login page, half a deploy. */
async function fetchExactly(url: string, size: number): Promise<Response> {
  const response = await fetch(new Request(new URL(url, self.registration.scope), { cache: 'no-store' }));
  if (!response.ok || response.redirected) throw new Error(`${url}: answered ${response.status}`);
  const body = await response.blob();
  if (body.size !== size) throw new Error(`${url}: ${body.size} bytes came, ${size} expected`);
  return new Response(body, { headers: { 'content-type': response.headers.get('content-type') ?? '' } });
}

self.addEventListener('install', (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(CACHE);
      await Promise.all(
        __PRECACHE__.map(async ({ url, size, revision }) => {
          const key = keyOf(url, revision);
          if (!(await cache.match(key))) await cache.put(key, await fetchExactly(url, size));
        }),
      );
    })(),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(CACHE);
      const wanted = new Set(__PRECACHE__.map(({ url, revision }) => keyOf(url, revision)));
      for (const request of await cache.keys()) if (!wanted.has(request.url)) await cache.delete(request);
      await self.clients.claim();
    })(),
  );
});

/** The cache key of a request: its listed file, or the app's one page for any navigation inside the scope. */
function keyFor(request: Request): string | undefined {
  const path = new URL(request.url).href.split(/[?#]/)[0] ?? '';
  const scope = self.registration.scope;
  if (!path.startsWith(scope)) return undefined;
  const name = path.slice(scope.length);
  const listed = __PRECACHE__.find(({ url }) => url === name);
  if (listed) return keyOf(listed.url, listed.revision);
  if (request.mode !== 'navigate') return undefined;
  const page = __PRECACHE__.find(({ url }) => url === 'index.html');
  return page && keyOf(page.url, page.revision);
}

self.addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  const key = keyFor(event.request);
  if (!key) return;
  event.respondWith(caches.open(CACHE).then(async (cache) => (await cache.match(key)) ?? fetch(event.request)));
});

self.addEventListener('message', (event) => {
  const type = (event.data as { type?: string } | null)?.type;
  if (type === 'SKIP_WAITING') void self.skipWaiting();
  // The page asks whether everything is here before it says "ready without signal".
  if (type === 'READY?') {
    event.ports[0]?.postMessage({ version: __VERSION__, files: __PRECACHE__.length });
  }
});
