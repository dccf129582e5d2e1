import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import DxfParser from 'dxf-parser';
import type { BrowserContext, Page } from 'playwright';
import readXlsxFile from 'read-excel-file/node';
import { describe, expect, test } from 'vitest';
import packageJson from '../../package.json' with { type: 'json' };
import { papersCommand } from '../../src/cli/papers.ts';
import { fixturePlace, recordsOf } from '../../src/plan/plan.ts';
import { assess } from '../../src/report/assess.ts';
import { appInBrowser } from '../support/app-in-browser.ts';
import { dragTo, figuresSettled, onPage, openDemo, openStart, savedPlan } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';
import { paperFonts } from '../support/paper-fonts.ts';
import { pdfText } from '../support/pdf-text.ts';
import { readPng } from '../support/read-png.ts';

const app = appInBrowser();

const shots = process.env.LAMPWRIGHT_SHOTS;
const shot = async (page: Page, name: string): Promise<void> => {
  if (shots) await page.screenshot({ path: join(shots, `${name}.png`) });
};

const open = async (
  demo: string,
): Promise<{ context: BrowserContext; page: Page; trouble: readonly string[] }> => {
  const context = await app.browser.newContext({
    viewport: { width: 1366, height: 768 },
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, demo);
  return { context, page, trouble };
};

const toPapers = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Papers', exact: true }).click();
  await page.locator('.papers-sheet svg').waitFor();
  await laidOut(page);
};

/** Waits until the pages belong to the plan as it is. */
const laidOut = async (page: Page): Promise<void> => {
  await page.waitForTimeout(400);
  await page.waitForFunction(() => document.querySelector('.papers-status')?.textContent === '');
};

const tab = (page: Page, name: string) => page.getByRole('tab', { name });
const choice = (page: Page, name: string) => page.getByRole('combobox', { name, exact: true });
const titles = (page: Page) => page.locator('.papers-item').allInnerTexts();

const saved = async (page: Page, name: RegExp | string): Promise<{ name: string; bytes: Buffer }> => {
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name, exact: typeof name === 'string' }).click();
  const file = await waiting;
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
};

const issue = async (page: Page, letter: string, date: string, note: string): Promise<string[]> => {
  await page.getByRole('button', { name: 'Issue papers', exact: true }).click();
  await page.getByLabel('Date of issue').fill(date);
  await page.getByLabel('What changed').fill(note);
  const { bytes } = await saved(page, `Issue ${letter} as PDF`);
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  return [...(await pdfText(bytes))];
};

const faults = async (page: Page): Promise<readonly string[]> => {
  // The page's policy lets no other script in; the driver may.
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run('.papers', {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
    });
    return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`);
  });
  return found;
};

describe('the Papers workspace', () => {
  test('sheets are chosen, put in order and turned by mouse and keyboard; what does not fit is said beside the page', async () => {
    const { context, page, trouble } = await open('Study, day');
    await toPapers(page);
    const all = await titles(page);
    expect(all[0]).toBe('E-1 Cover');
    expect(await faults(page)).toEqual([]);

    // By keyboard from page to page: in the list, then on the sheet itself.
    await page.locator('.papers-item').first().focus();
    await page.keyboard.press('ArrowDown');
    await page.getByText(`2 of ${all.length}`, { exact: true }).waitFor();
    expect(await page.locator('.papers-item[aria-current]').textContent()).toBe(all[1]);
    const setup = await choice(page, 'Setup').inputValue();
    await page.locator('.papers-stage').focus();
    await page.keyboard.press('PageDown');
    await page.getByText(`3 of ${all.length}`, { exact: true }).waitFor();
    expect(await choice(page, 'Setup').inputValue()).toBe(setup);
    expect(await page.locator('.papers-sheet svg title').first().textContent()).toBe(all[2]);
    // A link of the cover's index leads to its sheet.
    await page.locator('.papers-item').first().click();
    await page.locator('.papers-sheet rect[data-to="sheet:circuits"]').first().click();
    await page.waitForFunction(() =>
      document.querySelector('.papers-item[aria-current]')?.textContent?.includes('Circuit schedule'),
    );

    // Each preset gives its sheets; one sheet alone; another order.
    await page.getByText('Choose sheets').click();
    const preset = page.getByRole('combobox', { name: /^For/ });
    for (const [label, has, lacks] of [
      ['Gaffer', 'Leg summary', 'Truck list'],
      ['Best boy', 'Run sheet', 'Unit list'],
      ['Rental order', 'Truck list', 'Lighting plot'],
    ] as const) {
      await preset.selectOption({ label });
      await laidOut(page);
      const now = (await titles(page)).join('\n');
      expect(now).toContain(has);
      expect(now).not.toContain(lacks);
    }
    await page.getByRole('button', { name: 'Gear list up' }).focus();
    await page.keyboard.press('Enter');
    await laidOut(page);
    expect((await titles(page))[0]).toMatch(/^E-1 Gear list/);
    for (const name of ['Cover', 'Cable list', 'Truck list', 'Unit list'])
      await page.getByRole('checkbox', { name, exact: true }).uncheck();
    await laidOut(page);
    expect((await titles(page)).every((t) => t.endsWith('Gear list'))).toBe(true);
    await page.getByRole('checkbox', { name: 'Gear list', exact: true }).uncheck();
    await page.getByText('There are no sheets').waitFor();
    await page.getByRole('checkbox', { name: 'Lighting plot', exact: true }).check();
    await page.locator('.papers-sheet svg').waitFor();

    // A sheet too small for the scale is said at once, and what it then comes to.
    await choice(page, 'Sheet').selectOption('A4');
    await choice(page, 'Scale of the plot').selectOption({ index: 2 });
    await page
      .getByText(/match marks|would take|cut off/)
      .first()
      .waitFor();
    await shot(page, 'papers-1-warning');
    expect(await faults(page)).toEqual([]);

    // The title block: a form, one step, on the sheet at once.
    await page.getByRole('button', { name: 'Title block…' }).click();
    await page.getByLabel('Production', { exact: true }).fill('Saltmarsh Tides');
    await page.getByRole('button', { name: 'Keep' }).click();
    await page.locator('.papers-sheet svg', { hasText: 'Saltmarsh Tides' }).waitFor();
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('two issues with an edit between them are compared in words, on the drawing and with the plan as it is now', async () => {
    const { context, page, trouble } = await open('Study, day');
    await toPapers(page);
    const first = await issue(page, 'A', '2026-03-09', 'For the recce');
    expect(first[0]).toContain('2026-03-09');

    // A unit is dragged on the floor: what prints is a draft of B.
    await page.getByRole('button', { name: 'Floor', exact: true }).click();
    await page.getByRole('application', { name: 'Floor drawing' }).waitFor();
    const { plan } = await savedPlan(page);
    const unit = recordsOf(plan, 'fixture').find((f) => f.unit === '7');
    if (!unit) throw new Error('the demo had a unit 7');
    const { at } = fixturePlace(plan, unit);
    await dragTo(page, await onPage(page, at.xMm, at.yMm), await onPage(page, at.xMm + 600, at.yMm + 300));
    await figuresSettled(page);
    await toPapers(page);
    await tab(page, 'Issues').click();
    await page.getByText('what prints now is a draft of B').waitFor();
    const words = page.locator('.papers-changes li');
    await words.first().waitFor();
    expect((await words.allInnerTexts()).join('\n')).toMatch(/^Unit 7 moved /m);

    // The marked drawing: a cloud with its triangle, and the list of changes behind it.
    await page.getByRole('button', { name: 'Show on the plot' }).click();
    await page.getByText(/^Changes from A to B/).waitFor();
    await page.locator('.papers-sheet svg', { hasText: 'Unit' }).waitFor();
    await laidOut(page);
    await shot(page, 'papers-2-compared');
    await page.getByRole('button', { name: 'Back to the papers' }).click();

    const second = await issue(page, 'B', '2026-03-10', 'Unit 7 nearer to the door');
    expect(second.join('\n')).toContain('List of changes');
    await page.getByText('The plan is as it was issued in B.').waitFor();
    await choice(page, 'From').selectOption({ label: 'A 2026-03-09' });
    await choice(page, 'To').selectOption({ label: 'B 2026-03-10' });
    await page
      .getByText(/change.* from A to B/)
      .first()
      .waitFor();
    // Compared with itself, an issue has no changes.
    await choice(page, 'From').selectOption({ label: 'B 2026-03-10' });
    await page.getByText('No change.').waitFor();
    expect(await page.getByRole('button', { name: 'Show on the plot' }).isDisabled()).toBe(true);
    expect(await faults(page)).toEqual([]);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('lists, workbook and the drawing go out as files that other programs read', async () => {
    const { context, page, trouble } = await open('Stage, three sets');
    await toPapers(page);
    await tab(page, 'Export').click();
    await page.getByRole('button', { name: 'CSV of this list' }).waitFor();
    await choice(page, 'List').selectOption({ label: 'Data lines' });
    await page.getByText(/\d+ rows, 10 columns/).click();
    await page.getByText('place in the order', { exact: true }).waitFor();
    expect(await faults(page)).toEqual([]);
    const csv = await saved(page, 'CSV of this list');
    expect(csv.name).toMatch(/-lines\.csv$/);
    expect(csv.bytes.toString('utf8')).toMatch(/^\uFEFFline,from,port,stop,unit,/);
    const book = await readXlsxFile((await saved(page, 'Workbook of all')).bytes);
    expect(book.map((s) => s.sheet)).toEqual(expect.arrayContaining(['circuits', 'crossings', 'columns']));

    const svg = (await saved(page, 'SVG')).bytes.toString('utf8');
    expect(svg).toMatch(/^<svg [^>]*width="[\d.]+mm"/);
    const picture = readPng(new Uint8Array((await saved(page, 'PNG')).bytes));
    const [, , w, h] = (/viewBox="([^"]+)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
    expect(picture.width / picture.height).toBeCloseTo((w ?? 0) / (h ?? 1), 2);
    const dxf = new DxfParser().parseSync((await saved(page, /^DXF/)).bytes.toString('latin1'));
    expect(dxf?.header.$ACADVER).toBe('AC1009');
    expect(dxf?.entities.filter((e) => e.type === 'INSERT').length).toBeGreaterThan(70);
    await shot(page, 'papers-3-export');
    expect(trouble).toEqual([]);
    await context.close();
  });
});

describe('the papers of every demo', () => {
  test.each(['Study, day', 'Street, night', 'Stage, three sets'])(
    '%s: browser and command line give the same texts on every page, the same lists and the same drawing',
    async (demo) => {
      const { context, page, trouble } = await open(demo);
      const { plan } = await savedPlan(page);
      await toPapers(page);
      await tab(page, 'Export').click();
      const pdf = await saved(page, 'PDF of the chosen sheets');
      const book = await saved(page, 'Workbook of all');
      const dxf = await saved(page, /^DXF/);
      const { files } = await papersCommand(plan, assess(plan, { revision: 0 }), {
        fonts: paperFonts(),
        programVersion: packageJson.version,
        formats: ['pdf', 'xlsx', 'dxf'],
      });
      const [cliPdf, cliBook, cliDxf] = files.map((f) => Buffer.from(f.bytes));
      if (!cliPdf || !cliBook || !cliDxf) throw new Error('the command gave less than was asked for');
      expect(await pdfText(pdf.bytes)).toEqual(await pdfText(cliPdf));
      expect(await readXlsxFile(book.bytes)).toEqual(await readXlsxFile(cliBook));
      expect(dxf.bytes.equals(cliDxf)).toBe(true);
      expect(trouble).toEqual([]);
      await context.close();
    },
  );
});
