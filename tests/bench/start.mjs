// How long the app takes to start from what its worker keeps, on a processor slowed four times, beside the barest Leptos program
// (counter.rs) that is kept by the same worker, in the same run: the first paint of each, in turns. Promised: at most twice as long.
//   .ci/with-tools node tests/bench/start.mjs      (dist/ holds the built app)
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { FEATURES } from '../../.ci/lighten.mjs';
import { built, completeBuild, keptOffline, openBrowser, openHost, startApp, started } from '../journeys/stage.mjs';

const ROUNDS = 15;
const SLOWED = 4;
const project = fileURLToPath(new URL('../../', import.meta.url));

// The counter, optimised and completed as the app is.
function counter() {
  const run = (program, ...args) => execFileSync(program, args, { cwd: project, stdio: ['ignore', 'ignore', 'inherit'] });
  const folder = join(project, 'target/counter');
  const wasm = join(folder, 'counter_bg.wasm');
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  // A folder of its own: the app's own is built with other switches.
  run('cargo', 'build', '--quiet', '--release', '--locked', '--target', 'wasm32-unknown-unknown', '--example', 'counter',
    '--target-dir', 'target/for-counter');
  const program = join(project, 'target/for-counter/wasm32-unknown-unknown/release/examples/counter.wasm');
  run('wasm-bindgen', '--target', 'web', '--no-typescript', '--out-dir', folder, program);
  run('wasm-opt', wasm, '-Oz', ...FEATURES, '-o', wasm);
  for (const name of ['register.js', 'service-worker.js']) copyFileSync(join(project, 'public', name), join(folder, name));
  writeFileSync(join(folder, 'start.js'), "import start from './counter.js';\nstart({ module_or_path: './counter_bg.wasm' });\n");
  writeFileSync(
    join(folder, 'index.html'),
    `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Counter</title>
<link rel="preload" as="fetch" crossorigin href="counter_bg.wasm" type="application/wasm">
<script type="module" src="start.js"></script><script defer src="register.js"></script></head><body></body></html>`,
  );
  completeBuild(folder);
  return folder;
}

// One start from the worker's cache: milliseconds until something stands on the page.
async function firstPaint(page) {
  await page.reload();
  await started(page);
  return page.evaluate(
    () =>
      new Promise((done) => {
        const seen = (list) => {
          const entry = list.getEntriesByName('first-contentful-paint')[0];
          if (entry) done(entry.startTime);
        };
        new PerformanceObserver(seen).observe({ type: 'paint', buffered: true });
      }),
  );
}

async function ready(t, folder, prepare = async () => {}) {
  const host = await openHost(t, { '/': folder });
  const browser = await openBrowser(t);
  const page = await startApp(browser, host.address());
  await keptOffline(page);
  await prepare(page);
  await host.stop();
  const session = await browser.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  return page;
}

const median = (times) => times.toSorted((one, other) => one - other)[Math.floor(times.length / 2)];

let close = async () => {};
const ending = { after: (closing) => (close = closing) };
try {
  const pages = {
    'the bare counter': await ready(ending, counter()),
    'the app, first start': await ready(ending, built),
    'the app with the demo house': await ready(ending, built, async (page) => {
      await page.getByRole('button', { name: /demo house/ }).tap();
      await page.locator('svg .part').first().waitFor();
    }),
  };
  const times = Object.fromEntries(Object.keys(pages).map((name) => [name, []]));
  // The first round warms up.
  for (let round = 0; round <= ROUNDS; round++) {
    for (const [name, page] of Object.entries(pages)) {
      const time = await firstPaint(page);
      if (round > 0) times[name].push(time);
    }
  }
  const least = median(times['the bare counter']);
  console.log(`Start from the worker's cache, slowed ${SLOWED} times: first paint, median of ${ROUNDS} in turns (fastest, slowest)`);
  for (const [name, each] of Object.entries(times)) {
    const [fastest, slowest] = [Math.min(...each), Math.max(...each)].map(Math.round);
    console.log(`  ${name}: ${Math.round(median(each))} ms (${fastest}, ${slowest}), ${(median(each) / least).toFixed(2)} times the counter's`);
  }
} finally {
  await close();
}
