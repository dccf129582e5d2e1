import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import type { RiggingKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordsOf } from '../../plan/plan.ts';
import type { Fixture, Grip, Rigging } from '../../plan/records/index.ts';
import { carriedOf, sailOf } from './model.ts';

/** What hangs on a tube, a point or in a basket, against what it may carry. */
export interface RiggingUse {
  readonly rigging: Rigging;
  readonly kind: RiggingKind;
  readonly fixtures: readonly Fixture[];
  readonly grips: readonly Grip[];
  readonly gearKg: number;
  readonly peopleKg: number;
  /** Gear and people. */
  readonly loadKg: number;
  /** Undefined where neither the plan nor the kind says. */
  readonly ratedKg: number | undefined;
  /** Whether the rating is the kind's, not read off this one. */
  readonly ratedAssumed: boolean;
  /** Along the arm or mast from the ground to where the gear is, in mm. */
  readonly cableUpMm: number;
}

export const isLift = (kind: RiggingKind): boolean => kind.what === 'lift' || kind.what === 'crane';

/**
 * Tube, points, lifts and cranes with what the plan hangs on them. People count with the table's mass and tools. The way
 * up a straight arm to (reach, height) is its length: √(reach² + height²).
 */
export const riggingUses = (plan: Plan): readonly RiggingUse[] => {
  const person = limitOf(plan, 'rigging-person').value;
  const tools = limitOf(plan, 'rigging-person-tools').value;
  const hung = new Map<Id, Fixture[]>();
  for (const f of recordsOf(plan, 'fixture'))
    if (f.support.on === 'rigged' && f.support.riggingId !== undefined) {
      const there = hung.get(f.support.riggingId);
      if (there) there.push(f);
      else hung.set(f.support.riggingId, [f]);
    }
  const grips = recordsOf(plan, 'grip');
  return recordsOf(plan, 'rigging').flatMap((rigging): RiggingUse[] => {
    const kind = kindOf(plan, rigging.kindId, 'rigging');
    if (!kind) return [];
    const own = hung.get(rigging.id) ?? [];
    const frames = grips.filter((g) => g.riggingId === rigging.id);
    const gearKg =
      own.reduce((sum, f) => sum + carriedOf(plan, f).massKg, 0) +
      frames.reduce((sum, g) => sum + (sailOf(plan, g)?.massKg ?? Number.NaN), 0);
    const peopleKg = rigging.people > 0 ? rigging.people * person + tools : 0;
    return [
      {
        rigging,
        kind,
        fixtures: own,
        grips: frames,
        gearKg,
        peopleKg,
        loadKg: gearKg + peopleKg,
        ratedKg: rigging.ratedLoadKg ?? kind.ratedLoadKg,
        ratedAssumed: rigging.ratedLoadKg === undefined,
        cableUpMm: Math.hypot(Math.max(0, rigging.reachMm ?? 0), Math.max(0, rigging.heightMm)),
      },
    ];
  });
};
