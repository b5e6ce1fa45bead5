// Any browser that has a driver, through the W3C's WebDriver protocol: what the core journey needs of it, and no more.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

const PATIENCE = 20_000;
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';
const FLAGS = ['--headless', '--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--disable-quic', '--no-first-run'];

const firstThere = (...paths) => paths.find((path) => path && existsSync(path));
const onPath = (...names) => firstThere(...names.flatMap((name) => process.env.PATH.split(':').map((folder) => join(folder, name))));
const MINI_BROWSER = firstThere(
  ...['x86_64', 'aarch64'].flatMap((machine) => ['4.1', '4.0'].map((version) => `/usr/lib/${machine}-linux-gnu/webkit2gtk-${version}/MiniBrowser`)),
);

// How each browser is driven: `needs` is all that must be there, `command` starts its driver, `wants` is what the driver is
// asked for. `keepsProfile`: whether a second start can be given what the first one kept.
export const BROWSERS = {
  chromium: {
    needs: [process.env.CHROMIUM || onPath('chromium'), process.env.CHROMEDRIVER || onPath('chromedriver')],
    command: (port) => [BROWSERS.chromium.needs[1], `--port=${port}`],
    wants: (profile) => ({
      browserName: 'chrome',
      'goog:chromeOptions': {
        binary: BROWSERS.chromium.needs[0],
        args: [...FLAGS, `--user-data-dir=${profile}`],
        mobileEmulation: { deviceMetrics: { width: 390, height: 844, pixelRatio: 3 } },
      },
    }),
    keepsProfile: true,
  },
  firefox: {
    needs: [onPath('firefox-esr', 'firefox'), onPath('geckodriver')],
    command: (port) => [onPath('geckodriver'), '--port', `${port}`, '--websocket-port', '0'],
    wants: (profile) => ({
      browserName: 'firefox',
      'moz:firefoxOptions': { binary: BROWSERS.firefox.needs[0], args: ['-headless', '-profile', profile] },
    }),
    keepsProfile: true,
  },
  webkit: {
    needs: [MINI_BROWSER, onPath('WebKitWebDriver'), onPath('xvfb-run')],
    command: (port) => [onPath('xvfb-run'), '-a', onPath('WebKitWebDriver'), `--port=${port}`],
    wants: () => ({
      browserName: 'MiniBrowser',
      'webkitgtk:browserOptions': { binary: MINI_BROWSER, args: ['--automation'] },
    }),
    // An automated MiniBrowser keeps nothing beyond its own life.
    keepsProfile: false,
  },
};

// Whether everything that drives the browser is on this machine.
export const isThere = (name) => BROWSERS[name].needs.every(Boolean);

const freePort = () =>
  new Promise((done, failed) => {
    const probe = createServer().once('error', failed);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => done(port));
    });
  });

// Starts the browser `name` on the folder `profile`. Its methods ask the page; what is looked for by words is waited for.
export async function startBrowser(name, profile) {
  const port = await freePort();
  const [program, ...rest] = BROWSERS[name].command(port);
  // Its own process group, so that whatever the driver starts ends with it.
  const driver = spawn(program, rest, {
    stdio: 'ignore',
    detached: true,
    env: { ...process.env, TZ: 'UTC', WEBKIT_DISABLE_COMPOSITING_MODE: '1' },
  });
  const root = `http://127.0.0.1:${port}`;

  async function ask(method, path, body) {
    const response = await fetch(root + path, {
      method,
      headers: { 'Content-Type': 'application/json' },
      body: body && JSON.stringify(body),
      signal: AbortSignal.timeout(60_000),
    });
    const { value } = await response.json();
    if (!response.ok) throw new Error(`${name}: ${value.error}: ${value.message}`);
    return value;
  }

  // Tries again until `attempt` gives something or patience ends.
  async function until(what, attempt) {
    const end = Date.now() + PATIENCE;
    for (;;) {
      let reason = '';
      const found = await attempt().catch((error) => void (reason = ` (${error.message})`));
      if (found) return found;
      if (Date.now() > end) throw new Error(`${name}: waited in vain for ${what}${reason}`);
      await pause(50);
    }
  }

  const stop = () => {
    try {
      process.kill(-driver.pid);
    } catch {
      // It has ended already.
    }
  };
  // Also when this process is ended from outside, as a test is that takes too long.
  process.once('exit', stop);
  process.once('SIGTERM', () => process.exit(1));
  let session;
  try {
    await until('its driver', () => ask('GET', '/status'));
    const { sessionId } = await ask('POST', '/session', { capabilities: { alwaysMatch: BROWSERS[name].wants(profile) } });
    session = `/session/${sessionId}`;
    await ask('POST', `${session}/timeouts`, { script: 30_000, pageLoad: 30_000 });
  } catch (reason) {
    stop();
    throw reason;
  }

  // What `work` (a function that runs in the page) gives.
  const evaluate = (work, ...args) => ask('POST', `${session}/execute/sync`, { script: `return (${work})(...arguments)`, args });

  // The shown element with a selector whose name, label or text is `words` (a regular expression, or all of it).
  async function find(selector, words = /(?:)/) {
    const [pattern, flags] = words instanceof RegExp ? [words.source, words.flags] : [`^${words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`, ''];
    return until(`${selector} ${words}`, () =>
      evaluate(
        (selector, pattern, flags) => {
          const shown = (element) => element.type === 'file' || element.getClientRects().length > 0;
          const said = (element) =>
            [element.getAttribute('aria-label'), element.labels?.[0]?.innerText, element.innerText, element.textContent]
              .filter(Boolean)
              .map((text) => text.replace(/\s+/g, ' ').trim());
          return Array.from(document.querySelectorAll(selector)).find(
            (element) => shown(element) && (pattern === '(?:)' || said(element).some((text) => new RegExp(pattern, flags).test(text))),
          );
        },
        selector,
        pattern,
        flags,
      ),
    );
  }

  // The same where a hand would bring it: away from the bar at the foot.
  async function reach(selector, words) {
    const element = await find(selector, words);
    await evaluate((element) => element.scrollIntoView({ block: 'center', behavior: 'instant' }), element);
    return element;
  }

  const at = (element) => `${session}/element/${element[ELEMENT]}`;
  return {
    evaluate,
    find,
    open: (address) => ask('POST', `${session}/url`, { url: address }),
    resize: (width, height) => ask('POST', `${session}/window/rect`, { width, height }),
    text: async (selector, words) => ask('GET', `${at(await find(selector, words))}/text`),
    // What is found may be drawn anew before it is touched; then it is looked for again.
    tap: (selector, words) => until(`a tap on ${selector} ${words}`, async () => {
      const element = await reach(selector, words);
      await ask('POST', `${at(element)}/click`, {});
      return true;
    }),
    async enter(selector, words, text) {
      const element = await reach(selector, words);
      await ask('POST', `${at(element)}/clear`, {});
      await ask('POST', `${at(element)}/value`, { text: `${text}\uE004` });
    },
    // An input that is drawn anew loses the file that it was given: until what comes of it is there, it is given again.
    choose: (selector, path, comes) => until(`what comes of a file for ${selector}`, async () => {
      const isThere = () => evaluate((comes) => Boolean(document.querySelector(comes)), comes);
      if (await isThere()) return true;
      await ask('POST', `${at(await find(selector))}/value`, { text: path });
      for (let tries = 0; tries < 30 && !(await isThere()); tries++) await pause(100);
      return isThere();
    }),
    until: (what, work, ...args) => until(what, () => evaluate(work, ...args)),
    async close() {
      await ask('DELETE', session).catch(() => {});
      stop();
    },
  };
}
