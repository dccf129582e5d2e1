import { describe, expect, it } from 'vitest';
import { batteryFindings, leadDrop, sharedPacks } from '../../../src/engines/battery/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { removeRecords } from '../../../src/plan/edits/arrange.ts';
import { setPackFrom } from '../../../src/plan/edits/floor-packs.ts';
import type { PackKind } from '../../../src/plan/kinds/kinds.ts';
import { type Plan, recordOf } from '../../../src/plan/plan.ts';
import type { FloorPack, PackFrom } from '../../../src/plan/records/index.ts';
import { recordSchemas } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { daySummary } from '../../../src/report/day.ts';
import { explainOrWhy } from '../../../src/report/explain.ts';
import { findingText } from '../../../src/report/text.ts';
import { batteryRig } from '../../support/battery-plan.ts';

const rules = (plan: Plan): string[] => batteryFindings(plan).map((f) => `${f.severity} ${f.rule}`);

/** Units of 60 W by leads on one block of 28.8 V, 400 Wh, with three outlets. */
const blockRig = (units: number, kind: Partial<PackKind> = {}, place: Partial<FloorPack> = {}) => {
  const r = batteryRig({ batteries: { sohPct: 100, cellC: 25, swapAtPct: 0 } });
  const port = (id: string, maxA = 15) => ({ id, connector: 'xlr-3' as const, voltsV: 28.8, maxA });
  r.pack('block', {
    plate: 'block-28',
    cells: 8,
    voltsV: 28.8,
    fullV: 33.6,
    emptyV: 24,
    capacityAh: 400 / 28.8,
    energyWh: 400,
    continuousA: 15,
    peakA: 25,
    dcOut: [port('a'), port('b'), port('c')],
    ...kind,
  });
  r.b.fixtureKind(
    'dc-lamp',
    { wattsW: 60 },
    {
      packIn: {
        plates: ['block-28'],
        packs: 1,
        joined: 'parallel',
        minV: 20,
        maxV: 36,
        hotSwap: false,
        inrushMultiple: 1.5,
      },
    },
  );
  r.b.put(
    recordSchemas.pack.parse({
      id: 'p1',
      type: 'pack',
      floorId: 'floor',
      kindId: 'block',
      at: { xMm: 0, yMm: 0 },
      label: 'P1',
      ...place,
    }),
  );
  const unit = (id: string, from: Partial<PackFrom> = {}, kindId = 'dc-lamp') =>
    r.b.fixture(kindId, {
      id,
      unit: id,
      onPacks: true,
      packFrom: { packId: 'p1', lead: { lengthMm: 5000, conductor: 'mm2:2.5' }, ...from },
    });
  for (let i = 1; i <= units; i++) unit(String(i));
  return { ...r, unit };
};

describe('a pack on the floor that feeds several units', () => {
  it('battery-shared: its runtime is that of all its units together, and the working says so', () => {
    const r = blockRig(3);
    r.block(480, 600);
    const plan = r.b.plan();
    const lane = daySummary(plan, 1).sharedPacks[0];
    // 400 Wh × 0.9, about 97 % at 6.3 A of a pack rated at 2.8 A over five hours, ÷ (3 × 60 W and 0.8 W in the leads).
    const minutes = lane?.runtimes[0]?.minutes.plan ?? 0;
    expect(minutes).toBeGreaterThan((60 * 360 * 0.94) / 182);
    expect(minutes).toBeLessThan((60 * 360 * 0.97) / 180);
    const cells = daySummary(plan, 1).lanes.map((l) => l.runtimes[0]?.minutes.plan ?? 0);
    for (const m of cells) expect(m).toBeCloseTo(minutes, 6);
    const w = explainOrWhy(plan, `runtimeMin@2@${r.setup.id}`);
    if (!w.ok) throw new Error(w.error.what);
    expect(w.value.steps.join('\n')).toMatch(/with the other units on P1, 120\.\d W: 18\d\.\d W in all/);
  });

  it('battery-shared: it is changed for all its units at once; who burns then is dark for the change, who does not is not', () => {
    const r = blockRig(2);
    r.b.level(r.setup.id, '2', 100);
    const later = r.b.setup('Later', 2);
    r.b.level(later.id, '2', 0);
    r.block(480, 600);
    r.block(600, 1000, { setupId: later.id });
    r.stock('block', 4);
    const s = daySummary(r.b.plan(), 1);
    const lane = s.sharedPacks[0];
    const changes = lane?.swaps.filter((x) => !x.first) ?? [];
    expect(changes.length).toBeGreaterThan(0);
    const of = (id: string) => s.lanes.find((l) => l.fixtureId === id);
    expect(of('1')?.swaps.map((x) => x.atMin)).toEqual(changes.map((x) => x.atMin));
    expect(of('1')?.swaps.every((x) => x.darkMin === 2)).toBe(true);
    expect(of('2')?.swaps).toEqual([]);
    expect(s.pools[0]?.swaps).toBe(changes.length);
  });

  it('battery-shared: without a charged one all its units are dark from the same minute', () => {
    const r = blockRig(2);
    r.block(480, 1200);
    r.stock('block', 1);
    const plan = r.b.plan();
    expect(rules(plan)).toEqual(['warn battery-dark']);
    const dark = daySummary(plan, 1).lanes.map((l) => l.spans.find((x) => x.state === 'dark')?.startMin);
    expect(dark[0]).toBeDefined();
    expect(dark[0]).toBe(dark[1]);
    const f = assess(plan, { revision: 0 }).findings.find((x) => x.rule === 'battery-dark');
    expect(f && findingText(plan, f).head).toMatch(/^With 1 pack P1 \(units 1, 2\) goes dark at /);
  });

  it('battery-current: its current limit is over the sum of its units', () => {
    // 3 × 60 W ÷ 24 V = 7.5 A, leads counted 7.6 A.
    expect(rules(blockRig(3, { continuousA: 8 }).b.plan())).toEqual([]);
    const warn = blockRig(3, { continuousA: 7 }).b.plan();
    expect(rules(warn)).toEqual(['warn battery-shared-weak']);
    const [f] = assess(warn, { revision: 0 }).findings;
    expect(f && findingText(warn, f).body).toMatch(/Unit 1 60 W \+ Unit 2 60 W \+ Unit 3 60 W = 181 W/);
    expect(rules(blockRig(3, { continuousA: 5, peakA: 7 }).b.plan())).toEqual(['stop battery-shared-weak']);
    // Two side by side share it.
    expect(rules(blockRig(3, { continuousA: 7 }, { count: 2 }).b.plan())).toEqual([]);
  });

  it('battery-inrush: the unit with the greatest inrush is switched on last', () => {
    // 181 W and half of 60 W more ÷ 24 V = 8.8 A.
    expect(rules(blockRig(3, { continuousA: 8, peakA: 9 }).b.plan())).toEqual([]);
    expect(rules(blockRig(3, { continuousA: 8, peakA: 8.5 }).b.plan())).toEqual([
      'warn battery-shared-inrush',
    ]);
  });

  it('battery-outlets: more leads than outlets, one outlet twice, and an outlet that carries less are told', () => {
    expect(rules(blockRig(4).b.plan())).toEqual(['warn battery-outlets']);
    expect(rules(blockRig(4, {}, { count: 2 }).b.plan())).toEqual([]);
    const twice = blockRig(1);
    twice.unit('1', { outletId: 'a' });
    twice.unit('2', { outletId: 'a' });
    twice.unit('3', { outletId: 'gone' });
    expect(rules(twice.b.plan())).toEqual(['warn battery-outlet-taken', 'warn battery-outlet-taken']);
    const thin = blockRig(1, {
      dcOut: [{ id: 'tap', connector: 'two-pin-tap', voltsV: 28.8, maxA: 2 }],
    });
    expect(rules(thin.b.plan())).toEqual(['warn battery-outlet-current']);
  });

  it('battery-lead: the drop is that of each lead; one that cannot start is a stop and draws nothing', () => {
    const r = blockRig(2);
    r.unit('2', { lead: { lengthMm: 40_000, conductor: 'mm2:0.5' } });
    const plan = r.b.plan();
    const drops = sharedPacks(plan)[0]?.units.map((u) => leadDrop(u)?.dropPct);
    // 60 W through 5 m of 2.5 mm² at 24 V: 2.5 A × 0.086 Ω.
    expect(drops?.[0]).toBeCloseTo((100 * 2.5 * 0.0861) / 24, 1);
    expect(rules(plan).filter((x) => x !== 'warn battery-lead')).toEqual(['stop battery-lead-start']);
  });

  it('battery-lead: a lead the plan does not give is as long as the way there and up, and marked as assumed', () => {
    const r = blockRig(1);
    r.b.fixture('dc-lamp', {
      id: '1',
      unit: '1',
      at: { xMm: 3000, yMm: 4000 },
      heightMm: 2000,
      onPacks: true,
      packFrom: { packId: 'p1' },
    });
    expect(sharedPacks(r.b.plan())[0]?.units[0]?.lead).toMatchObject({ lengthMm: 9000, assumed: true });
    // Where the unit stands farther off in another setup, the lead is long enough for that.
    const far = r.b.setup('Far', 2);
    r.b.put(
      recordSchemas.move.parse({
        id: `move:${far.id}:1`,
        type: 'move',
        setupId: far.id,
        recordId: '1',
        at: { xMm: 6000, yMm: 4000 },
        heightMm: 2000,
      }),
    );
    expect(sharedPacks(r.b.plan())[0]?.units[0]?.lead).toMatchObject({ lengthMm: 12000, assumed: true });
  });

  it('battery-no-pack: a pack that is gone, volts out of the window, a unit for mains only: each is told', () => {
    const gone = blockRig(0);
    gone.unit('1', { packId: 'p9' });
    expect(rules(gone.b.plan())).toEqual(['warn battery-no-pack']);
    const high = blockRig(1, {}, { count: 2, joined: 'series' });
    expect(rules(high.b.plan())).toEqual(['stop battery-volts-high']);
    const mains = blockRig(0);
    mains.b.fixtureKind('mains', { wattsW: 60 });
    mains.unit('1', {}, 'mains');
    expect(rules(mains.b.plan())).toEqual(['warn battery-mains-only']);
  });

  it('removing the pack lets its units go, and units can be put on another', () => {
    const plan = blockRig(2).b.plan();
    const after = applyChanges(plan, removeRecords(plan, new Set(['p1'])));
    expect(recordOf(after, 'fixture', '1')?.packFrom).toBeUndefined();
    const back = applyChanges(plan, setPackFrom(plan, ['1'], { packId: 'p2' }));
    expect(recordOf(back, 'fixture', '1')?.packFrom?.packId).toBe('p2');
  });
});
