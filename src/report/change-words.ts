import type { Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { portName, recordName } from '../plan/names.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import type { AnyRecord } from '../plan/records/index.ts';

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** What a thing is called at the start of a line: `Unit 7`, `K1`, `Wall`. */
export const nameOf = (plan: Plan, id: Id): string => {
  const r = plan.records.get(id);
  if (r?.type === 'wall')
    return `Wall of ${formatLength(Math.hypot(r.to.xMm - r.from.xMm, r.to.yMm - r.from.yMm), planRecord(plan).lengthUnits)}`;
  return capital(recordName(plan, r ?? id));
};

/** Outlet that feeds a record, by itself or through its ballast: `K3 way 5`, `unit 7`; undefined where nothing does. */
export const feedOf = (plan: Plan, id: Id): { readonly text: string; readonly owner: string } | undefined => {
  const ballast = recordsOf(plan, 'ballast').find((b) => b.fixtureId === id);
  const cable = feeds(plan).get(ballast?.id ?? id);
  const from = cable && recordOf(plan, 'cable', cable);
  if (!from) return undefined;
  const owner = plan.records.get(from.from.recordId);
  const label = owner && 'label' in owner && typeof owner.label === 'string' ? owner.label : '';
  return { text: portName(plan, from.from), owner: label };
};

const feedIndexes = new WeakMap<Plan, ReadonlyMap<Id, Id>>();

const feeds = (plan: Plan): ReadonlyMap<Id, Id> => {
  let index = feedIndexes.get(plan);
  if (!index) {
    index = new Map([...recordsOf(plan, 'cable')].reverse().map((c) => [c.to.recordId, c.id]));
    feedIndexes.set(plan, index);
  }
  return index;
};

/** `now on K3 way 5, was way 2`: the earlier place is shortened where it is on the same thing. */
export const feedClause = (before: Plan, after: Plan, id: Id): readonly string[] => {
  const [was, now] = [feedOf(before, id), feedOf(after, id)];
  if (was?.text === now?.text) return [];
  if (!now) return [`no longer plugged in, was on ${was?.text}`];
  if (!was) return [`now on ${now.text}, was not plugged in`];
  const same = was.owner !== '' && was.owner === now.owner && was.text.startsWith(`${was.owner} `);
  return [`now on ${now.text}, was ${same ? was.text.slice(was.owner.length + 1) : `on ${was.text}`}`];
};

const kindName = (plan: Plan, r: AnyRecord | undefined): string =>
  r && 'kindId' in r && typeof r.kindId === 'string' ? (kindOf(plan, r.kindId)?.name ?? '') : '';

export const addedWords = (plan: Plan, id: Id): string => {
  const r = plan.records.get(id);
  const name = nameOf(plan, id);
  const kind = kindName(plan, r);
  const feed = feedOf(plan, id);
  const facts = [
    name.toLowerCase().includes(kind.toLowerCase()) ? '' : kind,
    r?.type === 'fixture' ? r.use : '',
    r?.type !== 'cable' && feed ? `on ${feed.text}` : '',
  ].filter(Boolean);
  return `${name} added${facts.length > 0 ? `: ${facts.join(', ')}` : ''}`;
};

export const removedWords = (plan: Plan, id: Id): string => {
  const kind = kindName(plan, plan.records.get(id));
  const name = nameOf(plan, id);
  return `${name} removed${kind && !name.toLowerCase().includes(kind.toLowerCase()) ? `: ${kind}` : ''}`;
};

export const changedWords = (before: Plan, after: Plan, id: Id, clauses: readonly string[]): string => {
  const [was, now] = [nameOf(before, id), nameOf(after, id)];
  const renumbered =
    was === now || after.records.get(id)?.type === 'wall' ? [] : [`now called ${lower(now)}`];
  const all = [...renumbered, ...clauses];
  return `${was} ${all.length > 0 ? all.join(', ') : 'changed'}`;
};

const lower = (s: string): string => s.charAt(0).toLowerCase() + s.slice(1);
