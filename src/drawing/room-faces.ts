import {
  add,
  boxesMeet,
  boxOf,
  distanceMm,
  dot,
  growBox,
  nearestOnSegment,
  type Point,
  point,
  scale,
  sub,
} from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import type { Wall } from '../plan/records/index.ts';

/** A room: what walls enclose, by their inside faces. Millimetres and square millimetres. */
export interface RoomFace {
  /** Inside corners in order, turning clockwise as drawn. */
  readonly inside: readonly Point[];
  /** What other walls enclose within it is not counted. */
  readonly areaMm2: number;
  /** Outlines of what stands free within it and is enclosed for itself. */
  readonly islands: readonly (readonly Point[])[];
  readonly wallIds: readonly Id[];
}

interface Piece {
  readonly wall: Wall;
  readonly a: number;
  readonly b: number;
}

/** Walls cut where others meet or cross them, as edges between numbered corners. */
const graphOf = (
  walls: readonly Wall[],
): { readonly nodes: readonly Point[]; readonly pieces: readonly Piece[] } => {
  const nodes: Point[] = [];
  const nodeAt = (p: Point, reach: number): number => {
    const i = nodes.findIndex((n) => distanceMm(n, p) <= reach);
    return i >= 0 ? i : nodes.push(p) - 1;
  };
  const boxes = walls.map((w) => growBox(boxOf([w.from, w.to]), w.thicknessMm));
  const cuts = walls.map((w) => [0, distanceMm(w.from, w.to)]);
  walls.forEach((w, i) => {
    const l = distanceMm(w.from, w.to) || 1;
    const d = scale(sub(w.to, w.from), 1 / l);
    walls.forEach((o, j) => {
      const [bi, bj] = [boxes[i], boxes[j]];
      if (i === j || !bi || !bj || !boxesMeet(bi, bj)) return;
      // Ends of the other wall that stand on this one.
      for (const p of [o.from, o.to]) {
        const near = nearestOnSegment(p, w.from, w.to).at;
        if (distanceMm(near, p) <= w.thicknessMm / 2 + 1) cuts[i]?.push(dot(sub(near, w.from), d));
      }
      const e = sub(o.to, o.from);
      const den = d.xMm * e.yMm - d.yMm * e.xMm;
      if (Math.abs(den) < 1e-9) return;
      const s = sub(o.from, w.from);
      const t = (s.xMm * e.yMm - s.yMm * e.xMm) / den;
      const u = (s.xMm * d.yMm - s.yMm * d.xMm) / den;
      if (t > 0 && t < l && u > 0 && u < 1) cuts[i]?.push(t);
    });
  });
  const pieces: Piece[] = [];
  const seen = new Set<string>();
  walls.forEach((w, i) => {
    const l = distanceMm(w.from, w.to);
    if (l < 1) return;
    const d = scale(sub(w.to, w.from), 1 / l);
    const stops = [...(cuts[i] ?? [])].map((t) => Math.max(0, Math.min(l, t))).sort((a, b) => a - b);
    const ids = stops.map((t) => nodeAt(add(w.from, scale(d, t)), w.thicknessMm / 2 + 1));
    ids.slice(1).forEach((b, k) => {
      const a = ids[k] ?? b;
      const key = a < b ? `${a}-${b}` : `${b}-${a}`;
      if (a === b || seen.has(key)) return;
      seen.add(key);
      pieces.push({ wall: w, a, b });
    });
  });
  return { nodes, pieces };
};

/** Takes away walls that lead nowhere, one after the other: they enclose nothing. */
const pruned = (pieces: readonly Piece[]): readonly Piece[] => {
  let left = pieces;
  for (;;) {
    const count = new Map<number, number>();
    for (const p of left) for (const n of [p.a, p.b]) count.set(n, (count.get(n) ?? 0) + 1);
    const kept = left.filter((p) => count.get(p.a) !== 1 && count.get(p.b) !== 1);
    if (kept.length === left.length) return left;
    left = kept;
  }
};

interface Step {
  readonly wall: Wall;
  readonly from: number;
  readonly to: number;
}

/** Twice the signed area; positive where the points turn clockwise with y running down. */
const signed2 = (points: readonly Point[]): number =>
  points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    return sum + p.xMm * q.yMm - q.xMm * p.yMm;
  }, 0);

/** Every loop of steps that always turns as far right as it can: the faces of the drawing. */
const loopsOf = (nodes: readonly Point[], pieces: readonly Piece[]): readonly (readonly Step[])[] => {
  const steps: Step[] = pieces.flatMap(({ wall, a, b }) => [
    { wall, from: a, to: b },
    { wall, from: b, to: a },
  ]);
  const angle = (s: Step): number => {
    const [p, q] = [nodes[s.from], nodes[s.to]];
    return p && q ? Math.atan2(q.yMm - p.yMm, q.xMm - p.xMm) : 0;
  };
  const out = new Map<number, Step[]>();
  for (const s of steps) {
    const list = out.get(s.from);
    if (list) list.push(s);
    else out.set(s.from, [s]);
  }
  const nextOf = (s: Step): Step | undefined => {
    const back = angle(s) + Math.PI;
    let best: Step | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const o of out.get(s.to) ?? []) {
      // The first way out met when turning anticlockwise from the way back keeps the inside on the right.
      const raw = (((back - angle(o)) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
      // Straight back is the last choice, rounding or not.
      const turn = raw < 1e-9 || raw > 2 * Math.PI - 1e-9 ? 2 * Math.PI : raw;
      if (turn < least) {
        least = turn;
        best = o;
      }
    }
    return best;
  };
  const done = new Set<Step>();
  const loops: Step[][] = [];
  for (const first of steps) {
    if (done.has(first)) continue;
    const loop: Step[] = [];
    for (let s: Step | undefined = first; s && !done.has(s); s = nextOf(s)) {
      done.add(s);
      loop.push(s);
    }
    loops.push(loop);
  }
  return loops;
};

/** The inside corners of a loop: each stretch set in by half its wall, neighbours cut with one another. */
const insetOf = (nodes: readonly Point[], loop: readonly Step[]): readonly Point[] => {
  const lines = loop.flatMap((s) => {
    const [p, q] = [nodes[s.from], nodes[s.to]];
    const l = p && q ? distanceMm(p, q) : 0;
    if (!p || !q || l < 1) return [];
    const d = scale(sub(q, p), 1 / l);
    return [
      {
        at: add(p, scale(point(-d.yMm, d.xMm), s.wall.thicknessMm / 2)),
        d,
        end: q,
        half: s.wall.thicknessMm / 2,
      },
    ];
  });
  const corners: Point[] = [];
  lines.forEach((a, i) => {
    const b = lines[(i + 1) % lines.length];
    if (!b) return;
    const den = a.d.xMm * b.d.yMm - a.d.yMm * b.d.xMm;
    if (Math.abs(den) < 1e-3) {
      if (a.half !== b.half)
        for (const half of [a.half, b.half]) corners.push(add(a.end, scale(point(-a.d.yMm, a.d.xMm), half)));
      return;
    }
    const t = ((b.at.xMm - a.at.xMm) * b.d.yMm - (b.at.yMm - a.at.yMm) * b.d.xMm) / den;
    corners.push(add(a.at, scale(a.d, t)));
  });
  return corners;
};

/** The rooms that walls enclose. Walls that lead nowhere and rooms of no inside are left out. */
export const roomFaces = (walls: readonly Wall[]): readonly RoomFace[] => {
  const { nodes, pieces } = graphOf(walls);
  const loops = loopsOf(nodes, pruned(pieces));
  const outlines: (readonly Point[])[] = [];
  const faces = loops.flatMap((loop) => {
    const points = loop.flatMap((s) => nodes[s.from] ?? []);
    if (loop.length < 3) return [];
    const inside = insetOf(nodes, loop);
    if (signed2(points) <= 0) {
      // Walked round from outside: the outline of walls that hang together, their thickness included.
      if (inside.length >= 3) outlines.push(inside);
      return [];
    }
    const areaMm2 = signed2(inside) / 2;
    if (inside.length < 3 || areaMm2 <= 0) return [];
    return [{ inside, areaMm2, wallIds: [...new Set(loop.map((s) => s.wall.id))] }];
  });
  const islandsOf = new Map<(typeof faces)[number], (readonly Point[])[]>();
  for (const outline of outlines) {
    const [p] = outline;
    const around = faces
      .filter((f) => p && holds(f.inside, p) && f.areaMm2 > Math.abs(signed2(outline)) / 2)
      .sort((a, b) => a.areaMm2 - b.areaMm2)[0];
    if (around) islandsOf.set(around, [...(islandsOf.get(around) ?? []), outline]);
  }
  return faces.map((f) => {
    const islands = islandsOf.get(f) ?? [];
    const taken = islands.reduce((sum, o) => sum + Math.abs(signed2(o)) / 2, 0);
    return { ...f, islands, areaMm2: Math.max(0, f.areaMm2 - taken) };
  });
};

const RIGHT_MM = 2;

/** Inside length and width of a room with four square corners, along its first and second side; else undefined. */
export const insideMeasures = (
  room: RoomFace,
): { readonly lengthMm: number; readonly widthMm: number } | undefined => {
  const [a, b, c, d] = room.inside;
  if (room.inside.length !== 4 || !a || !b || !c || !d) return undefined;
  const [ab, bc] = [sub(b, a), sub(c, b)];
  const lengthMm = distanceMm(a, b);
  const widthMm = distanceMm(b, c);
  const skew = Math.abs(dot(ab, bc)) / Math.max(1, Math.min(lengthMm, widthMm));
  if (skew > RIGHT_MM || Math.abs(distanceMm(c, d) - lengthMm) > RIGHT_MM) return undefined;
  return Math.abs(ab.xMm) >= Math.abs(ab.yMm)
    ? { lengthMm, widthMm }
    : { lengthMm: widthMm, widthMm: lengthMm };
};

const holds = (points: readonly Point[], p: Point): boolean => {
  let inside = false;
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    if (a.yMm > p.yMm !== b.yMm > p.yMm) {
      const x = ((b.xMm - a.xMm) * (p.yMm - a.yMm)) / (b.yMm - a.yMm) + a.xMm;
      if (p.xMm < x) inside = !inside;
    }
  });
  return inside;
};

/** Spots inside a room where a text could stand, the middle first, then ever further from it. */
export const roomSpots = (room: RoomFace): readonly Point[] => {
  const box = boxOf(room.inside);
  const middle = point((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
  const N = 12;
  const net: Point[] = [middle];
  for (let i = 1; i < N; i++)
    for (let j = 1; j < N; j++)
      net.push(point(box.minX + ((box.maxX - box.minX) * i) / N, box.minY + ((box.maxY - box.minY) * j) / N));
  return net
    .filter((p) => holds(room.inside, p) && !room.islands.some((o) => holds(o, p)))
    .sort(
      (a, b) => Math.round(distanceMm(a, middle) - distanceMm(b, middle)) || a.yMm - b.yMm || a.xMm - b.xMm,
    );
};
