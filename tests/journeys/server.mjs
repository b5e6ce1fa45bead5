// A small static server, like any plain host: for `make serve` and for the journeys.
//   node tests/journeys/server.mjs FOLDER PORT
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { brotliCompressSync } from 'node:zlib';

const KINDS = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

// The file that an address stands for, or null. A folder stands for its index.html; nothing outside `folder` is given out.
async function fileFor(folder, pathname) {
  let path;
  try {
    path = resolve(folder, `.${decodeURIComponent(pathname)}`);
  } catch {
    return null;
  }
  if (path !== folder && !path.startsWith(folder + sep)) return null;
  const found = await stat(path).catch(() => null);
  if (found?.isFile()) return path;
  return found?.isDirectory() && pathname.endsWith('/') ? fileFor(folder, `${pathname}index.html`) : null;
}

// Starts serving. `places` maps a path on the host ("/" or "/some/folder/") to a folder on disk; it may be changed while
// the server runs. `port` 0 takes any free port. With `compress` it sends as a good host does (brotli 11), else as it is.
// Returns { port, log, cut, stop }: `log` grows by { path, status } with each answer; of a path in the set `cut` half is sent,
// then the connection breaks; `stop` cuts every connection.
export async function startServer(places, port = 0, compress = false) {
  const squeezed = new Map();
  async function brotli(file) {
    const { mtimeMs } = await stat(file);
    const kept = squeezed.get(file);
    if (kept?.mtimeMs !== mtimeMs) squeezed.set(file, { mtimeMs, bytes: brotliCompressSync(await readFile(file)) });
    return squeezed.get(file).bytes;
  }

  const log = [];
  const cut = new Set();
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url, 'http://localhost');
    const place = Object.keys(places)
      .filter((prefix) => pathname.startsWith(prefix))
      .sort((one, other) => other.length - one.length)[0];
    const reading = request.method === 'GET' || request.method === 'HEAD';
    const file = reading && place ? await fileFor(resolve(places[place]), pathname.slice(place.length - 1)) : null;
    const status = !reading ? 405 : file ? 200 : 404;
    log.push({ path: pathname, status });
    if (!file) {
      response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' }).end(status === 405 ? 'Only for reading.' : 'Not here.');
      return;
    }
    if (cut.has(pathname)) {
      const bytes = await readFile(file);
      response.writeHead(200, { 'Content-Type': KINDS[extname(file)] ?? 'application/octet-stream', 'Content-Length': bytes.length });
      response.write(bytes.subarray(0, bytes.length / 2), () => response.destroy());
      return;
    }
    // Always asked again, so that a new build is seen at once.
    const squeeze = compress && /\bbr\b/.test(request.headers['accept-encoding'] ?? '') && extname(file) !== '.png';
    response.writeHead(200, {
      'Content-Type': KINDS[extname(file)] ?? 'application/octet-stream',
      'Cache-Control': 'no-cache',
      ...(squeeze && { 'Content-Encoding': 'br', Vary: 'Accept-Encoding' }),
    });
    if (request.method === 'HEAD') response.end();
    else if (squeeze) response.end(await brotli(file));
    else createReadStream(file).on('error', () => response.destroy()).pipe(response);
  });
  await new Promise((done, failed) => server.once('error', failed).listen(port, '127.0.0.1', done));
  return {
    port: server.address().port,
    log,
    cut,
    stop() {
      const stopped = new Promise((done) => server.close(done));
      server.closeAllConnections();
      return stopped;
    },
  };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [folder, port = '8080'] = process.argv.slice(2);
  if (!folder || !/^\d+$/.test(port)) {
    console.error('node tests/journeys/server.mjs FOLDER PORT');
    process.exit(2);
  }
  try {
    const server = await startServer({ '/': folder }, Number(port), true);
    console.log(`Eavewater is at http://localhost:${server.port}/   (Ctrl-C ends it)`);
  } catch (reason) {
    const taken = reason.code === 'EADDRINUSE';
    console.error(taken ? `Port ${port} is taken; try: make serve PORT=${Number(port) + 1}` : `Cannot serve ${folder}: ${reason.message}`);
    process.exit(1);
  }
}
