import { describe, expect, it } from 'vitest';
import { continuousHours, isNotContinuous } from '../../../src/derive/loaded-hours.ts';
import { blockFault, shootingDays, stretchesOf } from '../../../src/derive/schedule.ts';
import { skyOf } from '../../../src/derive/sun.ts';
import { computePower, explainPower } from '../../../src/engines/power/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { parseClock } from '../../../src/plan/clock.ts';
import { moveBlock, setBlockTimes } from '../../../src/plan/edits/day.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { recordSchemas } from '../../../src/plan/records/index.ts';
import { batteryRig } from '../../support/battery-plan.ts';
import { generatorRig } from '../../support/plan-builder.ts';

describe('the shooting day', () => {
  it('day-schedule: a setup burns all at its levels, a meal only what is named, at the level before', () => {
    const r = batteryRig();
    r.unit('1');
    r.unit('2');
    r.b.level(r.setup.id, '1', 40);
    r.b.level(r.setup.id, '2', 0);
    r.block(480, 600);
    r.block(600, 660, { what: 'meal', setupId: undefined, burnsThrough: ['1', '2'] });
    r.block(700, 760, { what: 'move', setupId: undefined });
    const day = shootingDays(r.b.plan())[0];
    if (!day) throw new Error('no day');
    expect(stretchesOf(day, '1')).toEqual([
      { startMin: 480, endMin: 660, levelPct: 40, setupId: r.setup.id },
    ]);
    expect(stretchesOf(day, '2')).toEqual([]);
    expect([day.startMin, day.endMin]).toEqual([480, 760]);
  });

  it('day-schedule: where two crews light one unit at once, the brighter level counts', () => {
    const r = batteryRig();
    r.unit('1');
    const night = r.b.setup('Night', 2);
    r.b.level(r.setup.id, '1', 30);
    r.b.level(night.id, '1', 80);
    r.block(480, 600);
    r.block(540, 700, { setupId: night.id, crew: 'rigging', what: 'pre-light' });
    const day = shootingDays(r.b.plan())[0];
    expect(day && stretchesOf(day, '1').map((s) => [s.startMin, s.endMin, s.levelPct])).toEqual([
      [480, 540, 30],
      [540, 700, 80],
    ]);
  });

  it('day-block: no length, before 00:00, past noon of the next day, a setup that is gone: each is told, and left out', () => {
    const r = batteryRig();
    r.unit('1');
    const faults = [
      r.block(600, 600),
      r.block(700, 640),
      r.block(-10, 60),
      r.block(2000, 2200),
      r.block(480, 540, { setupId: 'gone' }),
      r.block(480, 540),
    ].map((b) => blockFault(r.b.plan(), b));
    expect(faults).toEqual(['empty', 'empty', 'outside', 'outside', 'no-setup', undefined]);
    expect(shootingDays(r.b.plan())[0]?.blocks).toHaveLength(1);
  });

  it('day-schedule: nights run past midnight, and changing an end moves what follows', () => {
    const r = batteryRig();
    r.unit('1');
    const [a, meal, late] = [r.block(1080, 1320), r.block(1320, 1380, { what: 'meal' }), r.block(1380, 1700)];
    const plan = r.b.plan();
    const times = (p: typeof plan): number[][] => recordsOf(p, 'block').map((b) => [b.startMin, b.endMin]);
    const moved = applyChanges(plan, setBlockTimes(plan, a.id, { endMin: 1350 }, true));
    expect(times(moved)).toEqual([
      [1080, 1350],
      [1350, 1410],
      [1410, 1730],
    ]);
    expect(times(applyChanges(plan, setBlockTimes(plan, a.id, { endMin: 1350 }, false)))[1]).toEqual([
      1320, 1380,
    ]);
    expect(times(applyChanges(plan, moveBlock(plan, meal.id, 15, false)))).toEqual([
      [1080, 1320],
      [1335, 1395],
      [1380, 1700],
    ]);
    expect(late.endMin).toBe(1700);
  });

  it.each([
    ['7', 420],
    ['07:30', 450],
    ['730', 450],
    ['7.30', 450],
    ['7:30 pm', 1170],
    ['12 am', 0],
    ['25:30', 1530],
    ['01:30 +1', 1530],
    ['36:00', 2160],
  ])('reads the clock time %s', (text, minute) => {
    expect(parseClock(text)).toEqual({ ok: true, value: minute });
  });

  it.each(['', 'noon', '7:75', '36:01', '13 pm', '-3'])('refuses “%s” as a clock time', (text) => {
    expect(parseClock(text).ok).toBe(false);
  });
});

describe('hours a circuit is loaded', () => {
  const rig = (...blocks: readonly (readonly [number, number])[]) => {
    const r = generatorRig();
    r.b.fixtureKind('lamp', { wattsW: 1900, powerFactor: 1, standbyW: 0 }, { inlets: r.inlets });
    const { fixture } = r.plug('lamp', 1);
    const day = r.b.setup('Day', 1);
    r.b.level(day.id, fixture.id, 100);
    blocks.forEach(([startMin, endMin], i) => {
      r.b.put(
        recordSchemas.block.parse({
          id: `block-${i}`,
          type: 'block',
          day: 1,
          startMin,
          endMin,
          what: 'setup',
          setupId: day.id,
        }),
      );
    });
    return { ...r, fixture, day, key: `${r.box.id}/1` };
  };

  it('day-hours: the longest stretch, pauses under an hour counted in', () => {
    const r = rig([480, 570], [600, 660], [780, 800]);
    expect(continuousHours(r.b.plan(), r.key)).toBeCloseTo(3, 9);
  });

  it('day-hours: not known without a day, on an empty circuit, or where a setup that lights it is in no day', () => {
    expect(continuousHours(rig().b.plan(), 'x')).toBeUndefined();
    const r = rig([480, 540]);
    expect(continuousHours(r.b.plan(), `${r.box.id}/2`)).toBeUndefined();
    const night = r.b.setup('Night', 2);
    expect(continuousHours(r.b.plan(), r.key)).toBeUndefined();
    r.b.level(night.id, r.fixture.id, 0);
    expect(continuousHours(r.b.plan(), r.key)).toBeCloseTo(1, 9);
  });

  it('power-limit: under three hours with the margin a breaker carries its rating (NEC 210.20(A)), from there on 80 % of it', () => {
    const limit = (r: ReturnType<typeof rig>): number | undefined =>
      computePower(r.b.plan()).entities.find((e) => e.key === r.key)?.legLimit?.limitA;
    const short = rig([480, 480 + 149]);
    expect(isNotContinuous(short.b.plan(), short.key)).toBe(true);
    expect(limit(short)).toBe(20);
    expect(limit(rig([480, 480 + 151]))).toBe(16);
    expect(limit(rig())).toBe(16);
  });
});

describe('hours a conductor is loaded', () => {
  /** A lamp on leg A from 8:00 to 10:00 and one on leg B from then to 12:00, behind one main breaker of three legs. */
  const rig = () => {
    const r = generatorRig();
    r.b.fixtureKind('lamp', { wattsW: 1900, powerFactor: 1, standbyW: 0 }, { inlets: r.inlets });
    const lamps = [1, 2].map((way) => r.plug('lamp', way).fixture);
    const setups = ['One', 'Two'].map((name, i) => r.b.setup(name, i + 1));
    setups.forEach((s, i) => {
      lamps.forEach((f, k) => {
        r.b.level(s.id, f.id, i === k ? 100 : 0);
      });
      const at = { startMin: 480 + i * 120, endMin: 600 + i * 120 };
      const what = { id: `block-${i}`, type: 'block', day: 1, what: 'setup', setupId: s.id };
      r.b.put(recordSchemas.block.parse({ ...what, ...at }));
    });
    return { ...r, lamps, setups };
  };

  it('day-hours: each leg has its own stretch, across setups; what all legs share runs through (NEC article 100, per conductor)', () => {
    const r = rig();
    const hours = (wire?: number) => continuousHours(r.b.plan(), r.source.id, wire);
    expect([hours(0), hours(1), hours(2), hours(3)]).toEqual([2, 2, undefined, 4]);
    expect(hours()).toBe(2);
  });

  it('power-limit: a breaker over three legs none of which is loaded for three hours carries its rating, and says each leg’s hours', () => {
    const r = rig();
    const limit = () => computePower(r.b.plan()).entities.find((e) => e.key === r.source.id)?.legLimit;
    expect(limit()).toMatchObject({ setBy: 'main-breaker', limitA: 300 });
    const working = explainPower(r.b.plan(), `usePct@${r.source.id}@${r.setups[0]?.id}`);
    expect('inputs' in working && working.inputs.filter((i) => / at a stretch$/.test(i.name))).toMatchObject([
      { name: 'leg A loaded at a stretch', value: '2.0 h' },
      { name: 'leg B loaded at a stretch', value: '2.0 h' },
      { name: 'neutral loaded at a stretch', value: '4.0 h' },
    ]);
    // Leg A through both setups: four hours.
    for (const s of r.setups) r.b.level(s.id, r.lamps[0]?.id ?? '', 100);
    expect(continuousHours(r.b.plan(), r.source.id, 0)).toBe(4);
    expect(limit()?.limitA).toBe(240);
  });

  it('day-hours: a load between two legs counts on both', () => {
    const r = rig();
    const both = { wattsW: 1000, powerFactor: 1, voltsMinV: 200, voltsMaxV: 250 };
    const port = { id: 'o25', connector: 'stage-pin-60-2', legs: 2, neutral: false, wayId: '25' };
    const kind = r.b.records.get('box');
    if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box kind');
    const way = { id: '25', label: '25', breakerA: 60, poles: 2, curve: 'na' as const, legs: [1, 2] };
    r.b.put({ ...kind, ways: [...kind.ways, way], outlets: [...kind.outlets, port] });
    r.b.cableKind('lead2', { plug: port.connector, socket: port.connector, legs: 2, neutral: false });
    r.b.fixtureKind('wide', both, { inlets: [{ ...port, id: 'in' }] });
    const f = r.b.fixture('wide');
    r.b.cable('lead2', [r.box.id, 'o25'], [f.id, 'in'], 7620);
    const hours = (wire: number) => continuousHours(r.b.plan(), r.source.id, wire);
    expect([hours(0), hours(1), hours(2), hours(3)]).toEqual([2, 4, 4, 4]);
  });
});

describe('sun and moon', () => {
  it('day-sky: London on 21 June 2024: sunrise 04:43, sunset 21:21 BST (almanac, as printed on public pages)', () => {
    const s = skyOf({ latDeg: 51.5, lonDeg: -0.12, utcOffsetMin: 60 }, '2024-06-21');
    expect(Math.abs((s?.sunriseMin ?? 0) - (4 * 60 + 43))).toBeLessThanOrEqual(2);
    expect(Math.abs((s?.sunsetMin ?? 0) - (21 * 60 + 21))).toBeLessThanOrEqual(2);
  });

  it('day-sky: the moon was full on 17 September 2024 and new on 2 October (partial and annular eclipse days)', () => {
    const at = (date: string) => skyOf({ latDeg: 0, lonDeg: 0, utcOffsetMin: 0 }, date);
    expect(at('2024-09-18')?.moonPhase).toBe('full moon');
    expect(at('2024-10-02')?.moonPhase).toBe('new moon');
    expect(at('2024-10-02')?.moonShare).toBeLessThan(0.01);
  });

  it('day-sky: twilights come in their order; in a polar summer nothing rises or sets', () => {
    const s = skyOf({ latDeg: 43, lonDeg: -71, utcOffsetMin: -300 }, '2027-03-04');
    const order = [
      s?.nightEndMin,
      s?.nauticalDawnMin,
      s?.dawnMin,
      s?.sunriseMin,
      s?.sunsetMin,
      s?.duskMin,
      s?.nauticalDuskMin,
      s?.nightMin,
    ];
    expect(order).toEqual([...order].sort((a, b) => (a ?? 0) - (b ?? 0)));
    const polar = skyOf({ latDeg: 78, lonDeg: 15, utcOffsetMin: 120 }, '2026-06-21');
    expect([polar?.sunriseMin, polar?.sunsetMin]).toEqual([undefined, undefined]);
    expect(skyOf({ latDeg: 0, lonDeg: 0, utcOffsetMin: 0 }, '2026-02-30')).toBeUndefined();
  });
});
