// What draws water: amounts worked out from habits, a garden that follows the weather, rationing.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { accessibilityFindings, openBrowser, openHost, startApp, started } from './stage.mjs';

const headline = (page) => page.locator('h1.headline');
const place = (page, name) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });
const part = (page, name) => page.locator('.part-name').filter({ hasText: name });

async function demo(t) {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo house/ }).tap();
  await headline(page).waitFor();
  return page;
}

// The control under a label of the sheet.
const control = (sheet, label) =>
  sheet.locator('label.field').filter({ has: sheet.page().locator(`.label:text-is("${label}")`) }).locator('input, select');

// Types into a field of the sheet and leaves it.
async function enter(sheet, label, text) {
  const field = control(sheet, label);
  await field.fill(text);
  await field.press('Tab');
}

// No barrier for axe, nothing wider than the phone, nothing too small for a thumb.
async function fits(page) {
  assert.deepEqual(await accessibilityFindings(page), []);
  const found = await page.evaluate(() => {
    const dialog = document.querySelector('dialog[open]');
    const small = [...dialog.querySelectorAll('button, select, input, summary')]
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && box.height < 43.5)
      .map(({ element, box }) => `${element.textContent} ${box.height}`);
    return { wider: dialog.scrollWidth - dialog.clientWidth, small };
  });
  assert.deepEqual(found, { wider: 0, small: [] });
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

test('habits are worked out and put into the uses, and are there again after a new start', async (t) => {
  const page = await demo(t);
  const before = await headline(page).innerText();
  await part(page, 'Washing and toilet').tap();
  const sheet = page.getByRole('dialog');
  await sheet.getByText('Work it out from habits').tap();
  // Five people at 10 L a shower, a shower a day each: 50 L a day, by hand.
  await enter(sheet, 'People', '5');
  const habit = (name) => sheet.locator('details.habits > details').filter({ has: page.locator('summary', { hasText: name }) });
  const showers = habit(/^Showers:/);
  await showers.locator('summary').tap();
  await enter(showers, 'Times a week, each person', '7');
  await enter(showers, 'Water each time', '10 L');
  await showers.locator('summary').getByText(/Showers: 50\sL\/day → Washing and toilet/).waitFor();
  // A dry toilet, chosen among the published figures.
  const toilet = habit(/^Toilet:/);
  await toilet.locator('summary').tap();
  await control(toilet, 'Published figure').selectOption({ label: 'Dry toilet, none' });
  await toilet.locator('summary').getByText(/Toilet: 0\sL\/day/).waitFor();
  await fits(page);
  await sheet.getByRole('button', { name: 'Put these amounts into the uses' }).tap();
  await page.getByText('The amounts stand in the uses now.').waitFor();
  // 3 L to drink and 6 L to cook with for each of five: 45 L a day, by hand.
  await part(page, 'Drinking and cooking').getByText(/45\sL\/day/).waitFor();
  assert.notEqual(await headline(page).innerText(), before);
  // What was said is there again after a new start.
  await page.reload();
  await started(page);
  await part(page, 'Washing and toilet').tap();
  await sheet.getByText('Work it out from habits').tap();
  assert.equal(await control(sheet, 'People').inputValue(), '5');
  assert.deepEqual(page.problems, []);
});

test('a garden by the weather asks for its climate and then waters as the weather wants', async (t) => {
  const page = await demo(t);
  await page.getByRole('button', { name: 'Add: Use' }).tap();
  const sheet = page.getByRole('dialog');
  await control(sheet, 'Kind').selectOption({ label: 'Garden' });
  await control(sheet, 'Amount given').selectOption({ label: 'Garden, by the weather' });
  await enter(sheet, 'Name', 'Potatoes');
  await sheet.getByText(/Potatoes follows the weather/).first().waitFor();
  await control(sheet, 'Given as').selectOption({ label: 'Reference evapotranspiration' });
  for (const month of MONTHS) {
    await enter(sheet, `${month}, a day`, '4 mm');
  }
  await enter(sheet, 'Watered area', '12 m2');
  await sheet.getByText(/In an average year: .* of rain stay in its soil, watering adds/).waitFor();
  await fits(page);
  await control(sheet, 'Given as').selectOption({ label: 'Latitude and temperatures' });
  await sheet.getByText(/Potatoes follows the weather/).first().waitFor();
  await enter(sheet, 'Latitude, degrees (south: 34 S or −34)', '45.72 N');
  // FAO-56, Example 20: Lyon in July, 14.8 and 26.6 °C: 5.0 mm a day. The climate is known when all of it is there.
  for (const month of MONTHS) {
    await enter(sheet, `${month}, mean daily high`, month === 'Jul' ? '26.6' : '20');
    await enter(sheet, `${month}, mean daily low`, month === 'Jul' ? '58.64 °F' : '10');
  }
  await sheet.getByText(/5\.0?\d?\smm in Jul/).waitFor();
  await sheet.getByRole('button', { name: 'Close' }).tap();
  await place(page, 'Sizing').tap();
  await page.getByText(/^Potatoes\. In an average year/).waitFor();
  assert.deepEqual(page.problems, []);
});

test('a step of rationing cuts, and its days are told', async (t) => {
  const page = await demo(t);
  await page.getByRole('button', { name: 'Add: Rationing step' }).tap();
  const sheet = page.getByRole('dialog');
  await enter(sheet, 'In force below', '60 %');
  await enter(sheet, 'Cut Washing and toilet by', '50 %');
  await sheet.getByText(/In force on \d+ days a year/).waitFor();
  await fits(page);
  await sheet.getByRole('button', { name: 'Close' }).tap();
  await place(page, 'Sizing').tap();
  await page.getByText(/^Rationing step\. In force on/).waitFor();
  await page.getByRole('columnheader', { name: 'rationed days' }).first().waitFor();
  assert.deepEqual(page.problems, []);
});
