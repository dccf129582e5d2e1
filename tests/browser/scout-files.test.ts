import { jsPDF } from 'jspdf';
import type { Page } from 'playwright';
import { beforeEach, describe, expect, test } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.ts';
import { onPage, openStart, recordsIn, savedPlan } from '../support/app-story.ts';
import { watchPage } from '../support/browser.ts';
import { dxfOf, insUnits, lineGroups } from '../support/dxf-text.ts';
import { pngOf } from '../support/pictures.ts';

const app = appInBrowser();
let page: Page;
let trouble: readonly string[];
beforeEach(async () => {
  await page?.context().close();
  const context = await app.browser.newContext({
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
  });
  page = await context.newPage();
  trouble = watchPage(page);
  await openStart(page, app.url);
  await page.getByLabel('Name').fill('Scout');
  await page.getByRole('button', { name: 'Start plan' }).click();
  await floor().focus();
});

const floor = () => page.getByRole('application', { name: 'Floor drawing' });

interface Given {
  readonly name: string;
  readonly buffer: Buffer;
}
const give = async ({ name, buffer }: Given): Promise<void> => {
  await floor().focus();
  await page.keyboard.press('i');
  await page.getByLabel('File').setInputFiles({ name, mimeType: '', buffer });
};
const underlays = async () => recordsIn((await savedPlan(page)).text).filter((r) => r.type === 'underlay');

const pdfOf = (pages: number, password?: string): Buffer => {
  const doc = new jsPDF({
    unit: 'mm',
    format: [200, 100],
    orientation: 'landscape',
    ...(password ? { encryption: { userPassword: password, ownerPassword: 'owner' } } : {}),
  });
  for (let i = 1; i <= pages; i++) {
    if (i > 1) doc.addPage([200, 100], 'landscape');
    doc.rect(20, 20, 160, 60);
    doc.text(`Storey ${i}`, 30, 40);
  }
  return Buffer.from(doc.output('arraybuffer'));
};

/** Bad files: each is told in words, and the plan stays as it was. */
const BAD: readonly (readonly [string, Given, RegExp])[] = [
  [
    'a corrupt picture',
    { name: 'scan.png', buffer: Buffer.concat([pngOf(400, 300).subarray(0, 60), Buffer.alloc(400, 7)]) },
    /scan\.png is damaged: it says it has 400 × 300 pixels/,
  ],
  [
    'a picture of 300 megapixels',
    { name: 'wall.png', buffer: pngOf(4, 4, undefined, { widthPx: 20_000, heightPx: 15_000 }) },
    /wall\.png is too large to open \(20000 × 15000 pixels, 300 megapixels/,
  ],
  [
    'something that is no picture',
    { name: 'list.png', buffer: Buffer.from('bread, milk') },
    /list\.png is not a picture that can be read/,
  ],
  [
    'a PDF with a password',
    { name: 'plan.pdf', buffer: pdfOf(1, 'secret') },
    /plan\.pdf is protected by a password/,
  ],
  [
    'a PDF that is none',
    { name: 'plan.pdf', buffer: Buffer.from('bread, milk') },
    /plan\.pdf is no PDF, or it is damaged/,
  ],
  [
    'a DXF that is none',
    { name: 'barn.dxf', buffer: Buffer.from('bread, milk\n1\n') },
    /barn\.dxf is no DXF drawing/,
  ],
];

describe('files laid under a floor', () => {
  test('bad ones are told in words and change nothing', async () => {
    const before = (await savedPlan(page)).text;
    for (const [what, file, words] of BAD) {
      await give(file);
      const told = await page.getByRole('alert').first().textContent();
      expect(told, what).toMatch(words);
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
    }
    expect((await savedPlan(page)).text).toBe(before);
    expect(await page.getByRole('button', { name: /^Undo/ }).isEnabled()).toBe(false);
    expect(trouble).toEqual([]);
  });

  test('a wall of no length and a room that crosses itself are told, and what was drawn stays', async () => {
    const wall = async (arrow: string, length: string): Promise<void> => {
      await page.keyboard.press(arrow);
      await page.keyboard.type(length);
      await page.keyboard.press('Enter');
    };
    await page.keyboard.press('w');
    await page.keyboard.press('Enter');
    await wall('ArrowRight', '0');
    await page.getByText('A wall of no length is no wall').first().waitFor();
    await page.keyboard.press('Escape');
    await wall('ArrowRight', `12'`);
    await wall('ArrowDown', `9'`);
    await wall('ArrowLeft', `6'`);
    await wall('ArrowUp', `15'`);
    await page.getByText('would cross one of the same run').first().waitFor();
    const walls = recordsIn((await savedPlan(page)).text).filter((r) => r.type === 'wall');
    expect(walls).toHaveLength(3);
    expect(trouble).toEqual([]);
  });

  test('a large picture is made smaller, and that is told', async () => {
    await give({ name: 'large.png', buffer: pngOf(6000, 300) });
    await page.getByText('large.png was made smaller: 6000 × 300 to 4096 × 205 pixels.').waitFor();
    expect(await underlays()).toMatchObject([{ widthUnits: 4096, heightUnits: 205, scaled: false }]);
  });

  test('one page of a PDF is chosen, and drawn without a network or scripts', async () => {
    await give({ name: 'storeys.pdf', buffer: pdfOf(3) });
    await page.getByLabel('Page, 1 to 3').fill('4');
    await page.keyboard.press('Enter');
    expect(await page.getByRole('alert').first().textContent()).toMatch(/storeys\.pdf has pages 1 to 3/);
    await page.getByLabel('Page, 1 to 3').fill('2');
    await page.keyboard.press('Enter');
    await page.getByText('Its scale is a guess').waitFor();
    const [u] = await underlays();
    expect(u).toMatchObject({ name: 'storeys, page 2', what: 'image' });
    expect(Number(u?.widthUnits) / Number(u?.heightUnits)).toBeCloseTo(2, 2);
    expect(trouble).toEqual([]);
  });

  test('an SVG is drawn as it is; what is in it does not run', async () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 200"><script>window.ran = 1</script><rect x="10" y="10" width="380" height="180" onload="window.ran = 1"/></svg>`;
    await give({ name: 'barn.svg', buffer: Buffer.from(svg) });
    await page.getByText('Its scale is a guess').waitFor();
    expect(await page.evaluate(() => 'ran' in window)).toBe(false);
    expect(await underlays()).toMatchObject([{ widthUnits: 3000, heightUnits: 1500 }]);
  });

  test('a DXF without units asks for them; with them it lies to scale and locked', async () => {
    const lines = lineGroups(0, 0, 288, 0) + lineGroups(0, 0, 0, 216);
    await give({ name: 'room.dxf', buffer: Buffer.from(dxfOf(lines)) });
    const unit = page.getByLabel('Unit of the drawing');
    await unit.waitFor();
    // 288 is a room of 24 feet in inches.
    expect(await unit.inputValue()).toBe('in');
    await page.getByRole('button', { name: 'Lay it under the floor' }).click();
    await page.getByText('Read in inches, as chosen').waitFor();
    expect(await underlays()).toMatchObject([{ what: 'lines', mmPerUnit: 25.4, scaled: true, locked: true }]);
    // Walls are drawn along its corners: they snap to the ends of its lines.
    await page.keyboard.press('w');
    const [u] = await underlays();
    const at = u?.at as { xMm: number; yMm: number };
    const near = await onPage(page, at.xMm + 60, at.yMm + 216 * 25.4 - 50);
    await page.mouse.move(near.x, near.y);
    await page.mouse.click(near.x, near.y);
    await page.keyboard.press('ArrowRight');
    await page.keyboard.type(`10'`);
    await page.keyboard.press('Enter');
    const [w] = recordsIn((await savedPlan(page)).text).filter((r) => r.type === 'wall');
    const from = w?.from as { xMm: number; yMm: number };
    expect(from.xMm).toBeCloseTo(at.xMm, 3);
  });

  test('a DXF of 200,000 lines is laid under the floor, and the view still moves', async () => {
    const out: string[] = [];
    for (let i = 0; i < 200_000; i++) {
      const [x, y] = [(i % 500) * 60, Math.floor(i / 500) * 60];
      out.push(lineGroups(x, y, x + 40, y + (i % 11) * 4, `L${i % 5}`));
    }
    await give({ name: 'town.dxf', buffer: Buffer.from(dxfOf(out.join(''), { header: insUnits(4) })) });
    await page.getByText('to scale and locked').waitFor({ timeout: 60_000 });
    await page.keyboard.press('Equal');
    await page.keyboard.press('Equal');
    await page.getByText('saved · works offline').waitFor({ timeout: 60_000 });
    expect(await underlays()).toMatchObject([{ what: 'lines', mmPerUnit: 1 }]);
    expect(trouble).toEqual([]);
  });
});

describe('a plan file with pictures', () => {
  test('is saved as a zip, and opens again by choosing it and by dropping it on the start page', async () => {
    await give({ name: 'scan.png', buffer: pngOf(120, 90) });
    await page.getByText('Its scale is a guess').waitFor();
    const saved = await savedPlan(page);
    const back = async (): Promise<void> => {
      await page.getByRole('application', { name: 'Floor drawing' }).waitFor();
      expect((await savedPlan(page)).text).toBe(saved.text);
    };
    const leave = async (): Promise<void> => {
      await page.getByTitle('Plan menu').click();
      await page.getByRole('menuitem', { name: 'Start page' }).click();
      await page.getByRole('heading', { name: 'Lampwright' }).waitFor();
    };
    await leave();
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open plan file…' }).click();
    await (await chooser).setFiles({
      name: 'scout.plan.zip',
      mimeType: 'application/zip',
      buffer: saved.bytes,
    });
    await back();
    await leave();
    const transfer = await page.evaluateHandle((base64) => {
      const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], 'scout.plan.zip', { type: 'application/zip' }));
      return data;
    }, saved.bytes.toString('base64'));
    await page.dispatchEvent('main.start', 'drop', { dataTransfer: transfer });
    await back();
    expect(trouble).toEqual([]);
  });
});
