// The checks on the sheets of a tank and a feed, at a phone's size: a value entered changes the verdict, stays, and can be
// taken back.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { accessibilityFindings, openBrowser, openHost, startApp, started } from './stage.mjs';

const sheet = (page) => page.locator('dialog.sheet');
const check = (page, title) => sheet(page).locator('.check', { has: page.getByRole('heading', { name: title, exact: true }) });
const verdict = (page, title) => check(page, title).locator('.verdict, summary > span').first();
const openPart = (page, name) => page.locator('.part-name', { hasText: name }).tap();
// What asks for attention says all but how it is reckoned; the rest is one line that opens to all of it.
const reckoned = (page, title) => check(page, title).locator('summary').first().tap();

async function enter(page, title, label, text) {
  const field = check(page, title).getByLabel(label).first();
  await field.fill(text);
  await field.press('Tab');
}

test('a feed and a tank answer for themselves, and for what is entered', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo/i }).first().tap();

  await openPart(page, 'Kitchen corner');
  await verdict(page, 'Gutter').filter({ hasText: /^Not enough, if the usual sizes are yours: \d+\s%\stoo little/ }).waitFor();
  await reckoned(page, 'Gutter');
  await enter(page, 'Gutter', 'Gutter width at the top', '8 in');
  await verdict(page, 'Gutter').filter({ hasText: /^Enough, if the usual sizes are yours: \d+\s%\sto spare/ }).waitFor();
  assert.ok(await check(page, 'Gutter').locator('details').evaluate((details) => details.open), 'the disclosure stays open');
  assert.deepEqual(await accessibilityFindings(page), []);
  const widths = await sheet(page).evaluate((dialog) => [dialog.scrollWidth, dialog.clientWidth]);
  assert.ok(widths[0] <= widths[1], `the sheet scrolls sideways: ${widths}`);
  await page.getByRole('button', { name: 'Close' }).tap();

  await openPart(page, 'New tank');
  await verdict(page, 'Overflow').filter({ hasText: /^Enough, if the usual sizes are yours:/ }).waitFor();
  await reckoned(page, 'Overflow');
  await enter(page, 'Overflow', 'Overflow pipe, inside diameter', '30 mm');
  await verdict(page, 'Overflow').filter({ hasText: /^Not enough: \d+\s%\stoo little/ }).waitFor();

  await page.reload();
  await started(page);
  await openPart(page, 'New tank');
  await verdict(page, 'Overflow').filter({ hasText: /^Not enough:/ }).waitFor();
  await reckoned(page, 'Overflow');
  await check(page, 'Overflow').getByRole('button', { name: /^Back to the usual value/ }).tap();
  await verdict(page, 'Overflow').filter({ hasText: /^Enough, if the usual sizes are yours:/ }).waitFor();
  assert.deepEqual(page.problems, []);
});

test('a cabin on the same store and a portable tank answer for themselves', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo/i }).first().tap();
  await openPart(page, 'Washing and toilet');
  const cabin = 'Outbuilding on this store';
  await verdict(page, cabin).filter({ hasText: 'Its taps are in the house' }).waitFor();
  await reckoned(page, cabin);
  await check(page, cabin).getByLabel('Its taps are').selectOption({ label: 'In an outbuilding' });
  await verdict(page, cabin).filter({ hasText: /^Enough, if the usual sizes are yours: \d+\s%\sto spare/ }).waitFor();
  // 300 m of a pipe of 16 mm never carry what a bathroom draws at once; house and cabin share one pump.
  await enter(page, cabin, 'Pipe length', '300 m');
  await enter(page, cabin, 'Pipe, inside diameter', '16 mm');
  await verdict(page, cabin).filter({ hasText: /^Not enough, if the usual sizes are yours: none of what is wanted/i }).waitFor();
  await verdict(page, 'House and outbuilding at once').filter({ hasText: /^Not enough/ }).waitFor();
  await check(page, 'What it takes from the others').locator('summary').tap();
  await check(page, 'What it takes from the others').locator('.verdict').filter({ hasText: /The others get .* of theirs/ }).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);

  await sheet(page).getByLabel('Kind').selectOption({ label: 'Portable tank' });
  await sheet(page).getByLabel('Amount given').selectOption({ label: 'For each time' });
  // 60 L for two at 15 L each are two days.
  await verdict(page, 'How long it lasts').filter({ hasText: /it lasts 2\sdays, 3\sdays wanted, for 2 people/ }).waitFor();
  await verdict(page, 'What it weighs full').filter({ hasText: /kg full|lb full/ }).waitFor();
  await verdict(page, 'What a filling takes').filter({ hasText: /^Enough(, if the usual sizes are yours)?: By the readings, or else as in a middle year, the store can give/ }).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  const widths = await sheet(page).evaluate((dialog) => [dialog.scrollWidth, dialog.clientWidth]);
  assert.ok(widths[0] <= widths[1], `the sheet scrolls sideways: ${widths}`);
  assert.deepEqual(page.problems, []);
});

test('the focus stays among the barriers when one is taken out', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo/i }).first().tap();
  await openPart(page, 'Drinking and cooking');
  const focused = () => page.waitForFunction(() => document.activeElement.getAttribute('aria-label') ?? document.activeElement.tagName);
  for (const [out, next] of [['Carbon cartridge', 'Take out Ultraviolet lamp'], ['Ultraviolet lamp', 'Take out Sediment cartridge'], ['Sediment cartridge', 'SELECT']]) {
    await sheet(page).getByRole('button', { name: `Take out ${out}` }).tap();
    await sheet(page).getByRole('button', { name: `Take out ${out}` }).waitFor({ state: 'detached' });
    assert.equal(await (await focused()).jsonValue(), next);
  }
  assert.deepEqual(page.problems, []);
});
