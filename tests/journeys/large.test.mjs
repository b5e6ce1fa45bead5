// Every hand: letters twice as large on the narrowest phone, and no motion for those who want none.
import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { freshFolder, openBrowser, openHost, startApp } from './stage.mjs';

// What is tapped on the way, in both languages.
const LANGUAGES = {
  English: {
    locale: 'en-US', places: ['House', 'Diary', 'Ahead', 'Sizing', 'Upkeep', 'Rain', 'Sites'], sketch: 'Sketch my house',
    demo: /demo house/, close: 'Close', documents: ['Report', 'All formulas and sources'], back: 'Back to the house', leave: 'Leave it',
  },
  Spanish: {
    locale: 'es-MX', places: ['Casa', 'Diario', 'Por venir', 'Tamaño', 'Cuidados', 'Lluvia', 'Sitios'], sketch: 'Bosquejar mi casa',
    demo: /casa de ejemplo/, close: 'Cerrar', documents: ['Informe', /fórmulas/], back: 'Volver a la casa', leave: 'Cancelar',
  },
};
const place = (page, name) =>
  page.getByRole(/Sit/.test(name) ? 'banner' : 'navigation').getByRole('button', { name });

// A profile whose person has set the browser's letters to `size` px instead of 16.
function profileWithLetters(t, size) {
  const profile = freshFolder(t);
  mkdirSync(join(profile, 'Default'));
  writeFileSync(join(profile, 'Default/Preferences'), JSON.stringify({ webkit: { webprefs: { default_font_size: size } } }));
  return profile;
}

// What sticks out of the screen sideways, and what hides a part of its own words; what scrolls by itself may.
const cut = (page) =>
  page.evaluate(() => {
    const top = document.querySelector('dialog[open]') ?? document.body;
    const scrolls = (element) => {
      for (let each = element.parentElement; each && each !== top; each = each.parentElement) {
        if (/auto|scroll/.test(getComputedStyle(each).overflowX)) return true;
      }
      return false;
    };
    const named = (element) => `${element.tagName} ${element.getAttribute('class') ?? ''} “${(element.textContent ?? '').trim().slice(0, 40)}”`;
    const found = [];
    const wider = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    if (wider > 0) found.push(`the page is ${wider} px too wide`);
    if (top.scrollWidth > top.clientWidth) found.push(`${named(top)} scrolls sideways by ${top.scrollWidth - top.clientWidth} px`);
    for (const element of top.querySelectorAll('*')) {
      const box = element.getBoundingClientRect();
      if (box.width < 2 || box.height < 2 || element.closest('svg, .skip, noscript, input')) continue;
      const style = getComputedStyle(element);
      if (style.visibility === 'hidden' || style.opacity === '0' || scrolls(element)) continue;
      if (box.right > innerWidth + 1 || box.left < -1) found.push(`outside: ${named(element)} from ${Math.round(box.left)} to ${Math.round(box.right)}`);
      const hides = (/hidden|clip/.test(style.overflowX) && element.scrollWidth > element.clientWidth + 1)
        || (/hidden|clip/.test(style.overflowY) && element.scrollHeight > element.clientHeight + 1)
        || (element.tagName === 'BUTTON' && element.scrollWidth > element.clientWidth + 1);
      if (hides) found.push(`cut: ${named(element)}`);
    }
    return found;
  });

for (const [language, words] of Object.entries(LANGUAGES)) test(`with letters twice as large on 320 px nothing scrolls sideways and nothing is cut, in ${language}`, async (t) => {
  const host = await openHost(t);
  const { locale } = words;
  const look = { viewport: { width: 320, height: 568 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true, reducedMotion: 'reduce', locale };
  const browser = await openBrowser(t, { profile: profileWithLetters(t, 32), look });
  const page = await startApp(browser, host.address());
  const letters = await page.evaluate(() => ['html', 'main p', 'button'].map((each) => parseFloat(getComputedStyle(document.querySelector(each)).fontSize)));
  assert.deepEqual(letters.map((size) => size >= 30), [true, true, true], `letters of ${letters} px`);

  const all = [];
  const lookOver = async (name) => {
    all.push(...(await cut(page)).map((found) => `${name}: ${found}`));
    if (process.env.KEEP) await page.screenshot({ path: join(process.env.KEEP, `large-${locale}-${String(name).replaceAll(/[ /]/g, '-')}.png`) });
  };
  await lookOver('first start');
  await page.getByRole('button', { name: words.sketch }).tap();
  await lookOver('sketch');
  await page.reload();
  await page.getByRole('button', { name: words.demo }).tap();
  for (const name of words.places) {
    await place(page, name).tap();
    await lookOver(name);
  }
  await place(page, words.places[1]).tap();
  const forms = page.locator('.diary .row').first().getByRole('button');
  for (let at = 0; at < (await forms.count()); at += 1) {
    await forms.nth(at).tap();
    await lookOver(`form ${at}`);
    await page.getByRole('button', { name: words.leave }).tap();
  }
  await place(page, words.places[0]).tap();
  const parts = await page.locator('svg .part').evaluateAll((parts) => parts.map((part) => part.getAttribute('aria-label')));
  assert.ok(parts.length > 8, `only ${parts.length} parts can be tapped`);
  for (const [at, name] of parts.entries()) {
    await page.locator('svg .part').nth(at).press('Enter');
    const sheet = page.getByRole('dialog');
    // A valve is turned in a row at the foot, from which its sheet is one tap away.
    const row = page.locator('.bundle');
    await sheet.or(row).first().waitFor();
    if (await row.isVisible()) {
      await lookOver(`row of ${name}`);
      await row.getByRole('button').nth(1).tap();
      await sheet.waitFor();
    }
    await lookOver(`sheet of ${name}`);
    await sheet.evaluate((sheet) => sheet.querySelectorAll('details').forEach((fold) => (fold.open = true)));
    await lookOver(`opened sheet of ${name}`);
    await sheet.getByRole('button', { name: words.close, exact: true }).tap();
    await sheet.waitFor({ state: 'hidden' });
    if (await row.isVisible()) await row.getByRole('button', { name: words.close, exact: true }).tap();
  }
  for (const name of words.documents) {
    await page.locator('footer').getByRole('button', { name }).tap();
    await page.getByRole('button', { name: words.back }).waitFor();
    await lookOver(name);
    await page.getByRole('button', { name: words.back }).tap();
  }
  assert.deepEqual(all, []);
});

test('whoever wants no motion gets none', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: { viewport: { width: 390, height: 844 }, reducedMotion: 'reduce' } });
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /demo house/ }).click();
  for (const name of LANGUAGES.English.places) {
    await place(page, name).click();
    const moving = await page.evaluate(() => [
      ...document.getAnimations().map((change) => change.animationName ?? change.transitionProperty),
      ...Array.from(document.querySelectorAll('*'))
        .filter((element) => {
          const style = getComputedStyle(element);
          return style.transitionDuration.split(', ').some((time) => parseFloat(time) > 0) || style.animationName !== 'none' || style.scrollBehavior === 'smooth';
        })
        .map((element) => element.tagName),
      ...Array.from(document.querySelectorAll('animate, animateMotion, animateTransform'), (element) => element.tagName),
    ]);
    assert.deepEqual(moving, [], name);
  }
});
