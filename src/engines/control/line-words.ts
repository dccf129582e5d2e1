import { deviceKind } from '../../derive/data-lines.ts';
import { recordLabel } from '../../derive/labels.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import type { DataLine } from '../../plan/records/index.ts';

/** What people call a line: its label, else where it starts. */
export const lineLabel = (plan: Plan, l: DataLine): string =>
  l.label ? `Line ${l.label}` : `The line from ${recordLabel(plan, plan.records.get(l.from.recordId))}`;

/** Universes by number, for people: `U1`, `U1 and U3`. */
export const universeWords = (plan: Plan, ids: Iterable<Id>): string => {
  const numbers = [...new Set(ids)]
    .map((id) => recordOf(plan, 'universe', id)?.number)
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b)
    .map((n) => `U${n}`);
  return numbers.length > 1 ? `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}` : (numbers[0] ?? '');
};

/** What a thing puts on the line it hangs on, in unit loads of EIA-485: one, where its kind does not say. */
export const unitLoadsOf = (plan: Plan, id: Id): number => {
  const kind = deviceKind(plan, id);
  return kind && 'unitLoads' in kind && typeof kind.unitLoads === 'number' ? kind.unitLoads : 1;
};
