import { always, type EngineFinding } from '../derive/findings.ts';
import { type Day, shootingDays } from '../derive/schedule.ts';
import { dayAtHand, minutesBetween, rotationOf } from '../engines/battery/index.ts';
import type { Plan } from '../plan/plan.ts';
import { dayPower } from './day-power.ts';
import type { SourceDay } from './day-types.ts';
import { chargeParts } from './station-charge.ts';
import { stationOf } from './station-day.ts';

/** Less than this share that is not put back overnight is not told. */
const NEAR = 0.01;

const powerOf = (plan: Plan, day: Day): readonly SourceDay[] => {
  const r = rotationOf(plan, day);
  return dayPower(plan, day, r, dayAtHand(r));
};

/**
 * Power stations that the next shooting day takes as full and that are not: what the night puts back where its inlet is plugged in,
 * nothing where it is not. Told only where the day after does not get through with what is in it then.
 */
export const stationNights = (plan: Plan): readonly EngineFinding[] => {
  const days = shootingDays(plan).filter((d) => d.segments.length > 0);
  return days.slice(1).flatMap((next, i) => {
    const day = days[i];
    if (!day) return [];
    const gapMin = Math.max(0, minutesBetween(day, next) + next.startMin - day.endMin);
    const then = powerOf(plan, next);
    return powerOf(plan, day).flatMap((s): EngineFinding[] => {
      const station = s.station;
      const after = then.find((x) => x.id === s.id)?.station;
      const figures = stationOf(plan, s.id);
      if (!station || !after || !figures || after.wantedWh <= 0) return [];
      const share = station.leftWh / station.usableWh;
      const morning =
        station.chargesFrom !== undefined && figures.charger
          ? (chargeParts(figures.charger, share, gapMin).at(-1)?.toShare ?? share)
          : share;
      const missingWh = (1 - morning) * station.usableWh;
      if (missingWh < NEAR * station.usableWh || after.leftWh >= missingWh) return [];
      return [
        {
          ...always('station-overnight', 'warn', `${day.day}/${s.id}`, [s.id], {
            label: s.label,
            day: day.day,
            nextDay: next.day,
            morningPct: 100 * morning,
            from: station.chargesFrom ?? '',
            gapMin,
          }),
          figure: missingWh,
        },
      ];
    });
  });
};
