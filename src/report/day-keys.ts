import type { Id } from '../kernel/ids.ts';
import type { DaySummary } from './day-types.ts';
import type { UnitHours } from './unit-hours.ts';

/** Figures of a shooting day that have a working. Those of a source, of a circuit, of a unit, and of the day. */
export const SOURCE_FIGURES = ['dayPeakW', 'dayAverageW', 'dayEnergyWh', 'dayFuelL', 'dayRefuelMin'] as const;
export type SourceFigure = (typeof SOURCE_FIGURES)[number];
export type DayFigure = SourceFigure | 'dayDrawnW' | 'dayLoadedH' | 'dayBurnsH' | 'dayLightH';

/** Key of a figure of a day for `explain`: of a source or unit by its record, of a circuit by its key, of the day by nothing. */
export const dayKey = (figure: DayFigure, of: Id, day: number): string => `${figure}@${of}@${day}`;

/** Key of what is drawn from a source at a minute of a day. */
export const drawnKey = (sourceId: Id, day: number, atMin: number): string =>
  `dayDrawnW@${sourceId}~${Math.round(atMin * 1000) / 1000}@${day}`;

export interface DayKey {
  readonly figure: string;
  readonly of: Id;
  readonly day: number;
  readonly atMin: number | undefined;
}

/** A key taken apart; undefined where it is of no day. */
export const readDayKey = (key: string): DayKey | undefined => {
  const [, figure, of, day] = /^(day[A-Z]\w*)@(.*)@(\d+)$/.exec(key) ?? [];
  if (figure === undefined || of === undefined || day === undefined) return undefined;
  const at = figure === 'dayDrawnW' ? /^(.*)~([\d.]+)$/.exec(of) : undefined;
  return { figure, of: at?.[1] ?? of, day: Number(day), atMin: at ? Number(at[2]) : undefined };
};

/** Keys of all figures of a day that have a working. */
export const dayKeysOf = (d: DaySummary, units: readonly UnitHours[]): readonly string[] => [
  ...(d.hoursOn > 0 ? [dayKey('dayLightH', '', d.day)] : []),
  ...d.sources
    .filter((s) => s.peakW > 0)
    .flatMap((s) =>
      SOURCE_FIGURES.filter(
        (f) =>
          (f !== 'dayFuelL' || s.fuelL !== undefined) && (f !== 'dayRefuelMin' || s.refuelMin !== undefined),
      ).map((f) => dayKey(f, s.id, d.day)),
    ),
  ...d.circuits.map((c) => dayKey('dayLoadedH', c.key, d.day)),
  ...units.map((u) => dayKey('dayBurnsH', u.fixtureId, d.day)),
];
