import { add, type Box, type Point, point, scale } from '../kernel/geometry.ts';
import type { Severity } from '../report/types.ts';
import type { LabelGrid } from './label-grid.ts';
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
  /** Soft strokes run under it: it wants a patch of ground. */
  readonly patched: boolean;
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
  /** Which of the directions round the thing. */
  readonly angle: number;
  readonly cos: number;
  readonly sin: number;
  readonly outMm: number;
  readonly side: 1 | -1;
  readonly lift: number;
  readonly base: number;
}

const ordered = new Map<string, readonly Try[]>();

/** The places to try, best first. They depend on little, so each list is made once. */
const tries = (ask: LabelAsk): readonly Try[] => {
  const turn = Math.round(ask.facingDeg / (360 / ANGLES)) % ANGLES;
  const shape = Math.min(2, ask.lines.length);
  const key = `${turn}|${shape}|${ask.maxMm}`;
  const known = ordered.get(key);
  if (known) return known;
  const made = makeTries(turn * (360 / ANGLES), shape, ask.maxMm);
  ordered.set(key, made);
  return made;
};

const makeTries = (facingDeg: number, lines: number, maxMm: number): readonly Try[] => {
  const out: Try[] = [];
  for (let i = 0; i < ANGLES; i++) {
    const deg = (360 / ANGLES) * i;
    const rel = deg - facingDeg;
    const natural = Math.cos((deg * Math.PI) / 180) >= -0.01 ? 1 : -1;
    for (const outMm of STEPS_MM) {
      if (outMm > maxMm) break;
      // Behind a unit is better than in front of it: the throw is drawn there.
      const base = outMm + (1 + Math.cos((rel * Math.PI) / 180)) * 1.2;
      for (const side of lines > 0 ? ([natural, -natural] as const) : [natural]) {
        for (const lift of lines > 1 ? [0, 1, -1] : [0]) {
          out.push({
            angle: i,
            cos: Math.cos((deg * Math.PI) / 180),
            sin: Math.sin((deg * Math.PI) / 180),
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

/** Padding of boxes on paper: round bubbles, and beside, above and below texts. */
const PAD = { bubble: 0.35, side: 0.5, above: 0.7, below: 1 } as const;

/** What does not change from try to try. */
interface Block {
  readonly w: number;
  readonly h: number;
  /** From the thing's centre to its edge, by direction. */
  readonly edges: readonly number[];
}

const blockOf = (ask: LabelAsk): Block => ({
  w: Math.max(0, ...ask.lines.map(lineWidthMm)),
  h: ask.lines.length === 0 ? 0 : LABEL_CAP_MM + (ask.lines.length - 1) * LABEL_PITCH_MM,
  edges: Array.from({ length: ANGLES }, (_, i) => edgeMm(ask.halfMm, (360 / ANGLES) * i - ask.facingDeg)),
});

/** How far from the thing's centre the label's anchor is. */
const reachMm = (ask: LabelAsk, b: Block, t: Try): number => {
  const lead = (b.edges[t.angle] ?? 0) + t.outMm;
  if (ask.bubbleMm > 0) return lead + ask.bubbleMm;
  return lead + (ask.lines.length > 0 ? b.h * 0.5 * Math.abs(t.sin) : 0);
};

/** Visits the boxes a label would take, bubble first, while `ok` says yes; no objects are made. */
const everyBox = (
  ask: LabelAsk,
  b: Block,
  t: Try,
  ok: (minX: number, minY: number, maxX: number, maxY: number) => boolean,
): boolean => {
  const reach = reachMm(ask, b, t);
  const x = ask.at.xMm + t.cos * reach;
  const y = ask.at.yMm + t.sin * reach;
  const r = ask.bubbleMm + PAD.bubble;
  if (ask.bubbleMm > 0 && !ok(x - r, y - r, x + r, y + r)) return false;
  if (ask.lines.length === 0) return true;
  const x0 = x + textDx(ask, t) + (t.side === 1 ? 0 : -b.w);
  const top = y + topDy(b, t);
  return ok(x0 - PAD.side, top - PAD.above, x0 + b.w + PAD.side, top + b.h + PAD.below);
};

const textDx = (ask: LabelAsk, t: Pick<Try, 'side'>): number =>
  ask.bubbleMm > 0 ? t.side * (ask.bubbleMm + GAP_MM) : t.side * 0.3;

/** The middle of the block is beside the bubble; lifted, its first or last line is. */
const topDy = (b: Block, t: Pick<Try, 'lift'>): number => -b.h / 2 + (t.lift * (b.h - LABEL_CAP_MM)) / 2;

const spotFor = (ask: LabelAsk, b: Block, t: Try): LabelSpot => {
  const reach = reachMm(ask, b, t);
  const along = point(t.cos, t.sin);
  const at = add(ask.at, scale(along, reach));
  const boxes: Box[] = [];
  everyBox(ask, b, t, (minX, minY, maxX, maxY) => {
    boxes.push({ minX, minY, maxX, maxY });
    return true;
  });
  const r = ask.bubbleMm;
  const to = add(ask.at, scale(along, (b.edges[t.angle] ?? 0) * 0.75));
  const from = r > 0 ? add(at, scale(along, -r)) : at;
  return {
    at,
    textDx: textDx(ask, t),
    firstBaselineDy: topDy(b, t) + LABEL_CAP_MM,
    align: t.side === 1 ? 'left' : 'right',
    leader: r > 0 || t.outMm > 4 ? [from, to] : undefined,
    boxes,
    patched: false,
  };
};

/** Whether a label keeps inside its bounds and over nothing that `free` refuses. */
const fits = (ask: LabelAsk, b: Block, t: Try, free: LabelGrid['clear']): boolean => {
  const k = ask.bounds;
  return everyBox(
    ask,
    b,
    t,
    (minX, minY, maxX, maxY) =>
      (!k || (minX >= k.minX && minY >= k.minY && maxX <= k.maxX && maxY <= k.maxY)) &&
      free(minX, minY, maxX, maxY),
  );
};

/** Costs of a soft stroke under a label and of a line crossed by its leader. */
const SOFT_COST = 2.2;
const CROSSING_COST = 1.8;

/**
 * The best clear place for a label: nearest first, behind the thing before in front of it, over no text, no thing and
 * no hard stroke; soft strokes and crossed lines under the leader cost. Undefined when there is none.
 */
export const placeLabel = (grid: LabelGrid, ask: LabelAsk): LabelSpot | undefined => {
  const block = blockOf(ask);
  let best: LabelSpot | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  for (const t of tries(ask)) {
    if (t.base >= bestCost) break;
    if (!fits(ask, block, t, grid.clear)) continue;
    const spot = spotFor(ask, block, t);
    const soft = spot.boxes.reduce((sum, b) => sum + grid.soft(b), 0);
    let cost = t.base + soft * SOFT_COST;
    if (cost >= bestCost) continue;
    if (spot.leader) {
      const x = grid.crossings(spot.leader[0], spot.leader[1], ask.owner);
      if (x.boxes > 0) continue;
      cost += x.strokes * CROSSING_COST;
    }
    if (cost < bestCost) {
      best = soft > 0 ? { ...spot, patched: true } : spot;
      bestCost = cost;
    }
  }
  return best;
};

/** Where every clear place is taken: a place over strokes, but over no text and no thing; undefined without one. */
export const placeOverStrokes = (grid: LabelGrid, ask: LabelAsk): LabelSpot | undefined => {
  const block = blockOf(ask);
  const free: LabelGrid['clear'] = (minX, minY, maxX, maxY) =>
    grid.overlaps({ minX, minY, maxX, maxY }) === 0;
  const found = tries(ask).find((t) => fits(ask, block, t, free));
  return found && spotFor(ask, block, found);
};

/** How far a text may be from its thing before it wants a leader. */
const LEADER_FROM_MM = 3;

/** A label where a hand put it: its bubble or the near end of its text at `at`, with a leader to the thing. */
export const placeByHand = (ask: LabelAsk, at: Point): LabelSpot => {
  const block = blockOf(ask);
  const off = point(at.xMm - ask.at.xMm, at.yMm - ask.at.yMm);
  const far = Math.hypot(off.xMm, off.yMm);
  const side = off.xMm >= -1e-6 ? 1 : -1;
  const t = { side, lift: 0 } as const;
  const r = ask.bubbleMm;
  const dx = textDx(ask, t);
  const top = at.yMm + topDy(block, t);
  const x0 = at.xMm + dx + (side === 1 ? 0 : -block.w);
  const boxes: Box[] =
    r > 0
      ? [
          {
            minX: at.xMm - r - PAD.bubble,
            minY: at.yMm - r - PAD.bubble,
            maxX: at.xMm + r + PAD.bubble,
            maxY: at.yMm + r + PAD.bubble,
          },
        ]
      : [];
  if (ask.lines.length > 0)
    boxes.push({
      minX: x0 - PAD.side,
      minY: top - PAD.above,
      maxX: x0 + block.w + PAD.side,
      maxY: top + block.h + PAD.below,
    });
  const d = far > 0 ? scale(off, 1 / far) : point(1, 0);
  const edge = edgeMm(ask.halfMm, (Math.atan2(d.yMm, d.xMm) * 180) / Math.PI - ask.facingDeg);
  const to = add(ask.at, scale(d, Math.min(far, edge) * 0.75));
  const from = r > 0 ? add(at, scale(d, -r)) : at;
  return {
    at,
    textDx: dx,
    firstBaselineDy: topDy(block, t) + LABEL_CAP_MM,
    align: side === 1 ? 'left' : 'right',
    leader: far > edge + r + (r > 0 ? 0.2 : LEADER_FROM_MM) ? [from, to] : undefined,
    boxes,
    patched: true,
  };
};

/** Puts a placed label in the way of the next ones. */
export const takeSpot = (grid: LabelGrid, spot: LabelSpot, owner: string): void => {
  for (const b of spot.boxes) grid.addBox(b, `label:${owner}`);
  if (spot.leader) grid.addSegment(spot.leader[0], spot.leader[1], true, `label:${owner}`);
};
