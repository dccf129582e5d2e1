import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, onPage, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

const opened = async (demo: string): Promise<{ page: Page; trouble: readonly string[] }> => {
  const context = await app.browser.newContext({
    viewport: { width: 1366, height: 768 },
    colorScheme: 'light',
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, demo);
  return { page, trouble };
};

const tab = async (page: Page, name: string): Promise<void> =>
  page.getByRole('tab', { name, exact: true }).click();

const settings = async (page: Page): Promise<void> => {
  await page.getByTitle('Plan menu').click();
  await page.getByRole('menuitem', { name: 'Plan settings…' }).click();
  await page.getByRole('dialog', { name: 'Plan settings' }).waitFor();
};

describe('the settings of a plan', () => {
  test('practice, place, sources and rules are looked through, kept as one step, and taken back', async () => {
    const { page, trouble } = await opened('Street, night');
    const before = await planText(page);
    await settings(page);
    const dialog = page.getByRole('dialog', { name: 'Plan settings' });
    await dialog.getByText('Nothing is changed.').waitFor();

    // Another practice says in words what it changes, and changes nothing yet.
    await dialog.getByRole('combobox', { name: 'Practice' }).selectOption('europe');
    const effects = dialog.getByRole('region', { name: 'What this changes' });
    await effects.getByText('Legs of G1 are called L1 L2 L3 in place of A B C.').waitFor();
    await effects.getByText(/Findings: stop \d+ → \d+/).waitFor();
    expect(await dialog.getByRole('combobox', { name: 'Mains frequency' }).inputValue()).toBe('50');
    await dialog.getByRole('button', { name: 'Discard' }).click();
    expect(await planText(page)).toBe(before);

    // All parts of the form together are one undo step.
    await settings(page);
    await tab(page, 'Production and place');
    await dialog.getByRole('textbox', { name: 'Altitude' }).fill('5250');
    await dialog.getByRole('textbox', { name: 'Air' }).fill('113');
    await dialog.getByRole('combobox', { name: 'Where box K4 stands' }).selectOption('wet');
    await tab(page, 'Sources');
    const g1 = dialog.getByRole('region', { name: 'Source G1' });
    await g1.getByRole('textbox', { name: 'Volts' }).fill('sixty');
    await g1.getByText(/is not a number of V/).waitFor();
    await g1.getByRole('textbox', { name: 'Volts' }).fill('118.5');
    await g1.getByRole('textbox', { name: 'Impedance' }).fill('0.05');
    await tab(page, 'Rules and margins');
    await dialog.getByRole('textbox', { name: 'Find a rule' }).fill('generator-regulation');
    await dialog.getByRole('textbox', { name: 'Value of generator-regulation' }).fill('4');
    await page.keyboard.press('Enter');
    // A value of one's own needs its reason.
    expect(await dialog.getByRole('button', { name: 'Keep' }).isEnabled()).toBe(false);
    await dialog.getByRole('textbox', { name: 'Reason for generator-regulation' }).fill('by its plate');
    await page.keyboard.press('Enter');
    await dialog.getByRole('button', { name: 'Keep' }).click();
    await figuresSettled(page);
    const kept = recordsIn(await planText(page));
    expect(kept.find((r) => r.id === 'plan')).toMatchObject({
      altitudeM: 1600,
      ambientC: 45,
      limits: [{ limit: 'generator-regulation', value: 4, reason: 'by its plate' }],
    });
    expect(kept.find((r) => r.type === 'source')).toMatchObject({ voltsV: 118.5, loopOhm: 0.05 });
    expect(kept.find((r) => r.id === 'box-k4')).toMatchObject({ wet: true });
    // Warm and high, the set gives less, and the meters say so.
    await page
      .getByRole('region', { name: 'G1 as a set' })
      .getByText(/derated to 9\d %/)
      .waitFor();
    await page.getByRole('button', { name: 'Undo Change plan settings' }).click();
    expect(await planText(page)).toBe(before);

    // The search of commands, the meters and what is assumed lead there too.
    await page.getByRole('button', { name: 'North America' }).click();
    await dialog.waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('application', { name: 'Floor drawing' }).focus();
    await page.keyboard.press('/');
    await page.getByLabel(/Find .*command/).fill('settings sources');
    await page.keyboard.press('Enter');
    await dialog.getByRole('region', { name: 'Source G1' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: /Open the findings/ }).click();
    await page.getByRole('button', { name: 'Altitude…' }).click();
    await dialog.getByRole('textbox', { name: 'Altitude' }).waitFor();
    await page.keyboard.press('Escape');
    expect(trouble).toEqual([]);
    await page.context().close();
  });

  test('another practice kept: legs are called otherwise everywhere, and the gear book is its own', async () => {
    const { page, trouble } = await opened('Street, night');
    await settings(page);
    const dialog = page.getByRole('dialog', { name: 'Plan settings' });
    await dialog.getByRole('combobox', { name: 'Practice' }).selectOption('europe');
    await dialog.getByRole('button', { name: 'Keep' }).click();
    await figuresSettled(page);
    const meters = page.getByRole('region', { name: 'G1', exact: true });
    await meters.getByText('L1', { exact: true }).waitFor();
    await page.getByRole('combobox', { name: /Find gear/ }).fill('box 63');
    await page.getByRole('option', { name: /63 A/ }).first().waitFor();
    await page.getByRole('button', { name: 'Undo Change plan settings' }).click();
    await figuresSettled(page);
    await meters.getByText('A', { exact: true }).waitFor();
    expect(trouble).toEqual([]);
    await page.context().close();
  });
});

describe('more of the power workspace', () => {
  test('boxes fold, one is shown alone, the map goes elsewhere, figures of the chosen part open their working', async () => {
    const { page, trouble } = await opened('Street, night');
    await page.getByRole('button', { name: 'Power', exact: true }).click();
    await tab(page, 'One-line');
    const ink = page.locator('.one-line-ink');
    await ink.waitFor();
    // A wide network comes with its last boxes folded, at a size that can be read.
    await page.locator('[data-fold=box-k4]').waitFor();
    expect(await page.locator('[data-record=unit-15]').count()).toBe(0);
    const where = async (): Promise<string> => (await ink.getAttribute('transform')) ?? '';
    const scale = Number(/scale\(([\d.]+)\)/.exec(await where())?.[1]);
    expect(scale).toBeGreaterThanOrEqual(3.6);
    const at = await where();
    const map = await page.locator('.mini-map').boundingBox();
    if (!map) throw new Error('no map');
    await page.mouse.click(map.x + map.width * 0.7, map.y + map.height * 0.6);
    expect(await where()).not.toBe(at);

    await page.getByRole('combobox', { name: /^Show/ }).selectOption({ label: 'K4' });
    await page.locator('[data-record=unit-15]').first().waitFor();
    expect(await page.locator('[data-record=box-k5]').count()).toBe(0);
    // Beside its figures: a click on one of them opens its working.
    await page
      .locator('[data-record=unit-15] .one-line-hit')
      .last()
      .click({ position: { x: 3, y: 3 } });
    const part = page.getByRole('complementary', { name: 'Chosen part' });
    await part.getByRole('button', { name: /\d V$/ }).click();
    await page.getByRole('dialog').getByText(/Rule /).waitFor();
    await page.keyboard.press('Escape');

    // By keyboard alone: one part after the other.
    const heading = part.getByRole('heading').first();
    await page.getByRole('application', { name: /One-line diagram/ }).focus();
    const first = await heading.textContent();
    await page.keyboard.press('n');
    await page.waitForFunction(
      (was) => document.querySelector('.one-line-part h3')?.textContent !== was,
      first,
    );
    await page.keyboard.press('p');
    await page.waitForFunction(
      (was) => document.querySelector('.one-line-part h3')?.textContent === was,
      first,
    );

    await page.getByRole('combobox', { name: /^Show/ }).selectOption({ label: 'the whole network' });
    await page.getByRole('button', { name: 'Unfold all' }).click();
    await page.locator('[data-record=unit-20]').first().waitFor();
    await page.getByRole('button', { name: 'Fold boxes' }).click();
    await page.waitForFunction(() => document.querySelector('[data-record=unit-20]') === null);
    // What is chosen elsewhere unfolds the box it hangs on.
    await tab(page, 'Circuits');
    await page
      .getByRole('button', { name: /^Unit 20 / })
      .first()
      .click();
    await page.getByRole('button', { name: 'Power', exact: true }).click();
    await tab(page, 'One-line');
    await page.locator('[data-record=unit-20].chosen').first().waitFor();
    expect(trouble).toEqual([]);
    await page.context().close();
  });

  test('size it gives reasons, is taken in part as one step; one run alone', async () => {
    const { page, trouble } = await opened('Street, night');
    const before = await planText(page);
    await page.getByRole('button', { name: 'Power', exact: true }).click();
    await tab(page, 'Size it');
    const row = page.getByRole('row', { name: /^Take .* for Q1/ });
    await row.waitFor();
    expect(await row.textContent()).toMatch(/larger than needed[\s\S]*with 20 % headroom/);
    await page.getByRole('checkbox', { name: /for Q1$/ }).check();
    // Before and after in findings and legs, before anything is changed.
    const effect = page.getByRole('region', { name: 'Before and after' });
    await effect.getByText(/stop \d+ → \d+ · warn \d+ → \d+/).waitFor();
    await effect.getByText(/A \d+\.\d A → \d+\.\d A · B /).waitFor();
    await page.getByRole('button', { name: 'Change 1 in the plan' }).click();
    await figuresSettled(page);
    const changed = recordsIn(await planText(page)).find((r) => r.id === 'box-q1');
    expect(changed?.kindId).not.toBe(recordsIn(before).find((r) => r.id === 'box-q1')?.kindId);
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await planText(page)).toBe(before);
    await page.getByRole('textbox', { name: /^Amps a leg/ }).fill('100');
    await page.getByRole('textbox', { name: /^Length/ }).fill('200 ft');
    await page.getByText(/for 120\.0 A over 200 ft at 120 V: carries/).waitFor();
    await page.getByRole('textbox', { name: /^Length/ }).fill('far');
    await page.getByText(/Write a length like 200 ft/).waitFor();
    expect(trouble).toEqual([]);
    await page.context().close();
  });

  test('an outlet is asked for from a spot of the floor', async () => {
    const { page, trouble } = await opened('Study, day');
    const spot = await onPage(page, 1500, 1500);
    await page.mouse.move(spot.x, spot.y);
    await page.keyboard.press('Escape');
    await page.mouse.click(spot.x, spot.y, { button: 'right' });
    await page.getByRole('menuitem', { name: /Where can I plug (it )?in/ }).click();
    await page.getByRole('tab', { name: 'Where can I plug in', selected: true }).waitFor();
    // More than is left on any circuit of the house, then less.
    await page
      .getByRole('spinbutton', { name: 'Watts' })
      .or(page.getByRole('textbox', { name: 'Watts' }))
      .fill('1500');
    await page.getByText(/No free outlet on this floor takes it/).waitFor();
    await page
      .getByRole('spinbutton', { name: 'Watts' })
      .or(page.getByRole('textbox', { name: 'Watts' }))
      .fill('200');
    await page.getByRole('table').waitFor();
    expect(trouble).toEqual([]);
    await page.context().close();
  });
});
