import type { SunSpot } from '../derive/sun.ts';
import type { Box } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { planInSetup, wholePlan } from '../plan/moves.ts';
import { kindOf, type Plan, planRecord, recordsOf } from '../plan/plan.ts';
import { outletsOf, waysOf } from '../plan/ports.ts';
import type { Ballast, Cable, Fixture, Opening, PlanRecord, Wall } from '../plan/records/index.ts';
import type { Assessment } from '../report/types.ts';
import type { DisplayItem } from './display-list.ts';

export interface DrawOptions {
  /** Unit bubbles and texts. Default true. */
  readonly labels?: boolean;
  readonly beams?: boolean;
  readonly aims?: boolean;
  readonly cables?: boolean;
  readonly dimensions?: boolean;
  readonly stands?: boolean;
  /** Stops and warnings of the assessment as tags at what they are about. Default false. */
  readonly findings?: boolean;
  /** Leaves out underlays that are not to be printed. Default false. */
  readonly forPaper?: boolean;
  /** Area and inside measures of rooms. Default false. */
  readonly rooms?: boolean;
  /** Fields beside beams, and the patches light makes on the floor. Default false. */
  readonly fields?: boolean;
  /** What units' labels say beside their number. */
  readonly labelFields?: readonly LabelField[];
  /** Where things that move between setups are in the other ones, faintly. Default false. */
  readonly ghosts?: boolean;
}

/** What a unit's label can say. */
export const LABEL_FIELDS = ['kind', 'use', 'gel', 'channel', 'watts', 'power', 'address', 'height'] as const;
export type LabelField = (typeof LABEL_FIELDS)[number];

export interface DrawFloor {
  readonly floorId: Id;
  readonly setupId: Id | undefined;
  /** 48 for 1:48. */
  readonly nominalScale: number;
  readonly assessment?: Assessment | undefined;
  readonly options?: DrawOptions;
  /** Only what is drawn for these records; labels and dimensions left out. For what is looked at during a drag. */
  readonly only?: ReadonlySet<Id> | undefined;
  /** Where the sun stands: its light through windows is drawn. */
  readonly sun?: SunSpot | undefined;
  /** Another floor whose architecture shows faintly beneath. */
  readonly beneathId?: Id | undefined;
  /** Labels keep inside this box of the floor, and what is outside it gets none. */
  readonly bounds?: Box;
  /** Marks drawn over the floor, like clouds round what changed; labels keep clear of them. */
  readonly marks?: readonly DisplayItem[];
}

export interface Architecture {
  readonly walls: readonly Wall[];
  readonly openings: ReadonlyMap<Id, readonly Opening[]>;
}

/** What drawing one floor looks up often, gathered once per plan and floor. */
export interface FloorIndex {
  /** Stays the same object while no wall or opening of the floor changes. */
  readonly architecture: Architecture;
  /** Those that are shown. */
  readonly fixtures: readonly Fixture[];
  readonly ballastOf: ReadonlyMap<Id, Ballast>;
  /** The first cable that feeds a record. */
  readonly feed: ReadonlyMap<Id, Cable>;
}

export interface DrawContext extends Omit<DrawFloor, 'options'> {
  /** As it stands in the shown setup. */
  readonly plan: Plan;
  /** With the places of every setup. */
  readonly whole: Plan;
  readonly settings: PlanRecord;
  readonly options: Required<DrawOptions>;
  readonly index: FloorIndex;
}

const architectures = new WeakMap<
  object,
  { readonly openings: object; readonly byFloor: Map<Id, Architecture> }
>();

const architectureOf = (plan: Plan, floorId: Id): Architecture => {
  // The lists stay the same arrays while no wall and no opening changes.
  const allWalls = recordsOf(plan, 'wall');
  const allOpenings = recordsOf(plan, 'opening');
  let known = architectures.get(allWalls);
  if (known?.openings !== allOpenings) {
    known = { openings: allOpenings, byFloor: new Map() };
    architectures.set(allWalls, known);
  }
  const last = known.byFloor.get(floorId);
  if (last) return last;
  const walls = allWalls.filter((w) => w.floorId === floorId);
  const ids = new Set(walls.map((w) => w.id));
  const openings = new Map<Id, Opening[]>();
  for (const o of allOpenings) {
    if (!ids.has(o.wallId)) continue;
    const list = openings.get(o.wallId);
    if (list) list.push(o);
    else openings.set(o.wallId, [o]);
  }
  for (const list of openings.values()) list.sort((a, b) => a.offsetMm - b.offsetMm);
  const made = { walls, openings };
  known.byFloor.set(floorId, made);
  return made;
};

const indexes = new WeakMap<Plan, Map<Id, FloorIndex>>();

export const floorIndex = (plan: Plan, floorId: Id): FloorIndex => {
  let byFloor = indexes.get(plan);
  if (!byFloor) {
    byFloor = new Map();
    indexes.set(plan, byFloor);
  }
  const known = byFloor.get(floorId);
  if (known) return known;
  let feed: Map<Id, Cable> | undefined;
  let ballasts: Map<Id, Ballast> | undefined;
  const made: FloorIndex = {
    architecture: architectureOf(plan, floorId),
    fixtures: recordsOf(plan, 'fixture').filter((f) => f.floorId === floorId && !f.hidden),
    // Made when they are first asked for: a frame of a drag does without.
    get ballastOf() {
      ballasts ??= new Map(recordsOf(plan, 'ballast').map((b) => [b.fixtureId, b]));
      return ballasts;
    },
    get feed() {
      if (!feed) {
        feed = new Map();
        for (const c of recordsOf(plan, 'cable')) if (!feed.has(c.to.recordId)) feed.set(c.to.recordId, c);
      }
      return feed;
    },
  };
  byFloor.set(floorId, made);
  return made;
};

export const drawContext = (any: Plan, what: DrawFloor): DrawContext => {
  const plan = planInSetup(any, what.setupId);
  return {
    ...what,
    plan,
    whole: wholePlan(any),
    settings: planRecord(plan),
    options: {
      labels: true,
      beams: true,
      aims: true,
      cables: true,
      dimensions: true,
      stands: true,
      findings: false,
      forPaper: false,
      rooms: false,
      fields: false,
      ghosts: false,
      labelFields: ['kind', 'use', 'power', 'address', 'height'],
      ...what.options,
    },
    index: floorIndex(plan, what.floorId),
  };
};

const slots = new WeakMap<
  object,
  Map<string, { readonly deps: readonly unknown[]; readonly item: DisplayItem | undefined }>
>();

/**
 * The item in this slot of a record, built anew only when one of `deps` is no longer the same.
 * Old records take their slots with them when they go.
 */
export const memoItem = (
  owner: object,
  slot: string,
  deps: readonly unknown[],
  build: () => DisplayItem | undefined,
): DisplayItem | undefined => {
  let own = slots.get(owner);
  if (!own) {
    own = new Map();
    slots.set(owner, own);
  }
  const known = own.get(slot);
  if (known && known.deps.length === deps.length && known.deps.every((d, i) => Object.is(d, deps[i]))) {
    return known.item;
  }
  const item = build();
  own.set(slot, { deps, item });
  return item;
};

/** Where a record takes its power, in short words: `K1·4`, `W2`; undefined when it is not plugged. */
export const pluggedAt = (ctx: DrawContext, recordId: Id): string | undefined => {
  let at = ctx.index.ballastOf.get(recordId)?.id ?? recordId;
  for (let hops = 0; hops < 40; hops++) {
    const cable = ctx.index.feed.get(at);
    if (!cable) return undefined;
    const from = ctx.plan.records.get(cable.from.recordId);
    if (from?.type === 'outlet') return from.label;
    if (from?.type === 'box' || from?.type === 'source') {
      const wayId = outletsOf(ctx.plan, from.id).find((o) => o.id === cable.from.portId)?.wayId;
      const way = wayId === undefined ? undefined : waysOf(ctx.plan, from.id).find((w) => w.id === wayId);
      return way ? `${from.label}·${way.label}` : from.label;
    }
    if (!from) return undefined;
    at = from.id;
  }
  return undefined;
};

/** A kind's symbol and true size, with a plain square where the plan lost the kind. */
export const kindLook = (
  plan: Plan,
  kindId: Id,
): {
  readonly symbolId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly name: string;
} => {
  const k = kindOf(plan, kindId);
  return k
    ? { symbolId: k.symbol, lengthMm: k.sizeMm.lengthMm, widthMm: k.sizeMm.widthMm, name: k.name }
    : { symbolId: 'unit-plain', lengthMm: 300, widthMm: 300, name: 'kind not in the plan' };
};
