import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  killBrowser,
  launchBrowser,
  launchWithProfile,
  removeProfile,
  type Served,
  serveHarness,
} from '../support/browser.ts';
import type {} from '../support/storage-harness/main.ts';

let site: Served;
let browser: Browser;
beforeAll(async () => {
  site = await serveHarness('support/storage-harness');
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});

const harnessPage = async (page: Page): Promise<Page> => {
  await page.goto(site.url);
  await page.waitForFunction(() => 'harness' in window);
  return page;
};

describe('the browser is killed during autosave', () => {
  const KILLS = 10;
  let profile: string;
  beforeAll(() => {
    profile = mkdtempSync(join(tmpdir(), 'lampwright-profile-'));
  });
  afterAll(() => removeProfile(profile));

  test(`P1: in ${KILLS} kills no edit that was shown as saved is lost, and no edit is there by half`, async () => {
    let planId: string | undefined;
    let reported = 0;
    for (let kill = 0; kill < KILLS; kill++) {
      const context = await launchWithProfile(profile);
      const page = await harnessPage(context.pages()[0] ?? (await context.newPage()));
      if (planId === undefined) planId = await page.evaluate(() => window.harness.create(300));
      else {
        await page.evaluate((id) => window.harness.open(id), planId);
        const [first, second] = await page.evaluate(() => window.harness.names());
        expect(first, `after kill ${kill}`).toBe(second);
        expect(first, `after kill ${kill}`).toBeGreaterThanOrEqual(reported);
        expect(await page.evaluate(() => window.harness.notices())).toEqual([]);
      }
      const before = reported;
      const atLeastOne = new Promise<void>((resolve) => {
        void page.exposeFunction('reportSaved', (n: number) => {
          reported = Math.max(reported, n);
          if (reported > before) resolve();
        });
      });
      await page.waitForFunction(() => 'reportSaved' in window);
      await page.evaluate(() => window.harness.run((n) => window.reportSaved(n)));
      await atLeastOne;
      // Somewhere within the next two batches, another moment each time.
      await new Promise((resolve) => setTimeout(resolve, (kill * 97) % 500));
      await killBrowser(context, profile);
    }
    expect(reported).toBeGreaterThan(KILLS);
  });
});

describe('two windows on one plan', () => {
  test('P3: one writes, the other follows, takes over, and gets the lock when the first is closed', async () => {
    const context = await browser.newContext();
    const a = await harnessPage(await context.newPage());
    const b = await harnessPage(await context.newPage());
    const planId = await a.evaluate(() => window.harness.create());
    await b.evaluate((id) => window.harness.open(id), planId);
    const states = async (): Promise<string[]> => [
      await a.evaluate(() => window.harness.state()),
      await b.evaluate(() => window.harness.state()),
    ];
    expect(await states()).toEqual(['saved', 'read-only']);

    await a.evaluate(() => window.harness.step(1));
    await b.waitForFunction(() => window.harness.names()[1] === 1, undefined, { timeout: 5000 });
    expect(await b.evaluate(() => window.harness.foreign())).toEqual(['Step 1']);

    // Edits that are not written yet go along when the other takes over.
    await a.evaluate(() => window.harness.step(2));
    expect(await b.evaluate(() => window.harness.takeOver())).toBe(true);
    expect(await b.evaluate(() => window.harness.names())).toEqual([2, 2]);
    expect(await states()).toEqual(['read-only', 'saved']);

    await b.evaluate(() => window.harness.step(3));
    await b.evaluate(() => window.harness.flush());
    await a.waitForFunction(() => window.harness.names()[1] === 3);
    expect(await a.evaluate(() => window.harness.text())).toBe(await b.evaluate(() => window.harness.text()));

    await b.close();
    await a.waitForFunction(() => window.harness.state() === 'saved');
    await a.evaluate(() => window.harness.step(4));
    await a.evaluate(() => window.harness.close());
    const c = await harnessPage(await context.newPage());
    await c.evaluate((id) => window.harness.open(id), planId);
    expect(await c.evaluate(() => window.harness.names())).toEqual([4, 4]);
    expect(await c.evaluate(() => window.harness.list())).toEqual(['Kitchen']);
    await context.close();
  });

  test('P1: an edit made just before its window is closed is written when the page is left in good order', async () => {
    const context = await browser.newContext();
    const a = await harnessPage(await context.newPage());
    const planId = await a.evaluate(() => window.harness.create());
    await a.evaluate(() => {
      window.harness.step(7);
      return window.harness.flush();
    });
    await a.close();
    const b = await harnessPage(await context.newPage());
    await b.evaluate((id) => window.harness.open(id), planId);
    expect(await b.evaluate(() => window.harness.names())).toEqual([7, 7]);
    await context.close();
  });
});
