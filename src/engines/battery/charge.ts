import type { Rotation } from './rotation-types.ts';

/**
 * Share of the charging time from empty that a state of charge stands for: straight up to the change-over, then the taper,
 * whose charge goes in exponentially.
 */
const timeShareAt = (r: Rotation, soc: number): number => {
  const s = r.changeOver;
  if (soc <= s) return (soc / s) * r.changeOverTime;
  return r.changeOverTime + (1 - r.changeOverTime) * taperTime((soc - s) / (1 - s), r.taper);
};

/** Share of the taper's time after which a share of its charge is in, where the current falls to 1 ÷ `ratio`. */
const taperTime = (share: number, ratio: number): number =>
  Math.log(1 / (1 - share * (1 - 1 / ratio))) / Math.log(ratio);

/** Minutes to charge from a state of charge to full, where from empty it takes `fullMin`. */
export const chargeFrom = (r: Rotation, soc: number, fullMin: number): number =>
  fullMin * (1 - timeShareAt(r, Math.min(1, Math.max(0, soc))));

/**
 * The most charge a bay gives back in a minute over whole charges, as a share of full: a charge goes to full, and from the
 * change point it is the fastest for what it gives.
 */
export const fastestCharge = (r: Rotation, fullMin: number): number =>
  (1 - r.swapAt) / chargeFrom(r, r.swapAt, fullMin);
