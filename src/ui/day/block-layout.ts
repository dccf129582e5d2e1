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
const NAME_PX = 6.7;
const TIME_PX = 5.6;
const EDGES_PX = 8;

const fitting = (widthPx: number, letterPx: number, texts: readonly string[]): string => {
  const room = widthPx - EDGES_PX;
  const fits = texts.find((t) => t !== '' && t.length * letterPx <= room);
  return fits ?? (room > 6 * letterPx ? (texts[0] ?? '') : '');
};

/** A block's name as it fits: whole, in short, or cut off where there is room for a few letters at least. */
export const nameThatFits = (row: BlockRow, widthPx: number): string =>
  fitting(widthPx, NAME_PX, [
    row.name,
    ...SHORT[row.block.what],
    // A scene's number says enough.
    row.block.what === 'setup' && / /.test(row.name) ? (row.name.split(' ')[0] ?? '') : '',
  ]);

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
