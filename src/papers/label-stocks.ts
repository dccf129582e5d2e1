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

/** Smallest label that text fits on. */
const LEAST_WIDE_MM = 20;
const LEAST_HIGH_MM = 9;

const mm = (n: number): string => `${Number(n.toFixed(1))} mm`;

/** Labels across and down that are whole on their sheet. */
export const wholeLabels = (s: LabelStock): { readonly columns: number; readonly rows: number } => {
  const whole = (n: number, first: number, pitch: number, size: number, sheet: number): number =>
    Math.max(0, Math.min(n, Math.floor((sheet - first - size + 0.01) / pitch) + 1));
  return {
    columns: whole(s.columns, s.leftMm, s.pitchXMm, s.widthMm, s.sheetWidthMm),
    rows: whole(s.rows, s.topMm, s.pitchYMm, s.heightMm, s.sheetHeightMm),
  };
};

/** What does not go together in the sizes of a label sheet, in words; `prints` tells whether any label can be laid out. */
export const labelFaults = (
  s: LabelStock,
): { readonly faults: readonly string[]; readonly prints: boolean } => {
  const { columns, rows } = wholeLabels(s);
  const faults: string[] = [];
  for (const [word, size, first, sheet] of [
    ['wider', s.widthMm, s.leftMm, s.sheetWidthMm],
    ['higher', s.heightMm, s.topMm, s.sheetHeightMm],
  ] as const)
    if (first + size > sheet + 0.01)
      faults.push(
        `One label is ${word} than its sheet: it begins at ${mm(first)}, is ${mm(size)}, and the paper ends at ${mm(sheet)}. No labels are laid out.`,
      );
  for (const [word, n, size, pitch] of [
    ['across', s.columns, s.widthMm, s.pitchXMm],
    ['down', s.rows, s.heightMm, s.pitchYMm],
  ] as const)
    if (n > 1 && pitch < size - 0.01)
      faults.push(
        `The labels would lie on one another ${word}: each is ${mm(size)} and the next begins after ${mm(pitch)}. No labels are laid out.`,
      );
  const small = s.widthMm < LEAST_WIDE_MM || s.heightMm < LEAST_HIGH_MM;
  if (small)
    faults.push(
      `Labels of ${mm(s.widthMm)} × ${mm(s.heightMm)} are too small to print on: none are laid out.`,
    );
  const prints = faults.length === 0;
  if (prints && (columns < s.columns || rows < s.rows))
    faults.push(
      `The label sheet as typed (${s.columns} × ${s.rows} labels) is larger than its paper of ${mm(s.sheetWidthMm)} × ${mm(s.sheetHeightMm)}: ${columns * rows} labels are on it. Check the sizes.`,
    );
  return { faults, prints };
};
