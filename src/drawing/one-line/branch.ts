import type { SupplyEntity } from '../../derive/types.ts';
import { linesOf, type Sketch } from '../sketch.ts';
import { drawTags, tagsHeight } from './context.ts';
import { flagBlock } from './flag.ts';
import { drawLoad, loadHeight } from './load.ts';
import { LINE, ROW_MM, TEXT_MM, TRUNK_MM } from './metrics.ts';
import { outletSign, wiresSign } from './symbols.ts';
import type { Block, How, OneLineContext, Room } from './types.ts';
import { runWords } from './words.ts';

const OUTLET_MM = 8;
const FORK_MM = 3;

/** How many loads in a row pass power on below this entity. */
export const chainDepth = (c: OneLineContext, e: SupplyEntity): number => {
  const below = Math.max(0, ...c.r.children(e.key).map((x) => chainDepth(c, x)));
  return e.what === 'box' ? 0 : below + (e.what === 'load' ? 1 : 0);
};

export interface Stem {
  readonly h: number;
  draw(s: Sketch, x: number, y: number): void;
}

/** A run of cable: the conductor with what it is and how long. */
export const cableStem = (c: OneLineContext, cable: SupplyEntity, compact: boolean): Stem => {
  const w = runWords(c.plan, cable);
  const name = w ? linesOf(w.name, c.textMm, {}, 3) : [];
  const rows = w ? [...name, ...linesOf(w.pieces, c.textMm, {}, 2)] : ['no such cable'];
  const tags = c.findingsOf(cable);
  const h = rows.length * ROW_MM + tagsHeight(tags, c.textMm, 1) + (compact ? 1.2 : 2.6);
  return {
    h,
    draw: (s, x, y) => {
      s.line(x, y, x, y + h, w?.feeder ? LINE.feeder : LINE.cable, w?.feeder ? 'feeder' : 'cable');
      if (w?.feeder) wiresSign(s, w.wires, x, y + 4);
      rows.forEach((text, i) => {
        s.text(x + TEXT_MM, y + (compact ? 3 : 3.6) + i * ROW_MM, text, { maxMm: c.textMm });
      });
      drawTags(s, tags, x + TEXT_MM, y + (compact ? 3.4 : 4) + (rows.length - 1) * ROW_MM, c.textMm, 1);
    },
  };
};

const withBelow = (
  c: OneLineContext,
  e: SupplyEntity,
  ownH: number,
  below: Block | undefined,
  draw: (s: Sketch, x: number, y: number) => void,
): Block => ({
  w: Math.max(c.columnMm, below?.w ?? 0),
  h: ownH + (below?.h ?? 0),
  trunkX: below?.trunkX ?? TRUNK_MM,
  cuts: below?.cuts ?? [],
  draw: (p, x, y) => {
    const at = x + (below?.trunkX ?? TRUNK_MM);
    p.item(e, (s) => draw(s, at, y));
    below?.draw(p, x, y + ownH);
  },
});

/** Everything from one entity down to its loads; undefined where it needs more room. */
const branchBlock = (c: OneLineContext, e: SupplyEntity, room: Room, how: How): Block | undefined => {
  const children = c.r.children(e.key);
  if (e.what === 'box') return how.collapse ? undefined : how.box(c, e, room, how);
  if (e.what === 'cable') {
    const box = children.find((x) => x.what === 'box');
    const stem = cableStem(c, e, how.compact);
    const rest = { ...room, heightMm: room.heightMm - stem.h };
    const below = branchesBlock(c, children, rest, how);
    const fits = children.length === 0 || below !== undefined;
    if (fits && stem.h <= room.heightMm) return withBelow(c, e, stem.h, below, stem.draw);
    return box ? flagBlock(c, { what: 'box', entity: box, cable: e }, room) : undefined;
  }
  if (e.what === 'outlet') {
    const tags = c.findingsOf(e);
    const h = OUTLET_MM + tagsHeight(tags, c.textMm, 1);
    const below = branchesBlock(c, children, { ...room, heightMm: room.heightMm - h }, how);
    if (children.length > 0 && !below) return undefined;
    return withBelow(c, e, h, below, (s, x, y) => {
      s.line(x, y, x, y + h, LINE.cable);
      outletSign(s, x, y + 5.5);
      s.text(x + TEXT_MM, y + 5.6, e.label, { weight: 'semibold', maxMm: c.textMm });
      drawTags(s, tags, x + TEXT_MM, y + 6, c.textMm, 1);
    });
  }
  const lead = c.r.entity(e.parentKey ?? '')?.what === 'cable' ? 0 : 4.5;
  const h = lead + loadHeight(c, e, how.compact);
  if (h > room.heightMm) return undefined;
  const rest = { ...room, heightMm: room.heightMm - h };
  const below =
    children.length === 0
      ? undefined
      : (branchesBlock(c, children, rest, how) ?? flagBlock(c, { what: 'under', entity: e }, rest));
  if (children.length > 0 && !below) return undefined;
  return withBelow(c, e, h, below, (s, x, y) => {
    if (lead > 0) {
      s.line(x, y, x, y + lead, LINE.cable, 'cable');
      s.text(x + TEXT_MM, y + 3.6, 'own lead', { role: 'ink-soft' });
    }
    drawLoad(s, c, e, x, y + lead, how.compact, below !== undefined);
  });
};

/** Several things side by side under one conductor. */
export const branchesBlock = (
  c: OneLineContext,
  children: readonly SupplyEntity[],
  room: Room,
  how: How,
): Block | undefined => {
  const [only] = children;
  if (!only) return undefined;
  if (children.length === 1) return branchBlock(c, only, room, how);
  const rest = { ...room, heightMm: room.heightMm - FORK_MM };
  const placed = sideBySide(
    rest.widthMm,
    children.map(
      (e) => (widthMm, collapse) =>
        branchBlock(c, e, { ...rest, widthMm }, { ...how, collapse: how.collapse || collapse }),
    ),
  );
  if (!placed) return undefined;
  const parent = c.r.entity(only.parentKey ?? '');
  const w = placed.reduce((sum, b) => sum + b.w, 0);
  const first = placed[0]?.trunkX ?? TRUNK_MM;
  return {
    w,
    h: FORK_MM + Math.max(...placed.map((b) => b.h)),
    trunkX: first,
    cuts: placed.flatMap((b) => b.cuts),
    draw: (p, x, y) => {
      const trunks: number[] = [];
      let at = x;
      for (const b of placed) {
        trunks.push(at + b.trunkX);
        at += b.w;
      }
      const draw = (s: Sketch): void => {
        s.line(x + first, y, x + first, y + 1.5, LINE.cable, 'cable');
        s.line(x + first, y + 1.5, trunks.at(-1) ?? x, y + 1.5, LINE.cable, 'cable');
        for (const t of trunks) s.line(t, y + 1.5, t, y + FORK_MM, LINE.cable, 'cable');
      };
      if (parent) p.item(parent, draw, 'fork');
      at = x;
      for (const b of placed) {
        b.draw(p, at, y + FORK_MM);
        at += b.w;
      }
    },
  };
};

/**
 * Blocks next to one another within a width: first all as narrow as they get, then each in turn with the room that is
 * left over. Undefined where even the narrow ones need more.
 */
export const sideBySide = (
  widthMm: number,
  makers: readonly ((widthMm: number, collapse: boolean) => Block | undefined)[],
): readonly Block[] | undefined => {
  const narrow = makers.map((make) => make(widthMm, true));
  const sum = narrow.reduce((s, b) => s + (b?.w ?? Number.POSITIVE_INFINITY), 0);
  if (sum > widthMm) return undefined;
  let over = widthMm - sum;
  return narrow.flatMap((b, i) => {
    if (!b) return [];
    const roomy = b.cuts.length > 0 ? makers[i]?.(b.w + over, false) : undefined;
    if (!roomy || roomy.w > b.w + over) return [b];
    over -= roomy.w - b.w;
    return [roomy];
  });
};
