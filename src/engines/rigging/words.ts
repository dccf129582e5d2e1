import type { LengthUnits } from '../../kernel/units.ts';

export { formatWind } from '../../kernel/units.ts';

const LB_PER_KG = 2.20462262;
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

/** A factor or ratio with two decimals; `none` where nothing tips. */
export const formatFactor = (f: number): string =>
  f === Infinity ? 'nothing tips it' : Number.isFinite(f) ? f.toFixed(2) : '–';
