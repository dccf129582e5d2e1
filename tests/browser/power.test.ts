import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { dragTo, figuresSettled, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

const shots = process.env.LAMPWRIGHT_SHOTS;
const shot = async (page: Page, name: string): Promise<void> => {
  if (shots) await page.screenshot({ path: `${shots}/${name}.png` });
};

const tab = async (page: Page, name: string): Promise<void> =>
  page.getByRole('tab', { name, exact: true }).click();

const cableTo = (text: string, id: string) =>
  recordsIn(text).find((r) => r.type === 'cable' && (r.to as { recordId: string }).recordId === id);

describe('the power workspace', () => {
  test('diagram, faults, outlets, balance and measurements on one plan', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      colorScheme: 'light',
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Street, night');
    const before = await planText(page);
    await page.getByRole('button', { name: 'Power', exact: true }).click();

    // A load row is dragged to another way, and the move is one undo step.
    const row = page.locator('tr[draggable=true]', { hasText: 'Unit 15' }).first();
    const target = page.locator('tr.power-circuit', { has: page.getByLabel('Name of K5 way 1') }).first();
    await row.scrollIntoViewIfNeeded();
    await row.dragTo(target);
    await page.getByText(/is on K5 way 1 now|K5 way 1 has no free outlet/).waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await planText(page)).toBe(before);

    // The same by keyboard: the button in the row, an outlet from the list.
    await page.getByRole('button', { name: 'Move Unit 15 to another way' }).press('Enter');
    await page.getByRole('dialog').waitFor();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /K5 way/, disabled: false })
      .first()
      .press('Enter');
    await figuresSettled(page);
    expect(cableTo(await planText(page), 'unit-15')?.from).toMatchObject({ recordId: 'box-k5' });
    await page.getByRole('button', { name: /^Undo/ }).click();
    await figuresSettled(page);

    // A breaker and a level are typed in place, and undone.
    await page.getByRole('textbox', { name: 'Breaker of K5 way 1' }).fill('15');
    await page.keyboard.press('Enter');
    await figuresSettled(page);
    const changed = recordsIn(await planText(page)).find((r) => r.id === 'box-k5');
    expect((changed?.ways as { breakerA: number }[] | undefined)?.map((w) => w.breakerA)).toEqual([15]);
    await page.getByRole('button', { name: /^Undo/ }).click();
    await page.getByRole('textbox', { name: 'Breaker of K5 way 1' }).fill('none');
    await page.getByText(/is no breaker/).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('combobox', { name: /^Show/ }).selectOption({ label: 'that are free' });
    expect(await page.getByRole('button', { name: /^Move Unit/ }).count()).toBe(0);
    await page.getByRole('combobox', { name: /^Show/ }).selectOption({ label: 'all circuits' });
    expect(await planText(page)).toBe(before);

    // The diagram pans, zooms, and shares the selection with the floor.
    await tab(page, 'One-line');
    const view = page.getByRole('application', { name: /One-line diagram/ });
    const ink = page.locator('.one-line-ink');
    await ink.waitFor();
    const where = async (): Promise<string> => (await ink.getAttribute('transform')) ?? '';
    await view.focus();
    await page.keyboard.press('0');
    const fitted = await where();
    const box = await view.boundingBox();
    if (!box) throw new Error('no diagram');
    await dragTo(
      page,
      { x: box.x + 300, y: box.y + box.height - 40 },
      { x: box.x + 380, y: box.y + box.height - 80 },
    );
    expect(await where()).not.toBe(fitted);
    await view.focus();
    await page.keyboard.press('+');
    await page.keyboard.press('0');
    expect(await where()).toBe(fitted);
    await shot(page, 'power-one-line-fit');
    await page.locator('[data-record=unit-14] .one-line-hit').last().click();
    await page.locator('[data-record=unit-14].chosen').first().waitFor();
    await shot(page, 'power-one-line');
    await page.getByRole('button', { name: 'Floor', exact: true }).click();
    await page.getByRole('heading', { name: /^14 · / }).waitFor();
    await page.getByRole('button', { name: 'Power', exact: true }).click();

    // What if: the loads of a tripped way go dark, and the plan stays as it is.
    await tab(page, 'What if');
    await page.getByRole('combobox', { name: /^Where/ }).selectOption({ label: 'K4 way 1' });
    await page.getByRole('button', { name: 'Try it' }).click();
    const dark = page.getByRole('row', { name: /Unit 15 dark/ });
    await dark.waitFor();
    expect(await page.getByRole('row', { name: /Unit 16 dark/ }).count()).toBe(1);
    await page.getByRole('button', { name: 'Keep this case' }).click();
    await page.getByRole('combobox', { name: /^What happens/ }).selectOption('neutral');
    await page.getByRole('button', { name: 'Try it' }).click();
    // What is tried stays over every screen until it is ended.
    const banner = page.getByRole('region', { name: 'Trying' });
    await banner.getByText(/The neutral comes off/).waitFor();
    await shot(page, 'power-what-if');
    await tab(page, 'Circuits');
    await page.locator('.power-hit').first().waitFor();
    await page.getByRole('button', { name: 'Floor', exact: true }).click();
    await shot(page, 'power-what-if-floor');
    await banner.getByRole('button', { name: 'Figures' }).click();
    // Another source: tried, kept as one undo step.
    await page.getByRole('combobox', { name: /^What happens/ }).selectOption('swap');
    await page.getByRole('combobox', { name: /^Comes/ }).selectOption({
      label: 'Generator 144 kW, three-phase 120/208 V',
    });
    await page.getByRole('button', { name: 'Try it' }).click();
    await banner.getByText(/in place of/).waitFor();
    expect(await planText(page)).toBe(before);
    await banner.getByRole('button', { name: /^Keep/ }).click();
    await banner.waitFor({ state: 'detached' });
    await figuresSettled(page);
    expect(await planText(page)).not.toBe(before);
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await planText(page)).toBe(before);
    await page.getByRole('button', { name: /Discard “K4 way 1 trips”/ }).click();

    // Where can I plug in: the chosen unit, nearest first.
    await tab(page, 'Where can I plug in');
    await page.getByRole('table').waitFor();
    const lengths = await page.locator('.power-table tbody tr td:nth-child(4)').allInnerTexts();
    const feet = lengths.map((t) => Number.parseFloat(t));
    expect(feet).toEqual([...feet].sort((a, b) => a - b));
    await shot(page, 'power-where');

    // Plug and balance: an offer, taken in part, one undo step.
    expect(await planText(page)).toBe(before);
    await tab(page, 'Plug and balance');
    await page.getByRole('button', { name: 'Balance legs' }).click();
    await page.getByRole('button', { name: /^Accept/ }).waitFor();
    await shot(page, 'power-balance');
    const checks = page.getByRole('checkbox', { name: /^Take / });
    const offered = await checks.count();
    expect(offered).toBeGreaterThan(0);
    if (offered > 1) await checks.first().uncheck();
    await page.getByRole('button', { name: /^Accept/ }).click();
    await figuresSettled(page);
    const after = await planText(page);
    const moved = recordsIn(after).filter(
      (r) =>
        r.type === 'cable' &&
        JSON.stringify(r) !== JSON.stringify(recordsIn(before).find((x) => x.id === r.id)),
    );
    expect(moved).toHaveLength(Math.max(1, offered - 1));
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await planText(page)).toBe(before);

    // Measured log: a value far off becomes a finding.
    await tab(page, 'Measured');
    await page.getByRole('combobox', { name: /^Point/ }).selectOption({ label: 'K4' });
    await page.getByRole('textbox', { name: 'Volts' }).fill('100');
    await page.getByRole('textbox', { name: 'By', exact: true }).fill('T. Lund');
    await page.getByRole('button', { name: 'Add to the log' }).click();
    await figuresSettled(page);
    await page.getByText(/% off/).waitFor();
    await shot(page, 'power-measured');
    expect(recordsIn(await planText(page)).some((r) => r.type === 'measurement' && r.voltsV === 100)).toBe(
      true,
    );
    await page.getByRole('button', { name: /Open the findings/ }).click();
    await page
      .getByRole('dialog')
      .getByText(/K4: measured 100\.0 V/)
      .waitFor();
    await page.keyboard.press('Escape');

    expect(trouble).toEqual([]);
    await context.close();
  });

  test('papers issue the sheets that are chosen', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Papers', exact: true }).click();
    await page.locator('.papers-sheet svg').waitFor();
    await page.getByText('Choose sheets').click();
    await page.getByRole('combobox', { name: /^For/ }).selectOption({ label: 'Rental order' });
    const titles = page.locator('.papers-item');
    await page.waitForFunction(() => document.querySelectorAll('.papers-item').length < 8);
    expect((await titles.allInnerTexts()).join(' ')).toMatch(
      /Cover.*Gear list.*Cable list.*Truck list.*Unit list/,
    );
    await page.getByRole('checkbox', { name: 'Run sheet' }).check();
    await page.locator('.papers-item', { hasText: 'Run sheet' }).first().waitFor();
    await context.close();
  });
});
