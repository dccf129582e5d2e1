import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import {
  dragTo,
  figuresSettled,
  onPage,
  openDemo,
  openStart,
  planText,
  recordsIn,
} from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

const record = async (page: Page, id: string) =>
  recordsIn(await planText(page)).find((r) => r.id === id) as Record<string, unknown> | undefined;

const blocks = async (page: Page): Promise<readonly (readonly [string, number, number])[]> =>
  recordsIn(await planText(page))
    .filter((r) => r.type === 'block')
    .map((r) => [String(r.what), Number(r.startMin), Number(r.endMin)] as const)
    .sort((a, b) => a[1] - b[1]);

describe('a best boy plans the day', () => {
  test('levels like a spreadsheet, times by typing, by keys and by dragging, and the packs that are missing', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Day', exact: true }).click();

    // Setups: a typed level goes into what is chosen; 0 is off, Delete clears.
    await page.getByRole('tab', { name: 'Setups', exact: true }).click();
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
    await page.getByRole('tab', { name: 'Shooting day', exact: true }).click();
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
    await page.getByRole('textbox', { name: 'Meal, to' }).fill('2:15 pm');
    await page.keyboard.press('Enter');
    expect((await blocks(page)).find((b) => b[0] === 'meal')).toEqual(['meal', 750, 855]);

    // Undone to the demo's own day, the answer it is there for.
    const undo = page.getByRole('button', { name: /^Undo/ });
    while (await undo.isEnabled()) await undo.click();
    await expect.poll(() => page.getByText('Unit 13 dark until').count()).toBeGreaterThan(0);
    await page.getByRole('tab', { name: 'Packs', exact: true }).click();
    await page.getByRole('button', { name: /Find the fewest packs/ }).click();
    await page.getByText('6 packs are the fewest that can do. With 5 packs, Unit 13 goes dark at').waitFor();
    await page.getByLabel('Pack, V-type plate, 98 Wh, 14.4 V kept back').fill('0');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /98 Wh.*nobody waits/ }).waitFor();
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('a unit moved in one setup only, a colour in every setup, and a day laid out from the setups', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    const unit = (await record(page, 'unit-4')) as unknown as { support: { standId: string } };
    const at = (await record(page, unit.support.standId))?.at as { xMm: number; yMm: number };

    // Dragged while the second setup is shown: first in every setup, then on offer in that one only.
    await page.locator('.topbar-setup select').selectOption({ index: 1 });
    const from = await onPage(page, at.xMm, at.yMm);
    await dragTo(page, from, { x: from.x + 90, y: from.y + 60 });
    expect((await record(page, unit.support.standId))?.at).not.toEqual(at);
    await page.getByRole('button', { name: 'Only in 14B' }).click();
    expect((await record(page, unit.support.standId))?.at).toEqual(at);
    const move = await record(page, `move:setup-2:${unit.support.standId}`);
    expect((move as { at: { xMm: number } } | undefined)?.at.xMm).toBeGreaterThan(at.xMm);
    expect(await record(page, `move:setup-2:unit-4`)).toBeDefined();

    // Dragged on, only the move changes; the check in the panel takes it back.
    await figuresSettled(page);
    const there = { x: from.x + 90, y: from.y + 60 };
    await dragTo(page, there, { x: there.x + 40, y: there.y });
    expect((await record(page, unit.support.standId))?.at).toEqual(at);
    const own = page.getByRole('checkbox', { name: /moves in this setup/ });
    await own.uncheck();
    expect(await record(page, `move:setup-2:${unit.support.standId}`)).toBeUndefined();

    // Colours in the grid.
    await page.getByRole('button', { name: 'Day', exact: true }).click();
    await page.getByRole('tab', { name: 'Setups', exact: true }).click();
    await page.getByRole('button', { name: 'Colours', exact: true }).click();
    await page.getByRole('grid', { name: 'Colours by unit and setup' }).focus();
    await page.keyboard.type('4300 K, quarter green');
    await page.keyboard.press('Enter');
    expect(await record(page, 'level:setup-1:unit-1')).toMatchObject({ cctK: 4300, color: 'quarter green' });

    // A day without blocks is laid out at one press.
    await page.getByRole('tab', { name: 'Shooting day', exact: true }).click();
    while ((await page.getByRole('button', { name: /^Remove (?!this)/ }).count()) > 0)
      await page
        .getByRole('button', { name: /^Remove (?!this)/ })
        .first()
        .click();
    await page.getByRole('button', { name: /Lay out a day from the 3 setups/ }).click();
    expect((await blocks(page)).map((b) => b[0])).toEqual([
      'pre-light',
      'setup',
      'setup',
      'meal',
      'setup',
      'wrap',
    ]);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('the grid is filled by drawing its corner, in several places at once, and places go from setup to setup', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1366, height: 768 },
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Day', exact: true }).click();
    await page.getByRole('tab', { name: 'Setups', exact: true }).click();

    const middle = async (selector: string) => {
      const b = await page.locator(selector).boundingBox();
      if (!b) throw new Error(`${selector} is not on the page`);
      return { x: b.x + b.width / 2, y: b.y + b.height / 2 };
    };
    // Drawn down by its corner, as one undo step.
    await page.locator('#cell-1-1').click();
    await dragTo(page, await middle('.grid-grip'), await middle('#cell-4-1'));
    for (const unit of [3, 4, 5])
      expect(await record(page, `level:setup-2:unit-${unit}`)).toMatchObject({ levelPct: 85 });
    await page.getByRole('grid').focus();
    await page.keyboard.press('Control+z');
    expect(await record(page, 'level:setup-2:unit-3')).toMatchObject({ levelPct: 80 });

    // Two cells apart get one value; cut values come back by pasting.
    await page.locator('#cell-0-0').click();
    await page.locator('#cell-2-2').click({ modifiers: ['Control'] });
    await page.keyboard.type('44');
    await page.keyboard.press('Enter');
    expect(await record(page, 'level:setup-1:unit-1')).toMatchObject({ levelPct: 44 });
    expect(await record(page, 'level:setup-3:unit-3')).toMatchObject({ levelPct: 44 });
    await page.locator('#cell-3-0').click();
    await page.keyboard.press('Control+x');
    expect(await record(page, 'level:setup-1:unit-4')).toBeUndefined();
    await page.locator('#cell-3-1').click();
    await page.keyboard.press('Control+v');
    expect(await record(page, 'level:setup-2:unit-4')).toMatchObject({ levelPct: 100 });

    // The place of unit 4 in the third setup, filled to the left, then its usual one back; and on the floor.
    await page.getByRole('button', { name: 'Places', exact: true }).click();
    const moved = page.locator('#cell-3-2');
    await expect.poll(() => moved.textContent()).toMatch(/[→↘↓↙←↖↑↗]/);
    await moved.click();
    await dragTo(page, await middle('.grid-grip'), await middle('#cell-3-1'));
    const m2 = await record(page, 'move:setup-2:unit-4');
    expect(m2?.at).toEqual((await record(page, 'move:setup-3:unit-4'))?.at);
    await page.locator('#cell-3-1').click();
    await page.keyboard.press('Delete');
    expect(await record(page, 'move:setup-2:unit-4')).toBeUndefined();
    await page.getByRole('grid').focus();
    await page.keyboard.press('Enter');
    await page.getByRole('application', { name: 'Floor drawing' }).waitFor();
    await page.getByText('Move unit 4, then choose “Only in 14B”.').first().waitFor();
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('the time line is read by mouse and by keys: figures with their working, zoom about the pointer, what moves along', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1366, height: 768 } });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Day', exact: true }).click();
    await page.getByRole('tab', { name: 'Shooting day', exact: true }).click();

    // By mouse: what is there, and the arithmetic.
    const lane = page.getByRole('group', { name: /^Unit 7 on own cells/ });
    const box = await lane.boundingBox();
    if (!box) throw new Error('no lane');
    await page.mouse.move(box.x + 250, box.y + box.height / 2);
    const tip = page.getByRole('tooltip');
    await tip.getByText(/Unit 7 on #A\d/).waitFor();
    await tip.getByText(/of the charge/).waitFor();
    await tip.getByText(/^worst: .* Wh/).waitFor();
    await page.mouse.click(box.x + 250, box.y + box.height / 2);
    await page.getByRole('dialog', { name: /Runtime of Unit 7/ }).waitFor();
    await page.keyboard.press('Escape');

    // By keys: down to unit 13, along it to its first dark gap, at the same time as before.
    await page.getByRole('region', { name: 'Lanes; plus and minus zoom' }).focus();
    await lane.focus();
    await page.keyboard.press('Home');
    for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowDown');
    for (let i = 0; i < 8 && !(await tip.getByText('Unit 13 dark 11:53').count()); i++)
      await page.keyboard.press('ArrowRight');
    await tip.getByText('Unit 13 dark 11:53').waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await tip.getByText(/^P1: .* W/).waitFor();
    await tip
      .getByText(/^Unit \d+ \d+ W/)
      .first()
      .waitFor();

    // A dragged end takes what follows along while it is dragged; Escape leaves all as it was.
    const before = await blocks(page);
    const edge = await page.getByRole('slider', { name: /^Meal, to/ }).boundingBox();
    if (!edge) throw new Error('no edge to drag');
    const grip = { x: edge.x + edge.width / 2, y: edge.y + edge.height / 2 };
    const next = page.getByRole('slider', { name: /^14B .*, from/ });
    const was = Number(await next.getAttribute('aria-valuenow'));
    await page.mouse.move(grip.x, grip.y);
    await page.mouse.down();
    await page.mouse.move(grip.x + 60, grip.y, { steps: 6 });
    await expect.poll(async () => Number(await next.getAttribute('aria-valuenow'))).toBeGreaterThan(was);
    await tip.getByText(/^Meal, 12:30 to 14:/).waitFor();
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await blocks(page)).toEqual(before);

    // The wheel with Ctrl zooms about the pointer: the edge stays where it is.
    await page.mouse.move(grip.x, grip.y);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -100);
    await page.mouse.wheel(0, -100);
    await page.keyboard.up('Control');
    await expect
      .poll(async () =>
        Math.abs(((await page.getByRole('slider', { name: /^Meal, to/ }).boundingBox())?.x ?? 0) - edge.x),
      )
      .toBeLessThan(8);
    // The block before it began out of sight: its name stays in sight beside the names of the lanes.
    const names = await page.locator('.lane-name').first().boundingBox();
    const right = (names?.x ?? 0) + (names?.width ?? 0);
    const name = page.locator('.block-name', { hasText: '14A' });
    await expect.poll(async () => (await name.boundingBox())?.x ?? 0).toBeGreaterThanOrEqual(right);
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('several units go on one pack on the floor: outlets that remain, its lane, and away again', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1366, height: 768 } });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Day', exact: true }).click();
    await page.getByRole('tab', { name: 'Packs', exact: true }).click();
    const add = page.getByLabel('Add a pack on the floor');
    const block = (await add.locator('option').allTextContents()).find((t) =>
      /block, 750 Wh.*3 outlets/.test(t),
    );
    if (!block) throw new Error('no block of three outlets in the book');
    await add.selectOption({ label: block });
    const floorPacks = page.getByRole('region', { name: 'Packs on the floor' });
    await floorPacks.getByText('3 outlets left').waitFor();
    const plug = floorPacks.getByLabel(/^Plug a unit into/);
    for (const unit of ['2', '3']) {
      const label = (await plug.locator('option').allTextContents()).find((t) => t.startsWith(`${unit} ·`));
      await plug.selectOption({ label: label ?? '' });
    }
    await floorPacks.getByText('1 outlet left').first().waitFor();
    // A third by its own row, and the air limit in its dialog.
    const third = page.getByLabel('Packs of unit 12', { exact: true });
    const shared = (await third.locator('option').allTextContents()).find((t) => /1 outlet left/.test(t));
    await third.selectOption({ label: shared ?? '' });
    await floorPacks.getByText('no outlet left', { exact: false }).first().waitFor();
    await page.getByRole('button', { name: /packs of unit 12/ }).click();
    await page.getByRole('dialog').getByText('over 160 Wh: not with passengers, cargo only').waitFor();
    await page.getByRole('dialog').getByText('March 2026').waitFor();
    await page.keyboard.press('Escape');
    const pack = recordsIn(await planText(page)).find((r) => r.type === 'pack');
    for (const unit of ['unit-2', 'unit-3', 'unit-12'])
      expect((await record(page, unit))?.packFrom).toEqual({ packId: pack?.id });

    // One lane for the pack, those of its units under it; a change is told once.
    await page.getByRole('tab', { name: 'Shooting day', exact: true }).click();
    await page.getByText('feeds 2, 3, 12').waitFor();
    await page.getByRole('group', { name: /^P2 on Pack, block/ }).waitFor();
    expect(await page.getByText(/^P2 \(2, 3, 12\)/).count()).toBeLessThanOrEqual(
      await page.locator('.day-events li').count(),
    );
    expect(await page.locator('.day-events li', { hasText: 'Unit 2:' }).count()).toBe(0);

    // Taken away, nothing hangs on a pack that is gone.
    await page.getByRole('tab', { name: 'Packs', exact: true }).click();
    await page.getByRole('button', { name: 'Remove pack P2' }).click();
    expect((await record(page, 'unit-2'))?.packFrom).toBeUndefined();
    expect(trouble).toEqual([]);
    await context.close();
  });
});
