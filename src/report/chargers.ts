import { always, type EngineFinding } from '../derive/findings.ts';
import { type Day, shootingDays } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import { dayAtHand, rotationOf } from '../engines/battery/index.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';

/** The node of a charger in the supply tree; undefined where nothing feeds it. */
const fedNode = (plan: Plan, chargerId: Id): SupplyNode | undefined =>
  supplyTree(plan).nodes.find(
    (n) =>
      n.recordId === chargerId && n.what === 'load' && n.branches.length > 0 && n.notComputed === undefined,
  );

/** Charges of a day that end after a moment in the bays of chargers on one source: what is lost when it gives no more. */
export const chargesAfter = (
  plan: Plan,
  day: Day,
  sourceId: Id,
  atMin: number,
): { readonly charges: number; readonly chargers: readonly string[] } => {
  const r = rotationOf(plan, day);
  const late = dayAtHand(r).bays.flatMap((b) => {
    const chargerId = r.bays[b.bay]?.chargerId;
    return chargerId !== undefined &&
      b.endMin > atMin + 1e-6 &&
      fedNode(plan, chargerId)?.sourceId === sourceId
      ? [chargerId]
      : [];
  });
  const ids = new Set(late);
  return {
    charges: late.length,
    chargers: recordsOf(plan, 'charger')
      .filter((c) => ids.has(c.id))
      .map((c) => c.label),
  };
};

/** Chargers that the rotation counts on and that nothing feeds: no packs are charged there, and no circuit carries them. */
export const chargerFindings = (plan: Plan): readonly EngineFinding[] => {
  const counted = new Map<Id, { charges: number; day: number }>();
  for (const day of shootingDays(plan)) {
    const r = rotationOf(plan, day);
    if (r.bays.length === 0) continue;
    for (const b of dayAtHand(r).bays) {
      const id = r.bays[b.bay]?.chargerId;
      if (id === undefined) continue;
      const old = counted.get(id);
      if (old) old.charges++;
      else counted.set(id, { charges: 1, day: day.day });
    }
  }
  return recordsOf(plan, 'charger').flatMap((c): EngineFinding[] => {
    const used = counted.get(c.id);
    if (!used || fedNode(plan, c.id)) return [];
    return [
      {
        ...always('battery-charger-off', 'warn', c.id, [c.id], {
          label: c.label,
          charges: used.charges,
          day: used.day,
        }),
        figure: used.charges,
      },
    ];
  });
};
