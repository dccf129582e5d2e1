import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { type IncomingMessage, request, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { answersAsOurs, serve } from '../../../src/cli/server.mjs';

let folder: string;
let server: Server;
let port: number;

beforeAll(async () => {
  const base = mkdtempSync(join(tmpdir(), 'lampwright-'));
  folder = join(base, 'app');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(base, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<!doctype html>page');
  writeFileSync(join(folder, '.stamp'), 'stamp');
  writeFileSync(join(folder, 'assets', 'a-123.js'), 'export {};');
  symlinkSync(join(base, 'secret.txt'), join(folder, 'link.txt'));
  server = await serve(folder, 0);
  const address = server.address();
  port = typeof address === 'object' && address ? address.port : 0;
});

afterAll(() => {
  server.close();
  rmSync(join(folder, '..'), { recursive: true });
});

interface Answer {
  readonly status: number;
  readonly headers: IncomingMessage['headers'];
  readonly body: string;
}

/** A raw request: fetch would tidy up the path and the host. */
const ask = (path: string, options: { host?: string; method?: string } = {}): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const headers = { host: options.host ?? `127.0.0.1:${port}` };
    const r = request(
      { host: '127.0.0.1', port, path, method: options.method ?? 'GET', headers },
      (answer) => {
        let body = '';
        answer.setEncoding('utf8').on('data', (chunk: string) => {
          body += chunk;
        });
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body }));
      },
    );
    r.on('error', reject).end();
  });

test('serves the page under a strict policy', async () => {
  const { status, headers, body } = await ask('/');
  expect([status, body]).toEqual([200, '<!doctype html>page']);
  const policy = String(headers['content-security-policy']);
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("frame-ancestors 'none'");
  expect(policy).not.toMatch(/unsafe|http:|https:|\*/);
  expect(headers['x-content-type-options']).toBe('nosniff');
});

test('gives files their type and lets hashed ones be kept', async () => {
  const { headers } = await ask('/assets/a-123.js');
  expect(headers['content-type']).toContain('text/javascript');
  expect(headers['cache-control']).toContain('immutable');
  expect((await ask('/')).headers['cache-control']).toBe('no-cache');
});

test.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '/assets/../../secret.txt',
  '/assets/%2e%2e%2f%2e%2e%2fsecret.txt',
  '/..%5csecret.txt',
  '/link.txt',
  '/.stamp',
  '/%00',
  '/%zz',
  '/nothing.js',
])('gives nothing from outside the folder: %s', async (path) => {
  const { status, body } = await ask(path);
  expect(status).toBe(404);
  expect(body).not.toContain('secret');
});

test('answers only under its own name', async () => {
  expect((await ask('/', { host: 'plans.example' })).status).toBe(403);
  expect((await ask('/', { host: `127.0.0.1:${port + 1}` })).status).toBe(403);
});

test('has one name for the page, so that plans are kept in one place', async () => {
  const { status, headers } = await ask('/', { host: `localhost:${port}` });
  expect([status, headers.location]).toEqual([302, `http://127.0.0.1:${port}/`]);
});

test('takes nothing in', async () => {
  expect((await ask('/', { method: 'POST' })).status).toBe(405);
  expect((await ask('/', { method: 'HEAD' })).body).toBe('');
});

test('says what it is', async () => {
  expect(await answersAsOurs(port)).toBe(true);
});

test('says where the port is taken', async () => {
  await expect(serve(folder, port)).rejects.toMatchObject({ code: 'EADDRINUSE' });
});
