import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import packageJson from '../../package.json' with { type: 'json' };
import { ROOT } from '../../src/cli/bootstrap.mjs';
import { papersCommand } from '../../src/cli/papers.ts';
import { assess } from '../../src/report/assess.ts';
import { appInBrowser } from '../support/app-in-browser.ts';
import {
  dragTo,
  figuresSettled,
  onPage,
  openDemo,
  openStart,
  planText,
  recordsIn,
  redoTimes,
  savedPlan,
  undoAll,
} from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';
import { paperFonts } from '../support/paper-fonts.ts';
import { pdfText } from '../support/pdf-text.ts';

const app = appInBrowser();

const shots = process.env.LAMPWRIGHT_SHOTS;
const shot = async (page: Page, name: string): Promise<void> => {
  if (shots) await page.screenshot({ path: join(shots, `${name}.png`) });
};

const newContext = (): Promise<BrowserContext> =>
  app.browser.newContext({
    viewport: { width: 1440, height: 900 },
    colorScheme: 'light',
    acceptDownloads: true,
  });

/** A fixture of the plan by its unit number. */
const unit = (text: string, number: string): Record<string, unknown> => {
  const found = recordsIn(text).find((r) => r.type === 'fixture' && r.unit === number);
  if (!found) throw new Error(`no unit ${number}`);
  return found;
};

describe('the main job, by mouse', () => {
  test('from a demo plan to a checked, issued plot, with everything undone and redone', async () => {
    const context = await newContext();
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    const before = await planText(page);
    await shot(page, 'story-1-open');

    // Add a fixture from the shelf.
    await page.getByRole('combobox', { name: /Find gear/ }).fill('panel 300');
    await page.getByRole('option', { name: /LED panel 60×60, 300 W/ }).click();
    const spot = await onPage(page, 3600, 2600);
    await page.mouse.click(spot.x, spot.y);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: /^14 · LED panel 60×60, 300 W/ }).waitFor();
    expect(unit(await planText(page), '14')).toMatchObject({ support: { on: 'floor' } });

    // Drag it, turn it, aim it at a mark.
    const to = await onPage(page, 4500, 3300);
    await dragTo(page, spot, to);
    const moved = unit(await planText(page), '14').at as { xMm: number; yMm: number };
    expect(Math.hypot(moved.xMm - 4500, moved.yMm - 3300)).toBeLessThan(350);
    await page.getByRole('application', { name: 'Floor drawing' }).focus();
    const facing = async (): Promise<number> =>
      (unit(await planText(page), '14').aim as { facingDeg: number }).facingDeg;
    const first = await facing();
    await page.getByRole('application', { name: 'Floor drawing' }).focus();
    await page.keyboard.press(']');
    expect(await facing()).not.toBe(first);
    await page.getByRole('combobox', { name: 'Aim', exact: true }).selectOption({ label: 'Ada' });
    await page.getByText('follows mark “Ada”').waitFor();

    // Put it on a stand.
    await page.getByRole('combobox', { name: 'Support' }).selectOption({ label: 'Combo stand, 2 risers' });
    await page.getByLabel('Height', { exact: true }).first().fill(`7' 6"`);
    await page.getByLabel('Height', { exact: true }).first().press('Enter');
    const withStand = await planText(page);
    const { standId } = unit(withStand, '14').support as { standId: string };
    const stood = recordsIn(withStand).find((r) => r.id === standId);
    expect(stood?.heightMm).toBeCloseTo(2286, 3);

    // Plug it in and see the meters move.
    await figuresSettled(page);
    const watts = (): Promise<string | null> => page.locator('.rail-power').first().textContent();
    const unplugged = await watts();
    await page.locator('.row').getByRole('button', { name: 'Plug in…' }).click();
    await page.getByRole('dialog').locator('.plug-item:not([disabled])').first().click();
    await page.locator('.row', { hasText: 'Cable' }).waitFor();
    await figuresSettled(page);
    expect(await watts()).not.toBe(unplugged);
    await page
      .locator('.row', { hasText: 'Cable' })
      .getByText(/needs \d+ ft/)
      .waitFor();
    await shot(page, 'story-2-plugged');

    // Open the working of what it draws.
    await page.locator('.row', { hasText: 'Draws' }).getByRole('button').first().click();
    const working = page.getByRole('dialog');
    await working.getByRole('heading', { name: /Current/ }).waitFor();
    expect(await working.textContent()).toMatch(/300 W/);
    await shot(page, 'story-3-working');
    await page.keyboard.press('Escape');

    // Undo all of it, redo all of it: the same bytes.
    const after = await planText(page);
    const steps = await undoAll(page);
    expect(steps).toBeGreaterThanOrEqual(6);
    expect(await planText(page)).toBe(before);
    await redoTimes(page, steps);
    expect(await planText(page)).toBe(after);

    // Close the tab, come back: everything as it was.
    await page.getByText('saved · works offline').waitFor();
    const address = page.url();
    await page.close();
    const again = await context.newPage();
    const troubleAgain = watchPage(again);
    await again.addInitScript(() =>
      Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }),
    );
    await again.goto(address);
    await figuresSettled(again);
    expect(await planText(again)).toBe(after);

    // Issue the papers.
    await again.getByRole('button', { name: 'Issue papers' }).click();
    await again.getByLabel('Date of issue').fill('2026-03-09');
    await again.getByLabel('What changed').fill('Unit 14 added');
    const waiting = again.waitForEvent('download');
    await again.getByRole('button', { name: /Issue A as PDF/ }).click();
    const pdf = readFileSync(await (await waiting).path());
    const pages = await pdfText(pdf);
    expect(pages.length).toBeGreaterThanOrEqual(2);
    expect(pages[0]).toContain('Saltmarsh Letters');
    expect(pages[0]).toContain('2026-03-09');
    // The same plan by the command line: the same texts and figures on every page.
    const { plan } = await savedPlan(again);
    const { files } = await papersCommand(plan, assess(plan, { revision: 0 }), {
      fonts: paperFonts(),
      programVersion: packageJson.version,
      formats: ['pdf'],
    });
    expect(await pdfText(files[0]?.bytes ?? new Uint8Array())).toEqual(pages);
    await again.getByRole('button', { name: 'Papers', exact: true }).click();
    await again.locator('.papers-sheet svg').waitFor();
    await shot(again, 'story-4-papers');

    expect(trouble).toEqual([]);
    expect(troubleAgain).toEqual([]);
    await context.close();
  });

  test('a plan file opens as it was saved, and a bad one is refused with words', async () => {
    const context = await newContext();
    const page = await context.newPage();
    await openStart(page, app.url);
    const open = async (file: string | { name: string; mimeType: string; buffer: Buffer }): Promise<void> => {
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Open plan file…' }).click();
      await (await chooser).setFiles(file);
    };
    await open({
      name: 'torn.plan.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"format": "lampwr'),
    });
    const alert = page.getByRole('alert');
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(/torn\.plan\.json.*JSON.*cut off/s);

    const path = join(ROOT, 'demo-sets', 'stage.plan.json');
    await open(path);
    await figuresSettled(page);
    expect(await planText(page)).toBe(readFileSync(path, 'utf8'));
    await context.close();
  });
});
