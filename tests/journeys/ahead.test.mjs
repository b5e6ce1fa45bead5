// The weeks ahead at a phone's size: nothing without a reading; from a reading how long the water lasts, how much is
// safe, what would help; the same in a line on the house.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { test } from 'node:test';
import { accessibilityFindings, asFile, exported, openBrowser, openHost, startApp } from './stage.mjs';

const place = (page, name) => page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name });

// The demo house goes out in a file and comes back with a diary: both stores read on a day, no rain measured since.
async function withReadings(page, share, day) {
  await page.getByRole('button', { name: /demo house/ }).click();
  await page.getByRole('banner').getByRole('button', { name: 'Sites' }).click();
  const out = await exported(page);
  const tanks = out.sites[0].site.system.tanks.map((tank) => tank.id);
  const now = Date.now();
  out.sites[0].diary = [tanks[0], tanks[2]].map((tank, at) => ({
    id: now - at,
    on: day,
    what: { level: { store: tank, at: { share } } },
  }));
  await page.locator('input[type=file]').setInputFiles(asFile(out));
  await page.getByRole('button', { name: /Replace/ }).click();
}

const today = (days = 0) => {
  const now = new Date(Date.now() + days * 86_400_000);
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
};

test('without a reading it asks for one', async (t) => {
  const host = await openHost(t);
  const page = await startApp(await openBrowser(t), host.address());
  await page.getByRole('button', { name: /demo house/ }).tap();
  await place(page, 'Ahead').tap();
  await page.getByText(/Write down how full the tanks are/).waitFor();
  await page.getByRole('button', { name: 'Write down a level' }).tap();
  await page.locator('.entry #entry-number').waitFor();
  assert.deepEqual(page.problems, []);
});

test('from a reading it says how long the water lasts, and with less use longer', async (t) => {
  const host = await openHost(t);
  const page = await startApp(await openBrowser(t), host.address());
  await withReadings(page, 0.12, today());
  await place(page, 'House').tap();
  await page.locator('h1.headline', { hasText: /^Water from today: in a middle year/ }).waitFor();
  await page.getByRole('main').getByRole('button', { name: 'Ahead' }).tap();
  await page.locator('h1.headline', { hasText: /[Tt]he water (lasts|runs short)/ }).waitFor();
  await page.getByText(/If it never rains again: \d+ days?, until/).waitFor();
  const safe = page.getByRole('group', { name: 'How much is safe' });
  const litres = async () => Number((await safe.getByRole('status').innerText()).match(/can use ([\d.,]+)/)[1].replace(',', ''));
  await safe.getByRole('combobox', { name: 'To last' }).selectOption({ label: '1 month' });
  await page.waitForTimeout(500);
  const careful = await litres();
  await safe.getByRole('combobox', { name: 'With a chance of' }).selectOption({ label: '5 in 10' });
  await page.waitForTimeout(500);
  assert.ok((await litres()) >= careful, 'a smaller chance allows no less');
  // To any day.
  await safe.getByLabel('Until').fill(today(10));
  await safe.getByRole('combobox', { name: 'To last' }).locator('option:checked', { hasText: '10 days' }).waitFor({ state: 'attached' });
  await page.getByText(/Use a quarter less: in a middle year/).waitFor();
  await page.getByText(/The rain of 12 years on record/).waitFor();
  await safe.getByRole('combobox', { name: 'Rain to come' }).selectOption({ label: 'as generated years' });
  await page.getByText(/60 years were drawn/).waitFor();
  // What is announced takes the place of the storm of the checks.
  const storm = page.locator('.notes', { hasText: /there is room for/ });
  const [announced, lasts] = ['Rain announced', 'It lasts'].map((label) => page.getByLabel(label, { exact: true }));
  assert.equal((await announced.inputValue()).replaceAll('\u00a0', ' '), '100 mm');
  await announced.fill('0');
  await storm.getByText(/: 0\sL come, there is room for/).first().waitFor();
  await lasts.fill('1');
  await announced.fill('2000');
  await storm.getByText(/full after .*, then .* spill/).first().waitFor();
  assert.deepEqual(page.problems, []);
});

for (const colorScheme of ['light', 'dark']) {
  test(`the weeks ahead have no barrier that axe can find and don't scroll sideways, ${colorScheme}`, async (t) => {
    const host = await openHost(t);
    for (const [size, viewport] of Object.entries({ phone: { width: 390, height: 844 }, desk: { width: 1280, height: 800 } })) {
      const browser = await openBrowser(t, { look: { viewport, colorScheme } });
      const page = await startApp(browser, host.address());
      await withReadings(page, 0.12, today());
      for (const name of ['House', 'Ahead']) {
        await place(page, name).click();
        await page.getByText(/If it never rains again|if it never rains again/).first().waitFor();
        assert.deepEqual(await accessibilityFindings(page), [], name);
        const wider = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        assert.ok(wider <= 0, `${name} is ${wider} px wider than the screen`);
        if (process.env.PICTURES) await page.screenshot({ path: join(process.env.PICTURES, `${name}-${size}-${colorScheme}.png`), fullPage: true });
      }
    }
  });
}
