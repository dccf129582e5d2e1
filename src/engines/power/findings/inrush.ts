import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { legName } from '../../../derive/systems.ts';
import type { Curve } from '../../../plan/kinds/ports.ts';
import { type Plan, planRecord } from '../../../plan/plan.ts';
import { feltInrush, type MagneticBand, nominalLegAmps } from '../inrush.ts';
import type { Judged } from '../types.ts';
import { ROUNDING } from './context.ts';

/** The magnetic band of a curve: rows `magnetic-<curve>-low` and `-high` of the limits table. */
export const magneticBand = (plan: Plan, curve: Curve): MagneticBand => {
  const row = (end: 'low' | 'high'): number => limitOf(plan, `magnetic-${curve.toLowerCase()}-${end}`).value;
  return { low: row('low'), high: row('high') };
};

/**
 * Ways whose breaker may open when it is switched on with all on it plugged in and up. Only the last breaker ahead of the
 * loads is judged: boxes are switched on empty. Amps of the loads are added as plain numbers.
 */
export const inrush = (c: Judged): readonly EngineFinding[] => {
  const { frequencyHz, practice } = planRecord(c.plan);
  const count = c.part.length;
  const felt = new Float64Array(count * 3);
  const loads = new Int32Array(count);
  const nested = new Uint8Array(count);
  for (let i = count - 1; i >= 0; i--) {
    const n = c.part[i];
    if (!n) continue;
    if (n.load && n.branches.length > 0) {
      const times = Math.max(1, feltInrush(n.load.inrushMultiple ?? 1, n.load.inrushMs, frequencyHz));
      const amps = nominalLegAmps(n);
      for (let l = 0; l < 3; l++) felt[i * 3 + l] = (felt[i * 3 + l] as number) + (amps[l] as number) * times;
      loads[i] = (loads[i] ?? 0) + 1;
    }
    if (n.parent < 0) continue;
    const up = n.parent - c.from;
    for (let l = 0; l < 3; l++) felt[up * 3 + l] = (felt[up * 3 + l] ?? 0) + (felt[i * 3 + l] ?? 0);
    loads[up] = (loads[up] ?? 0) + (loads[i] ?? 0);
    if ((n.what === 'way' && (loads[i] ?? 0) > 0) || nested[i]) nested[up] = 1;
  }
  const bands = new Map<Curve, MagneticBand>();
  const bandOf = (curve: Curve): MagneticBand => {
    let band = bands.get(curve);
    if (!band) {
      band = magneticBand(c.plan, curve);
      bands.set(curve, band);
    }
    return band;
  };
  return c.part.flatMap((n, i) => {
    const { way } = n;
    if (!way || (loads[i] ?? 0) === 0 || nested[i] || n.notComputed !== undefined) return [];
    const leg = n.legs.reduce(
      (a, b) => ((felt[i * 3 + b] ?? 0) > (felt[i * 3 + a] ?? 0) ? b : a),
      n.legs[0] ?? 0,
    );
    const amps = felt[i * 3 + leg] ?? 0;
    const band = bandOf(way.curve);
    const times = amps / way.breakerA;
    if (!(times > band.low * (1 + ROUNDING))) return [];
    const over = times >= band.high;
    return [
      {
        ...always('power-inrush', over ? 'warn' : 'note', n.key, [n.recordId], {
          label: n.label,
          amps,
          breakerA: way.breakerA,
          times,
          low: band.low,
          high: band.high,
          curve: way.curve === 'na' ? '' : way.curve,
          loads: loads[i] ?? 0,
          steps: Math.ceil(times / band.low),
          leg: legName(practice, n.system, leg),
          limitRow: `magnetic-${way.curve.toLowerCase()}-${over ? 'high' : 'low'}`,
        }),
        figure: times,
      } satisfies EngineFinding,
    ];
  });
};
