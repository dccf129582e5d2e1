import { fail, ok, type Result } from '../../kernel/result.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { addSetup, changeRecord } from '../../plan/edits/document.ts';
import { setupsOf } from '../../plan/plan.ts';
import type { Setup } from '../../plan/records/index.ts';
import { Field } from '../common/Field.tsx';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

/** The setups of the plan: rename, add one like the one shown, remove. Each is one undo step. */
export const SetupsDialog = () => {
  const { session } = useServices();
  const open = useUi((u) => u.open);
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const setups = setupsOf(plan);
  const change = (setup: Setup, label: string, patch: Partial<Setup>): void => {
    const r = changeRecord(plan, setup, patch);
    if (r.ok) session.commit(label, r.value);
  };
  const add = (): void => {
    const before = new Set(setups.map((s) => s.id));
    session.commit('Add setup', addSetup(plan, `Setup ${setups.length + 1}`, setupId, session.newId));
    const made = setupsOf(session.getState().plan).find((s) => !before.has(s.id));
    if (made) session.set({ setupId: made.id });
  };
  return (
    <Modal
      title="Setups"
      open
      onClose={() => open(undefined)}
      foot={
        <button type="button" className="button primary" disabled={readOnly} onClick={add}>
          Add a setup like the one shown
        </button>
      }
    >
      <p className="soft">
        The same rig, lit differently. Every check is made for every setup and told for the worst.
      </p>
      {setups.map((s) => (
        <div key={s.id} className="setup-line" data-shown={s.id === setupId}>
          <Field
            label="Scene"
            value={s.scene}
            format={(v) => v}
            parse={(t) => ok(t.trim())}
            disabled={readOnly}
            onCommit={(scene) => change(s, 'Change scene', { scene })}
          />
          <Field
            label="Name"
            value={s.name}
            format={(v) => v}
            parse={nameNeeded}
            disabled={readOnly}
            onCommit={(name) => change(s, 'Rename setup', { name })}
          />
          <button type="button" className="button" onClick={() => session.set({ setupId: s.id })}>
            Show
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly || setups.length < 2}
            aria-label={`Remove setup ${s.name}`}
            onClick={() => session.commit('Remove setup', removeRecords(plan, new Set([s.id])))}
          >
            Remove
          </button>
        </div>
      ))}
    </Modal>
  );
};

const nameNeeded = (t: string): Result<string> =>
  t.trim() ? ok(t.trim()) : fail({ what: 'A setup needs a name.' });
