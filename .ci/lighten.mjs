// Makes a release build lighter to download, before complete-build.mjs completes it.
//
// 1. The program: what its script never calls goes, the rest is optimised for size, functions that are alike come to lie
//    side by side, the long names by which script and program know each other become short ones, and it is packed.
// 2. The script: what nothing uses goes, the rest is minified, and it starts the program itself instead of the page.
// 3. The style sheets become one, behind what is said until the program is there.
// 4. The scripts beside the program's lose their comments.
//
// New files are named by what is in them, so that a browser's own store never pairs two that don't fit.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makePacker, pack } from './packing.mjs';

const tools = fileURLToPath(new URL('../tests/journeys/', import.meta.url));

// What the compiler uses of WebAssembly beyond its first version.
export const FEATURES = [
  'bulk-memory', 'multivalue', 'mutable-globals', 'nontrapping-float-to-int', 'reference-types', 'sign-ext', 'simd',
].map((feature) => `--enable-${feature}`);

// A function in a program's text, and behind its name.
const FUNCTION = /^ \(func (?:\$"[^"\n]*"|\S+)([^]*?\n \)\n)/gm;

// How trunk writes them into the page.
const SHEET = /<link href=\.\/([^ >]+\.css) rel=stylesheet>/g;
const START = /<script type=module>[^]*?<\/script>/;
const FETCHED_EARLY = /<link [^>]*rel=(?:module)?preload[^>]*>/g;

// Lightens the files of the built app in `folder`, once.
export function lighten(folder) {
  const esbuild = createRequire(tools)('esbuild');
  const at = (name) => join(folder, name);
  const text = (name) => readFileSync(at(name), 'utf8');

  // Writes a file under a name made from what is in it, in place of others.
  function put(bytes, end, ...before) {
    const name = `eavewater-${createHash('sha256').update(bytes).digest('hex').slice(0, 16)}${end}`;
    for (const other of before) rmSync(at(other));
    writeFileSync(at(name), bytes);
    return name;
  }

  const page = text('index.html');
  const sheets = Array.from(page.matchAll(SHEET), ([, name]) => name);
  const programs = readdirSync(folder).filter((name) => name.endsWith('_bg.wasm'));
  if (!START.test(page) || sheets.length === 0 || programs.length !== 1) throw new Error(`${folder} does not look as trunk leaves it`);
  const scriptFile = programs[0].replace('_bg.wasm', '.js');

  const { program, scriptStarting } = lightProgram(esbuild, at(programs[0]), text(scriptFile));
  writeFileSync(at('unpack.wasm'), makePacker());
  const name = put(pack(program), '.packed', programs[0]).replace('.packed', '');
  const script = put(scriptStarting(name), '.js', scriptFile);
  const style = esbuild.transformSync(sheets.map(text).join('\n'), { loader: 'css', minify: true }).code;
  const sheet = `<link href=./${put(style, '.css', ...sheets)} rel=stylesheet>`;
  writeFileSync(
    at('index.html'),
    page
      .replace(SHEET, '')
      .replace(FETCHED_EARLY, '')
      .replace(START, `<script type=module src=./${script}></script>`)
      .replace('</body>', () => `<script>${esbuild.transformSync(fetching(name), { minify: true }).code.trim()}</script>${sheet}</body>`),
  );

  for (const name of ['register.js', 'focus.js', 'unpack.js']) writeFileSync(at(name), esbuild.transformSync(text(name), { minify: true }).code);
  // Line ends and names stay: complete-build.mjs knows its lines by them.
  writeFileSync(at('service-worker.js'), esbuild.transformSync(text('service-worker.js')).code);
}

// In the page: has the program fetched, as it is from the service worker's store, else packed. On a first visit the words that
// stand in for it are painted before it takes the network and the processor; they wait for no other file, not for the style
// sheet either, which comes behind this.
// What waits for `eavewaterUnpacked` waits until a program that came packed is left where the service worker finds it.
const fetching = (name) => `
  eavewaterUnpacked = new Promise((done) => (eavewaterSettled = done));
  eavewaterFetched = new Promise((painted) => {
    if (!document.querySelector('.coming') || document.hidden) return painted();
    const counted = ['largest-contentful-paint', 'paint'].find((type) => PerformanceObserver.supportedEntryTypes?.includes(type));
    if (counted) new PerformanceObserver(painted).observe({ type: counted, buffered: true });
    setTimeout(painted, 400);
  }).then(() => fetch(navigator.serviceWorker?.controller ? './${name}.wasm' : './${name}.packed'));`;

// In the script: compiles the program. The page can answer between the last of compiling and the program's own start.
const starting = (name) => `
    async function unpacked(came) {
      const worker = new Worker('./unpack.js');
      const program = new Promise((done, failed) => {
        worker.onmessage = ({ data }) => (data ? done(data) : failed(new Error('the program did not come whole')));
        worker.onerror = failed;
      });
      for (const reader = came.body.getReader(); ; ) {
        const { done, value } = await reader.read();
        worker.postMessage(done ? null : value);
        if (done) break;
      }
      const bytes = await program;
      worker.terminate();
      leave(bytes).catch(() => {}).then(eavewaterSettled);
      return WebAssembly.compile(bytes);
    }
    async function leave(bytes) {
      const store = await caches.open('eavewater-unpacked@' + new URL('./', location).pathname);
      await store.put('./${name}.wasm', new Response(bytes, { headers: { 'Content-Type': 'application/wasm' } }));
    }
    async function compiled() {
      const came = await eavewaterFetched;
      if (!came.ok) return unpacked(await fetch('./${name}.packed'));
      if (came.url.endsWith('.packed')) return unpacked(came);
      eavewaterSettled();
      return WebAssembly.compileStreaming(came);
    }
    // What doesn't arrive here may arrive at the service worker, and so be there at the next start.
    const program = await compiled().catch((reason) => {
      eavewaterSettled();
      throw reason;
    });
    await new Promise((next) => setTimeout(next));
    __wbg_init({ module_or_path: program });`;

// What was seen to leave least when packed, of what keeps the program's meaning: values that are used twice are told twice instead
// of being kept, what ends alike isn't told once, larger functions stay functions, and the low kilobyte, the end of the stack,
// holds nothing.
const SMALLEST = [
  '-Os', '--converge', '--skip-pass=local-cse', '--skip-pass=code-folding', '--skip-pass=memory-packing', '--skip-pass=simplify-locals',
  '--one-caller-inline-max-function-size=50', '--low-memory-unused',
  ...FEATURES,
];

// The program's text with its functions in another order: behind each comes the one that has most pairs of lines in common
// with it and, half as much from one to the next, with those before it. A pair counts the more the fewer functions have it,
// and a function's count goes by its size.
function alikeTogether(text) {
  const FADES = 0.5;
  const SMALL = 50;
  const functions = Array.from(text.matchAll(FUNCTION), ([whole, rest]) => {
    const lines = rest.split('\n').filter((line) => line.trim() !== ')');
    return { whole, pairs: new Set(lines.slice(1).map((line, at) => `${lines[at].trim()} ${line.trim()}`)) };
  });
  const having = new Map();
  for (const one of functions) for (const pair of one.pairs) having.set(pair, [...(having.get(pair) ?? []), one]);
  const told = (pair) => Math.log2(functions.length / having.get(pair).length);
  for (const one of functions) one.size = Array.from(one.pairs, told).reduce((sum, bits) => sum + bits, SMALL);
  const left = new Set(functions);
  const shared = new Map();
  const order = [];
  for (let next = functions[0]; next; ) {
    order.push(next.whole);
    left.delete(next);
    shared.delete(next);
    for (const [one, bits] of shared) shared.set(one, bits * FADES);
    for (const pair of next.pairs) {
      const others = having.get(pair);
      // What is in every fourth function tells nothing.
      if (others.length < functions.length / 4) for (const other of others) if (left.has(other)) shared.set(other, (shared.get(other) ?? 0) + told(pair));
    }
    let most = 0;
    [next] = left;
    for (const [one, bits] of shared) if (bits / one.size > most) [next, most] = [one, bits / one.size];
  }
  return text.replace(FUNCTION, () => order.shift());
}

// The program's text without the bodies of what only the closures of streams call: nothing here makes a stream, but what they
// would call stands in the program's table of functions, and so was never seen to be of no use.
function emptied(text) {
  const OF_STREAMS = /^( \(func \$"[^"\n]*(?:wasm_streams|future_to_promise)[^"\n]*"[^\n]*)\n(?:[^]*?\n)? \)\n/gm;
  if (!OF_STREAMS.test(text)) throw new Error('no function of streams is left: what empties them can go');
  return text.replace(OF_STREAMS, '$1\n  (unreachable)\n )\n');
}

// The program's text with each function's locals in the order of their first use: which comes next is then easily foretold.
function localsInOrder(text) {
  const LOCAL = /^  \(local (\S+) \S+\)\n/gm;
  return text.replace(FUNCTION, (body) => {
    const used = [...new Set(Array.from(body.matchAll(/\(local\.\w+ ([^\s)]+)/g), ([, name]) => name))];
    const order = new Map(used.map((name, at) => [name, at]));
    const declared = Array.from(body.matchAll(LOCAL)).sort(([, one], [, other]) => (order.get(one) ?? Infinity) - (order.get(other) ?? Infinity));
    return body.replace(LOCAL, () => declared.shift()[0]);
  });
}

// The lightened program, and its script: a function of the program's name.
function lightProgram(esbuild, wasmPath, glue) {
  const binaryen = (tool, ...rest) => execFileSync(join(tools, 'node_modules/.bin', tool), rest);
  const module = (contents, minify) =>
    esbuild.buildSync({ stdin: { contents }, bundle: true, format: 'esm', target: 'es2022', minify, write: false }).outputFiles[0].text;

  const script = glue
    .replace(/^export \{.*\};$/m, '')
    .replace(/^export class /gm, 'class ')
    // By these a class that nothing uses looks as if it were used.
    .replace(/^if \(Symbol\.dispose\).*\n/gm, '')
    .replaceAll('new FinalizationRegistry', '/* @__PURE__ */ new FinalizationRegistry');
  const called = new Set(Array.from(module(script + starting(''), false).matchAll(/\bwasm\.(\w+)/g), ([, name]) => name));

  const shortNames = new Map();
  function short(name) {
    if (!shortNames.has(name)) shortNames.set(name, `_${shortNames.size.toString(36)}`);
    return shortNames.get(name);
  }
  const work = mkdtempSync(join(tmpdir(), 'eavewater-'));
  const [before, smaller, after] = ['before.wat', 'smaller.wat', 'after.wasm'].map((name) => join(work, name));
  binaryen('wasm-dis', wasmPath, '--all-features', '-o', before);
  const lighter = emptied(readFileSync(before, 'utf8'))
    .replace(/^ \(import "[^"]*" "([^"]*)"/gm, (_, name) => ` (import "_" "${short(name)}"`)
    .replace(/^ \(export "([^"]*)"(.*)\n/gm, (_, name, rest) => (called.has(name) ? ` (export "${short(name)}"${rest}\n` : ''));
  writeFileSync(before, lighter);
  binaryen('wasm-opt', before, ...SMALLEST, '--emit-text', '-o', smaller);
  writeFileSync(smaller, alikeTogether(readFileSync(smaller, 'utf8')));
  // What an address is a multiple of, engines read off the address.
  binaryen('wasm-opt', smaller, ...SMALLEST, '--dealign', '--emit-text', '-o', before);
  writeFileSync(before, localsInOrder(readFileSync(before, 'utf8')));
  binaryen('wasm-as', before, ...FEATURES, '-o', after);
  const program = readFileSync(after);
  rmSync(work, { recursive: true });

  const imported = new Set(WebAssembly.Module.imports(new WebAssembly.Module(program)).map(({ name }) => name));
  const shortened = script
    .replace(/^( +)(__wb\w+): function[^]*?^\1\}(?:, arguments\); \})?,\n/gm, (whole, _, name) => (imported.has(short(name)) ? whole : ''))
    .replace(/^( +)(__wb\w+)(?=: function)/gm, (_, indent, name) => indent + short(name))
    .replace(/\bwasm\.(\w+)/g, (_, name) => `wasm.${short(name)}`)
    .replace('"./eavewater_bg.js"', '"_"');
  for (const name of imported) if (!shortened.includes(` ${name}: `)) throw new Error(`the script lacks ${name}, which the program calls`);
  return { program, scriptStarting: (name) => module(shortened + starting(name), true) };
}
