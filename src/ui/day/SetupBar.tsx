import { fail, ok, type Result } from '../../kernel/result.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { duplicateSetup, moveSetup } from '../../plan/edits/day.ts';
import { addSetup, changeRecord } from '../../plan/edits/document.ts';
import { setupsOf } from '../../plan/plan.ts';
import type { Setup } from '../../plan/records/index.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const nameNeeded = (t: string): Result<string> =>
  t.trim() ? ok(t.trim()) : fail({ what: 'A setup needs a name.' });

/** The setup that is shown: its scene and name, its place in the order, copies of it. */
export const SetupBar = ({
  setup,
  index,
  count,
  children,
}: {
  readonly setup: Setup | undefined;
  readonly index: number;
  readonly count: number;
  readonly children: React.ReactNode;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const change = (label: string, patch: Partial<Setup>): void => {
    const r = setup && changeRecord(plan, setup, patch);
    if (r?.ok) session.commit(label, r.value);
  };
  /** Shows the setup that an edit added. */
  const showNew = (label: string, changes: ReturnType<typeof addSetup>): void => {
    session.commit(label, changes);
    const made = changes.added.find((r) => r.type === 'setup');
    if (made) session.set({ setupId: made.id });
  };
  return (
    <div className="setups-bar">
      {setup ? (
        <>
          <TypedCell
            label="Scene of the setup"
            value={setup.scene}
            format={(v) => v}
            parse={(t) => ok(t.trim())}
            placeholder="scene"
            disabled={readOnly}
            onCommit={(scene) => change('Change scene', { scene })}
          />
          <TypedCell
            label="Name of the setup"
            wide
            value={setup.name}
            format={(v) => v}
            parse={nameNeeded}
            disabled={readOnly}
            onCommit={(name) => change('Rename setup', { name })}
          />
          <button
            type="button"
            className="button"
            disabled={readOnly || index <= 0}
            onClick={() => session.commit('Move setup', moveSetup(plan, setup.id, index - 1))}
          >
            Earlier
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly || index >= count - 1}
            onClick={() => session.commit('Move setup', moveSetup(plan, setup.id, index + 1))}
          >
            Later
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly}
            onClick={() =>
              showNew('Duplicate setup', duplicateSetup(plan, setup.id, `${setup.name} copy`, session.newId))
            }
          >
            Duplicate
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly || count < 2}
            onClick={() => session.commit('Remove setup', removeRecords(plan, new Set([setup.id])))}
          >
            Remove
          </button>
        </>
      ) : null}
      <button
        type="button"
        className="button"
        disabled={readOnly}
        onClick={() =>
          showNew('Add setup', addSetup(plan, `Setup ${setupsOf(plan).length + 1}`, undefined, session.newId))
        }
      >
        New setup
      </button>
      <span className="setups-gap" />
      {children}
    </div>
  );
};
