import { fail, ok, type Result } from '../../../kernel/result.ts';
import { type LengthUnits, MM_PER_FOOT } from '../../../kernel/units.ts';

const numberIn = (t: string): { readonly n: number; readonly unit: string } => {
  const m = /^\s*([-−]?\d+(?:[.,]\d+)?)\s*([^\d\s]*.*)$/.exec(t);
  return {
    n: m ? Number((m[1] ?? '').replace('−', '-').replace(',', '.')) : Number.NaN,
    unit: (m?.[2] ?? '').trim().toLowerCase(),
  };
};

/** A number of one unit, or nothing where it is not known. */
export const optionalNumber =
  (unit: string, least: number, most: number, example: string) =>
  (t: string): Result<number | undefined> => {
    if (t.trim() === '') return ok(undefined);
    const { n, unit: typed } = numberIn(t);
    if (!Number.isFinite(n) || (typed !== '' && typed !== unit.toLowerCase()))
      return fail({
        what: `“${t}” is not a number of ${unit}.`,
        todo: `Write it like ${example}, or leave it empty.`,
      });
    return n >= least && n <= most
      ? ok(n)
      : fail({
          what: `${t.trim()} is outside ${least} to ${most} ${unit}.`,
          todo: `Write it like ${example}.`,
        });
  };

const FAHRENHEIT = 1.8;
const toC = (f: number): number => (f - 32) / FAHRENHEIT;

export const formatTemp = (c: number, units: LengthUnits): string =>
  units === 'imperial' ? `${Math.round(c * FAHRENHEIT + 32)} °F` : `${Math.round(c * 10) / 10} °C`;

/** A temperature in the plan's scale unless its letter is typed, in °C. */
export const parseTemp =
  (units: LengthUnits) =>
  (t: string): Result<number> => {
    const { n, unit } = numberIn(t);
    const letter = unit.replace('°', '').trim();
    const f = letter === 'f' || (letter === '' && units === 'imperial');
    const c = f ? toC(n) : n;
    if (!Number.isFinite(n) || !['', 'c', 'f'].includes(letter))
      return fail({ what: `“${t}” is not a temperature.`, todo: 'Write it like 30 °C or 86 °F.' });
    return c >= -40 && c <= 70
      ? ok(Math.round(c * 10) / 10)
      : fail({ what: 'Air is between −40 and 70 °C (−40 and 158 °F) here.' });
  };

const FOOT_M = MM_PER_FOOT / 1000;

export const formatAltitude = (m: number | undefined, units: LengthUnits): string =>
  m === undefined ? '' : units === 'imperial' ? `${Math.round(m / FOOT_M)} ft` : `${Math.round(m)} m`;

/** A height above the sea in the plan's units unless its own is typed, in metres; nothing where it is not known. */
export const parseAltitude =
  (units: LengthUnits) =>
  (t: string): Result<number | undefined> => {
    if (t.trim() === '') return ok(undefined);
    const { n, unit } = numberIn(t);
    const feet = /^(ft|feet|['′])$/.test(unit) || (unit === '' && units === 'imperial');
    const m = feet ? n * FOOT_M : n;
    if (!Number.isFinite(n) || !/^(|m|ft|feet|['′])$/.test(unit))
      return fail({
        what: `“${t}” is not a height above the sea.`,
        todo: 'Write it like 1600 m or 5250 ft.',
      });
    return m >= -450 && m <= 6000
      ? ok(Math.round(m))
      : fail({ what: 'Work is planned between −450 m and 6000 m (−1,476 and 19,685 ft) here.' });
  };

/** Dates of the shooting days, in their order. */
export const parseDates = (t: string): Result<readonly string[]> => {
  const dates = t.split(/[\s,;]+/).filter(Boolean);
  const bad = dates.find((d) => !/^\d{4}-\d{2}-\d{2}$/.test(d) || Number.isNaN(Date.parse(d)));
  return bad === undefined
    ? ok(dates)
    : fail({ what: `“${bad}” is not a date.`, todo: 'Write days like 2027-03-04, with commas between.' });
};
