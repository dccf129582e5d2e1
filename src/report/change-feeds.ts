import { cableLength } from '../derive/lengths.ts';
import { compareIds, type Id } from '../kernel/ids.ts';
import { formatCableLength } from '../kernel/units.ts';
import { portName } from '../plan/names.ts';
import { kindOf, type Plan, planRecord, recordsOf } from '../plan/plan.ts';
import type { Cable, PortRef } from '../plan/records/index.ts';
import { changed, fieldClauses, fieldsOf, same } from './change-fields.ts';

const indexes = new WeakMap<Plan, ReadonlyMap<Id, readonly Cable[]>>();

/** Cables that lead into a thing, those into the ballast of a unit with them; by their ids. */
export const cablesInto = (plan: Plan, id: Id): readonly Cable[] => {
  let index = indexes.get(plan);
  if (!index) {
    const heads = new Map(recordsOf(plan, 'ballast').map((b) => [b.id, b.fixtureId]));
    const made = new Map<Id, Cable[]>();
    for (const c of [...recordsOf(plan, 'cable')].sort((a, b) => compareIds(a.id, b.id))) {
      const fed = heads.get(c.to.recordId) ?? c.to.recordId;
      made.set(fed, [...(made.get(fed) ?? []), c]);
    }
    index = made;
    indexes.set(plan, index);
  }
  return index.get(id) ?? [];
};

/** Outlet that feeds a thing, by itself or through its ballast: `K3 way 5`; undefined where nothing does. */
export const feedOf = (plan: Plan, id: Id): string | undefined => {
  const cable = cablesInto(plan, id)[0];
  return cable && portName(plan, cable.from);
};

const labelOf = (plan: Plan, ref: PortRef): string => {
  const r = plan.records.get(ref.recordId);
  return r && 'label' in r && typeof r.label === 'string' ? r.label : '';
};

/** `now on K3 way 5, was way 2`: the earlier place is shortened where it is on the same thing. */
const replugged = (before: Plan, after: Plan, was: PortRef, now: PortRef): readonly string[] => {
  if (was.recordId === now.recordId && was.portId === now.portId) return [];
  const text = portName(before, was);
  const label = labelOf(before, was);
  const short = was.recordId === now.recordId && label !== '' && text.startsWith(`${label} `);
  return [`now on ${portName(after, now)}, was ${short ? text.slice(label.length + 1) : `on ${text}`}`];
};

const piecesOf = (plan: Plan, c: Cable): string => {
  const units = planRecord(plan).lengthUnits;
  return (
    (cableLength(plan, c)?.piecesMm ?? []).map((mm) => formatCableLength(mm, units)).join(' + ') || 'none'
  );
};

const ROUTE_WORDS: ReadonlySet<string> = new Set(['auto', 'points']);
const OWN_WORDS: ReadonlySet<string> = new Set(['kindId', 'from', 'to', 'piecesMm', 'route']);

/** A run of cable that is there before and after: kind, pieces, way it is laid, and its other fields. */
export const runClauses = (before: Plan, after: Plan, b: Cable, a: Cable): readonly string[] => {
  const pieces = changed('cable pieces', piecesOf(before, b), piecesOf(after, a));
  const [was, now] = [kindOf(before, b.kindId)?.name ?? b.kindId, kindOf(after, a.kindId)?.name ?? a.kindId];
  return [
    ...(b.kindId === a.kindId
      ? []
      : was === now
        ? [`figures of its cable (${now}) changed`]
        : changed('cable', was, now)),
    ...pieces,
    ...(pieces.length === 0 && !same(b.piecesMm, a.piecesMm)
      ? [`cable pieces now ${a.piecesMm ? 'chosen by hand' : 'made up by the program'}, as long as before`]
      : []),
    ...(same(b.route.points, a.route.points) && b.route.auto === a.route.auto
      ? []
      : [`cable ${a.route.auto && !b.route.auto ? 'now laid by itself' : 'laid another way'}`]),
    ...[
      ...fieldClauses(before, after, fieldsOf(b.route), fieldsOf(a.route), ROUTE_WORDS),
      ...fieldClauses(before, after, fieldsOf(b), fieldsOf(a), OWN_WORDS),
    ].map((c) => `cable ${c}`),
  ];
};

/** What feeds a thing otherwise than before, cable by cable: one that stayed, one in place of another, one more or less. */
export const feedClauses = (before: Plan, after: Plan, id: Id): readonly string[] => {
  const [was, now] = [cablesInto(before, id), cablesInto(after, id)];
  const stayed = now.flatMap((a) => was.filter((b) => b.id === a.id).map((b) => ({ b, a })));
  const gone = was.filter((b) => !stayed.some((s) => s.b === b));
  const come = now.filter((a) => !stayed.some((s) => s.a === a));
  const inPlace = gone.slice(0, come.length).flatMap((b, i) => come.slice(i, i + 1).map((a) => ({ b, a })));
  return [
    ...[...stayed, ...inPlace].flatMap(({ b, a }) => [
      ...replugged(before, after, b.from, a.from),
      ...(b.to.recordId === a.to.recordId && b.to.portId !== a.to.portId
        ? ['plugged into another inlet']
        : []),
      ...(b === a && was.length === now.length && piecesOf(before, b) === piecesOf(after, a)
        ? []
        : runClauses(before, after, b, a)),
    ]),
    ...gone
      .slice(come.length)
      .map((b) =>
        now.length === 0
          ? `no longer plugged in, was on ${portName(before, b.from)}`
          : `no longer on ${portName(before, b.from)} too`,
      ),
    ...come
      .slice(gone.length)
      .map((a) =>
        was.length === 0
          ? `now on ${portName(after, a.from)}, was not plugged in`
          : `now on ${portName(after, a.from)} too`,
      ),
  ];
};
