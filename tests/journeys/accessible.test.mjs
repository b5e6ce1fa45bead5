// No barrier that axe can find, at both sizes, light and dark.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DESK, PHONE, accessibilityFindings, openBrowser, openHost, startApp } from './stage.mjs';

for (const [size, look] of Object.entries({ phone: PHONE, desk: DESK })) {
  for (const colorScheme of ['light', 'dark']) {
    test(`first start on a ${size}, ${colorScheme}`, async (t) => {
      const host = await openHost(t);
      const browser = await openBrowser(t, { look: { ...look, colorScheme } });
      const page = await startApp(browser, host.address());
      assert.deepEqual(await accessibilityFindings(page), []);
    });
  }
}

test('whoever uses keys is never left with nothing: the focus stays where what had it went', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: DESK });
  const page = await startApp(browser, host.address());
  const place = (name) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });
  await page.getByRole('button', { name: /demo house/ }).press('Enter');
  await place('Sizing').press('Enter');
  const on = () => page.evaluate(() => document.activeElement.textContent || document.activeElement.tagName);
  const rests = async (what) => {
    await page.waitForTimeout(150);
    assert.notEqual(await page.evaluate(() => document.activeElement.tagName), 'BODY', what);
  };
  // The work takes the button's place, and its end the place of the button that stops it.
  await page.getByRole('button', { name: 'Find what helps most' }).press('Enter');
  await rests('the work began');
  await page.getByText(/changes? were run, the best first/).waitFor();
  await rests('the work ended');
  // A trial is told at the top, and there the focus goes on.
  await page.getByRole('button', { name: /^Try it: / }).first().press('Enter');
  await page.waitForTimeout(150);
  assert.match(await on(), /Make it real/);
  await page.getByRole('group', { name: 'Trial' }).getByRole('button', { name: 'Throw it away' }).press('Enter');
  await rests('the trial went');
  await page.getByRole('button', { name: 'Dismiss' }).press('Enter');
  await rests('the notice went');
  // Rain that was read is judged where the focus is.
  await place('Rain').press('Enter');
  await page.getByRole('button', { name: 'Give other rain' }).press('Enter');
  await page.getByText('Paste a record').press('Enter');
  const days = Array.from({ length: 31 }, (_, day) => `2004-07-${String(day + 1).padStart(2, '0')}, ${day}`);
  await page.getByLabel('Date and depth, a day a line').fill(days.join('\n'));
  await page.getByRole('button', { name: 'Read it' }).press('Enter');
  await page.waitForTimeout(150);
  assert.match(await on(), /Keep this record/);
  await page.getByRole('button', { name: 'Discard it' }).press('Enter');
  await rests('the record was left');
  // What is done on a sheet is told on it.
  await place('House').press('Enter');
  await page.locator('.part-name', { hasText: 'Drinking and cooking' }).press('Enter');
  const sheet = page.getByRole('dialog');
  await sheet.getByRole('button', { name: 'Move Carbon cartridge up' }).press('Enter');
  await page.waitForTimeout(150);
  assert.match(await page.evaluate(() => document.activeElement.ariaLabel), /^Move Carbon cartridge /);
  await sheet.getByRole('button', { name: 'Take out Carbon cartridge' }).press('Enter');
  await sheet.locator('.notices').getByRole('button', { name: 'Undo' }).press('Enter');
  await sheet.getByRole('button', { name: 'Take out Carbon cartridge' }).waitFor();
  await page.waitForTimeout(150);
  assert.equal(await page.evaluate(() => document.activeElement.id), 'sheet-name');
  await sheet.getByRole('button', { name: 'Duplicate' }).press('Enter');
  await sheet.getByText(/^This is .*, a copy of Drinking and cooking\.$/).waitFor();
  await page.waitForTimeout(150);
  assert.equal(await page.evaluate(() => document.activeElement.id), 'sheet-name');
  // Escape shuts a sheet with what was typed last, once and for all.
  const amount = sheet.getByLabel(/^For each/);
  await page.keyboard.press('Escape');
  await page.locator('.part-name', { hasText: 'Drinking and cooking' }).first().press('Enter');
  for (const litres of ['9', '8']) {
    await amount.focus();
    await page.keyboard.type(litres);
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'hidden' });
    await page.locator('.part-name', { hasText: 'Drinking and cooking' }).first().press('Enter');
    assert.match(await amount.inputValue(), new RegExp(`^${litres}\\s`));
  }
  // Charts are read by arrows.
  await page.keyboard.press('Escape');
  await place('Sizing').press('Enter');
  const reading = page.getByRole('slider', { name: /.+/ }).and(page.locator('.reading')).first();
  await reading.press('ArrowRight');
  const first = await reading.textContent();
  await reading.press('End');
  assert.notEqual(await reading.textContent(), first);
  assert.deepEqual(page.problems, []);
});
