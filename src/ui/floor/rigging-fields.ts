import { fail, ok, type Result } from '../../kernel/result.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import type { AnyRecord } from '../../plan/records/index.ts';
import { useServices } from '../services.ts';

export const formatCount = (n: number): string => String(n);

export const parseCount = (t: string): Result<number> => {
  const n = Number(t.trim());
  return t.trim() !== '' && Number.isInteger(n) && n >= 0 && n <= 1000
    ? ok(n)
    : fail({ what: `“${t}” is not a number of things.`, todo: 'Write a whole number from 0.' });
};

export { parseWind } from '../../kernel/units.ts';

/** How far a frame leans, in degrees from upright. */
export const parseLean = (t: string): Result<number> => {
  const n = Number(t.replace('°', '').trim().replace(',', '.'));
  return t.trim() !== '' && n >= 0 && n <= 90
    ? ok(n)
    : fail({ what: `“${t}” is no lean.`, todo: 'Write degrees from 0 (upright) to 90 (flat).' });
};

/** A mass as typed: `80`, `80 kg`, `180 lb`; empty means not known. Kilograms. */
export const parseKg = (t: string): Result<number | undefined> => {
  const s = t.trim().toLowerCase().replace(',', '.');
  if (s === '') return ok(undefined);
  const m = /^(\d+(?:\.\d+)?)\s*(kg|lbs?|)$/.exec(s);
  return m
    ? ok(Number(m[1]) * (m[2]?.startsWith('lb') ? 0.45359237 : 1))
    : fail({ what: `“${t}” is not a mass.`, todo: 'Write it like 80 kg or 180 lb.' });
};

/** Commits a change of one record, or says why it does not fit. */
export const useChange = (record: AnyRecord) => {
  const { session } = useServices();
  return (label: string, patch: Record<string, unknown>): void => {
    const r = changeRecord(session.getState().plan, record, patch as Partial<AnyRecord>);
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };
};
