import { useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { problemText, type Result } from '../../kernel/result.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import {
  clearParts,
  copyParts,
  fillParts,
  type GradientWay,
  gradientParts,
  partsNow,
} from '../../plan/edits/parts.ts';
import { partCount, partGrid, partsOf } from '../../plan/part-levels.ts';
import { kindOf, levelOf, recordOf, recordsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { PartGridView } from './PartGridView.tsx';
import { PartStrip } from './PartStrip.tsx';
import './parts.css';

const WAYS: readonly { readonly id: GradientWay; readonly words: string }[] = [
  { id: 'across', words: 'left to right' },
  { id: 'down', words: 'top to bottom' },
  { id: 'corner', words: 'corner to corner' },
];

interface End {
  readonly levelPct: number;
  readonly color: string;
}

const Look = ({
  label,
  value,
  onChange,
  disabled,
}: {
  readonly label: string;
  readonly value: End;
  readonly onChange: (v: End) => void;
  readonly disabled: boolean;
}) => (
  <span className="parts-look">
    <span className="parts-look-name">{label}</span>
    <input
      type="color"
      aria-label={`Colour, ${label}`}
      value={value.color}
      disabled={disabled}
      onChange={(e) => onChange({ ...value, color: e.target.value })}
    />
    <input
      type="range"
      min={0}
      max={100}
      step={5}
      aria-label={`Level, ${label}`}
      value={value.levelPct}
      disabled={disabled}
      onChange={(e) => onChange({ ...value, levelPct: Number(e.target.value) })}
    />
    <input
      className="input parts-pct"
      type="number"
      min={0}
      max={100}
      aria-label={`Level in per cent, ${label}`}
      value={value.levelPct}
      disabled={disabled}
      onChange={(e) =>
        onChange({ ...value, levelPct: Math.max(0, Math.min(100, Number(e.target.value) || 0)) })
      }
    />
    <span className="soft">%</span>
  </span>
);

/** Levels and colours of the parts of units, in the setup shown: fill, gradient, copy. */
export const PartsTab = () => {
  const { session } = useServices();
  const { plan, selection, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    selection: s.selection,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const [picked, setPicked] = useState<ReadonlySet<number>>(new Set());
  const [from, setFrom] = useState<End>({ levelPct: 100, color: '#ffb066' });
  const [to, setTo] = useState<End>({ levelPct: 30, color: '#2a5bd7' });
  const [way, setWay] = useState<GradientWay>('across');
  const units = recordsOf(plan, 'fixture')
    .filter((f) => partCount(plan, f) > 1)
    .sort((a, b) => compareNatural(a.unit, b.unit));
  const chosen = units.filter((f) => selection.has(f.id));
  const main = chosen[0];
  const setup = setupId === undefined ? undefined : recordOf(plan, 'setup', setupId);

  const choose = (id: string, add: boolean): void => {
    const next = new Set(add ? [...selection].filter((x) => units.some((u) => u.id === x)) : []);
    if (add && next.has(id)) next.delete(id);
    else next.add(id);
    if (!add) setPicked(new Set());
    session.set({ selection: next });
  };
  /** The same edit on every chosen unit, as one step. */
  const all = (label: string, edit: (id: string, now: typeof plan) => Result<ChangeSet>): void => {
    let now = session.getState().plan;
    const sets: ChangeSet[] = [];
    for (const f of chosen) {
      const r = edit(f.id, now);
      if (!r.ok) return session.set({ message: problemText(r.error) });
      sets.push(r.value);
      now = session.getState().plan;
    }
    session.set({ message: '' });
    session.commit(label, {
      added: sets.flatMap((c) => c.added),
      updated: sets.flatMap((c) => c.updated),
      removed: sets.flatMap((c) => c.removed),
    });
  };
  const which = picked.size > 0 && chosen.length === 1 ? picked : undefined;
  const off = readOnly || !setup || chosen.length === 0;

  if (units.length === 0)
    return (
      <p className="parts-none soft">
        No unit has parts. Units with parts, such as pixel tubes and bars, show here once they are patched in
        a mode with parts.
      </p>
    );
  if (!setup)
    return (
      <p className="parts-none soft">There is no setup yet. Add one in Day; parts have levels in a setup.</p>
    );
  return (
    <div className="parts">
      <section className="parts-list" aria-label="Units with parts">
        <div className="parts-head">
          <h2>Units with parts</h2>
          <span className="soft">in {setup.name}</span>
        </div>
        <ul>
          {units.map((f) => {
            const own = partsOf(plan, setup.id, f.id);
            const { levelPct, assumed } = levelOf(plan, setup.id, f.id);
            return (
              <li key={f.id}>
                <button
                  type="button"
                  className={`parts-unit${selection.has(f.id) ? ' chosen' : ''}`}
                  aria-pressed={selection.has(f.id)}
                  onClick={(e) => choose(f.id, e.shiftKey || e.ctrlKey || e.metaKey)}
                >
                  <span className="strong">{f.unit}</span>
                  <PartStrip parts={partsNow(plan, setup.id, f.id)} />
                  <span className="num">
                    {Number(levelPct.toFixed(1))} %
                    <span className="soft">{own ? '' : assumed ? ' assumed' : ' all'}</span>
                  </span>
                </button>
              </li>
            );
          })}
        </ul>
      </section>
      <section className="parts-work" aria-label="Parts of the chosen units">
        {main ? (
          <>
            <div className="parts-head">
              <h2>Unit {chosen.map((f) => f.unit).join(', ')}</h2>
              <span className="soft">
                {kindOf(plan, main.kindId)?.name}, {partCount(plan, main)} parts
              </span>
            </div>
            <PartGridView
              key={main.id}
              parts={partsNow(plan, setup.id, main.id)}
              grid={partGrid(kindOf(plan, main.kindId, 'fixture'), partCount(plan, main))}
              picked={which ?? new Set()}
              onPick={setPicked}
            />
            <p className="small soft">
              {which
                ? `${which.size} ${which.size === 1 ? 'part' : 'parts'} chosen. Fill and gradient change these only.`
                : 'Click or drag over parts to change only those; hold Shift to add. Nothing chosen: all parts.'}
            </p>
            <div className="parts-row">
              <Look label="from" value={from} onChange={setFrom} disabled={off} />
              <Look label="to" value={to} onChange={setTo} disabled={off} />
            </div>
            <div className="parts-row">
              <button
                type="button"
                className="button primary"
                disabled={off}
                onClick={() => all('Fill parts', (id, now) => fillParts(now, setup.id, id, from, which))}
              >
                Fill with “from”
              </button>
              <button
                type="button"
                className="button"
                disabled={off}
                onClick={() =>
                  all('Fill parts’ colour', (id, now) =>
                    fillParts(now, setup.id, id, { color: from.color }, which),
                  )
                }
              >
                Colour only
              </button>
              <button
                type="button"
                className="button"
                disabled={off}
                onClick={() =>
                  all('Fill parts’ level', (id, now) =>
                    fillParts(now, setup.id, id, { levelPct: from.levelPct }, which),
                  )
                }
              >
                Level only
              </button>
            </div>
            <div className="parts-row">
              <button
                type="button"
                className="button primary"
                disabled={off}
                onClick={() =>
                  all('Gradient over parts', (id, now) =>
                    gradientParts(now, setup.id, id, from, to, way, which),
                  )
                }
              >
                Gradient
              </button>
              <select
                className="input parts-way"
                aria-label="Way of the gradient"
                value={way}
                onChange={(e) => setWay(e.target.value as GradientWay)}
              >
                {WAYS.map((w) => (
                  <option key={w.id} value={w.id}>
                    {w.words}
                  </option>
                ))}
              </select>
              <button
                type="button"
                className="button"
                disabled={off}
                onClick={() => {
                  setFrom(to);
                  setTo(from);
                }}
              >
                Swap ends
              </button>
            </div>
            <div className="parts-row">
              <button
                type="button"
                className="button"
                disabled={off || chosen.length < 2}
                title="Choose more units with Ctrl or Shift; the first one is copied to the others"
                onClick={() => {
                  const r = copyParts(
                    session.getState().plan,
                    setup.id,
                    main.id,
                    chosen.slice(1).map((f) => f.id),
                  );
                  session.set({ message: r.ok ? '' : problemText(r.error) });
                  if (r.ok) session.commit(`Copy parts of unit ${main.unit}`, r.value);
                }}
              >
                Copy unit {main.unit} to{' '}
                {chosen.length < 2 ? 'the others chosen' : `${chosen.length - 1} others`}
              </button>
              <button
                type="button"
                className="button"
                disabled={off || chosen.every((f) => !partsOf(plan, setup.id, f.id))}
                onClick={() =>
                  session.commit(
                    'Take part levels away',
                    clearParts(
                      session.getState().plan,
                      setup.id,
                      chosen.map((f) => f.id),
                    ),
                  )
                }
              >
                One level for all parts again
              </button>
            </div>
            <p className="small soft">
              The unit as a whole is at the mean of its parts, and its watts follow that. Colour is noted and
              drawn; it is not counted in the watts.
            </p>
          </>
        ) : (
          <p className="parts-none soft">Choose a unit on the left. Ctrl or Shift chooses several.</p>
        )}
      </section>
    </div>
  );
};
