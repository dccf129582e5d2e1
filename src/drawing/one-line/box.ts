import type { SupplyEntity } from '../../derive/types.ts';
import { kindOf } from '../../plan/plan.ts';
import { cell, LEG_QUANTITIES } from '../../report/reader.ts';
import { CAP, linesOf, type Sketch, widthOf } from '../sketch.ts';
import { branchesBlock, chainDepth, sideBySide } from './branch.ts';
import { drawTags, tagsHeight } from './context.ts';
import { markFigures, worstKey } from './figures.ts';
import { flagBlock } from './flag.ts';
import { canFold, foldedWords, foldSign, isFolded } from './fold.ts';
import { drawVolts } from './load.ts';
import { BREAKER_MM, LINE, PAD_MM, ROW_MM, TEXT_MM, TRUNK_MM } from './metrics.ts';
import { breakerSign, frameSign, nodeSign } from './symbols.ts';
import type { Block, How, OneLineContext, Room } from './types.ts';
import { drawTap, type Tap, tapHeight, tapsOf } from './way.ts';
import { worstLegs } from './words.ts';

const NODE_MM = 6;
/** Main breaker below the top of the frame. */
const MAIN_MM = 8;
const CONTINUED_MM = 5;
const CONTINUED = 'its bus goes on from';

interface Head {
  readonly label: string;
  readonly kindName: string;
  readonly mainA: number | undefined;
  readonly lines: readonly string[];
  readonly leastMm: number;
}

const headOf = (c: OneLineContext, e: SupplyEntity, free: readonly string[], part: number): Head => {
  const record = c.plan.records.get(e.recordId);
  const kind =
    record?.type === 'box' || record?.type === 'source'
      ? kindOf(c.plan, record.kindId, 'box', 'source')
      : undefined;
  const mainA = (record?.type === 'source' ? record.mainBreakerA : undefined) ?? kind?.mainBreakerA;
  const limit = e.legLimit?.limitA;
  const neutral = e.neutralLimit?.limitA;
  const lines = [
    limit === undefined || e.what === 'source'
      ? ''
      : `limit ${cell(limit)} A a leg${e.legs.length > 1 && neutral !== undefined ? `, N ${cell(neutral)} A` : ''}`,
    e.what === 'source' ? '' : `worst ${worstLegs(c.plan, c.r, e)}`,
    isFolded(c, e) && part === 0 ? foldedWords(c, e) : '',
    free.length > 0 ? `nothing on ${free.length === 1 ? 'way' : 'ways'} ${free.join(', ')}` : '',
  ].filter(Boolean);
  return {
    label: part > 0 ? `${e.label}, cont.` : e.label,
    kindName: e.what === 'source' ? 'panel' : (kind?.name ?? ''),
    mainA: e.what === 'source' ? undefined : mainA,
    lines,
    leastMm: e.legs.length > 1 ? 62 : c.columnMm + 2 * PAD_MM,
  };
};

/** Blocks below the frame, one for each tap. */
const columns = (
  c: OneLineContext,
  taps: readonly Tap[],
  room: Room,
  how: How,
): readonly Block[] | undefined =>
  sideBySide(
    room.widthMm,
    taps.map((t) => (widthMm, collapse) => {
      const compact = t.children.some((x) => chainDepth(c, x) > 2);
      const own = { ...how, compact, collapse: how.collapse || collapse };
      const at = { ...room, widthMm };
      if (t.children.length === 0)
        return { w: c.columnMm, h: 0, trunkX: TRUNK_MM, cuts: [], draw: () => undefined };
      return (
        branchesBlock(c, t.children, at, own) ??
        (t.way ? flagBlock(c, { what: 'under', entity: t.way }, at) : undefined)
      );
    }),
  );

/** The frame of a source's panel or a box with the taps given, and what hangs on them. Starts where its run ends. */
export const panelBlock = (
  c: OneLineContext,
  e: SupplyEntity,
  taps: readonly Tap[],
  free: readonly string[],
  part: number,
  room: Room,
  how: How,
): Block | undefined => {
  const head = headOf(c, e, free, part);
  const tags = part > 0 || e.what === 'source' ? [] : c.findingsOf(e);
  const top = part > 0 ? CONTINUED_MM : e.what === 'source' ? 3 : NODE_MM;
  const tapH = Math.max(0, ...taps.map((t) => tapHeight(c, t)));
  // Widths are known only when the columns are made, heights of the head only with the width: it is made for the narrowest.
  const textW = (w: number, trunk: number): number => w - trunk - TEXT_MM - 2;
  const headH = (w: number, trunk: number): number => {
    const rows = headRows(head, textW(w, trunk)).length;
    const texts = 7 + rows * ROW_MM + tagsHeight(tags, textW(w, trunk)) + 1.4;
    return Math.max(texts, head.mainA === undefined || part > 0 ? 8 : MAIN_MM + BREAKER_MM + 2);
  };
  const narrow = headH(head.leastMm, PAD_MM + TRUNK_MM);
  const below = columns(
    c,
    taps,
    { widthMm: room.widthMm - 2 * PAD_MM - 3, heightMm: room.heightMm - top - narrow - tapH - 1.5 },
    how,
  );
  if (!below || head.leastMm > room.widthMm) return undefined;
  const w = Math.max(head.leastMm, below.reduce((s, b) => s + b.w, 0) + 2 * PAD_MM);
  const trunkX = PAD_MM + (below[0]?.trunkX ?? TRUNK_MM);
  const h = headH(w, trunkX);
  const frameH = h + tapH + 1.5;
  const total = top + frameH + Math.max(0, ...below.map((b) => b.h));
  if (total > room.heightMm) return undefined;
  return {
    w: w + 3,
    h: total,
    trunkX,
    cuts: below.flatMap((b) => b.cuts),
    draw: (p, x, y) => {
      const at = x + trunkX;
      const frameY = y + top;
      const bus = frameY + h;
      const trunks: number[] = [];
      let left = x + PAD_MM;
      for (const b of below) {
        trunks.push(left + b.trunkX);
        left += b.w;
      }
      p.item(e, (s) => {
        if (part === 0) {
          const main = head.mainA === undefined ? undefined : frameY + MAIN_MM;
          s.line(at, y, at, main ?? bus, LINE.device);
          if (main !== undefined) s.line(at, main + BREAKER_MM, at, bus, LINE.device);
        } else s.text(at + TEXT_MM, y + 3.4, CONTINUED, { role: 'ink-soft' });
        frameSign(s, x, frameY, w, frameH);
        if (top === NODE_MM) {
          nodeSign(s, at, y + 2.2);
          drawVolts(s, c, e, at + TEXT_MM, y + 3.4);
        }
        const room = textW(w, trunkX);
        drawHead(c, e, s, head, at, frameY, room, part > 0);
        const rows = headRows(head, room).length;
        drawTags(s, tags, at + TEXT_MM, frameY + 5.6 + rows * ROW_MM, room);
        if (taps.length === 0 && isFolded(c, e)) return;
        const from = Math.min(at, ...trunks);
        const to = Math.max(at, ...trunks);
        s.line(from - 3, bus, Math.max(to + 3, from + 8), bus, LINE.bus);
      });
      if (part === 0 && canFold(c, e))
        p.item(e, (s) => foldSign(s, x + 1.2, frameY + 1.2, isFolded(c, e)), 'fold');
      if (part > 0)
        p.reference(
          { what: e.what === 'source' ? 'source' : 'box', entity: e, cable: undefined },
          at + TEXT_MM + widthOf(CONTINUED) + 1,
          y + 3.4,
          false,
        );
      taps.forEach((t, i) => {
        const tx = trunks[i] ?? at;
        p.item(t.way ?? t.children[0] ?? e, (s) => drawTap(s, c, t, tx, bus, tapH), 'tap');
        if (t.children.length > 0)
          p.item(t.way ?? e, (s) => s.line(tx, bus + tapH, tx, frameY + frameH, LINE.device), 'drop');
      });
      left = x + PAD_MM;
      for (const b of below) {
        b.draw(p, left, frameY + frameH);
        left += b.w;
      }
    },
  };
};

const headRows = (head: Head, widthMm: number): readonly string[] => {
  const beside = widthMm - widthOf(head.label, { capMm: CAP.head, weight: 'semibold' }) - 2;
  const own = widthOf(head.kindName) <= beside ? [] : linesOf(head.kindName, widthMm, {}, 2);
  return [...own, ...head.lines.flatMap((l) => linesOf(l, widthMm, {}, 3))];
};

/** Worst amps of each leg and the neutral as `worstLegs` words them, with their keys. */
const wires = (c: OneLineContext, e: SupplyEntity) =>
  [
    ...e.legs.map((l) => LEG_QUANTITIES[l] ?? ('leg0A' as const)),
    ...(e.neutral ? ['neutralA' as const] : []),
  ].map((q) => ({ text: cell(c.r.worst(e.key, q), 1), key: worstKey(c, e, q) }));

const drawHead = (
  c: OneLineContext,
  e: SupplyEntity,
  s: Sketch,
  head: Head,
  x: number,
  y: number,
  widthMm: number,
  continued: boolean,
): void => {
  const left = x + TEXT_MM;
  s.text(left, y + 5, head.label, { capMm: CAP.head, weight: 'semibold', maxMm: widthMm });
  const after = widthOf(head.label, { capMm: CAP.head, weight: 'semibold' }) + 2;
  if (widthOf(head.kindName) <= widthMm - after)
    s.text(left + after, y + 5, head.kindName, { role: 'ink-soft' });
  const rows = headRows(head, widthMm).map((text, i) => ({
    text,
    x: left,
    baseline: y + 5 + (i + 1) * ROW_MM,
  }));
  for (const r of rows) s.text(r.x, r.baseline, r.text);
  const worst = rows.findIndex((r) => r.text.startsWith('worst '));
  if (e.what !== 'source' && worst >= 0) markFigures(c, e, rows.slice(worst), wires(c, e));
  if (head.mainA !== undefined && !continued) breakerSign(s, head.mainA, x, y + MAIN_MM);
};

/** A box whole, in one frame. */
export const boxBlock = (c: OneLineContext, e: SupplyEntity, room: Room, how: How): Block | undefined => {
  const { taps, free } = tapsOf(c, e);
  return isFolded(c, e) ? panelBlock(c, e, [], [], 0, room, how) : panelBlock(c, e, taps, free, 0, room, how);
};

/** Taps in as many parts as the width asks for; widths as narrow as they get. */
export const tapParts = (
  c: OneLineContext,
  taps: readonly Tap[],
  room: Room,
  how: How,
): readonly (readonly Tap[])[] => {
  const parts: Tap[][] = [[]];
  let used = 0;
  for (const t of taps) {
    const w = columns(c, [t], room, { ...how, collapse: true })?.[0]?.w ?? c.columnMm;
    if (used > 0 && used + w > room.widthMm) {
      parts.push([]);
      used = 0;
    }
    parts.at(-1)?.push(t);
    used += w;
  }
  return parts;
};
