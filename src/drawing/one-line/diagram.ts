import type { SupplyEntity } from '../../derive/types.ts';
import type { SourceRow } from '../../report/summary-types.ts';
import { boxBlock, panelBlock, tapParts } from './box.ts';
import { branchesBlock, cableStem, chainDepth, sideBySide } from './branch.ts';
import { drawOrigin, FLAG_MM } from './flag.ts';
import { GAP_MM, PAD_MM } from './metrics.ts';
import { SOURCE_TRUNK_MM, sourceHead } from './source.ts';
import type { Block, How, OneLineContext, Room, Root } from './types.ts';
import { drawTap, type Tap, tapHeight, tapsOf } from './way.ts';

const HOW: How = { compact: false, collapse: false, box: boxBlock };

/** The diagrams of one root: one, or several where it is too wide for the room. */
export const diagramsOf = (
  c: OneLineContext,
  root: Root,
  room: Room,
  rowOf: (sourceId: string) => SourceRow | undefined,
): readonly Block[] => {
  if (root.what === 'source') return sourceDiagrams(c, root.entity, room, rowOf(root.entity.recordId));
  if (root.what === 'box') return boxDiagrams(c, root, room);
  return underDiagrams(c, root, room);
};

/** A panel's parts, the first with `first` above it. */
const panelDiagrams = (
  c: OneLineContext,
  e: SupplyEntity,
  taps: readonly Tap[],
  free: readonly string[],
  room: Room,
  firstH: number,
): readonly Block[] => {
  const at = { ...room, heightMm: room.heightMm - firstH };
  const whole = panelBlock(c, e, taps, free, 0, at, HOW);
  if (whole) return [whole];
  const inner = { widthMm: room.widthMm - 2 * PAD_MM - 3, heightMm: at.heightMm };
  return tapParts(c, taps, inner, HOW).flatMap((part, i) => {
    const block =
      panelBlock(c, e, part, i === 0 ? free : [], i, at, HOW) ??
      panelBlock(
        c,
        e,
        part,
        [],
        i,
        { widthMm: at.widthMm, heightMm: Number.POSITIVE_INFINITY },
        { ...HOW, collapse: true },
      );
    return block ? [block] : [];
  });
};

const sourceDiagrams = (
  c: OneLineContext,
  e: SupplyEntity,
  room: Room,
  row: SourceRow | undefined,
): readonly Block[] => {
  const { taps, free } = tapsOf(c, e);
  const [only] = taps;
  const trial = sourceHead(c, e, row, room.widthMm, SOURCE_TRUNK_MM);
  if (taps.length <= 1) {
    const inline = only ? inlineTap(c, only, { ...room, heightMm: room.heightMm - trial.h }) : undefined;
    const head = sourceHead(c, e, row, room.widthMm, Math.max(SOURCE_TRUNK_MM, inline?.trunkX ?? 0));
    return [under(e, head, inline)];
  }
  const panels = panelDiagrams(c, e, taps, free, room, trial.h);
  return panels.map((panel, i) =>
    i === 0
      ? under(e, sourceHead(c, e, row, room.widthMm, Math.max(SOURCE_TRUNK_MM, panel.trunkX)), panel)
      : panel,
  );
};

/** One tap straight in the line of its source, without a frame. */
const inlineTap = (c: OneLineContext, t: Tap, room: Room): Block | undefined => {
  const h = tapHeight(c, t);
  const [below] =
    sideBySide(room.widthMm, [
      (widthMm, collapse) =>
        branchesBlock(
          c,
          t.children,
          { widthMm, heightMm: room.heightMm - h },
          { ...HOW, collapse, compact: t.children.some((x) => chainDepth(c, x) > 2) },
        ),
    ]) ?? [];
  if (!below) return undefined;
  return {
    ...below,
    h: h + below.h,
    draw: (p, x, y) => {
      const e = t.way ?? t.children[0];
      if (e) p.item(e, (s) => drawTap(s, c, t, x + below.trunkX, y, h), 'tap');
      below.draw(p, x, y + h);
    },
  };
};

/** A source's head over what it feeds, their conductors in line. */
const under = (e: SupplyEntity, head: ReturnType<typeof sourceHead>, below: Block | undefined): Block => {
  const shift = below ? head.trunkX - below.trunkX : 0;
  const w = Math.max(head.w, (below?.w ?? 0) + shift);
  return {
    w,
    h: head.h + (below?.h ?? 0),
    trunkX: head.trunkX,
    cuts: below?.cuts ?? [],
    draw: (p, x, y) => {
      p.item(e, (s) => head.draw(s, x, y, w), 'head');
      below?.draw(p, x + shift, y + head.h);
    },
  };
};

const withOrigin = (c: OneLineContext, root: Root, h: number, block: Block, first: boolean): Block => ({
  ...block,
  w: Math.max(block.w, c.columnMm + GAP_MM + 12),
  h: block.h + h,
  draw: (p, x, y) => {
    if (first) drawOrigin(p, c, root, x + block.trunkX, y);
    block.draw(p, x, y + h);
  },
});

const boxDiagrams = (
  c: OneLineContext,
  root: Extract<Root, { what: 'box' }>,
  room: Room,
): readonly Block[] => {
  const { taps, free } = tapsOf(c, root.entity);
  const stem = root.cable ? cableStem(c, root.cable, false) : undefined;
  const lead = FLAG_MM + (stem?.h ?? 0);
  return panelDiagrams(c, root.entity, taps, free, room, lead).map((block, i) => {
    if (i > 0) return block;
    const fed: Block = {
      ...block,
      draw: (p, x, y) => {
        if (root.cable && stem) p.item(root.cable, (s) => stem.draw(s, x + block.trunkX, y - stem.h));
        block.draw(p, x, y);
      },
    };
    return withOrigin(c, root, lead, fed, true);
  });
};

/** What hangs on one way or load, in as many rows of columns as the width asks for. */
const underDiagrams = (c: OneLineContext, root: Root, room: Room): readonly Block[] => {
  const children = c.r.children(root.entity.key);
  const at = { ...room, heightMm: room.heightMm - FLAG_MM };
  const per = Math.max(1, Math.floor(room.widthMm / c.columnMm));
  const how = { ...HOW, compact: children.some((x) => chainDepth(c, x) > 2) };
  const parts: SupplyEntity[][] = [];
  const whole = branchesBlock(c, children, at, how);
  if (whole) return [withOrigin(c, root, FLAG_MM, whole, true)];
  for (let i = 0; i < children.length; i += per) parts.push(children.slice(i, i + per));
  return parts.flatMap((part) => {
    const block = branchesBlock(c, part, at, { ...how, collapse: true });
    return block ? [withOrigin(c, root, FLAG_MM, block, true)] : [];
  });
};
