import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { onPage, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

/** What a person meets who starts with nothing and works by mouse and keyboard on a small screen. */

const app = appInBrowser();

const SMALL = { viewport: { width: 1366, height: 768 }, acceptDownloads: true } as const;

const floor = (page: Page) => page.getByRole('application', { name: 'Floor drawing' });

/** A room of 5.4 by 4 metres by European practice. */
const startRoom = async (page: Page): Promise<void> => {
  await openStart(page, app.url);
  await page.getByLabel('Practice').selectOption('europe');
  await page.getByLabel('Room length').fill('5,4');
  await page.getByLabel('Room width').fill('4');
  await page.getByRole('button', { name: 'Start plan' }).click();
  await floor(page).waitFor();
};

const clickAt = async (page: Page, xMm: number, yMm: number): Promise<void> => {
  const at = await onPage(page, xMm, yMm);
  await page.mouse.move(at.x - 5, at.y - 5);
  await page.mouse.move(at.x, at.y);
  await page.mouse.click(at.x, at.y);
};

const message = (page: Page) => page.locator('.canvas-message');

describe('from a blank plan', () => {
  test('the wall outlet that was pressed for comes with its circuit, by Enter, and undo says what it took back', async () => {
    const context = await app.browser.newContext(SMALL);
    const page = await context.newPage();
    const trouble = watchPage(page);
    await startRoom(page);
    await floor(page).focus();
    await page.keyboard.press('e');
    await clickAt(page, 1000, 3990);
    await page.getByRole('dialog', { name: 'New circuit' }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /Wall outlet W1/ }).waitFor();
    const text = await planText(page);
    const outlets = recordsIn(text).filter((r) => r.type === 'outlet');
    expect(outlets).toHaveLength(1);
    expect(outlets[0]).toMatchObject({ wallId: expect.any(String) });
    const at = outlets[0]?.at as { xMm: number };
    expect(Math.abs(at.xMm - 1000)).toBeLessThan(100);

    await floor(page).focus();
    await page.keyboard.press('Control+z');
    await message(page).getByText('Undone: Add circuit 1.').waitFor();
    expect(recordsIn(await planText(page)).filter((r) => r.type === 'outlet' || r.type === 'source')).toEqual(
      [],
    );
    await page.getByRole('button', { name: /^Redo/ }).click();
    await message(page).getByText('Done again: Add circuit 1.').waitFor();
    // What was said about the step before goes with the next one.
    await page.keyboard.press('Escape');
    await floor(page).focus();
    await page.keyboard.press('m');
    await page.getByRole('heading', { name: /Mark 1/ }).waitFor();
    await expect.poll(() => message(page).filter({ hasText: 'Done again' }).count()).toBe(0);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('slash finds gear and commands; what is typed at once is the search', async () => {
    const context = await app.browser.newContext(SMALL);
    const page = await context.newPage();
    const trouble = watchPage(page);
    await startRoom(page);
    await floor(page).focus();
    await page.keyboard.press('/');
    await page.keyboard.type('panel 60×60 300');
    await page.keyboard.press('Enter');
    await page.getByText('Placing LED panel 60×60, 300 W: click on the floor').waitFor();
    await clickAt(page, 2000, 1500);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: /^1 · LED panel 60×60, 300 W/ }).waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type('put on a stand');
    await page.keyboard.press('Enter');
    await expect.poll(async () => recordsIn(await planText(page)).some((r) => r.type === 'stand')).toBe(true);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('a tube without power is put on its cells from its finding, and back and plugged from the properties and the menu', async () => {
    const context = await app.browser.newContext(SMALL);
    const page = await context.newPage();
    const trouble = watchPage(page);
    await startRoom(page);
    await floor(page).focus();
    await page.keyboard.press('e');
    await clickAt(page, 1000, 3990);
    await page.getByRole('dialog', { name: 'New circuit' }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /Wall outlet W1/ }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('combobox', { name: /Find gear/ }).fill('LED tube 120');
    await page.locator('#gear-results').getByRole('option').first().click();
    await clickAt(page, 3000, 2000);
    await page.keyboard.press('Escape');
    const tube = async () => recordsIn(await planText(page)).find((r) => r.type === 'fixture');
    await page.getByRole('button', { name: 'Run on its own cells', exact: true }).click();
    await page.locator('.row', { hasText: 'own cells' }).waitFor();
    expect(await tube()).toMatchObject({ onPacks: true });
    await page.getByRole('button', { name: 'back to mains' }).click();
    expect(await tube()).toMatchObject({ onPacks: false });
    const at = await onPage(page, 3000, 2000);
    await page.mouse.click(at.x, at.y, { button: 'right' });
    await page.getByRole('menuitem', { name: /^Plug in/ }).click();
    await page
      .getByRole('dialog', { name: /Plug in unit 1/ })
      .locator('.plug-item')
      .first()
      .click();
    await expect
      .poll(async () => recordsIn(await planText(page)).filter((r) => r.type === 'cable').length)
      .toBe(1);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('a finding’s Select closes the list and shows the thing; the pieces of its cable are chosen by hand', async () => {
    const context = await app.browser.newContext(SMALL);
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.locator('.rail-counts').first().click();
    const list = page.getByRole('dialog', { name: 'Findings' });
    await list.getByRole('button', { name: 'Select', exact: true }).first().click();
    await expect.poll(() => list.count()).toBe(0);
    await page.getByText('Findings here').waitFor();

    const records = recordsIn(await planText(page));
    const fed = (id: unknown) =>
      records.find((r) => r.type === 'cable' && (r.to as { recordId: string }).recordId === id);
    const unit = records.find((r) => r.type === 'fixture' && fed(r.id) !== undefined);
    const cable = fed(unit?.id);
    expect(unit).toBeDefined();
    await page
      .locator('.floor-list')
      .getByRole('button', { name: new RegExp(`^${unit?.unit} `) })
      .click();
    await page.getByRole('button', { name: /^its cable/ }).click();
    const pieces = page.getByLabel('Pieces', { exact: true });
    await pieces.fill('3 x 25');
    await page.keyboard.press('Enter');
    await page.getByText('2 couplings, chosen by hand').waitFor();
    const after = recordsIn(await planText(page)).find((r) => r.id === cable?.id);
    expect(after?.piecesMm).toEqual([7620, 7620, 7620]);
    await pieces.fill('33');
    await page.getByText('This cable is not stocked in 33 ft.').waitFor();
    await page.keyboard.press('Escape');
    await pieces.fill('');
    await page.keyboard.press('Enter');
    await expect
      .poll(async () => recordsIn(await planText(page)).find((r) => r.id === cable?.id)?.piecesMm)
      .toBeUndefined();
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('the table has its heads in one line, lights first, and takes an address and an outlet', async () => {
    const context = await app.browser.newContext(SMALL);
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await floor(page).focus();
    await page.keyboard.press('q');
    const heads = page.locator('.floor-table-head [role=columnheader]');
    await heads.first().waitFor();
    const tops = await heads.evaluateAll((all) => all.map((h) => h.getBoundingClientRect().top));
    expect(new Set(tops).size).toBe(1);
    const names = (await heads.allInnerTexts()).map((n) => n.replace(/[▾▴]/g, '').trim());
    await page.getByRole('gridcell', { name: 'fixture' }).first().click();
    const grid = page.getByRole('grid', { name: 'Floor table' });
    const write = async (column: string, text: string): Promise<void> => {
      const cell = page.locator(`#cell-0-${names.indexOf(column)}`);
      await cell.dblclick();
      await page.keyboard.press('Control+a');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await write('Address', 'U9 101');
    await grid.getByText('U9 101').waitFor();
    await write('Fed from', 'nowhere');
    await page.getByRole('alert').getByText('No outlet that fits is called “nowhere”').waitFor();
    await page.keyboard.press('Escape');
    expect(trouble).toEqual([]);
    await context.close();
  });
});
