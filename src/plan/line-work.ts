import { utf8Bytes } from '../kernel/canonical.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { blobBytes, blobOf } from './blobs.ts';
import type { Blob } from './records/index.ts';
import { decodeUtf8 } from './utf8.ts';

/** Lines of one layer of an imported drawing; x right, y down, from the upper left corner of the whole, in its units. */
export interface LineLayer {
  readonly name: string;
  /** Each a list of x, y, x, y …; one whose end is its start is closed. */
  readonly paths: readonly (readonly number[])[];
}

/** A line of text of an imported drawing, its left end at the point. */
export interface LineText {
  readonly layer: string;
  readonly x: number;
  readonly y: number;
  /** Height of capitals, in the drawing's units. */
  readonly cap: number;
  readonly rotationDeg: number;
  readonly text: string;
}

/** Line work baked from a drawing of another program: only straight pieces and texts, by layer. */
export interface LineWork {
  readonly layers: readonly LineLayer[];
  readonly texts: readonly LineText[];
}

const FORMAT = 'lampwright-lines';
/** More points than this are not drawn. */
export const MAX_LINE_POINTS = 1_500_000;

/** Line work as a part of a plan. Coordinates are kept to a thousandth of a unit. */
export const lineWorkBlob = (work: LineWork): Blob => {
  const round = (v: number): number => Math.round(v * 1000) / 1000;
  const text = JSON.stringify({
    format: FORMAT,
    version: 1,
    layers: work.layers.map((l) => ({ name: l.name, paths: l.paths.map((p) => p.map(round)) })),
    texts: work.texts.map((t) => ({ ...t, x: round(t.x), y: round(t.y), cap: round(t.cap) })),
  });
  return blobOf(utf8Bytes(text), 'application/json');
};

const known = new WeakMap<Blob, Result<LineWork, string>>();

/** The line work in a blob, or in words why there is none. Remembered per record. */
export const lineWorkOf = (blob: Blob): Result<LineWork, string> => {
  let read = known.get(blob);
  if (!read) {
    read = readLineWork(blob);
    known.set(blob, read);
  }
  return read;
};

const readLineWork = (blob: Blob): Result<LineWork, string> => {
  const bytes = blob.mediaType === 'application/json' ? blobBytes(blob) : undefined;
  if (!bytes) return fail('its line work is not in the plan');
  let data: unknown;
  try {
    data = JSON.parse(decodeUtf8(bytes) ?? '');
  } catch {
    return fail('its line work cannot be read');
  }
  const { format, version, layers, texts } = (data ?? {}) as Record<string, unknown>;
  if (format !== FORMAT || version !== 1 || !Array.isArray(layers) || !Array.isArray(texts))
    return fail('its line work is of another form');
  let points = 0;
  const out: LineLayer[] = [];
  for (const l of layers as readonly Record<string, unknown>[]) {
    if (!Array.isArray(l?.paths)) return fail('a layer of its line work cannot be read');
    const paths: number[][] = [];
    for (const p of l.paths as readonly unknown[]) {
      if (!Array.isArray(p) || p.length % 2 !== 0 || !p.every((v) => Number.isFinite(v)))
        return fail('a line of its line work cannot be read');
      points += p.length / 2;
      if (points > MAX_LINE_POINTS) return fail('its line work has too many points');
      if (p.length >= 4) paths.push(p as number[]);
    }
    out.push({ name: String(l.name ?? ''), paths });
  }
  const words = (texts as readonly Record<string, unknown>[]).flatMap((t): LineText[] =>
    [t?.x, t?.y, t?.cap, t?.rotationDeg].every((v) => Number.isFinite(v)) && typeof t.text === 'string'
      ? [{ ...(t as unknown as LineText), layer: String(t.layer ?? '') }]
      : [],
  );
  return ok({ layers: out, texts: words });
};
