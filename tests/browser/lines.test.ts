import { expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, onPage, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

const FT = 304.8;

test('a data line is drawn from a desk to a unit, put in order, told what is wrong with it, and undone', async () => {
  const page = await app.browser.newPage({ viewport: { width: 1440, height: 900 } });
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, 'Street, night');
  const lines = async () => recordsIn(await planText(page)).filter((r) => r.type === 'line');
  expect(await lines()).toHaveLength(6);

  // On the floor: the desk, then a unit without a line of its own; Enter ends it.
  const desk = await onPage(page, 71 * FT, 52.8 * FT);
  const unit = await onPage(page, 84 * FT, 13 * FT);
  await page.keyboard.press('b');
  await page.mouse.click(desk.x, desk.y);
  await page.locator('.canvas-message', { hasText: 'now press on what it reaches' }).waitFor();
  await page.mouse.click(unit.x, unit.y);
  await page.locator('.canvas-message', { hasText: 'Unit 39: 1 stop' }).waitFor();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await lines()).length).toBe(7);
  const made = (await lines()).find((l) => l.label === 'L7');
  expect(made).toMatchObject({ stops: ['unit-39'], from: { recordId: 'device-d1', portId: 'out-2' } });

  // Its port has no universe yet: a finding says so, and one press sets that of the unit.
  await figuresSettled(page);
  await page.getByText('L7: its port names no universe').first().waitFor();
  await page.getByRole('button', { name: 'set the port to U1' }).click();
  await expect
    .poll(async () => recordsIn(await planText(page)).find((r) => r.id === 'device-d1')?.ports)
    .toEqual([
      { portId: 'out-1', universeId: 'universe-1' },
      { portId: 'out-2', universeId: 'universe-1' },
    ]);

  // In Control: another stop is put first, moved down, and its universe typed at the port.
  await page.getByRole('button', { name: 'Control', exact: true }).click();
  await page.getByRole('tab', { name: 'Lines and nodes' }).click();
  await page.getByRole('button', { name: 'L7', exact: true }).click();
  await page.getByLabel('Add a stop to data line L7').selectOption({ label: 'unit 41' });
  await page.getByRole('button', { name: 'As first' }).click();
  await expect
    .poll(async () => (await lines()).find((l) => l.label === 'L7')?.stops)
    .toEqual(['unit-41', 'unit-39']);
  await page.getByRole('button', { name: 'Move unit 41 down' }).click();
  await expect
    .poll(async () => (await lines()).find((l) => l.label === 'L7')?.stops)
    .toEqual(['unit-39', 'unit-41']);
  const port = page.getByLabel('Universes of D1, line 2');
  await port.fill('70000');
  await page.getByRole('alert').filter({ hasText: '1 to 63999' }).waitFor();
  await port.fill('2');
  await port.press('Enter');
  await page.locator('.rail-counts', { hasText: 'stop' }).first().waitFor();
  for (let i = 0; i < 5; i++) await page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(async () => (await lines()).length).toBe(6);
  expect(trouble).toEqual([]);
  await page.close();
});

test('setup cards are ticked by name, counted, filtered and kept; parts are run through with a gradient', async () => {
  const page = await app.browser.newPage({ viewport: { width: 1440, height: 900 } });
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, 'Stage, three sets');
  await page.getByRole('button', { name: 'Control', exact: true }).click();
  await page.getByRole('tab', { name: 'Set-up cards' }).click();
  await page.getByLabel('Ticked by').fill('Robin');
  const card = page.getByRole('article', { name: 'Card of unit 63', exact: true });
  await card.getByLabel('Reset to defaults').check();
  await card.getByRole('button', { name: 'All done' }).click();
  await page.getByText('1 of 62 units done').waitFor();
  await page.getByLabel('Show', { exact: true }).selectOption('left');
  expect(await card.count()).toBe(0);
  const ticks = recordsIn(await planText(page)).filter((r) => r.type === 'tick');
  expect(ticks.length).toBeGreaterThan(5);
  expect(new Set(ticks.map((t) => t.by))).toEqual(new Set(['Robin']));

  await page.getByRole('tab', { name: 'Part levels' }).click();
  await page.locator('.parts-unit').first().click();
  await page.getByRole('button', { name: 'Gradient', exact: true }).click();
  const level = async () =>
    recordsIn(await planText(page)).find((r) => r.id === 'level:setup-1:unit-25') as unknown as {
      levelPct: number;
      parts: { levelPct: number }[];
    };
  await expect.poll(async () => (await level()).parts.length).toBe(32);
  expect((await level()).levelPct).toBe(65);
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await level()).parts).toBeUndefined();
  expect(trouble).toEqual([]);
  await page.close();
});
