import type { Session } from '../../editor/session.ts';
import { universeUse } from '../../engines/control/index.ts';
import { type Problem, problemText, type Result } from '../../kernel/result.ts';
import { type ChangeSet, compose } from '../../plan/change-set.ts';
import { setDimmerPatch } from '../../plan/edits/dimmer-patch.ts';
import { clearPatch, type PatchChange, setPatch } from '../../plan/edits/patch.ts';
import { footprintOf, patchedMode } from '../../plan/footprint.ts';
import { kindOf, type Plan, recordOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';

/** Commits an edit that may have been refused; gives the reason in words where it was. */
export const commitOr = (
  session: Session,
  label: string,
  r: Result<ChangeSet, Problem>,
): string | undefined => {
  if (!r.ok) return problemText(r.error);
  session.commit(label, r.value);
  return undefined;
};

/** The first free address of a universe for a fixture; 1 where the universe is new or full. */
export const freeAddress = (plan: Plan, f: Fixture, universe: number): number => {
  const mode = patchedMode(plan, f) ?? kindOf(plan, f.kindId, 'fixture')?.modes.find((m) => m.slots > 0);
  return freeSlots(plan, mode ? footprintOf(mode).slots : 1, universe);
};

/** The first address of a universe with so many free slots; 1 where it is new or full. */
export const freeSlots = (plan: Plan, slots: number, universe: number): number => {
  const use = universeUse(plan).find((u) => u.number === universe);
  return use?.gaps.find((g) => g.to - g.from + 1 >= slots)?.from ?? 1;
};

/** Changes one unit's patch as one undo step; gives the reason in words where that is refused. */
export const changePatch = (session: Session, fixtureId: string, change: PatchChange): string | undefined => {
  const { plan } = session.getState();
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) return undefined;
  const moves =
    change.universe !== undefined && change.address === undefined && change.universe !== numberOf(plan, f);
  const full =
    moves && change.universe !== undefined
      ? { ...change, address: freeAddress(plan, f, change.universe) }
      : change;
  return commitOr(session, `Patch unit ${f.unit}`, setPatch(plan, fixtureId, full));
};

export const numberOf = (plan: Plan, f: Fixture): number | undefined =>
  f.patch && recordOf(plan, 'universe', f.patch.universeId)?.number;

export const unpatch = (session: Session, ids: readonly string[], label: string): undefined => {
  const { plan } = session.getState();
  const dimmers = ids.flatMap((id) => {
    const box = recordOf(plan, 'box', id);
    const r = box && !box.locked ? setDimmerPatch(plan, id, undefined) : undefined;
    return r?.ok ? [r.value] : [];
  });
  session.commit(label, dimmers.reduce(compose, clearPatch(plan, ids)));
  return undefined;
};
