// Fit to drink, at a phone's size: a chain is built, its weakest gap is named, a failing test says what to do next.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { accessibilityFindings, openBrowser, openHost, startApp, started } from './stage.mjs';

async function enter(scope, label, text) {
  await scope.getByLabel(label).fill(text);
  await scope.getByLabel(label).press('Tab');
}

test('a chain is built, its gap is seen, and a failing test says the next step', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo house/ }).tap();
  await page.locator('.part-name', { hasText: 'Drinking and cooking' }).tap();
  const sheet = page.getByRole('dialog');
  // A class A lamp leaves viruses: EPA's table gives 40 mJ/cm² half a log of the hardest (from memory).
  await sheet.getByText(/Weakest: viruses\. 0\.5 of the 5 log needed are proven/).waitFor();
  await sheet.getByRole('button', { name: 'Take out Ultraviolet lamp' }).tap();
  await sheet.getByText('Nothing here is proven to stop any germ.').waitFor();
  // A new barrier counts for nothing until something proves it.
  await sheet.getByLabel(/^Another barrier/).selectOption({ label: 'Ceramic candle' });
  await sheet.getByRole('button', { name: 'Add it' }).tap();
  await sheet.getByText(/Nothing proves what it stops/).waitFor();
  await sheet.getByText('Nothing here is proven to stop any germ.').waitFor();
  await sheet.getByLabel('How it is reckoned: Ceramic candle').tap();
  await sheet.getByLabel(/^Proof against germs/).last().selectOption({ label: 'Its own certificate, in log' });
  await enter(sheet.locator('.barrier').last(), /^Bacteria, log/, '4');
  await sheet.getByText('4 log of bacteria. Counted as certified.').waitFor();
  await sheet.getByText(/Weakest: viruses\. 0 of the 5 log needed are proven/).waitFor();
  // Boiling closes it, by WHO's lower figures (from memory).
  await sheet.getByLabel(/^Another barrier/).selectOption({ label: 'Boiling' });
  await sheet.getByRole('button', { name: 'Add it' }).tap();
  await sheet.getByText(/reaches WHO's highest class/).waitFor();
  // E. coli: none in any 100 mL (WHO).
  await enter(sheet, /^Found/, 'blue');
  await sheet.getByRole('button', { name: 'Write it into the diary' }).tap();
  await sheet.getByText(/Write a number/).waitFor();
  await sheet.getByLabel(/^Found/).fill('12');
  await sheet.getByRole('button', { name: 'Write it into the diary' }).tap();
  await sheet.getByText(/A test of E\.\scoli is over the limit/).waitFor();
  await sheet.getByText(/Stop drinking it now\. Boil every glass for 1 min/).first().waitFor();
  // The word is spoken on the sheet itself: what lies behind it isn't heard.
  await sheet.locator('.notices').getByText(/Stop drinking it now/).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  await sheet.getByRole('button', { name: 'Close' }).tap();
  // It is kept, and told at Upkeep too.
  await page.reload();
  await started(page);
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Upkeep' }).tap();
  await page.getByText(/12\sin 100\smL, .*Drinking and cooking/).waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  await page.getByRole('button', { name: 'Open its barriers: Drinking and cooking' }).tap();
  await page.getByRole('dialog').getByText(/Counted if every glass is boiled/).waitFor();
  assert.deepEqual(page.problems, []);
});

test('what is on a roof reaches the tap, and a tank tells its dose', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo house/ }).tap();
  const sheet = page.getByRole('dialog');
  await page.locator('.part-name', { hasText: 'South roof' }).tap();
  await sheet.getByText('7 questions not answered yet.').waitFor();
  await sheet.getByLabel('How it is reckoned: What gets into its water').tap();
  await sheet.getByLabel(/^Lead flashing/).selectOption({ label: 'Yes' });
  await sheet.getByText(/test for lead/).waitFor();
  await sheet.getByRole('button', { name: 'Close' }).tap();
  await page.locator('.part-name', { hasText: 'Drinking and cooking' }).tap();
  await sheet.getByText(/South roof: lead flashing.*No barrier here is certified against it/).waitFor();
  await sheet.getByRole('button', { name: 'Close' }).tap();
  // enHealth 2011, section 5.2: 40 mL of 12.5 % for 1,000 L, 5 mg/L. Joined with a lower rim it never holds more than 7,830 of
  // its 9,000 L, which take 313 mL.
  await page.locator('.part-name', { hasText: 'New tank' }).tap();
  await sheet.locator('summary', { hasText: 'Chlorine dose' }).tap();
  await sheet.getByLabel(/^With/).selectOption({ label: 'liquid pool chlorine 12.5 %' });
  await sheet.getByText(/310\smL \(11\sfl oz\) of liquid pool chlorine 12\.5\s% bring the tank as full as it gets \(7,830\sL\) to 5\smg\/L/).first().waitFor();
  assert.deepEqual(await accessibilityFindings(page), []);
  assert.deepEqual(page.problems, []);
});
