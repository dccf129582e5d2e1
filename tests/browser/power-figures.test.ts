import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, openDemo, openStart } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

/** Figures of the power screens that are tried or drawn, and the meter rail on small screens. */

const app = appInBrowser();

const open = async (width: number, height: number): Promise<{ page: Page; trouble: readonly string[] }> => {
  const context = await app.browser.newContext({ viewport: { width, height } });
  const page = await context.newPage();
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, 'Street, night');
  return { page, trouble };
};

const tab = async (page: Page, name: string): Promise<void> =>
  page.getByRole('tab', { name, exact: true }).click();

/** Presses a figure, checks that the working ends in it and has its parts, and closes it. */
const opens = async (page: Page, press: () => Promise<void>, shown?: string): Promise<void> => {
  await press();
  const dialog = page.getByRole('dialog');
  await dialog.locator('.working-formula').waitFor();
  expect(await dialog.locator('tbody tr').count()).toBeGreaterThan(0);
  if (shown !== undefined) expect(await dialog.locator('.working-result').textContent()).toBe(shown);
  expect(await dialog.getByText(/^Rule power-/).count()).toBe(1);
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'detached' });
};

describe('figures of the power screens', () => {
  test('of a tried fault, a swap, a loop, a place and a size open their working', async () => {
    const { page, trouble } = await open(1366, 768);
    await page.getByRole('button', { name: 'Power', exact: true }).click();
    await tab(page, 'What if');
    for (const what of ['trip', 'leg', 'neutral', 'swap']) {
      await page.getByRole('combobox', { name: 'What happens' }).selectOption(what);
      await page.getByRole('button', { name: 'Try it' }).click();
      const figures = page.locator('article .figure');
      await figures.first().waitFor();
      for (const figure of [figures.first(), figures.last()])
        await opens(page, () => figure.click(), (await figure.textContent()) ?? '');
    }
    await page.getByRole('button', { name: 'Discard' }).click();
    await page.getByText('A short at the end of each run').click();
    const loops = page.locator('details .figure');
    await loops.first().waitFor();
    await opens(page, () => loops.first().press('Enter'), (await loops.first().textContent()) ?? '');
    await opens(page, () => page.locator('details .power-why').first().click());
    await tab(page, 'Where can I plug in');
    const places = page.locator('.power-table .figure');
    await places.first().waitFor();
    for (const i of [0, 1, 2, 3]) {
      const figure = places.nth(i);
      await opens(page, () => figure.click(), (await figure.textContent()) ?? '');
    }
    await tab(page, 'Size it');
    await opens(page, () => page.locator('.size-table .power-why').first().click());
    expect(trouble).toEqual([]);
    await page.context().close();
  });

  test('of plug and balance and of a set in the meters open their working', async () => {
    const { page, trouble } = await open(1920, 1080);
    const set = page.getByRole('region', { name: /as a set$/ }).first();
    const meters = set.locator('.rail-power .figure');
    await meters.first().waitFor();
    for (let i = 0; i < (await meters.count()); i++) await opens(page, () => meters.nth(i).click());
    await page.getByRole('button', { name: 'Power', exact: true }).click();
    await tab(page, 'Plug and balance');
    await page.getByRole('textbox', { name: /re-plugs/ }).fill('2');
    await page.getByRole('button', { name: 'Balance legs' }).click();
    const scores = page.locator('.power-scores').first();
    await scores.locator('.figure').first().waitFor();
    for (const figure of await scores.locator('.figure').all())
      await opens(page, () => figure.click(), (await figure.textContent()) ?? '');
    const effect = page.getByRole('region', { name: 'Before and after' });
    for (const figure of (await effect.locator('.figure').all()).slice(0, 4))
      await opens(page, () => figure.click(), (await figure.textContent()) ?? '');
    expect(trouble).toEqual([]);
    await page.context().close();
  });

  test('of the one-line diagram open by a click, and by F and Enter when their part is chosen', async () => {
    const { page, trouble } = await open(1366, 768);
    await page.getByRole('button', { name: 'Power', exact: true }).click();
    await tab(page, 'One-line');
    const zone = page.locator('[data-figure^="inW@"]').first();
    await zone.waitFor({ state: 'attached' });
    const box = await zone.boundingBox();
    if (!box) throw new Error('the figure is not in sight');
    const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    const said = (await zone.locator('title').textContent())?.replace(': show the working', '');
    await opens(page, () => page.mouse.click(at.x, at.y), said);
    // A click beside it chooses the part, as before.
    expect(await page.locator('.one-line-part h3').count()).toBe(0);
    const diagram = page.getByRole('application', { name: /One-line diagram/ });
    await diagram.focus();
    await page.keyboard.press('n');
    await page.locator('.one-line-part h3').waitFor();
    await opens(page, () => page.keyboard.press('Enter'));
    await diagram.focus();
    await page.keyboard.press('f');
    await page.keyboard.press('f');
    expect(await page.locator('.one-line-figure.picked').count()).toBe(1);
    await opens(page, () => page.keyboard.press('Enter'));
    expect(trouble).toEqual([]);
    await page.context().close();
  });

  // 1366 pixels wide, and the same screen at 125 %.
  test.each([
    [1366, 768],
    [1093, 614],
  ])(
    'the meter rail needs no scrolling sideways at %i pixels, and every source can be seen',
    async (width, height) => {
      const { page, trouble } = await open(width, height);
      await figuresSettled(page);
      const over = () =>
        page.evaluate(() => {
          const all = ['.rail', '.rail-sources', '.rail-meters'].map((s) => document.querySelector(s));
          return all.map((e) => (e ? e.scrollWidth - e.clientWidth : Number.NaN));
        });
      expect(await over()).toEqual([0, 0, 0]);
      const picks = page.getByRole('group', { name: 'Meters shown' }).getByRole('button');
      expect(await picks.count()).toBeGreaterThan(2);
      for (let i = 0; i < (await picks.count()); i++) {
        await picks.nth(i).focus();
        await page.keyboard.press('Enter');
        expect(await picks.nth(i).getAttribute('aria-pressed')).toBe('true');
        expect(await over()).toEqual([0, 0, 0]);
      }
      expect(trouble).toEqual([]);
      await page.context().close();
    },
  );
});
