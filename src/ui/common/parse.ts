import { fail, ok, type Result } from '../../kernel/result.ts';
import { type LengthUnits, parseLengthMm } from '../../kernel/units.ts';

/** Readers for fields: what a person typed, as a value or as words on what was expected. */

export const text = (s: string): string => s;
export const anyText = (s: string): Result<string> => ok(s.trim());
export const formatLevel = (v: number): string => (v === 0 ? 'off' : `${v} %`);

export const requiredText = (s: string): Result<string> =>
  s.trim() ? ok(s.trim()) : fail({ what: 'A unit needs a number or a name.' });

export const parseHeight = (t: string, units: LengthUnits): Result<number> => {
  const r = parseLengthMm(t, units);
  if (r.ok && (r.value < 0 || r.value > 60_000)) {
    return fail({ what: 'A height is between the floor and 60 m (197′).' });
  }
  return r;
};

export const parseThickness = (t: string, units: LengthUnits): Result<number> => {
  const r = parseLengthMm(t, units);
  if (r.ok && (r.value < 1 || r.value > 2000)) {
    return fail({ what: 'A wall is between 1 mm and 2 m (6′-6″) thick.' });
  }
  return r;
};

export const parseDegrees = (t: string): Result<number> => {
  const n = Number(t.replace('°', '').replace('−', '-').trim());
  return t.trim() !== '' && Number.isFinite(n)
    ? ok(((n % 360) + 360) % 360)
    : fail({ what: `“${t}” is not an angle.`, todo: 'Write degrees, like 90.' });
};

/** Degrees to turn by, as typed: `90`, `-15`, `22.5°`; more than a full turn is not cut. */
export const parseTurn = (t: string): Result<number> => {
  const n = Number(t.replace('°', '').replace('−', '-').replace(',', '.').trim());
  return t.trim() !== '' && Math.abs(n) <= 3600
    ? ok(n)
    : fail({ what: `“${t}” is not an angle.`, todo: 'Write degrees, like 90 or -15.' });
};

export const formatTilt = (d: number): string => `${Math.round(d)}°`.replace('-', '−');

/** A tilt as typed, down is negative: `-30`, `30 down`. */
export const parseTilt = (t: string): Result<number> => {
  const s = t.replace('°', '').replace('−', '-').trim().toLowerCase();
  const m = /^([+-]?\d+(?:[.,]\d+)?)\s*(down|up)?$/.exec(s);
  const n = Number(m?.[1]?.replace(',', '.')) * (m?.[2] === 'down' ? -1 : 1);
  return m && Math.abs(n) <= 90
    ? ok(n)
    : fail({ what: `“${t}” is not a tilt.`, todo: 'Write -90 to 90 degrees, like -30 or 30 down.' });
};

export const parseLevel = (t: string): Result<number> => {
  const s = t.trim().toLowerCase();
  if (s === 'off') return ok(0);
  if (s === 'full') return ok(100);
  const n = Number(s.replace('%', '').trim());
  return s !== '' && n >= 0 && n <= 100
    ? ok(n)
    : fail({ what: `“${t}” is not a level.`, todo: 'Write 0 to 100, or off.' });
};
