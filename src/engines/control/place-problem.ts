import { recordLabel } from '../../derive/labels.ts';
import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Problem } from '../../kernel/result.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import { checkPatch } from './check.ts';
import type { PatchRow } from './types.ts';

/**
 * Why a stretch of a fixture's slots cannot lie at an address of a universe; undefined where it can. Paired fixtures may
 * lie on one another where they start alike and take as many slots.
 */
export const placeProblem = (
  plan: Plan,
  row: Pick<PatchRow, 'fixtureId' | 'slots' | 'fromSlot' | 'paired'>,
  universeId: Id,
  address: number,
): Problem | undefined => {
  const size = limitOf(plan, 'universe-slots').value;
  const universe = recordOf(plan, 'universe', universeId);
  if (!universe) return { what: 'That universe is not in the plan.' };
  if (plan.records.get(row.fixtureId)?.locked)
    return {
      what: `${recordLabel(plan, plan.records.get(row.fixtureId))} is locked.`,
      todo: 'Unlock it first.',
    };
  const last = address + row.slots - 1;
  if (address < 1) return { what: 'Addresses count from 1.' };
  if (last > size)
    return {
      what: `${row.slots} slots from ${address} end at ${last}, past slot ${size}.`,
      todo: `The highest address for it is ${size - row.slots + 1}.`,
    };
  for (const o of checkPatch(plan).byUniverse.get(universeId) ?? []) {
    if (o.address > last) break;
    if (o.last < address || o.slots === 0) continue;
    if (o.fixtureId === row.fixtureId && o.fromSlot === row.fromSlot) continue;
    if (o.paired && row.paired && o.address === address && o.slots === row.slots) continue;
    return {
      what: `${recordLabel(plan, plan.records.get(o.fixtureId))} has slots ${o.address} to ${o.last} of universe ${universe.number}.`,
      todo: 'Choose a free place, or move it first.',
    };
  }
  return undefined;
};
