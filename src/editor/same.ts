import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { feedOf, inletsOf, outletsOf } from '../plan/ports.ts';
import { takerOf } from './connect.ts';

/** The way that protects what a thing draws, as `<owner>|<way>`; undefined where it is not plugged into one. */
export const circuitOf = (plan: Plan, id: Id): string | undefined => {
  const seen = new Set<Id>();
  let at = takerOf(plan, id);
  while (!seen.has(at)) {
    seen.add(at);
    const outlet = recordOf(plan, 'outlet', at);
    if (outlet) return `${outlet.sourceId}|${outlet.wayId}`;
    const here = at;
    const feed = inletsOf(plan, here)
      .map((i) => feedOf(plan, { recordId: here, portId: i.id }))
      .find((c) => c !== undefined);
    if (!feed) return undefined;
    const { recordId, portId } = feed.from;
    const wayId = outletsOf(plan, recordId).find((o) => o.id === portId)?.wayId;
    if (wayId !== undefined && !recordOf(plan, 'outlet', recordId)) return `${recordId}|${wayId}`;
    at = recordId;
  }
  return undefined;
};

/** Everything on the floors that draws through one of these circuits. */
export const onCircuits = (plan: Plan, circuits: ReadonlySet<string>): readonly Id[] =>
  [...plan.records.values()].flatMap((r) => {
    if (r.type !== 'fixture' && r.type !== 'outlet' && r.type !== 'box') return [];
    const c = circuitOf(plan, r.id);
    return c !== undefined && circuits.has(c) ? [r.id] : [];
  });

/** All records of the same kinds as these, on one floor. Records without a kind stand for their type. */
export const sameKind = (plan: Plan, floorId: Id | undefined, ids: ReadonlySet<Id>): readonly Id[] => {
  const keyOf = (id: Id): string | undefined => {
    const r = plan.records.get(id);
    return r && ('kindId' in r && typeof r.kindId === 'string' ? r.kindId : `type:${r.type}`);
  };
  const keys = new Set([...ids].map(keyOf));
  return [...plan.records.values()].flatMap((r) =>
    'floorId' in r && r.floorId === floorId && keys.has(keyOf(r.id)) ? [r.id] : [],
  );
};

/** All fixtures patched into the universes of these. */
export const sameUniverse = (plan: Plan, ids: ReadonlySet<Id>): readonly Id[] => {
  const universes = new Set([...ids].map((id) => recordOf(plan, 'fixture', id)?.patch?.universeId));
  universes.delete(undefined);
  return recordsOf(plan, 'fixture').flatMap((f) =>
    f.patch && universes.has(f.patch.universeId) ? [f.id] : [],
  );
};
