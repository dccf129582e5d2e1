import { join } from 'node:path';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import {
  dragTo,
  figuresSettled,
  onPage,
  openStart,
  planText,
  recordsIn,
  redoTimes,
  undoAll,
} from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

const shots = process.env.LAMPWRIGHT_SHOTS;
const shot = async (page: Page, name: string): Promise<void> => {
  if (shots) await page.screenshot({ path: join(shots, `${name}.png`) });
};

const of = (text: string, type: string) => recordsIn(text).filter((r) => r.type === type);

const start = async (page: Page): Promise<void> => {
  await openStart(page, app.url);
  await page.getByLabel('Name').fill('Plot');
  await page.getByLabel('Room length').fill(`24' 6"`);
  await page.getByLabel('Room width').fill(`18'`);
  await page.getByRole('button', { name: 'Start plan' }).click();
  await page.getByRole('application', { name: 'Floor drawing' }).waitFor();
};

const floor = (page: Page) => page.getByRole('application', { name: 'Floor drawing' });

const command = async (page: Page, label: string): Promise<void> => {
  await floor(page).focus();
  await page.keyboard.press('/');
  await page.getByLabel('Find gear or a command').fill(label);
  await page.keyboard.press('Enter');
};

/** Takes a kind from the shelf and presses on the floor. */
const placeAt = async (page: Page, query: string, name: RegExp, xMm: number, yMm: number): Promise<void> => {
  await page.getByRole('combobox', { name: /Find gear/ }).fill(query);
  await page.getByRole('option', { name }).first().click();
  const at = await onPage(page, xMm, yMm);
  await page.mouse.move(at.x, at.y);
  await page.mouse.click(at.x, at.y);
  await page.keyboard.press('Escape');
};

const PANEL = /LED panel 60×60, 300 W/;

describe('a plot', () => {
  test('twelve fixtures, three on a mark, a row of tubes, all plugged; two replaced; undone and redone to the same bytes', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await start(page);
    const empty = await planText(page);

    // Eight panels in a grid, all on stands.
    await placeAt(page, 'panel 300', PANEL, 1200, 1500);
    await floor(page).focus();
    await page.keyboard.press('g');
    await page.getByLabel('How many across').fill('4');
    await page.getByLabel('How many down').fill('2');
    await page.getByLabel('From one to the next, across').fill(`6' 6"`);
    await page.getByLabel('From one to the next, down').fill(`8'`);
    await page.getByRole('button', { name: 'Repeat', exact: true }).click();
    await page.getByText('8 selected').first().waitFor();
    await floor(page).focus();
    await page.keyboard.press('t');

    // A row of four tubes.
    await placeAt(page, 'LED tube 4 ft', /^LED tube 4 ft/, 1200, 4700);
    await floor(page).focus();
    await page.keyboard.press('g');
    await page.getByLabel('From one to the next, across').fill(`5'`);
    await page.getByRole('button', { name: 'Repeat', exact: true }).click();
    await page.getByText('4 selected').first().waitFor();
    await floor(page).focus();
    await page.keyboard.press('t');

    // A mark, and three units that follow it.
    await floor(page).focus();
    await page.keyboard.press('m');
    await page.keyboard.press('Escape');
    const text = await planText(page);
    const units = of(text, 'fixture');
    expect(units).toHaveLength(12);
    expect(new Set(units.map((u) => u.unit)).size).toBe(12);
    expect(of(text, 'stand')).toHaveLength(12);
    expect(units.every((u) => (u.support as { on: string }).on === 'stand')).toBe(true);
    const tubes = units.filter((u) => String(u.kindId).startsWith('led-tube'));
    expect(tubes).toHaveLength(4);
    const panels = units.filter((u) => String(u.kindId).startsWith('led-panel'));
    const mark = of(text, 'mark')[0] as unknown as { at: { xMm: number; yMm: number } };
    await page.keyboard.press('a');
    for (const u of panels.slice(0, 3)) {
      const at = (u as unknown as { at: { xMm: number; yMm: number } }).at;
      await dragTo(page, await onPage(page, at.xMm, at.yMm), await onPage(page, mark.at.xMm, mark.at.yMm));
    }
    await page.keyboard.press('s');
    expect(
      of(await planText(page), 'fixture').filter((f) => (f.aim as { at: string }).at === 'mark'),
    ).toHaveLength(3);

    // Two circuits with outlets, and everything that takes a plug plugged in.
    await page.keyboard.press('e');
    const spot = await onPage(page, -10, 2600);
    await page.mouse.click(spot.x, spot.y);
    await page.getByLabel('Breaker, amperes').fill('20');
    await page.getByRole('button', { name: 'Add the circuit' }).click();
    await page.getByText('The next wall outlets hang on circuit').waitFor();
    await page.getByRole('heading', { name: /Wall outlet/ }).waitFor();
    await page.keyboard.press('Escape');
    for (const u of units.map((x) => String(x.unit))) {
      await page
        .locator('.floor-list')
        .getByRole('button', { name: new RegExp(`^${u} `) })
        .click();
      await page.getByRole('heading', { name: new RegExp(`^${u} ·`) }).waitFor();
      await page.locator('.row').getByRole('button', { name: 'Plug in…' }).click();
      await page.getByRole('dialog').locator('.plug-item:not([disabled])').first().click();
      await page.locator('.row', { hasText: 'Cable' }).first().waitFor();
    }
    const plugged = await planText(page);
    // Every unit has a feed, laid by itself.
    const cables = of(plugged, 'cable');
    const fed = new Set(cables.map((c) => (c.to as { recordId: string }).recordId));
    expect(units.every((u) => fed.has(u.id))).toBe(true);
    expect(cables.every((c) => (c.route as { auto: boolean }).auto)).toBe(true);
    // Labels are on.
    await page.getByText('Layers and labels').click();
    expect(await page.getByLabel('show labels').isChecked()).toBe(true);
    await page.getByText('Layers and labels').click();
    await shot(page, 'plot-1-plugged');

    // Two panels become another kind and keep their place, aim and number.
    const [first, second] = panels;
    await page
      .locator('.floor-list')
      .getByRole('button', { name: new RegExp(`^${String(first?.unit)} `) })
      .click();
    await page
      .locator('.floor-list')
      .getByRole('button', { name: new RegExp(`^${String(second?.unit)} `) })
      .click({ modifiers: ['Shift'] });
    await floor(page).focus();
    await page.keyboard.press('x');
    await page.getByLabel('Find the new kind').fill('LED spot 350');
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /LED spot 350 W/ })
      .first()
      .click();
    const replaced = of(await planText(page), 'fixture');
    const now = replaced.find((f) => f.id === first?.id);
    const was = of(plugged, 'fixture').find((f) => f.id === first?.id);
    expect(now).toEqual({ ...was, kindId: now?.kindId });
    expect(now?.kindId).not.toBe(was?.kindId);
    await figuresSettled(page);
    await shot(page, 'plot-2-replaced');

    // The table: the same things, changed from the keyboard.
    await floor(page).focus();
    await page.keyboard.press('q');
    await page.getByLabel('Narrow the table').fill('tube');
    const grid = page.getByRole('grid', { name: 'Floor table' });
    await grid.focus();
    await page.keyboard.press('ArrowDown');
    const heads = await page.locator('.floor-table-sort').allInnerTexts();
    const toUse = heads.findIndex((h) => h.startsWith('Use')) - 1;
    for (let i = 0; i < toUse; i++) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('back light');
    await page.keyboard.press('Enter');
    await grid.getByText('back light').waitFor();
    await shot(page, 'plot-3-table');
    await floor(page).focus();
    await page.keyboard.press('q');

    const end = await planText(page);
    expect(of(end, 'fixture').some((f) => f.use === 'back light')).toBe(true);
    const steps = await undoAll(page);
    expect(await planText(page)).toBe(empty);
    await redoTimes(page, steps);
    expect(await planText(page)).toBe(end);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('a wall of no length, a room that crosses itself and a banana are told in words, and nothing is lost', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await start(page);
    await placeAt(page, 'panel 300', PANEL, 2000, 2000);
    const before = await planText(page);

    const across = page.getByLabel('Across', { exact: true });
    await across.fill('banana');
    await page.getByText('“banana” is not a length').waitFor();
    await page.keyboard.press('Escape');
    expect(await across.inputValue()).not.toBe('banana');

    await floor(page).focus();
    await page.keyboard.press('w');
    const corner = await onPage(page, 1500, 1500);
    await page.mouse.click(corner.x, corner.y);
    await page.keyboard.type('0');
    await page.keyboard.press('Enter');
    await page
      .getByText(/no length/)
      .first()
      .waitFor();
    await page.keyboard.press('Escape');
    // Right, down, left, and up through the first one.
    for (const [arrow, length] of [
      ['ArrowRight', `8'`],
      ['ArrowDown', `4'`],
      ['ArrowLeft', `4'`],
    ] as const) {
      await page.keyboard.press(arrow);
      await page.keyboard.type(length);
      await page.keyboard.press('Enter');
    }
    await page.keyboard.press('ArrowUp');
    await page.keyboard.type(`8'`);
    await page.keyboard.press('Enter');
    await page
      .getByText(/would cross/)
      .first()
      .waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.keyboard.press('s');
    // What was drawn before the wrong one stays.
    expect(of(await planText(page), 'wall').length - of(before, 'wall').length).toBe(3);
    const steps = await undoAll(page);
    expect(steps).toBe(4);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('a row by shift and drag, a label by hand, a saved view and a menu by the right button', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await start(page);
    await page.getByRole('combobox', { name: /Find gear/ }).fill('panel 300');
    await page.getByRole('option', { name: PANEL }).first().click();
    const [from, to] = [await onPage(page, 1500, 1500), await onPage(page, 5500, 1500)];
    await page.keyboard.down('Shift');
    await dragTo(page, from, to);
    await page.keyboard.up('Shift');
    await page.getByText('Placed 4 in a row.').waitFor();
    await page.keyboard.press('Escape');
    const units = of(await planText(page), 'fixture');
    expect(units).toHaveLength(4);
    const xs = units.map((u) => (u.at as { xMm: number }).xMm).sort((a, b) => a - b);
    const gaps = xs.slice(1).map((x, i) => x - (xs[i] ?? 0));
    for (const g of gaps) expect(Math.abs(g - (gaps[0] ?? 0))).toBeLessThan(1);

    // The first one by hand: a menu, then its label moved by number and let go again.
    await page.mouse.click(from.x, from.y);
    await page.mouse.click(from.x, from.y, { button: 'right' });
    await page.getByRole('menuitem', { name: /Put on a stand/ }).click();
    expect(of(await planText(page), 'stand')).toHaveLength(1);
    await page.getByRole('button', { name: 'by hand', exact: true }).click();
    await page.getByLabel('Label across').fill(`3'`);
    await page.keyboard.press('Enter');
    expect(of(await planText(page), 'labelPlace')[0]).toMatchObject({ dxMm: 914 });

    // A view with fewer layers, saved, left and recalled; remembered after a reload.
    await page.getByText('Layers and labels').click();
    await page.getByLabel('show beams and aim lines').uncheck();
    await page.getByText('Layers and labels').click();
    await page.getByText('Views', { exact: true }).click();
    await page.getByLabel('Name of the new view').fill('No beams');
    await page.getByRole('button', { name: 'Save this view' }).click();
    await command(page, 'Show layer: beams');
    await page.getByText('Layers and labels').click();
    expect(await page.getByLabel('show beams and aim lines').isChecked()).toBe(true);
    await command(page, 'View: No beams');
    expect(await page.getByLabel('show beams and aim lines').isChecked()).toBe(false);
    await page.getByText('saved · works offline').waitFor();
    await page.waitForTimeout(700);
    await page.reload();
    await floor(page).waitFor();
    await page.getByText('Layers and labels').click();
    expect(await page.getByLabel('show beams and aim lines').isChecked()).toBe(false);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('what is copied in one plan is pasted in another', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await start(page);
    await placeAt(page, 'panel 300', PANEL, 2000, 2000);
    await command(page, 'Put on a stand');
    await floor(page).focus();
    await page.keyboard.press('Control+c');
    await page.getByText('Copied unit 1').waitFor();
    await page.getByText('saved · works offline').waitFor();
    await page.getByTitle('Plan menu').click();
    await page.getByRole('menuitem', { name: 'Start page' }).click();
    await page.getByLabel('Name').fill('Other');
    await page.getByRole('button', { name: 'Start plan' }).click();
    await floor(page).waitFor();
    await floor(page).focus();
    await page.keyboard.press('Control+v');
    await page.getByText(/pasted/).waitFor();
    const text = await planText(page);
    expect(of(text, 'fixture')).toHaveLength(1);
    expect(of(text, 'stand')).toHaveLength(1);
    expect(trouble).toEqual([]);
    await context.close();
  });
});
