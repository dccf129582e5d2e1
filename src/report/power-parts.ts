import { recordLabel } from '../derive/labels.ts';
import { levelFixtureId } from '../derive/loads.ts';
import { shootingDays } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import type { Id } from '../kernel/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { drawnW } from './day-power.ts';

/** What one thing on a source draws at a moment. */
export interface PowerPart {
  readonly id: Id;
  readonly label: string;
  readonly watts: number;
}

/** What draws from a source at a minute of a day, the most first; chargers are left out, whose watts follow from the packs in them. */
export const powerParts = (
  plan: Plan,
  dayNumber: number,
  sourceId: Id,
  atMin: number,
): readonly PowerPart[] => {
  const day = shootingDays(plan).find((d) => d.day === dayNumber);
  const segment = day?.segments.find((s) => s.startMin <= atMin && s.endMin > atMin);
  if (!segment || segment.blocks.length === 0) return [];
  return supplyTree(plan)
    .nodes.filter((n) => n.sourceId === sourceId && n.what === 'load')
    .flatMap((n) => {
      const r = plan.records.get(n.recordId);
      const watts = drawnW(plan, n, (id) => segment.burning.get(id)?.levelPct ?? 0);
      if (!r || !(watts > 0)) return [];
      // A ballast is called after its head, which is what people look for.
      const unit = r.type === 'ballast' ? plan.records.get(levelFixtureId(r)) : undefined;
      return [{ id: r.id, label: recordLabel(plan, unit ?? r), watts }];
    })
    .sort((a, b) => b.watts - a.watts || a.label.localeCompare(b.label));
};
