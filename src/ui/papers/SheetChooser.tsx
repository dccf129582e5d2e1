import { ArrowDown, ArrowUp } from 'lucide-react';
import { useState } from 'react';
import { sheetsOf } from '../../papers/paper-set.ts';
import { SHEET_PRESETS } from '../../papers/presets.ts';
import { SHEET_CHOICES } from '../../papers/sheet-kinds.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { planRecord } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((x, i) => b[i] === x);

/** Which sheets are shown and issued, and in what order: a preset for one of the crew, or by hand. Kept in the plan. */
export const SheetChooser = () => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [said, setSaid] = useState('');
  const sheets = sheetsOf(plan, undefined);
  const preset = SHEET_PRESETS.find((p) => same(p.sheets, sheets));
  const choose = (ids: readonly string[]): void => {
    const head = planRecord(plan);
    const r = changeRecord(plan, head, { paper: { ...head.paper, sheets: [...ids] } });
    if (r.ok) session.commit('Choose sheets', r.value);
  };
  const toggle = (id: string): void =>
    choose(sheets.includes(id) ? sheets.filter((s) => s !== id) : [...sheets, id]);
  const move = (id: string, by: -1 | 1): void => {
    const at = sheets.indexOf(id);
    const to = at + by;
    const other = sheets[to];
    if (at < 0 || other === undefined) return;
    const next = [...sheets];
    next[at] = other;
    next[to] = id;
    choose(next);
    setSaid(`${nameOf(id)} is now sheet ${to + 1} of ${next.length}`);
  };
  const rest = SHEET_CHOICES.filter((s) => !sheets.includes(s.id));
  return (
    <details className="papers-chooser">
      <summary>
        Choose sheets{' '}
        <span className="soft">
          {preset ? preset.name : `by hand, ${sheets.length} of ${SHEET_CHOICES.length}`}
        </span>
      </summary>
      <label className="papers-field">
        For
        <select
          className="input"
          value={preset?.id ?? ''}
          disabled={readOnly}
          onChange={(e) => {
            const chosen = SHEET_PRESETS.find((p) => p.id === e.target.value);
            if (chosen) choose(chosen.sheets);
          }}
        >
          {preset ? null : <option value="">by hand</option>}
          {SHEET_PRESETS.map((p) => (
            <option key={p.id} value={p.id}>
              {p.name}
            </option>
          ))}
        </select>
      </label>
      <ol className="papers-checks" aria-label="Sheets to issue, in their order">
        {sheets.map((id, i) => (
          <li key={id} className="papers-order">
            <label>
              <input type="checkbox" checked disabled={readOnly} onChange={() => toggle(id)} /> {nameOf(id)}
            </label>
            <button
              type="button"
              className="button quiet icon"
              aria-label={`${nameOf(id)} up`}
              disabled={readOnly || i === 0}
              onClick={() => move(id, -1)}
            >
              <ArrowUp size={14} aria-hidden />
            </button>
            <button
              type="button"
              className="button quiet icon"
              aria-label={`${nameOf(id)} down`}
              disabled={readOnly || i === sheets.length - 1}
              onClick={() => move(id, 1)}
            >
              <ArrowDown size={14} aria-hidden />
            </button>
          </li>
        ))}
      </ol>
      {rest.length > 0 ? (
        <ul className="papers-checks" aria-label="Sheets left out">
          {rest.map((s) => (
            <li key={s.id}>
              <label>
                <input type="checkbox" checked={false} disabled={readOnly} onChange={() => toggle(s.id)} />{' '}
                {s.name}
              </label>
            </li>
          ))}
        </ul>
      ) : null}
      <p className="visually-hidden" role="status">
        {said}
      </p>
    </details>
  );
};

const nameOf = (id: string): string => SHEET_CHOICES.find((s) => s.id === id)?.name ?? id;
