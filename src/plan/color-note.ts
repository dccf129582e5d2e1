import { fail, ok, type Result } from '../kernel/result.ts';
import type { FixtureKind } from './kinds/kinds.ts';

/** Colour of a unit in a setup as the crew notes it: a colour temperature, words, or both. */
export interface ColorNote {
  readonly cctK?: number | undefined;
  readonly color?: string | undefined;
}

const LEAST_K = 1000;
const MOST_K = 20_000;

/** A colour note as it is read: `5600 K`, `5600 K · half blue`, `steel blue`; empty without one. */
export const colorNoteText = (n: ColorNote | undefined): string =>
  [n?.cctK === undefined ? '' : `${n.cctK} K`, n?.color ?? ''].filter(Boolean).join(' · ');

/** Reads a colour note: `5600`, `5600 K, half blue`, `steel blue`. Nothing is no note. */
export const readColorNote = (text: string): Result<ColorNote | undefined> => {
  const t = text.trim().replace(/\s+/g, ' ');
  if (t === '') return ok(undefined);
  const m = /^(\d{3,6}) ?(?:k\b)?(?: ?[·,;] ?| |$)(.*)$/i.exec(t);
  if (!m) return t.length <= 60 ? ok({ color: t }) : fail({ what: 'A colour note has 60 letters at most.' });
  const cctK = Number(m[1]);
  const color = (m[2] ?? '').trim();
  if (cctK < LEAST_K || cctK > MOST_K)
    return fail({
      what: `“${m[1]}” is no colour temperature.`,
      todo: `Write ${LEAST_K} to ${MOST_K} K, or words.`,
    });
  if (color.length > 60) return fail({ what: 'A colour note has 60 letters at most.' });
  return ok({ cctK, ...(color ? { color } : {}) });
};

/** Why a kind cannot make a colour temperature, in words; undefined where it can or its kind does not say. */
export const colorFault = (n: ColorNote | undefined, kind: FixtureKind | undefined): string | undefined => {
  const { cct } = kind ?? {};
  if (n?.cctK === undefined || !cct || (n.cctK >= cct.minK && n.cctK <= cct.maxK)) return undefined;
  return cct.minK === cct.maxK
    ? `its kind makes ${cct.minK} K`
    : `its kind makes ${cct.minK} to ${cct.maxK} K`;
};
