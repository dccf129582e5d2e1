import { useMemo } from 'react';
import { formatFuel, formatWatts } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { DaySummary, SourceDay } from '../../report/day.ts';
import { dayKey, type SourceFigure } from '../../report/day-keys.ts';
import { refuelNote, stationNote } from '../../report/day-words.ts';
import { unitHours } from '../../report/unit-hours.ts';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';

const hours = (h: number): string => `${Number(h.toFixed(1))} h`;
const kwh = (wh: number): string => `${(wh / 1000).toFixed(1)} kWh`;

/** What the day takes in all: power and fuel of each source, hours with light, hours of circuits and units. */
export const Totals = ({ summary }: { readonly summary: DaySummary }) => {
  const plan = useSessionSlice((s) => s.plan);
  const units = planRecord(plan).lengthUnits;
  const keyOf = (s: SourceDay, figure: SourceFigure): string | undefined =>
    s.peakW > 0 ? dayKey(figure, s.id, summary.day) : undefined;
  const burning = useMemo(() => unitHours(plan, summary.day), [plan, summary.day]);
  return (
    <section className="day-totals" aria-label="The day in all">
      {summary.sources.length === 0 ? (
        <p className="soft">No source of power in the plan yet: nothing on the mains is counted.</p>
      ) : (
        <table className="table">
          <caption className="visually-hidden">Power of each source over the day</caption>
          <thead>
            <tr>
              <th scope="col">Source</th>
              <th scope="col" className="num">
                Peak
              </th>
              <th scope="col" className="num">
                Average
              </th>
              <th scope="col" className="num">
                Energy
              </th>
              <th scope="col" className="num">
                Fuel
              </th>
              <th scope="col">
                <span className="visually-hidden">Refuelling, what is left</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {summary.sources.map((s) => (
              <tr key={s.id}>
                <th scope="row">{s.label}</th>
                <td className="num">
                  <Figure figureKey={keyOf(s, 'dayPeakW')}>{formatWatts(s.peakW)}</Figure>
                </td>
                <td className="num">
                  <Figure figureKey={keyOf(s, 'dayAverageW')}>{formatWatts(s.averageW)}</Figure>
                </td>
                <td className="num">
                  <Figure figureKey={keyOf(s, 'dayEnergyWh')}>{kwh(s.energyWh)}</Figure>
                </td>
                <td className="num">
                  {s.fuelL === undefined ? (
                    '–'
                  ) : (
                    <Figure figureKey={keyOf(s, 'dayFuelL')}>{formatFuel(s.fuelL, units)}</Figure>
                  )}
                </td>
                <td className={s.station?.emptyMin === undefined ? 'soft' : 'day-fault'}>
                  {refuelNote(s) ? (
                    <Figure figureKey={keyOf(s, 'dayRefuelMin')}>{refuelNote(s)}</Figure>
                  ) : null}
                  {refuelNote(s) && stationNote(s) ? ', ' : null}
                  {stationNote(s)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="soft">
        Light for{' '}
        <Figure figureKey={summary.hoursOn > 0 ? dayKey('dayLightH', '', summary.day) : undefined}>
          {hours(summary.hoursOn)}
        </Figure>
        . Power is at nominal volts, cable loss left out; a charger counts as its packs take it.
      </p>
      <HourList
        title="Hours the circuits are loaded"
        rows={summary.circuits.map((c) => ({ ...c, key: dayKey('dayLoadedH', c.key, summary.day) }))}
      />
      <HourList
        title="Hours the units burn"
        rows={burning.map((u) => ({ ...u, key: dayKey('dayBurnsH', u.fixtureId, summary.day) }))}
      />
    </section>
  );
};

const HourList = ({
  title,
  rows,
}: {
  readonly title: string;
  readonly rows: readonly {
    /** Of its working. */
    readonly key: string;
    readonly label: string;
    readonly totalH: number;
    readonly longestH: number;
  }[];
}) =>
  rows.length === 0 ? null : (
    <details className="day-circuits">
      <summary>{title}</summary>
      <ul>
        {rows.map((c) => (
          <li key={c.key}>
            {c.label}: <Figure figureKey={c.key}>{hours(c.totalH)}</Figure>
            {c.longestH < c.totalH ? `, at a stretch ${hours(c.longestH)}` : ''}
          </li>
        ))}
      </ul>
    </details>
  );
