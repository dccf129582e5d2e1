import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright';
import { ensureBuilt } from '../../src/cli/bootstrap.mjs';
import { serveFolder } from '../support/browser.ts';
import { kilobytes, line } from './measure.ts';

const bytesOf = (folder: string): number =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((f) => statSync(join(folder, f)))
    .reduce((sum, s) => sum + (s.isFile() ? s.size : 0), 0);

/** What a browser asks for until the start page stands, as sent and as a packing server would send it. */
export const benchFirstLoad = async (browser: Browser): Promise<void> => {
  const folder = ensureBuilt('app', console.error);
  const site = await serveFolder(folder);
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const asked = new Set<string>();
  page.on('response', (r) => asked.add(new URL(r.url()).pathname));
  await page.goto(site.url);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForLoadState('networkidle');
  const files = [...asked].map((path) => readFileSync(join(folder, path === '/' ? 'index.html' : path)));
  const plain = files.reduce((sum, f) => sum + f.length, 0);
  const packed = files.reduce((sum, f) => sum + gzipSync(f).length, 0);
  line('first load, start page', kilobytes(plain), `${files.length} files, ${kilobytes(packed)} packed`);
  line('  everything kept for offline use', kilobytes(bytesOf(folder)));
  await context.close();
  await site.close();
};
