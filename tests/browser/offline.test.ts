import type { Browser } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
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

test('after the first load the editor opens, and opens a demo plan, with the network off and the server gone', async () => {
  const context = await browser.newContext();
  const first = await context.newPage();
  await first.goto(site.url);
  await first.evaluate(() => navigator.serviceWorker.ready);
  // The worker is ready only when all it keeps is kept; from then on the network is not needed.
  await first.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await first.close();
  await context.setOffline(true);
  await site.close();

  const page = await context.newPage();
  const trouble = watchPage(page);
  const asked: string[] = [];
  page.on('request', (r) => asked.push(new URL(r.url()).origin));
  await page.goto(site.url);
  await page.getByRole('button', { name: /^Study, day/ }).click();
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  await page.getByText('13 fixtures').first().waitFor();
  const fonts = await page.evaluate(async () => {
    await document.fonts.ready;
    return [...document.fonts].filter((f) => f.status === 'error').length;
  });
  expect(fonts).toBe(0);
  expect(trouble).toEqual([]);
  expect(new Set(asked)).toEqual(new Set([new URL(site.url).origin]));
  await context.close();
});
