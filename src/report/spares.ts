import table from '../../shared/spares.json' with { type: 'json' };
import { type Plan, planRecord } from '../plan/plan.ts';

/** Groups of gear that lists add spares to, each by a row of the table of spares. */
export const SPARE_GROUPS = ['cable', 'lights', 'stands', 'grip', 'adapters'] as const;
export type SpareGroup = (typeof SPARE_GROUPS)[number];

const ROWS: Readonly<Record<SpareGroup, string>> = {
  cable: 'cable-pieces',
  lights: 'fixtures',
  stands: 'stands',
  grip: 'grip',
  adapters: 'adapters',
};

/** Per cent of spares by common practice, no published source. */
export const usualSparePct = (group: SpareGroup): number =>
  table.rows.find((r) => r.id === ROWS[group])?.value ?? 0;

/** Per cent of spares a plan adds: what it sets itself, else common practice. */
export const sparePct = (plan: Plan, group: SpareGroup): number =>
  planRecord(plan).paper.spares?.[group] ?? usualSparePct(group);

/** Rounded up to a whole, past what floating point adds. */
const up = (n: number): number => Math.max(0, Math.ceil(n - 1e-9));

/** Spare pieces for so many of one kind: lights to the nearest whole, all else rounded up. */
export const sparesFor = (plan: Plan, group: SpareGroup, count: number): number => {
  const wanted = (count * sparePct(plan, group)) / 100;
  return group === 'lights' ? Math.max(0, Math.round(wanted)) : up(wanted);
};

/** Where the per cents of some groups are from, in words for a list. */
export const spareBasis = (plan: Plan, groups: readonly SpareGroup[]): string => {
  const set = groups.filter((g) => planRecord(plan).paper.spares?.[g] !== undefined);
  const practice = 'common practice, no published source';
  if (set.length === 0) return practice;
  return set.length === groups.length
    ? 'as set in this plan'
    : `${set.join(', ')} as set in this plan, else ${practice}`;
};
