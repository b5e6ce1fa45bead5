// The drawing as the menu: made larger, a valve turned, a tank added where it stands.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { accessibilityFindings, openBrowser, openHost, startApp } from './stage.mjs';

async function demo(t) {
  const host = await openHost(t);
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo house/ }).tap();
  await page.locator('.zoom').waitFor();
  return page;
}

const tanks = (page) => page.locator('svg .part[aria-label*=", Tank"]').count();

test('the drawing grows within its frame and comes back whole', async (t) => {
  const page = await demo(t);
  const sizes = () => page.locator('.zoom').evaluate((zoom) => ({
    inner: zoom.scrollWidth, outer: zoom.clientWidth, page: document.documentElement.scrollWidth - innerWidth,
  }));
  const whole = await sizes();
  assert.equal(whole.inner, whole.outer);
  await page.getByRole('button', { name: 'Larger drawing' }).tap();
  const larger = await sizes();
  assert.ok(larger.inner > 1.4 * larger.outer, JSON.stringify(larger));
  assert.ok(larger.page <= 0, 'the page itself does not scroll sideways');
  assert.deepEqual(await accessibilityFindings(page), []);
  await page.getByRole('button', { name: 'Whole drawing' }).tap();
  assert.deepEqual(await sizes(), whole);
});

test('two fingers make it larger', async (t) => {
  const page = await demo(t);
  await page.locator('.zoom').scrollIntoViewIfNeeded();
  const box = await page.locator('.zoom').boundingBox();
  const [x, y] = [box.x + box.width / 2, Math.max(box.y, 0) + 150];
  const session = await page.context().newCDPSession(page);
  const touch = (type, apart) => session.send('Input.dispatchTouchEvent', {
    type, touchPoints: apart ? [{ x: x - apart, y, id: 0 }, { x: x + apart, y, id: 1 }] : [],
  });
  await touch('touchStart', 30);
  for (const apart of [40, 50, 60, 70]) await touch('touchMove', apart);
  await touch('touchEnd', 0);
  const { inner, outer, scale } = await page.locator('.zoom').evaluate((zoom) => ({
    inner: zoom.scrollWidth, outer: zoom.clientWidth, scale: visualViewport.scale,
  }));
  assert.ok(inner > 1.8 * outer, `${inner} in ${outer}`);
  assert.equal(scale, 1, 'the page stays as large as it was');
});

test('a valve is turned and a tank added from the drawing, and both undone', async (t) => {
  const page = await demo(t);
  const headline = () => page.locator('h1.headline').textContent();
  const before = await headline();
  await page.locator('svg .part[aria-label*="valve open"] .tap').first().tap({ force: true });
  await page.getByRole('button', { name: 'Shut the valve' }).tap();
  await page.getByText('each side keeps its own level').waitFor();
  assert.notEqual(await headline(), before, 'the store is divided');
  // Whoever came by key goes on where they were.
  await page.waitForFunction(() => document.activeElement?.closest('.bundle'));
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.getByRole('button', { name: 'Shut the valve' }).waitFor();
  assert.equal(await headline(), before);
  await page.locator('.bundle').getByRole('button', { name: 'Close' }).tap();

  const count = await tanks(page);
  await page.getByRole('button', { name: 'Add a tank', exact: true }).tap();
  await page.locator('svg .part[aria-label*=", Tank"]').first().focus();
  await page.keyboard.press('Enter');
  await page.getByText('stands beside').waitFor();
  assert.equal(await tanks(page), count + 1);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.waitForFunction((count) => document.querySelectorAll('svg .part[aria-label*=", Tank"]').length === count, count);
});

test('a row of parts closes behind whoever goes on by keys', async (t) => {
  const page = await demo(t);
  await page.locator('svg .part[aria-label*="valve open"]').first().focus();
  await page.keyboard.press('Enter');
  const row = page.locator('.bundle');
  await page.waitForFunction(() => document.activeElement?.closest('.bundle'));
  for (let at = await row.getByRole('button').count(); at > 0; at--) await page.keyboard.press('Tab');
  await row.waitFor({ state: 'detached' });
  assert.notEqual(await page.evaluate(() => document.activeElement.tagName), 'BODY');
});

test('a tank that stands free is added on the ground line, by a finger and by the keyboard', async (t) => {
  const page = await demo(t);
  const count = await tanks(page);
  const free = page.getByRole('button', { name: 'Add a tank that stands free' });
  const { width, height } = await free.locator('.tap').boundingBox();
  assert.ok(Math.round(Math.min(width, height)) >= 44, `${width} × ${height}`);
  await free.locator('.tap').tap();
  await page.getByText('stands free on the ground').waitFor();
  assert.equal(await tanks(page), count + 1);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.waitForFunction((count) => document.querySelectorAll('svg .part[aria-label*=", Tank"]').length === count, count);
  await free.focus();
  await page.keyboard.press('Enter');
  await page.getByText('stands free on the ground').waitFor();
  assert.equal(await tanks(page), count + 1);
  assert.deepEqual(await accessibilityFindings(page), []);
});

test('a valve is pulled by a finger, and a tap on it still opens its row', async (t) => {
  const page = await demo(t);
  const headline = () => page.locator('h1.headline').textContent();
  const before = await headline();
  const valve = page.locator('svg .part[aria-label*="valve open"] .tap').first();
  await valve.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await valve.boundingBox();
  const session = await page.context().newCDPSession(page);
  const touch = (type, at) => session.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [{ ...at, id: 0 }] : [] });
  const [mid, down] = [x + width / 2, y + height / 2];
  await touch('touchStart', { x: mid, y: down });
  for (const far of [8, 16, 24, 32]) await touch('touchMove', { x: mid, y: down - far });
  await touch('touchEnd');
  await page.getByText('each side keeps its own level').waitFor();
  assert.notEqual(await headline(), before, 'the store is divided');
  assert.equal(await page.locator('.bundle').count(), 0, 'a pull is no tap');
  await page.getByRole('button', { name: 'Undo' }).tap();
  await valve.tap({ force: true });
  await page.getByRole('button', { name: 'Shut the valve' }).waitFor();
  assert.equal(await headline(), before);
});

test('a row opened by the keyboard is left by it, back to the part', async (t) => {
  const page = await demo(t);
  const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent);
  const valve = page.locator('svg .part[aria-label*="valve open"]').first();
  const name = await valve.getAttribute('aria-label');
  const ways = [() => page.keyboard.press('Escape'), () => page.locator('.bundle').getByRole('button', { name: 'Close' }).press('Enter')];
  for (const leave of ways) {
    await valve.focus();
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.activeElement?.matches('.bundle button'));
    await leave();
    await page.locator('.bundle').waitFor({ state: 'detached' });
    assert.equal(await focused(), name);
  }
});

test('the drawing is saved as a file of its own', async (t) => {
  const page = await demo(t);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('.house .saves').getByRole('button', { name: /Save as SVG/ }).tap(),
  ]);
  assert.match(download.suggestedFilename(), /^the-house-in-section.*\.svg$/);
  const svg = readFileSync(await download.path(), 'utf8');
  for (const text of ['South roof', 'New tank', 'The house in section', 'xmlns="http://www.w3.org/2000/svg"']) {
    assert.ok(svg.includes(text), `${text} is in it`);
  }
  const drawn = await page.evaluate(async (svg) => {
    const image = new Image();
    image.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
    await image.decode();
    return [image.naturalWidth, image.naturalHeight];
  }, svg);
  assert.ok(drawn.every((side) => side > 200), `${drawn}`);
});
