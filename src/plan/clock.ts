import { fail, ok, type Result } from '../kernel/result.ts';
import { LAST_MINUTE } from './records/day.ts';

/** A minute brought into the shooting day. */
export const clampMinute = (minute: number): number => Math.max(0, Math.min(LAST_MINUTE, Math.round(minute)));

/**
 * Reads a time of a shooting day as people write it: `7`, `730`, `07:30`, `7.30`, `01:30 +1`, `25:30`, `7:30 pm`. Gives minutes
 * after the day's 00:00, to noon of the next day.
 */
export const parseClock = (text: string): Result<number> => {
  const bad = fail({
    what: `“${text}” is not a time of the day.`,
    todo: 'Write it like 07:30; after midnight like 01:30 +1, to noon.',
  });
  const m = /^(\d{1,2})(?:[:.h ]?(\d{2}))?\s*(am|pm|a|p)?\s*(\+\s*1)?$/i.exec(text.trim());
  if (!m) return bad;
  let h = Number(m[1]);
  const min = Number(m[2] ?? 0);
  if (min > 59) return bad;
  if (m[3]) {
    if (h < 1 || h > 12) return bad;
    h = (h % 12) + (/^p/i.test(m[3]) ? 12 : 0);
  }
  const all = h * 60 + min + (m[4] ? 1440 : 0);
  return all <= LAST_MINUTE ? ok(all) : bad;
};
