import { useState } from 'react';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { copyDay } from '../../plan/edits/day.ts';
import { daySummary } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { BlockTable } from './BlockTable.tsx';
import { EmptyDay } from './EmptyDay.tsx';
import { EventList } from './EventList.tsx';
import { PlaceDialog } from './PlaceDialog.tsx';
import { Timeline } from './Timeline.tsx';
import { Totals } from './Totals.tsx';
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
        {summary.blocks.length > 0 ? <Totals summary={summary} /> : null}
      </div>
      <EventList summary={summary} />
      {placing ? <PlaceDialog day={day} onClose={() => setPlacing(false)} /> : null}
    </div>
  );
};
