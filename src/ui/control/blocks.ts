import { UNIVERSE_SLOTS } from '../../plan/address.ts';

/** How a universe is laid out on the map: slots side by side in rows of equal length, pixels. */
export interface Grid {
  readonly perRow: number;
  readonly rows: number;
  readonly widthPx: number;
  readonly rowPx: number;
}

export type Zoom = 'far' | 'near' | 'close';

const ZOOMS: Readonly<Record<Zoom, { readonly perRow: number; readonly rowPx: number }>> = {
  far: { perRow: 512, rowPx: 24 },
  near: { perRow: 128, rowPx: 24 },
  close: { perRow: 64, rowPx: 26 },
};

export const gridFor = (zoom: Zoom, widthPx: number): Grid => {
  const { perRow, rowPx } = ZOOMS[zoom];
  return { perRow, rows: UNIVERSE_SLOTS / perRow, widthPx, rowPx };
};

export const gridHeight = (g: Grid): number => g.rows * g.rowPx;

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

const GAP_PX = 2;

/** The pieces of a stretch of slots on the map, one for each row it runs over. */
export const boxesOf = (g: Grid, from: number, to: number): readonly Box[] => {
  const cell = g.widthPx / g.perRow;
  const out: Box[] = [];
  for (let r = Math.floor((from - 1) / g.perRow); r <= Math.floor((to - 1) / g.perRow); r++) {
    const a = Math.max(from - 1, r * g.perRow) - r * g.perRow;
    const b = Math.min(to, (r + 1) * g.perRow) - r * g.perRow;
    out.push({ x: a * cell, y: r * g.rowPx, w: Math.max(1, (b - a) * cell - 1), h: g.rowPx - GAP_PX });
  }
  return out;
};

/** The widest piece, where a label has most room. */
export const widest = (boxes: readonly Box[]): Box | undefined =>
  boxes.reduce<Box | undefined>((best, b) => (best && best.w >= b.w ? best : b), undefined);

/** The slot at a place on the map, 1 to 512. */
export const slotAt = (g: Grid, x: number, y: number): number => {
  const row = Math.min(g.rows - 1, Math.max(0, Math.floor(y / g.rowPx)));
  const col = Math.min(g.perRow - 1, Math.max(0, Math.floor((x / g.widthPx) * g.perRow)));
  return row * g.perRow + col + 1;
};
