import type { LengthUnits } from '../kernel/units.ts';
import type { LabelStock } from '../plan/records/index.ts';

const IN = 25.4;

const grid = (
  sheet: readonly [number, number],
  columns: number,
  rows: number,
  size: readonly [number, number],
  first: readonly [number, number],
  pitch: readonly [number, number],
): LabelStock => ({
  sheetWidthMm: sheet[0],
  sheetHeightMm: sheet[1],
  columns,
  rows,
  widthMm: size[0],
  heightMm: size[1],
  leftMm: first[0],
  topMm: first[1],
  pitchXMm: pitch[0],
  pitchYMm: pitch[1],
});

const A4 = [210, 297] as const;
const LETTER = [8.5 * IN, 11 * IN] as const;

/** Label sheets to start from; the sizes are common practice (from memory): measure the sheet at hand and type its own. */
export const LABEL_STOCKS: readonly {
  readonly name: string;
  readonly units: LengthUnits;
  readonly stock: LabelStock;
}[] = [
  {
    name: 'A4, 3 × 7 of 63.5 × 38.1 mm',
    units: 'metric',
    stock: grid(A4, 3, 7, [63.5, 38.1], [7.25, 15.15], [66, 38.1]),
  },
  {
    name: 'A4, 3 × 8 of 70 × 37 mm',
    units: 'metric',
    stock: grid(A4, 3, 8, [70, 37], [0, 0.5], [70, 37]),
  },
  {
    name: 'A4, 2 × 7 of 99.1 × 38.1 mm',
    units: 'metric',
    stock: grid(A4, 2, 7, [99.1, 38.1], [4.65, 15.15], [101.6, 38.1]),
  },
  {
    name: 'Letter, 3 × 10 of 2⅝ × 1 in',
    units: 'imperial',
    stock: grid(LETTER, 3, 10, [2.625 * IN, IN], [0.1875 * IN, 0.5 * IN], [2.75 * IN, IN]),
  },
  {
    name: 'Letter, 2 × 5 of 4 × 2 in',
    units: 'imperial',
    stock: grid(LETTER, 2, 5, [4 * IN, 2 * IN], [0.15625 * IN, 0.5 * IN], [4.1875 * IN, 2 * IN]),
  },
  {
    name: 'Letter, 2 × 7 of 4 × 1⅓ in',
    units: 'imperial',
    stock: grid(
      LETTER,
      2,
      7,
      [4 * IN, (4 / 3) * IN],
      [0.15625 * IN, 0.8333 * IN],
      [4.1875 * IN, (4 / 3) * IN],
    ),
  },
];
