import { useMemo } from 'react';
import type { BayLane } from '../../report/day.ts';
import { LaneTrack } from './LaneTrack.tsx';
import type { Scale } from './scale.ts';
import { bayStops } from './stops.ts';

/** From so many bays on, a charger's rows are low and carry no words. */
const MANY_BAYS = 5;
const ROW_H = 18;
const LOW_ROW_H = 7;

export interface ChargerLane {
  readonly label: string;
  readonly bays: readonly BayLane[];
}

/** Bays by their charger, in their order. */
export const chargersOf = (bays: readonly BayLane[]): readonly ChargerLane[] => {
  const by = new Map<string, BayLane[]>();
  for (const b of bays) {
    const own = by.get(b.charger);
    if (own) own.push(b);
    else by.set(b.charger, [b]);
  }
  return [...by].map(([label, own]) => ({ label, bays: own }));
};

/** A charger's bays one below the other: which pack is in which bay when. */
export const ChargerStrip = ({
  bays,
  scale,
  crowded,
}: {
  readonly bays: readonly BayLane[];
  readonly scale: Scale;
  /** There are many chargers: their rows are low too. */
  readonly crowded: boolean;
}) => {
  const low = crowded || bays.length >= MANY_BAYS;
  const rowH = low ? LOW_ROW_H : ROW_H;
  const height = Math.max(low ? 20 : 26, bays.length * rowH + 4);
  const top = (height - bays.length * rowH) / 2;
  const charged = bays.reduce((sum, b) => sum + b.spans.length, 0);
  const stops = useMemo(() => bayStops(bays), [bays]);
  const rows = useMemo(() => ({ topPx: top, heightPx: rowH }), [top, rowH]);
  return (
    <LaneTrack
      label={`${bays.length} bays: ${charged} packs charged`}
      stops={stops}
      scale={scale}
      heightPx={height}
      rows={rows}
    >
      {bays.map((bay, i) =>
        bay.spans.map((s) => {
          const a = scale.x(s.startMin);
          const b = Math.min(scale.widthPx, scale.x(s.endMin));
          const y = top + i * rowH;
          return b <= a ? null : (
            <g key={`${bay.label}${s.startMin}`}>
              <rect className="bay" x={a} y={y + 1} width={b - a} height={rowH - 2} />
              {!low && b - a > 26 ? (
                <text className="bay-text" x={a + 5} y={y + rowH - 5}>
                  #{s.pack}
                </text>
              ) : null}
            </g>
          );
        }),
      )}
    </LaneTrack>
  );
};
