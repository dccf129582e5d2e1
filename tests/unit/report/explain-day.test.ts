import { describe, expect, it, test } from 'vitest';
import { explainCommand } from '../../../src/cli/explain.ts';
import { formatWatts } from '../../../src/kernel/units.ts';
import { recordSchemas } from '../../../src/plan/records/index.ts';
import { daySummary, daysOf } from '../../../src/report/day.ts';
import { type DayFigure, dayKey, dayKeysOf, drawnKey } from '../../../src/report/day-keys.ts';
import { explain, explainOrWhy } from '../../../src/report/explain.ts';
import { unitHours } from '../../../src/report/unit-hours.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { generatorRig } from '../../support/plan-builder.ts';

/** Two units of 5 kW on a set of 20 kW: both from 08:00 to 10:00, the first alone from 12:00 to 15:00. */
const twoUnits = (tankL?: number) => {
  const { b, source, inlets, plug } = generatorRig({}, 25);
  b.fixtureKind('big', { wattsW: 5000, powerFactor: 1 }, { inlets });
  const [one, two] = [plug('big', 1).fixture, plug('big', 2).fixture];
  const [wide, close] = [b.setup('Wide', 1), b.setup('Close', 2)];
  b.level(wide.id, one.id, 100);
  b.level(wide.id, two.id, 100);
  b.level(close.id, one.id, 100);
  b.level(close.id, two.id, 0);
  for (const [id, startMin, endMin, setupId] of [
    ['b1', 480, 600, wide.id],
    ['b2', 720, 900, close.id],
  ] as const)
    b.put(recordSchemas.block.parse({ id, type: 'block', day: 1, startMin, endMin, what: 'setup', setupId }));
  if (tankL !== undefined) b.put({ ...source, tankL });
  const plan = b.plan();
  const of = (figure: DayFigure, id = source.id) => {
    const w = explain(plan, dayKey(figure, id, 1));
    if (!w) throw new Error(`no working of ${figure}`);
    return w;
  };
  return { plan, source, one, two, of };
};

describe('the working of a figure of a shooting day', () => {
  it('is the sum of what draws at the peak, unit by unit', () => {
    const { of, plan, source } = twoUnits();
    expect(of('dayPeakW').result).toBe('10 kW');
    expect(of('dayPeakW').inputs.map((i) => i.value)).toEqual(['5 kW', '5 kW']);
    expect(explain(plan, drawnKey(source.id, 1, 720))?.result).toBe('5 kW');
  });

  it('is watts times hours for energy, and energy over hours for the average', () => {
    const { of } = twoUnits();
    // 10 kW × 2 h + 5 kW × 3 h, over 5 h.
    expect(of('dayEnergyWh').result).toBe('35.0 kWh');
    expect(of('dayEnergyWh').steps.slice(0, 2)).toEqual([
      '08:00 to 10:00: 10 kW × 2 h = 20.0 kWh',
      '12:00 to 15:00: 5 kW × 3 h = 15.0 kWh',
    ]);
    expect(of('dayAverageW').result).toBe('7 kW');
  });

  it('is the chart’s litres for fuel: 3.4 L/h at 50 % and 2.3 L/h at 25 % of 20 kW', () => {
    const { of } = twoUnits();
    expect(of('dayFuelL').steps.at(-1)).toBe('together 13.7 L');
    expect(of('dayFuelL').steps[0]).toContain('50 %, 3.4 L/h × 2 h = 6.8 L');
  });

  it('tells what was burnt before each refuelling and what is left at the end', () => {
    const { of, plan } = twoUnits(10);
    const w = of('dayRefuelMin');
    // A quarter of 10 L is left after 7.5 L: 6.8 L by 10:00 and 0.7 L at 2.3 L/h from 12:00 on.
    expect(daySummary(plan, 1).sources[0]?.refuelMin?.map(Math.round)).toEqual([738]);
    expect(w.result).toBe('12:18');
    expect(w.steps[0]).toContain('7.5 L of 10 L burnt, 2.5 L left');
    expect(w.steps[1]).toContain('6.2 L burnt, 3.8 L left');
  });

  it('lists the stretches a circuit is loaded and a unit burns', () => {
    const { of, plan, two } = twoUnits();
    const [first, second] = daySummary(plan, 1).circuits;
    expect(of('dayLoadedH', first?.key).result).toBe('5 h, at a stretch 3 h');
    expect(of('dayLoadedH', second?.key).result).toBe('2 h, at a stretch 2 h');
    expect(of('dayBurnsH', two.id).steps[0]).toBe('08:00 to 10:00: 2 h at 100 % in Wide');
    expect(of('dayLightH', '').result).toBe('5 h');
  });

  it('says why where there is none', () => {
    const { plan, source } = twoUnits();
    const why = (key: string) => {
      const r = explainOrWhy(plan, key);
      return r.ok ? '' : r.error.what;
    };
    expect(why(dayKey('dayRefuelMin', source.id, 1))).toContain('no tank that is known');
    expect(why(dayKey('dayPeakW', source.id, 7))).toBe('There are no blocks on day 7.');
    expect(why(dayKey('dayPeakW', 'nobody', 1))).toContain('no source of power nobody');
    expect(why(dayKey('dayBurnsH', 'nobody', 1))).toContain('does not burn');
    expect(explainCommand(plan, dayKey('dayEnergyWh', source.id, 1))).toMatchObject({ exitCode: 0 });
  });
});

test.each(['street', 'study', 'stage'] as const)(
  'every figure of the days of “%s” opens its working',
  (name) => {
    const plan = demoPlan(name);
    for (const n of daysOf(plan)) {
      const d = daySummary(plan, n);
      const without = dayKeysOf(d, unitHours(plan, n)).flatMap((k) => {
        const r = explainOrWhy(plan, k);
        return r.ok ? [] : [`${k}: ${r.error.what}`];
      });
      expect(without).toEqual([]);
      for (const s of d.sources)
        if (s.peakW > 0)
          expect(explain(plan, dayKey('dayPeakW', s.id, n))?.result).toBe(formatWatts(s.peakW));
    }
  },
);
