import { hopPoints, isWire, linesInOrder, startPort } from '../derive/data-lines.ts';
import { dataNet } from '../derive/data-net.ts';
import { distanceMm, lerp, type Point } from '../kernel/geometry.ts';
import { recordOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { DataLine } from '../plan/records/index.ts';
import { BEND_MM, roundedPath } from './cables.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { assignLanes, type Laned, shifted } from './lanes.ts';
import { itemOf, pen, WEIGHT } from './prims.ts';

/** Data lines keep half a lane beside power cables, so that neither hides the other. */
const BESIDE = 0.5;
/** Wire is drawn in long dashes, a network in dash and dot: colour is never the only sign. */
const WIRE_DASH = [3.2, 0.8];
const NETWORK_DASH = [3.2, 0.8, 0.5, 0.8];

interface Hop extends Laned {
  readonly line: DataLine;
}

/** Stretches of a line on this floor, from a stop to the next. */
const hopsOf = (ctx: DrawContext, line: DataLine): Hop[] =>
  line.stops.flatMap((toId, index) => {
    const from = placeOf(ctx.plan, index === 0 ? line.from.recordId : (line.stops[index - 1] ?? ''));
    const to = placeOf(ctx.plan, toId);
    const way = hopPoints(ctx.plan, line, index);
    if (!from || !to || !way || from.floorId !== ctx.floorId || to.floorId !== ctx.floorId) return [];
    const points = [from.at, ...way.points, to.at].filter(
      (p, i, all) => i === 0 || distanceMm(p, all[i - 1] ?? p) > 1,
    );
    return points.length < 2 ? [] : [{ line, points, lanes: points.slice(1).map(() => 0) }];
  });

/** All data lines with a stretch on the floor. */
export const dataLineItems = (ctx: DrawContext): readonly DisplayItem[] => {
  const shown = linesInOrder(ctx.plan).filter((l) => !l.hidden && (!ctx.only || ctx.only.has(l.id)));
  const hops = shown.flatMap((l) => hopsOf(ctx, l));
  assignLanes(hops, ctx.nominalScale);
  return shown.flatMap((line) => {
    const own = hops.filter((h) => h.line === line);
    if (own.length === 0) return [];
    const connector = startPort(ctx.plan, line)?.connector ?? 'xlr-5';
    const deps = [connector, ...own.flatMap((h) => [...h.points.flatMap((p) => [p.xMm, p.yMm]), ...h.lanes])];
    const item = memoItem(line, `data|${ctx.nominalScale}`, deps, () => {
      const dash = isWire(connector) ? WIRE_DASH : NETWORK_DASH;
      return itemOf(
        `data:${line.id}`,
        line.id,
        'data',
        ctx.nominalScale,
        own.map(
          (h): Primitive => ({
            kind: 'path',
            d: roundedPath(shifted(h, ctx.nominalScale, BESIDE), BEND_MM * ctx.nominalScale),
            stroke: pen('data', WEIGHT.cable, dash),
          }),
        ),
      );
    });
    return item ? [item] : [];
  });
};

/** What a line's tag says: its label and the universe it carries. */
export const lineTag = (ctx: DrawContext, line: DataLine): string => {
  const carried = dataNet(ctx.plan).carried.get(line.id);
  const numbers = [...(carried?.universes ?? [])]
    .map((id) => recordOf(ctx.plan, 'universe', id)?.number)
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b)
    .map((n) => `U${n}`);
  const words = carried?.all
    ? 'network'
    : numbers.length > 3
      ? `${numbers.length} universes`
      : numbers.join(' ');
  return [line.label, words].filter(Boolean).join(' · ');
};

/** The middle of a line's longest straight stretch on this floor, where its tag goes; undefined where none is drawn. */
export const lineMiddle = (ctx: DrawContext, line: DataLine): Point | undefined => {
  let best: { readonly at: Point; readonly mm: number } | undefined;
  for (const h of hopsOf(ctx, line))
    h.points.slice(1).forEach((b, i) => {
      const a = h.points[i] ?? b;
      const mm = distanceMm(a, b);
      if (!best || mm > best.mm) best = { at: lerp(a, b, 0.5), mm };
    });
  return best?.at;
};
