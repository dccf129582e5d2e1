import { applyChanges, type ChangeSet, compose } from '../../plan/change-set.ts';
import { setPacks } from '../../plan/edits/day.ts';
import { setPackFrom } from '../../plan/edits/floor-packs.ts';
import type { PackKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';

const FLOOR = 'floor:';

/** What a unit runs on, as a choice: a pack on the floor, a kind of pack on itself, or nothing for its own cells. */
export const runsOn = (f: Fixture): string =>
  f.packFrom ? `${FLOOR}${f.packFrom.packId}` : (f.packs?.kindId ?? '');

export const floorChoice = (packId: string): string => `${FLOOR}${packId}`;

/** A unit put on what was chosen. Packs of its own and a pack on the floor take one another's place. */
export const runOn = (plan: Plan, f: Fixture, choice: string, packs: readonly PackKind[]): ChangeSet => {
  if (choice.startsWith(FLOOR)) return setPackFrom(plan, [f.id], { packId: choice.slice(FLOOR.length) });
  const pack = packs.find((p) => p.id === choice);
  const usual = kindOf(plan, f.kindId, 'fixture')?.packIn;
  const off = setPackFrom(plan, [f.id], undefined);
  const use = pack && {
    ...f.packs,
    kindId: pack.id,
    count: f.packs?.count ?? usual?.packs ?? 1,
    joined: f.packs?.joined ?? usual?.joined ?? ('parallel' as const),
  };
  return compose(off, setPacks(applyChanges(plan, off), [f.id], use, pack ? [pack] : []));
};
