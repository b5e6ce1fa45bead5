// What is kept survives: two windows, a page killed at any moment, hostile words, a full storage.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { exported, openBrowser, openHost, startApp, started } from './stage.mjs';

const place = (page, name) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });
const sites = (page) => page.getByRole('banner').getByRole('button', { name: 'Sites' });
const demo = (page) => page.getByRole('button', { name: /demo house/ }).tap();
const pause = (ms) => new Promise((done) => setTimeout(done, ms));

// Writes rain of so many millimetres for today, and waits until the app has answered.
async function writeRain(page, mm) {
  await page.getByRole('button', { name: 'Write the rain', exact: true }).tap();
  await page.getByLabel('Rain of the day').fill(String(mm));
  await page.getByRole('button', { name: /write it down/i }).tap();
  await page.getByLabel('Rain of the day').waitFor({ state: 'detached' });
}

// The rain that is kept, read from the storage as any program could: the newest whole generation of each half-year.
const keptRain = (page) =>
  page.evaluate(() => {
    const newest = new Map();
    for (const key of Object.keys(localStorage).filter((key) => key.startsWith('eavewater/diary/'))) {
      const text = localStorage.getItem(key);
      const record = key.slice(0, key.lastIndexOf('/'));
      const generation = Number(text.split(' ')[2]);
      if (!(newest.get(record)?.generation > generation)) newest.set(record, { generation, entries: JSON.parse(text.slice(text.indexOf('\n') + 1)) });
    }
    return [...newest.values()].flatMap(({ entries }) => entries).flatMap(({ what }) => (what.rain === undefined ? [] : [what.rain])).sort((a, b) => a - b);
  });

test('two windows write in turn and no entry is lost', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const one = await startApp(browser, host.address());
  await demo(one);
  const other = await startApp(browser, host.address());
  const all = Array.from({ length: 20 }, (_, at) => at + 1);
  for (const mm of all) {
    const page = mm % 2 ? one : other;
    await page.bringToFront();
    await writeRain(page, mm);
  }
  // As the window has it that wrote last; it comes to the storage of the other a moment later.
  assert.deepEqual(await keptRain(other), all);
  await place(one, 'Diary').tap();
  await one.waitForFunction(() => document.querySelectorAll('.of-day li').length === 20);
  assert.deepEqual([...one.problems, ...other.problems], []);
});

test('a page killed at any moment loses nothing that it said is written, and nothing is half there', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const first = await startApp(browser, host.address());
  await demo(first);
  await first.close();
  const KILLS = 20;
  let said = [];
  let mm = 0;
  // On a busy machine fewer entries are written before each death: then a few more die.
  for (let kill = 0; kill < KILLS || (said.length <= KILLS / 2 && kill < 3 * KILLS); kill++) {
    const page = await startApp(browser, host.address());
    assert.equal(await page.getByText(/damaged record|could not be read/).count(), 0);
    const kept = await keptRain(page);
    for (const written of said) assert.ok(kept.includes(written), `${written} was lost at kill ${kill}`);
    assert.ok(kept.every((value) => Number.isInteger(value) && value <= mm), 'nothing is there that was never written');
    const session = await browser.newCDPSession(page);
    // Entries follow one another until the page dies in the middle of one.
    const writing = (async () => {
      for (;;) {
        mm += 1;
        const now = mm;
        await writeRain(page, now);
        said.push(now);
      }
    })().catch(() => {});
    await pause(150 + ((kill * 137) % 400));
    // A dead page answers nothing any more, not even this.
    const crashed = page.waitForEvent('crash');
    session.send('Page.crash').catch(() => {});
    await crashed;
    await Promise.race([writing, pause(500)]);
    page.close().catch(() => {});
  }
  t.diagnostic(`${said.length} entries said to be written`);
  assert.ok(said.length > KILLS / 2, `${said.length} entries`);
});

test('words that look like a program stay words', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await demo(page);
  const hostile = `<img src=x onerror="document.title='owned'"><script>document.title='owned'</script>{{7*7}}`;
  await sites(page).tap();
  await page.getByLabel('Name of the open site').fill(hostile.slice(0, 79));
  await page.getByLabel('Name of the open site').press('Tab');
  await place(page, 'Diary').tap();
  await page.getByRole('button', { name: 'Note', exact: true }).tap();
  await page.getByLabel('Note').fill(hostile);
  await page.getByRole('button', { name: 'Write it down' }).tap();
  await page.locator('.of-day li strong').getByText(hostile).waitFor();
  await page.reload();
  await started(page);
  await place(page, 'Diary').tap();
  await page.locator('.of-day li strong').getByText(hostile).waitFor();
  assert.equal(await page.title(), 'Diary · Eavewater');
  assert.equal(await page.locator('main img, main script').count(), 0);
  assert.deepEqual(page.problems, []);
});

test('a full storage is told, the entry stays on the screen, the file goes out, and once there is room it is kept', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await demo(page);
  await page.evaluate(() => {
    for (let size = 4_000_000; size >= 1; size = Math.floor(size / 2)) {
      for (let at = 0; ; at++) {
        try {
          localStorage.setItem(`filler/${size}/${at}`, 'x'.repeat(size));
        } catch {
          break;
        }
      }
    }
  });
  await writeRain(page, 7);
  await page.getByText(/storage is full/).waitFor();
  await place(page, 'Diary').tap();
  await page.getByText(/Rain: 7/).waitFor();
  await sites(page).tap();
  assert.equal((await exported(page)).sites[0].diary[0].what.rain, 7);
  // The page doesn't go unasked, and what waited is kept with the next thing that is.
  const [asked] = await Promise.all([page.waitForEvent('dialog'), page.reload({ timeout: 2000 }).catch(() => {})]);
  assert.equal(asked.type(), 'beforeunload');
  await asked.dismiss();
  await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('filler/')).forEach((key) => localStorage.removeItem(key)));
  await place(page, 'House').tap();
  await writeRain(page, 3);
  await page.reload();
  await started(page);
  await place(page, 'Diary').tap();
  for (const mm of [7, 3]) await page.getByText(new RegExp(`Rain: ${mm}`)).waitFor();
});
