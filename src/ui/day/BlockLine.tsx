import { ok, type Result } from '../../kernel/result.ts';
import { formatClock } from '../../kernel/units.ts';
import { parseClock } from '../../plan/clock.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { changeBlock, setBlockTimes } from '../../plan/edits/day.ts';
import { setupsOf } from '../../plan/plan.ts';
import type { Block } from '../../plan/records/index.ts';
import type { BlockRow } from '../../report/day.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { burnsWhole, WHATS } from './block-kinds.ts';
import type { NewStart } from './MoveAlong.tsx';

const clock: (t: string) => Result<number> = parseClock;

/** One block of the day as a row: typed times, what it is, its setup, words and crew. */
export const BlockLine = ({
  row,
  shiftRest,
  onBurns,
  onStart,
}: {
  readonly row: BlockRow;
  readonly shiftRest: boolean;
  readonly onBurns: () => void;
  /** A new start was typed. */
  readonly onStart: (started: NewStart) => void;
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
          onCommit={(startMin) => {
            session.commit('Change start', setBlockTimes(plan, b.id, { startMin }, false));
            onStart({ blockId: b.id, byMin: startMin - b.startMin, plan: session.getState().plan });
          }}
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
