// Unpacks the program while it comes, by unpack.wasm: in a worker for the page, and in the service worker.
//
// The page sends what comes in pieces, then null; it gets the program, or null if what came wasn't it.

// A new unpacking: what comes goes to `take`, and `finish` gives the program's bytes, or null if what came wasn't it.
async function unpacking() {
  const fetched = await fetch('unpack.wasm', { cache: 'no-cache' });
  const { instance } = await WebAssembly.instantiate(await fetched.arrayBuffer());
  const { memory, room, go_on, finish, program } = instance.exports;
  let whole = true;
  return {
    take(bytes) {
      if (!whole) return;
      const at = room(bytes.length);
      new Uint8Array(memory.buffer).set(bytes, at);
      whole = Boolean(go_on());
    },
    finish() {
      const length = whole ? finish() : 0;
      return length > 0 ? new Uint8Array(memory.buffer, program(), length).slice() : null;
    },
  };
}

if (self.DedicatedWorkerGlobalScope) {
  const ready = unpacking();
  const met = async (data) => {
    const { take, finish } = await ready;
    if (data) return take(data);
    const program = finish();
    self.postMessage(program, program ? [program.buffer] : []);
  };
  // What goes wrong in a promise doesn't reach the page by itself.
  self.onmessage = ({ data }) => met(data).catch(() => self.postMessage(null));
}
