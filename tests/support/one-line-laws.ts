import type { PathCommand, Primitive } from '../../src/drawing/display-list.ts';
import { textCover } from '../../src/drawing/label-obstacles.ts';
import type { OneLineSheet } from '../../src/drawing/one-line/index.ts';
import { symbolCorners } from '../../src/drawing/prims.ts';
import { type Box, boxOf } from '../../src/kernel/geometry.ts';

interface Segment {
  readonly a: readonly [number, number];
  readonly b: readonly [number, number];
}

type Text = Extract<Primitive, { kind: 'text' }>;

const segmentsOf = (d: readonly PathCommand[]): readonly Segment[] => {
  const out: Segment[] = [];
  let start: readonly [number, number] = [0, 0];
  let at = start;
  const to = (p: readonly [number, number]): void => {
    out.push({ a: at, b: p });
    at = p;
  };
  for (const c of d) {
    if (c[0] === 'M') {
      start = [c[1], c[2]];
      at = start;
    } else if (c[0] === 'L') to([c[1], c[2]]);
    else if (c[0] === 'Z') to(start);
    else {
      const from = at;
      for (let i = 1; i <= 8; i++) {
        const t = i / 8;
        const u = 1 - t;
        const mix = (p: number, q: number, r: number, s: number): number =>
          u * u * u * p + 3 * u * u * t * q + 3 * u * t * t * r + t * t * t * s;
        to([mix(from[0], c[1], c[3], c[5]), mix(from[1], c[2], c[4], c[6])]);
      }
    }
  }
  return out;
};

/** Whether a segment runs through a box: clipped side by side. */
const meets = (s: Segment, box: Box): boolean => {
  let from = 0;
  let to = 1;
  const sides: readonly (readonly [number, number, number, number])[] = [
    [s.a[0], s.b[0] - s.a[0], box.minX, box.maxX],
    [s.a[1], s.b[1] - s.a[1], box.minY, box.maxY],
  ];
  for (const [p, d, low, high] of sides) {
    if (d === 0) {
      if (p <= low || p >= high) return false;
      continue;
    }
    const [t, u] = d > 0 ? [(low - p) / d, (high - p) / d] : [(high - p) / d, (low - p) / d];
    from = Math.max(from, t);
    to = Math.min(to, u);
  }
  return from < to;
};

const all = (sheet: OneLineSheet): readonly Primitive[] => sheet.items.flatMap((i) => i.primitives);

const covers = (t: Text): readonly Box[] => textCover(t, 1, 0);

const overlap = (a: Box, b: Box): boolean =>
  a.minX < b.maxX - 0.01 && b.minX < a.maxX - 0.01 && a.minY < b.maxY - 0.01 && b.minY < a.maxY - 0.01;

/** Texts of a diagram that touch another text, a stroke, a circle or a unit's symbol, in words. */
export const touching = (sheet: OneLineSheet): readonly string[] => {
  const out: string[] = [];
  const list = all(sheet);
  const references: readonly Text[] = sheet.references.map((r) => ({
    kind: 'text',
    xMm: r.xMm,
    yMm: r.yMm,
    dxPaperMm: 0,
    dyPaperMm: 0,
    text: 'sheet E-100',
    capMm: 1.8,
    weight: 'regular',
    align: 'left',
    role: 'ink-soft',
  }));
  const texts = [...list.filter((p): p is Text => p.kind === 'text'), ...references].map((t) => ({
    t,
    boxes: covers(t),
  }));
  const strokes = list.flatMap((p) =>
    p.kind === 'path' && (p.stroke || p.fill?.hatch || p.fill?.role === 'stop') ? segmentsOf(p.d) : [],
  );
  const symbols = list.flatMap((p) => (p.kind === 'symbol' ? [boxOf(symbolCorners(p))] : []));
  const circles = list.filter((p): p is Extract<Primitive, { kind: 'circle' }> => p.kind === 'circle');
  texts.forEach(({ t, boxes }, i) => {
    for (const other of texts.slice(i + 1))
      if (boxes.some((a) => other.boxes.some((b) => overlap(a, b))))
        out.push(`“${t.text}” touches “${other.t.text}”`);
    for (const s of strokes)
      if (boxes.some((b) => meets(s, b)))
        out.push(`“${t.text}” touches a stroke ${s.a.map(Math.round)} to ${s.b.map(Math.round)}`);
    if (symbols.some((s) => boxes.some((b) => overlap(s, b)))) out.push(`“${t.text}” touches a symbol`);
    for (const c of circles) {
      // A number stands inside its circle; others stay clear of it.
      const inside = t.align === 'center' && Math.hypot(t.xMm - c.xMm, t.yMm - c.yMm) < c.rMm;
      const ring = { minX: c.xMm - c.rMm, minY: c.yMm - c.rMm, maxX: c.xMm + c.rMm, maxY: c.yMm + c.rMm };
      if (!inside && boxes.some((b) => overlap(ring, b))) out.push(`“${t.text}” touches a circle`);
    }
  });
  return out;
};

/** Pairs of straight conductors that cross inside both. */
export const crossings = (sheet: OneLineSheet): readonly string[] => {
  const lines = all(sheet).flatMap((p) => {
    if (p.kind !== 'path' || !p.stroke || p.stroke.dashMm || p.fill || p.d.length !== 2) return [];
    return p.stroke.weightMm >= 0.35 ? segmentsOf(p.d) : [];
  });
  const flat = lines.filter((s) => Math.abs(s.a[1] - s.b[1]) < 1e-6);
  const upright = lines.filter((s) => Math.abs(s.a[0] - s.b[0]) < 1e-6);
  const e = 0.01;
  return flat.flatMap((h) =>
    upright
      .filter(
        (v) =>
          v.a[0] > Math.min(h.a[0], h.b[0]) + e &&
          v.a[0] < Math.max(h.a[0], h.b[0]) - e &&
          h.a[1] > Math.min(v.a[1], v.b[1]) + e &&
          h.a[1] < Math.max(v.a[1], v.b[1]) - e,
      )
      .map((v) => `conductors cross at ${Math.round(v.a[0])}, ${Math.round(h.a[1])}`),
  );
};
