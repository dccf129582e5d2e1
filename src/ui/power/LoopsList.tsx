import { useMemo, useState } from 'react';
import { formatAmps } from '../../kernel/units.ts';
import type { Plan } from '../../plan/plan.ts';
import { explainLoop, type LoopFigure } from '../../report/explain-loop.ts';
import {
  disconnectionHint,
  disconnectionWanted,
  FAULT_CAUTION,
  faultLevels,
  LOOP_UNKNOWN,
} from '../../report/faults.ts';
import { TriedFigure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const ohm = (n: number): string => `${n.toFixed(3)} Ω`;

const figure = (key: string, f: LoopFigure, text: string) => (
  <TriedFigure working={(plan) => explainLoop(plan, key, f)}>{text}</TriedFigure>
);

/** A short at the end of each run: its loop, the current it would draw, and what opens. Reckoned when it is opened. */
export const LoopsList = () => {
  const [open, setOpen] = useState(false);
  const plan = useSessionSlice((s) => s.plan);
  return (
    <details onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>A short at the end of each run: loops and fault currents</summary>
      {open ? <Loops plan={plan} /> : null}
    </details>
  );
};

const Loops = ({ plan }: { readonly plan: Plan }) => {
  const { session } = useServices();
  const rows = useMemo(
    () => faultLevels(plan).map((l) => ({ ...l, hint: disconnectionHint(plan, l, true) })),
    [plan],
  );
  if (rows.length === 0) return <p className="soft">No run of this plan is computed.</p>;
  return (
    <>
      {rows.some((l) => l.loopOhm === undefined) ? (
        <p className="soft">{LOOP_UNKNOWN} Where there is a dash, it is not in the plan.</p>
      ) : null}
      <table className="table power-table power-fit">
        <thead>
          <tr>
            <th scope="col">Run</th>
            <th scope="col" className="num">
              Runs alone
            </th>
            <th scope="col" className="num">
              Loop
            </th>
            <th scope="col" className="num">
              Fault current
            </th>
            <th scope="col">What opens</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((l) => (
            <tr key={l.key}>
              <th scope="row">
                <button
                  type="button"
                  className="link"
                  onClick={() => session.set({ selection: new Set([l.key.split('#')[0] ?? l.key]) })}
                >
                  {l.label}
                </button>
              </th>
              <td className="num">{figure(l.key, 'runsOhm', ohm(l.runsOhm))}</td>
              <td className="num">
                {l.loopOhm === undefined ? '–' : figure(l.key, 'loopOhm', ohm(l.loopOhm))}
              </td>
              <td className="num">
                {l.faultA === undefined ? '–' : figure(l.key, 'faultA', formatAmps(l.faultA))}
              </td>
              <td>
                <TriedFigure className="link power-why" working={(p) => explainLoop(p, l.key, 'opens')}>
                  {l.hint}
                </TriedFigure>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft">{disconnectionWanted(plan)}</p>
      <p className="soft">{FAULT_CAUTION}</p>
    </>
  );
};
