import { useState } from 'react';
import { formatClock } from '../../kernel/units.ts';
import { parseClock } from '../../plan/clock.ts';
import { layOutDay } from '../../plan/edits/day.ts';
import { setupsOf } from '../../plan/plan.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const USUAL_MIN = 480;

/** A day without blocks: lays one out from the setups, to be changed then. */
export const EmptyDay = ({ day }: { readonly day: number }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [startMin, setStart] = useState(USUAL_MIN);
  const setups = setupsOf(plan).length;
  return (
    <section className="day-none" aria-label="Plan this day">
      <h3>Day {day} is not planned yet</h3>
      <p className="soft">
        The time line, runtimes, changes of packs, energy, fuel and the hours circuits are loaded follow from
        it. Until then every circuit counts as loaded all day.
      </p>
      <div className="day-none-row">
        <span>
          <span className="soft">Crew call</span>{' '}
          <TypedCell
            label="Crew call"
            value={startMin}
            format={formatClock}
            parse={parseClock}
            disabled={readOnly}
            onCommit={setStart}
          />
        </span>
        <button
          type="button"
          className="button primary"
          disabled={readOnly || setups === 0}
          onClick={() => session.commit('Lay out the day', layOutDay(plan, day, startMin, session.newId))}
        >
          Lay out a day from {setups === 1 ? 'the setup' : `the ${setups} setups`}
        </button>
        <span className="soft">or add its blocks one by one below.</span>
      </div>
    </section>
  );
};
