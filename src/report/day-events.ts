import type { DaySummary, SwapRow } from './day-types.ts';

/** A change of packs or a dark gap, by the clock. */
export interface DayEvent {
  readonly atMin: number;
  /** `Unit 7`, or a pack on the floor with the units it feeds: `P1 (49, 50)`. */
  readonly label: string;
  readonly swap: SwapRow | undefined;
  /** End of a dark gap. */
  readonly untilMin: number | undefined;
  /** Why it is dark, where that is not for want of a charged pack. */
  readonly because: string;
  readonly key: string;
}

/** Changes of packs and dark gaps in the order of the clock. What happens to a pack on the floor is told once, for all its units. */
export const dayEvents = (d: DaySummary): readonly DayEvent[] => {
  const short = (label: string): string => label.replace(/^Unit /, '');
  const lanes = [
    ...d.lanes
      .filter((l) => l.sharedPackId === undefined)
      .map((l) => ({ id: l.fixtureId, label: l.label, swaps: l.swaps, spans: l.spans, because: '' })),
    ...d.sharedPacks.map((p) => ({
      id: p.id,
      label: `${p.label} (${p.units.map((u) => short(u.label)).join(', ')})`,
      swaps: p.swaps,
      spans: p.spans,
      because: '',
    })),
    ...d.stationLoads.map((l) => ({
      id: l.fixtureId,
      label: l.label,
      swaps: [],
      spans: l.spans,
      because: `${l.sourceLabel} is empty`,
    })),
  ];
  return lanes
    .flatMap((l): DayEvent[] => [
      ...l.swaps
        .filter((s) => !s.first)
        .map((s) => ({
          atMin: s.atMin,
          label: l.label,
          swap: s,
          untilMin: undefined,
          because: '',
          key: `${l.id}-${s.atMin}-swap`,
        })),
      ...l.spans
        .filter((s) => s.state === 'dark')
        .map((s) => ({
          atMin: s.startMin,
          label: l.label,
          swap: undefined,
          untilMin: s.endMin,
          because: l.because,
          key: `${l.id}-${s.startMin}-dark`,
        })),
    ])
    .sort((a, b) => a.atMin - b.atMin || a.label.localeCompare(b.label));
};
