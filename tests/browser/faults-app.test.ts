import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import {
  killBrowser,
  launchBrowser,
  launchWithProfile,
  removeProfile,
  type Served,
  serveApp,
} from '../support/browser.ts';

let site: Served;
beforeAll(async () => {
  site = await serveApp();
});
afterAll(async () => {
  await site?.close();
});

const openDemo = async (page: Page): Promise<void> => {
  await page.goto(site.url);
  await page.getByRole('button', { name: /^Study, day/ }).click();
  await page.getByRole('button', { name: 'Undo' }).waitFor();
};

const isSaved = (page: Page): Promise<void> =>
  page
    .getByText(/^saved/)
    .first()
    .waitFor();

/** How many fixtures the list on the floor names. */
const fixtures = async (page: Page): Promise<number> => {
  const text = await page.getByText(/On this floor · \d+ fixtures?/).textContent();
  return Number(/\d+/.exec(text ?? '')?.[0]);
};

/** Takes a fixture off the floor by the list and the keyboard. */
const removeOne = async (page: Page, unit: number): Promise<void> => {
  await page
    .getByRole('button', { name: new RegExp(`^${unit} `) })
    .first()
    .click();
  await page.keyboard.press('Delete');
};

test('P1: a browser killed while edits are being saved comes back with every edit it had shown as saved', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'lampwright-profile-'));
  try {
    let context = await launchWithProfile(profile);
    let page = context.pages()[0] ?? (await context.newPage());
    await openDemo(page);
    const address = page.url();
    let left = await fixtures(page);
    for (let kill = 0; kill < 3; kill++) {
      await removeOne(page, kill * 2 + 1);
      await page.getByText(`On this floor · ${left - 1} fixtures`).waitFor();
      await page.waitForTimeout(300);
      await isSaved(page);
      await removeOne(page, kill * 2 + 2);
      await page.waitForTimeout(kill * 130);
      await killBrowser(context, profile);
      context = await launchWithProfile(profile);
      page = context.pages()[0] ?? (await context.newPage());
      await page.goto(address);
      const found = await fixtures(page);
      expect([left - 1, left - 2]).toContain(found);
      left = found;
    }
    await context.close();
  } finally {
    removeProfile(profile);
  }
});

test('P3: two windows on one plan: the second looks on, takes over, and the first then looks on', async () => {
  const browser = await launchBrowser();
  const context = await browser.newContext();
  const a = await context.newPage();
  await openDemo(a);
  await isSaved(a);
  const b = await context.newPage();
  await b.goto(a.url());
  const takeOver = (page: Page) => page.getByRole('button', { name: 'Take over' });
  await takeOver(b).waitFor();
  expect(await takeOver(a).count()).toBe(0);

  const before = await fixtures(a);
  await removeOne(a, 1);
  await b.getByText(`On this floor · ${before - 1} fixtures`).waitFor();

  // An edit that is not written yet goes along.
  await removeOne(a, 2);
  await takeOver(b).click();
  await takeOver(a).waitFor();
  await takeOver(b).waitFor({ state: 'detached' });
  await b.getByText(`On this floor · ${before - 2} fixtures`).waitFor();

  await removeOne(b, 3);
  await a.getByText(`On this floor · ${before - 3} fixtures`).waitFor();
  // The first only looks on.
  await removeOne(a, 4);
  await a.waitForTimeout(500);
  expect([await fixtures(a), await fixtures(b)]).toEqual([before - 3, before - 3]);

  await b.close();
  await takeOver(a).waitFor({ state: 'detached' });
  await removeOne(a, 5);
  await a.getByText(`On this floor · ${before - 4} fixtures`).waitFor();
  await browser.close();
});
