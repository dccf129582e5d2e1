import type { Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import type { DataPort } from './kinds/data-ports.ts';
import type { InletPort, OutletPort, Way } from './kinds/ports.ts';
import { fixturePlace, kindOf, type Plan, recordOf, recordsOf } from './plan.ts';
import type { PortRef, RecordOf } from './records/index.ts';

/** A spot with its height above the floor, where a cable can end. */
export interface Place {
  readonly at: Point;
  readonly heightMm: number;
  readonly floorId: Id;
}

/** Families of kinds that a box record may be of: whatever power passes through on its way. */
export const boxFamilies = ['box', 'dimmer', 'converter', 'adapter'] as const;

/** Families of kinds that a device record may be of. */
export const deviceFamilies = [
  'transmitter',
  'receiver',
  'repeater',
  'node',
  'dataSplitter',
  'video',
] as const;

/** Power inlets of a record, none where it takes no power. */
export const inletsOf = (plan: Plan, recordId: Id): readonly InletPort[] => {
  const r = plan.records.get(recordId);
  if (
    r?.type !== 'fixture' &&
    r?.type !== 'ballast' &&
    r?.type !== 'box' &&
    r?.type !== 'charger' &&
    r?.type !== 'source' &&
    r?.type !== 'device'
  )
    return [];
  const kind = kindOf(
    plan,
    r.kindId,
    'fixture',
    'ballast',
    'charger',
    'source',
    ...boxFamilies,
    ...deviceFamilies,
  );
  return kind?.inlets ?? [];
};

/** Power outlets of a record. A wall outlet has one, called `out`. */
export const outletsOf = (plan: Plan, recordId: Id): readonly OutletPort[] => {
  const r = plan.records.get(recordId);
  if (r?.type === 'outlet') {
    return [
      { id: 'out', connector: r.connector, legs: r.legs, neutral: r.neutral, wayId: r.wayId, label: r.label },
    ];
  }
  if (
    r?.type !== 'fixture' &&
    r?.type !== 'ballast' &&
    r?.type !== 'box' &&
    r?.type !== 'source' &&
    r?.type !== 'device'
  )
    return [];
  return (
    kindOf(plan, r.kindId, 'fixture', 'ballast', 'source', ...boxFamilies, ...deviceFamilies)?.outlets ?? []
  );
};

/** Ways of a source or box as they are in this plan: the record's own in place of, or on top of, the kind's. */
export const waysOf = (plan: Plan, recordId: Id): readonly Way[] => {
  const r = plan.records.get(recordId);
  if (r?.type === 'source') return r.ways ?? kindOf(plan, r.kindId, 'source')?.ways ?? [];
  if (r?.type !== 'box') return [];
  const own = new Map((r.ways ?? []).map((w) => [w.id, w]));
  return (kindOf(plan, r.kindId, 'box', 'dimmer')?.ways ?? []).map((w) => own.get(w.id) ?? w);
};

/** Where a record with ports is on the floor; undefined for one that has no place. */
export const placeOf = (plan: Plan, recordId: Id): Place | undefined => {
  const r = plan.records.get(recordId);
  switch (r?.type) {
    case 'fixture':
      return { ...fixturePlace(plan, r), floorId: r.floorId };
    case 'outlet':
      return { at: r.at, heightMm: r.heightMm, floorId: r.floorId };
    case 'device': {
      const on = r.fixtureId === undefined ? undefined : recordOf(plan, 'fixture', r.fixtureId);
      if (on) return { ...fixturePlace(plan, on), floorId: on.floorId };
      const stand = r.standId === undefined ? undefined : recordOf(plan, 'stand', r.standId);
      return stand
        ? { at: stand.at, heightMm: stand.heightMm, floorId: stand.floorId }
        : { at: r.at, heightMm: r.heightMm, floorId: r.floorId };
    }
    case 'ballast':
    case 'box':
    case 'charger':
    case 'pack':
    case 'source':
      return { at: r.at, heightMm: 0, floorId: r.floorId };
    default:
      return undefined;
  }
};

/** Sorts a list of records by ids in them, once per list. */
const indexed = <R extends object>(
  idsOf: (r: R) => Iterable<Id>,
): ((list: readonly R[]) => ReadonlyMap<Id, readonly R[]>) => {
  const made = new WeakMap<readonly R[], ReadonlyMap<Id, readonly R[]>>();
  return (list) => {
    const known = made.get(list);
    if (known) return known;
    const index = new Map<Id, R[]>();
    for (const r of list)
      for (const id of idsOf(r)) {
        const there = index.get(id);
        if (there) there.push(r);
        else index.set(id, [r]);
      }
    made.set(list, index);
    return index;
  };
};

const ballastsByHead = indexed((b: RecordOf<'ballast'>) => [b.fixtureId]);
const cablesByEnd = indexed((c: RecordOf<'cable'>) => new Set([c.from.recordId, c.to.recordId]));

/** What takes the mains for a fixture: its ballast where it has one, else itself. */
export const powerInletRecord = (plan: Plan, fixture: RecordOf<'fixture'>): Id => {
  if (!kindOf(plan, fixture.kindId, 'fixture')?.needsBallast) return fixture.id;
  return ballastsByHead(recordsOf(plan, 'ballast')).get(fixture.id)?.[0]?.id ?? fixture.id;
};

const NO_CABLES: readonly RecordOf<'cable'>[] = [];

/** Cables that end at a record's port, by either end, in id order. */
export const cablesAt = (plan: Plan, recordId: Id): readonly RecordOf<'cable'>[] =>
  cablesByEnd(recordsOf(plan, 'cable')).get(recordId) ?? NO_CABLES;

/** The cable that feeds this inlet, if there is one. */
export const feedOf = (plan: Plan, inlet: PortRef): RecordOf<'cable'> | undefined =>
  cablesAt(plan, inlet.recordId).find(
    (c) => c.to.recordId === inlet.recordId && c.to.portId === inlet.portId,
  );

/** Points between the two ends of an automatic route: one square corner, the longer leg first. */
export const autoRoute = (from: Point, to: Point): readonly Point[] => {
  const dx = Math.abs(to.xMm - from.xMm);
  const dy = Math.abs(to.yMm - from.yMm);
  if (dx < 1 || dy < 1) return [];
  return dx >= dy ? [{ xMm: to.xMm, yMm: from.yMm }] : [{ xMm: from.xMm, yMm: to.yMm }];
};

/** All cables whose feed starts at one outlet port. */
export const pluggedInto = (plan: Plan, outlet: PortRef): readonly RecordOf<'cable'>[] =>
  cablesAt(plan, outlet.recordId).filter(
    (c) => c.from.recordId === outlet.recordId && c.from.portId === outlet.portId,
  );

/** Checks that a record is a source, box or wall outlet: something cables start from. */
export const isFeeder = (plan: Plan, id: Id): boolean =>
  recordOf(plan, 'source', id) !== undefined ||
  recordOf(plan, 'box', id) !== undefined ||
  recordOf(plan, 'outlet', id) !== undefined;

/**
 * Data ports of a device or fixture. A fixture whose kind has control modes and no ports of its own counts as having a
 * five-pin `in` and `through`; this is assumed.
 */
export const dataPortsOf = (
  plan: Plan,
  recordId: Id,
): {
  readonly dataIn: readonly DataPort[];
  readonly dataOut: readonly DataPort[];
  readonly assumed: boolean;
} => {
  const r = plan.records.get(recordId);
  if (r?.type === 'device' || r?.type === 'box') {
    const k = kindOf(plan, r.kindId, ...deviceFamilies, 'dimmer', 'adapter');
    return { dataIn: k?.dataIn ?? [], dataOut: k?.dataOut ?? [], assumed: false };
  }
  const fixture = r?.type === 'fixture' ? kindOf(plan, r.kindId, 'fixture') : undefined;
  if (!fixture || fixture.modes.length === 0) return { dataIn: [], dataOut: [], assumed: false };
  const port = (id: string): DataPort => ({ id, connector: 'xlr-5', universes: 1 });
  return {
    dataIn: fixture.dataIn ?? [port('in')],
    dataOut: fixture.dataOut ?? [port('through')],
    assumed: fixture.dataIn === undefined,
  };
};
