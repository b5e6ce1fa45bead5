// Years that haven't happened: seen beside the record, reckoned with, kept, given up; and a drier future.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { accessibilityFindings, openBrowser, openHost, startApp, started } from './stage.mjs';

const place = (page, name) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });
const headline = (page) => page.locator('h1.headline');

test('the house is reckoned with generated years, and they stay', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo/i }).first().tap();
  await place(page, 'Sizing').tap();
  const recorded = await headline(page).innerText();
  await page.getByText(/^Over 100 years drawn from this rain, \d+ had no dry day/).waitFor();

  await place(page, 'Rain').tap();
  const likeness = page.getByRole('region', { name: "Years that haven't happened yet" });
  assert.equal(await likeness.getByRole('row').count(), 8);
  await page.getByRole('button', { name: 'Reckon with 100 such years' }).tap();
  await page.getByText('Reckoned with 100 generated years, draw 1.').waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth), false);

  await page.reload();
  await started(page);
  await place(page, 'Sizing').tap();
  const generated = await headline(page).innerText();
  assert.match(generated, /^In 100 generated years, the water ran out in \d+; the longest dry stretch was \d+ days, in year \d+ of them\.$/);

  await place(page, 'Rain').tap();
  await page.getByRole('button', { name: 'Draw other years' }).tap();
  await page.getByText('Reckoned with 100 generated years, draw 2.').waitFor();
  await place(page, 'Sizing').tap();
  assert.notEqual(await headline(page).innerText(), generated);
  await page.getByRole('button', { name: 'Back to the rain as it was' }).tap();
  await page.getByText(/^Over 100 years drawn/).waitFor();
  assert.equal(await headline(page).innerText(), recorded);

  await place(page, 'Rain').tap();
  await page.getByText('A drier or wetter future').tap();
  await page.getByLabel('The whole year').selectOption({ label: '30\u00a0% less all year' });
  await place(page, 'Sizing').tap();
  assert.notEqual(await headline(page).innerText(), recorded);
  assert.deepEqual(page.problems, []);
});

test('twelve means wait while another place is open, and are run as generated years once they are kept', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: 'Sketch my house' }).tap();
  await page.getByRole('button', { name: 'Keep this house' }).tap();
  const means = [95, 80, 75, 60, 40, 20, 10, 15, 40, 70, 90, 100];
  const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  const field = (month) => page.getByLabel(months[month], { exact: true });
  await place(page, 'Rain').tap();
  await page.getByText('Enter twelve monthly means').tap();
  for (const month of [0, 1, 2, 3, 4, 5]) await field(month).fill(String(means[month]));
  await page.getByLabel('Where they come from').fill('A table');
  await place(page, 'House').tap();
  await place(page, 'Rain').tap();
  assert.match(await field(5).inputValue(), /^20\s?mm$/);
  for (const month of [6, 7, 8, 9, 10, 11]) await field(month).fill(String(means[month]));
  await page.getByRole('button', { name: 'Keep these means' }).tap();
  await page.getByText('Reckoned with 50 generated years, draw 1.').waitFor();
  await page.getByText('A table').first().waitFor();
  await place(page, 'Sizing').tap();
  assert.match(await headline(page).innerText(), /^In 50 generated years/);
  assert.deepEqual(page.problems, []);
});
