import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { demoPlans } from '../../demo-sets/index.ts';
import { ROOT } from '../../src/cli/bootstrap.mjs';
import { figuresSettled, openDemo, openStart } from '../support/app-story.ts';
import { launchBrowser, type Served, serveApp } from '../support/browser.ts';

/** With UPDATE_PICTURES=1 the pictures in the README and on the start page are taken anew. */
const writing = process.env.UPDATE_PICTURES === '1';
const folder = join(ROOT, 'demo-sets', 'pictures');

let site: Served;
let browser: Browser;
beforeAll(async () => {
  site = await serveApp();
  browser = await launchBrowser();
  if (writing) mkdirSync(folder, { recursive: true });
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

test.each(demoPlans.map((d) => [d.slug, d.title] as const))(
  'the demo %s shows a drawing and a plot',
  async (slug, title) => {
    const context = await browser.newContext({
      viewport: { width: 1440, height: 900 },
      colorScheme: 'light',
    });
    const page = await context.newPage();
    await openStart(page, site.url);
    await openDemo(page, title);
    await page.waitForTimeout(800);
    if (writing && slug === 'study') {
      await page.locator('.floor-list .shelf-item').first().click();
      await figuresSettled(page);
      await page.screenshot({ path: join(folder, 'floor.png') });
    }
    await page.getByRole('button', { name: 'Papers', exact: true }).click();
    await page
      .getByRole('button', { name: /Lighting plot/ })
      .first()
      .click();
    const sheet = page.locator('.papers-sheet svg');
    await sheet.waitFor();
    expect(await sheet.getByText('Key to symbols').count()).toBeGreaterThan(0);
    if (writing && slug === 'study') {
      await page.setViewportSize({ width: 2000, height: 1400 });
      await page.waitForTimeout(300);
      await sheet.screenshot({ path: join(folder, 'plot.png') });
    }
    await context.close();
    if (writing) await thumbnail(slug, title);
  },
);

/** The drawing at half size, for the start page. */
const thumbnail = async (slug: string, title: string): Promise<void> => {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    deviceScaleFactor: 0.5,
    colorScheme: 'light',
  });
  const page = await context.newPage();
  await openStart(page, site.url);
  await openDemo(page, title);
  await page.waitForTimeout(800);
  const box = await page.getByRole('application', { name: 'Floor drawing' }).boundingBox();
  if (!box) throw new Error('no drawing');
  const clip = { x: box.x + 100, y: box.y + 40, width: box.width - 170, height: box.height - 130 };
  await page.screenshot({ path: join(folder, `${slug}.png`), clip });
  await context.close();
};
