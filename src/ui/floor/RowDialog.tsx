import { useEffect, useMemo, useState } from 'react';
import type { NewId } from '../../kernel/ids.ts';
import { fail, ok, problemText, type Result } from '../../kernel/result.ts';
import { parseLengthMm } from '../../kernel/units.ts';
import { arcPlaces, type CopyPlace, linePlaces, netPlaces, repeatAt } from '../../plan/edits/repeat.ts';
import { planRecord } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { parseTurn } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';
import { focusOnce } from './focus.ts';

const MOST = 500;
/** While the dialog is open that many copies are shown at most. */
const MOST_SHOWN = 80;

type Shape = 'net' | 'line' | 'arc';

const count = (t: string): number => (/^\d+$/.test(t.trim()) ? Number(t.trim()) : 0);

/** Copies of the selection in a row, a grid, along a line or on an arc, evenly spaced, shown while it is asked. */
export const RowDialog = () => {
  const { session } = useServices();
  const { plan, selection } = useSessionSlice((s) => ({ plan: s.plan, selection: s.selection }));
  const units = planRecord(plan).lengthUnits;
  const usual = units === 'imperial' ? `4'` : '1.2';
  const wide = units === 'imperial' ? `12'` : '3.6';
  const [shape, setShape] = useState<Shape>('net');
  const [across, setAcross] = useState('4');
  const [down, setDown] = useState('1');
  const [acrossGap, setAcrossGap] = useState(usual);
  const [downGap, setDownGap] = useState(usual);
  const [length, setLength] = useState(wide);
  const [deg, setDeg] = useState('0');
  const [radius, setRadius] = useState(units === 'imperial' ? `8'` : '2.4');
  const [towards, setTowards] = useState('0');
  const [sweep, setSweep] = useState('90');
  const [turns, setTurns] = useState(true);
  const [problem, setProblem] = useState('');

  const places = useMemo((): Result<readonly CopyPlace[]> => {
    const mm = (t: string): Result<number> => parseLengthMm(t, units);
    const [a, d] = [count(across), shape === 'net' ? count(down) : 1];
    if (a < 1 || d < 1 || a * d < 2 || a * d > MOST)
      return fail({
        what: shape === 'net' ? 'How many is a whole number each way.' : 'How many is a whole number.',
        todo: `2 to ${MOST} in all.`,
      });
    if (shape === 'net') {
      const [x, y] = [mm(acrossGap), mm(downGap)];
      if (!x.ok) return x;
      if (!y.ok) return y;
      return ok(netPlaces({ across: a, down: d, acrossMm: x.value, downMm: y.value }));
    }
    if (shape === 'line') {
      const [l, way] = [mm(length), parseTurn(deg)];
      if (!l.ok) return l;
      if (!way.ok) return way;
      return ok(linePlaces(a, l.value, way.value));
    }
    const [r, way, turn] = [mm(radius), parseTurn(towards), parseTurn(sweep)];
    if (!r.ok) return r;
    if (!way.ok) return way;
    if (!turn.ok) return turn;
    if (r.value <= 0) return fail({ what: 'An arc needs a radius.', todo: 'Write a length above 0.' });
    return ok(arcPlaces({ count: a, radiusMm: r.value, towardsDeg: way.value, sweepDeg: turn.value, turns }));
  }, [shape, across, down, acrossGap, downGap, length, deg, radius, towards, sweep, turns, units]);

  useEffect(() => {
    let n = 0;
    const ghosts: NewId = (prefix) => `ghost-${prefix}-${n++}`;
    const shown = places.ok ? places.value.slice(0, MOST_SHOWN) : [];
    session.set({
      preview: shown.length > 0 ? repeatAt(plan, selection, shown, ghosts).changes : undefined,
    });
    return () => session.set({ preview: undefined });
  }, [session, plan, selection, places]);

  const add = (): void => {
    if (!places.ok) return setProblem(problemText(places.error));
    const { changes, copies } = repeatAt(plan, selection, places.value, session.newId);
    if (copies.size === 0)
      return setProblem('Cables and wall outlets are not repeated: run or place new ones.');
    const words = {
      net: count(down) === 1 || count(across) === 1 ? 'in a row' : 'in a grid',
      line: 'along a line',
      arc: 'on an arc',
    }[shape];
    session.commit(`Repeat ${words}`, changes);
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
        onChange={(e) => {
          setProblem('');
          set(e.target.value);
        }}
      />
    </label>
  );
  const wrong = problem || (places.ok ? '' : problemText(places.error));
  return (
    <Modal title="Repeat in a row, grid, line or arc" open aside onClose={() => closeAsk(session)}>
      <form
        className="ask-form"
        onSubmit={(e) => {
          e.preventDefault();
          add();
        }}
      >
        <p className="soft">What is selected is the first one; the copies get the next free numbers.</p>
        <label>
          Shape
          <select className="input" value={shape} onChange={(e) => setShape(e.target.value as Shape)}>
            <option value="net">row or grid</option>
            <option value="line">along a line</option>
            <option value="arc">arc or circle</option>
          </select>
        </label>
        {shape === 'net' ? (
          <>
            {field('How many across', across, setAcross, true)}
            {field('From one to the next, across', acrossGap, setAcrossGap)}
            {field('How many down', down, setDown)}
            {field('From one to the next, down', downGap, setDownGap)}
          </>
        ) : (
          field('How many in all', across, setAcross)
        )}
        {shape === 'line' ? (
          <>
            {field('From the first to the last', length, setLength)}
            {field('Direction, degrees clockwise from the right', deg, setDeg)}
          </>
        ) : null}
        {shape === 'arc' ? (
          <>
            {field('Radius', radius, setRadius)}
            {field('The middle lies towards, degrees clockwise from the right', towards, setTowards)}
            {field('From the first to the last, degrees (360 is a circle)', sweep, setSweep)}
            <label className="ask-check">
              <input type="checkbox" checked={turns} onChange={(e) => setTurns(e.target.checked)} />
              each is turned along with the arc
            </label>
          </>
        ) : null}
        {wrong ? (
          <p className="field-error" role="alert">
            {wrong}
          </p>
        ) : null}
        <button type="submit" className="button primary" disabled={!places.ok}>
          Repeat
        </button>
      </form>
    </Modal>
  );
};
