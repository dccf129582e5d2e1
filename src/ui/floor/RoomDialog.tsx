import { useState } from 'react';
import { fitFloor } from '../../editor/fit-floor.ts';
import { type Problem, problemText, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { addRoom } from '../../plan/edits/walls.ts';
import { planRecord, recordsOf } from '../../plan/plan.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';

/** A rectangular room from its inside length and width. */
export const RoomDialog = () => {
  const { session } = useServices();
  const { plan, floorId, floorView } = useSessionSlice((s) => ({
    plan: s.plan,
    floorId: s.floorId,
    floorView: s.floorView,
  }));
  const units = planRecord(plan).lengthUnits;
  const [length, setLength] = useState('');
  const [width, setWidth] = useState('');
  const [height, setHeight] = useState(formatLength(floorView.wall.heightMm, units));
  const [problem, setProblem] = useState<Problem | undefined>(undefined);

  const add = (): void => {
    const read: readonly Result<number>[] = [length, width, height].map((t) => parseLengthMm(t, units));
    const wrong = read.find((r) => !r.ok);
    if (wrong && !wrong.ok) return setProblem(wrong.error);
    const [lengthMm = 0, widthMm = 0, heightMm = 0] = read.map((r) => (r.ok ? r.value : 0));
    if (floorId === undefined) return;
    const { camera } = session.getState();
    const empty = !recordsOf(plan, 'wall').some((w) => w.floorId === floorId);
    const round = (mm: number): number => Math.round(mm / 10) * 10;
    const at = empty
      ? { xMm: 0, yMm: 0 }
      : { xMm: round(camera.center.xMm - lengthMm / 2), yMm: round(camera.center.yMm - widthMm / 2) };
    const { along: _along, ...look } = floorView.wall;
    const made = addRoom(
      plan,
      { floorId, at, lengthMm, widthMm, look: { ...look, heightMm } },
      session.newId,
    );
    if (!made.ok) return setProblem(made.error);
    session.commit('Add a room', made.value.changes);
    session.set({
      selection: new Set(made.value.wallIds),
      message: 'The room is there. Drag it, or draw on from it.',
    });
    const fitted = fitFloor(session.getState());
    if (fitted) session.set({ camera: fitted });
    closeAsk(session);
  };

  return (
    <Modal title="Rectangular room" open onClose={() => closeAsk(session)}>
      <form
        className="ask-form"
        onSubmit={(e) => {
          e.preventDefault();
          add();
        }}
      >
        <p className="soft">Inside measures, from wall to wall.</p>
        <label>
          Length
          <input
            className="input"
            ref={(el) => el?.focus()}
            value={length}
            placeholder={units === 'imperial' ? `24' 6"` : '7.5'}
            onChange={(e) => setLength(e.target.value)}
          />
        </label>
        <label>
          Width
          <input
            className="input"
            value={width}
            placeholder={units === 'imperial' ? `18'` : '5.5'}
            onChange={(e) => setWidth(e.target.value)}
          />
        </label>
        <label>
          Wall height
          <input className="input" value={height} onChange={(e) => setHeight(e.target.value)} />
        </label>
        {problem ? (
          <p className="field-error" role="alert">
            {problemText(problem)}
          </p>
        ) : null}
        <button type="submit" className="button primary">
          Add the room
        </button>
      </form>
    </Modal>
  );
};
