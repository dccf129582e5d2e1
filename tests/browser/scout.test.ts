import { join } from 'node:path';
import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { figuresSettled, onPage, openStart, recordsIn, savedPlan } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';
import { pngOf } from '../support/pictures.ts';

const app = appInBrowser();

const shots = process.env.LAMPWRIGHT_SHOTS;
const shot = async (page: Page, name: string): Promise<void> => {
  if (shots) await page.screenshot({ path: join(shots, `${name}.png`) });
};

/** A scan of the room with a scale of 40 px to the foot: a frame of 980 × 720 px, 60 px in. */
const scan = pngOf(1100, 840, (x, y) => {
  const inside = x >= 60 && x < 1040 && y >= 60 && y < 780;
  const within = x >= 64 && x < 1036 && y >= 64 && y < 776;
  return inside && !within ? [20, 20, 20] : [250, 247, 238];
});
/** A photo with a place in it, as cameras write it: a segment that must not reach the plan. */
const PLACE = 'N 40 42 51 W 74 00 21';

const of = (text: string, type: string) => recordsIn(text).filter((r) => r.type === type);

/** Where the lower edge of the scan's frame is on the page: it lies with its middle in the middle of the view. */
const scanSpots = async (page: Page): Promise<{ left: number; right: number; below: number }> => {
  const box = await page.getByRole('application', { name: 'Floor drawing' }).boundingBox();
  if (!box) throw new Error('no floor');
  const k = (box.width * 0.7) / 1100;
  const x = (px: number): number => box.x + box.width / 2 + (px - 550) * k;
  return { left: x(62), right: x(1042), below: box.y + box.height / 2 + (778 - 420) * k };
};

/** A JPEG by the browser itself, with a comment segment put in as a camera would put its place. */
const photoOf = async (page: Page): Promise<Buffer> => {
  const base64 = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    canvas.width = 2400;
    canvas.height = 1800;
    const c = canvas.getContext('2d');
    if (c) {
      c.fillStyle = '#345';
      c.fillRect(0, 0, 2400, 1800);
    }
    return canvas.toDataURL('image/jpeg').split(',')[1] ?? '';
  });
  const plain = Buffer.from(base64, 'base64');
  const head = Buffer.from([0xff, 0xfe, 0, PLACE.length + 2]);
  return Buffer.concat([plain.subarray(0, 2), head, Buffer.from(PLACE, 'latin1'), plain.subarray(2)]);
};

describe('a scout', () => {
  test('draws a room with a door, two windows and four outlets on two breakers in under 60 actions', async () => {
    const context = await app.browser.newContext({
      viewport: { width: 1440, height: 900 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const trouble = watchPage(page);
    await openStart(page, app.url);
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
    const floor = page.getByRole('application', { name: 'Floor drawing' });
    await floor.focus();

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
    // The outlet that was pressed for came with its circuit.
    await page.getByText('The next wall outlets hang on circuit').waitFor();
    await clickAt(-10, 3600);
    await act(page.getByRole('button', { name: 'New circuit…' }).click());
    await act(page.getByLabel('Breaker, amperes').fill('15'));
    await act(page.getByRole('button', { name: 'Add the circuit' }).click());
    await page.getByText('The next wall outlets hang on circuit').waitFor();
    await clickAt(3000, 18 * 304.8 + 10);
    await clickAt(5500, 18 * 304.8 + 10);
    await press('Escape');

    // An underlay, scaled from the one length that is known.
    await floor.focus();
    await press('i');
    await act(
      page.getByLabel('File').setInputFiles({ name: 'scan.png', mimeType: 'image/png', buffer: scan }),
    );
    await page.getByText('Its scale is a guess').waitFor();
    const spots = await scanSpots(page);
    await act(page.mouse.click(spots.left, spots.below));
    await act(page.mouse.click(spots.right, spots.below));
    await act(page.keyboard.type(`24' 6"`));
    await press('Enter');
    await page.getByText('“scan” is to scale').waitFor();

    // A note and a photo.
    await floor.focus();
    await press('n');
    await act(page.getByLabel('Name', { exact: true }).fill('Fridge stays on'), page.keyboard.press('Enter'));
    await floor.focus();
    await press('j');
    const jpeg = await photoOf(page);
    expect(jpeg.includes(PLACE)).toBe(true);
    await act(
      page
        .getByLabel('Photos', { exact: true })
        .setInputFiles({ name: 'panel.jpg', mimeType: 'image/jpeg', buffer: jpeg }),
    );
    await page.getByText('Pinned.').waitFor();
    await figuresSettled(page);
    await shot(page, 'scout-3-room');
    expect(actions).toBeLessThan(60);

    const { text, bytes } = await savedPlan(page);
    // With pictures a plan is a zip of records and parts.
    expect(bytes.subarray(0, 2).toString('latin1')).toBe('PK');
    expect(bytes.includes(PLACE)).toBe(false);
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
    expect(outlets.every((o) => typeof o.wallId === 'string')).toBe(true);
    expect(of(text, 'mark')[0]?.name).toBe('Fridge stays on');
    expect(of(text, 'photo')[0]).toMatchObject({ label: 'PH1', caption: 'panel' });
    expect(of(text, 'blob')).toHaveLength(2);
    const [underlay] = of(text, 'underlay');
    expect(underlay).toMatchObject({ scaled: true, name: 'scan' });
    // 980 px are 24' 6": 7.62 mm to the pixel, as near as a click on the screen is.
    expect(Math.abs(Number(underlay?.mmPerUnit) - (24.5 * 304.8) / 980)).toBeLessThan(0.08);

    await page.getByText('saved · works offline').waitFor();
    await page.reload();
    await figuresSettled(page);
    expect((await savedPlan(page)).text).toBe(text);
    expect(trouble).toEqual([]);
    await context.close();
  });
});
