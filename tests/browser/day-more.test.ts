import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

const times = async (page: Page): Promise<readonly string[]> =>
  recordsIn(await planText(page))
    .filter((r) => r.type === 'block')
    .map((r) => `${r.what} ${r.startMin} ${r.endMin}`)
    .sort();

describe('a best boy puts the day in order', () => {
  test('setups by their heads, a typed start that takes the rest along, workings by keys, a search that is told', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Day', exact: true }).click();

    await page.getByRole('tab', { name: 'Setups', exact: true }).click();
    const heads = page.locator('.grid-setup b');
    const first = await heads.nth(0).boundingBox();
    const last = await page.locator('.grid-setup').nth(2).boundingBox();
    if (!first || !last) throw new Error('no heads to drag');
    await page.mouse.move(first.x + 8, first.y + 8);
    await page.mouse.down();
    await page.mouse.move(first.x + 90, first.y + 8, { steps: 3 });
    await page.mouse.move(last.x + last.width - 10, first.y + 8, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => heads.allTextContents()).toEqual(['14B', '14C', '14A']);
    // By keys the setup goes back, one place at a time, and the choice with it.
    await page.keyboard.press('Alt+Shift+ArrowLeft');
    await page.keyboard.press('Alt+Shift+ArrowLeft');
    await expect.poll(() => heads.allTextContents()).toEqual(['14A', '14B', '14C']);

    await page.getByRole('tab', { name: 'Shooting day', exact: true }).click();
    const before = await times(page);
    await page.getByRole('textbox', { name: 'Meal, from' }).fill('13:00');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Shift its end and everything after 30 min later' }).click();
    expect(await times(page)).toEqual(
      before
        .map((t) => {
          const [what, start, end] = t.split(' ');
          const by = Number(start) >= 750 ? 30 : 0;
          return `${what} ${Number(start) + by} ${Number(end) + by}`;
        })
        .sort(),
    );
    expect(await page.getByRole('button', { name: /^Shift its end/ }).count()).toBe(0);

    await page.getByRole('region', { name: 'The day in all' }).getByRole('button').nth(2).focus();
    await page.keyboard.press('Enter');
    const working = page.getByRole('dialog', { name: /^Energy of P1, day 1/ });
    await working.getByText('sum of watts × hours over the day').waitFor();
    await working.getByText(/^Rule day-energy/).waitFor();
    await page.keyboard.press('Escape');

    await page.getByRole('tab', { name: 'Packs', exact: true }).click();
    await page.getByRole('button', { name: /Find the fewest packs/ }).click();
    await page.getByText(/packs are the fewest that can do/).waitFor();

    // Packs that travel by air are findings with the rules' source and date, and lead to where the packs are.
    await page.getByLabel('travel by passenger aircraft').check();
    await expect.poll(() => page.locator('.stale').count()).toBe(0);
    await page.locator('.rail-findings').getByRole('button').first().click();
    const findings = page.getByRole('dialog', { name: 'Findings' });
    const air = findings.locator('li, article').filter({ hasText: 'fly in the cabin' }).last();
    await air.getByText(/49 CFR 175\.10.*as of 2026-03/).waitFor();
    await air.getByRole('button', { name: 'Select' }).click();
    await page.getByText('The packs at hand are under Packs.').waitFor();
    expect(trouble).toEqual([]);
    await context.close();
  });

  test('a search for the fewest packs is stopped, and the plan can be worked on meanwhile', async () => {
    const context = await app.browser.newContext({ viewport: { width: 1440, height: 900 } });
    const page = await context.newPage();
    const trouble = watchPage(page);
    // The search's own thread is kept from answering, as a very large day would.
    await page.addInitScript(() => {
      const Real = window.Worker;
      window.Worker = class extends Real {
        constructor(url: string | URL, options?: WorkerOptions) {
          super(url, options);
          if (String(url).includes('fewest')) Object.assign(this, { postMessage: () => {} });
        }
      };
    });
    await openStart(page, app.url);
    await openDemo(page, 'Study, day');
    await page.getByRole('button', { name: 'Day', exact: true }).click();
    await page.getByRole('tab', { name: 'Packs', exact: true }).click();
    await page.getByRole('button', { name: /Find the fewest packs/ }).click();
    await page.getByText('Looking for the fewest').waitFor();
    await page.getByRole('tab', { name: 'Packs', exact: true }).focus();
    await page.getByLabel('Pack, V-type plate, 98 Wh, 14.4 V kept back').fill('0');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await page.getByText('The search was stopped.').waitFor();
    await page.getByRole('button', { name: /Find the fewest packs/ }).waitFor();
    expect(trouble).toEqual([]);
    await context.close();
  });
});
