import { useState } from 'react';
import { problemText } from '../../kernel/result.ts';
import { parseLengthMm } from '../../kernel/units.ts';
import { repeatRecords } from '../../plan/edits/repeat.ts';
import { planRecord } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';

const MOST = 500;

/** Copies of the selection in a row or a grid, evenly spaced. */
export const RowDialog = () => {
  const { session } = useServices();
  const { plan, selection } = useSessionSlice((s) => ({ plan: s.plan, selection: s.selection }));
  const units = planRecord(plan).lengthUnits;
  const usual = units === 'imperial' ? `4'` : '1.2';
  const [across, setAcross] = useState('4');
  const [down, setDown] = useState('1');
  const [acrossGap, setAcrossGap] = useState(usual);
  const [downGap, setDownGap] = useState(usual);
  const [problem, setProblem] = useState('');

  const add = (): void => {
    const [a, d] = [Number(across), Number(down)];
    if (!(Number.isInteger(a) && Number.isInteger(d) && a >= 1 && d >= 1 && a * d > 1 && a * d <= MOST))
      return setProblem(`How many is a whole number each way, 2 to ${MOST} in all.`);
    const gaps = [acrossGap, downGap].map((t) => parseLengthMm(t, units));
    const wrong = gaps.find((g) => !g.ok);
    if (wrong && !wrong.ok) return setProblem(problemText(wrong.error));
    const [acrossMm = 0, downMm = 0] = gaps.map((g) => (g.ok ? g.value : 0));
    const { changes, copies } = repeatRecords(
      plan,
      selection,
      { across: a, down: d, acrossMm, downMm },
      session.newId,
    );
    if (copies.size === 0)
      return setProblem('Cables and wall outlets are not repeated: run or place new ones.');
    session.commit(d === 1 || a === 1 ? 'Repeat in a row' : 'Repeat in a grid', changes);
    session.set({ selection: new Set([...selection, ...copies]) });
    closeAsk(session);
  };

  const field = (label: string, value: string, set: (v: string) => void, first = false) => (
    <label>
      {label}
      <input
        className="input"
        value={value}
        ref={first ? focusOnce : undefined}
        onChange={(e) => set(e.target.value)}
      />
    </label>
  );
  return (
    <Modal title="Repeat in a row or grid" open onClose={() => closeAsk(session)}>
      <form
        className="ask-form"
        onSubmit={(e) => {
          e.preventDefault();
          add();
        }}
      >
        <p className="soft">What is selected is the first one; the copies get the next free numbers.</p>
        {field('How many across', across, setAcross, true)}
        {field('From one to the next, across', acrossGap, setAcrossGap)}
        {field('How many down', down, setDown)}
        {field('From one to the next, down', downGap, setDownGap)}
        {problem ? (
          <p className="field-error" role="alert">
            {problem}
          </p>
        ) : null}
        <button type="submit" className="button primary">
          Repeat
        </button>
      </form>
    </Modal>
  );
};

const focusOnce = (el: HTMLInputElement | null): void => {
  if (el && !el.dataset.met) {
    el.dataset.met = 'yes';
    el.focus();
    el.select();
  }
};
