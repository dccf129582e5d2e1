import { SHEET_IDS, scalesFor } from '../../papers/sheets.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { planRecord } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

/** Sheet, way round and scale of the plot, and the way to the title block. */
export const PaperForm = () => {
  const { session } = useServices();
  const open = useUi((u) => u.open);
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const head = planRecord(plan);
  const paper = (patch: Partial<typeof head.paper>): void => {
    const next = { ...head.paper, ...patch };
    if ('scale' in patch && patch.scale === undefined) delete next.scale;
    const r = changeRecord(plan, head, { paper: next });
    if (r.ok) session.commit('Change sheet', r.value);
  };
  const scales = scalesFor(head.lengthUnits);
  const known = SHEET_IDS.includes(head.paper.sheet);
  return (
    <div className="papers-grid">
      <label className="papers-field">
        Sheet
        <select
          className="input"
          value={head.paper.sheet}
          disabled={readOnly}
          onChange={(e) => paper({ sheet: e.target.value })}
        >
          {known ? null : <option>{head.paper.sheet}</option>}
          {SHEET_IDS.map((n) => (
            <option key={n}>{n}</option>
          ))}
        </select>
      </label>
      <label className="papers-field">
        Way round
        <select
          className="input"
          value={head.paper.landscape ? 'landscape' : 'portrait'}
          disabled={readOnly}
          onChange={(e) => paper({ landscape: e.target.value === 'landscape' })}
        >
          <option value="landscape">landscape</option>
          <option value="portrait">portrait</option>
        </select>
      </label>
      <label className="papers-field">
        Scale of the plot
        <select
          className="input"
          value={head.paper.scale ?? ''}
          disabled={readOnly}
          onChange={(e) => paper({ scale: e.target.value === '' ? undefined : Number(e.target.value) })}
        >
          <option value="">largest that fits</option>
          {scales.some((s) => s.ratio === head.paper.scale) || head.paper.scale === undefined ? null : (
            <option value={head.paper.scale}>1:{head.paper.scale}</option>
          )}
          {scales.map((s) => (
            <option key={s.ratio} value={s.ratio}>
              {s.text}
            </option>
          ))}
        </select>
      </label>
      <button type="button" className="button papers-title" onClick={() => open('title')}>
        Title block…
      </button>
    </div>
  );
};
