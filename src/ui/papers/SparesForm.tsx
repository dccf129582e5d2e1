import { useState } from 'react';
import { changeRecord } from '../../plan/edits/document.ts';
import { planRecord } from '../../plan/plan.ts';
import { SPARE_GROUPS, type SpareGroup, usualSparePct } from '../../report/spares.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const WORDS: Readonly<Record<SpareGroup, string>> = {
  cable: 'Cable, %',
  lights: 'Lights, %',
  stands: 'Stands, %',
  grip: 'Grip, %',
  adapters: 'Adapters, %',
};

/** Per cent of a typed text: undefined for nothing, NaN for what is no per cent from 0 to 200. */
const pctOf = (text: string): number | undefined => {
  if (text.trim() === '') return undefined;
  const n = Number(text.replace(',', '.').replace('%', ''));
  return n >= 0 && n <= 200 ? n : Number.NaN;
};

/** Spares that cable and gear lists add in this plan; an empty field is common practice. */
export const SparesForm = () => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const head = planRecord(plan);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const keep = (group: SpareGroup): void => {
    const text = typed[group];
    if (text === undefined) return;
    const pct = pctOf(text);
    setTyped(({ [group]: _, ...rest }) => rest);
    if (Number.isNaN(pct)) return;
    const { [group]: _, ...others } = head.paper.spares ?? {};
    const spares = pct === undefined ? others : { ...others, [group]: pct };
    const { spares: __, ...paper } = head.paper;
    const next = Object.keys(spares).length > 0 ? { ...paper, spares } : paper;
    const r = changeRecord(plan, head, { paper: next });
    if (r.ok) session.commit('Change spares', r.value);
  };
  return (
    <details className="papers-spares">
      <summary>Spares</summary>
      {SPARE_GROUPS.map((group) => {
        const text = typed[group] ?? String(head.paper.spares?.[group] ?? '');
        return (
          <label className="papers-field" key={group}>
            {WORDS[group]}
            <input
              className="input"
              inputMode="decimal"
              value={text}
              placeholder={`${usualSparePct(group)}, common practice`}
              aria-invalid={Number.isNaN(pctOf(text))}
              disabled={readOnly}
              onChange={(e) => setTyped((t) => ({ ...t, [group]: e.target.value }))}
              onBlur={() => keep(group)}
              onKeyDown={(e) => {
                if (e.key === 'Enter') keep(group);
              }}
            />
          </label>
        );
      })}
    </details>
  );
};
