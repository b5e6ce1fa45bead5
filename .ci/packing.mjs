// Packs the program as src/packing says, and unpacks it as the phone does. What does so is made by each build, in target/packing.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const at = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));
const packer = at('target/packing/pack');
const unpacker = at('target/packing/unpack.wasm');

// How the program that unpacks is made: for size it would be 1 kB lighter and an eighth slower.
const LIGHT = [
  '--target', 'wasm32-unknown-unknown', '--crate-type', 'cdylib', '-C', 'opt-level=2', '-C', 'lto=fat', '-C', 'strip=symbols',
  '-C', 'target-feature=+simd128,+bulk-memory', '-C', 'link-arg=-zstack-size=65536',
];

// Makes what packs, and the program that unpacks; gives the latter.
export function makePacker() {
  const rustc = (source, ...rest) =>
    execFileSync('rustc', ['--edition', '2024', '-C', 'panic=abort', '-C', 'codegen-units=1', ...rest, at(source)]);
  mkdirSync(at('target/packing'), { recursive: true });
  rustc('.ci/pack.rs', '-C', 'opt-level=3', '-o', packer);
  rustc('.ci/unpack.rs', ...LIGHT, '-o', unpacker);
  execFileSync(at('tests/journeys/node_modules/.bin/wasm-opt'), [unpacker, '-Os', '--all-features', '-o', unpacker]);
  return readFileSync(unpacker);
}

// A program packed, which is seen to unpack to the same.
export function pack(program) {
  const work = mkdtempSync(join(tmpdir(), 'eavewater-'));
  const [plain, packed] = ['plain.wasm', 'packed'].map((name) => join(work, name));
  writeFileSync(plain, program);
  execFileSync(packer, [plain, packed]);
  const bytes = readFileSync(packed);
  rmSync(work, { recursive: true });
  if (!unpack(bytes).equals(program)) throw new Error('what is packed does not unpack to the same');
  return bytes;
}

// A packed program as it was.
export function unpack(packed) {
  const { memory, room, finish, program } = new WebAssembly.Instance(new WebAssembly.Module(readFileSync(unpacker))).exports;
  const start = room(packed.length);
  new Uint8Array(memory.buffer).set(packed, start);
  const length = finish();
  return Buffer.from(memory.buffer, program(), length);
}
