// An update is fetched whole, offered, never mixed with the version in use, and switched by consent.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { completeBuild, copyOfBuild, keptOffline, openBrowser, openHost, startApp, started } from './stage.mjs';

// A later build: another title, and a style sheet under a new name, as a changed one gets.
function laterBuild(t, title) {
  const folder = copyOfBuild(t);
  const sheet = readdirSync(folder).find((name) => /^eavewater-[0-9a-f]+\.css$/.test(name));
  const renamed = `style-of-${title.replaceAll(' ', '-')}.css`;
  renameSync(join(folder, sheet), join(folder, renamed));
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replaceAll(sheet, renamed).replace('<title>Eavewater<', `<title>${title}<`));
  completeBuild(folder);
  return folder;
}

const stores = (page) => page.evaluate(() => caches.keys());
const sheetsLoaded = (page) => page.evaluate(() => [...document.styleSheets].every((sheet) => sheet.cssRules.length >= 0));
const offered = (page) => page.waitForFunction(() => window.eavewaterOffline === 'waiting');
const lookForUpdate = (page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update().catch(() => {});
    // An update that fails ends as "redundant"; one that is whole as "installed".
    const coming = registration.installing ?? registration.waiting;
    while (coming && coming.state === 'installing') await new Promise((done) => coming.addEventListener('statechange', done, { once: true }));
    return coming?.state ?? 'none';
  });

async function startKept(t) {
  const host = await openHost(t, { '/': copyOfBuild(t) });
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await keptOffline(page);
  await page.reload();
  await started(page);
  return { host, browser, page };
}

test('an update is found at the next start, offered, and switched when accepted', async (t) => {
  const { host, page } = await startKept(t);
  await page.evaluate(() => caches.open('of-another-app'));
  const before = await stores(page);
  host.places['/'] = laterBuild(t, 'Second');

  await page.reload();
  await offered(page);
  assert.equal(await page.title(), 'Eavewater');
  assert.equal((await stores(page)).length, before.length + 1);

  // Not accepted yet: the old version goes on, whole, though its files have left the host.
  await page.reload();
  await offered(page);
  assert.equal(await page.title(), 'Eavewater');
  assert.equal(await sheetsLoaded(page), true);

  await page.evaluate(() => window.dispatchEvent(new CustomEvent('eavewater-update-accepted')));
  await page.waitForFunction(() => document.title === 'Second');
  await started(page);
  assert.equal(await sheetsLoaded(page), true);
  const after = await stores(page);
  assert.equal(after.length, before.length);
  assert.equal(after.includes('of-another-app'), true);
  assert.equal(after.filter((name) => before.includes(name)).length, 1);

  await host.stop();
  await page.reload();
  await started(page);
  assert.equal(await page.title(), 'Second');
  assert.deepEqual(page.problems.filter((problem) => !problem.includes('service-worker.js')), []);
});

test('accepting in one tab does not reload the other', async (t) => {
  const { host, browser, page } = await startKept(t);
  const other = await startApp(browser, host.address());
  await other.evaluate(() => (window.stillTyping = true));
  host.places['/'] = laterBuild(t, 'Second');
  assert.equal(await lookForUpdate(page), 'installed');
  await offered(other);
  await page.evaluate(() => window.dispatchEvent(new CustomEvent('eavewater-update-accepted')));
  await page.waitForFunction(() => document.title === 'Second');
  assert.equal(await other.evaluate(() => window.stillTyping), true);
  await other.evaluate(() => window.dispatchEvent(new CustomEvent('eavewater-update-accepted')));
  await other.waitForFunction(() => document.title === 'Second');
});

const BROKEN = {
  'lacks a file': (folder) => rmSync(join(folder, 'icons/icon-192.png')),
  'still has an old file': (folder) => writeFileSync(join(folder, 'register.js'), '// of another version\n'),
};
for (const [fault, breakIt] of Object.entries(BROKEN)) {
  test(`an update from a host that ${fault} leaves the old version working`, async (t) => {
    const { host, page } = await startKept(t);
    const before = await stores(page);
    const folder = laterBuild(t, 'Broken');
    breakIt(folder);
    host.places['/'] = folder;
    assert.equal(await lookForUpdate(page), 'redundant');
    assert.deepEqual(await stores(page), before);
    await host.stop();
    await page.reload();
    await started(page);
    assert.equal(await page.title(), 'Eavewater');
    assert.equal(await page.evaluate(() => window.eavewaterOffline), 'ready');
  });
}

test('two folders of one host keep their own versions', async (t) => {
  const host = await openHost(t, { '/one/': copyOfBuild(t), '/two/': copyOfBuild(t) });
  const browser = await openBrowser(t);
  const one = await startApp(browser, host.address('/one/'));
  await keptOffline(one);
  const two = await startApp(browser, host.address('/two/'));
  await keptOffline(two);
  assert.equal((await stores(one)).length, 2);
  host.places['/one/'] = laterBuild(t, 'Second');
  assert.equal(await lookForUpdate(one), 'installed');
  await one.evaluate(() => window.dispatchEvent(new CustomEvent('eavewater-update-accepted')));
  await one.waitForFunction(() => document.title === 'Second');
  await host.stop();
  await two.reload();
  await started(two);
  assert.equal(await two.title(), 'Eavewater');
});
