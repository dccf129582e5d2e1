import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planFileBytes } from '../../src/plan/container.ts';
import { largePlan } from '../bench/large-plan.ts';
import { openStart } from '../support/app-story.ts';
import { launchBrowser, type Served, serveApp, watchPage } from '../support/browser.ts';
import { readPdf } from '../support/read-pdf.ts';

let site: Served;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'lampwright-large-'));
const file = join(folder, 'large.plan.json');
beforeAll(async () => {
  writeFileSync(file, planFileBytes(largePlan()).bytes);
  site = await serveApp();
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the papers of six hundred fixtures', () => {
  test('show how far they are, stop when told to and write nothing; begun again beside other work, they are all there', async () => {
    const context = await browser.newContext({
      viewport: { width: 1366, height: 768 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    const files: string[] = [];
    page.on('download', (d) => files.push(d.suggestedFilename()));
    await openStart(page, site.url);
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open plan file…' }).click();
    await (await chooser).setFiles(file);
    await page.locator('.rail-findings').getByText('showing').waitFor({ timeout: 90_000 });
    await page.getByRole('button', { name: 'Papers', exact: true }).click();
    await page.locator('.papers-sheet svg').waitFor({ timeout: 90_000 });
    const pages = await page.locator('.papers-item').count();
    expect(pages).toBeGreaterThan(100);

    const stop = page.getByRole('button', { name: 'Stop', exact: true });
    const bar = page.getByRole('progressbar', { name: 'How far the export is' });
    const share = async (): Promise<number> => Number(await bar.getAttribute('value'));
    await page.getByRole('tab', { name: 'Export' }).click();

    // It tells how far it is, and further after a while; then it is stopped, and a second time while pages are made.
    for (const words of [/^Laying out sheet \d+ of \d+$/, /^Page \d+ of \d+$/]) {
      await page.getByRole('button', { name: 'PDF of the chosen sheets' }).click();
      await page.getByText(words).waitFor({ timeout: 90_000 });
      const before = await share();
      await page.waitForFunction(
        (was) => Number(document.querySelector('.export-bar progress')?.getAttribute('value') ?? 1) > was,
        before,
      );
      await stop.click();
      await page.getByText('Stopped. Nothing was written.').waitFor({ timeout: 15_000 });
      expect(await bar.count()).toBe(0);
    }
    // Everything answers at once: another tab, another page, another screen.
    await page.getByRole('tab', { name: 'Sheets' }).click();
    await page.getByRole('button', { name: 'Next page' }).click();
    await page.getByText(`2 of ${pages}`, { exact: true }).waitFor();
    await page.waitForTimeout(1000);
    expect(files).toEqual([]);

    // Begun again, it goes on while the floor is looked at, where it can be watched too.
    await page.getByRole('tab', { name: 'Export' }).click();
    const waiting = page.waitForEvent('download', { timeout: 180_000 });
    await page.getByRole('button', { name: 'PDF of the chosen sheets' }).click();
    await bar.waitFor();
    await page.getByRole('button', { name: 'Floor', exact: true }).click();
    await page.getByRole('application', { name: 'Floor drawing' }).waitFor();
    await bar.waitFor();
    const pdf = readFileSync(await (await waiting).path());
    await page.getByText(/\.pdf is made, [\d,]+ kB\./).waitFor();
    const read = await readPdf(new Uint8Array(pdf));
    expect(read.pages.length).toBe(pages);
    expect(read.bookmarks.length).toBe(pages);
    expect(pdf.length / pages / 1000).toBeLessThan(60);
    expect(files.length).toBe(1);
    expect(trouble).toEqual([]);
    await context.close();
  }, 480_000);
});
