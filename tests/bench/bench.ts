import { recordsOf } from '../../src/plan/plan.ts';
import { launchBrowser } from '../support/browser.ts';
import { benchBalance } from './balance.ts';
import { benchCanvas } from './canvas.ts';
import { benchEngines } from './engines.ts';
import { benchFirstLoad } from './first-load.ts';
import { benchFloor } from './floor.ts';
import { largePlan } from './large-plan.ts';
import { placedCount, planWithPlaced } from './large-plan-size.ts';
import { line, ROUNDS } from './measure.ts';
import { benchPacks } from './packs.ts';
import { benchPapers } from './papers.ts';
import { benchPatch } from './patch.ts';
import { benchRadio } from './radio.ts';

/** Runs all, or those named: engines, balance, packs, papers, patch, radio, load, canvas. */
export const bench = async (only: readonly string[]): Promise<void> => {
  const wanted = (name: string): boolean => only.length === 0 || only.includes(name);
  const plan = largePlan();
  console.log(
    `${recordsOf(plan, 'fixture').length} fixtures × ${recordsOf(plan, 'setup').length} setups, ${plan.records.size} records; medians of ${ROUNDS} interleaved rounds\n`,
  );
  if (wanted('engines')) benchEngines(plan);
  if (wanted('balance')) await benchBalance();
  if (wanted('floor')) {
    const full = planWithPlaced(2000);
    line('floor: things on it, walls and cables not counted', String(placedCount(full)));
    benchFloor(full);
  }
  if (wanted('packs')) benchPacks();
  if (wanted('papers')) benchPapers(plan);
  if (wanted('patch')) benchPatch();
  if (wanted('radio')) benchRadio();
  if (!wanted('load') && !wanted('canvas')) return;
  const browser = await launchBrowser();
  try {
    if (wanted('load')) await benchFirstLoad(browser);
    if (wanted('canvas')) await benchCanvas(browser);
  } finally {
    await browser.close();
  }
};
