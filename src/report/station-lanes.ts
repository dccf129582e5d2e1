import { recordLabel } from '../derive/labels.ts';
import { levelFixtureId } from '../derive/loads.ts';
import { shootingDays, stretchesOf } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { DaySummary } from './day-types.ts';

/** A stretch in which a unit on a power station burns, or is dark because the station is empty. */
export interface StationUnitSpan {
  readonly startMin: number;
  readonly endMin: number;
  readonly state: 'burning' | 'dark';
  readonly levelPct: number;
  /** Charge of the station at both ends, as shares of what it can give. */
  readonly fromShare: number;
  readonly toShare: number;
  /** When the station became empty; `endMin` where it is not. */
  readonly emptyMin: number;
}

/** A unit that takes its mains from a power station, over the day. */
export interface StationUnitLane {
  readonly fixtureId: Id;
  readonly label: string;
  readonly sourceId: Id;
  readonly sourceLabel: string;
  readonly spans: readonly StationUnitSpan[];
}

/** Units on power stations: when each burns, and when it is dark because its station is empty. */
export const stationLanes = (
  plan: Plan,
  summary: Pick<DaySummary, 'day' | 'sources'>,
): readonly StationUnitLane[] => {
  const day = shootingDays(plan).find((d) => d.day === summary.day);
  if (!day) return [];
  return summary.sources.flatMap((s): StationUnitLane[] => {
    const station = s.station;
    if (!station) return [];
    const ids = new Set<Id>();
    for (const n of supplyTree(plan).nodes) {
      const r = n.sourceId === s.id && n.what === 'load' ? plan.records.get(n.recordId) : undefined;
      if (r?.type === 'fixture' || r?.type === 'ballast') ids.add(levelFixtureId(r));
    }
    return [...ids]
      .flatMap((id): StationUnitLane[] => {
        const f = recordOf(plan, 'fixture', id);
        if (!f) return [];
        const spans = stretchesOf(day, id).flatMap((burns) =>
          station.spans.flatMap((x): StationUnitSpan[] => {
            const startMin = Math.max(burns.startMin, x.startMin);
            const endMin = Math.min(burns.endMin, x.endMin);
            if (endMin <= startMin) return [];
            const at = (m: number): number =>
              x.fromShare +
              ((x.toShare - x.fromShare) * (m - x.startMin)) / Math.max(1e-9, x.endMin - x.startMin);
            const dark = x.state === 'empty';
            return [
              {
                startMin,
                endMin,
                state: dark ? 'dark' : 'burning',
                levelPct: burns.levelPct,
                fromShare: at(startMin),
                toShare: at(endMin),
                emptyMin: dark ? (station.emptyMin ?? x.startMin) : endMin,
              },
            ];
          }),
        );
        const label = recordLabel(plan, f);
        return [{ fixtureId: id, label, sourceId: s.id, sourceLabel: s.label, spans }];
      })
      .sort((a, b) => compareNatural(a.label, b.label));
  });
};
