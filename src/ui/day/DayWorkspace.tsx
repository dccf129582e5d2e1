import { useEffect, useRef, useState } from 'react';
import { daysOf } from '../../report/day.ts';
import { TabStrip } from '../common/TabStrip.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { DayView } from './DayView.tsx';
import { PacksView } from './PacksView.tsx';
import { SetupGrid } from './SetupGrid.tsx';
import './day.css';

const VIEWS = [
  { id: 'setups', name: 'Setups' },
  { id: 'day', name: 'Shooting day' },
  { id: 'packs', name: 'Packs' },
] as const;

type View = (typeof VIEWS)[number]['id'];

/** Keys the editor keeps for itself here; the others would move or delete what is chosen on a floor nobody sees. */
const isCommon = (e: React.KeyboardEvent): boolean =>
  e.key === '/' ||
  e.key === '?' ||
  e.key === 'PageUp' ||
  e.key === 'PageDown' ||
  ((e.ctrlKey || e.metaKey) && ['z', 'y'].includes(e.key.toLowerCase()));

// Kept while other workspaces are shown: who comes back finds the view as it was.
let lastView: View = 'day';
let lastDay = 1;

/** What burns when: the setups as a grid, the shooting day as a time line, packs and chargers. */
export const DayWorkspace = () => {
  const { session } = useServices();
  const { plan, message } = useSessionSlice((s) => ({ plan: s.plan, message: s.message }));
  const [view, setView] = useState<View>(lastView);
  const [wanted, setDay] = useState(lastDay);
  const name = VIEWS.find((v) => v.id === view)?.name ?? '';
  const days = daysOf(plan);
  const day = days.includes(wanted) ? wanted : (days[0] ?? 1);
  // What was said here is taken back on leaving; what is said about the next workspace stays.
  const said = useRef(message);
  said.current = message;
  useEffect(
    () => () => {
      if (session.getState().message === said.current) session.set({ message: '' });
    },
    [session],
  );
  useEffect(() => {
    lastView = view;
    lastDay = day;
  }, [view, day]);

  return (
    <main
      className="day"
      aria-label="Day"
      onKeyDown={(e) => {
        if (!isCommon(e)) e.stopPropagation();
      }}
    >
      <TabStrip label="Day" id="day" tabs={VIEWS} chosen={view} onChoose={setView} message={message} />
      <div id="day-panel" className="day-panel" role="tabpanel" aria-label={name} tabIndex={-1}>
        <h2 className="visually-hidden">{name}</h2>
        {view === 'setups' ? <SetupGrid /> : null}
        {view === 'day' ? (
          <DayView day={day} days={days} onDay={setDay} onPacks={() => setView('packs')} />
        ) : null}
        {view === 'packs' ? <PacksView day={day} /> : null}
      </div>
    </main>
  );
};
