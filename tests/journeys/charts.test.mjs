// Every chart of the places: its axes, the value under the finger, its table; saved as SVG and as PNG without a network, and
// what was saved opens elsewhere. A term in a sentence opens its explanation by finger and by key.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { PHONE, accessibilityFindings, keptOffline, openBrowser, openHost, startApp } from './stage.mjs';

const place = (page, name) => page.getByRole('navigation').getByRole('button', { name });

async function saved(page, button) {
  const [download] = await Promise.all([page.waitForEvent('download'), button.tap()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

// The picture in another page, which knows nothing of the app's style: what is in it as XML, and which colours it shows.
async function elsewhere(browser, svg) {
  const page = await browser.newPage();
  await page.goto('about:blank');
  const seen = await page.evaluate((text) => {
    const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
    const root = parsed.documentElement;
    return {
      error: parsed.querySelector('parsererror')?.textContent ?? null,
      space: root.namespaceURI,
      title: root.querySelector('title')?.textContent,
      texts: [...root.querySelectorAll('text')].map((node) => node.textContent),
      bare: [...root.querySelectorAll('path, text')].filter((node) => !node.getAttribute('fill') && !node.getAttribute('stroke')).length,
      foreign: [...root.querySelectorAll('[class], [href], style, script, image, foreignObject')].length,
    };
  }, svg);
  await page.close();
  return seen;
}

test('charts are read by finger and as tables, and saved offline as SVG and PNG', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: PHONE });
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo/i }).first().tap();
  await keptOffline(page);
  await browser.setOffline(true);
  let charts = 0;
  for (const [name, units] of [['Sizing', ['gal', 'L', 'L a month']], ['Rain', ['mm', 'in', 'days']]]) {
    await place(page, name).tap();
    const figures = page.locator('figure');
    await figures.first().waitFor();
    const count = await figures.count();
    for (let at = 0; at < count; at += 1) {
      const figure = figures.nth(at);
      const title = await figure.locator('h2').innerText();
      charts += 1;
      // Under the finger.
      const box = await figure.locator('.under-finger').boundingBox();
      await figure.locator('.under-finger').dispatchEvent('pointerdown', {});
      await figure.locator('.under-finger').click({ position: { x: box.width / 2, y: box.height / 2 } });
      assert.match(await figure.locator('.reading').innerText(), /^.+: .*\d/, title);
      // Behind it.
      await figure.getByText('The same as a table').tap();
      await figure.locator('tbody tr').first().waitFor();
      assert.ok((await figure.locator('thead th').count()) >= 2, title);
      // As files.
      const { name: svgName, bytes: svg } = await saved(page, figure.getByRole('button', { name: `Save as SVG: ${title}` }));
      assert.match(svgName, /^[a-z0-9-]+-\d{4}-\d\d-\d\d\.svg$/);
      const seen = await elsewhere(browser, svg.toString('utf8'));
      assert.equal(seen.error, null);
      assert.equal(seen.space, 'http://www.w3.org/2000/svg');
      assert.equal(seen.title, title);
      assert.deepEqual([seen.bare, seen.foreign], [0, 0], `${title}: its own colours, nothing from outside`);
      assert.ok(seen.texts.includes(title));
      assert.ok(seen.texts.some((text) => units.some((unit) => text === unit || text.startsWith(`${unit} `))), `${title}: unit in ${seen.texts}`);
      assert.ok(seen.texts.filter((text) => /^[\d,.]+$/.test(text)).length >= 3, `${title}: numbers at the axis`);
      const { name: pngName, bytes: png } = await saved(page, figure.getByRole('button', { name: `Save as PNG: ${title}` }));
      assert.equal(pngName, svgName.replace('.svg', '.png'));
      // The PNG specification (W3C, third edition, 5.2 and 11.2.1): signature, then IHDR with width and height.
      assert.deepEqual([...png.subarray(0, 8)], [137, 80, 78, 71, 13, 10, 26, 10]);
      assert.equal(png.subarray(12, 16).toString('latin1'), 'IHDR');
      const [, width, height] = svg.toString('utf8').match(/^<svg[^>]* width="(\d+)" height="(\d+)"/);
      assert.ok(Math.abs(png.readUInt32BE(16) - 3 * width) <= 3 && Math.abs(png.readUInt32BE(20) - 3 * height) <= 3, title);
      assert.ok(png.length > 8_000, `${title}: something is painted`);
    }
  }
  assert.ok(charts >= 5, `${charts} charts`);
  assert.deepEqual(await accessibilityFindings(page), []);
  assert.deepEqual(page.problems, []);
});

test('a term opens its sentence by finger and by key, and the formulas are one tap away', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: PHONE });
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo/i }).first().tap();
  await place(page, 'Sizing').tap();
  const term = page.locator('button.term', { hasText: 'volumetric reliability' });
  assert.equal(await term.getAttribute('aria-expanded'), 'false');
  await term.tap();
  await page.getByText('Share of the water wanted that was there, over all days.').waitFor();
  assert.equal(await term.getAttribute('aria-expanded'), 'true');
  assert.deepEqual(await accessibilityFindings(page), []);
  await term.focus();
  await page.keyboard.press('Enter');
  await page.getByText('Share of the water wanted that was there, over all days.').waitFor({ state: 'detached' });
  for (const from of ['House', 'Sizing', 'Ahead']) {
    await place(page, from).tap();
    await page.getByRole('button', { name: 'All formulas and sources' }).first().tap();
    await page.getByRole('heading', { name: 'How it is reckoned', level: 1 }).waitFor();
  }
  for (const formula of ['Order within a day', 'Sequent peak', 'Torricelli', 'Runoff coefficient']) {
    await page.getByText(formula).first().waitFor();
  }
  assert.deepEqual(await accessibilityFindings(page), []);
  const widths = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(widths[0] <= widths[1], `scrolls sideways: ${widths}`);
  assert.deepEqual(page.problems, []);
});
