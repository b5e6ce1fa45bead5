// The second language: all that is read is Spanish where the device asks for it, numbers and dates follow, and the choice holds.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { PHONE, accessibilityFindings, openBrowser, openHost, startApp, started } from './stage.mjs';

// Words without which no English sentence does, and the ones that this app says most.
const ENGLISH =
  /\b(the|and|of|with|from|is|are|was|were|not|your|this|that|which|each|what|how|it|its|for|by|water|rain|tank|tanks|roof|day|days|year|years|month|house|more|less|close|open|add|remove)\b/i;

// Titles of publications and names of institutions keep their language; so does what the household itself calls its things.
const NAMES = [
  /“[^”]*”|«[^»]*»/g,
  /Emberlow|University of Warwick|Development Technology Unit/g,
  /Guidance on use of rainwater tanks|Irrigation and Drainage Paper|River and Reservoir Yield|Emergency Disinfection of Drinking Water/g,
  /Journal of the American Statistical Association|Water Resources Research|The American Statistician|Annals of Mathematical Statistics/g,
  /University of [A-Z]\w+|Disinfection Profiling and Benchmarking|BS 8515:2009 y BS EN|Lorden/g,
];

// Every text that is read or read aloud, where it has English in it.
const englishOn = (page) =>
  page.evaluate(
    ([english, names]) => {
      const says = new RegExp(english, 'i');
      const top = document.querySelector('dialog[open]') ?? document.body;
      const texts = [];
      const walk = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
      while (walk.nextNode()) {
        const { parentElement: holder, textContent } = walk.currentNode;
        if (!holder.closest('script, style, noscript, [lang=en], .source')) texts.push(textContent);
      }
      for (const element of top.querySelectorAll('[aria-label], [title], [placeholder], [aria-valuetext], [alt]')) {
        for (const name of ['aria-label', 'title', 'placeholder', 'aria-valuetext', 'alt']) texts.push(element.getAttribute(name) ?? '');
      }
      const plain = (text) => names.reduce((left, name) => left.replaceAll(new RegExp(name, 'g'), ''), text);
      return [...new Set(texts)].filter((text) => says.test(plain(text))).map((text) => text.trim().slice(0, 160));
    },
    [ENGLISH.source, NAMES.map((name) => name.source)],
  );

const unfold = (page) => page.evaluate(() => document.querySelectorAll('details').forEach((fold) => (fold.open = true)));

test('where the device asks for Spanish, everything is Spanish', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: { ...PHONE, locale: 'es-MX' } });
  const page = await startApp(browser, host.address());
  const found = [];
  const lookOver = async (name) => {
    await unfold(page);
    await page.waitForTimeout(50);
    found.push(...(await englishOn(page)).map((text) => `${name}: ${text}`));
  };
  assert.equal(await page.locator('html').getAttribute('lang'), 'es-419');
  await lookOver('start');
  await page.getByRole('button', { name: 'Bosquejar mi casa' }).tap();
  await lookOver('sketch');
  await page.reload();
  await page.getByRole('button', { name: /casa de ejemplo/ }).tap();
  for (const name of ['Casa', 'Diario', 'Por venir', 'Tamaño', 'Cuidado', 'Lluvia']) {
    await page.locator('nav').getByRole('button', { name }).tap();
    await page.waitForTimeout(400);
    await lookOver(name);
  }
  await page.getByRole('banner').getByRole('button').tap();
  await lookOver('Sitios');
  assert.deepEqual(await accessibilityFindings(page), []);

  await page.locator('nav').getByRole('button', { name: 'Casa' }).tap();
  const parts = await page.locator('svg .part').count();
  assert.ok(parts > 8, `only ${parts} parts can be tapped`);
  const sheet = page.getByRole('dialog');
  const row = page.locator('.bundle');
  for (let at = 0; at < parts; at += 1) {
    await page.locator('svg .part').nth(at).press('Enter');
    await sheet.or(row).first().waitFor();
    if (await row.isVisible()) {
      await lookOver(`row ${at}`);
      await row.getByRole('button').nth(1).tap();
      await sheet.waitFor();
    }
    await lookOver(`sheet ${at}`);
    await sheet.getByRole('button', { name: 'Cerrar', exact: true }).tap();
    await sheet.waitFor({ state: 'hidden' });
    if (await row.isVisible()) await row.getByRole('button', { name: 'Cerrar', exact: true }).tap();
  }
  for (const name of ['Informe', /fórmulas/]) {
    await page.locator('footer').getByRole('button', { name }).tap();
    await page.getByRole('button', { name: 'Volver a la casa' }).waitFor();
    await page.waitForTimeout(1500);
    await lookOver(String(name));
    await page.getByRole('button', { name: 'Volver a la casa' }).tap();
  }
  await page.locator('nav').getByRole('button', { name: 'Diario' }).tap();
  const forms = page.getByRole('group', { name: 'Anotar en el diario' }).getByRole('button');
  await forms.first().waitFor();
  const kinds = await forms.count();
  assert.ok(kinds > 5, `only ${kinds} forms`);
  for (let at = 0; at < kinds; at += 1) {
    await forms.nth(at).tap();
    await lookOver(`form ${at}`);
    await page.getByRole('button', { name: 'Cancelar' }).tap();
  }
  assert.deepEqual(found, []);
  assert.deepEqual(page.problems, []);
});

test('the language is switched without losing anything, and the choice outlives the device’s own', async (t) => {
  const host = await openHost(t);
  const browser = await openBrowser(t, { look: { ...PHONE, locale: 'es-MX' } });
  const page = await startApp(browser, host.address());
  await page.getByRole('button', { name: /casa de ejemplo/ }).tap();
  await page.locator('nav').getByRole('button', { name: 'Tamaño' }).tap();
  await page.locator('input[type=range]').first().fill('1');
  const inSpanish = await page.locator('.trial').textContent();
  await page.getByRole('banner').getByRole('button').tap();
  await page.getByRole('button', { name: 'English' }).tap();
  await page.getByRole('heading', { name: 'Sites' }).waitFor();
  assert.equal(await page.locator('html').getAttribute('lang'), 'en');
  await page.getByRole('navigation', { name: 'Places' }).getByRole('button', { name: 'Sizing' }).tap();
  const inEnglish = await page.locator('.trial').textContent();
  assert.match(inEnglish, /the water ran out|never ran out/);
  assert.notEqual(inSpanish, inEnglish);
  // The trial stood through it.
  assert.equal(await page.locator('input[type=range]').first().inputValue(), '1');
  await page.reload();
  await started(page);
  assert.equal(await page.locator('html').getAttribute('lang'), 'en');
});

test('numbers are written as where the device is, or as chosen', async (t) => {
  const host = await openHost(t);
  for (const [locale, other, [here, there]] of [['es-MX', 'Español (1,5 m)', ['9,000 L', '9000 L']], ['es-AR', 'Español (1.5 m)', ['9000 L', '9,000 L']]]) {
    const page = await startApp(await openBrowser(t, { look: { ...PHONE, locale } }), host.address());
    await page.getByRole('button', { name: /casa de ejemplo/ }).tap();
    const tank = page.locator('.parts').getByText(/^9.?000.L$/);
    assert.equal((await tank.textContent()).replaceAll('\u00a0', ' '), here);
    await page.getByRole('banner').getByRole('button').tap();
    await page.getByRole('button', { name: other }).tap();
    // All of the page was drawn anew: whoever uses keys goes on from there.
    await page.waitForFunction((name) => document.activeElement.textContent.replaceAll('\u00a0', ' ') === name, other);
    await page.locator('nav').getByRole('button', { name: 'Casa' }).tap();
    assert.equal((await tank.textContent()).replaceAll('\u00a0', ' '), there);
  }
});
