import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDemo, openStart } from '../support/app-story.ts';
import { launchBrowser, type Served, serveApp, watchPage } from '../support/browser.ts';
import { pngOf } from '../support/pictures.ts';
import { readPdf } from '../support/read-pdf.ts';

let site: Served;
let browser: Browser;
const folder = mkdtempSync(join(tmpdir(), 'lampwright-bad-'));
beforeAll(async () => {
  site = await serveApp();
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
  rmSync(folder, { recursive: true, force: true });
});

const pageOf = async (): Promise<{ page: Page; trouble: readonly string[] }> => {
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 }, acceptDownloads: true });
  const page = await context.newPage();
  const trouble = watchPage(page);
  await openStart(page, site.url);
  return { page, trouble };
};

const toPapers = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Papers', exact: true }).click();
  await page.locator('.papers-sheet svg').waitFor({ timeout: 60_000 });
};

const pdf = async (page: Page): Promise<Uint8Array> => {
  await page.getByRole('tab', { name: 'Export' }).click();
  const waiting = page.waitForEvent('download', { timeout: 90_000 });
  await page.getByRole('button', { name: 'PDF of the chosen sheets' }).click();
  return new Uint8Array(readFileSync(await (await waiting).path()));
};

/** A picture that no packing makes smaller: every pixel by a generator of numbers. */
const noise = (widthPx: number, heightPx: number): Buffer => {
  let x = 1;
  return pngOf(widthPx, heightPx, () => {
    x = (Math.imul(x, 1664525) + 1013904223) >>> 0;
    return [x >>> 24, (x >>> 16) & 255, (x >>> 8) & 255];
  });
};

describe('papers of what a person might bring', () => {
  test('an underlay from a file of a hundred megabytes is taken smaller, with word of it, and prints', async () => {
    const path = join(folder, 'survey.png');
    writeFileSync(path, noise(6000, 5700));
    expect(statSync(path).size).toBeGreaterThan(100_000_000);
    const { page, trouble } = await pageOf();
    await openDemo(page, 'Study, day');
    await page.getByRole('application', { name: 'Floor drawing' }).focus();
    await page.keyboard.press('i');
    await page.getByLabel('File').setInputFiles(path);
    await page
      .getByText('survey.png was made smaller: 6000 × 5700 to 4096 × 3891 pixels.')
      .waitFor({ timeout: 90_000 });
    await page.keyboard.press('Escape');
    await toPapers(page);
    const bytes = await pdf(page);
    const read = await readPdf(bytes);
    expect(read.pages.length).toBeGreaterThan(5);
    expect(bytes.length).toBeLessThan(40_000_000);
    expect(trouble).toEqual([]);
    await page.context().close();
  }, 240_000);

  test('a file of more than two hundred megabytes is refused with its size, and the plan is as it was', async () => {
    const path = join(folder, 'wall.png');
    writeFileSync(path, Buffer.concat([pngOf(40, 30), Buffer.alloc(211_000_000)]));
    const { page, trouble } = await pageOf();
    await openDemo(page, 'Study, day');
    await page.getByRole('application', { name: 'Floor drawing' }).focus();
    await page.keyboard.press('i');
    await page.getByLabel('File').setInputFiles(path);
    await page
      .getByText(/wall\.png is too large \(211 MB; the limit is 210 MB\)/)
      .waitFor({ timeout: 60_000 });
    rmSync(path);
    expect(trouble).toEqual([]);
    await page.context().close();
  }, 120_000);

  test('a plan with nothing in it has papers that say so', async () => {
    const { page, trouble } = await pageOf();
    await page.getByLabel('Name').fill('Empty');
    await page.getByRole('button', { name: 'Start plan' }).click();
    await page.getByRole('application', { name: 'Floor drawing' }).waitFor();
    await toPapers(page);
    const read = await readPdf(await pdf(page));
    const words = read.pages.flatMap((p) => p.texts.map((t) => t.text)).join('\n');
    expect(words).toContain('No source is drawn.');
    expect(trouble).toEqual([]);
    await page.context().close();
  }, 120_000);

  test('labels wider than their sheet are told at the field and on the page; right ones print', async () => {
    const { page, trouble } = await pageOf();
    await openDemo(page, 'Study, day');
    await toPapers(page);
    await page.getByText('Choose sheets').click();
    await page.getByRole('checkbox', { name: 'Unit labels' }).check();
    const wide = page.getByLabel('Label wide, mm');
    await wide.fill('banana');
    await page.getByText('“banana” is no size.').waitFor();
    await wide.fill('300');
    await wide.blur();
    await page
      .getByText(/One label is wider than its sheet/)
      .first()
      .waitFor();
    await wide.fill('60');
    await wide.blur();
    await page.locator('.papers-item', { hasText: 'Unit labels' }).first().click();
    await page.locator('.papers-sheet svg title', { hasText: 'Unit labels' }).waitFor({ state: 'attached' });
    expect(await page.getByText(/One label is wider/).count()).toBe(0);
    expect(trouble).toEqual([]);
    await page.context().close();
  }, 120_000);
});
