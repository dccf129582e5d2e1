import { NEUTRAL } from '../../derive/supply-types.ts';

/** A load between a leg and a neutral, as drawn at its rated volts. */
export interface NeutralLoad {
  readonly leg: number;
  readonly wattsW: number;
  readonly varsVar: number;
  readonly ratedV: number;
}

/** Volts of the floating neutral, and for each load the volts across it and its watts. */
export interface FloatingNeutral {
  readonly neutralV: number;
  readonly loads: readonly { readonly voltsV: number; readonly wattsW: number }[];
}

/**
 * What loads see whose common neutral has come off: each is taken as the impedance it has at its rated volts, and their
 * star point floats to where the currents sum to nothing, V = Σ Y·V_leg ÷ Σ Y with Y = (P − jQ) ÷ V². Cable impedance is
 * left out: `lostNeutral` counts it. `legV` holds the legs' phasors as (re, im) pairs. With one leg only, or no load, nothing flows.
 */
export const floatingNeutral = (
  loads: readonly NeutralLoad[],
  legV: Float64Array | readonly number[],
): FloatingNeutral => {
  let gr = 0;
  let gi = 0;
  let jr = 0;
  let ji = 0;
  for (const l of loads) {
    const yr = l.wattsW / (l.ratedV * l.ratedV);
    const yi = -l.varsVar / (l.ratedV * l.ratedV);
    const [vr, vi] = [legV[l.leg * 2] ?? 0, legV[l.leg * 2 + 1] ?? 0];
    gr += yr;
    gi += yi;
    jr += yr * vr - yi * vi;
    ji += yr * vi + yi * vr;
  }
  const d = gr * gr + gi * gi;
  const nr = d === 0 ? 0 : (jr * gr + ji * gi) / d;
  const ni = d === 0 ? 0 : (ji * gr - jr * gi) / d;
  return {
    neutralV: Math.hypot(nr, ni),
    loads: loads.map((l) => {
      const voltsV = d === 0 ? 0 : Math.hypot((legV[l.leg * 2] ?? 0) - nr, (legV[l.leg * 2 + 1] ?? 0) - ni);
      return { voltsV, wattsW: l.wattsW * (voltsV / l.ratedV) ** 2 };
    }),
  };
};

/** Whether a load branch hangs between a leg and the neutral. */
export const onNeutral = (b: { readonly to: number }): boolean => b.to === NEUTRAL;
