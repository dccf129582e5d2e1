import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { figuresSettled, onPage, openStart, planText, recordsIn } from '../support/app-story.ts';
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

const shots = process.env.LAMPWRIGHT_SHOTS;
const shot = async (page: Page, name: string): Promise<void> => {
  if (shots) await page.screenshot({ path: join(shots, `${name}.png`) });
};

const of = (text: string, type: string) => recordsIn(text).filter((r) => r.type === type);

describe('a scout', () => {
  test('draws a room with a door, two windows and four outlets on two breakers in under 60 actions', async () => {
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, site.url);
    let actions = 0;
    const act = async (...steps: readonly Promise<unknown>[]): Promise<void> => {
      actions++;
      for (const s of steps) await s;
    };
    const press = (key: string): Promise<void> => act(page.keyboard.press(key));
    const clickAt = async (xMm: number, yMm: number): Promise<void> => {
      const at = await onPage(page, xMm, yMm);
      await page.mouse.move(at.x, at.y);
      await act(page.mouse.click(at.x, at.y));
    };

    await act(page.getByLabel('Name').fill('Scout'));
    await act(page.getByRole('button', { name: 'Start plan' }).click());
    await page.getByRole('application', { name: 'Floor drawing' }).focus();

    // The room, by typing.
    await press('w');
    await press('Enter');
    for (const [arrow, length] of [
      ['ArrowRight', `24' 6"`],
      ['ArrowDown', `18'`],
      ['ArrowLeft', `24' 6"`],
      ['ArrowUp', `18'`],
    ] as const) {
      await press(arrow);
      await act(page.keyboard.type(length));
      if (arrow === 'ArrowDown') await shot(page, 'scout-1-typing');
      await press('Enter');
    }
    await page.getByText('The room is closed').waitFor();
    await press('Home');

    // A typing mistake is told and costs nothing.
    await press('Enter');
    await act(page.keyboard.type('1'));
    await act(page.keyboard.type('banana'));
    await press('Enter');
    await page.getByText('“1banana” is not a length.').first().waitFor();
    await press('Escape');
    await press('Escape');

    await press('d');
    await clickAt(1800, -75);
    await press('Shift+D');
    await clickAt(4600, -75);
    await clickAt(24.5 * 304.8 + 75, 2700);
    await shot(page, 'scout-2-openings');

    // Four outlets on two breakers.
    await press('e');
    await clickAt(-10, 1200);
    await act(page.getByLabel('Breaker, amperes').fill('20'));
    await act(page.getByRole('button', { name: 'Add the circuit' }).click());
    await page.getByText('The next wall outlets hang on circuit').waitFor();
    await clickAt(-10, 1200);
    await clickAt(-10, 3600);
    await act(page.getByRole('button', { name: 'New circuit…' }).click());
    await act(page.getByLabel('Breaker, amperes').fill('15'));
    await act(page.getByRole('button', { name: 'Add the circuit' }).click());
    await page.getByText('The next wall outlets hang on circuit').waitFor();
    await clickAt(3000, 18 * 304.8 + 10);
    await clickAt(5500, 18 * 304.8 + 10);
    await press('Escape');

    // A note.
    await page.getByRole('application', { name: 'Floor drawing' }).focus();
    await press('n');
    await act(page.getByLabel('Name', { exact: true }).fill('Fridge stays on'), page.keyboard.press('Enter'));
    await figuresSettled(page);
    await shot(page, 'scout-3-room');
    expect(actions).toBeLessThan(60);

    const text = await planText(page);
    expect(of(text, 'wall')).toHaveLength(4);
    // Ids are random, and the file is sorted by them.
    expect(
      of(text, 'opening')
        .map((o) => o.what)
        .sort(),
    ).toEqual(['door', 'window', 'window']);
    const outlets = of(text, 'outlet');
    expect(outlets).toHaveLength(4);
    expect(new Set(outlets.map((o) => `${String(o.sourceId)}|${String(o.wayId)}`)).size).toBe(2);
    expect(of(text, 'mark')[0]?.name).toBe('Fridge stays on');

    await page.getByText('saved · works offline').waitFor();
    await page.reload();
    await figuresSettled(page);
    expect(await planText(page)).toBe(text);
    expect(trouble).toEqual([]);
    await context.close();
  });
});
