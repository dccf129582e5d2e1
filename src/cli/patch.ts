import {
  type Assignment,
  type AssignOptions,
  assignAddresses,
  DEFAULT_ASSIGN,
} from '../engines/control/index.ts';
import { ok, type Result } from '../kernel/result.ts';
import { type Address, printAddress } from '../plan/address.ts';
import { applyChanges } from '../plan/change-set.ts';
import { type Plan, recordOf } from '../plan/plan.ts';

/** Orders as the command line names them. */
export const PATCH_ORDERS = {
  unit: 'unit',
  channel: 'channel',
  position: 'left-right',
  rows: 'top-bottom',
  path: 'path',
  line: 'line',
} as const satisfies Record<string, AssignOptions['order']>;

export interface PatchCommandOptions extends Partial<AssignOptions> {
  readonly json: boolean;
}

export interface PatchCommandResult {
  readonly text: string;
  /** The plan with its new addresses. */
  readonly plan: Plan;
}

const places = (list: readonly Address[]): string =>
  list.length === 0 ? 'none' : list.map(printAddress).join(' + ');

/** Assigns addresses over a whole plan and gives the new plan and what changed, unit by unit. */
export const patchCommand = (plan: Plan, options: PatchCommandOptions): Result<PatchCommandResult> => {
  const { json, ...rest } = options;
  const assigned = assignAddresses(plan, { ...DEFAULT_ASSIGN, ...rest });
  if (!assigned.ok) return assigned;
  return ok({
    text: json ? jsonOf(plan, assigned.value) : textOf(plan, assigned.value),
    plan: applyChanges(plan, assigned.value.changes),
  });
};

const unitOf = (plan: Plan, id: string): string => recordOf(plan, 'fixture', id)?.unit ?? '';

const jsonOf = (plan: Plan, a: Assignment): string =>
  `${JSON.stringify(
    {
      units: a.rows.map((r) => ({
        unit: unitOf(plan, r.fixtureId),
        fixtureId: r.fixtureId,
        mode: r.modeId,
        modeAssumed: r.modeAssumed,
        slots: r.slots,
        before: r.before,
        after: r.after,
        changed: r.changed,
      })),
      universes: a.universes,
      newUniverses: a.newUniverses,
      lowerBound: a.lowerBound,
      kept: a.kept.map((id) => unitOf(plan, id)),
      notices: a.notices,
    },
    null,
    1,
  )}\n`;

const textOf = (plan: Plan, a: Assignment): string => {
  const rows = a.rows.map((r) => [
    unitOf(plan, r.fixtureId),
    String(r.slots),
    places(r.before),
    places(r.after),
    [r.changed ? '' : 'as before', r.modeAssumed ? `mode ${r.modeId} assumed` : '']
      .filter(Boolean)
      .join(', '),
  ]);
  const head = ['unit', 'slots', 'before', 'after', ''];
  const width = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i]?.length ?? 0)));
  const line = (cells: readonly string[]): string =>
    `  ${cells.map((c, i) => (i === 1 ? c.padStart(width[i] ?? 0) : c.padEnd(width[i] ?? 0))).join('  ')}`.trimEnd();
  const changed = a.rows.filter((r) => r.changed).length;
  return [
    line(head),
    ...rows.map(line),
    '',
    `${a.rows.length} units in ${a.universes.length} ${a.universes.length === 1 ? 'universe' : 'universes'} (${a.universes.map((n) => `U${n}`).join(', ') || 'none'}); no arrangement takes fewer than ${a.lowerBound}. ${changed} changed.`,
    ...(a.newUniverses.length > 0 ? [`New: ${a.newUniverses.map((n) => `U${n}`).join(', ')}.`] : []),
    ...(a.kept.length > 0 ? [`Left as they were: ${a.kept.map((id) => unitOf(plan, id)).join(', ')}.`] : []),
    ...a.notices.map((n) => `Note: ${n}`),
    '',
  ].join('\n');
};
