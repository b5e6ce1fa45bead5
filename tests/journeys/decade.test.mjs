// What is kept for ten years: days of diary and rain open quickly, are saved quickly, and stay small.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { asFile, exported, openBrowser, openHost, startApp } from './stage.mjs';

const DAY = 86_400_000;

// A file with the demo house, 60 years of rain, and so many days of diary with a level and rain each.
async function longFile(page, days) {
  await page.getByRole('banner').getByRole('button', { name: 'Sites' }).tap();
  const all = await exported(page);
  const [site] = all.sites;
  const tank = site.site.system.tanks[0].id;
  const iso = (at) => new Date(at).toISOString().slice(0, 10);
  const end = Date.now() - DAY;
  const rained = (at) => ((at * 7919) % 10 < 3 ? ((at * 104_729) % 400) / 10 : 0);
  if (days) {
    const years60 = Array.from({ length: 21_915 }, (_, at) => rained(at));
    site.rain = { record: { source: 'sixty years', start: iso(end - 21_915 * DAY), depths_mm: years60 } };
  }
  site.diary = Array.from({ length: days }, (_, at) => {
    const moment = end - (days - at) * DAY;
    return [
      { id: moment, on: iso(moment), what: { level: { tank, at: { depth: 1 + (at % 100) / 200 } } } },
      { id: moment + 1, on: iso(moment), what: { rain: rained(at) } },
    ];
  }).flat();
  return asFile(all);
}

// The median time in ms from navigation until the house is drawn, over several starts.
async function opening(page) {
  const times = [];
  for (let at = 0; at < 7; at++) {
    await page.reload();
    await page.locator('svg .part').first().waitFor();
    times.push(await page.evaluate(() => window.drawnAfter));
  }
  return times.sort((a, b) => a - b)[3];
}

test('ten years of days and sixty of rain open quickly, are saved quickly, and stay small', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  await browser.addInitScript(() => {
    new MutationObserver((_, observer) => {
      if (!document.querySelector('svg .part')) return;
      window.drawnAfter = performance.now();
      observer.disconnect();
    }).observe(document, { childList: true, subtree: true });
  });
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo house/ }).tap();
  const empty = await opening(page);
  const file = await longFile(page, 3653);
  await page.locator('input[type=file]').setInputFiles(file);
  await page.getByRole('button', { name: 'Replace all' }).tap();
  await page.locator('svg .part').first().waitFor();
  const full = await opening(page);
  const characters = await page.evaluate(() =>
    Object.keys(localStorage).reduce((sum, key) => sum + key.length + localStorage.getItem(key).length, 0),
  );
  // From the tap to the entry on the shelf, as the page itself sees it.
  await page.getByRole('button', { name: 'Write the rain', exact: true }).tap();
  await page.getByLabel('Rain of the day').fill('3');
  const [save, put] = await page.evaluate(() => {
    let last = 0;
    const put = Storage.prototype.setItem;
    let characters = 0;
    Storage.prototype.setItem = function (...rest) {
      put.apply(this, rest);
      last = performance.now();
      characters += rest[1].length;
    };
    const button = [...document.querySelectorAll('button')].find((button) => /write it down/i.test(button.textContent));
    const from = performance.now();
    button.click();
    return [last - from, characters];
  });
  t.diagnostic(`opens in ${full.toFixed(0)} ms, empty in ${empty.toFixed(0)} ms: ratio ${(full / empty).toFixed(2)}`);
  t.diagnostic(`an entry is on the shelf after ${save.toFixed(1)} ms (${put} characters)`);
  t.diagnostic(`${characters} characters are kept`);
  assert.ok(full < 3 * empty, `${full} ms instead of ${empty}`);
  assert.ok(characters < 3_000_000, `${characters} characters`);
  // What takes time is how much is written; the time itself is the machine's.
  assert.ok(put > 0 && put < characters / 10, `${put} of ${characters} characters are written anew`);
});
