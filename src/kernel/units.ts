import { fail, ok, type Problem, type Result } from './result.ts';

/** How lengths are shown and how a bare number is read. */
export type LengthUnits = 'imperial' | 'metric';

export const MM_PER_INCH = 25.4;
export const MM_PER_FOOT = 304.8;

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const FRACTIONS: Readonly<Record<string, number>> = {
  '½': 0.5,
  '¼': 0.25,
  '¾': 0.75,
  '⅛': 0.125,
  '⅜': 0.375,
  '⅝': 0.625,
  '⅞': 0.875,
};
const toNumber = (s: string): number => Number(s.replace(',', '.'));

const metricMatch = new RegExp(String.raw`^(${NUMBER})\s*(mm|cm|m|metres?|meters?)$`, 'i');
const feetMatch = new RegExp(String.raw`^(${NUMBER})\s*(?:'|ft|feet|foot)$`, 'i');
const inchPart = String.raw`(?:(${NUMBER})(?:[\s-]+(\d+)\/(\d+))?|(\d+)\/(\d+)|(?:(\d+)\s*)?([½¼¾⅛⅜⅝⅞]))`;
const inchMatch = new RegExp(String.raw`^${inchPart}\s*(?:"|''|in|inch|inches)$`, 'i');
const feetInchMatch = new RegExp(
  String.raw`^(${NUMBER})\s*(?:'|ft|feet|foot)\s*-?\s*${inchPart}\s*(?:"|''|in|inch|inches)?$`,
  'i',
);

const inchesFrom = (g: readonly (string | undefined)[]): number => {
  const [whole, num, den, bareNum, bareDen, markWhole, mark] = g;
  if (mark !== undefined) return (markWhole ? Number(markWhole) : 0) + (FRACTIONS[mark] ?? 0);
  if (bareNum !== undefined && bareDen !== undefined) return Number(bareNum) / Number(bareDen);
  return toNumber(whole ?? '0') + (num && den ? Number(num) / Number(den) : 0);
};

/**
 * Reads a length as people write it: `12' 6"`, `12'-6 1/2"`, `6ft`, `72"`, `1.83m`, `183 cm`, `3.8`.
 * A bare number is feet or metres, by `units`. Gives millimetres.
 */
export const parseLengthMm = (text: string, units: LengthUnits): Result<number> => {
  const s = text.trim().replace(/[’′]/g, "'").replace(/[”″]/g, '"').replace(/−/g, '-');
  const negative = s.startsWith('-');
  const body = negative ? s.slice(1).trim() : s;
  const value = parseBody(body, units);
  if (value === undefined || !Number.isFinite(value)) return fail(lengthProblem(text, units));
  if (value > LONGEST_MM)
    return fail({ what: `“${text}” is more than 100 km.`, todo: 'Give a length that a set can have.' });
  return ok(negative ? -value : value);
};

/** 100 km. More is a slip of the hand: a drawing of it would have no end. */
export const LONGEST_MM = 1e8;

const parseBody = (s: string, units: LengthUnits): number | undefined => {
  let m = metricMatch.exec(s);
  if (m) {
    const unit = (m[2] ?? 'm').toLowerCase();
    return toNumber(m[1] ?? '') * (unit === 'mm' ? 1 : unit === 'cm' ? 10 : 1000);
  }
  m = feetMatch.exec(s);
  if (m) return toNumber(m[1] ?? '') * MM_PER_FOOT;
  m = inchMatch.exec(s);
  if (m) return inchesFrom(m.slice(1)) * MM_PER_INCH;
  m = feetInchMatch.exec(s);
  if (m) return toNumber(m[1] ?? '') * MM_PER_FOOT + inchesFrom(m.slice(2)) * MM_PER_INCH;
  if (new RegExp(`^${NUMBER}$`).test(s)) return toNumber(s) * (units === 'imperial' ? MM_PER_FOOT : 1000);
  return undefined;
};

const lengthProblem = (text: string, units: LengthUnits): Problem => ({
  what: `“${text}” is not a length.`,
  todo:
    units === 'imperial'
      ? `Write it like 12' 6", 6ft, 72" or 1.83m.`
      : `Write it like 3.8, 3.8m, 380cm or 12' 6".`,
});

/** A length in the plan's units: `12'-6"` (to the half inch) or `3.81 m`. */
export const formatLength = (mm: number, units: LengthUnits): string => {
  if (!Number.isFinite(mm)) return '–';
  if (units === 'metric') return `${(mm / 1000).toFixed(2)} m`;
  const sign = mm < 0 ? '−' : '';
  const halves = Math.round((Math.abs(mm) / MM_PER_INCH) * 2);
  const feet = Math.floor(halves / 24);
  const rest = halves - feet * 24;
  const inches = `${Math.floor(rest / 2)}${rest % 2 ? '½' : ''}`;
  return feet === 0 ? `${sign}${inches === '0½' ? '½' : inches}″` : `${sign}${feet}′-${inches}″`;
};

/** An area in square feet or square metres: `441 sq ft`, `41.0 m²`. */
export const formatArea = (mm2: number, units: LengthUnits): string =>
  !Number.isFinite(mm2)
    ? '–'
    : units === 'metric'
      ? `${(mm2 / 1e6).toFixed(1)} m²`
      : `${Math.round(mm2 / MM_PER_FOOT ** 2)} sq ft`;

/** A cable length as it is ordered: `50 ft` or `10 m`. */
export const formatCableLength = (mm: number, units: LengthUnits): string =>
  units === 'imperial' ? `${Math.round(mm / MM_PER_FOOT)} ft` : `${Number((mm / 1000).toFixed(1))} m`;

/** Amperes with one decimal, so that columns line up: `23.0 A`. */
export const formatAmps = (a: number): string => (Number.isFinite(a) ? `${a.toFixed(1)} A` : '–');

/** Volts with one decimal. */
export const formatVolts = (v: number): string => (Number.isFinite(v) ? `${v.toFixed(1)} V` : '–');

/** Watts below 1,000 W as `650 W`, above as `1.2 kW` (two decimals only when they say something). */
export const formatWatts = (w: number): string => scaled(w, 'W');

/** Volt-amperes, as `formatWatts`. */
export const formatVoltAmps = (va: number): string => scaled(va, 'VA');

const scaled = (n: number, unit: string): string => {
  if (!Number.isFinite(n)) return '–';
  if (Math.abs(n) < 999.5) return `${Math.round(n)} ${unit}`;
  const k = n / 1000;
  return `${Math.abs(k) < 9.995 ? Number(k.toFixed(2)) : Number(k.toFixed(1))} k${unit}`;
};

/** A US gallon in litres. */
const LITRES_PER_GALLON = 3.785412;

/** Fuel in the plan's units: `41.6 L` or `11.0 gal`; a rate with ` an hour` after it. */
export const formatFuel = (litres: number, units: LengthUnits): string => {
  if (!Number.isFinite(litres)) return '–';
  const [n, unit] = units === 'imperial' ? [litres / LITRES_PER_GALLON, 'gal'] : [litres, 'L'];
  return `${n < 99.95 ? n.toFixed(1) : n.toFixed(0)} ${unit}`;
};

/** Percent without decimals at or above 10, one below: `143 %`, `2.9 %`. */
export const formatPct = (p: number): string =>
  Number.isFinite(p)
    ? `${Math.abs(p) < 0.05 ? '0.0' : Math.abs(p) < 9.95 ? p.toFixed(1) : p.toFixed(0)} %`
    : '–';

/** A clock time from minutes after the shooting day's 00:00; past midnight shows as +1: `01:30 +1`. */
export const formatClock = (minutes: number): string => {
  const whole = Math.round(minutes);
  const day = Math.floor(whole / 1440);
  const m = whole - day * 1440;
  const hhmm = `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
  return day > 0 ? `${hhmm} +${day}` : hhmm;
};

/** Metres a second in one mile an hour (exact by the international mile) and in one kilometre an hour. */
const MPS_PER_MPH = 0.44704;
const MPS_PER_KMH = 1 / 3.6;

/** A speed of wind in metres a second, with the plan's own unit beside it: `8 m/s (18 mph)`, `8 m/s (29 km/h)`. */
export const formatWind = (mps: number, units: LengthUnits): string => {
  if (!Number.isFinite(mps)) return '–';
  const beside = mps / (units === 'imperial' ? MPS_PER_MPH : MPS_PER_KMH);
  const short = beside < 9.95 ? Number(beside.toFixed(1)) : Math.round(beside);
  return `${Number(mps.toFixed(1))} m/s (${short} ${units === 'imperial' ? 'mph' : 'km/h'})`;
};

/**
 * A speed of wind as typed, in metres a second: `5`, `5 m/s`, `11 mph`, `18 km/h`, or as `formatWind` writes it. Empty means not
 * known; a bare number is metres a second; at most 100 m/s.
 */
export const parseWind = (text: string): Result<number | undefined> => {
  const s = text
    .trim()
    .toLowerCase()
    .replace(',', '.')
    .replace(/^([^(]*m\/s)\s*\(.*\)$/, '$1')
    .trim();
  if (s === '') return ok(undefined);
  const m = /^(\d+(?:\.\d+)?)\s*(m\/s|mph|km\/h|kmh|)$/.exec(s);
  const by = { mph: MPS_PER_MPH, 'km/h': MPS_PER_KMH, kmh: MPS_PER_KMH }[m?.[2] ?? ''] ?? 1;
  const mps = Number(m?.[1]) * by;
  return m && mps <= 100
    ? ok(mps)
    : fail({
        what: `“${text}” is not a speed of wind.`,
        todo: 'Write it like 5 m/s, 11 mph or 18 km/h, up to 100 m/s; 0 indoors.',
      });
};
