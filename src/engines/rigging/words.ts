import type { LengthUnits } from '../../kernel/units.ts';

const LB_PER_KG = 2.20462262;
const MPH_PER_MPS = 2.23693629;
const LBF_PER_N = 0.22480894;

const short = (n: number): string =>
  Math.abs(n) < 9.95 ? String(Number(n.toFixed(1))) : String(Math.round(n));

/** A mass in kilograms, with pounds where the plan is in feet: `12 kg (26 lb)`. */
export const formatKg = (kg: number, units: LengthUnits): string => {
  if (!Number.isFinite(kg)) return '–';
  return units === 'imperial' ? `${short(kg)} kg (${short(kg * LB_PER_KG)} lb)` : `${short(kg)} kg`;
};

/** A force in newtons, with kilograms or pounds of force beside it: `369 N (38 kgf)`. */
export const formatNewtons = (n: number, units: LengthUnits): string => {
  if (!Number.isFinite(n)) return '–';
  const beside = units === 'imperial' ? `${short(n * LBF_PER_N)} lbf` : `${short(n / 9.80665)} kgf`;
  return `${Math.round(n)} N (${beside})`;
};

/** A speed of wind in metres a second, with miles an hour where the plan is in feet. */
export const formatWind = (mps: number, units: LengthUnits): string => {
  if (!Number.isFinite(mps)) return '–';
  const own = `${Number(mps.toFixed(1))} m/s`;
  return units === 'imperial' ? `${own} (${short(mps * MPH_PER_MPS)} mph)` : own;
};

/** A factor or ratio with two decimals; `none` where nothing tips. */
export const formatFactor = (f: number): string =>
  f === Infinity ? 'nothing tips it' : Number.isFinite(f) ? f.toFixed(2) : '–';
