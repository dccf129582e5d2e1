import { expect } from 'vitest';
import { computeRigging, windLine } from '../../src/engines/rigging/index.ts';
import { kindOf, type Plan, recordsOf } from '../../src/plan/plan.ts';

const near = (a: number, b: number, what: string): void =>
  expect(Math.abs(a - b), what).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(a), Math.abs(b)));

/**
 * Laws that hold for whatever the stands engine computes: loads on stands sum to what stands on them, moments are not
 * negative and make the factor, the whole mass of a base is in its masses, force grows with the square of the speed.
 */
export const checkRiggingLaws = (plan: Plan): void => {
  const r = computeRigging(plan);
  const loads = [...r.stands.values()].reduce((sum, u) => sum + u.loadKg, 0);
  const lamps = recordsOf(plan, 'fixture')
    .filter((f) => f.support.on === 'stand' && r.stands.has(f.support.standId))
    .reduce(
      (sum, f) =>
        [f.kindId, ...(f.accessories ?? [])].reduce((kg, id) => kg + (kindOf(plan, id)?.massKg ?? 0), sum),
      0,
    );
  const frames = [...r.sails.values()]
    .filter((s) => s.grip.supports.some((id) => r.stands.has(id)))
    .reduce((sum, s) => sum + s.massKg, 0);
  near(loads, lamps + frames, 'loads on stands');
  for (const t of new Set(r.tipping.values())) {
    const { restoringNm, overturningNm, factor } = t.moments;
    expect(restoringNm).toBeGreaterThanOrEqual(0);
    expect(overturningNm).toBeGreaterThanOrEqual(0);
    if (overturningNm > 0) near(factor, restoringNm / overturningNm, 'factor');
    else expect(factor).toBe(Infinity);
    const all = t.base.uses.reduce((sum, u) => sum + u.kind.massKg + u.loadKg + u.bagsKg, 0);
    near(
      t.masses.reduce((sum, m) => sum + m.massKg, 0),
      all,
      'masses of a base',
    );
    // Net moment about the edge, written the other way round: all weight at the radius less all weight at its distance.
    const forward = t.masses.reduce((nm, m) => nm + 9.81 * m.massKg * (m.radiusMm - m.outMm), 0) / 1000;
    const back = t.masses.reduce((nm, m) => nm + 9.81 * m.massKg * (m.radiusMm + m.outMm), 0) / 1000;
    const pushes = t.pushes.reduce(
      (nm, p) => nm + (p.forceN * p.heightMm + (p.upN ?? 0) * (p.radiusMm ?? 0)) / 1000,
      0,
    );
    near(restoringNm - overturningNm, Math.min(forward, back) - pushes, 'net moment');
    if (t.topMm > 0) near(t.pushN * t.topMm, Math.min(forward, back) * 1000, 'push at the top');
  }
  for (const s of r.sails.values())
    near(windLine(r, s, 8).forceN, 4 * windLine(r, s, 4).forceN, 'force by the square of the speed');
};
