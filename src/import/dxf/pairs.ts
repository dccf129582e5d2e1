/** A group of a DXF file: its code and its value as written. */
export interface Pair {
  readonly code: number;
  readonly value: string;
}

/** One entity or table entry: its name and its groups. */
export interface Entry {
  readonly name: string;
  readonly pairs: readonly Pair[];
  /** Line of the file it begins at, counted from 1. */
  readonly line: number;
}

/** Walks the groups of a text DXF without splitting the whole file at once. Stops with a reason at what is no group. */
export class PairReader {
  readonly #text: string;
  #at = 0;
  #line = 0;
  /** Why reading ended early; undefined at a proper end. */
  fault: string | undefined;

  constructor(text: string) {
    this.#text = text;
  }

  get line(): number {
    return this.#line;
  }

  #next(): string | undefined {
    if (this.#at >= this.#text.length) return undefined;
    let end = this.#text.indexOf('\n', this.#at);
    if (end < 0) end = this.#text.length;
    const stop = end > this.#at && this.#text.charCodeAt(end - 1) === 13 ? end - 1 : end;
    const line = this.#text.slice(this.#at, stop);
    this.#at = end + 1;
    this.#line++;
    return line;
  }

  pair(): Pair | undefined {
    const code = this.#next();
    if (code === undefined) return undefined;
    const value = this.#next();
    const n = Number(code);
    if (value === undefined) {
      if (code.trim() !== '') this.fault = 'it is cut off';
      return undefined;
    }
    if (code.trim() === '' || !Number.isInteger(n)) {
      this.fault = `line ${this.#line - 1} should be a group code, and is “${code.trim().slice(0, 20)}”`;
      return undefined;
    }
    return { code: n, value };
  }
}

/** All entries of a file in order: sections, tables, blocks and entities alike. */
export function* entriesOf(reader: PairReader): Generator<Entry> {
  let name: string | undefined;
  let pairs: Pair[] = [];
  let line = 1;
  for (let p = reader.pair(); p; p = reader.pair()) {
    if (p.code === 0) {
      if (name !== undefined) yield { name, pairs, line };
      name = p.value.trim().toUpperCase();
      pairs = [];
      line = reader.line;
    } else if (p.code !== 999) pairs.push(p);
  }
  if (name !== undefined) yield { name, pairs, line };
}

/** The first value of a code as text. */
export const textOf = (e: Entry, code: number): string | undefined =>
  e.pairs.find((p) => p.code === code)?.value.trim();

/** The first value of a code as a number, or another. */
export const numberOf = (e: Entry, code: number, otherwise = 0): number => {
  const v = textOf(e, code);
  const n = v === undefined || v === '' ? Number.NaN : Number(v);
  return Number.isFinite(n) ? n : otherwise;
};

/** Points whose x and y have these codes, in order. */
export const pointsOf = (e: Entry, xCode: number, yCode: number): readonly (readonly [number, number])[] => {
  const out: [number, number][] = [];
  for (const p of e.pairs) {
    const n = Number(p.value);
    if (p.code === xCode) out.push([Number.isFinite(n) ? n : 0, 0]);
    const last = out.at(-1);
    if (p.code === yCode && last) last[1] = Number.isFinite(n) ? n : 0;
  }
  return out;
};
