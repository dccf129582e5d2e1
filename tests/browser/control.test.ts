import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

interface Patched {
  readonly unit: string;
  readonly patch?: { readonly universeId: string; readonly address: number };
}

/** Universe and address by unit number, from the plan as it would be saved. */
const patchIn = async (page: Page): Promise<ReadonlyMap<string, string>> => {
  const records = recordsIn(await planText(page));
  const numbers = new Map(
    records
      .filter((r) => r.type === 'universe')
      .map((r) => [r.id, (r as unknown as { number: number }).number]),
  );
  return new Map(
    records
      .filter((r) => r.type === 'fixture')
      .map((r) => r as unknown as Patched)
      .map((f) => [f.unit, f.patch ? `U${numbers.get(f.patch.universeId)} ${f.patch.address}` : '']),
  );
};

const centre = async (page: Page, name: RegExp): Promise<{ x: number; y: number; left: number }> => {
  const block = page.getByRole('option', { name });
  await block.scrollIntoViewIfNeeded();
  const box = await block.boundingBox();
  if (!box) throw new Error(`${name} is not on the map`);
  return { x: box.x + 6, y: box.y + box.height / 2, left: box.x };
};

test('addresses are assigned, undone, typed and dragged', async () => {
  const page = await app.browser.newPage({ viewport: { width: 1440, height: 900 } });
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, 'Stage, three sets');
  await page.getByRole('button', { name: 'Control', exact: true }).click();
  const before = await patchIn(page);
  expect(before.get('1')).toBe('U7 97');
  expect(before.get('13')).toBe('');

  // Assign to all by unit number: looked at as a list, then accepted whole.
  await page.getByRole('button', { name: 'Assign addresses…' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByText('62 units in 7 universes. Nothing takes fewer.').waitFor();
  expect(await dialog.getByRole('row', { name: /^25 96 U2 1 / }).count()).toBe(1);
  await dialog.getByRole('button', { name: 'Change 62 units' }).click();
  await figuresSettled(page);
  const assigned = await patchIn(page);
  expect([assigned.get('1'), assigned.get('2'), assigned.get('13')]).toEqual(['U1 1', 'U1 33', '']);

  // One step back brings all the old ones back.
  await page.getByRole('button', { name: 'Undo Assign addresses to 62 units' }).click();
  expect(await patchIn(page)).toEqual(before);

  // Typed in the table: a bad one says why and changes nothing, a good one holds.
  const cell = page.getByRole('textbox', { name: 'Address of unit 2', exact: true });
  await cell.fill('513/1');
  await cell.fill('3/513');
  await page.getByRole('alert').filter({ hasText: 'no such slot' }).waitFor();
  await cell.fill('490');
  await cell.press('Enter');
  await page.getByRole('alert').filter({ hasText: '1 to 481' }).waitFor();
  await cell.fill('8.401');
  await cell.press('Enter');
  await expect.poll(async () => (await patchIn(page)).get('2')).toBe('U8 401');
  expect(await page.getByRole('textbox', { name: 'Universe of unit 2', exact: true }).inputValue()).toBe(
    'U8',
  );

  // Dragged: onto another unit it stays and says why, onto free slots it goes.
  const from = await centre(page, /^Unit 63,/);
  await page.mouse.move(from.left + 4, from.y);
  await page.mouse.down();
  await page.mouse.move(from.left - 40, from.y, { steps: 4 });
  await page.locator('.universes-foot', { hasText: 'has slots' }).waitFor();
  await page.mouse.up();
  expect((await patchIn(page)).get('63')).toBe('U1 305');
  await page.mouse.move(from.left + 4, from.y);
  await page.mouse.down();
  await page.mouse.move(from.left + 120, from.y, { steps: 6 });
  await page.locator('.universes-foot', { hasText: 'free' }).waitFor();
  await page.mouse.up();
  await expect.poll(async () => (await patchIn(page)).get('63')).toMatch(/^U1 3[1-4]\d$/);
  // What was dragged is chosen, here and on the floor.
  expect(await page.getByRole('checkbox', { name: 'Choose unit 63' }).isChecked()).toBe(true);

  // By keyboard alone: Alt and an arrow moves the block at hand by one slot.
  const moved = (await patchIn(page)).get('63') ?? '';
  await page.getByRole('listbox', { name: 'Slots of universe 1' }).focus();
  await page.keyboard.press('Alt+ArrowRight');
  const slot = Number(moved.split(' ')[1]);
  await expect.poll(async () => (await patchIn(page)).get('63')).toBe(`U1 ${slot + 1}`);
  // Keys that delete or move on the floor do nothing here.
  await page.keyboard.press('Delete');
  expect((await patchIn(page)).has('63')).toBe(true);
  expect(trouble).toEqual([]);
  await page.close();
});

test('a patch list goes out, is changed and comes back, and a bad row says so', async () => {
  const page = await app.browser.newPage({ viewport: { width: 1440, height: 900 } });
  await openStart(page, app.url);
  await openDemo(page, 'Stage, three sets');
  await page.getByRole('button', { name: 'Control', exact: true }).click();
  const waiting = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export CSV' }).click();
  expect((await waiting).suggestedFilename()).toBe('patch.csv');
  await page.getByRole('button', { name: 'Import CSV…' }).click();
  await page.getByLabel('File with a patch').setInputFiles({
    name: 'list.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('unit;universe;address\n1;9;1\n2;9;600\n999;1;1\n'),
  });
  const dialog = page.getByRole('dialog');
  await dialog.getByText('3 rows: 1 change a unit, 0 change nothing, 2 cannot be used.').waitFor();
  await dialog.getByText('There is no unit 999 in the plan.').waitFor();
  await dialog.getByRole('button', { name: 'Apply 1 change, leave 2 bad rows out' }).click();
  await expect.poll(async () => (await patchIn(page)).get('1')).toBe('U9 1');
  expect((await patchIn(page)).get('2')).toBe('U7 129');

  // The inspector on the floor edits the same patch.
  await page.getByRole('button', { name: 'Floor', exact: true }).click();
  await page.locator('.floor-list .shelf-item').first().click();
  const address = page.getByRole('textbox', { name: 'Address' });
  expect(await address.inputValue()).toBe('U9 1');
  await address.fill('U9 101');
  await address.press('Enter');
  await expect.poll(async () => (await patchIn(page)).get('1')).toBe('U9 101');
  await page.close();
});
