import { describe, expect, it } from 'vitest';
import { batteryFindings } from '../../../src/engines/battery/index.ts';
import { converterKindSchema } from '../../../src/plan/kinds/converter.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { daySummary, leastOf } from '../../../src/report/day.ts';
import { explainOrWhy } from '../../../src/report/explain.ts';
import { findingText } from '../../../src/report/text.ts';
import { batteryRig } from '../../support/battery-plan.ts';

const rules = (plan: Plan): string[] => batteryFindings(plan).map((f) => `${f.severity} ${f.rule}`);
const one = { kindId: 'brick', count: 1, joined: 'parallel' as const };

describe('packs on units', () => {
  it('battery-runtime: the working of a runtime ends in the figure, worst to best, and says what was assumed', () => {
    const r = batteryRig({ batteries: { sohPct: 100, cellC: 25 } });
    r.unit('1', one);
    r.b.level(r.setup.id, '1', 50);
    const w = explainOrWhy(r.b.plan(), `runtimeMin@1@${r.setup.id}`);
    if (!w.ok) throw new Error(w.error.what);
    // 98 Wh × 0.90 ÷ 30 W = 2 h 56 min; Peukert leaves 97.9 % at 2.08 A of a pack rated 1.36 A over five hours.
    expect(w.value.steps.find((s) => s.startsWith('planned with'))).toContain('2 h 53 min');
    expect(w.value.result).toBe('2 h 43 min to 3 h 06 min');
    expect(w.value.inputs.filter((i) => i.assumed).map((i) => i.name)).toContain('usable share');
    expect(w.value.inputs.find((i) => i.name === 'state of health')?.assumed).toBe(true);
    expect(explainOrWhy(r.b.plan(), 'runtimeMin@1@gone').ok).toBe(false);
  });

  it('battery-runtime: a unit that cuts out early leaves charge in its packs, and the working says so', () => {
    const runs = (minV: number): { result: string; steps: string; inputs: string } => {
      const r = batteryRig({ batteries: { sohPct: 100, cellC: 25 } });
      const packIn = { plates: ['v-plate' as const], packs: 1, joined: 'parallel' as const, maxV: 17 };
      r.b.fixtureKind('early', { wattsW: 20 }, { packIn: { ...packIn, minV, hotSwap: false } });
      r.unit('1', one, 'early');
      const w = explainOrWhy(r.b.plan(), `runtimeMin@1@${r.setup.id}`);
      if (!w.ok) throw new Error(w.error.what);
      return {
        result: w.value.result,
        steps: w.value.steps.join(),
        inputs: w.value.inputs.map((i) => `${i.name} ${i.value}`).join('; '),
      };
    };
    expect(runs(12).inputs).not.toContain('left when it cuts out');
    // 14.4 V over four cells: 3.6 V, where the table has a quarter of the charge left.
    expect(runs(14.4).inputs).toContain('left when it cuts out, 3.60 V a cell 25 %');
    expect(runs(14.4).steps).toContain('98 Wh × 75 %');
    expect(runs(12).steps).toContain('98 Wh × 90 %');
    expect(runs(14.4).result).not.toBe(runs(12).result);
  });

  it('battery-current: a pack that gives less than the unit draws at its cut-off volts is too weak', () => {
    const r = batteryRig();
    r.b.fixtureKind(
      'big',
      { wattsW: 150 },
      { packIn: { plates: ['v-plate'], packs: 2, joined: 'parallel', minV: 11, maxV: 17, hotSwap: false } },
    );
    r.unit('1', one, 'big');
    // 150 W ÷ 12 V = 12.5 A from a pack of 10 A, 14 A for a moment.
    expect(rules(r.b.plan())).toEqual(['warn battery-weak']);
    r.unit('1', { ...one, count: 2 }, 'big');
    expect(rules(r.b.plan())).toEqual([]);
    r.pack('weak', { peakA: 12 });
    r.unit('1', { ...one, kindId: 'weak' }, 'big');
    expect(rules(r.b.plan())).toEqual(['stop battery-weak']);
  });

  it('battery-current: a pack that could give more than the plate of the unit carries does not help', () => {
    const r = batteryRig();
    const packIn = {
      plates: ['v-plate' as const],
      packs: 1,
      joined: 'parallel' as const,
      minV: 11,
      maxV: 17,
    };
    r.b.fixtureKind('big', { wattsW: 150 }, { packIn: { ...packIn, hotSwap: false, maxA: 10 } });
    r.pack('strong', { continuousA: 20, peakA: 25 });
    r.unit('1', { ...one, kindId: 'strong' }, 'big');
    // 150 W ÷ 12 V = 12.5 A through a plate for 10 A; shared by two plates it is 6.25 A.
    expect(rules(r.b.plan())).toEqual(['warn battery-plate-current']);
    r.unit('1', { ...one, kindId: 'strong', count: 2 }, 'big');
    expect(rules(r.b.plan())).toEqual(['warn battery-plates']);
  });

  it('battery-current: twice the volts on the same plate is a stop, however they come about', () => {
    const r = batteryRig();
    r.pack('high', { voltsV: 25.2, fullV: 29.4, emptyV: 21, cells: 7 });
    r.unit('1', { ...one, kindId: 'high' });
    r.unit('2', { ...one, count: 2, joined: 'series' });
    // Two of them on a unit with one plate, besides.
    expect(rules(r.b.plan())).toEqual([
      'stop battery-volts-high',
      'warn battery-plates',
      'stop battery-volts-high',
    ]);
  });

  it('battery-no-pack: mains only, the wrong plate, no packs named, packs not in the plan: each is told', () => {
    const r = batteryRig();
    r.b.fixtureKind('mains', { wattsW: 60 });
    r.pack('stud', { plate: 'three-stud' });
    r.unit('1', one, 'mains');
    r.unit('2', { ...one, kindId: 'stud' });
    r.unit('3');
    r.unit('4', { ...one, kindId: 'gone' });
    expect(rules(r.b.plan())).toEqual([
      'warn battery-mains-only',
      'warn battery-plate',
      'warn battery-no-pack',
      'warn battery-no-pack',
    ]);
    // What takes mains only has no runtime and uses up no packs.
    r.block(480, 540);
    const d = daySummary(r.b.plan(), 1);
    expect(d.lanes.find((l) => l.fixtureId === '1')).toMatchObject({
      problem: 'its kind takes mains only',
      runtimes: [],
    });
    expect(d.pools.map((x) => x.name)).toEqual(['stud']);
  });

  it('battery-converter: volts are held against each other along packs, converter and unit', () => {
    const r = batteryRig();
    const between = (id: string, k: Record<string, unknown>): string =>
      r.b.put(
        converterKindSchema.parse({
          id,
          type: 'kind',
          slug: id,
          name: id,
          sizeMm: { lengthMm: 100, widthMm: 100 },
          massKg: 1,
          symbol: id,
          basis: {},
          origin: { book: 'user', version: '1' },
          family: 'converter',
          plates: ['v-plate'],
          outputW: 300,
          efficiencyPct: 95,
          ...k,
        }),
      ).id;
    const port = (id: string, voltsV: number) => ({ id, connector: 'xlr-4', voltsV, maxA: 20 });
    between('double', { what: 'plate-adapter', dcIn: [port('in', 28.8)], dcOut: [port('out', 28.8)] });
    between('step-up', { what: 'dc-dc', dcIn: [port('in', 14.4)], dcOut: [port('out', 28)] });
    between('inverter-230', { what: 'inverter', dcIn: [port('in', 14.4)], outputV: 230 });
    const packIn = { plates: ['block-28' as const], packs: 1, joined: 'parallel' as const };
    r.b.fixtureKind('lamp-28', { wattsW: 60 }, { packIn: { ...packIn, minV: 22, maxV: 34, hotSwap: false } });
    r.b.fixtureKind('lamp-120', { wattsW: 60, voltsMinV: 108, voltsMaxV: 126 });
    const told = (kindId: string, use: Record<string, unknown>): string[] => {
      r.unit('1', { ...one, ...use }, kindId);
      return rules(r.b.plan());
    };
    expect(told('lamp-28', { converterId: 'double', count: 2, joined: 'series' })).toEqual([]);
    // Side by side they give 14.4 V to a plate for 28.8 V, and so to the lamp.
    expect(told('lamp-28', { converterId: 'double', count: 2 })).toEqual([
      'warn battery-converter-volts',
      'warn battery-converter-volts',
    ]);
    expect(told('lamp-28', { converterId: 'step-up' })).toEqual([]);
    // 28 V into a lamp for 17 V.
    expect(told('lamp', { converterId: 'step-up' })).toEqual(['stop battery-volts-high']);
    expect(told('lamp-120', { converterId: 'step-up' })).toEqual(['warn battery-mains-only']);
    expect(told('lamp-120', { converterId: 'inverter-230' })).toEqual(['warn battery-converter-volts']);
  });

  it('battery-lead: a long thin lead is told, and one that cannot start is a stop', () => {
    const r = batteryRig();
    const lead = (lengthMm: number) => ({ ...one, lead: { lengthMm, conductor: 'mm2:0.5' } });
    r.unit('1', lead(1000));
    expect(rules(r.b.plan())).toEqual([]);
    r.unit('1', lead(6000));
    expect(rules(r.b.plan())).toEqual(['warn battery-lead']);
    r.unit('1', lead(20000));
    expect(rules(r.b.plan())).toEqual(['stop battery-lead-start']);
  });
});

describe('packs over a day', () => {
  const day = (packs: number, bays = 2) => {
    const r = batteryRig({ batteries: { sohPct: 100, cellC: 25, swapAtPct: 0 } });
    r.unit('1', one);
    r.unit('2', one);
    r.block(480, 720);
    r.stock('brick', packs);
    r.placeCharger('C1', bays);
    return r;
  };

  it('battery-rotation: what a unit drains is what its packs lose, and changes are told with how long they are dark', () => {
    const s = daySummary(day(12).b.plan(), 1);
    const lane = s.lanes[0];
    const drained = lane?.spans.reduce((sum, x) => sum + x.fromSoc - x.toSoc, 0) ?? 0;
    // 98 Wh × 0.9 × Peukert at 4.17 A (94.6 %) ÷ 60 W = 83.4 min for each pack.
    expect(drained).toBeCloseTo(240 / 83.4, 1);
    expect(lane?.swaps.filter((x) => x.out !== '').map((x) => x.darkMin)).toEqual([2, 2]);
  });

  it('battery-least: names the fewest packs; with them nobody waits, with one fewer it says who goes dark when', () => {
    const least = leastOf(day(12).b.plan(), 1)[0];
    if (!least) throw new Error('nothing found');
    expect(rules(day(least.packs).b.plan())).toEqual([]);
    const short = day(least.packs - 1).b.plan();
    expect(rules(short)).toEqual(['warn battery-dark']);
    expect(least.text).toMatch(/With \d+ packs, Unit \d goes dark at \d\d:\d\d/);
    const a = assess(short, { revision: 0 });
    const f = a.findings.find((x) => x.rule === 'battery-dark');
    const text = f && findingText(short, f);
    const words = least.text.match(/Unit \d goes dark at \d\d:\d\d/)?.[0];
    expect(text?.head).toContain(`With ${least.packs - 1} packs ${words}`);
  });

  it('battery-rotation: packs kept back take no part', () => {
    const r = day(6);
    r.stock('brick', 6, 4);
    expect(daySummary(r.b.plan(), 1).pools[0]?.atHand).toBe(2);
    expect(rules(r.b.plan())).toEqual(['warn battery-dark']);
  });

  it('battery-charge: below freezing charging is warned of', () => {
    const r = day(12);
    r.b.put({
      ...(r.b.plan().records.get('plan') as never as Parameters<typeof r.b.put>[0]),
      batteries: { cellC: -5, sohPct: 100 },
    } as never);
    expect(rules(r.b.plan())).toContain('warn battery-charge-cold');
  });

  it('battery-own: cells run down, charge in a break, or a charged unit takes the place', () => {
    const r = batteryRig({ batteries: { sohPct: 100, cellC: 25 } });
    r.b.fixtureKind('tube', { wattsW: 40 }, { ownCellsWh: 60 });
    r.b.fixture('tube', { id: '1', unit: '1', onPacks: true });
    r.block(480, 540);
    r.block(720, 780);
    const own = (when: 'none' | 'recharge' | 'exchange'): string[] => {
      r.b.fixture('tube', { id: '1', unit: '1', onPacks: true, ownCells: { when } });
      return rules(r.b.plan());
    };
    // 60 Wh × 0.9 × rate ÷ 40 W is about 77 min of 120.
    expect(own('none')).toEqual(['warn battery-own-dark']);
    expect(own('recharge')).toEqual([]);
    expect(own('exchange')).toEqual(['warn battery-dark']);
    r.stock('tube', 1);
    expect(own('exchange')).toEqual([]);
  });

  it('day-block: blocks with faults are findings with words', () => {
    const r = day(12);
    r.block(900, 900);
    r.block(900, 960, { setupId: 'gone' });
    r.block(2100, 2300);
    const plan = r.b.plan();
    expect(rules(plan)).toEqual([
      'warn day-block-empty',
      'warn day-block-no-setup',
      'warn day-block-outside',
    ]);
    for (const f of assess(plan, { revision: 0 }).findings) expect(findingText(plan, f).head).toBeTruthy();
  });

  it('day-block: blocks of one crew at the same time are told, of two crews not', () => {
    const r = day(12);
    r.block(600, 660, { crew: 'rigging' });
    expect(rules(r.b.plan())).toEqual([]);
    r.block(700, 800);
    const plan = r.b.plan();
    expect(rules(plan)).toEqual(['note day-block-overlap']);
    const f = assess(plan, { revision: 0 }).findings.find((x) => x.rule === 'day-block-overlap');
    expect(f && findingText(plan, f).body).toContain('from 11:40 to 12:00');
  });

  it('day-block: a block of negative length, one before midnight and one past noon of the next day take no part', () => {
    const r = day(12);
    r.block(900, 860);
    r.block(-30, 60);
    r.block(2100, 2161);
    expect(rules(r.b.plan())).toEqual([
      'warn day-block-empty',
      'warn day-block-outside',
      'warn day-block-outside',
    ]);
    expect(daySummary(r.b.plan(), 1).endMin).toBe(720);
  });
});
