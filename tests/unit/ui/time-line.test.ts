import { describe, expect, it } from 'vitest';
import { skyOf } from '../../../src/derive/sun.ts';
import { daySummary } from '../../../src/report/day.ts';
import { stackBlocks } from '../../../src/ui/day/block-layout.ts';
import { timeScale } from '../../../src/ui/day/scale.ts';
import { skyMarks } from '../../../src/ui/day/sky.ts';
import { type LaneStop, unitStops } from '../../../src/ui/day/stops.ts';
import { stopAt } from '../../../src/ui/day/tips.ts';
import { batteryRig } from '../../support/battery-plan.ts';
import { demoPlan } from '../../support/demo-plan.ts';

const stop = (startMin: number, endMin: number, head: string, row?: number): LaneStop => ({
  startMin,
  endMin,
  head,
  lines: [],
  ...(row === undefined ? {} : { row }),
});

describe('pointing at a lane', () => {
  const stops = [stop(420, 518, 'on one'), stop(518, 518, 'change'), stop(518, 616, 'on another')];
  it('tells the change or the gap before the stretch it is in, and nothing where nothing is', () => {
    expect(stopAt(stops, 450, 1)?.head).toBe('on one');
    expect(stopAt(stops, 516, 1)?.head).toBe('change');
    expect(stopAt(stops, 530, 1)?.head).toBe('on another');
    expect(stopAt(stops, 700, 1)).toBeUndefined();
  });
  it('comes nearer to a change the further it is zoomed in', () => {
    expect(stopAt(stops, 514, 1)?.head).toBe('change');
    expect(stopAt(stops, 514, 5)?.head).toBe('on one');
  });
  it('tells bays of one charger apart by their row', () => {
    const bays = [stop(0, 60, 'bay 1', 0), stop(0, 60, 'bay 2', 1)];
    expect(stopAt(bays, 30, 1, 1)?.head).toBe('bay 2');
  });
});

describe('blocks that overlap', () => {
  it('go below one another, and those that follow go back up', () => {
    const { rowOf, rows } = stackBlocks([
      { id: 'a', startMin: 480, endMin: 600 },
      { id: 'b', startMin: 540, endMin: 660 },
      { id: 'c', startMin: 600, endMin: 700 },
    ]);
    expect([rowOf.get('a'), rowOf.get('b'), rowOf.get('c'), rows]).toEqual([0, 1, 0, 2]);
  });
});

describe('sun and moon on the ruler', () => {
  const sky = skyOf({ latDeg: 43, lonDeg: -71, utcOffsetMin: -300 }, '2027-03-04');
  if (!sky) throw new Error('no sky');
  const scale = (roomPx: number) => timeScale({ startMin: 300, endMin: 1300, blocks: [] }, 1, roomPx);
  it('knows when the moon is up: from its rise to its set, past midnight to noon', () => {
    const [first] = sky.moonUp;
    expect(first).toEqual([sky.moonriseMin, sky.moonsetMin]);
    for (const [from, to] of sky.moonUp) expect(from).toBeLessThan(to);
    expect(sky.moonUp.at(-1)?.[1]).toBeLessThanOrEqual(2160);
    // It rises later by most of an hour each day.
    expect((sky.moonUp[1]?.[0] ?? 0) - (first?.[0] ?? 0) - 1440).toBeGreaterThan(20);
  });
  it('writes no word over another, and the twilights too where there is room', () => {
    const wide = skyMarks(sky, scale(6000)).map((m) => m.name);
    expect(wide).toEqual(['moonrise', 'first light', 'sunrise', 'moonset', 'sunset', 'last light']);
    const narrow = skyMarks(sky, scale(500));
    expect(narrow.map((m) => m.name)).toContain('sunset');
    expect(narrow.length).toBeLessThan(wide.length);
  });
});

describe('stops of a unit’s lane', () => {
  it('say how much of a full pack a stretch takes, and lead to the working', () => {
    const r = batteryRig();
    r.unit('1', { kindId: r.brick.id, count: 1, joined: 'parallel' });
    r.block(480, 540);
    const lane = daySummary(r.b.plan(), 1).lanes[0];
    if (!lane) throw new Error('no lane');
    const [first] = unitStops(lane);
    expect(first).toMatchObject({ startMin: 480, key: lane.runtimes[0]?.key });
    expect(first?.lines.join(' ')).toMatch(/of .* a full one lasts: \d+ % of the charge/);
  });

  it('tell a pack that is put on after a dark gap from one that is changed without a gap', () => {
    const lane = daySummary(demoPlan('study'), 1).lanes.find((l) => l.darkMin > 0);
    if (!lane) throw new Error('the study goes dark nowhere');
    const stops = unitStops(lane);
    for (const s of lane.swaps.filter((x) => !x.first)) {
      const stop = stops.find((x) => x.startMin === s.atMin && x.endMin === s.atMin);
      if (s.out === '') expect(stop?.lines).toEqual(['put on when a charged one was there']);
      else expect(stop?.lines[0]).toMatch(/left in what comes off/);
    }
    expect(lane.swaps.some((s) => s.out === '' && !s.first)).toBe(true);
  });
});
