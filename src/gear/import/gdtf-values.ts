/** A number as written in a fixture file; undefined for what is none. A decimal comma is read too. */
export const numberOf = (text: string | undefined): number | undefined => {
  if (text === undefined || !/^[-+]?(\d+([.,]\d*)?|[.,]\d+)([eE][-+]?\d{1,3})?$/.test(text)) return undefined;
  const n = Number(text.replace(',', '.'));
  return Number.isFinite(n) ? n : undefined;
};

/** A number above zero; 0 stands for “not known” in these files. */
export const positiveOf = (text: string | undefined, max: number): number | undefined => {
  const n = numberOf(text);
  return n !== undefined && n > 0 && n <= max ? n : undefined;
};

/** Text from a file made fit to show: no control characters, no line breaks, not endless. */
export const cleanText = (text: string | undefined, max = 120): string => {
  const line = (text ?? '')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
    .replace(/[\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/\p{Surrogate}/gu, '\ufffd');
  return line.length > max ? `${line.slice(0, max - 1).replace(/\p{Surrogate}/gu, '')}…` : line;
};

/** Highest slot number read: 64 universes. Beyond it a file is taken as faulty. */
export const MAX_SLOT = 64 * 512;
/** Bytes of one channel; the standard has four. */
const MAX_BYTES = 8;

/**
 * Slots of a channel within its break, most significant byte first (DIN SPEC 15800, DMXChannel `Offset`):
 * `1,2` is a coarse and fine pair. Empty, absent or `None` is a virtual channel and gives an empty list.
 * Undefined for what is no list of slot numbers.
 */
export const offsetsOf = (text: string | undefined): readonly number[] | undefined => {
  if (text === undefined || /^(none)?$/i.test(text.trim())) return [];
  const parts = text.split(',', MAX_BYTES + 1).map((t) => t.trim());
  if (parts.length > MAX_BYTES) return undefined;
  const slots = parts.map((t) => (/^\d{1,6}$/.test(t) ? Number(t) : 0));
  return slots.every((n) => n >= 1 && n <= MAX_SLOT) ? slots : undefined;
};

/** A DMX address (DIN SPEC 15800, table 1): an absolute slot number or `universe.address`, both from 1. */
export const addressOf = (text: string | undefined): number | undefined => {
  const m = /^(?:(\d{1,5})\.)?(\d{1,6})$/.exec(text ?? '');
  if (!m) return undefined;
  const slot = Number(m[2]);
  if (m[1] === undefined) return slot >= 1 && slot <= MAX_SLOT ? slot : undefined;
  const universe = Number(m[1]);
  const absolute = (universe - 1) * 512 + slot;
  return universe >= 1 && slot >= 1 && slot <= 512 && absolute <= MAX_SLOT ? absolute : undefined;
};

/** A DMX value: the number, the bytes it is written for, and whether it is shifted (not mirrored) to others. */
export interface DmxValue {
  readonly value: number;
  readonly bytes: number;
  readonly shift: boolean;
}

/** Reads `value/bytes` or `value/bytess` (DIN SPEC 15800, table 1). Undefined where it does not fit its bytes. */
export const dmxValueOf = (text: string): DmxValue | undefined => {
  const m = /^(\d{1,10})(?:\/([1-4])(s)?)?$/.exec(text.trim());
  if (!m) return undefined;
  const value = Number(m[1]);
  const bytes = Number(m[2] ?? '1');
  return value < 256 ** bytes ? { value, bytes, shift: m[3] !== undefined } : undefined;
};

/**
 * A DMX value in a channel of so many bytes. Mirrored values repeat their bytes (255/1 in two bytes is 65 535,
 * 128/1 is 32 896), shifted ones are filled with zeros (255/1s is 65 280). Source: DIN SPEC 15800, table 1.
 */
export const dmxInBytes = (v: DmxValue, bytes: number): number => {
  if (bytes <= v.bytes) return Math.floor(v.value / 256 ** (v.bytes - bytes));
  if (v.shift) return v.value * 256 ** (bytes - v.bytes);
  const source = Array.from(
    { length: v.bytes },
    (_, i) => Math.floor(v.value / 256 ** (v.bytes - 1 - i)) % 256,
  );
  let out = 0;
  for (let i = 0; i < bytes; i++) out = out * 256 + (source[i % v.bytes] ?? 0);
  return out;
};

/** A placement in metres: three rows of rotation with the shift in the fourth column. */
export type Matrix = readonly number[];

export const IDENTITY: Matrix = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0];

/** Reads `{a,b,c,d}{…}{…}{…}`, shift in the fourth column (DIN SPEC 15800, table 1). Anything else is the identity. */
export const matrixOf = (text: string | undefined): Matrix => {
  if (text === undefined || text.length > 1000) return IDENTITY;
  const numbers = text
    .replace(/[{}]/g, ' ')
    .split(/[\s,]+/)
    .filter(Boolean)
    .map(numberOf);
  const rows = numbers.slice(0, 12);
  return numbers.length === 16 && rows.every((n) => n !== undefined) ? (rows as number[]) : IDENTITY;
};

/** The placement of something placed by `b` inside something placed by `a`. */
export const composed = (a: Matrix, b: Matrix): Matrix => {
  const out: number[] = [];
  for (let r = 0; r < 3; r++)
    for (let c = 0; c < 4; c++) {
      let sum = c === 3 ? (a[r * 4 + 3] ?? 0) : 0;
      for (let k = 0; k < 3; k++) sum += (a[r * 4 + k] ?? 0) * (b[k * 4 + c] ?? 0);
      out.push(sum);
    }
  return out;
};
