import batteries from '../../shared/batteries.json' with { type: 'json' };
import table from '../../shared/limits.json' with { type: 'json' };
import radio from '../../shared/radio.json' with { type: 'json' };
import rigging from '../../shared/rigging.json' with { type: 'json' };
import site from '../../shared/site.json' with { type: 'json' };
import { type Plan, planRecord } from '../plan/plan.ts';
import type { Country, PlanRecord, Practice } from '../plan/records/index.ts';

/** One row of the limits table: a value, what it says in words, and where it is from. */
export interface LimitRow {
  readonly id: string;
  readonly practice: Practice | 'both';
  /** Holds in this country alone, in place of the practice's row. */
  readonly country?: Country;
  readonly value: number;
  readonly unit: string;
  readonly text: string;
  readonly source: string;
  readonly edition: string;
  readonly status: 'found' | 'computed' | 'from memory' | 'common practice';
}

/** A row as it holds in one plan. `override` tells the table's own value and the reason where the plan sets another. */
export interface Limit extends LimitRow {
  readonly override: { readonly tableValue: number; readonly reason: string } | undefined;
}

/** All rows of the tables. */
export const limitRows: readonly LimitRow[] = [
  ...table.rows,
  ...rigging.rows,
  ...batteries.rows,
  ...radio.rows,
  ...site.rows,
] as readonly LimitRow[];

const byPlan = new WeakMap<PlanRecord, ReadonlyMap<string, Limit>>();

/** The limits that hold under a plan's practice and country, the plan's own overrides applied. */
export const limitsOf = (plan: Plan): ReadonlyMap<string, Limit> => {
  const record = planRecord(plan);
  const known = byPlan.get(record);
  if (known) return known;
  const map = new Map<string, Limit>();
  for (const row of limitRows) {
    if (row.practice !== 'both' && row.practice !== record.practice) continue;
    if (row.country !== undefined && row.country !== record.country) continue;
    // A country's row stands, wherever the practice's own is in the table.
    if (row.country === undefined && map.get(row.id)?.country !== undefined) continue;
    const o = record.limits.find((x) => x.limit === row.id && Number.isFinite(x.value));
    map.set(row.id, {
      ...row,
      value: o ? o.value : row.value,
      override: o ? { tableValue: row.value, reason: o.reason } : undefined,
    });
  }
  byPlan.set(record, map);
  return map;
};

/** One limit that must exist under the plan's practice. */
export const limitOf = (plan: Plan, id: string): Limit => {
  const l = limitsOf(plan).get(id);
  if (!l) throw new Error(`no limit ${id} in the table`);
  return l;
};

/** Where a limit is from, in one line for people. */
export const limitCitation = (l: Limit): string => {
  const from = [l.source, l.edition].filter(Boolean).join(', ');
  const status = l.status === 'from memory' && !from.includes('from memory') ? ' (from memory: verify)' : '';
  return l.override
    ? `set in this plan to ${l.value} ${l.unit} in place of ${l.override.tableValue}: ${l.override.reason}`
    : `${from}${status}`;
};
