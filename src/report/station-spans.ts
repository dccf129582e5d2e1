import type { SourceDay, StationLoadLane } from './day-types.ts';

/** A stretch of a unit on a power station with the station's charge at both ends, as shares of what it can give. */
export interface OnStation {
  readonly startMin: number;
  readonly endMin: number;
  readonly state: 'burning' | 'dark';
  readonly levelPct: number;
  readonly fromShare: number;
  readonly toShare: number;
}

/** When a unit on a power station burns, cut where the station's charge changes its slope. */
export const onStation = (
  lane: Pick<StationLoadLane, 'spans'>,
  station: SourceDay['station'],
): readonly OnStation[] =>
  lane.spans.flatMap((s): OnStation[] =>
    (station?.spans ?? []).flatMap((x): OnStation[] => {
      const startMin = Math.max(s.startMin, x.startMin);
      const endMin = Math.min(s.endMin, x.endMin);
      if (endMin <= startMin + 1e-9) return [];
      const at = (m: number): number =>
        x.fromShare + ((x.toShare - x.fromShare) * (m - x.startMin)) / (x.endMin - x.startMin);
      return [
        {
          startMin,
          endMin,
          state: s.state,
          levelPct: s.levelPct,
          fromShare: at(startMin),
          toShare: at(endMin),
        },
      ];
    }),
  );
