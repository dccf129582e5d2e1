import type { Block } from '../../plan/records/index.ts';
import type { BlockRow } from '../../report/day.ts';

/** Words for blocks too narrow for their name. */
const SHORT: Readonly<Record<Block['what'], readonly string[]>> = {
  setup: [],
  'pre-light': ['Pre', 'P'],
  meal: ['Meal', 'M'],
  move: ['Move', 'Mv'],
  wrap: ['Wrap', 'W'],
  other: [],
};

/** About the width of a letter of a block's name and of its time, and what is kept free at its edges. */
const NAME_PX = 6.4;
const TIME_PX = 5.6;
const EDGES_PX = 8;
/** A name is not cut off to fewer letters. */
const LEAST_LETTERS = 7;

const fitting = (widthPx: number, letterPx: number, texts: readonly string[]): string =>
  texts.find((t) => t !== '' && t.length * letterPx <= widthPx - EDGES_PX) ?? '';

/** A block's name as it fits: whole, in short, cut off where there is room for some of it, else a setup's scene. */
export const nameThatFits = (row: BlockRow, widthPx: number): string => {
  const whole = fitting(widthPx, NAME_PX, [row.name, ...SHORT[row.block.what]]);
  if (whole !== '') return whole;
  const letters = Math.floor((widthPx - EDGES_PX) / NAME_PX) - 1;
  if (letters >= LEAST_LETTERS) return `${row.name.slice(0, letters).trimEnd()}…`;
  return fitting(widthPx, NAME_PX, [row.name.split(' ')[0] ?? '']);
};

export const timeThatFits = (from: string, to: string, widthPx: number): string =>
  fitting(widthPx, TIME_PX, [`${from}–${to}`, from, from.replace(' +1', '')]);

/** Blocks that overlap go below one another: the row of each, and how many rows there are. */
export const stackBlocks = (
  blocks: readonly Pick<Block, 'id' | 'startMin' | 'endMin'>[],
): { readonly rowOf: ReadonlyMap<string, number>; readonly rows: number } => {
  const ends: number[] = [];
  const rowOf = new Map<string, number>();
  for (const b of [...blocks].sort((x, y) => x.startMin - y.startMin || x.endMin - y.endMin)) {
    const free = ends.findIndex((end) => end <= b.startMin);
    const row = free < 0 ? ends.length : free;
    ends[row] = Math.max(b.endMin, b.startMin + 1);
    rowOf.set(b.id, row);
  }
  return { rowOf, rows: Math.max(1, ends.length) };
};
