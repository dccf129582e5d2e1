import { type LengthUnits, parseLengthMm } from '../../kernel/units.ts';

/** What can stand in a typed length. */
export const TYPED = /^[0-9a-z.,'"’′”″½¼¾⅛⅜⅝⅞/ -]$/i;
/** What a length begins with; other keys are still commands. */
const FIRST = /^[0-9½¼¾]$/;

/** The text after a key, or undefined where the key types nothing. */
export const typedAfter = (text: string, key: string): string | undefined => {
  if (key === 'Backspace' && text !== '') return text.slice(0, -1);
  return (text === '' ? FIRST : TYPED).test(key) ? text + key : undefined;
};

/** The length typed so far, or the usual one where nothing is typed. */
export const typedLength = (text: string, units: LengthUnits, usualMm: number) =>
  text === '' ? ({ ok: true, value: usualMm } as const) : parseLengthMm(text, units);
