import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { openDemo, openStart } from '../support/app-story.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const app = appInBrowser();

/** What the checker finds on the page as it is, in words that name the element. */
const problems = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: {
        run: (
          o: object,
        ) => Promise<{ violations: { id: string; help: string; nodes: { html: string }[] }[] }>;
      };
    };
    const { violations } = await axe.run({ resultTypes: ['violations'] });
    return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${v.help}: ${n.html.slice(0, 160)}`));
  });
};

describe.each(['light', 'dark'] as const)('an accessibility checker in the %s scheme', (colorScheme) => {
  test('finds nothing on any screen', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      colorScheme,
      bypassCSP: true,
    });
    const page = await context.newPage();
    const found: string[] = [];
    const check = async (screen: string): Promise<void> => {
      found.push(...(await problems(page)).map((p) => `${screen}: ${p}`));
    };
    await openStart(page, app.url);
    await check('start');
    await openDemo(page, 'Street, night');
    await check('floor');
    await page.locator('.floor-list .shelf-item').first().click();
    await check('floor, a unit selected');
    await page.locator('.row', { hasText: 'Plugged' }).getByRole('button').first().click();
    await page.getByRole('dialog').waitFor();
    await check('plug dialog');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Power', exact: true }).click();
    await check('power');
    for (const tab of ['One-line', 'What if', 'Where can I plug in', 'Plug and balance', 'Measured']) {
      await page.getByRole('tab', { name: tab, exact: true }).click();
      if (tab === 'Plug and balance') await page.getByRole('button', { name: 'Balance legs' }).click();
      await check(`power, ${tab}`);
    }
    await page.getByRole('button', { name: /Open the findings/ }).click();
    await page.getByRole('dialog').waitFor();
    await check('findings');
    await page.getByRole('dialog').getByRole('button', { name: 'Show working' }).first().click();
    await page.getByRole('dialog').filter({ hasText: 'Input' }).waitFor();
    await check('working');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Day', exact: true }).click();
    for (const view of ['Setups', 'Packs', 'Shooting day']) {
      await page.getByRole('tab', { name: view, exact: true }).click();
      await check(`day, ${view}`);
    }
    await page.getByRole('button', { name: 'Gear', exact: true }).click();
    await page.locator('.gear-row').first().click();
    await check('gear');
    for (const dialog of ['New kind…', 'Import…']) {
      await page.getByRole('button', { name: dialog }).click();
      await page.getByRole('dialog').waitFor();
      await check(dialog);
      await page.keyboard.press('Escape');
    }
    await page.getByRole('button', { name: 'Control', exact: true }).click();
    await page.getByRole('button', { name: 'Assign addresses…' }).click();
    await page.getByRole('dialog').waitFor();
    await check('control, assigning');
    await page.keyboard.press('Escape');
    await check('control');
    for (const tab of ['Lines and nodes', 'Radio', 'Part levels', 'Set-up cards']) {
      await page.getByRole('tab', { name: tab, exact: true }).click();
      await check(`control, ${tab}`);
    }
    await page.getByRole('button', { name: 'Papers', exact: true }).click();
    await page.locator('.papers-sheet svg').waitFor();
    await page.getByText('Choose sheets').click();
    await check('papers');
    await page.getByRole('button', { name: 'Issue papers' }).click();
    await page.getByRole('dialog').waitFor();
    await check('issue');
    await page.keyboard.press('Escape');
    for (const item of ['Title and crew…', 'Setups…', 'All commands…', 'Keys…']) {
      await page.getByTitle('Plan menu').click();
      await page.getByRole('menuitem', { name: item }).click();
      await page.getByRole('dialog').waitFor();
      await check(item);
      await page.keyboard.press('Escape');
    }
    expect(found).toEqual([]);
    await context.close();
  });
});
