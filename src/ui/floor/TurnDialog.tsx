import { useState } from 'react';
import { wordsFor } from '../../editor/words.ts';
import type { Point } from '../../kernel/geometry.ts';
import { ok, problemText, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { rotateAbout, selectionCentre } from '../../plan/edits/align.ts';
import { planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { parseTurn } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';
import { focusOnce } from './focus.ts';

/** Turns the selection as a whole about its middle, a mark or any spot. */
export const TurnDialog = () => {
  const { session } = useServices();
  const { plan, selection, floorId } = useSessionSlice((s) => ({
    plan: s.plan,
    selection: s.selection,
    floorId: s.floorId,
  }));
  const units = planRecord(plan).lengthUnits;
  const middle = selectionCentre(plan, selection) ?? { xMm: 0, yMm: 0 };
  const marks = recordsOf(plan, 'mark').filter((m) => m.floorId === floorId && m.what !== 'note');
  const [deg, setDeg] = useState('90');
  const [about, setAbout] = useState('middle');
  const [across, setAcross] = useState(formatLength(middle.xMm, units));
  const [down, setDown] = useState(formatLength(middle.yMm, units));
  const [problem, setProblem] = useState('');

  const centre = (): Result<Point> => {
    if (about === 'middle') return ok(middle);
    const mark = recordOf(plan, 'mark', about);
    if (mark) return ok(mark.at);
    const [x, y] = [parseLengthMm(across, units), parseLengthMm(down, units)];
    if (!x.ok) return x;
    if (!y.ok) return y;
    return ok({ xMm: x.value, yMm: y.value });
  };
  const turn = (): void => {
    const [by, at] = [parseTurn(deg), centre()];
    if (!by.ok) return setProblem(problemText(by.error));
    if (!at.ok) return setProblem(problemText(at.error));
    session.commit(`Turn ${wordsFor(plan, selection)}`, rotateAbout(plan, selection, at.value, by.value));
    closeAsk(session);
  };

  const field = (label: string, value: string, set: (v: string) => void, first = false) => (
    <label>
      {label}
      <input
        className="input"
        value={value}
        ref={first ? focusOnce : undefined}
        onChange={(e) => {
          setProblem('');
          set(e.target.value);
        }}
      />
    </label>
  );
  return (
    <Modal title={`Turn ${wordsFor(plan, selection)} together`} open aside onClose={() => closeAsk(session)}>
      <form
        className="ask-form"
        onSubmit={(e) => {
          e.preventDefault();
          turn();
        }}
      >
        {field('By, degrees clockwise', deg, setDeg, true)}
        <label>
          About
          <select className="input" value={about} onChange={(e) => setAbout(e.target.value)}>
            <option value="middle">the middle of what is selected</option>
            {marks.map((m) => (
              <option key={m.id} value={m.id}>
                {m.name}
              </option>
            ))}
            <option value="spot">a spot by number</option>
          </select>
        </label>
        {about === 'spot' ? (
          <div className="ask-side">
            {field('Across', across, setAcross)}
            {field('Down', down, setDown)}
          </div>
        ) : null}
        {problem ? (
          <p className="field-error" role="alert">
            {problem}
          </p>
        ) : null}
        <button type="submit" className="button primary">
          Turn
        </button>
      </form>
    </Modal>
  );
};
