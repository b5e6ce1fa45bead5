// An update is fetched whole, offered, never mixed with the version in use, and switched by consent.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { pack, unpack } from '../../.ci/packing.mjs';
import { accessibilityFindings, completeBuild, copyOfBuild, keptOffline, openBrowser, openHost, startApp, started } from './stage.mjs';

// The program with other words in it, packed: the same for every later build.
let laterProgram;
function madeLater(packed) {
  const before = unpack(packed).toString('latin1');
  const after = before.replace('Sketch my house', 'Sketch our home');
  assert.notEqual(after, before);
  return pack(Buffer.from(after, 'latin1'));
}

// A later build, as a change of the program, its style and its page makes it: other bytes under other names, completed by what
// completes every build. Its first start says "Sketch our home" where the first build says "Sketch my house".
function laterBuild(t, title) {
  const folder = copyOfBuild(t);
  const named = (end) => readdirSync(folder).find((name) => /^eavewater-[0-9a-f]+\./.test(name) && name.endsWith(end));
  const [program, script, style] = ['.packed', '.js', '.css'].map(named);
  const rewrite = (from, to, change) => {
    const text = readFileSync(join(folder, from), 'latin1');
    const changed = change(text);
    assert.notEqual(changed, text, `${from} has nothing of what was to be changed`);
    rmSync(join(folder, from));
    writeFileSync(join(folder, to), changed, 'latin1');
  };
  const later = (name) => name.replace('eavewater-', `${title.toLowerCase()}-`);
  const stem = program.replace('.packed', '');
  writeFileSync(join(folder, later(program)), (laterProgram ??= madeLater(readFileSync(join(folder, program)))));
  rmSync(join(folder, program));
  rewrite(script, later(script), (text) => text.replaceAll(stem, later(stem)));
  rewrite(style, later(style), (text) => `${text}.later{color:red}`);
  rewrite('index.html', 'index.html', (text) =>
    [stem, script, style]
      .reduce((page, name) => page.replaceAll(name, later(name)), text)
      .replace('<title>Eavewater<', `<title>${title}<`),
  );
  completeBuild(folder);
  return folder;
}

// Which version's page, program and style a page has, by what each of them shows: the same thrice, or it is mixed.
async function version(page) {
  const button = await page.getByRole('button', { name: /^Sketch (my house|our home)/ }).innerText();
  const style = await page.evaluate(() =>
    [...document.styleSheets].some((sheet) => [...sheet.cssRules].some((rule) => rule.selectorText === '.later')),
  );
  return { page: (await page.title()) !== 'Eavewater', program: button.includes('our home'), style };
}
const OLD = { page: false, program: false, style: false };
const NEW = { page: true, program: true, style: true };

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

test('an update is offered in words and taken with a tap, the whole of it', async (t) => {
  const { host, page } = await startKept(t);
  host.places['/'] = laterBuild(t, 'Second');
  await page.reload();
  await page.getByText('A new version is ready.').waitFor();
  assert.deepEqual(await version(page), OLD);
  assert.deepEqual(await accessibilityFindings(page), []);
  await page.getByRole('button', { name: 'Take the new version' }).tap();
  await page.waitForFunction(() => document.title === 'Second');
  await started(page);
  assert.deepEqual(await version(page), NEW);
  assert.equal(await page.getByText('A new version is ready.').count(), 0);
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

// Each breaks an update half-way.
const named = (folder, end) => readdirSync(folder).find((name) => /^broken-[0-9a-f]+\./.test(name) && name.endsWith(end));
const BROKEN = {
  'lacks a file': (folder) => rmSync(join(folder, 'icons/touch-180.png')),
  'still has an old file': (folder) => writeFileSync(join(folder, 'register.js'), '// of another version\n'),
  'has half the program': (folder) => {
    const program = join(folder, named(folder, '.packed'));
    truncateSync(program, Math.floor(statSync(program).size / 2));
  },
  'breaks off within the program': (folder, host) => host.cut.add(`/${named(folder, '.packed')}`),
  'goes silent after its worker': (folder, host) => {
    for (const name of readdirSync(folder)) if (name !== 'service-worker.js') host.cut.add(`/${name}`);
    host.cut.add('/');
  },
};
for (const [fault, breakIt] of Object.entries(BROKEN)) {
  test(`an update from a host that ${fault} leaves the old version working, and the next try succeeds`, async (t) => {
    const { host, page } = await startKept(t);
    const before = await stores(page);
    const folder = laterBuild(t, 'Broken');
    breakIt(folder, host);
    host.places['/'] = folder;
    // Without what its worker begins with, an update doesn't even begin.
    assert.equal(await lookForUpdate(page), fault === 'goes silent after its worker' ? 'none' : 'redundant');
    assert.deepEqual(await stores(page), before);
    // With the broken host there, and without any host: the old version, whole, and not a word of what concerns nobody.
    await page.reload();
    await started(page);
    assert.deepEqual(await version(page), OLD);
    await page.waitForFunction(() => window.eavewaterOffline === 'ready');
    assert.equal(await page.locator('.notice.warning').count(), 0);
    const { port } = host;
    await host.stop();
    await page.reload();
    await started(page);
    assert.deepEqual(await version(page), OLD);
    assert.equal(await page.evaluate(() => window.eavewaterOffline), 'ready');

    // The same address again, mended.
    await openHost(t, { '/': laterBuild(t, 'Second') }, port);
    assert.equal(await lookForUpdate(page), 'installed');
    await page.getByRole('button', { name: 'Take the new version' }).tap();
    await page.waitForFunction(() => document.title === 'Second');
    await started(page);
    assert.deepEqual(await version(page), NEW);
    assert.equal((await stores(page)).length, 1);
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
