// The app is kept whole on the phone and starts with no network.
import assert from 'node:assert/strict';
import { readdirSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { test } from 'node:test';
import { built, copyOfBuild, freshFolder, keptOffline, openBrowser, openHost, startApp, started } from './stage.mjs';

test('first start asks only its own host, and nothing fails', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await keptOffline(page);
  assert.deepEqual(page.problems, []);
  assert.deepEqual(page.asked.filter((address) => !address.startsWith(host.address())), []);
  assert.deepEqual(host.log.filter((answer) => answer.status !== 200), []);
});

test('the first words wait for no other file, and go when the program is there', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await browser.newPage();
  const held = [];
  let holding = true;
  await page.route(/\.(css|js)$/, (route) => (holding ? held.push(route) : route.continue()));
  const wanted = page.waitForRequest(/\.packed$/);
  await page.goto(host.address(), { waitUntil: 'commit' });
  await page.waitForFunction(() => performance.getEntriesByName('first-contentful-paint').length);
  const words = page.locator('.coming');
  assert.match(await words.textContent(), /on its way to this device/);
  // The program is asked for without the script that starts it.
  await wanted;
  const place = () => words.evaluate((words) => JSON.stringify(words.getBoundingClientRect()));
  const before = await place();
  const [sheet] = held.splice(held.findIndex((route) => route.request().url().endsWith('.css')), 1);
  await sheet.continue();
  await page.waitForFunction(() => document.styleSheets.length === 3);
  assert.equal(await place(), before, 'the style sheet moves nothing');
  holding = false;
  await Promise.all(held.map((route) => route.continue()));
  await started(page);
  assert.equal(await words.count(), 0);
});

test('a host that does not know what WebAssembly is serves it too', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await browser.newPage();
  let asked = 0;
  await page.route(/\.wasm$/, async (route) => {
    asked += 1;
    const response = await route.fetch();
    await route.fulfill({ response, headers: { ...response.headers(), 'content-type': 'application/octet-stream' } });
  });
  await page.goto(host.address());
  await started(page);
  assert.ok(asked > 0);
});

test('what is kept is exactly what was built', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await keptOffline(page);
  const kept = await page.evaluate(async () => {
    const stores = await Promise.all((await caches.keys()).map((name) => caches.open(name)));
    const requests = await Promise.all(stores.map((store) => store.keys()));
    return requests.flat().map((request) => new URL(request.url).pathname.slice(1));
  });
  const files = readdirSync(built, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(built, join(entry.parentPath ?? entry.path, entry.name)));
  // The page is kept under its folder's address, the program unpacked; the worker itself is kept by the browser.
  const keptAs = (name) => (name === 'index.html' ? '' : name.replace('.packed', '.wasm'));
  const expected = files.filter((name) => name !== 'service-worker.js').map(keptAs);
  assert.deepEqual(kept.sort(), expected.sort());
});

test('the program comes once, and again only if the store has lost it', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await keptOffline(page);
  const came = () => host.log.filter(({ path }) => path.endsWith('.packed')).length;
  assert.equal(came(), 1, 'what the page has unpacked is kept');
  await page.reload();
  await started(page);
  assert.equal(came(), 1);
  await page.evaluate(async () => {
    const [name] = await caches.keys();
    const store = await caches.open(name);
    const program = (await store.keys()).find(({ url }) => /eavewater-\w+\.wasm$/.test(url));
    await store.delete(program);
  });
  await page.reload();
  await started(page);
  assert.equal(came(), 2);
});

test('a first visit whose program does not arrive leaves it to the service worker', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await browser.newPage();
  await page.route(/\.packed$/, (route) => route.abort());
  await page.goto(host.address());
  await keptOffline(page);
  assert.match(await page.locator('.coming').textContent(), /on its way to this device/);
  await page.reload();
  await started(page);
});

test('the policy lets nothing out to another host', async (t) => {
  const host = await openHost(t);
  const stranger = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  const reached = await page.evaluate(async (address) => {
    const loaded = (element, key) =>
      new Promise((done) => {
        element.onload = () => done(true);
        element.onerror = () => done(false);
        element[key] = address;
        document.head.append(element);
      });
    return {
      fetch: await fetch(address, { mode: 'no-cors' }).then(() => true, () => false),
      image: await loaded(new Image(), 'src'),
      script: await loaded(document.createElement('script'), 'src'),
    };
  }, stranger.address('/icons/icon.svg'));
  assert.deepEqual(reached, { fetch: false, image: false, script: false });
  assert.deepEqual(stranger.log, []);
  assert.match(page.problems.join('\n'), /Content Security Policy/);
});

for (const path of ['/', '/some/folder/']) {
  test(`cold start at ${path} with the network off and the host gone`, async (t) => {
    const host = await openHost(t, { [path]: copyOfBuild(t) });
    const profile = freshFolder(t);

    const first = await openBrowser(t, { profile });
    const page = await startApp(first, host.address(path));
    await keptOffline(page);
    await host.stop();
    await first.setOffline(true);
    await page.reload();
    await started(page);
    await first.close();

    // A second browser on the same profile, after the first was ended; the host is still gone.
    const second = await openBrowser(t, { profile });
    const again = await startApp(second, host.address(path));
    assert.equal(await again.title(), 'Eavewater');
    const named = await startApp(second, host.address(`${path}index.html?from=home-screen`));
    assert.deepEqual([...again.problems, ...named.problems], []);
  });
}

test('a first fetch that is not whole keeps nothing and is told', async (t) => {
  const folder = copyOfBuild(t);
  rmSync(join(folder, 'icons/touch-180.png'));
  const host = await openHost(t, { '/': folder });
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.waitForFunction(() => window.eavewaterOffline === 'failed');
  assert.deepEqual(await page.evaluate(() => caches.keys()), []);
});

test('a browser finds nothing in the way of installing', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await keptOffline(page);
  const browserSays = await browser.newCDPSession(page);
  const manifest = await browserSays.send('Page.getAppManifest');
  assert.deepEqual(manifest.errors, []);
  const { start_url, shortcuts } = JSON.parse(manifest.data);
  assert.equal(start_url, './');
  await page.getByRole('button', { name: /demo house/ }).tap();
  const places = ['Diary', 'Ahead', 'Upkeep'];
  assert.equal(shortcuts.length, places.length);
  for (const [at, { url }] of shortcuts.entries()) {
    await page.goto(new URL(url, host.address()).href);
    await page.locator('nav [aria-current=page]', { hasText: places[at] }).waitFor();
  }
  const { installabilityErrors } = await browserSays.send('Page.getInstallabilityErrors');
  assert.deepEqual(installabilityErrors, []);
});
