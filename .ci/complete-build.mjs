// Completes a built app in place. Trunk calls it after every build; by hand: node .ci/complete-build.mjs FOLDER
//
// 0. A release build that trunk has just made is lightened first (lighten.mjs).
// 1. Puts a content security policy into index.html, with the hash of each inline script.
// 2. Writes into service-worker.js the list of all built files with the hash of each, and one version made from them all.
//
// Doing it again on the same folder, or on one whose files have changed, gives the same as doing it once.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { lighten } from './lighten.mjs';

const folder = process.argv[2] ?? process.env.TRUNK_STAGING_DIR;
if (!folder) {
  console.error('which folder? node .ci/complete-build.mjs FOLDER');
  process.exit(2);
}

const sha256 = (bytes) => createHash('sha256').update(bytes).digest('base64');

// Nothing may come from or go to another host; no form is ever sent; no plug-in, frame or base address.
// Inline styles are allowed because drawings place their parts with style attributes.
function policy(inlineScripts) {
  const hashes = inlineScripts.map((script) => `'sha256-${sha256(script)}'`);
  return [
    "default-src 'none'",
    ["script-src 'self' 'wasm-unsafe-eval'", ...hashes].join(' '),
    "connect-src 'self'",
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "manifest-src 'self'",
    "worker-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

function withPolicy(page) {
  const without = page.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>\n?/, '');
  const inlineScripts = [...without.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([^]*?)<\/script>/g)].map((found) => found[1]);
  const meta = `<meta http-equiv="Content-Security-Policy" content="${policy(inlineScripts)}">`;
  // A policy binds only what comes after it, so it goes first, right behind the character set.
  const placed = without.replace(/<meta charset="?utf-8"?\s*\/?>/i, (charset) => `${charset}\n${meta}`);
  if (placed === without) throw new Error('index.html has no <meta charset="utf-8"> to put the policy behind');
  return placed;
}

function builtFiles() {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath ?? entry.path, entry.name)).split(sep).join('/'))
    .sort();
}

function replacedOnce(text, pattern, line) {
  if (text.match(new RegExp(pattern, 'gm'))?.length !== 1) throw new Error(`service-worker.js: expected one line ${pattern}`);
  return text.replace(pattern, () => line);
}

function completedWorker(worker, files) {
  const blank = replacedOnce(
    replacedOnce(worker, /^const VERSION = .*;$/m, "const VERSION = '';"),
    /^const FILES = .*;$/m,
    'const FILES = {};',
  );
  const version = createHash('sha256').update(blank).update(JSON.stringify(files)).digest('hex').slice(0, 16);
  return replacedOnce(
    replacedOnce(blank, /^const VERSION = .*;$/m, `const VERSION = '${version}';`),
    /^const FILES = .*;$/m,
    `const FILES = ${JSON.stringify(files)};`,
  );
}

if (folder === process.env.TRUNK_STAGING_DIR && process.env.TRUNK_PROFILE === 'release') lighten(folder);

const page = join(folder, 'index.html');
writeFileSync(page, withPolicy(readFileSync(page, 'utf8')));

// The page is known by its folder's address: some hosts send "index.html" on to it.
const files = Object.fromEntries(
  builtFiles()
    .filter((name) => name !== 'service-worker.js')
    .map((name) => [name === 'index.html' ? './' : name, `sha256-${sha256(readFileSync(join(folder, name)))}`]),
);
const worker = join(folder, 'service-worker.js');
writeFileSync(worker, completedWorker(readFileSync(worker, 'utf8'), files));
