import { useMemo } from 'react';
import { formatFuel, formatWatts } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { DaySummary, SourceDay } from '../../report/day.ts';
import { sourceNote } from '../../report/day-words.ts';
import { unitHours } from '../../report/unit-hours.ts';
import { useSessionSlice } from '../hooks.ts';

const hours = (h: number): string => `${Number(h.toFixed(1))} h`;
const kwh = (wh: number): string => `${(wh / 1000).toFixed(1)} kWh`;

/** The sum behind a day's energy, step by step. */
const energyWords = (s: SourceDay): string =>
  [
    ...s.steps
      .filter((x) => x.lightW + x.chargerW > 0)
      .map(
        (x) =>
          `${formatWatts(x.lightW + x.chargerW)} × ${Number(((x.endMin - x.startMin) / 60).toFixed(2))} h`,
      )
      .slice(0, 12),
    `together ${kwh(s.energyWh)}`,
  ].join('\n');

const averageWords = (s: SourceDay): string => {
  const on = s.steps.filter((x) => x.lightW + x.chargerW > 0);
  const h = on.reduce((sum, x) => sum + (x.endMin - x.startMin) / 60, 0);
  return `${kwh(s.energyWh)} ÷ ${hours(h)} in which anything is drawn`;
};

/** What the day takes in all: power and fuel of each source, hours with light, hours of circuits and units. */
export const Totals = ({ summary }: { readonly summary: DaySummary }) => {
  const plan = useSessionSlice((s) => s.plan);
  const units = planRecord(plan).lengthUnits;
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
                <td className="num">{formatWatts(s.peakW)}</td>
                <td className="num" title={averageWords(s)}>
                  {formatWatts(s.averageW)}
                </td>
                <td className="num" title={energyWords(s)}>
                  {kwh(s.energyWh)}
                </td>
                <td
                  className="num"
                  title={
                    s.fuelL === undefined ? undefined : 'By a chart of typical diesel sets, at each load'
                  }
                >
                  {s.fuelL === undefined ? '–' : formatFuel(s.fuelL, units)}
                </td>
                <td className={s.station?.emptyMin === undefined ? 'soft' : 'day-fault'}>{sourceNote(s)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="soft">
        Light for {hours(summary.hoursOn)}. Power is at nominal volts, cable loss left out; a charger counts
        as its packs take it.
      </p>
      <HourList title="Hours the circuits are loaded" rows={summary.circuits} />
      <HourList title="Hours the units burn" rows={burning.map((u) => ({ key: u.fixtureId, ...u }))} />
    </section>
  );
};

const HourList = ({
  title,
  rows,
}: {
  readonly title: string;
  readonly rows: readonly {
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
            {c.label}: {hours(c.totalH)}
            {c.longestH < c.totalH ? `, at a stretch ${hours(c.longestH)}` : ''}
          </li>
        ))}
      </ul>
    </details>
  );
