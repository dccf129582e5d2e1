import type { z } from 'zod';
import type { kindSchema } from '../plan/kinds/kinds.ts';
import type { Practice } from '../plan/records/index.ts';

/** A kind as a family table gives it: defaults open, without id and origin. */
export type Entry = Omit<z.input<typeof kindSchema>, 'id' | 'type' | 'origin'> & Record<string, unknown>;

/** Makes a family's entries for one practice. */
export type Family = (practice: Practice) => readonly Entry[];

export const COMMON = 'common practice, no published source';

/** Texts that differ by practice are written `{North American|European}`. */
export const worded = (text: string, practice: Practice): string =>
  text.replace(/\{([^|}]*)\|([^}]*)\}/g, (_, na: string, eu: string) =>
    practice === 'north-america' ? na : eu,
  );

/** `650 W` below 2 kW, `2.5 kW` from there: the way such units are named. */
export const wattsWord = (wattsW: number): string =>
  wattsW < 2000 ? `${wattsW} W` : `${Number((wattsW / 1000).toFixed(2))} kW`;

/** The watts as people type them: 1200 gives `1200w`, `1.2k`, `1.2kw`. */
export const wattsTyped = (wattsW: number): readonly string[] => {
  const k = String(Number((wattsW / 1000).toFixed(2)));
  return wattsW < 500 ? [`${wattsW}w`] : [`${wattsW}w`, `${k}k`, `${k}kw`];
};

const FT = 304.8;

/** Stock lengths: feet in North America, metres in Europe, in millimetres. */
export const stockMm = (practice: Practice, feet: readonly number[], metres: readonly number[]): number[] =>
  practice === 'north-america' ? feet.map((f) => Math.round(f * FT)) : metres.map((m) => m * 1000);

/**
 * Field angle in degrees of a beam that falls off as a power of the cosine: the full angle at 10 % of the
 * centre for a given full angle at 50 %. I(γ) = I0·cosⁿγ, n = ln 0.5 / ln cos(beam/2).
 */
export const fieldOfBeamDeg = (beamDeg: number): number => {
  const n = Math.log(0.5) / Math.log(Math.cos((beamDeg * Math.PI) / 360));
  return Number(((Math.acos(0.1 ** (1 / n)) * 360) / Math.PI).toFixed(1));
};
