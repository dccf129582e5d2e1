import { useState } from 'react';
import { formatFuel, formatWatts, type LengthUnits } from '../../kernel/units.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { copyDay } from '../../plan/edits/day.ts';
import { planRecord } from '../../plan/plan.ts';
import { type DaySummary, daySummary } from '../../report/day.ts';
import { sourceNote } from '../../report/day-words.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { BlockTable } from './BlockTable.tsx';
import { EmptyDay } from './EmptyDay.tsx';
import { EventList } from './EventList.tsx';
import { PlaceDialog } from './PlaceDialog.tsx';
import { Timeline } from './Timeline.tsx';
import { Troubles } from './Troubles.tsx';

interface DayViewProps {
  readonly day: number;
  readonly days: readonly number[];
  readonly onDay: (day: number) => void;
  /** Opens the packs. */
  readonly onPacks: () => void;
}

/** One shooting day: its blocks as a table, what it takes in all, and the time line with everything that runs on packs. */
export const DayView = ({ day, days, onDay, onPacks }: DayViewProps) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [shiftRest, setShiftRest] = useState(true);
  const [placing, setPlacing] = useState(false);
  const summary = daySummary(plan, day);
  const next = Math.max(...days) + 1;
  return (
    <div className="dayview">
      <div className="day-bar">
        <label>
          <span className="soft">Day</span>{' '}
          <select className="input day-pick" value={day} onChange={(e) => onDay(Number(e.target.value))}>
            {days.map((d) => (
              <option key={d} value={d}>
                {[`Day ${d}`, daySummary(plan, d).date].filter(Boolean).join(' · ')}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="button"
          disabled={readOnly || summary.blocks.length === 0}
          onClick={() => {
            session.commit('Add day', copyDay(plan, day, next, session.newId));
            onDay(next);
          }}
        >
          Add a day like this
        </button>
        <button
          type="button"
          className="button"
          disabled={readOnly || summary.blocks.length === 0 || days.length < 2}
          title={days.length < 2 ? 'The only day' : 'Takes the blocks of this day away'}
          onClick={() => {
            session.commit(
              `Remove day ${day}`,
              removeRecords(plan, new Set(summary.blocks.map((b) => b.id))),
            );
            onDay(days.find((d) => d !== day) ?? 1);
          }}
        >
          Remove this day
        </button>
        <button type="button" className="button" onClick={() => setPlacing(true)}>
          Date and place…
        </button>
        <label className="day-check">
          <input type="checkbox" checked={shiftRest} onChange={(e) => setShiftRest(e.target.checked)} /> what
          follows moves along
        </label>
      </div>
      <Troubles summary={summary} onPacks={onPacks} />
      {summary.blocks.length === 0 ? (
        <EmptyDay day={day} />
      ) : (
        <Timeline summary={summary} shiftRest={shiftRest} onPlace={() => setPlacing(true)} />
      )}
      <div className="day-top">
        <BlockTable day={day} summary={summary} shiftRest={shiftRest} />
        {summary.blocks.length > 0 ? <Totals summary={summary} units={planRecord(plan).lengthUnits} /> : null}
      </div>
      <EventList summary={summary} />
      {placing ? <PlaceDialog day={day} onClose={() => setPlacing(false)} /> : null}
    </div>
  );
};

const hours = (h: number): string => `${Number(h.toFixed(1))} h`;

const Totals = ({ summary, units }: { readonly summary: DaySummary; readonly units: LengthUnits }) => (
  <section className="day-totals" aria-label="The day in all">
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
            <td className="num">{formatWatts(s.averageW)}</td>
            <td className="num">{(s.energyWh / 1000).toFixed(1)} kWh</td>
            <td className="num">{s.fuelL === undefined ? '–' : formatFuel(s.fuelL, units)}</td>
            <td className={s.station?.emptyMin === undefined ? 'soft' : 'day-fault'}>{sourceNote(s)}</td>
          </tr>
        ))}
      </tbody>
    </table>
    <p className="soft">
      Light for {hours(summary.hoursOn)}. Power is at nominal volts, cable loss left out; a charger counts as
      its packs take it.
    </p>
    {summary.circuits.length > 0 ? (
      <details className="day-circuits">
        <summary>Hours the circuits are loaded</summary>
        <ul>
          {summary.circuits.map((c) => (
            <li key={c.key}>
              {c.label}: {hours(c.totalH)}, at a stretch {hours(c.longestH)}
            </li>
          ))}
        </ul>
      </details>
    ) : null}
  </section>
);
