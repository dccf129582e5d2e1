import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { Way } from '../kinds/ports.ts';
import type { Plan } from '../plan.ts';
import { waysOf } from '../ports.ts';
import type { WayDevice } from '../way-device.ts';

/** What of a way can be changed in place: its name, its breaker's rating, and its device: the curve with what trips it by residual current. */
export type WayChange = Partial<Pick<Way, 'label' | 'breakerA'>> & { readonly device?: WayDevice };

/** A way with changes: a device takes the place of the whole one before. */
export const changedWay = (way: Way, { device, ...rest }: WayChange): Way => {
  if (!device) return { ...way, ...rest };
  const { rcdMa: _ma, rcdType: _type, ...bare } = way;
  return { ...bare, ...rest, ...device };
};

/**
 * Changes one way of a source or box in this plan alone; its kind stays as it is. Gives a problem where there is no such
 * way or the breaker is no positive number of amps.
 */
export const changeWay = (plan: Plan, ownerId: Id, wayId: string, change: WayChange): Result<ChangeSet> => {
  const r = plan.records.get(ownerId);
  const ways = waysOf(plan, ownerId);
  const way = ways.find((w) => w.id === wayId);
  if ((r?.type !== 'source' && r?.type !== 'box') || !way)
    return fail({ what: 'That way is not in the plan any more.', todo: 'Choose another.' });
  if (change.breakerA !== undefined && !(change.breakerA > 0 && Number.isFinite(change.breakerA)))
    return fail({ what: 'A breaker has more than 0 A.', todo: 'Type its rating in amps, like 20.' });
  const next = changedWay(way, change);
  // A source's ways take the place of all its kind's; a box names only those that differ.
  const own =
    r.type === 'source'
      ? ways.map((w) => (w.id === wayId ? next : w))
      : [...(r.ways ?? []).filter((w) => w.id !== wayId), next];
  return ok(new Draft(plan).put({ ...r, ways: own }).changes());
};
