// The report, one tap from the house and from sizing, as a browser prints it: A4 and Letter, all of it, nothing of the page
// around it; the other places print without bars and buttons too. What the pages say is asked of the page as it is laid out
// for print; how many there are, of the PDF.
import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { DESK, accessibilityFindings, openBrowser, openHost, startApp } from './stage.mjs';

const SHEETS = { A4: [210, 297], Letter: [215.9, 279.4] };
const IN_PX = 96 / 25.4;
// Pictures for whoever looks them over: KEEP=folder
const kept = process.env.KEEP;

const openReport = async (page) => {
  await page.getByRole('button', { name: 'Report', exact: true }).first().click();
  await page.getByRole('heading', { name: /^Rainwater supply/ }).waitFor();
  await page.getByText('One after the other').waitFor();
};

// The PDF with its number of pages and their size in mm. Page trees are written plainly by the browser.
async function printed(page, format, name) {
  const pdf = await page.pdf({ format, preferCSSPageSize: false });
  if (kept) {
    mkdirSync(kept, { recursive: true });
    writeFileSync(`${kept}/${name}-${format}.pdf`, pdf);
  }
  const text = pdf.toString('latin1');
  const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/g)];
  return { pages: (text.match(/\/Type\s*\/Page\b/g) ?? []).length, size: boxes[0].slice(1).map((points) => (points * 25.4) / 72), bytes: pdf.length };
}

// What of the page is seen in print, and whether anything is wider than the paper.
async function laidOut(page, format) {
  const [width] = SHEETS[format];
  await page.setViewportSize({ width: Math.floor((width - 30) * IN_PX), height: 1000 });
  await page.emulateMedia({ media: 'print' });
  const seen = await page.evaluate(() => {
    const shown = (node) => node.checkVisibility();
    const wide = [...document.querySelectorAll('main *')].filter((node) => shown(node) && node.getBoundingClientRect().right > innerWidth + 1);
    return {
      text: document.body.innerText,
      buttons: [...document.querySelectorAll('button:not(.term), nav, summary, .bar')].filter(shown).map((node) => node.textContent),
      wide: wide.map((node) => `${node.tagName} ${node.className?.baseVal ?? node.className} ${node.textContent.slice(0, 30)}`).slice(0, 5),
      ink: getComputedStyle(document.body).color,
      // No figure is higher than a page, so none is cut.
      highest: Math.max(0, ...[...document.querySelectorAll('svg, tr, .check')].filter(shown).map((node) => node.getBoundingClientRect().height)),
    };
  });
  await page.emulateMedia({ media: null });
  return seen;
}

for (const colorScheme of ['light', 'dark']) {
  test(`the report of the demo house prints on A4 and Letter, ${colorScheme}`, async (t) => {
    const host = await openHost(t);
    const browser = await openBrowser(t, { look: { ...DESK, colorScheme } });
    const page = await startApp(browser, host.address());
    await page.getByRole('button', { name: /demo/i }).first().click();
    await openReport(page);
    assert.match(await page.title(), /^Report – Emberlow/, 'a print is named after the house');
    assert.deepEqual(await accessibilityFindings(page), []);
    for (const format of Object.keys(SHEETS)) {
      const { pages, size, bytes } = await printed(page, format, `demo-${colorScheme}`);
      assert.ok(pages >= 4 && pages <= 24, `${pages} pages of ${format}`);
      size.forEach((side, at) => assert.ok(Math.abs(side - SHEETS[format][at]) < 1, `${format}: ${size}`));
      assert.ok(bytes > 50_000, `${bytes} bytes`);
      const seen = await laidOut(page, format);
      for (const part of ['Does the water last', 'The house in section', 'Parts and values', 'Runoff coefficient', 'Year by year',
        'Where the water went', 'Content, day by day', 'What next', 'Checks of parts', 'Fit to drink?', 'Upkeep', 'Taken for granted',
        'Sources', 'Cautions', 'Local codes and a licensed practitioner decide.', '95 % Wilson interval']) {
        assert.ok(seen.text.replace(/\u00a0/g, ' ').includes(part), `${format}: no “${part}”`);
      }
      assert.deepEqual(seen.buttons, [], format);
      assert.deepEqual(seen.wide, [], format);
      assert.equal(seen.ink, 'rgb(0, 0, 0)', 'dark ink on paper');
      assert.ok(seen.highest < (SHEETS[format][1] - 32) * IN_PX, `${seen.highest} px are higher than a page`);
    }
    // In short it is what one takes to a neighbour.
    await page.setViewportSize(DESK.viewport);
    await page.getByRole('button', { name: 'In short' }).click();
    await page.getByText('Parts that are not enough').waitFor();
    for (const format of Object.keys(SHEETS)) {
      const { pages } = await printed(page, format, `short-${colorScheme}`);
      assert.ok(pages >= 2 && pages <= 8, `${pages} pages of ${format} in short`);
      const seen = await laidOut(page, format);
      for (const part of ['Does the water last', 'The house in section', 'What next', 'Cautions']) assert.ok(seen.text.includes(part), part);
      assert.ok(!seen.text.includes('Taken for granted'));
      assert.deepEqual([seen.buttons, seen.wide], [[], []], format);
    }
    assert.deepEqual(page.problems, []);
  });
}

test('a house with ten tanks prints whole', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: DESK });
  const page = await startApp(browser, host.address());
  await page.locator('input[type=file]').first().setInputFiles(fileURLToPath(new URL('../cases/every-part.json', import.meta.url)));
  await page.locator('.site-name').click();
  await page.locator('.sites .part-name', { hasText: 'Every kind of part' }).click();
  await page.getByRole('navigation').getByRole('button', { name: 'House' }).click();
  const tanks = page.locator('.parts', { has: page.getByRole('heading', { name: 'Tanks' }) }).locator('li');
  while ((await tanks.count()) < 10) {
    await page.getByRole('button', { name: 'Add: Tank', exact: true }).click();
    await page.getByRole('button', { name: 'Close' }).click();
  }
  await page.getByRole('button', { name: 'Report', exact: true }).first().click();
  await page.getByRole('heading', { name: /^Rainwater supply/ }).waitFor();
  for (const format of Object.keys(SHEETS)) {
    const { pages } = await printed(page, format, 'ten-tanks');
    assert.ok(pages >= 6 && pages <= 60, `${pages} pages`);
    const seen = await laidOut(page, format);
    assert.deepEqual(seen.wide, [], format);
    assert.ok(seen.highest < (SHEETS[format][1] - 32) * IN_PX, `${seen.highest} px are higher than a page`);
  }
  assert.deepEqual(page.problems, []);
});

test('every place prints its content alone', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: DESK });
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo/i }).first().click();
  for (const place of ['House', 'Diary', 'Ahead', 'Sizing', 'Upkeep', 'Rain']) {
    await page.setViewportSize(DESK.viewport);
    await page.getByRole('navigation').getByRole('button', { name: place }).click();
    await page.waitForTimeout(200);
    await printed(page, 'A4', place.toLowerCase());
    const seen = await laidOut(page, 'A4');
    const shown = seen.buttons.filter((text) => text && !/m²|ft²|gal|L|by the weather|valve|loads|below/.test(text));
    assert.deepEqual(shown, [], place);
    assert.deepEqual(seen.wide, [], place);
  }
});
