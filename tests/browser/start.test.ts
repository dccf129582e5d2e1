import { type ChildProcess, spawn } from 'node:child_process';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { afterEach, beforeAll, expect, test } from 'vitest';
import { ensureBuilt, ROOT } from '../../src/cli/bootstrap.mjs';

const started: ChildProcess[] = [];
beforeAll(() => {
  ensureBuilt('app', () => {});
});
afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL');
});

interface Run {
  readonly child: ChildProcess;
  text(): string;
  readonly ended: Promise<number | null>;
}

const start = (...args: string[]): Run => {
  const child = spawn(process.execPath, [join(ROOT, 'src', 'cli', 'start.mjs'), '--no-open', ...args]);
  started.push(child);
  let text = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (chunk: string) => {
      text += chunk;
    });
  return { child, text: () => text, ended: new Promise((resolve) => child.once('close', resolve)) };
};

const says = async (run: Run, words: string): Promise<void> => {
  while (!run.text().includes(words)) {
    if (run.child.exitCode !== null) throw new Error(`ended with: ${run.text()}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
};

/** A port that is free now. */
const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer();
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });

test('npm start serves the editor and prints its address; a second one finds it; it stops when told to', async () => {
  const port = String(await freePort());
  const first = start('--port', port);
  await says(first, `Lampwright is at http://127.0.0.1:${port}/`);
  const page = await fetch(`http://127.0.0.1:${port}/`);
  expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
  expect(await page.text()).toContain('http-equiv="Content-Security-Policy"');

  const second = start('--port', port);
  expect(await second.ended).toBe(0);
  expect(second.text()).toContain(`already running at http://127.0.0.1:${port}/`);

  first.child.kill('SIGTERM');
  expect(await first.ended).toBe(0);
});

test('npm start says so where another program has the port', async () => {
  const other = createServer((_request, response) => response.end('something else'));
  const port = await freePort();
  await new Promise<void>((resolve) => other.listen(port, '127.0.0.1', () => resolve()));
  const run = start('--port', String(port));
  expect(await run.ended).toBe(1);
  expect(run.text()).toMatch(/used by another program[\s\S]*--port/);
  expect(run.text()).not.toMatch(/\n\s+at /);
  other.close();
});

test.each(['0', '70000', 'x', '80.5'])('npm start refuses port %s', async (port) => {
  const run = start('--port', port);
  expect(await run.ended).toBe(1);
  expect(run.text()).toContain('is not a port');
});
