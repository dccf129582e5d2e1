import { type Box, emptyBox, isEmptyBox, unionBox } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import type { RecordOf, RecordType } from '../plan/records/index.ts';
import { aimItem, beamItem } from './beams.ts';
import { beneathItems } from './beneath.ts';
import { cableItems } from './cables.ts';
import { type DrawContext, type DrawFloor, drawContext } from './context.ts';
import { dataLineItems } from './data-lines.ts';
import { dimensionItems } from './dimensions.ts';
import { type DisplayItem, type DisplayList, DRAWING_LAYERS } from './display-list.ts';
import {
  armItem,
  ballastItem,
  deviceItem,
  fixtureItem,
  headCableItem,
  outletItem,
  packLeadItem,
  placedItem,
  standItem,
} from './gear.ts';
import { ghostItems } from './ghosts.ts';
import { gripItems } from './grip.ts';
import { handLabels, type LabelReport, labelSteps, noLabels, type Steps } from './labels.ts';
import { photoItem } from './notes.ts';
import { openingItem } from './openings.ts';
import { crossingItem, featureItem } from './outdoors.ts';
import { keptDimensionItems } from './rooms.ts';
import { markItem, setPieceItem } from './scene.ts';
import { sunItems } from './sun.ts';
import { underlayItems } from './underlay.ts';
import { wallItem } from './walls.ts';

/** A drawn floor with what became of its labels. */
export interface FloorDrawing extends DisplayList {
  readonly labels: LabelReport;
}

const present = (items: readonly (DisplayItem | undefined)[]): DisplayItem[] =>
  items.filter((i): i is DisplayItem => i !== undefined);

const onFloor = <T extends RecordType>(ctx: DrawContext, type: T): RecordOf<T>[] =>
  recordsOf(ctx.plan, type).filter(
    (r) =>
      (r as { floorId?: unknown }).floorId === ctx.floorId && !r.hidden && (!ctx.only || ctx.only.has(r.id)),
  );

/** Everything but texts. */
const geometryItems = (ctx: DrawContext): DisplayItem[] => {
  const { options, index } = ctx;
  const ballasts = onFloor(ctx, 'ballast');
  const mine = (r: { readonly id: Id; readonly hidden?: boolean | undefined }): boolean =>
    !r.hidden && (!ctx.only || ctx.only.has(r.id));
  const fixtures = index.fixtures.filter(mine);
  return present([
    ...underlayItems(ctx),
    ...onFloor(ctx, 'feature').map((f) => featureItem(ctx, f)),
    ...onFloor(ctx, 'crossing').map((x) => crossingItem(ctx, x)),
    ...index.architecture.walls.filter(mine).map((w) => wallItem(ctx, w)),
    ...[...index.architecture.openings.values()]
      .flat()
      .filter(mine)
      .map((o) => openingItem(ctx, o)),
    ...(options.ghosts && !ctx.only ? ghostItems(ctx) : []),
    ...onFloor(ctx, 'setPiece').map((s) => setPieceItem(ctx, s)),
    ...onFloor(ctx, 'photo').map((p) => photoItem(ctx, p)),
    ...onFloor(ctx, 'mark').map((m) => markItem(ctx, m)),
    ...(options.beams ? fixtures.map((f) => beamItem(ctx, f)) : []),
    ...(options.aims ? fixtures.map((f) => aimItem(ctx, f)) : []),
    ...(options.cables ? [...cableItems(ctx), ...ballasts.map((b) => headCableItem(ctx, b))] : []),
    ...(options.cables ? fixtures.map((f) => packLeadItem(ctx, f)) : []),
    ...(options.cables ? dataLineItems(ctx) : []),
    ...(options.stands ? onFloor(ctx, 'stand').map((s) => standItem(ctx, s)) : []),
    ...(options.stands ? fixtures.map((f) => armItem(ctx, f)) : []),
    ...gripItems(ctx).filter((i) => !ctx.only || (i !== undefined && ctx.only.has(i.recordId))),
    ...ballasts.map((b) => ballastItem(ctx, b)),
    ...onFloor(ctx, 'source').map((s) => placedItem(ctx, s)),
    ...onFloor(ctx, 'box').map((b) => placedItem(ctx, b)),
    ...onFloor(ctx, 'charger').map((c) => placedItem(ctx, c)),
    ...onFloor(ctx, 'pack').map((p) => placedItem(ctx, p)),
    ...onFloor(ctx, 'device').map((d) => deviceItem(ctx, d)),
    ...onFloor(ctx, 'outlet').map((o) => outletItem(ctx, o)),
    ...fixtures.map((f) => fixtureItem(ctx, f)),
  ]);
};

/** Records that were put above or below others of their layer by hand; undefined where none was. */
const ownOrders = (plan: Plan): ReadonlyMap<Id, number> | undefined => {
  const own = new Map<Id, number>();
  for (const r of plan.records.values())
    if (typeof r.order === 'number' && r.order !== 0 && r.type !== 'setup') own.set(r.id, r.order);
  return own.size > 0 ? own : undefined;
};

const ORDER = new Map(DRAWING_LAYERS.map((l, i) => [l, i]));

/**
 * One floor as a display list for a setup and a nominal scale: geometry in floor millimetres, weights and texts in
 * paper millimetres. Items keep their identity while nothing in them changed. Labels are placed for the nominal
 * scale, so that they do not overlap one another or, as far as there is room, any line.
 */
export function* drawFloorSteps(plan: Plan, what: DrawFloor): Steps<FloorDrawing> {
  const ctx = drawContext(plan, what);
  const geometry = geometryItems(ctx);
  const dimensions =
    ctx.options.dimensions && !ctx.only ? [...dimensionItems(ctx), ...keptDimensionItems(ctx)] : [];
  // Labels may lie over what is under the floor.
  const over = geometry.filter((i) => i.layer !== 'underlay');
  const marks = ctx.only ? [] : (ctx.marks ?? []);
  const labels = !ctx.options.labels
    ? noLabels
    : ctx.only
      ? { ...noLabels, items: handLabels(ctx) }
      : yield* labelSteps(ctx, [...over, ...dimensions, ...marks]);
  const under = what.beneathId !== undefined && !ctx.only ? beneathItems(plan, what, what.beneathId) : [];
  const light = what.sun && !ctx.only ? sunItems(ctx, what.sun) : [];
  const items = [...under, ...light, ...geometry, ...dimensions, ...marks, ...labels.items];
  const own = ctx.only ? undefined : ownOrders(plan);
  const above = (i: DisplayItem): number => (i.layer === 'labels' ? 0 : (own?.get(i.recordId) ?? 0));
  items.sort((a, b) => (ORDER.get(a.layer) ?? 0) - (ORDER.get(b.layer) ?? 0) || above(a) - above(b));
  return { floorId: what.floorId, nominalScale: what.nominalScale, items, labels: labels.report };
}

/** One floor as a display list, at once. */
export const drawFloor = (plan: Plan, what: DrawFloor): FloorDrawing => {
  const steps = drawFloorSteps(plan, what);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
};

/** Box around items in floor millimetres; undefined when nothing is drawn. */
export const itemsBox = (items: readonly DisplayItem[]): Box | undefined => {
  const box = items.reduce((b, i) => unionBox(b, i.box), emptyBox);
  return isEmptyBox(box) ? undefined : box;
};

/**
 * Box around the geometry of a floor in floor millimetres, texts left out; undefined for an empty floor. What is laid
 * under the floor counts only where there is nothing else.
 */
export const floorExtents = (plan: Plan, floorId: Id): Box | undefined => {
  const items = geometryItems(
    drawContext(plan, {
      floorId,
      setupId: undefined,
      nominalScale: 50,
      options: { beams: false, aims: false },
    }),
  );
  return itemsBox(items.filter((i) => i.layer !== 'underlay')) ?? itemsBox(items);
};
