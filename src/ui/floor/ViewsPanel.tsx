import { useState } from 'react';
import { recalled, seenNow } from '../../editor/views.ts';
import { hiddenOn } from '../../plan/edits/stacking.ts';
import { addView, removeView, renameView, retakeView, viewsOf } from '../../plan/edits/views.ts';
import type { View } from '../../plan/records/index.ts';
import { useCommands } from '../commands.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import './plotting.css';

/** Saved views of the floors: what part is seen, in which setup, with which layers and labels. */
export const ViewsPanel = () => {
  const { session } = useServices();
  const { run } = useCommands();
  const { plan, floorId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    floorId: s.floorId,
    readOnly: s.readOnly,
  }));
  const [name, setName] = useState('');
  const views = viewsOf(plan);
  const hidden = hiddenOn(plan, floorId).length;

  const save = (): void => {
    const s = session.getState();
    const seen = seenNow(s);
    if (!seen) return;
    const { changes, view } = addView(s.plan, { ...seen, name }, session.newId);
    session.commit(`Save view ${view.name}`, changes);
    session.set({ message: `View “${view.name}” saved.` });
    setName('');
  };

  return (
    <details className="layers views">
      <summary>Views{views.length > 0 ? ` (${views.length})` : ''}</summary>
      {views.length > 0 ? (
        <ul className="views-list">
          {views.map((v) => (
            <ViewLine key={v.id} view={v} readOnly={readOnly} />
          ))}
        </ul>
      ) : (
        <p className="soft small views-hint">
          A view keeps what part of the floor is seen, the setup, the layers and what labels say.
        </p>
      )}
      <form
        className="views-new"
        onSubmit={(e) => {
          e.preventDefault();
          save();
        }}
      >
        <input
          className="input"
          aria-label="Name of the new view"
          placeholder="Name"
          value={name}
          disabled={readOnly}
          onChange={(e) => setName(e.target.value)}
        />
        <button type="submit" className="button" disabled={readOnly}>
          Save this view
        </button>
      </form>
      {hidden > 0 ? (
        <p className="views-hidden">
          {hidden} hidden on this floor.{' '}
          <button type="button" className="link" disabled={readOnly} onClick={() => run('show-all')}>
            Show all
          </button>
        </p>
      ) : null}
    </details>
  );
};

const ViewLine = ({ view, readOnly }: { readonly view: View; readonly readOnly: boolean }) => {
  const { session } = useServices();
  const [name, setName] = useState<string | undefined>(undefined);
  const plan = () => session.getState().plan;
  const rename = (): void => {
    if (name !== undefined && name.trim() !== '')
      session.commit('Rename view', renameView(plan(), view.id, name));
    setName(undefined);
  };
  if (name !== undefined)
    return (
      <li className="views-line">
        <input
          className="input"
          aria-label={`New name of view ${view.name}`}
          value={name}
          ref={(el) => {
            if (el && document.activeElement !== el) el.focus();
          }}
          onChange={(e) => setName(e.target.value)}
          onBlur={rename}
          onKeyDown={(e) => {
            if (e.key === 'Enter') rename();
            if (e.key === 'Escape') setName(undefined);
            e.stopPropagation();
          }}
        />
      </li>
    );
  return (
    <li className="views-line">
      <button
        type="button"
        className="link views-go"
        onClick={() => session.set(recalled(session.getState(), view))}
      >
        {view.name}
      </button>
      <button
        type="button"
        className="link soft"
        disabled={readOnly}
        aria-label={`Take view ${view.name} anew from what is seen now`}
        title="Take it anew from what is seen now"
        onClick={() => {
          const seen = seenNow(session.getState());
          if (seen) session.commit(`Take view ${view.name} anew`, retakeView(plan(), view.id, seen));
        }}
      >
        retake
      </button>
      <button
        type="button"
        className="link soft"
        disabled={readOnly}
        aria-label={`Rename view ${view.name}`}
        onClick={() => setName(view.name)}
      >
        rename
      </button>
      <button
        type="button"
        className="link soft"
        disabled={readOnly}
        aria-label={`Delete view ${view.name}`}
        onClick={() => session.commit(`Delete view ${view.name}`, removeView(plan(), view.id))}
      >
        delete
      </button>
    </li>
  );
};
