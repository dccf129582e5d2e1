import { useState } from 'react';
import { LABEL_STOCKS, labelFaults } from '../../papers/label-stocks.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { planRecord } from '../../plan/plan.ts';
import type { LabelStock } from '../../plan/records/index.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const FIELDS: readonly (readonly [keyof LabelStock & string, string])[] = [
  ['columns', 'Labels across'],
  ['rows', 'Labels down'],
  ['widthMm', 'Label wide, mm'],
  ['heightMm', 'Label high, mm'],
  ['leftMm', 'Left edge, mm'],
  ['topMm', 'Top edge, mm'],
  ['pitchXMm', 'Step across, mm'],
  ['pitchYMm', 'Step down, mm'],
  ['sheetWidthMm', 'Sheet wide, mm'],
  ['sheetHeightMm', 'Sheet high, mm'],
];

const sizeOf = (text: string | undefined): number => Number((text ?? '').trim().replace(',', '.') || 'none');

const whole = (key: string): boolean => key === 'columns' || key === 'rows';
const fits = (key: string, n: number): boolean =>
  Number.isFinite(n) &&
  n < 2000 &&
  (key === 'leftMm' || key === 'topMm' ? n >= 0 : n > 0) &&
  (!whole(key) || (Number.isInteger(n) && n <= 60));

/** The label sheet at hand, in millimetres as typed; a common one to start from. */
export const LabelForm = () => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const head = planRecord(plan);
  const usual = LABEL_STOCKS.find((s) => s.units === head.lengthUnits) ?? LABEL_STOCKS[0];
  const stock = head.paper.labels ?? usual?.stock;
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  if (!stock) return null;
  const keep = (labels: LabelStock): void => {
    const r = changeRecord(plan, head, { paper: { ...head.paper, labels } });
    if (r.ok) session.commit('Change label sheet', r.value);
    setTyped({});
  };
  const name = LABEL_STOCKS.find((s) =>
    FIELDS.every(([key]) => Math.abs(Number(s.stock[key]) - Number(stock[key])) < 0.001),
  )?.name;
  const wrong = FIELDS.map(([key]) => key).find(
    (key) => typed[key] !== undefined && !fits(key, sizeOf(typed[key])),
  );
  return (
    <details className="papers-spares" open>
      <summary>Label sheet</summary>
      <label className="papers-field">
        Start from
        <select
          className="input"
          value={name ?? ''}
          disabled={readOnly}
          onChange={(e) => {
            const chosen = LABEL_STOCKS.find((s) => s.name === e.target.value);
            if (chosen) keep(chosen.stock);
          }}
        >
          {name ? null : <option value="">as typed</option>}
          {LABEL_STOCKS.map((s) => (
            <option key={s.name}>{s.name}</option>
          ))}
        </select>
      </label>
      <div className="papers-grid">
        {FIELDS.map(([key, label]) => {
          const text = typed[key] ?? String(Number(Number(stock[key]).toFixed(3)));
          const n = sizeOf(text);
          const bad = !fits(key, n);
          return (
            <label key={key} className="papers-field">
              {label}
              <input
                className="input"
                inputMode="decimal"
                value={text}
                disabled={readOnly}
                aria-invalid={bad}
                onChange={(e) => setTyped({ ...typed, [key]: e.target.value })}
                onBlur={() => {
                  if (!bad && n !== Number(stock[key])) keep({ ...stock, [key]: n });
                }}
              />
            </label>
          );
        })}
      </div>
      {wrong ? (
        <p className="field-error">
          “{typed[wrong]}” is no size.{' '}
          {whole(wrong) ? 'Write a whole number of labels, at most 60.' : 'Write millimetres, like 63.5.'}
        </p>
      ) : null}
      {labelFaults(stock).faults.map((f) => (
        <p key={f} className="field-error">
          {f}
        </p>
      ))}
      <p className="soft small">
        Measure the sheet at hand. Print one on plain paper first and hold it against the labels.
      </p>
    </details>
  );
};
