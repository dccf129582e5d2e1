import { describe, expect, it } from 'vitest';
import { demoMakers } from '../../../demo-sets/make/all.ts';
import { gearBook } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { planRecord } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { moveRemedies } from '../../../src/report/move-remedies.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const over = (plan: Parameters<typeof assess>[0]) => {
  const a = assess(plan, { revision: 1 });
  return { a, found: a.findings.filter((f) => f.rule === 'power-breaker') };
};
let n = 0;
const newId = (prefix: string): string => `${prefix}-new-${++n}`;

/** A panel of three ways: two loads on the outlet of the first, one on W2 of the second, whose W4 is nearer than W3 of the third. */
const wall = (secondW: number) => {
  const b = new PlanBuilder();
  b.sourceKind('panel', { what: 'house-panel', system: '120' });
  b.cableKind('lead');
  const s = b.source('panel', {
    voltsV: 120,
    ways: ['1', '2', '3'].map((id) => ({ id, label: id, breakerA: 20, poles: 1, curve: 'na', legs: [0] })),
  });
  const at = (xMm: number) => ({ at: { xMm, yMm: 0 } });
  const outlets = [at(0), at(4000), at(9000), at(4500)].map((o, i) =>
    b.outlet(s.id, ['1', '2', '3', '2'][i] ?? '', { label: `W${i + 1}`, connector: 'stage-pin-20', ...o }),
  );
  const load = (wattsW: number, outlet: number, xMm: number) => {
    b.fixtureKind(`f${wattsW}-${xMm}`, { wattsW });
    const f = b.fixture(`f${wattsW}-${xMm}`, at(xMm));
    b.cable('lead', [outlets[outlet]?.id ?? '', 'out'], [f.id, 'in'], 7620);
    return f.id;
  };
  load(1500, 0, 0);
  load(600, 0, 1000);
  load(secondW, 1, 4000);
  return b;
};

describe('moving a load off an overloaded way', () => {
  it('offers the nearest wall outlets with room, and taking one clears the finding in one change', () => {
    const plan = wall(300).plan();
    const { a, found } = over(plan);
    const [f] = found;
    if (!f) throw new Error('the way is overloaded');
    expect(f.remedies).toEqual([]);
    const offered = moveRemedies(plan, a, f, gearBook('north-america'), newId);
    expect(offered.length).toBeGreaterThanOrEqual(2);
    expect(offered[0]?.label).toMatch(/^Move Unit \d+ to W4$/);
    for (const r of offered) {
      const after = applyChanges(plan, r.changes);
      expect(referenceProblems(after)).toEqual([]);
      expect(over(after).found, r.label).toEqual([]);
    }
  });

  it('passes by a way that has no room in one of the setups', () => {
    const plan = wall(1800).plan();
    const { a, found } = over(plan);
    const f = found.find((x) => x.params.label !== undefined);
    if (!f) throw new Error('the way is overloaded');
    const offered = moveRemedies(plan, a, f, gearBook('north-america'), newId).map((r) => r.label);
    expect(offered.length).toBeGreaterThan(0);
    expect(offered.filter((l) => l.endsWith('W4'))).toEqual([]);
  });

  it('finds something for every overloaded way of the demos, and no offer makes another', () => {
    let seen = 0;
    for (const make of Object.values(demoMakers)) {
      const plan = make();
      const { a, found } = over(plan);
      for (const f of found) {
        seen++;
        const offered = moveRemedies(plan, a, f, gearBook(planRecord(plan).practice), newId);
        expect([...f.remedies, ...offered].length, f.id).toBeGreaterThan(0);
        for (const r of offered)
          expect(over(applyChanges(plan, r.changes)).found.length).toBeLessThan(found.length);
      }
    }
    expect(seen).toBeGreaterThan(0);
  });
});
