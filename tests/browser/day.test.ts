import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dragTo, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { launchBrowser, type Served, serveApp, watchPage } from '../support/browser.ts';

let site: Served;
let browser: Browser;
beforeAll(async () => {
  site = await serveApp();
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const record = async (page: Page, id: string) =>
  recordsIn(await planText(page)).find((r) => r.id === id) as Record<string, unknown> | undefined;

const blocks = async (page: Page): Promise<readonly (readonly [string, number, number])[]> =>
  recordsIn(await planText(page))
    .filter((r) => r.type === 'block')
    .map((r) => [String(r.what), Number(r.startMin), Number(r.endMin)] as const)
    .sort((a, b) => a[1] - b[1]);

describe('a best boy plans the day', () => {
  test('levels like a spreadsheet, times by typing, by keys and by dragging, and the packs that are missing', async () => {
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, site.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Day', exact: true }).click();

    // Setups: a typed level goes into what is chosen; 0 is off, Delete clears.
    await page.getByRole('button', { name: 'Setups', exact: true }).click();
    const grid = page.getByRole('grid', { name: 'Levels by unit and setup' });
    await grid.focus();
    await page.keyboard.type('35');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.type('0');
    await page.keyboard.press('Enter');
    expect(await record(page, 'level:setup-1:unit-1')).toMatchObject({ levelPct: 35 });
    expect(await record(page, 'level:setup-1:unit-2')).toMatchObject({ levelPct: 0 });
    expect(await record(page, 'level:setup-2:unit-2')).toMatchObject({ levelPct: 0 });
    await grid.focus();
    await page.keyboard.press('Delete');
    expect(await record(page, 'level:setup-2:unit-3')).toBeUndefined();

    // Copied and pasted, through the clipboard.
    await page.keyboard.press('Control+Home');
    await page.locator('#cell-0-0').click();
    await page.keyboard.press('Control+c');
    await page.locator('#cell-4-2').click();
    await page.keyboard.press('Control+v');
    expect(await record(page, 'level:setup-3:unit-5')).toMatchObject({ levelPct: 35 });

    // One undo step each.
    await grid.focus();
    await page.keyboard.press('Control+z');
    expect(await record(page, 'level:setup-3:unit-5')).toMatchObject({ levelPct: 0 });

    // The shooting day: an end by keys moves what follows along.
    await page.getByRole('button', { name: 'Shooting day', exact: true }).click();
    const before = await blocks(page);
    await page.getByRole('slider', { name: /^Meal, to/ }).focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowRight');
    const after = await blocks(page);
    expect(after.map((b) => b[2])).toEqual(before.map(([, start, end]) => (start >= 750 ? end + 15 : end)));

    // By dragging, without what follows; and typed.
    await page.getByLabel('what follows moves along').uncheck();
    const edge = await page.getByRole('slider', { name: /^Meal, to/ }).boundingBox();
    if (!edge) throw new Error('no edge to drag');
    const grip = { x: edge.x + edge.width / 2, y: edge.y + edge.height / 2 };
    await dragTo(page, grip, { x: grip.x - 1.2 * 15, y: grip.y });
    expect((await blocks(page)).find((b) => b[0] === 'meal')).toEqual(['meal', 750, 810]);
    await page.getByLabel('Meal, to', { exact: true }).first().fill('2:15 pm');
    await page.keyboard.press('Enter');
    expect((await blocks(page)).find((b) => b[0] === 'meal')).toEqual(['meal', 750, 855]);

    // Undone to the demo's own day, the answer it is there for.
    const undo = page.getByRole('button', { name: /^Undo/ });
    while (await undo.isEnabled()) await undo.click();
    await expect.poll(() => page.getByText('Unit 13 dark until').count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Packs', exact: true }).click();
    await page.getByRole('button', { name: /Find the fewest packs/ }).click();
    await page.getByText('6 packs are the fewest that can do. With 5 Unit 13 goes dark at').waitFor();
    await page.getByLabel('Pack, V-type plate, 98 Wh, 14.4 V kept back').fill('0');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /98 Wh.*nobody waits/ }).waitFor();
    expect(trouble).toEqual([]);
    await context.close();
  });
});
