import { CAP, PITCH_MM } from './ink.ts';

export interface Column {
  readonly id: string;
  readonly head: string;
  /** Least width that is of use with letters of the least size, millimetres. */
  readonly leastMm: number;
  /** Share of what is left over. */
  readonly grow?: number;
  readonly align?: 'left' | 'right';
  /** Columns with a higher number go first where the sheet is narrow; 0 always stays. */
  readonly dispensable?: number;
  /** Word over several columns. */
  readonly group?: string;
  /** Remarks stay in letters of the least size. */
  readonly note?: boolean;
}

export interface PlacedColumn extends Column {
  readonly x: number;
  readonly w: number;
  /** Height of the capitals of what stands in it. */
  readonly capMm: number;
}

const GAP_MM = 2.2;
/** More room where figures that end at the right meet a text that begins at the left. */
const MEET_MM = 2.4;
/** Room a column needs more where its letters are of the larger size: a text can be broken, a figure cannot. */
const LARGER = { figures: 1.3, text: 1.1 } as const;

const gapBefore = (columns: readonly Column[], i: number): number =>
  i === 0 ? 0 : GAP_MM + (columns[i - 1]?.align === 'right' && columns[i]?.align !== 'right' ? MEET_MM : 0);

const needOf = (list: readonly Column[]): number =>
  list.reduce((s, c, i) => s + c.leastMm + gapBefore(list, i), 0);

/** The columns as they must be for letters of the larger of the two sizes of a table. */
const larger = (columns: readonly Column[]): readonly Column[] =>
  columns.map((c) =>
    c.note ? c : { ...c, leastMm: c.leastMm * (c.align === 'right' ? LARGER.figures : LARGER.text) },
  );

/**
 * Columns for a width. Letters are 2.5 mm high, the size ISO 3098 recommends, where all columns have room for it; else
 * 1.8 mm, and the dispensable columns are left out until the rest fit. What is over is shared out.
 */
export const placeColumns = (columns: readonly Column[], widthMm: number): readonly PlacedColumn[] => {
  const large = larger(columns);
  const roomy = needOf(large) <= widthMm;
  let kept = [...(roomy ? large : columns)];
  while (needOf(kept) > widthMm) {
    const out = kept.reduce<Column | undefined>(
      (best, c) => ((c.dispensable ?? 0) > (best?.dispensable ?? 0) ? c : best),
      undefined,
    );
    if (!out) break;
    kept = kept.filter((c) => c !== out);
  }
  const squeeze = Math.min(1, widthMm / needOf(kept));
  const over = Math.max(0, widthMm - needOf(kept));
  const shares = kept.reduce((s, c) => s + (c.grow ?? 0), 0) || 1;
  let x = 0;
  return kept.map((c, i) => {
    x += gapBefore(kept, i) * squeeze;
    const w = c.leastMm * squeeze + (over * (c.grow ?? 0)) / shares;
    const placed = { ...c, x, w, capMm: roomy && !c.note ? CAP.value : CAP.note };
    x += w;
    return placed;
  });
};

/** From one line to the next of a text in letters of a height. */
export const pitchOf = (capMm: number): number => (capMm > CAP.note ? 4.4 : PITCH_MM);

/** Height of a row of one line in letters of a height. */
export const rowMm = (capMm: number): number => (capMm > CAP.note ? 5.8 : 4.8);
