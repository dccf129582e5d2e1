import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, openStart, planText, recordsIn } from '../support/app-story.ts';

const app = appInBrowser();

/** Presses Tab until something with this accessible name has the focus. */
const tabTo = async (page: Page, name: RegExp): Promise<void> => {
  for (let i = 0; i < 160; i++) {
    const label = await page.evaluate(() => {
      const el = document.activeElement;
      if (!(el instanceof HTMLElement)) return '';
      const labelled =
        el instanceof HTMLInputElement || el instanceof HTMLSelectElement
          ? (el.labels?.[0]?.textContent ?? '')
          : '';
      return `${el.getAttribute('aria-label') ?? ''} ${labelled} ${el.tagName === 'BUTTON' ? el.textContent : ''}`.trim();
    });
    if (name.test(label)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard does not reach ${String(name)}`);
};

test('the main steps by keyboard alone: place, move, turn, stand, plug, work, undo, issue', async () => {
  const context = await app.browser.newContext({
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
  });
  const page = await context.newPage();
  await openStart(page, app.url);
  await tabTo(page, /^Study, day/);
  await page.keyboard.press('Enter');
  await figuresSettled(page);
  const before = await planText(page);

  await tabTo(page, /Find gear/);
  await page.keyboard.type('led spot 350');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: /^14 · LED spot 350 W/ }).waitFor();
  await page.keyboard.press('Escape');

  await tabTo(page, /Floor drawing/);
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press(']');
  await page.keyboard.press('t');
  await tabTo(page, /^Support/);
  expect(
    await page.evaluate(() => (document.activeElement as HTMLSelectElement).selectedOptions[0]?.text),
  ).toMatch(/stand/i);

  await tabTo(page, /^Plug in…/);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await tabTo(page, /free of/);
  await page.keyboard.press('Enter');
  await page.locator('.row', { hasText: 'Cable' }).waitFor();
  await figuresSettled(page);

  await tabTo(page, /^\d+\.\d A$/);
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').getByText('Input', { exact: true }).waitFor();
  await page.keyboard.press('Escape');

  const after = await planText(page);
  const made = recordsIn(after).find((r) => r.type === 'fixture' && r.unit === '14');
  expect(made).toMatchObject({ support: { on: 'stand' } });
  expect(
    recordsIn(after).some((r) => r.type === 'cable' && (r.to as { recordId: string }).recordId === made?.id),
  ).toBe(true);

  await tabTo(page, /Floor drawing/);
  for (let i = 0; i < 6; i++) await page.keyboard.press('Control+z');
  expect(await planText(page)).toBe(before);
  await tabTo(page, /Floor drawing/);
  for (let i = 0; i < 6; i++) await page.keyboard.press('Control+Shift+z');
  expect(await planText(page)).toBe(after);

  await tabTo(page, /^Issue papers/);
  await page.keyboard.press('Enter');
  await tabTo(page, /^Issue A as PDF/);
  const waiting = page.waitForEvent('download');
  await page.keyboard.press('Enter');
  expect((await waiting).suggestedFilename()).toMatch(/-A\.pdf$/);
  await context.close();
});
