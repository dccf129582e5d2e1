import { setupBurnt } from '../../derive/schedule.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { setBurnsThrough } from '../../plan/edits/day.ts';
import { levelOf, recordOf, recordsOf } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Which units stay on through a meal, a move or the like. */
export const BurnsDialog = ({
  blockId,
  onClose,
}: {
  readonly blockId: string;
  readonly onClose: () => void;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const block = recordOf(plan, 'block', blockId);
  if (!block) return null;
  const on = new Set(block.burnsThrough);
  const units = [...recordsOf(plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));
  const setupId = setupBurnt(plan, block);
  const setup = setupId === undefined ? undefined : recordOf(plan, 'setup', setupId);
  const level = (id: string): number =>
    setupId === undefined ? 0 : Math.round(levelOf(plan, setupId, id).levelPct);
  const burning = units.filter((u) => level(u.id) > 0);
  const set = (label: string, ids: readonly string[]): void =>
    session.commit(label, setBurnsThrough(plan, blockId, ids));
  return (
    <Modal
      title="Units that stay on"
      open
      onClose={onClose}
      foot={
        <>
          <button
            type="button"
            className="button"
            disabled={readOnly || burning.length === 0}
            onClick={() =>
              set(
                'What burns stays on',
                burning.map((u) => u.id),
              )
            }
          >
            What burns ({burning.length})
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly}
            onClick={() =>
              set(
                'All stay on',
                units.map((u) => u.id),
              )
            }
          >
            All
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly}
            onClick={() => set('None stays on', [])}
          >
            None
          </button>
        </>
      }
    >
      <p className="soft">
        They burn at their level in{' '}
        {setup ? <b>{[setup.scene, setup.name].filter(Boolean).join(' ')}</b> : 'no setup'}
        {block.setupId === undefined ? ', the setup before' : ''}.
      </p>
      <ul className="burns">
        {units.map((u) => (
          <li key={u.id}>
            <label>
              <input
                type="checkbox"
                disabled={readOnly}
                checked={on.has(u.id)}
                onChange={(e) =>
                  set(
                    e.target.checked ? `Unit ${u.unit} stays on` : `Unit ${u.unit} goes off`,
                    e.target.checked
                      ? [...block.burnsThrough, u.id]
                      : block.burnsThrough.filter((id) => id !== u.id),
                  )
                }
              />{' '}
              <b>{u.unit}</b>{' '}
              <span className="soft">
                {[u.use, level(u.id) > 0 ? `${level(u.id)} %` : 'off'].filter(Boolean).join(' · ')}
              </span>
            </label>
          </li>
        ))}
      </ul>
    </Modal>
  );
};
