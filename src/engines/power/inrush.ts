import type { SupplyNode } from '../../derive/supply-types.ts';

/** The band in which a breaker's magnetic release may act, in times its rating: below it holds, above it opens. */
export interface MagneticBand {
  readonly low: number;
  readonly high: number;
}

/**
 * Switch-on current as the magnetic release feels it, in times the running current. The pull on the release goes with the
 * square of the current, so a pulse shorter than a half-wave counts by the root of its share of one (an estimate).
 */
export const feltInrush = (multiple: number, ms: number | undefined, frequencyHz: number): number => {
  const halfWaveMs = 500 / frequencyHz;
  return multiple * Math.sqrt(Math.min(1, (ms ?? halfWaveMs) / halfWaveMs));
};

/** Running amps of a load on each leg at nominal volts and full level. */
export const nominalLegAmps = (n: SupplyNode): readonly [number, number, number] => {
  const amps: [number, number, number] = [0, 0, 0];
  if (!n.load) return amps;
  const va = n.load.wattsW / n.load.powerFactor;
  for (const b of n.branches)
    for (const w of [b.from, b.to]) if (w < 3) amps[w] = (amps[w] ?? 0) + (va * b.share) / b.nominalV;
  return amps;
};
