import { execFileSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import type { Server } from 'node:http';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type LaunchOptions, type Page } from 'playwright';
import { build } from 'vite';
import { ensureBuilt, ROOT } from '../../src/cli/bootstrap.mjs';
import { serve } from '../../src/cli/server.mjs';
import { findChromium } from './chromium.mjs';

/** How the tests start their browser. */
export const launchOptions = (): LaunchOptions => {
  const { path, todo } = findChromium();
  if (!path) throw new Error(todo);
  const args = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return { executablePath: path, args: [...args, '--disable-dev-shm-usage'] };
};

export const launchBrowser = (): Promise<Browser> => chromium.launch(launchOptions());

/** A browser with a profile on disk, which a second start finds as the first left it. */
export const launchWithProfile = (folder: string): Promise<BrowserContext> =>
  chromium.launchPersistentContext(folder, launchOptions());

/** The process of a browser with this profile, found by its own command line. */
const processOf = (profile: string): number => {
  for (const line of execFileSync('ps', ['-eo', 'pid,args'], { encoding: 'utf8' }).split('\n'))
    if (line.includes(`--user-data-dir=${profile}`) && !line.includes('--type='))
      return Number(line.trim().split(/\s+/, 1)[0]);
  throw new Error('the browser’s process was not found');
};

/** Removes a profile; the processes of a killed browser may write to it for a moment longer. */
export const removeProfile = (folder: string): void =>
  rmSync(folder, { recursive: true, force: true, maxRetries: 40, retryDelay: 250 });

/** Kills a browser as a crash would: nothing in it gets a last word. */
export const killBrowser = async (context: BrowserContext, profile: string): Promise<void> => {
  const closed = new Promise((resolve) => context.once('close', resolve));
  process.kill(processOf(profile), 'SIGKILL');
  await closed;
};

export interface Served {
  /** Address of the page, with a slash at the end. */
  readonly url: string;
  close(): Promise<void>;
}

const served = (server: Server): Served => {
  const address = server.address();
  const port = typeof address === 'object' && address ? address.port : 0;
  return {
    url: `http://127.0.0.1:${port}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};

/** Serves a folder under the policy of the real server. */
export const serveFolder = async (folder: string, port = 0): Promise<Served> =>
  served(await serve(folder, port));

/** Builds the editor where needed and serves it, as `npm start` does, on a free port. */
export const serveApp = (): Promise<Served> => serveFolder(ensureBuilt('app', () => {}));

/** Builds a page in a folder of tests/ and serves it. */
export const serveHarness = async (folder: string): Promise<Served> => {
  const outDir = join(ROOT, '.cache', `page-${folder.replaceAll('/', '-')}-${process.pid}`);
  await build({
    configFile: false,
    root: join(ROOT, 'tests', folder),
    base: './',
    logLevel: 'error',
    build: { outDir, emptyOutDir: true, target: 'es2022', modulePreload: { polyfill: false } },
  });
  const site = await serveFolder(outDir);
  return {
    url: site.url,
    close: async () => {
      await site.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
};

/** Notes everything that went wrong on a page: errors, refused by the policy, failed requests. */
export const watchPage = (page: Page): readonly string[] => {
  const trouble: string[] = [];
  page.on('pageerror', (error) => trouble.push(`error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') trouble.push(`console: ${message.text()}`);
  });
  return trouble;
};
