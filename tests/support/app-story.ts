import { readFileSync } from 'node:fs';
import type { Download, Page } from 'playwright';
import { expect } from 'vitest';
import { readPlanBytes } from '../../src/plan/container.ts';
import { serialisePlan } from '../../src/plan/file.ts';
import type { Plan } from '../../src/plan/plan.ts';

/** Steps that the stories share: what a person does, by mouse and keyboard, on the real page. */

/** Opens the start page as a browser without file dialogs, so that files come and go as uploads and downloads. */
export const openStart = async (page: Page, url: string): Promise<void> => {
  await page.addInitScript(() => {
    Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined });
  });
  await page.goto(url);
  await page.getByRole('heading', { name: 'Lampwright' }).waitFor();
};

export const openDemo = async (page: Page, title: string): Promise<void> => {
  await page.getByRole('button', { name: title }).first().click();
  await page.getByRole('application', { name: 'Floor drawing' }).waitFor();
  await figuresSettled(page);
};

/** Waits until the figures belong to the plan as it is now. */
export const figuresSettled = async (page: Page): Promise<void> => {
  await page.locator('.rail-findings').getByText('showing').waitFor();
  await page.waitForFunction(() => document.querySelector('.stale') === null);
};

const textOf = async (download: Download): Promise<string> => readFileSync(await download.path(), 'utf8');

/** The plan as the person would save it. */
export const planText = async (page: Page): Promise<string> => {
  const waiting = page.waitForEvent('download');
  await page.getByTitle('Plan menu').click();
  await page.getByRole('menuitem', { name: 'Save plan file…' }).click();
  return textOf(await waiting);
};

/** The plan as the person would save it, plain or with parts: its bytes, and its text with the parts in it. */
export const savedPlan = async (
  page: Page,
): Promise<{ readonly bytes: Buffer; readonly text: string; readonly plan: Plan }> => {
  const waiting = page.waitForEvent('download');
  await page.getByTitle('Plan menu').click();
  await page.getByRole('menuitem', { name: 'Save plan file…' }).click();
  const bytes = readFileSync(await (await waiting).path());
  const read = readPlanBytes(bytes, 'the saved plan');
  if (!read.ok) throw new Error(read.error.what);
  expect(read.value.notices).toEqual([]);
  return { bytes, text: serialisePlan(read.value.plan), plan: read.value.plan };
};

interface FileRecord {
  readonly id: string;
  readonly type: string;
  readonly [key: string]: unknown;
}

export const recordsIn = (text: string): readonly FileRecord[] =>
  (JSON.parse(text) as { records: readonly FileRecord[] }).records;

/** Where a spot of the floor is on the page, from the view the editor remembers. */
export const onPage = async (page: Page, xMm: number, yMm: number): Promise<{ x: number; y: number }> => {
  await page.waitForTimeout(700);
  const box = await page.getByRole('application', { name: 'Floor drawing' }).boundingBox();
  const view = await page.evaluate(() => {
    const id = location.hash.split('/').at(-1) ?? '';
    return JSON.parse(localStorage.getItem(`lampwright.view.${id}`) ?? 'null') as {
      camera: { center: { xMm: number; yMm: number }; pxPerMm: number };
    } | null;
  });
  if (!box || !view) throw new Error('the floor is not on the page');
  const { center, pxPerMm } = view.camera;
  return {
    x: box.x + box.width / 2 + (xMm - center.xMm) * pxPerMm,
    y: box.y + box.height / 2 + (yMm - center.yMm) * pxPerMm,
  };
};

export const dragTo = async (
  page: Page,
  from: { x: number; y: number },
  to: { x: number; y: number },
): Promise<void> => {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, (from.y + to.y) / 2, { steps: 6 });
  await page.mouse.move(to.x, to.y, { steps: 6 });
  await page.mouse.up();
};

/** Undo steps on offer, by asking for them one after the other. */
export const undoAll = async (page: Page): Promise<number> => {
  const undo = page.getByRole('button', { name: /^Undo/ });
  let steps = 0;
  while (await undo.isEnabled()) {
    await page.getByRole('application', { name: 'Floor drawing' }).focus();
    await page.keyboard.press('Control+z');
    steps++;
    expect(steps).toBeLessThan(200);
  }
  return steps;
};

export const redoTimes = async (page: Page, steps: number): Promise<void> => {
  await page.getByRole('application', { name: 'Floor drawing' }).focus();
  for (let i = 0; i < steps; i++) await page.keyboard.press('Control+Shift+z');
};
