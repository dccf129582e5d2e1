import { describe, expect, it } from 'vitest';
import { batteryFindings } from '../../../src/engines/battery/index.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { recordSchemas } from '../../../src/plan/records/index.ts';
import { explainOrWhy } from '../../../src/report/explain.ts';
import { packCurrentRows } from '../../../src/report/pack-currents.ts';
import type { Working } from '../../../src/report/types.ts';
import { batteryRig } from '../../support/battery-plan.ts';

const packIn = {
  plates: ['v-plate' as const],
  packs: 2,
  joined: 'parallel' as const,
  minV: 11,
  maxV: 17,
  hotSwap: false,
};

const working = (plan: Plan, key: string): Working => {
  const w = explainOrWhy(plan, key);
  if (!w.ok) throw new Error(w.error.what);
  return w.value;
};

/** One unit of 150 W whose inlet for packs takes three times that for a moment. */
const one = (count: number): Plan => {
  const r = batteryRig();
  r.b.fixtureKind('big', { wattsW: 150 }, { packIn: { ...packIn, inrushMultiple: 3 } });
  r.unit('1', { kindId: 'brick', count, joined: 'parallel' }, 'big');
  return r.b.plan();
};

describe('the working of what a pack gives', () => {
  it('battery-current: 150 W ÷ 12 V = 12.5 A of a pack for 10 A, step by step, and the finding leads there', () => {
    const plan = one(1);
    const finding = batteryFindings(plan).find((f) => f.rule === 'battery-weak');
    expect(finding?.figureKey).toBe('packFullA@1');
    const w = working(plan, 'packFullA@1');
    expect(w.steps.join('\n')).toContain('150 W ÷ 1 ÷ 12.0 V = 12.5 A from each pack');
    expect(w.steps.at(-1)).toBe('12.5 A ÷ 10.0 A = 125 % of what one gives for long');
    expect(w.result).toBe('12.5 A');
    expect(Math.round(finding?.figure ?? 0)).toBe(125);
    expect(packCurrentRows(plan, '1')[0]).toMatchObject({ text: '12.5 A of 10.0 A', over: true });
  });

  it('battery-inrush: three times 150 W for a moment on two packs is 18.8 A of 14 A', () => {
    const plan = one(2);
    const finding = batteryFindings(plan).find((f) => f.rule === 'battery-inrush');
    expect(finding?.figureKey).toBe('packInrushA@1');
    const w = working(plan, 'packInrushA@1');
    expect(w.steps.join('\n')).toContain('450 W ÷ 2 ÷ 12.0 V = 18.8 A from each pack');
    expect(w.result).toBe('18.8 A');
    expect(packCurrentRows(plan, '1').map((r) => r.over)).toEqual([false, true]);
  });

  it('battery-shared: a pack on the floor is explained over the sum of its units, and a unit on it sends there', () => {
    const r = batteryRig();
    r.b.put(
      recordSchemas.pack.parse({
        id: 'P1',
        type: 'pack',
        floorId: 'floor',
        kindId: 'brick',
        at: { xMm: 0, yMm: 0 },
        label: 'P1',
      }),
    );
    for (const id of ['1', '2', '3'])
      r.b.fixture('lamp', { id, unit: id, onPacks: true, packFrom: { packId: 'P1' } });
    const plan = r.b.plan();
    const finding = batteryFindings(plan).find((f) => f.rule === 'battery-shared-weak');
    expect(finding?.figureKey).toBe('packFullA@P1');
    expect(working(plan, 'packFullA@P1').steps.join('\n')).toContain('180 W ÷ 1 ÷ 12.0 V = 15.0 A');
    expect(explainOrWhy(plan, 'packInrushA@P1').ok).toBe(false);
    expect(explainOrWhy(plan, 'packFullA@1').ok).toBe(false);
    expect(packCurrentRows(plan, 'gone')).toEqual([]);
  });
});
