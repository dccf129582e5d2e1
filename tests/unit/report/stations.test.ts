import { describe, expect, it } from 'vitest';
import { fuelLitresPerH } from '../../../src/derive/fuel.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { type AnyRecord, recordSchemas } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { backUps, fedBy } from '../../../src/report/back-up.ts';
import { daySummary } from '../../../src/report/day.ts';
import { dayTroubles, sourceNote } from '../../../src/report/day-words.ts';
import { findingText } from '../../../src/report/text.ts';
import { batteryRig } from '../../support/battery-plan.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

/** One source with a 100 W unit, a day from 08:00 to 18:00. */
const sourceDay = (kind: Record<string, unknown>, source: Record<string, unknown> = {}, load = {}): Plan => {
  const b = new PlanBuilder();
  const k = b.sourceKind('station', {
    what: 'power-station',
    system: '120',
    ways: [{ id: 'w', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
    outlets: [{ id: 'out', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: 'w' }],
    ...kind,
  });
  const s = b.source(k.id, { id: 'ps', label: 'S1', voltsV: 120, ...source });
  b.fixture(b.fixtureKind('lamp', { wattsW: 100, ...load }).id, { id: 'u1', unit: '1' });
  b.cable(b.cableKind('cord').id, [s.id, 'out'], ['u1', 'in']);
  b.put({ id: 's1', type: 'setup', order: 1, name: 'Day', scene: '' });
  b.put(
    recordSchemas.block.parse({
      id: 'b1',
      type: 'block',
      day: 1,
      startMin: 480,
      endMin: 1080,
      what: 'setup',
      setupId: 's1',
    }) as AnyRecord,
  );
  return b.plan();
};

describe('power stations over the day', () => {
  it('station-energy: 1000 Wh give 900 Wh over an inverter of 85 % with 15 W of its own: 100 W for 6 h 47 min', () => {
    const plan = sourceDay({ storedWh: 1000, ratedKw: 1 });
    const [s] = daySummary(plan, 1).sources;
    expect(s?.station?.emptyMin).toBeCloseTo(480 + (60 * 900) / (100 / 0.85 + 15), 6);
    const finding = assess(plan, { revision: 1 }).findings.find((f) => f.rule === 'station-empty');
    expect(finding?.severity).toBe('warn');
    expect(finding && findingText(plan, finding).head).toBe('S1 is empty at 14:47 on day 1');
    expect(dayTroubles(daySummary(plan, 1))[0]?.text).toContain('S1 is empty at 14:47');
  });

  it('station-energy: what is given, lost and left adds up to what it can give', () => {
    const [s] = daySummary(sourceDay({ storedWh: 3000, inverterPct: 90 }), 1).sources;
    const station = s?.station;
    if (!station) throw new Error('no station');
    expect(station.emptyMin).toBeUndefined();
    const used = 10 * (100 / 0.9 + 15);
    expect(station.leftWh).toBeCloseTo(2700 - used, 6);
    expect(s && sourceNote(s)).toBe(`${Math.round((100 * station.leftWh) / 2700)} % left at the end`);
  });

  it('station-energy: a generator, and a station whose watt-hours are not known, have none', () => {
    expect(daySummary(sourceDay({ what: 'generator', ratedKw: 20 }), 1).sources[0]?.station).toBeUndefined();
    expect(daySummary(sourceDay({}), 1).sources[0]?.station).toBeUndefined();
  });

  it('station-overnight: a station that nothing charges between two days is told, not where both days fit into it', () => {
    const twoDays = (storedWh: number): Plan => {
      const plan = sourceDay({ storedWh });
      const [first] = [...plan.records.values()].filter((x) => x.type === 'block');
      if (!first) throw new Error('no block');
      return applyChanges(plan, {
        added: [recordSchemas.block.parse({ ...first, id: 'b2', day: 2 }) as AnyRecord],
        updated: [],
        removed: [],
      });
    };
    const told = (wh: number) =>
      assess(twoDays(wh), { revision: 1 }).findings.find((f) => f.rule === 'station-overnight');
    // A day takes 10 h × (100 W ÷ 0.85 + 15 W) = 1326 Wh: 1800 Wh carry one, 2700 Wh both.
    expect(told(2000)?.params.morningPct).toBeCloseTo((100 * (1800 - 1326.47)) / 1800, 1);
    expect(told(3000)).toBeUndefined();
    const plan = twoDays(2000);
    const f = told(2000);
    expect(f && findingText(plan, f).head).toBe('S1 is at 26 % when day 2 begins');
  });

  it('station-surge: a load whose inrush is above what the station gives for a moment is told', () => {
    const rules = (inrushMultiple: number, surgeW?: number): readonly string[] =>
      assess(
        sourceDay({ storedWh: 5000, ratedKw: 0.6, ...(surgeW ? { surgeW } : {}) }, {}, { inrushMultiple }),
        {
          revision: 1,
        },
      ).findings.map((f) => f.rule);
    // Twice 600 W for a moment where its kind says nothing: 100 W × 11 stays under it, × 13 does not.
    expect(rules(11)).not.toContain('station-surge');
    expect(rules(13)).toContain('station-surge');
    expect(rules(11, 1000)).toContain('station-surge');
  });
});

describe('refuelling', () => {
  it('fuel-times: a set is filled up whenever a quarter of its tank is left', () => {
    const plan = sourceDay({ what: 'generator', ratedKw: 20 }, { tankL: 20 }, { wattsW: 10_000 });
    const [s] = daySummary(plan, 1).sources;
    const perH = fuelLitresPerH(20, 10) ?? Number.NaN;
    expect(s?.refuelMin?.length).toBe(Math.floor((10 * perH) / 15));
    expect(s?.refuelMin?.[0]).toBeCloseTo(480 + (60 * 15) / perH, 6);
    expect(s && sourceNote(s)).toMatch(/^refuel at \d\d:\d\d/);
  });

  it('fuel-times: without a tank nothing is said', () => {
    const [s] = daySummary(sourceDay({ what: 'generator', ratedKw: 20 }, {}, { wattsW: 10_000 }), 1).sources;
    expect(s?.refuelMin).toBeUndefined();
    expect(s && sourceNote(s)).toBe('');
  });
});

describe('packs at switching on', () => {
  it('battery-inrush: behind an inverter the inrush of a unit is held against the peak of its packs', () => {
    const r = batteryRig();
    const inverter = r.b.put({
      id: 'inv',
      type: 'kind',
      family: 'converter',
      what: 'inverter',
      slug: 'inv',
      name: 'Inverter 300 W',
      also: [],
      sizeMm: { lengthMm: 100, widthMm: 100 },
      massKg: 1,
      symbol: 'inv',
      basis: {},
      origin: { book: 'user', version: '1' },
      inlets: [],
      outlets: [],
      dcIn: [],
      dcOut: [],
      plates: ['v-plate'],
      outputW: 300,
      efficiencyPct: 90,
    });
    r.b.fixtureKind('mains', { wattsW: 50, inrushMultiple: 5 });
    const use = { kindId: 'brick', joined: 'parallel' as const, converterId: inverter.id };
    r.unit('1', { ...use, count: 1 }, 'mains');
    const rules = (): readonly string[] => assess(r.b.plan(), { revision: 1 }).findings.map((f) => f.rule);
    // 50 W × 5 ÷ 0.9 ÷ 12 V = 23.1 A from a pack of 14 A for a moment; two of them share it.
    expect(rules()).toContain('battery-inrush');
    r.unit('1', { ...use, count: 2 }, 'mains');
    expect(rules()).not.toContain('battery-inrush');
  });
});

describe('back-up cells', () => {
  const plan = (backupMin?: number): Plan => {
    const b = new PlanBuilder();
    const kind = b.fixtureKind('lamp', {}, { modes: [{ id: 'm', name: '1', slots: 1, parts: 1 }] });
    b.put({ id: 'uni', type: 'universe', number: 1, name: '', color: 'blue' } as unknown as AnyRecord);
    b.put({
      id: 'tx-kind',
      type: 'kind',
      family: 'transmitter',
      slug: 'tx',
      name: 'Transmitter',
      also: [],
      sizeMm: { lengthMm: 100, widthMm: 100 },
      massKg: 1,
      symbol: 'tx',
      basis: {},
      origin: { book: 'user', version: '1' },
      inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      outlets: [],
      dataIn: [],
      dataOut: [{ id: 'out', connector: 'xlr-5', universes: 1 }],
      bands: [{ fromMhz: 2400, toMhz: 2480, eirpDbm: 20 }],
      universes: 1,
      antenna: 'whip',
      antennaGainDbi: 2,
      sensitivityDbm: -90,
      supplyW: 5,
      rdm: false,
      conductedDbm: 18,
    } as unknown as AnyRecord);
    b.put(
      recordSchemas.device.parse({
        id: 'tx',
        type: 'device',
        floorId: 'floor',
        kindId: 'tx-kind',
        at: { xMm: 0, yMm: 0 },
        label: 'T1',
        ports: [{ portId: 'out', universeId: 'uni' }],
        ...(backupMin === undefined ? {} : { backupMin }),
      }) as AnyRecord,
    );
    for (const id of ['u1', 'u2', 'u3'])
      b.fixture(kind.id, {
        id,
        unit: id,
        patch: { modeId: 'm', universeId: 'uni', address: Number(id.slice(1)), paired: false },
      });
    b.put(
      recordSchemas.line.parse({
        id: 'l1',
        type: 'line',
        from: { recordId: 'tx', portId: 'out' },
        stops: ['u1', 'u2'],
      }) as AnyRecord,
    );
    b.put(
      recordSchemas.line.parse({
        id: 'l2',
        type: 'line',
        from: { recordId: 'u2', portId: 'through' },
        stops: ['u3'],
      }) as AnyRecord,
    );
    return b.plan();
  };

  it('tells when it dies and how many units get their data through it', () => {
    const [row] = backUps(plan(50), { startMin: 480, endMin: 1200 });
    expect([...fedBy(plan(50), 'tx')].sort()).toEqual(['u1', 'u2', 'u3']);
    expect(row?.text).toBe('If its plug is kicked out at 14:00 it dies at 14:50; it feeds 3 units.');
    expect(backUps(plan(), { startMin: 480, endMin: 1200 })[0]?.text).toBe(
      'If its plug is kicked out it dies at once; it feeds 3 units.',
    );
  });

  it('takes an hour of the day as the example where the day is over by two', () => {
    const [row] = backUps(plan(30), { startMin: 1260, endMin: 1740 });
    expect(row?.atMin).toBe(1500);
  });

  it('battery-back-up: a monitor on a pack dies when the pack is used up; one without dies at once', () => {
    const r = batteryRig({ batteries: { sohPct: 100, cellC: 25 } });
    r.b.put({
      id: 'mon',
      type: 'kind',
      family: 'video',
      what: 'monitor',
      slug: 'mon',
      name: 'Monitor',
      also: [],
      sizeMm: { lengthMm: 100, widthMm: 100 },
      massKg: 1,
      symbol: 'mon',
      basis: {},
      origin: { book: 'user', version: '1' },
      inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      outlets: [],
      dataIn: [],
      dataOut: [],
      supplyW: 100,
      packIn: { plates: ['v-plate'], packs: 1, joined: 'parallel', minV: 11, maxV: 17, hotSwap: false },
    } as unknown as AnyRecord);
    const monitor = (packs?: Record<string, unknown>): Plan => {
      r.b.put(
        recordSchemas.device.parse({
          id: 'd1',
          type: 'device',
          floorId: 'floor',
          kindId: 'mon',
          at: { xMm: 0, yMm: 0 },
          label: 'V1',
          ...(packs ? { packs } : {}),
        }) as AnyRecord,
      );
      return r.b.plan();
    };
    const text = (p: Plan): string | undefined => backUps(p, { startMin: 480, endMin: 1200 })[0]?.text;
    expect(text(monitor())).toBe('If its plug is kicked out it dies at once.');
    // 98 Wh × 0.9 × (6.8 Ah ÷ (6.94 A × 5 h))^0.05 ÷ 100 W = 48.7 min.
    expect(text(monitor({ kindId: 'brick' }))).toBe('If its plug is kicked out at 14:00 it dies at 14:48.');
    const rules = (p: Plan): readonly string[] => assess(p, { revision: 1 }).findings.map((f) => f.rule);
    expect(rules(monitor({ kindId: 'brick' }))).not.toContain('battery-back-up');
    expect(rules(monitor({ kindId: 'brick', count: 2, joined: 'series' }))).toContain('battery-back-up');
    expect(text(monitor({ kindId: 'brick', count: 2, joined: 'series' }))).toContain('dies at once');
  });
});
