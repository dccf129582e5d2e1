import { formatClock } from '../../kernel/units.ts';
import { setBlockTimes } from '../../plan/edits/day.ts';
import type { Plan } from '../../plan/plan.ts';
import { type BlockRow, formatMinutes } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** A block that was given a new start, the end left where it was. */
export interface NewStart {
  readonly blockId: string;
  readonly byMin: number;
  /** The plan with the new start: with any other the offer is void. */
  readonly plan: Plan;
}

/** After a new start was typed: offers to move the block’s end as well, alone or with all that follows. */
export const MoveAlong = ({
  started,
  row,
  rows,
  onDone,
}: {
  readonly started: NewStart;
  readonly row: BlockRow;
  readonly rows: readonly BlockRow[];
  readonly onDone: () => void;
}) => {
  const { session } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const { startMin, endMin, day } = row.block;
  const later = rows.filter((r) => r.id !== row.id && r.block.day === day && r.block.startMin >= endMin);
  const by = `${formatMinutes(Math.abs(started.byMin))} ${started.byMin > 0 ? 'later' : 'earlier'}`;
  const move = (rest: boolean): void => {
    session.commit(
      rest ? 'Move block and what follows' : 'Move block',
      setBlockTimes(plan, row.id, { endMin: endMin + started.byMin }, rest),
    );
    onDone();
  };
  return (
    <div className="day-along" role="status">
      <span>
        <b>{row.name}</b> starts at {formatClock(startMin)} now and still ends at {formatClock(endMin)}.
      </span>
      {later.length > 0 ? (
        <button type="button" className="button" onClick={() => move(true)}>
          Shift its end and everything after {by}
        </button>
      ) : null}
      <button type="button" className="button" onClick={() => move(false)}>
        {later.length > 0 ? 'Only its end' : `Shift its end ${by} too`}
      </button>
      <button type="button" className="button quiet" onClick={onDone}>
        Leave it
      </button>
    </div>
  );
};
