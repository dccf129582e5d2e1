import { describe, expect, test } from 'vitest';
import { figureKey, type Quantity } from '../../../src/derive/types.ts';
import { assess } from '../../../src/report/assess.ts';
import { explainOrWhy } from '../../../src/report/explain.ts';
import { supplySummary } from '../../../src/report/summary.ts';
import { demoPlan } from '../../support/demo-plan.ts';

/** The keys under which the meters, the circuits and the diagram show a figure. */
const shownKeys = (plan: ReturnType<typeof demoPlan>): readonly string[] => {
  const a = assess(plan, { revision: 0 });
  const s = supplySummary(plan, a);
  const key = (q: Quantity, at: string): string => figureKey(q, at, s.setupId);
  return s.sources.flatMap((x) => [
    x.watts.figureKey,
    x.voltAmps.figureKey,
    ...[...x.legs, x.neutral].filter((m) => Number.isFinite(m.worstA)).map((m) => m.figureKey),
    ...x.circuits.flatMap((c) => [
      ...(Number.isFinite(c.amps.worstA)
        ? [c.amps.figureKey, key('loadW', c.key), key('loadVa', c.key)]
        : []),
      ...(Number.isFinite(c.amps.worstPct) ? [key('usePct', c.key)] : []),
      ...c.loads.flatMap((l) => [
        l.figureKey,
        key('loadW', l.key),
        ...(Number.isFinite(l.voltsV) ? [key('voltsV', l.key)] : []),
        ...(Number.isFinite(l.dropPct) ? [key('dropPct', l.key)] : []),
      ]),
    ]),
  ]);
};

describe('every figure of the meters, circuits and diagram', () => {
  test.each(['street', 'study', 'stage'] as const)('opens its working in “%s”', (name) => {
    const plan = demoPlan(name);
    const keys = shownKeys(plan);
    expect(keys.length).toBeGreaterThan(20);
    const without = keys.flatMap((k) => {
      const r = explainOrWhy(plan, k);
      return r.ok ? [] : [`${k}: ${r.error.what}`];
    });
    expect(without).toEqual([]);
  });

  test('what a load sees where it loses most is the worst over the setups', () => {
    const plan = demoPlan('street');
    const a = assess(plan, { revision: 0 });
    const loads = supplySummary(plan, a).sources.flatMap((s) => s.circuits.flatMap((c) => c.loads));
    for (const l of loads) {
      const drops = a.setups.map((_, i) => a.figures.get(l.key, 'dropPct', i)).filter(Number.isFinite);
      if (drops.length > 0) expect(l.least.dropPct).toBe(Math.max(...drops));
    }
    expect(loads.some((l) => l.least.dropPct > l.dropPct)).toBe(true);
  });
});
