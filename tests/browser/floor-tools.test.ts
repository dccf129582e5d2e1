import { expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { openDemo, openStart } from '../support/app-story.ts';

const app = appInBrowser();

test('the opening tool tells door, window and archway apart and keeps the last; a long menu fits a screen of 768 px', async () => {
  const page = await app.browser.newPage({ viewport: { width: 1366, height: 768 } });
  await openStart(page, app.url);
  await openDemo(page, 'Study, day');
  const strip = page.getByRole('toolbar', { name: 'Tools' });
  const button = (name: string) => strip.getByRole('button', { name, exact: true });
  await button('Opening').click();
  expect(await button('Door').getAttribute('aria-pressed')).toBe('true');
  await button('Archway').click();
  await button('Select').click();
  expect(await button('Archway').count()).toBe(0);
  await button('Opening').click();
  expect(await button('Archway').getAttribute('aria-pressed')).toBe('true');
  await button('Select').click();

  const floor = page.getByRole('application', { name: 'Floor drawing' });
  await floor.focus();
  await page.keyboard.press('Control+a');
  await page.mouse.click(700, 400, { button: 'right' });
  const menu = page.getByRole('menu', { name: 'Selection' });
  await menu.waitFor();
  const box = await menu.evaluate((e) => ({
    hidden: e.scrollHeight - e.clientHeight,
    top: e.getBoundingClientRect().top,
    bottom: e.getBoundingClientRect().bottom,
  }));
  expect(box.hidden).toBeLessThanOrEqual(1);
  expect(box.top).toBeGreaterThanOrEqual(0);
  expect(box.bottom).toBeLessThanOrEqual(768);
  await page.close();
});
