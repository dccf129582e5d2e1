import { add, type Box, boxHolds, direction, type Point, point, scale } from '../kernel/geometry.ts';
import type { Severity } from '../report/types.ts';
import { boxAt, type LabelGrid } from './label-grid.ts';
import type { FontWeight } from './text.ts';
import { textWidthMm } from './text.ts';

export interface LabelLine {
  readonly text: string;
  readonly weight: FontWeight;
  readonly soft?: boolean;
  /** A finding's tag: its sign stands before the text. */
  readonly severity?: Severity;
}

/** Room for a severity sign before its text. */
export const SIGN_MM = 3.4;

export const lineWidthMm = (l: LabelLine): number =>
  textWidthMm(l.text, LABEL_CAP_MM, l.weight) + (l.severity ? SIGN_MM : 0);

/** Capital height and line pitch of labels, capital height and least radius of unit bubbles, in paper millimetres. */
export const LABEL_CAP_MM = 1.8;
export const LABEL_PITCH_MM = 3.3;
export const BUBBLE_CAP_MM = 2.3;
const BUBBLE_R_MM = 2.7;
const GAP_MM = 0.9;

export const bubbleRadius = (unit: string): number =>
  Math.max(BUBBLE_R_MM, textWidthMm(unit, BUBBLE_CAP_MM, 'regular') / 2 + 0.8);

/** What is to be placed, in paper millimetres: round a thing at `at` that reaches `reachMm`. */
export interface LabelAsk {
  readonly at: Point;
  /** Half-size of the thing along and across its facing. */
  readonly halfMm: readonly [number, number];
  readonly facingDeg: number;
  /** Radius of the bubble; 0 for a text without one. */
  readonly bubbleMm: number;
  readonly lines: readonly LabelLine[];
  readonly owner: string;
  readonly bounds: Box | undefined;
  readonly maxMm: number;
}

export interface LabelSpot {
  /** Bubble centre, or the anchor of the text. */
  readonly at: Point;
  readonly textDx: number;
  readonly firstBaselineDy: number;
  readonly align: 'left' | 'right';
  /** From the bubble (or text) to the thing. */
  readonly leader: readonly [Point, Point] | undefined;
  readonly boxes: readonly Box[];
}

const STEPS_MM = [0.6, 1.6, 3, 5, 8, 12, 17, 23, 30, 38, 47];
const ANGLES = 16;

/** Distance from a thing's centre to its edge in a direction, taking it as a turned rectangle. */
const edgeMm = (half: readonly [number, number], relDeg: number): number => {
  const c = Math.abs(Math.cos((relDeg * Math.PI) / 180));
  const s = Math.abs(Math.sin((relDeg * Math.PI) / 180));
  return Math.min(
    c < 1e-6 ? Number.POSITIVE_INFINITY : half[0] / c,
    s < 1e-6 ? Number.POSITIVE_INFINITY : half[1] / s,
  );
};

interface Try {
  readonly deg: number;
  readonly outMm: number;
  readonly side: 1 | -1;
  readonly lift: number;
  readonly base: number;
}

const tries = (ask: LabelAsk): Try[] => {
  const out: Try[] = [];
  const many = ask.lines.length > 0;
  for (let i = 0; i < ANGLES; i++) {
    const deg = (360 / ANGLES) * i;
    const rel = deg - ask.facingDeg;
    const natural = Math.cos((deg * Math.PI) / 180) >= -0.01 ? 1 : -1;
    for (const outMm of STEPS_MM) {
      if (outMm > ask.maxMm) break;
      // Behind a unit is better than in front of it: the throw is drawn there.
      const base = outMm + (1 + Math.cos((rel * Math.PI) / 180)) * 1.2;
      for (const side of many ? ([natural, -natural] as const) : [natural]) {
        for (const lift of many && ask.lines.length > 1 ? [0, 1, -1] : [0]) {
          out.push({
            deg,
            outMm,
            side: side === 1 ? 1 : -1,
            lift,
            base: base + (side === natural ? 0 : 2.5) + Math.abs(lift) * 0.8,
          });
        }
      }
    }
  }
  return out.sort((a, b) => a.base - b.base);
};

const inside = (b: Box, bounds: Box | undefined): boolean =>
  !bounds || (boxHolds(bounds, point(b.minX, b.minY)) && boxHolds(bounds, point(b.maxX, b.maxY)));

const spotFor = (ask: LabelAsk, t: Try): LabelSpot => {
  const r = ask.bubbleMm;
  const d = direction(t.deg);
  const edge = edgeMm(ask.halfMm, t.deg - ask.facingDeg);
  const n = ask.lines.length;
  const w = Math.max(0, ...ask.lines.map(lineWidthMm));
  const h = n === 0 ? 0 : LABEL_CAP_MM + (n - 1) * LABEL_PITCH_MM;
  const align = t.side === 1 ? 'left' : 'right';
  const boxes: Box[] = [];
  const lead = edge + t.outMm;
  const at = add(ask.at, scale(d, r > 0 ? lead + r : lead + (n > 0 ? h * 0.5 * Math.abs(d.yMm) : 0)));
  if (r > 0) boxes.push(boxAt(at, r + 0.35, r + 0.35));
  const dx = r > 0 ? t.side * (r + GAP_MM) : t.side * 0.3;
  // The middle of the block is beside the bubble; lifted, its first or last line is.
  const top = -h / 2 + (t.lift * (h - LABEL_CAP_MM)) / 2;
  if (n > 0) {
    const x0 = at.xMm + dx + (t.side === 1 ? 0 : -w);
    boxes.push({
      minX: x0 - 0.5,
      minY: at.yMm + top - 0.7,
      maxX: x0 + w + 0.5,
      maxY: at.yMm + top + h + 1,
    });
  }
  const to = add(ask.at, scale(d, edge * 0.75));
  const from = r > 0 ? add(at, scale(d, -r)) : at;
  return {
    at,
    textDx: dx,
    firstBaselineDy: top + LABEL_CAP_MM,
    align,
    leader: r > 0 || t.outMm > 4 ? [from, to] : undefined,
    boxes,
  };
};

/**
 * The best clear place for a label: nearest first, behind the thing before in front of it, over no text, no thing and
 * no hard stroke; soft strokes and crossed lines under the leader cost. Undefined when there is none.
 */
export const placeLabel = (grid: LabelGrid, ask: LabelAsk): LabelSpot | undefined => {
  let best: LabelSpot | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  for (const t of tries(ask)) {
    if (t.base >= bestCost) break;
    const spot = spotFor(ask, t);
    let cost = t.base;
    for (const b of spot.boxes) {
      const soft = inside(b, ask.bounds) ? grid.cost(b) : undefined;
      if (soft === undefined) {
        cost = Number.POSITIVE_INFINITY;
        break;
      }
      cost += soft * 2.2;
    }
    if (cost >= bestCost) continue;
    if (spot.leader) {
      const x = grid.crossings(spot.leader[0], spot.leader[1], ask.owner);
      if (x.boxes > 0) continue;
      cost += x.strokes * 1.8;
    }
    if (cost < bestCost) {
      best = spot;
      bestCost = cost;
    }
  }
  return best;
};

/** Where every clear place is taken: a place over strokes, but over no text and no thing; undefined without one. */
export const placeOverStrokes = (grid: LabelGrid, ask: LabelAsk): LabelSpot | undefined =>
  tries(ask)
    .map((t) => spotFor(ask, t))
    .find((spot) => spot.boxes.every((b) => inside(b, ask.bounds) && grid.overlaps(b) === 0));

/** Puts a placed label in the way of the next ones. */
export const takeSpot = (grid: LabelGrid, spot: LabelSpot, owner: string): void => {
  for (const b of spot.boxes) grid.addBox(b, `label:${owner}`);
  if (spot.leader) grid.addSegment(spot.leader[0], spot.leader[1], true, `label:${owner}`);
};
