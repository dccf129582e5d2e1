// Serves the built editor on this machine only. Uses nothing that needs installing.
import { createReadStream, readFileSync, realpathSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';
import { ROOT } from './bootstrap.mjs';
import { HEADER_POLICY } from './policy.mjs';

/** Fixed, because the browser keeps plans by host name and port. */
export const HOST = '127.0.0.1';
export const PORT = 41873;

/** Answers what this server is, so that a second start can tell it from a stranger's. */
export const IDENTITY_PATH = '/.lampwright';

const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
};

const HEADERS = {
  'Content-Security-Policy': HEADER_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=()',
};

export const identity = () => ({
  app: 'lampwright',
  version: JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).version,
});

/** The file for a URL path inside `folder`, or undefined: nothing outside it, no dot files, no links out of it. */
const fileFor = (folder, urlPath) => {
  let path;
  try {
    path = decodeURIComponent(urlPath);
  } catch {
    return undefined;
  }
  if (path.includes('\0') || path.includes('\\')) return undefined;
  const parts = path.split('/').filter(Boolean);
  if (parts.some((p) => p.startsWith('.') || p.includes(':'))) return undefined;
  try {
    const base = realpathSync(folder);
    let file = realpathSync(join(base, ...parts));
    if (statSync(file).isDirectory()) file = realpathSync(join(file, 'index.html'));
    return file.startsWith(base + sep) && statSync(file).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
};

const handle = (folder, port) => (request, response) => {
  const send = (status, text, more = {}) => {
    response.writeHead(status, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8', ...more });
    response.end(request.method === 'HEAD' ? undefined : text);
  };
  // A page from elsewhere whose name was pointed at this machine must not read anything here.
  const host = request.headers.host;
  if (host !== `${HOST}:${port}` && host !== `localhost:${port}`)
    return send(403, 'This server answers only under its own address.\n');
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return send(405, 'Only GET and HEAD are answered.\n', { Allow: 'GET, HEAD' });
  const path = (request.url ?? '/').split(/[?#]/, 1)[0] ?? '/';
  if (path === IDENTITY_PATH)
    return send(200, JSON.stringify(identity()), {
      'Content-Type': TYPES['.json'],
      'Cache-Control': 'no-store',
    });
  // One name, so that plans are not kept in two places.
  if (host === `localhost:${port}` && path === '/')
    return send(302, '', { Location: `http://${HOST}:${port}/` });
  const file = fileFor(folder, path);
  if (!file) return send(404, 'There is nothing here.\n');
  const type = TYPES[extname(file)] ?? 'application/octet-stream';
  // Files under assets/ carry a hash of their content in their name.
  const cache = path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
  response.writeHead(200, {
    ...HEADERS,
    'Content-Type': type,
    'Content-Length': statSync(file).size,
    'Cache-Control': cache,
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
};

/**
 * Serves `folder` on loopback. Resolves to the server when it listens; rejects with the system's error
 * (`EADDRINUSE` where the port is taken).
 */
export const serve = (folder, port = PORT) =>
  new Promise((resolve, reject) => {
    const server = createServer((request, response) => {
      const address = server.address();
      handle(folder, typeof address === 'object' && address ? address.port : port)(request, response);
    });
    server.once('error', reject);
    server.listen(port, HOST, () => resolve(server));
  });

/** Whether a Lampwright server answers on this port. */
export const answersAsOurs = async (port) => {
  try {
    const r = await fetch(`http://${HOST}:${port}${IDENTITY_PATH}`, { signal: AbortSignal.timeout(2000) });
    return r.ok && (await r.json())?.app === 'lampwright';
  } catch {
    return false;
  }
};
