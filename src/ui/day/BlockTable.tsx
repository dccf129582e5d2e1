import { Fragment, useState } from 'react';
import { addBlock } from '../../plan/edits/day.ts';
import { setupsOf } from '../../plan/plan.ts';
import { LAST_MINUTE } from '../../plan/records/day.ts';
import type { DaySummary } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { BlockLine } from './BlockLine.tsx';
import { BurnsDialog } from './BurnsDialog.tsx';
import { burnsWhole, WHATS } from './block-kinds.ts';
import { MoveAlong, type NewStart } from './MoveAlong.tsx';

const FIRST_MIN = 480;
/** A block that does not even get so long has no room. */
const LEAST_MIN = 5;

/** The blocks of a day as rows with typed times. */
export const BlockTable = ({
  day,
  summary,
  shiftRest,
}: {
  readonly day: number;
  readonly summary: DaySummary;
  readonly shiftRest: boolean;
}) => {
  const { session } = useServices();
  const { plan, readOnly, setupId } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    setupId: s.setupId,
  }));
  const [burns, setBurns] = useState<string | undefined>(undefined);
  const [started, setStarted] = useState<NewStart | undefined>(undefined);
  const add = (what: (typeof WHATS)[number]): void => {
    const startMin = summary.endMin > 0 ? summary.endMin : FIRST_MIN;
    if (startMin + LEAST_MIN > LAST_MINUTE) {
      session.set({ message: 'The day ends at noon of the next day. Shorten or move a block first.' });
      return;
    }
    const shown = setupId ?? setupsOf(plan)[0]?.id;
    session.commit(
      `Add ${what.name.toLowerCase()}`,
      addBlock(
        plan,
        {
          day,
          startMin,
          endMin: Math.min(startMin + what.minutes, LAST_MINUTE),
          what: what.id,
          ...(burnsWhole(what.id) && shown ? { setupId: shown } : {}),
        },
        session.newId,
      ),
    );
  };
  return (
    <section className="day-blocks" aria-label="Blocks of the day">
      {summary.blocks.length === 0 ? null : (
        <table className="table">
          <caption className="visually-hidden">Blocks</caption>
          <thead>
            <tr>
              <th scope="col">From</th>
              <th scope="col">To</th>
              <th scope="col">What</th>
              <th scope="col">Setup</th>
              <th scope="col">Words</th>
              <th scope="col">Crew</th>
              <th scope="col" className="num">
                Units on
              </th>
              <th scope="col">
                <span className="visually-hidden">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {summary.blocks.map((row) => (
              <Fragment key={row.id}>
                <BlockLine
                  row={row}
                  shiftRest={shiftRest}
                  onBurns={() => setBurns(row.id)}
                  onStart={setStarted}
                />
                {started?.blockId === row.id && started.plan === plan ? (
                  <tr>
                    <td colSpan={8}>
                      <MoveAlong
                        started={started}
                        row={row}
                        rows={summary.blocks}
                        onDone={() => setStarted(undefined)}
                      />
                    </td>
                  </tr>
                ) : null}
              </Fragment>
            ))}
          </tbody>
        </table>
      )}
      <div className="day-add">
        <span className="soft">Add</span>
        {WHATS.map((w) => (
          <button key={w.id} type="button" className="button" disabled={readOnly} onClick={() => add(w)}>
            {w.name}
          </button>
        ))}
      </div>
      {burns ? <BurnsDialog blockId={burns} onClose={() => setBurns(undefined)} /> : null}
    </section>
  );
};
