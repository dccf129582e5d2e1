import { describe, expect, it } from 'vitest';
import type { Page } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addFloorPack, setPackFrom } from '../../../src/plan/edits/floor-packs.ts';
import { type Plan, recordOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { daySummary } from '../../../src/report/day.ts';
import { dayEvents } from '../../../src/report/day-events.ts';
import { batteryRig } from '../../support/battery-plan.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { struckTexts } from '../../support/page-strokes.ts';
import { textsOf, touchingTexts } from '../../support/page-texts.ts';

const pagesOf = (plan: Plan, sheet: string): readonly Page[] =>
  paperSet(plan, assess(plan, { revision: 0 }), {
    revision: 'A',
    date: '2026-03-09',
    programVersion: '0',
    sheets: [sheet],
  }).pages;

const words = (pages: readonly Page[]): string =>
  pages.flatMap((p) => textsOf(p).map((t) => t.text)).join(' | ');

/** Three units on one block of three outlets that is changed once, and one on a pack of its own. */
const shared = (): Plan => {
  const r = batteryRig();
  for (const id of ['1', '2', '3', '4']) r.unit(id, { kindId: r.brick.id, count: 1, joined: 'parallel' });
  r.block(480, 780);
  const port = (id: string) => ({ id, connector: 'xlr-3' as const, voltsV: 14.4, maxA: 20 });
  const block = r.pack('block', {
    dcOut: [port('a'), port('b'), port('c')],
    energyWh: 620,
    capacityAh: 43,
    continuousA: 30,
    peakA: 40,
  });
  r.stock(block.id, 2);
  const plan = r.b.plan();
  const made = addFloorPack(plan, block, 'floor', { xMm: 0, yMm: 0 }, (p) => `${p}-1`);
  const placed = applyChanges(plan, made.changes);
  return applyChanges(placed, setPackFrom(placed, ['1', '2', '3'], { packId: made.pack.id }));
};

describe('the papers of the day', () => {
  it('have a lane for a pack on the floor, its leads and outlets, and its change once for all its units', () => {
    const plan = shared();
    const day = words(pagesOf(plan, 'day'));
    expect(day).toMatch(/\| P1 \|/);
    const packs = words(pagesOf(plan, 'packs'));
    expect(packs).toContain('Packs on the floor, day 1');
    expect(packs).toContain('no outlet left of 3');
    expect(packs).toContain('P1 (1, 2, 3)');
    const changes = dayEvents(daySummary(plan, 1)).filter((e) => e.label.startsWith('P1'));
    expect(changes.length).toBeGreaterThan(0);
    expect(packs.split('P1 (1, 2, 3)').length - 1).toBe(changes.length);
  });

  it('tell sun, moon and twilight, the hours circuits are loaded, and what each setup takes', () => {
    const study = words(pagesOf(demoPlan('study'), 'day'));
    expect(study).toContain('sunset 17:36');
    expect(study).toContain('moonset 13:55');
    expect(study).toContain('Hours the circuits are loaded on day 1');
    const street = words(pagesOf(demoPlan('street'), 'day'));
    for (const text of ['moonrise 18:45', 'sunset 20:09', 'last light 20:41']) expect(street).toContain(text);
    const plan = demoPlan('study');
    // The charger of 114 W is on in every setup.
    const sums = words(pagesOf(plan, 'setups'));
    expect(sums).toMatch(/11 on · 2\.\d+ kW \| 13 on · 2\.\d+ kW \| 9 on · 1\.[01]\d* kW/);
  });

  it('leave out watts that the line of an emptying power station would strike through', () => {
    const street = demoPlan('street');
    const strong = recordOf(street, 'fixture', 'unit-49')?.kindId;
    const weak = recordOf(street, 'fixture', 'unit-51');
    if (!strong || !weak) throw new Error('the street has lost its units');
    const plan = applyChanges(street, {
      added: [],
      updated: [{ from: weak, to: { ...weak, kindId: strong } }],
      removed: [],
    });
    expect(daySummary(plan, 1).stationLoads[0]?.darkMin).toBeGreaterThan(60);
    const pages = pagesOf(plan, 'day');
    expect(words(pages)).toContain('PS1 is empty at');
    for (const page of pages) expect(struckTexts(page)).toEqual([]);
  });

  it('write no text over another or under a line', () => {
    for (const plan of [shared(), demoPlan('study'), demoPlan('street')])
      for (const sheet of ['day', 'packs', 'setups'])
        for (const page of pagesOf(plan, sheet)) {
          expect(touchingTexts(page)).toEqual([]);
          expect(struckTexts(page)).toEqual([]);
        }
  });
});
