import { Lock, LockOpen } from 'lucide-react';
import { changeRecord } from '../../plan/edits/document.ts';
import { photosOn } from '../../plan/edits/photos.ts';
import { underlaysOn } from '../../plan/edits/underlays.ts';
import type { Underlay } from '../../plan/records/index.ts';
import { useCommands } from '../commands.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { askAbout } from './ask-about.ts';
import './scout.css';

/** What was brought home from the scout for this floor: underlays, the uppermost first, and photos. */
export const ScoutPanel = () => {
  const { session } = useServices();
  const { run, keysOf } = useCommands();
  const { plan, floorId, selection, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    floorId: s.floorId,
    selection: s.selection,
    readOnly: s.readOnly,
  }));
  const underlays = [...underlaysOn(plan, floorId)].reverse();
  const photos = floorId === undefined ? [] : photosOn(plan, floorId);
  const count = underlays.length + photos.length;
  return (
    <details className="layers">
      <summary>Underlays and photos{count > 0 ? ` (${count})` : ''}</summary>
      {count === 0 ? (
        <p className="soft small views-hint">
          Lay a scan, a page of a PDF or a DXF drawing under the floor and draw over it; pin photos to spots.
        </p>
      ) : null}
      <ul className="scout-list">
        {underlays.map((u) => (
          <UnderlayLine key={u.id} underlay={u} chosen={selection.has(u.id)} readOnly={readOnly} />
        ))}
        {photos.map((p) => (
          <li key={p.id} className="scout-line" data-chosen={selection.has(p.id)}>
            <button
              type="button"
              className="link scout-name"
              onClick={() =>
                session.set({
                  selection: new Set([p.id]),
                  camera: { ...session.getState().camera, center: p.at },
                })
              }
            >
              {p.label} {p.caption}
            </button>
            <button type="button" className="link soft" onClick={() => askAbout(session, 'photo', p.id)}>
              open
            </button>
          </li>
        ))}
      </ul>
      <p className="scout-foot">
        <button
          type="button"
          className="button"
          disabled={readOnly}
          title={`Underlay (${keysOf('import-underlay')})`}
          onClick={() => run('import-underlay')}
        >
          Underlay…
        </button>
        <button
          type="button"
          className="button"
          disabled={readOnly || underlays.length === 0}
          title={`Scale (${keysOf('tool-scale')})`}
          onClick={() => run('tool-scale')}
        >
          Scale
        </button>
        <button
          type="button"
          className="button"
          disabled={readOnly}
          title={`Photos (${keysOf('pin-photos')})`}
          onClick={() => run('pin-photos')}
        >
          Photos…
        </button>
      </p>
    </details>
  );
};

const UnderlayLine = ({
  underlay: u,
  chosen,
  readOnly,
}: {
  readonly underlay: Underlay;
  readonly chosen: boolean;
  readonly readOnly: boolean;
}) => {
  const { session } = useServices();
  const edit = (label: string, patch: Partial<Underlay>): void => {
    const r = changeRecord(session.getState().plan, u, patch);
    if (r.ok) session.commit(label, r.value);
  };
  const lock = u.locked ? 'Unlock' : 'Lock';
  return (
    <li className="scout-line" data-chosen={chosen}>
      <input
        type="checkbox"
        aria-label={`Show ${u.name}`}
        checked={!u.hidden}
        disabled={readOnly}
        onChange={(e) =>
          edit(e.target.checked ? 'Show underlay' : 'Hide underlay', { hidden: !e.target.checked })
        }
      />
      <button
        type="button"
        className="link scout-name"
        onClick={() => session.set({ selection: new Set([u.id]), tool: 'select' })}
      >
        {u.name}
      </button>
      {u.scaled ? null : <span className="row-hint">not scaled</span>}
      <button
        type="button"
        className="link soft"
        aria-label={`${lock} ${u.name}`}
        title={lock}
        disabled={readOnly}
        onClick={() => edit(`${lock} underlay`, { locked: !u.locked })}
      >
        {u.locked ? <Lock size={13} aria-hidden="true" /> : <LockOpen size={13} aria-hidden="true" />}
      </button>
    </li>
  );
};
