// Passes on what the benchmarks print, natively and then in the browser, and at the end what each case takes there for one here.
import { createInterface } from 'node:readline';

const ROW = /^( *\S.*?) {2,}([\d.]+) {2,}([\d.]+)$/;
const tables = [];
for await (const line of createInterface({ input: process.stdin })) {
  console.log(line);
  if (line.startsWith('balance of')) tables.push([]);
  const row = ROW.exec(line);
  if (row && tables.length > 0) tables.at(-1).push({ name: row[1], ms: Number(row[3]) });
}
const [native, browser] = tables;
if (native?.length !== browser?.length || native.length === 0) throw new Error('not every case was timed both natively and in the browser');
console.log('\nthe browser to native, in the same run');
for (const [at, { name, ms }] of native.entries()) console.log(`${name.padEnd(50)} ${(browser[at].ms / ms).toFixed(2).padStart(8)}`);
