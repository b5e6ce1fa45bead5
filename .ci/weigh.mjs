// What a built app weighs on its way to the phone: every file that the service worker fetches, compressed as a host does.
// Ends with status 1 if it is more than is promised.
//   node .ci/weigh.mjs FOLDER
import { readFileSync, readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';

const PROMISED = 350_000;
const folder = process.argv[2];
if (!folder) {
  console.error('which folder? node .ci/weigh.mjs FOLDER');
  process.exit(2);
}

const compressed = (bytes) =>
  brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }).length;
const kilobytes = (bytes) => `${(bytes / 1000).toFixed(1).padStart(7)} kB`;

const files = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => {
    const path = join(entry.parentPath ?? entry.path, entry.name);
    const bytes = readFileSync(path);
    return { name: relative(folder, path), plain: bytes.length, sent: Math.min(bytes.length, compressed(bytes)) };
  })
  .sort((one, other) => other.sent - one.sent);
const total = files.reduce((sum, file) => sum + file.sent, 0);

for (const file of files) console.log(`${kilobytes(file.plain)} ${kilobytes(file.sent)} brotli  ${file.name}`);
console.log(`The whole download is ${kilobytes(total).trim()} (brotli 11); promised: under ${kilobytes(PROMISED).trim()}.`);
if (total >= PROMISED) {
  console.error('The download is too heavy.');
  process.exit(1);
}
