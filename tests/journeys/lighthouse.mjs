// What Lighthouse says of the built app on its simulated phone: a first start, a start with the demo house kept, and each place.
// Too heavy for the tests (185 MB), so by hand; 12.8.2 is the newest for node 20:
//   npm install --prefix /tmp/lighthouse lighthouse@12.8.2
//   .ci/with-tools node tests/journeys/lighthouse.mjs /tmp/lighthouse
import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { built, openHost } from './stage.mjs';

const from = createRequire(join(resolve(process.argv[2] ?? '.'), 'package.json'));
const { default: lighthouse, snapshot } = await import(from.resolve('lighthouse'));
const puppeteer = createRequire(from.resolve('lighthouse'))('puppeteer-core');

const CATEGORIES = ['performance', 'accessibility', 'best-practices', 'seo'];
const PLACES = ['House', 'Diary', 'Ahead', 'Sizing', 'Upkeep', 'Rain', 'Sites'];

let close = async () => {};
const ending = { after: (closing) => (close = closing) };

function tell(name, { lhr }, categories = CATEGORIES) {
  const scores = categories.map((id) => `${id} ${Math.round(lhr.categories[id].score * 100)}`);
  const timed = ['first-contentful-paint', 'largest-contentful-paint', 'total-blocking-time', 'cumulative-layout-shift', 'speed-index']
    .filter((id) => lhr.audits[id]?.displayValue)
    .map((id) => `${id} ${lhr.audits[id].displayValue}`);
  console.log(`${name}: ${scores.join(', ')}${timed.length ? ` (${timed.join(', ')})` : ''}`);
  for (const id of categories) {
    for (const { id: audit, weight } of lhr.categories[id].auditRefs) {
      const { score, title, details, displayValue = '' } = lhr.audits[audit];
      if (weight === 0 || score === null || score >= 0.9) continue;
      console.log(`  ${id}: ${audit} ${score}: ${title} ${displayValue}`);
      for (const item of details?.items?.slice(0, 8) ?? []) console.log(`    ${item.node?.selector ?? ''} ${item.node?.snippet ?? item.url ?? ''} ${item.description ?? ''}`);
    }
  }
}

const host = await openHost(ending, undefined, 0, true);
// The host squeezes each file once, before anything is timed.
for (const name of readdirSync(built, { recursive: true })) await fetch(host.address(`/${name}`), { headers: { 'Accept-Encoding': 'br' } });
const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
  args: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--disable-quic', '--no-first-run'],
});
try {
  const page = await browser.newPage();
  const flags = { onlyCategories: CATEGORIES };
  // Reckoned from what a host on this machine does, and with the phone's network and processor in earnest.
  for (const throttlingMethod of ['simulate', 'devtools']) {
    tell(`first start, ${throttlingMethod}`, await lighthouse(host.address(), { ...flags, throttlingMethod }, undefined, page));
  }
  await page.goto(host.address());
  const tap = async (words) => {
    const button = await page.waitForSelector(`::-p-xpath(//button[contains(., '${words}')])`);
    await button.evaluate((button) => button.click());
  };
  await tap('demo house');
  tell('start with a house', await lighthouse(host.address(), { ...flags, disableStorageReset: true }, undefined, page));
  await page.goto(host.address());
  for (const place of PLACES) {
    await tap(place);
    await new Promise((done) => setTimeout(done, 800));
    tell(place, await snapshot(page, { flags: { onlyCategories: CATEGORIES.slice(1) } }), CATEGORIES.slice(1));
  }
} finally {
  await browser.close();
  await close();
}
