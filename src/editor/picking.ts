import RBush from 'rbush';
import type { DisplayItem, DisplayList, DrawingLayer } from '../drawing/display-list.ts';
import { type Box, distanceMm, emptyBox, type Point, unionBox } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { alongWall, openingCentre } from '../plan/edits/openings.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { AnyRecord, RecordType } from '../plan/records/index.ts';
import { type Hit, hitItem, hitLabel } from './hit.ts';

interface Entry extends Box {
  readonly item: DisplayItem;
}

export type Accept = (r: AnyRecord) => boolean;

/** Finds what is drawn where. Fed with display lists; only items that are new or gone touch the tree. */
export interface Picker {
  update(list: DisplayList, plan: Plan): void;
  /** Layers that the hand passes through: hidden or locked ones. */
  mute(layers: ReadonlySet<DrawingLayer>): void;
  /** The topmost record at a point, with so many millimetres of tolerance. */
  pick(at: Point, toleranceMm: number, accept?: Accept): Id | undefined;
  /** The label at a point, by the record it names and the spot it is held by; none where a thing lies there too. */
  labelAt(at: Point, toleranceMm: number): { readonly recordId: Id; readonly anchor: Point } | undefined;
  /** Records whose drawn body lies inside the box. */
  within(box: Box): readonly Id[];
  /** Records whose drawn body meets the box. */
  touching(box: Box): readonly Id[];
  /** Box around a record's drawn body (labels, beams and dimensions left out). */
  boxOf(id: Id): Box | undefined;
  /** Items whose box meets the box, in drawing order. */
  itemsIn(box: Box): readonly DisplayItem[];
}

/** What lies on top for the hand: smaller numbers win. Types not named cannot be picked. */
const RANK: Partial<Record<RecordType, number>> = {
  fixture: 0,
  ballast: 1,
  box: 2,
  device: 2.5,
  outlet: 3,
  source: 4,
  mark: 5,
  photo: 5.2,
  grip: 5.5,
  stand: 6,
  rigging: 6.5,
  cable: 7,
  line: 7.2,
  dimension: 7.5,
  opening: 8,
  setPiece: 9,
  wall: 10,
  crossing: 7.2,
  feature: 11,
};

const BODY: Readonly<Record<DrawingLayer, boolean>> = {
  underlay: false,
  coverage: false,
  architecture: true,
  set: true,
  beams: false,
  cables: true,
  data: true,
  stands: true,
  gear: true,
  notes: true,
  dimensions: false,
  labels: false,
};

const NOT_PICKED: readonly DrawingLayer[] = ['underlay', 'coverage', 'beams'];

export const createPicker = (): Picker => {
  const tree = new RBush<Entry>();
  const entries = new Map<DisplayItem, Entry>();
  const order = new Map<DisplayItem, number>();
  const byRecord = new Map<Id, Set<DisplayItem>>();
  let muted: ReadonlySet<DrawingLayer> = new Set();
  let current: DisplayList | undefined;
  let plan: Plan | undefined;

  const drop = (item: DisplayItem, entry: Entry): void => {
    tree.remove(entry);
    entries.delete(item);
    const set = byRecord.get(item.recordId);
    set?.delete(item);
    if (set?.size === 0) byRecord.delete(item.recordId);
  };

  const update = (list: DisplayList, nextPlan: Plan): void => {
    plan = nextPlan;
    if (list === current) return;
    current = list;
    order.clear();
    list.items.forEach((item, i) => {
      order.set(item, i);
    });
    for (const [item, entry] of [...entries]) if (!order.has(item)) drop(item, entry);
    const fresh: Entry[] = [];
    for (const item of list.items) {
      if (entries.has(item)) continue;
      const entry = { ...item.box, item };
      entries.set(item, entry);
      fresh.push(entry);
      const set = byRecord.get(item.recordId);
      if (set) set.add(item);
      else byRecord.set(item.recordId, new Set([item]));
    }
    tree.load(fresh);
  };

  const boxOf = (id: Id): Box | undefined => {
    let box: Box | undefined;
    for (const item of byRecord.get(id) ?? [])
      if (BODY[item.layer]) box = unionBox(box ?? emptyBox, item.box);
    return box;
  };

  const bodies = (box: Box, test: (b: Box) => boolean): readonly Id[] => {
    const found = new Set<Id>();
    const seen = new Set<Id>();
    for (const { item } of tree.search(box)) {
      if (muted.has(item.layer)) continue;
      const id = item.recordId;
      if (seen.has(id)) continue;
      seen.add(id);
      const type = plan?.records.get(id)?.type;
      if (type === undefined || RANK[type] === undefined) continue;
      const own = boxOf(id);
      if (own && test(own)) found.add(id);
    }
    return [...found].sort();
  };

  return {
    update,
    mute: (layers) => {
      muted = layers;
    },
    boxOf,
    pick: (at, tol, accept) => {
      const near: Box = { minX: at.xMm - tol, minY: at.yMm - tol, maxX: at.xMm + tol, maxY: at.yMm + tol };
      let best: { id: Id; score: readonly number[] } | undefined;
      for (const { item } of tree.search(near)) {
        if (NOT_PICKED.includes(item.layer) || muted.has(item.layer)) continue;
        const r = plan?.records.get(item.recordId);
        const rank = r && RANK[r.type];
        // Other dimensions are the drawing's own and name a wall.
        if (item.layer === 'dimensions' && r?.type !== 'dimension') continue;
        if (!r || rank === undefined || (accept && !accept(r))) continue;
        const hit = inOpening(plan, r, at) ?? hitItem(item, at, current?.nominalScale ?? 1);
        if (hit.distanceMm > tol) continue;
        // Lines have no inside, so being near one counts as on it; beside a filled shape counts less than on one.
        const line =
          r.type === 'cable' ||
          r.type === 'line' ||
          r.type === 'wall' ||
          r.type === 'setPiece' ||
          r.type === 'opening' ||
          r.type === 'dimension';
        // Ground lies under everything: what is on it or beside it comes first.
        const beside = r.type === 'feature' ? 2 : hit.solid || line ? 0 : 1;
        // What was put above others by hand is above them for the hand too.
        const score = [beside, -(r.order ?? 0), rank, -(order.get(item) ?? 0)];
        if (!best || less(score, best.score)) best = { id: r.id, score };
      }
      return best?.id;
    },
    labelAt: (at, tol) => {
      if (muted.has('labels')) return undefined;
      const near: Box = { minX: at.xMm - tol, minY: at.yMm - tol, maxX: at.xMm + tol, maxY: at.yMm + tol };
      const scale = current?.nominalScale ?? 1;
      let found: DisplayItem | undefined;
      for (const { item } of tree.search(near)) {
        if (item.layer === 'labels') {
          if (item.anchor && hitLabel(item, at, scale, tol)) found = item;
        } else if (item.layer === 'gear' && !muted.has('gear') && hitItem(item, at, scale).solid)
          return undefined;
      }
      return found?.anchor && { recordId: found.recordId, anchor: found.anchor };
    },
    within: (box) =>
      bodies(
        box,
        (b) => b.minX >= box.minX && b.minY >= box.minY && b.maxX <= box.maxX && b.maxY <= box.maxY,
      ),
    touching: (box) =>
      bodies(
        box,
        (b) => b.minX <= box.maxX && b.maxX >= box.minX && b.minY <= box.maxY && b.maxY >= box.minY,
      ),
    itemsIn: (box) =>
      tree
        .search(box)
        .map((e) => e.item)
        .sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0)),
  };
};

/** An opening is a gap in its wall, with nothing drawn in its middle: the whole gap counts as on it. */
const inOpening = (plan: Plan | undefined, r: AnyRecord, at: Point): Hit | undefined => {
  const wall = plan && r.type === 'opening' ? recordOf(plan, 'wall', r.wallId) : undefined;
  if (!wall || r.type !== 'opening') return undefined;
  const t = alongWall(wall, at) - r.offsetMm;
  const foot = openingCentre(wall, { offsetMm: r.offsetMm + t, widthMm: 0 });
  const inside = t >= 0 && t <= r.widthMm && distanceMm(foot, at) <= wall.thicknessMm / 2;
  return inside ? { solid: true, distanceMm: 0 } : undefined;
};

const less = (a: readonly number[], b: readonly number[]): boolean => {
  for (let i = 0; i < a.length; i++) {
    const d = (a[i] ?? 0) - (b[i] ?? 0);
    if (d !== 0) return d < 0;
  }
  return false;
};
