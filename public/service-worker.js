// Keeps one complete version of the app and starts it with no network.
//
// Never rename this file: a phone that has the app asks for this name for ever.
// The next two lines are written by the build (.ci/complete-build.mjs), never by hand.
const VERSION = 'unbuilt';
const FILES = {};

// Other apps, and other folders with this app, may share the host: a store's name says whose it is,
// and only those of this folder are ever removed.
const PREFIX = 'eavewater-';
const SUFFIX = `@${new URL('./', self.location).pathname}`;
const STORE = `${PREFIX}${VERSION}${SUFFIX}`;
// Where a page that has unpacked the program by itself leaves it.
const UNPACKED = `${PREFIX}unpacked${SUFFIX}`;

const isPacked = (file) => file.endsWith('.packed');
const files = Object.keys(FILES);
const asked = (file) => new Request(file, { cache: 'no-cache', integrity: FILES[file] });
if (files.some(isPacked)) importScripts('unpack.js');

// The program is kept as it is started, not as it came.
async function keepProgram(store, packed) {
  const name = packed.replace('.packed', '.wasm');
  const there = await caches.match(name, { cacheName: UNPACKED });
  if (there) return store.put(name, there);
  const { take, finish } = await unpacking();
  const came = await fetch(asked(packed));
  take(new Uint8Array(await came.arrayBuffer()));
  const program = finish();
  if (!came.ok || !program) throw new Error(`${packed} is not what was built`);
  await store.put(name, new Response(program, { headers: { 'Content-Type': 'application/wasm' } }));
}

// All files or none. The hashes make sure that no file of another version slips in, say from a host
// that is just being updated.
async function keepWholeVersion() {
  const store = await caches.open(STORE);
  try {
    const plain = files.filter((file) => !isPacked(file));
    await Promise.all([store.addAll(plain.map(asked)), ...files.filter(isPacked).map((file) => keepProgram(store, file))]);
  } catch (reason) {
    await Promise.all([STORE, UNPACKED].map((name) => caches.delete(name)));
    throw reason;
  }
}

async function dropOtherVersions() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name.endsWith(SUFFIX) && name !== STORE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

// The network is asked only for what the version does not hold, so versions are never mixed.
async function answer(request) {
  const store = await caches.open(STORE);
  const wanted = request.mode === 'navigate' ? './' : request;
  return (await store.match(wanted, { ignoreSearch: true })) ?? fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(keepWholeVersion()));

self.addEventListener('activate', (event) => event.waitUntil(dropOtherVersions().then(() => self.clients.claim())));

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});

// A new version waits until the person has agreed to it.
self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
});
