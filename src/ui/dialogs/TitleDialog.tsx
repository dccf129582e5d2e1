import { useState } from 'react';
import { SHEET_IDS } from '../../papers/sheets.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { planRecord } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

const PEOPLE = [
  ['director-of-photography', 'Director of photography'],
  ['gaffer', 'Gaffer'],
  ['best-boy', 'Best boy'],
  ['drawn-by', 'Drawn by'],
] as const;

/** What the title block prints: production, scene, people, sheet. One edit for the whole form. */
export const TitleDialog = () => {
  const { session } = useServices();
  const close = useUi((u) => u.open);
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [draft, setDraft] = useState(() => planRecord(plan));
  const set = (patch: Partial<typeof draft>): void => setDraft({ ...draft, ...patch });
  const line = (label: string, value: string, onChange: (v: string) => void): React.ReactNode => (
    <label key={label}>
      {label}
      <input className="input" value={value} disabled={readOnly} onChange={(e) => onChange(e.target.value)} />
    </label>
  );
  return (
    <Modal
      title="Title and crew"
      open
      onClose={() => close(undefined)}
      foot={
        <button
          type="button"
          className="button primary"
          disabled={readOnly}
          onClick={() => {
            const r = changeRecord(plan, planRecord(plan), draft);
            if (r.ok) session.commit('Change title block', r.value);
            close(undefined);
          }}
        >
          Keep
        </button>
      }
    >
      <div className="form-grid">
        {line('Production', draft.production, (production) => set({ production }))}
        {line('Title', draft.title, (title) => set({ title }))}
        {line('Scene or set', draft.scene, (scene) => set({ scene }))}
        {line('Location', draft.location, (location) => set({ location }))}
        {line('Drawing number', draft.drawingNumber, (drawingNumber) => set({ drawingNumber }))}
        {line('Legal owner', draft.owner, (owner) => set({ owner }))}
        {PEOPLE.map(([id, label]) =>
          line(label, draft.people[id] ?? '', (v) => set({ people: { ...draft.people, [id]: v } })),
        )}
        <label>
          Sheet
          <select
            className="input"
            value={draft.paper.sheet}
            disabled={readOnly}
            onChange={(e) => set({ paper: { ...draft.paper, sheet: e.target.value } })}
          >
            {SHEET_IDS.map((n) => (
              <option key={n}>{n}</option>
            ))}
          </select>
        </label>
      </div>
    </Modal>
  );
};
