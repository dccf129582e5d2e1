import { useState } from 'react';
import { ok, problemText } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { addFloor, countOn, removeFloor, reorderFloor } from '../../plan/edits/floors.ts';
import { floorBeneath, floorsOf } from '../../plan/floors.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import type { Floor } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { parseDegrees, parseHeight, requiredText, text } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { Panel } from './Panel.tsx';
import './scout.css';

/** The floors of the plan: which one is drawn, its level and ceiling, and which one shows faintly beneath it. */
export const FloorsPanel = () => {
  const { session } = useServices();
  const { plan, floorId, beneath, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    floorId: s.floorId,
    beneath: s.floorView.beneath,
    readOnly: s.readOnly,
  }));
  const [name, setName] = useState('');
  const [walls, setWalls] = useState(false);
  const floors = floorsOf(plan);
  const here = floorId === undefined ? undefined : recordOf(plan, 'floor', floorId);
  const show = (id: string): void => {
    const under = session.getState().floorView.beneath;
    session.set({
      floorId: id,
      selection: new Set(),
      floorView: {
        ...session.getState().floorView,
        beneath: under === undefined ? undefined : floorBeneath(plan, id)?.id,
      },
    });
  };
  const see = (id: string | undefined): void =>
    session.set({ floorView: { ...session.getState().floorView, beneath: id } });
  const add = (): void => {
    const made = addFloor(plan, { name, wallsOf: walls ? floorId : undefined }, session.newId);
    session.commit(`Add floor ${made.floor.name}`, made.changes);
    session.set({
      floorId: made.floor.id,
      selection: new Set(),
      floorView: { ...session.getState().floorView, beneath: floorId },
      message: `Floor ${made.floor.name} is there. The one beneath shows faintly.`,
    });
    setName('');
  };
  return (
    <Panel
      title={`Floors${floors.length > 1 && here ? `: ${here.name} (${floors.indexOf(here) + 1} of ${floors.length})` : ''}`}
    >
      {() => (
        <>
          <ul className="scout-list">
            {floors.map((f, i) => (
              <FloorLine
                key={f.id}
                floor={f}
                shown={f.id === floorId}
                readOnly={readOnly}
                first={i === 0}
                last={i === floors.length - 1}
                onShow={() => show(f.id)}
              />
            ))}
          </ul>
          {here ? <FloorRows floor={here} readOnly={readOnly} /> : null}
          {floors.length > 1 ? (
            <div className="scout-rows">
              <Row label="Beneath">
                <select
                  className="inline-input"
                  aria-label="Floor that shows faintly beneath"
                  value={beneath ?? ''}
                  onChange={(e) => see(e.target.value || undefined)}
                >
                  <option value="">none</option>
                  {floors
                    .filter((f) => f.id !== floorId)
                    .map((f) => (
                      <option key={f.id} value={f.id}>
                        {f.name}
                      </option>
                    ))}
                </select>
              </Row>
            </div>
          ) : null}
          <form
            className="views-new"
            onSubmit={(e) => {
              e.preventDefault();
              add();
            }}
          >
            <input
              className="input"
              aria-label="Name of the new floor"
              placeholder="Name"
              value={name}
              disabled={readOnly}
              onChange={(e) => setName(e.target.value)}
            />
            <button type="submit" className="button" disabled={readOnly}>
              Add a floor
            </button>
          </form>
          <label className="scout-foot">
            <input type="checkbox" checked={walls} onChange={(e) => setWalls(e.target.checked)} />
            with the walls of this one
          </label>
        </>
      )}
    </Panel>
  );
};

const FloorLine = ({
  floor: f,
  shown,
  readOnly,
  first,
  last,
  onShow,
}: {
  readonly floor: Floor;
  readonly shown: boolean;
  readonly readOnly: boolean;
  readonly first: boolean;
  readonly last: boolean;
  readonly onShow: () => void;
}) => {
  const { session } = useServices();
  const { plan } = useSessionSlice((s) => ({ plan: s.plan }));
  const units = planRecord(plan).lengthUnits;
  const remove = (): void => {
    const n = countOn(plan, f.id);
    const r = removeFloor(plan, f.id);
    if (!r.ok) return session.set({ message: problemText(r.error) });
    session.commit(`Delete floor ${f.name}`, r.value);
    session.set({ message: `Floor ${f.name} with ${n} things on it deleted. Undo brings it back.` });
  };
  return (
    <li className="scout-line" data-chosen={shown}>
      <button type="button" className="link scout-name" aria-pressed={shown} onClick={onShow}>
        {f.name}
      </button>
      <span className="row-hint">{formatLength(f.levelMm, units)}</span>
      <button
        type="button"
        className="link soft"
        disabled={readOnly || first}
        aria-label={`Move floor ${f.name} up in the list`}
        onClick={() => session.commit('Reorder floors', reorderFloor(plan, f.id, -1))}
      >
        ↑
      </button>
      <button
        type="button"
        className="link soft"
        disabled={readOnly || last}
        aria-label={`Move floor ${f.name} down in the list`}
        onClick={() => session.commit('Reorder floors', reorderFloor(plan, f.id, 1))}
      >
        ↓
      </button>
      <button
        type="button"
        className="link soft"
        disabled={readOnly}
        aria-label={`Delete floor ${f.name}`}
        onClick={remove}
      >
        delete
      </button>
    </li>
  );
};

const FloorRows = ({ floor, readOnly }: { readonly floor: Floor; readonly readOnly: boolean }) => {
  const { session } = useServices();
  const { plan } = useSessionSlice((s) => ({ plan: s.plan }));
  const units = planRecord(plan).lengthUnits;
  const edit = (label: string, next: Floor): void => {
    const r = changeRecord(plan, next, {});
    if (r.ok) session.commit(label, r.value);
  };
  return (
    <div className="scout-rows">
      <Field
        label="Name"
        value={floor.name}
        format={text}
        parse={requiredText}
        disabled={readOnly}
        onCommit={(name) => edit('Rename floor', { ...floor, name })}
      />
      <Field
        label="Level"
        value={floor.levelMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => parseLengthMm(t, units)}
        disabled={readOnly}
        onCommit={(levelMm) => edit('Change level', { ...floor, levelMm })}
      />
      <Field
        label="Ceiling"
        value={floor.ceilingMm}
        format={(mm) => (mm === undefined ? '' : formatLength(mm, units))}
        parse={(t) => (t.trim() === '' ? ok(undefined) : parseHeight(t, units))}
        hint={floor.ceilingMm === undefined ? 'empty: not known' : ''}
        disabled={readOnly}
        onCommit={(ceilingMm) => {
          const { ceilingMm: _old, ...bare } = floor;
          edit('Change ceiling', ceilingMm === undefined ? bare : { ...bare, ceilingMm });
        }}
      />
      <Field
        label="North"
        value={floor.northDeg}
        format={(v) => `${Math.round(v)}°`}
        parse={parseDegrees}
        hint="0° right, 90° down, 270° up"
        disabled={readOnly}
        onCommit={(northDeg) => edit('Turn north', { ...floor, northDeg })}
      />
    </div>
  );
};
