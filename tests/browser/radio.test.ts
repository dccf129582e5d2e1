import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, onPage, openDemo, openStart, planText, recordsIn } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';

const app = appInBrowser();

interface Placed {
  readonly label: string;
  readonly at: { readonly xMm: number; readonly yMm: number };
}

const transmitterIn = async (page: Page): Promise<Placed['at']> => {
  const t = recordsIn(await planText(page)).find(
    (r) => r.type === 'device' && (r as unknown as Placed).label === 'T1',
  );
  if (!t) throw new Error('the plan has no T1');
  return (t as unknown as Placed).at;
};

/** The floor along a line, every few pixels, as one text that changes when they do. */
const pixelsAlong = (page: Page, x: number, y: number, length: number): Promise<string> =>
  page.evaluate(
    ([px = 0, py = 0, w = 0]) => {
      const out: number[] = [];
      for (const canvas of document.querySelectorAll('canvas')) {
        const box = canvas.getBoundingClientRect();
        const k = canvas.width / box.width;
        const data = canvas
          .getContext('2d')
          ?.getImageData((px - box.left) * k, (py - box.top) * k, w * k, 1).data;
        out.push(...(data ?? []));
      }
      return out.join(',');
    },
    [x, y, length],
  );

test('margins show their working, a place is found and taken, and the picture follows a dragged transmitter', async () => {
  const page = await app.browser.newPage({ viewport: { width: 1440, height: 900 } });
  const trouble = watchPage(page);
  await openStart(page, app.url);
  await openDemo(page, 'Stage, three sets');
  await page.getByRole('button', { name: 'Control', exact: true }).click();
  await page.getByRole('tab', { name: 'Radio' }).click();

  // A margin opens as a sum, term by term, and promises nothing.
  const links = page.getByRole('region', { name: 'Radio links' });
  await links
    .getByRole('row', { name: /Unit 60/ })
    .getByTitle('Show the working')
    .click();
  const working = page.getByRole('dialog');
  await working.getByText('Radio margin of Unit 60 from T1').waitFor();
  await working.getByText(/^free space, /).waitFor();
  await working.getByText('Hint, not a guarantee; test on the day.').waitFor();
  await page.keyboard.press('Escape');

  // More people in the air make the margins no better.
  const marginOf = async (unit: string): Promise<number> => {
    const cell = links.getByRole('row', { name: new RegExp(unit) }).getByTitle('Show the working');
    return Number(((await cell.textContent()) ?? '').replace('−', '-').replace(' dB', ''));
  };
  const few = await marginOf('Unit 60');
  await page.getByLabel('People between the aerials').selectOption('many');
  expect(await marginOf('Unit 60')).toBeLessThanOrEqual(few);

  // The best place is looked for, shown, and taken as one step.
  const before = await transmitterIn(page);
  await page.getByRole('button', { name: 'Find places' }).click();
  await page.getByText(/free places tried for 6 receivers/).waitFor();
  await page.getByRole('button', { name: 'Move it here' }).first().click();
  const moved = await transmitterIn(page);
  expect(moved).not.toEqual(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await transmitterIn(page)).toEqual(before);

  // The coverage picture is on the floor with its legend, and changes while the transmitter is still under the hand.
  await page.getByLabel('show it on the floor').check();
  await page.getByRole('button', { name: 'Go to the floor' }).click();
  await page.getByRole('img', { name: /^Scale from 0 dB/ }).waitFor();
  await figuresSettled(page);
  const at = await onPage(page, before.xMm, before.yMm);
  const far = await onPage(page, 1000, 18_500);
  const still = await pixelsAlong(page, far.x, far.y, 250);
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  await page.mouse.move(at.x - 60, at.y - 200, { steps: 8 });
  await page.waitForTimeout(900);
  expect(await pixelsAlong(page, far.x, far.y, 250)).not.toBe(still);
  await page.keyboard.press('Escape');
  await page.mouse.up();

  expect(trouble).toEqual([]);
  await page.close();
});
