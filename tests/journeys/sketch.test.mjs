// A few facts on a strange lawn, by thumb: how many taps and characters it takes to an answer, which changes under the finger.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { PHONE, accessibilityFindings, openBrowser, openHost, startApp } from './stage.mjs';

const data = fileURLToPath(new URL('../data/', import.meta.url));
// Numbers keep to their units by a space that doesn't break.
const held = async (field) => (await field.inputValue()).replaceAll('\u00a0', ' ');
const answer = (page) => page.locator('.answer .headline');

// A thumb that counts. A tap with its look takes about a second and a half, a character under a third of one (common
// practice, no source).
function thumb(page) {
  const count = { taps: 0, characters: 0 };
  return {
    count,
    seconds: () => count.taps * 1.5 + count.characters * 0.3,
    async tap(where) {
      count.taps += 1;
      await where.tap();
    },
    async type(label, text) {
      await this.tap(page.getByLabel(label));
      count.characters += text.length;
      await page.keyboard.type(text);
    },
    // Open the list, take a row.
    async choose(label, row) {
      count.taps += 2;
      await page.getByLabel(label).selectOption({ label: row });
    },
  };
}

test('from first start to a defended answer in under a minute, and it is kept as a site', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  const { count, seconds, ...hand } = thumb(page);
  hand.count = count;
  await hand.tap(page.getByRole('button', { name: 'Sketch my house' }));
  assert.match(await answer(page).innerText(), /Give the place's rain below/);
  await hand.type(/^Roof length/, '14');
  await hand.type(/^Roof width/, '9');
  await hand.choose('Roofing', 'Clay or concrete tile');
  await hand.type(/^People/, '4');
  await hand.type(/^Tank/, '15000');
  await hand.choose('Rain of the place', 'Twelve monthly means');
  await hand.type(/^January to December/, '95 80 75 60 40 20 10 15 40 70 90 100');
  await answer(page).getByText(/^In 50 generated years/).waitFor();
  const told = await answer(page).innerText();
  await page.locator('.answer').getByText(/Chance of a year without a dry day: .* to /).waitFor();
  // 126 m² at 2 US gal for 100 ft² (Texas Manual on Rainwater Harvesting 2005, from memory): 103 L, and up to the next 5.
  await page.getByText(/a first flush of 105.L and lets more drip/).waitFor();
  // It follows what is typed, before the field is left.
  const says = (same) => page.waitForFunction(([told, same]) => (document.querySelector('.answer .headline').innerText === told) === same, [told, same]);
  await page.getByLabel(/^Tank/).fill('150');
  await says(false);
  await page.getByLabel(/^Tank/).fill('15000');
  await says(true);
  t.diagnostic(`${count.taps} taps, ${count.characters} characters: about ${Math.round(seconds())} s`);
  assert.ok(seconds() < 60, `${seconds()} s`);
  assert.deepEqual(await accessibilityFindings(page), []);
  assert.ok((await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)) <= 0);

  // Before it is kept, it follows the finger.
  const tank = page.getByRole('slider', { name: 'Drag: Tank' });
  await tank.fill('10');
  assert.equal(await held(page.getByLabel(/^Tank/)), '1,000 L');
  assert.notEqual(await answer(page).innerText(), told);
  await tank.fill('13.88');
  assert.equal(await held(page.getByLabel(/^Tank/)), '15,000 L');
  assert.equal(await answer(page).innerText(), told);
  assert.equal(await held(page.getByLabel(/^Roof area/)), '126 m²');

  // It says the size that does it, whatever tank is drawn, and takes it; here no tank does, with half the people one.
  const size = page.locator('.answer .sized');
  await size.getByText('No dry day in 9 years of 10: no tank does it with this roof and this use.').waitFor();
  const take = page.getByRole('button', { name: 'Take the size that does it' });
  assert.ok(await take.isDisabled());
  await page.getByLabel(/^People/).fill('2');
  await size.getByText(/^No dry day in 9 years of 10: a tank of about [\d,]+.L( to [\d,]+.L)?\.$/).waitFor();
  const litres = (text) => Number(text.replace(/\D/g, ''));
  const most = litres((await size.innerText()).split(/ to |about /).at(-1));
  assert.match(String(most), /^\d\d0+$/, 'two digits: it is known no better');
  await hand.tap(take);
  const taken = litres(await held(page.getByLabel(/^Tank/)));
  assert.equal(taken, most);
  assert.match(await size.innerText(), /a tank of about/, 'it stays');
  await page.getByLabel(/^People/).fill('4');
  await page.getByLabel(/^Tank/).fill('15000');
  await says(true);

  // It waits when another place is looked at.
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Diary' }).tap();
  await page.getByRole('button', { name: 'Sketch my house' }).tap();
  assert.equal(await answer(page).innerText(), told);
  assert.equal(await held(page.getByLabel(/^Tank/)), '15,000 L');
  const means = page.getByLabel(/^January to December/);
  assert.equal(await means.inputValue(), '95 80 75 60 40 20 10 15 40 70 90 100');
  // Means that are not twelve are not kept.
  await means.fill('95 80 75');
  await page.getByRole('button', { name: 'Keep this house' }).tap();
  await page.waitForFunction(() => document.activeElement?.tagName === 'TEXTAREA');
  await means.fill('95 80 75 60 40 20 10 15 40 70 90 100');
  await says(true);

  // What is refused is not kept: the field is shown.
  const people = page.getByLabel(/^People/);
  await people.fill('many');
  await page.getByRole('button', { name: 'Keep this house' }).tap();
  await page.waitForFunction(() => document.activeElement?.getAttribute('aria-invalid') === 'true');
  const [field, above] = [await people.boundingBox(), await page.locator('.answer').boundingBox()];
  assert.ok(field.y >= above.y + above.height, 'the answer does not lie over it');
  await people.fill('4');
  // A second tap on the button is meant for nothing in the place that comes: it is deaf for a moment.
  await page.evaluate(() => {
    const main = document.querySelector('main');
    window.hears = [];
    new MutationObserver(() => window.hears.push(getComputedStyle(main).pointerEvents)).observe(main, { attributeFilter: ['class'] });
  });
  await hand.tap(page.getByRole('button', { name: 'Keep this house' }));
  await page.waitForFunction(() => window.hears.join() === 'none,auto');
  assert.equal(await page.locator('h1.headline').innerText(), told);
  assert.deepEqual(page.problems, []);
});

test('a device of the United States begins in its units, and others can be taken for good', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: { ...PHONE, locale: 'en-US', timezoneId: 'America/Denver' } });
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: 'Sketch my house' }).tap();
  assert.equal(await held(page.getByLabel(/^Tank/)), '5,000 gal');
  await page.getByRole('button', { name: 'Metric', exact: true }).tap();
  await page.reload();
  await page.getByRole('button', { name: 'Sketch my house' }).tap();
  assert.equal(await held(page.getByLabel(/^Tank/)), '20,000 L');
  assert.deepEqual(page.problems, []);
});

test('a total of a year and its wet months are rain enough for a first answer', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: 'Sketch my house' }).tap();
  await page.getByLabel('Rain of the place').selectOption({ label: "A year's total" });
  await page.getByLabel('Rain in a year').fill('900');
  await page.getByLabel('Most of it falls from').selectOption({ label: 'Jan' });
  assert.match(await answer(page).innerText(), /Give the place's rain below/, 'no answer that knows of no dry season');
  await page.getByLabel(/^until/).selectOption({ label: 'Dec' });
  await answer(page).getByText(/^In 50 generated years/).waitFor();
  const even = await answer(page).innerText();
  await page.getByLabel('Most of it falls from').selectOption({ label: 'Jun' });
  await page.getByLabel(/^until/).selectOption({ label: 'Oct' });
  await page.waitForFunction((even) => document.querySelector('.answer .headline').innerText !== even, even);
  await page.getByText(/^90.% of the year's total is spread evenly over the months you named/).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  // It is there when the sketch is come back to, and what is kept names where it comes from.
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Diary' }).tap();
  await page.getByRole('button', { name: 'Sketch my house' }).tap();
  assert.equal(await held(page.getByLabel('Rain in a year')), '900 mm');
  assert.equal(await page.getByLabel('Most of it falls from').evaluate((list) => list.selectedOptions[0].text), 'Jun');
  await page.getByRole('button', { name: 'Keep this house' }).tap();
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Rain' }).tap();
  await page.getByText(/900.mm of rain a year, most of it from Jun to Oct, entered by hand/).first().waitFor();
  assert.deepEqual(page.problems, []);
});

test('a record from a file, the rain of a site on the phone, and round values in other units', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: 'Sketch my house' }).tap();
  await page.getByRole('button', { name: 'US', exact: true }).tap();
  assert.equal(await held(page.getByLabel(/^Tank/)), '5,000 gal');
  assert.equal(await held(page.getByLabel(/^Roof length/)), '50 ft');
  await page.getByLabel('Rain of the place').selectOption({ label: 'A daily record from a file' });
  await page.locator('.record input[type=file]').setInputFiles(join(data, 'hyderabad-daily.csv'));
  await page.locator('.record').getByText(/A mean year has/).waitFor();
  const told = await answer(page).innerText();
  assert.match(told, /^In 11 years of rain/);
  await page.getByRole('button', { name: 'Keep this house' }).tap();
  assert.equal(await page.locator('h1.headline').innerText(), told);
  // The next sketch has that rain already.
  await page.getByRole('banner').getByRole('button', { name: 'Sites' }).tap();
  await page.getByRole('button', { name: 'Sketch another house' }).tap();
  assert.match(await answer(page).innerText(), /^In 11 years of rain/);
  assert.deepEqual(page.problems, []);
});
