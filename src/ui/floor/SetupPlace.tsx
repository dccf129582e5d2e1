import { wholeSession } from '../../editor/on-setup.ts';
import { moveOnlyHere, placeEverywhere, setupsItMovesIn, stayHere } from '../../plan/edits/moves.ts';
import { isMovable, moveOf, wholePlan } from '../../plan/moves.ts';
import { recordOf, setupsOf } from '../../plan/plan.ts';
import type { Setup } from '../../plan/records/index.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import './setup-place.css';

const short = (s: Setup | undefined): string => s?.scene || s?.name || '';

/** Whether what is selected stands elsewhere in the chosen setup, and in which others. */
export const SetupPlace = ({ ids }: { readonly ids: readonly string[] }) => {
  const { session } = useServices();
  const s = useSessionSlice((x) => ({ plan: x.plan, setupId: x.setupId, readOnly: x.readOnly }));
  const plan = wholePlan(s.plan);
  const setup = s.setupId === undefined ? undefined : recordOf(plan, 'setup', s.setupId);
  const movable = ids.filter((id) => isMovable(plan.records.get(id)));
  if (!setup || setupsOf(plan).length < 2 || movable.length === 0) return null;
  const own = movable.filter((id) => moveOf(plan, setup.id, id));
  const others = [...new Set(movable.flatMap((id) => setupsItMovesIn(plan, id)))]
    .filter((id) => id !== setup.id)
    .map((id) => short(recordOf(plan, 'setup', id)));
  const whole = wholeSession(session);
  return (
    <section aria-label="Place by setup" className="setup-place">
      <h3 className="inspector-head">Place by setup</h3>
      <label className="setup-place-check">
        <input
          type="checkbox"
          disabled={s.readOnly}
          checked={own.length > 0 && own.length === movable.length}
          ref={(el) => {
            if (el) el.indeterminate = own.length > 0 && own.length < movable.length;
          }}
          onChange={(e) =>
            e.target.checked
              ? whole.commit(`Own place in ${setup.name}`, moveOnlyHere(plan, setup.id, movable))
              : whole.commit(`Usual place in ${setup.name}`, stayHere(plan, setup.id, movable))
          }
        />{' '}
        moves in this setup: its own place in <b>{short(setup)}</b>
      </label>
      {others.length > 0 ? <p className="soft small">Also elsewhere in {others.join(', ')}.</p> : null}
      {own.length > 0 ? (
        <button
          type="button"
          className="button"
          disabled={s.readOnly}
          onClick={() => whole.commit('Same place in every setup', placeEverywhere(plan, setup.id, movable))}
        >
          Use this place in every setup
        </button>
      ) : null}
    </section>
  );
};
