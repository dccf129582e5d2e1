import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addFloorPack, changeFloorPack } from '../../../src/plan/edits/floor-packs.ts';
import { kindOf, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { daySummary } from '../../../src/report/day.ts';
import { floorPackRows, outletsLeft } from '../../../src/report/floor-packs.ts';
import { packAir } from '../../../src/report/pack-air.ts';
import { onStation } from '../../../src/report/station-spans.ts';
import { floorChoice, runOn, runsOn } from '../../../src/ui/day/run-on.ts';
import { packAsLane, unitStops } from '../../../src/ui/day/stops.ts';
import { batteryRig } from '../../support/battery-plan.ts';

const outlet = (id: string) => ({ id, connector: 'xlr-3' as const, voltsV: 14.4, maxA: 10 });

/** Three units and a block of three outlets on the floor, a day of two hours. */
const rig = () => {
  const r = batteryRig();
  for (const id of ['1', '2', '3']) r.unit(id, { kindId: r.brick.id, count: 1, joined: 'parallel' });
  r.block(480, 600);
  const block = r.pack('block', { dcOut: [outlet('a'), outlet('b'), outlet('c')], energyWh: 750 });
  const plan = r.b.plan();
  const made = addFloorPack(plan, block, 'floor', { xMm: 0, yMm: 0 }, (p) => `${p}-1`);
  return { plan: applyChanges(plan, made.changes), packId: made.pack.id, brickId: r.brick.id };
};

const put = (plan: ReturnType<typeof rig>['plan'], unit: string, choice: string) => {
  const f = recordOf(plan, 'fixture', unit);
  if (!f) throw new Error(`no unit ${unit}`);
  const packs = recordsOf(plan, 'kind').flatMap((k) => kindOf(plan, k.id, 'pack') ?? []);
  return applyChanges(plan, runOn(plan, f, choice, packs));
};

describe('packs on the floor as rows', () => {
  it('count what hangs on each and the outlets that remain, side by side or in a row', () => {
    const { plan, packId } = rig();
    expect(floorPackRows(plan)[0]?.left).toBe(3);
    let now = put(plan, '1', floorChoice(packId));
    now = put(now, '2', floorChoice(packId));
    const [row] = floorPackRows(now);
    expect(row?.fed.map((f) => f.id)).toEqual(['1', '2']);
    expect(row && outletsLeft(row)).toBe('1 outlet left');
    const two = applyChanges(now, changeFloorPack(now, packId, { count: 2 }));
    expect(floorPackRows(two)[0]?.left).toBe(4);
    const inRow = applyChanges(two, changeFloorPack(two, packId, { joined: 'series' }));
    expect(floorPackRows(inRow)[0]?.left).toBe(1);
    expect(outletsLeft({ left: -1 })).toBe('1 lead too many');
  });

  it('and packs of a unit’s own take one another’s place', () => {
    const { plan, packId, brickId } = rig();
    const shared = put(plan, '1', floorChoice(packId));
    expect(runsOn(recordOf(shared, 'fixture', '1') as never)).toBe(floorChoice(packId));
    const back = put(shared, '1', brickId);
    expect(runsOn(recordOf(back, 'fixture', '1') as never)).toBe(brickId);
    expect(recordOf(back, 'fixture', '1')?.packFrom).toBeUndefined();
  });

  it('are a lane whose stretches open the working of a unit they feed', () => {
    const { plan, packId } = rig();
    const now = put(put(plan, '1', floorChoice(packId)), '2', floorChoice(packId));
    const summary = daySummary(now, 1);
    const [pack] = summary.sharedPacks;
    if (!pack) throw new Error('no lane');
    const [stop] = unitStops(packAsLane(pack, summary.lanes));
    expect(stop?.key).toBe(summary.lanes.find((l) => l.sharedPackId === pack.id)?.runtimes[0]?.key);
    expect(stop?.lines[0]).toContain('all its units together');
  });
});

describe('air limits beside a unit', () => {
  it('are those of the pack it runs on, wherever it stands, with their source and date', () => {
    const { plan, packId } = rig();
    const own = recordOf(plan, 'fixture', '1');
    if (!own) throw new Error('no unit');
    expect(packAir(plan, own)?.text).toContain('to 100 Wh');
    const shared = recordOf(put(plan, '1', floorChoice(packId)), 'fixture', '1');
    expect(shared && packAir(put(plan, '1', floorChoice(packId)), shared)?.text).toContain('cargo only');
    expect(packAir(plan, own)?.source).toContain('March 2026');
  });
});

describe('a unit on a power station', () => {
  it('is cut where the station changes its slope, and dark where it is empty', () => {
    const span = { outW: 0, chargeW: 0 };
    const station = {
      spans: [
        { ...span, startMin: 480, endMin: 540, fromShare: 1, toShare: 0.5, state: 'gives' as const },
        { ...span, startMin: 540, endMin: 570, fromShare: 0.5, toShare: 0, state: 'gives' as const },
        { ...span, startMin: 570, endMin: 600, fromShare: 0, toShare: 0, state: 'empty' as const },
      ],
    } as never;
    const spans = onStation(
      {
        spans: [
          { startMin: 510, endMin: 570, state: 'burning', levelPct: 80, setupId: 's' },
          { startMin: 570, endMin: 600, state: 'dark', levelPct: 80, setupId: 's' },
        ],
      },
      station,
    );
    expect(spans.map((s) => [s.startMin, s.endMin, s.fromShare, s.state])).toEqual([
      [510, 540, 0.75, 'burning'],
      [540, 570, 0.5, 'burning'],
      [570, 600, 0, 'dark'],
    ]);
  });
});
