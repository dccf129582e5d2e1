import { X } from 'lucide-react';
import { useState } from 'react';
import { wholeSession } from '../../editor/on-setup.ts';
import type { Transaction } from '../../plan/change-set.ts';
import { fromSetup, movesFreely } from '../../plan/edits/moves.ts';
import { recordOf, setupsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import './setup-place.css';

/** After something was moved, turned or aimed in every setup: the offer to do it in the chosen one only. */
export const MoveOffer = () => {
  const { session } = useServices();
  const whole = wholeSession(session);
  const s = useSessionSlice((x) => ({
    plan: x.plan,
    setupId: x.setupId,
    readOnly: x.readOnly,
    last: x.undoStack.at(-1),
    chosen: x.selection.size,
  }));
  const [declined, decline] = useState<Transaction | undefined>(undefined);
  const setup = s.setupId === undefined ? undefined : recordOf(s.plan, 'setup', s.setupId);
  const t = s.last;
  if (!t || !setup || s.readOnly || s.chosen === 0 || declined === t) return null;
  if (setupsOf(s.plan).length < 2 || !movesFreely(whole.getState().plan, setup.id, t.changes)) return null;
  const name = setup.scene || setup.name;
  return (
    <div className="move-offer" role="status">
      <span>In every setup.</span>
      <button
        type="button"
        className="button"
        onClick={() => {
          whole.undo();
          const { plan } = whole.getState();
          whole.commit(`${t.label} in ${name} only`, fromSetup(plan, setup.id, t.changes, true));
        }}
      >
        Only in {name}
      </button>
      <button
        type="button"
        className="button icon quiet"
        aria-label="Leave it so"
        title="Leave it so"
        onClick={() => decline(t)}
      >
        <X size={14} aria-hidden="true" />
      </button>
    </div>
  );
};
