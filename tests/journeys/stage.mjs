// What every journey stands on: a host with the built app, a browser like a phone's or a desk's, and the app started in it.
// Whatever is opened here is closed when the test ends.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { startServer } from './server.mjs';

const project = fileURLToPath(new URL('../../', import.meta.url));
export const built = join(project, 'dist');

export const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, isMobile: true, hasTouch: true };
export const DESK = { viewport: { width: 1280, height: 800 } };

// Flags for a machine without a screen or a graphics card, and silence towards the outside.
const FLAGS = [
  '--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

const PATIENCE = 20_000;

// Closes what a test opened, the last first: the browser before its profile folder goes.
const closings = new WeakMap();
function atEnd(t, close) {
  if (!closings.has(t)) {
    closings.set(t, []);
    t.after(async () => {
      for (const each of closings.get(t).reverse()) await each();
    });
  }
  closings.get(t).push(close);
}

// A fresh folder that goes when the test `t` ends.
export function freshFolder(t) {
  const folder = mkdtempSync(join(tmpdir(), 'eavewater-journey-'));
  atEnd(t, () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}

// What goes out in the file with everything, from the place of the sites; changed or not, a file to take in again.
export async function exported(page) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Export everything' }).click(),
  ]);
  return JSON.parse(readFileSync(await download.path(), 'utf8'));
}

export const asFile = (all) => ({ name: 'all.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(all)) });

// A copy of the built app that the test may alter.
export function copyOfBuild(t) {
  const folder = join(freshFolder(t), 'app');
  cpSync(built, folder, { recursive: true });
  return folder;
}

// Does to an altered copy what the build does at its end: policy, list of files, version.
export function completeBuild(folder) {
  execFileSync(process.execPath, [join(project, '.ci/complete-build.mjs'), folder]);
}

// A host with the app, or with any `places` (path on the host → folder); any free `port` if none is said,
// files as they are or, with `compress`, as a good host sends them. Returns { host, address(path), … } as server.mjs does.
export async function openHost(t, places = { '/': built }, port = 0, compress = false) {
  if (!existsSync(join(built, 'index.html'))) throw new Error('there is no built app in dist/; run: make build');
  const server = await startServer(places, port, compress);
  atEnd(t, () => server.stop());
  return { ...server, places, address: (path = '/') => `http://localhost:${server.port}${path}` };
}

// A browser with its own profile folder. `look` is PHONE or DESK with any other of playwright's context options.
export async function openBrowser(t, { profile = freshFolder(t), look = PHONE } = {}) {
  const browser = await chromium.launchPersistentContext(profile, {
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
    args: FLAGS,
    timezoneId: 'UTC',
    ...look,
  });
  browser.setDefaultTimeout(PATIENCE);
  atEnd(t, () => browser.close());
  return browser;
}

// Starts the app in a new tab. Returns the page with two growing lists: `asked` (every address that the page asked for)
// and `problems` (errors on the console or in the page, requests that failed, breaches of the content security policy).
export async function startApp(browser, address) {
  const page = await browser.newPage();
  page.asked = [];
  page.problems = [];
  page.on('request', (request) => page.asked.push(request.url()));
  page.on('requestfailed', (request) => page.problems.push(`failed: ${request.url()} ${request.failure()?.errorText}`));
  page.on('pageerror', (error) => page.problems.push(`error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') page.problems.push(`console: ${message.text()}`);
  });
  await page.goto(address);
  await started(page);
  // The notice of how it stands with the network may lie over what is to be tapped: it must not come on the way.
  await page.waitForFunction(() => window.eavewaterOffline, null, { timeout: 3000 }).catch(() => {});
  return page;
}

// Waits until the app has drawn itself.
export const started = (page) => page.waitForSelector('main, h1');

// Waits until the whole app is kept and this page is answered from what is kept.
export async function keptOffline(page) {
  await page.waitForFunction(() => window.eavewaterOffline === 'ready' && navigator.serviceWorker.controller !== null);
}

// The answer of a house that wants more than comes, on the eleven years of Hyderabad.
export const RAN_OUT =
  /^In 11 years of rain, the water ran out (in \d+|every year); the longest dry stretch was \d+ days, (in 20\d\d|from 20\d\d to 20\d\d)\. No tank alone would be enough: only \d+\s% of the water wanted comes\. More roof or less use has to come first\.$/;

// How long, in ms, a page may be held before a person notices. The aim is 50, which a quiet machine holds.
export const NOTICED_MS = 100;

// Slows the page's processor four times; `tasks` tells how long, in ms, each task of 50 ms or more held it since the last call.
export async function slowed(page) {
  const session = await page.context().newCDPSession(page);
  const rate = (rate) => session.send('Emulation.setCPUThrottlingRate', { rate });
  await rate(4);
  await page.evaluate(() => {
    window.longTasks = [];
    new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map(({ duration }) => duration))).observe({ type: 'longtask' });
  });
  return { tasks: () => page.evaluate(() => window.longTasks.splice(0)), end: () => rate(1) };
}

// What axe finds, one line each: rule, then where.
export async function accessibilityFindings(page) {
  const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
  // Evaluated by the browser's debugger, which the page's content security policy does not bind.
  await page.evaluate(readFileSync(axe, 'utf8'));
  // A colour half-way through a change is nobody's to judge; a notice that goes by itself after a while is.
  await page.evaluate(() =>
    Promise.allSettled(document.getAnimations().filter((change) => change instanceof CSSTransition).map((change) => change.finished)),
  );
  const { violations } = await page.evaluate(() =>
    window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }),
  );
  return violations.flatMap((rule) => rule.nodes.map((node) => `${rule.id}: ${node.target.join(' ')} (${rule.help})`));
}
