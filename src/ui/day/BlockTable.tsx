import { useState } from 'react';
import { ok, type Result } from '../../kernel/result.ts';
import { formatClock } from '../../kernel/units.ts';
import { parseClock } from '../../plan/clock.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { addBlock, changeBlock, setBlockTimes } from '../../plan/edits/day.ts';
import { setupsOf } from '../../plan/plan.ts';
import { LAST_MINUTE } from '../../plan/records/day.ts';
import type { Block } from '../../plan/records/index.ts';
import type { BlockRow, DaySummary } from '../../report/day.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { BurnsDialog } from './BurnsDialog.tsx';

const WHATS: readonly { readonly id: Block['what']; readonly name: string; readonly minutes: number }[] = [
  { id: 'setup', name: 'Setup', minutes: 120 },
  { id: 'pre-light', name: 'Pre-light', minutes: 60 },
  { id: 'meal', name: 'Meal', minutes: 60 },
  { id: 'move', name: 'Company move', minutes: 30 },
  { id: 'wrap', name: 'Wrap', minutes: 30 },
  { id: 'other', name: 'Other', minutes: 60 },
];
const FIRST_MIN = 480;
/** A block that does not even get so long has no room. */
const LEAST_MIN = 5;
const burnsWhole = (what: Block['what']): boolean => what === 'setup' || what === 'pre-light';
const clock: (t: string) => Result<number> = parseClock;

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
              <BlockLine key={row.id} row={row} shiftRest={shiftRest} onBurns={() => setBurns(row.id)} />
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

const BlockLine = ({
  row,
  shiftRest,
  onBurns,
}: {
  readonly row: BlockRow;
  readonly shiftRest: boolean;
  readonly onBurns: () => void;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const b = row.block;
  const set = (label: string, patch: Parameters<typeof changeBlock>[2]): void =>
    session.commit(label, changeBlock(plan, b.id, patch));
  const fallback = burnsWhole(b.what) ? setupsOf(plan)[0]?.id : undefined;
  return (
    <tr data-fault={row.fault !== undefined} title={row.fault ? `Left out: ${row.fault}.` : undefined}>
      <td>
        <TypedCell
          label={`${row.name}, from`}
          value={b.startMin}
          format={formatClock}
          parse={clock}
          disabled={readOnly}
          onCommit={(startMin) =>
            session.commit('Change start', setBlockTimes(plan, b.id, { startMin }, false))
          }
        />
      </td>
      <td>
        <TypedCell
          label={`${row.name}, to`}
          value={b.endMin}
          format={formatClock}
          parse={clock}
          disabled={readOnly}
          onCommit={(endMin) =>
            session.commit('Change end', setBlockTimes(plan, b.id, { endMin }, shiftRest))
          }
        />
      </td>
      <td>
        <select
          className="cell-select"
          aria-label={`${row.name}, what`}
          disabled={readOnly}
          value={b.what}
          onChange={(e) =>
            set('Change block', {
              what: e.target.value as Block['what'],
              ...(burnsWhole(e.target.value as Block['what']) && b.setupId === undefined
                ? { setupId: setupsOf(plan)[0]?.id }
                : {}),
            })
          }
        >
          {WHATS.map((w) => (
            <option key={w.id} value={w.id}>
              {w.name}
            </option>
          ))}
        </select>
      </td>
      <td>
        <select
          className="cell-select"
          aria-label={`${row.name}, setup`}
          disabled={readOnly}
          value={b.setupId ?? ''}
          onChange={(e) => set('Change setup of the block', { setupId: e.target.value || fallback })}
        >
          {burnsWhole(b.what) ? null : <option value="">as before</option>}
          {b.setupId !== undefined && row.setupName === '' ? (
            <option value={b.setupId}>not in the plan</option>
          ) : null}
          {setupsOf(plan).map((s) => (
            <option key={s.id} value={s.id}>
              {[s.scene, s.name].filter(Boolean).join(' · ')}
            </option>
          ))}
        </select>
      </td>
      <td>
        <TypedCell
          label={`${row.name}, words`}
          wide
          value={b.label}
          format={(v) => v}
          parse={(t) => ok(t.trim())}
          disabled={readOnly}
          onCommit={(label) => set('Change words', { label })}
        />
      </td>
      <td>
        <select
          className="cell-select"
          aria-label={`${row.name}, crew`}
          disabled={readOnly}
          value={b.crew}
          onChange={(e) => set('Change crew', { crew: e.target.value as Block['crew'] })}
        >
          <option value="shooting">shooting</option>
          <option value="rigging">rigging</option>
        </select>
      </td>
      <td className="num">
        {row.fault ? (
          <span className="day-fault">left out</span>
        ) : burnsWhole(b.what) ? (
          row.unitsOn
        ) : (
          <button
            type="button"
            className="link"
            aria-label={`${row.name}: ${b.burnsThrough.length} stay on, choose`}
            onClick={onBurns}
          >
            {b.burnsThrough.length} stay on
          </button>
        )}
      </td>
      <td>
        <button
          type="button"
          className="button quiet"
          disabled={readOnly}
          aria-label={`Remove ${row.name}`}
          onClick={() => session.commit('Remove block', removeRecords(plan, new Set([b.id])))}
        >
          Remove
        </button>
      </td>
    </tr>
  );
};
