import type { Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { recordName } from '../plan/names.ts';
import { kindOf, type Plan, planRecord } from '../plan/plan.ts';
import type { AnyRecord } from '../plan/records/index.ts';
import { feedOf } from './change-feeds.ts';
import { fieldsOf, same, valueText } from './change-fields.ts';

const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** What a thing is called at the start of a line: `Unit 7`, `K1`, `Wall`. */
export const nameOf = (plan: Plan, id: Id): string => {
  const r = plan.records.get(id);
  if (r?.type === 'wall')
    return `Wall of ${formatLength(Math.hypot(r.to.xMm - r.from.xMm, r.to.yMm - r.from.yMm), planRecord(plan).lengthUnits)}`;
  return capital(recordName(plan, r ?? id).trim());
};

const kindName = (plan: Plan, r: AnyRecord | undefined): string =>
  r && 'kindId' in r && typeof r.kindId === 'string' ? (kindOf(plan, r.kindId)?.name ?? '') : '';

/** What somebody measured or noted is told with its values. */
const VALUES_OF: ReadonlySet<string> = new Set(['measurement', 'otherLoad', 'acknowledgement']);
const NO_VALUES: ReadonlySet<string> = new Set([
  'id',
  'type',
  'order',
  'on',
  'owner',
  'who',
  'findingId',
  'leg',
]);

const valuesOf = (plan: Plan, r: AnyRecord): string => {
  const f = fieldsOf(r);
  return valueText(plan, '', Object.fromEntries(Object.entries(f).filter(([key]) => !NO_VALUES.has(key))));
};

const factsOf = (plan: Plan, id: Id): string => {
  const r = plan.records.get(id);
  const kind = kindName(plan, r);
  const feed = feedOf(plan, id);
  const facts = [
    nameOf(plan, id).toLowerCase().includes(kind.toLowerCase()) ? '' : kind,
    r?.type === 'fixture' ? r.use : '',
    r?.type !== 'cable' && feed !== undefined ? `on ${feed}` : '',
    r && VALUES_OF.has(r.type) ? valuesOf(plan, r) : '',
  ].filter(Boolean);
  return facts.length > 0 ? `: ${facts.join(', ')}` : '';
};

export const addedWords = (plan: Plan, id: Id): string => `${nameOf(plan, id)} added${factsOf(plan, id)}`;

export const removedWords = (plan: Plan, id: Id): string => `${nameOf(plan, id)} removed${factsOf(plan, id)}`;

/** Fields a thing is called by; a new kind or place is no new name. */
const NAMED_BY = ['unit', 'label', 'name', 'number', 'revision'] as const;

/** The line of a thing that was there before; undefined where nothing about it is worth one. */
export const changedWords = (
  before: Plan,
  after: Plan,
  id: Id,
  clauses: readonly string[],
): string | undefined => {
  const [b, a] = [fieldsOf(before.records.get(id)), fieldsOf(after.records.get(id))];
  const name = NAMED_BY.find((key) => !same(b[key] ?? '', a[key] ?? ''));
  const renamed =
    name === undefined ? [] : [a[name] === '' ? 'now without a name' : `now called ${recordName(after, id)}`];
  const all = [...renamed, ...clauses];
  return all.length > 0 ? `${nameOf(before, id)} ${all.join(', ')}` : undefined;
};
