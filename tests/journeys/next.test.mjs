// What to change next, on a phone: judged, tried beside the house, kept as an option, made real.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { NOTICED_MS, accessibilityFindings, openBrowser, openHost, slowed, startApp, started } from './stage.mjs';

const headline = (page) => page.locator('h1.headline');
const place = (page, name) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });
const banner = (page) => page.getByRole('group', { name: 'Trial' });

async function demoSizing(t) {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo house/ }).tap();
  await place(page, 'Sizing').tap();
  return page;
}

async function judge(page) {
  // What comes with the answer above moves the button.
  await page.locator('.under-way').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Find what helps most' }).tap();
  await page.getByText('One after the other').waitFor();
  await page.getByRole('progressbar').waitFor({ state: 'detached' });
}

test('what helps most is found without holding the page, tried, kept as an option and made real', async (t) => {
  const page = await demoSizing(t);
  const answer = await headline(page).innerText();
  const slow = await slowed(page);
  // What else runs on this machine holds the page too: the best of three tries counts.
  let held = [];
  for (let tries = 0; tries < 3; tries += 1) {
    await judge(page);
    held = await slow.tasks();
    if (!held.some((ms) => ms > NOTICED_MS)) break;
  }
  t.diagnostic(`held longer than 50 ms, in ms: ${held.join(', ') || 'never'}`);
  await slow.end();

  await page.getByLabel('Ranked by').selectOption({ label: 'Dry days avoided' });
  await page.getByText(/other changes/).tap();
  await page.getByRole('button', { name: /^Try it: Raise Old tank/ }).first().tap();
  await banner(page).getByText(/fewer dry days in the worst year.*What you change goes to it; the house stays as it is/).waitFor();
  assert.ok(await page.evaluate(() => scrollY < 10), 'the trial is told at the top');
  assert.equal(await headline(page).innerText(), answer, 'the house itself is as it was');
  await page.locator('.trial').getByText(/fewer dry days in the worst year/).waitFor();
  await banner(page).getByRole('button', { name: 'Keep as an option' }).tap();
  await page.getByText(/is kept as an option/).waitFor();
  await page.getByLabel('Name of the option').fill('Level rims');
  await page.getByLabel('Name of the option').press('Tab');
  await page.locator('.options').getByText(/fewer dry days in the worst year/).waitFor();

  // A sheet changes the trial; the house has its old tank.
  await place(page, 'House').tap();
  await page.locator('svg .part[aria-label^="New tank"]').tap();
  const sheet = page.getByRole('dialog');
  await sheet.getByText(/This is a trial/).waitFor();
  await sheet.getByLabel('Capacity to the overflow').fill('20000 L');
  await sheet.getByLabel('Capacity to the overflow').press('Tab');
  await sheet.getByText(/Holds 20,000/).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  await sheet.getByRole('button', { name: 'Close' }).tap();
  await banner(page).getByRole('button', { name: 'Throw it away' }).tap();
  await page.getByText('The trial is gone; the house is as it was.').waitFor();
  await page.locator('svg .part[aria-label^="New tank"]').tap();
  await sheet.getByText(/Holds 9,000/).waitFor();
  await sheet.getByRole('button', { name: 'Close' }).tap();

  // The option outlives the night, goes and comes back, opens again, and becomes the house.
  await page.reload();
  await started(page);
  await place(page, 'Sizing').tap();
  await page.getByRole('button', { name: 'Remove Level rims' }).tap();
  await page.getByText('“Level rims” is removed.').waitFor();
  assert.equal(await page.locator('.options').count(), 0);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.getByRole('button', { name: 'Open Level rims' }).tap();
  await banner(page).getByText(/Level rims/).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  await banner(page).getByRole('button', { name: 'Make it real' }).tap();
  await page.getByText('The change is now part of the house.').waitFor();
  assert.notEqual(await headline(page).innerText(), answer);
  assert.equal(await page.locator('.options').count(), 0, 'an option that is the house is no option');
  assert.deepEqual(held.filter((ms) => ms > NOTICED_MS), [], 'something held the page so long that it is noticed');
  assert.deepEqual(page.problems, []);
});

test('a price of the household ranks anew, and is kept', async (t) => {
  const page = await demoSizing(t);
  await judge(page);
  await page.getByText('Prices', { exact: true }).tap();
  const price = page.getByLabel(/^A gutter with downspout/);
  await price.fill('15000');
  await price.press('Tab');
  await page.getByText(/9 other changes|other changes/).tap();
  await page.getByText(/it costs 15,000 at your prices, that is/).first().waitFor();
  await page.reload();
  await started(page);
  await place(page, 'Sizing').tap();
  await judge(page);
  await page.getByText('Prices', { exact: true }).tap();
  assert.equal(await price.inputValue(), '15,000');
});

test('how a house is reckoned is tried beside it, and the trial waits through a reload and another house', async (t) => {
  const page = await demoSizing(t);
  const start = () => page.getByLabel('Tanks on the first day');
  const fold = () => page.locator('summary', { hasText: 'How it is reckoned' }).last().tap();
  await fold();
  const answer = await headline(page).innerText();
  await page.locator('details[open]').getByRole('button', { name: 'Try changes beside the house' }).tap();
  await start().selectOption({ label: 'Empty' });
  await banner(page).getByText(/Trial/).waitFor();
  assert.equal(await headline(page).innerText(), answer, 'the house is reckoned as it was');
  await page.locator('input[type=range]').first().fill('0.5');
  const tried = await page.locator('.trial').innerText();

  // Another house has no trial; back here it stands as it was left.
  await page.getByRole('banner').getByRole('button').tap();
  await page.getByRole('button', { name: 'Add the demo house' }).tap();
  assert.equal(await banner(page).count(), 0);
  await page.getByRole('banner').getByRole('button').tap();
  await page.locator('.sites .part-name').first().tap();
  await banner(page).waitFor();

  await page.reload();
  await started(page);
  await place(page, 'Sizing').tap();
  await banner(page).waitFor();
  assert.equal(await page.locator('.trial').innerText(), tried);
  assert.equal(await page.locator('input[type=range]').first().inputValue(), '0.5');
  await fold();
  assert.equal(await start().locator('option:checked').innerText(), 'Empty');
  await banner(page).getByRole('button', { name: 'Throw it away' }).tap();
  assert.equal(await start().locator('option:checked').innerText(), 'Full');
  await page.reload();
  await started(page);
  assert.equal(await banner(page).count(), 0);
  assert.deepEqual(page.problems, []);
});
