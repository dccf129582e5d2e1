import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Problem, type Result } from '../../kernel/result.ts';
import { type Address, UNIVERSE_SLOTS, universeProblem } from '../address.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { recordName } from '../names.ts';
import { kindOf, type Plan, recordOf } from '../plan.ts';
import type { Box } from '../records/index.ts';
import { universeAt } from './universes.ts';

/** Slots a box listens to: those of a dimmer, a slot a way; 0 for a knob and for any other box. */
export const dimmerSlots = (plan: Plan, b: Pick<Box, 'kindId'>): number =>
  kindOf(plan, b.kindId, 'dimmer')?.slots ?? 0;

const problemOf = (at: Address, slots: number): Problem | undefined => {
  const highest = UNIVERSE_SLOTS - slots + 1;
  return (
    universeProblem(at.universe) ??
    (Number.isInteger(at.address) && at.address >= 1 && at.address <= highest
      ? undefined
      : {
          what: `Address ${at.address} does not fit: it takes ${slots} slots.`,
          todo: `Choose an address from 1 to ${highest}.`,
        })
  );
};

/**
 * Sets the first slot of a dimmer: its ways lie on that slot and those after it, in their order. Without a place its address
 * is taken away. A universe that is not in the plan is added. Fails for what takes no data; overlaps are for a finding.
 */
export const setDimmerPatch = (plan: Plan, boxId: Id, at: Address | undefined): Result<ChangeSet> => {
  const box = recordOf(plan, 'box', boxId);
  if (!box) return fail({ what: 'That dimmer is not in the plan.' });
  const draft = new Draft(plan);
  if (!at && !box.patch) return ok(draft.changes());
  const next = dimmerPatchedWith(plan, draft, box, at);
  return next.ok ? ok(draft.put(next.value).changes()) : next;
};

/** The dimmer with its first slot there, or without a place. A universe that is not in the plan is put in the draft. */
export const dimmerPatchedWith = (
  plan: Plan,
  draft: Draft,
  box: Box,
  at: Address | undefined,
): Result<Box> => {
  if (!at) {
    const { patch: _, ...rest } = box;
    return ok(rest as Box);
  }
  const slots = dimmerSlots(plan, box);
  if (slots === 0)
    return fail({ what: `${recordName(plan, box)} listens to no control data.`, todo: 'It is set by hand.' });
  const problem = problemOf(at, slots);
  if (problem) return fail(problem);
  const patch = { universeId: universeAt(plan, draft, at.universe), address: at.address };
  return ok({ ...box, patch });
};
