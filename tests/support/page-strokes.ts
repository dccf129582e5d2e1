import type { PathCommand } from '../../src/drawing/display-list.ts';
import type { Box } from '../../src/kernel/geometry.ts';
import type { Page, PageItem, PageText } from '../../src/papers/page.ts';
import { coverOf } from './page-texts.ts';

type Segment = readonly [number, number, number, number];

const segmentsOf = (d: readonly PathCommand[]): readonly Segment[] => {
  const out: Segment[] = [];
  let [x, y, sx, sy] = [0, 0, 0, 0];
  for (const c of d) {
    if (c[0] === 'M') [x, y, sx, sy] = [c[1], c[2], c[1], c[2]];
    else if (c[0] === 'L') {
      out.push([x, y, c[1], c[2]]);
      [x, y] = [c[1], c[2]];
    } else if (c[0] === 'C') {
      for (let i = 1; i <= 6; i++) {
        const [t, u] = [i / 6, 1 - i / 6];
        const at = (a: number, b: number, e: number, f: number): number =>
          u ** 3 * a + 3 * u * u * t * b + 3 * u * t * t * e + t ** 3 * f;
        const [nx, ny] = [at(x, c[1], c[3], c[5]), at(y, c[2], c[4], c[6])];
        if (i === 6) out.push([out.at(-1)?.[2] ?? x, out.at(-1)?.[3] ?? y, c[5], c[6]]);
        else out.push([i === 1 ? x : (out.at(-1)?.[2] ?? x), i === 1 ? y : (out.at(-1)?.[3] ?? y), nx, ny]);
      }
      [x, y] = [c[5], c[6]];
    } else {
      out.push([x, y, sx, sy]);
      [x, y] = [sx, sy];
    }
  }
  return out;
};

/** Whether a segment goes through a box (Liang and Barsky's clipping). */
const crosses = ([x1, y1, x2, y2]: Segment, b: Box): boolean => {
  let [t0, t1] = [0, 1];
  const [dx, dy] = [x2 - x1, y2 - y1];
  for (const [p, q] of [
    [-dx, x1 - b.minX],
    [dx, b.maxX - x1],
    [-dy, y1 - b.minY],
    [dy, b.maxY - y1],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const r = q / p;
    if (p < 0) t0 = Math.max(t0, r);
    else t1 = Math.min(t1, r);
    if (t0 > t1) return false;
  }
  return true;
};

/** The letters themselves: a little smaller than the box that keeps texts apart. */
const inner = (t: PageText): readonly Box[] =>
  coverOf(t).map((b) => ({
    minX: b.minX + 0.15,
    maxX: b.maxX - 0.15,
    minY: b.minY + t.capMm * 0.2,
    maxY: b.maxY - t.capMm * 0.35,
  }));

/** Box of a filled shape that hides what is under it. */
const patchOf = (i: PageItem): Box | undefined => {
  if (i.kind === 'circle' && i.fill && !i.fill.hatch)
    return { minX: i.xMm - i.rMm, maxX: i.xMm + i.rMm, minY: i.yMm - i.rMm, maxY: i.yMm + i.rMm };
  if (i.kind !== 'path' || !i.fill || i.fill.hatch) return undefined;
  const points = i.d.flatMap((c) => (c[0] === 'Z' ? [] : [[Number(c.at(-2)), Number(c.at(-1))] as const]));
  const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
};

const covers = (a: Box, b: Box): boolean =>
  a.minX <= b.minX + 0.3 && a.maxX >= b.maxX - 0.3 && a.minY <= b.minY + 0.3 && a.maxY >= b.maxY - 0.3;

/** All items with the clip they are in. */
const withClips = (
  items: readonly PageItem[],
  clip: Box | undefined,
): readonly { readonly item: PageItem; readonly clip: Box | undefined }[] =>
  items.flatMap((item) =>
    item.kind === 'clip'
      ? withClips(item.items, {
          minX: item.xMm,
          minY: item.yMm,
          maxX: item.xMm + item.widthMm,
          maxY: item.yMm + item.heightMm,
        })
      : [{ item, clip }],
  );

/** The part of a box in which what a clip holds can be seen. */
const seen = (b: Box, clip: Box | undefined): Box | undefined => {
  if (!clip) return b;
  const out = {
    minX: Math.max(b.minX, clip.minX),
    minY: Math.max(b.minY, clip.minY),
    maxX: Math.min(b.maxX, clip.maxX),
    maxY: Math.min(b.maxY, clip.maxY),
  };
  return out.minX < out.maxX && out.minY < out.maxY ? out : undefined;
};

/** Texts that a stroke goes through: drawn over it, or under it with nothing filled between. */
export const struckTexts = (page: Page): readonly string[] => {
  const clipped = withClips(page.items, undefined);
  const items = clipped.map((c) => c.item);
  const strokes = clipped.flatMap(({ item: i, clip }, at) => {
    if (i.kind === 'path' && i.stroke) return segmentsOf(i.d).map((s) => ({ s, at, clip }));
    if (i.kind !== 'circle' || !i.stroke) return [];
    return Array.from({ length: 24 }, (_, k) => {
      const p = (n: number): readonly [number, number] => [
        i.xMm + i.rMm * Math.cos((n * Math.PI) / 12),
        i.yMm + i.rMm * Math.sin((n * Math.PI) / 12),
      ];
      return { s: [...p(k), ...p(k + 1)] as unknown as Segment, at, clip };
    });
  });
  const patches = items.flatMap((i, at) => {
    const box = patchOf(i);
    return box ? [{ box, at }] : [];
  });
  return items.flatMap((i, at) => {
    if (i.kind !== 'text') return [];
    const struck = inner(i).some((b) =>
      strokes.some(
        (st) =>
          seen(b, st.clip) !== undefined &&
          crosses(st.s, seen(b, st.clip) ?? b) &&
          (st.at > at || !patches.some((p) => p.at >= st.at && p.at < at && covers(p.box, b))),
      ),
    );
    return struck ? [i.text] : [];
  });
};
