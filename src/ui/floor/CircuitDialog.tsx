import { useState } from 'react';
import { legNames, systemShape } from '../../derive/systems.ts';
import { wallNear } from '../../editor/wall-near.ts';
import { problemText } from '../../kernel/result.ts';
import { applyChanges, compose } from '../../plan/change-set.ts';
import { addCircuit, addSourceWithCircuit } from '../../plan/edits/circuits.ts';
import { addOutlet } from '../../plan/edits/outlets.ts';
import type { SourceKind } from '../../plan/kinds/kinds.ts';
import { kindOf, planRecord, recordsOf } from '../../plan/plan.ts';
import { waysOf } from '../../plan/ports.ts';
import { readWayDevice, wayDeviceText } from '../../plan/way-device.ts';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';

/** How far from a wall a press still meant the wall. */
const OUTLET_REACH_MM = 600;

const isHouse = (k: SourceKind | undefined): k is SourceKind =>
  k?.what === 'house-panel' || k?.what === 'wall-circuit';

/** A breaker as read off the panel, on a source of the plan or on a new one. The next outlets hang on it. */
export const CircuitDialog = () => {
  const { session, book } = useServices();
  const { plan, floorId } = useSessionSlice((s) => ({ plan: s.plan, floorId: s.floorId }));
  const practice = planRecord(plan).practice;
  const sources = recordsOf(plan, 'source').filter(
    (s) => kindOf(plan, s.kindId, 'source')?.what === 'house-panel',
  );
  const kinds = book.kinds().flatMap((k) => (k.family === 'source' && isHouse(k) ? [k] : []));
  const [on, setOn] = useState<string>(sources[0]?.id ?? kinds[0]?.slug ?? '');
  const [label, setLabel] = useState('');
  const [amps, setAmps] = useState(practice === 'europe' ? '16' : '20');
  const [leg, setLeg] = useState(0);
  const [typed, setTyped] = useState<string>();
  const [problem, setProblem] = useState('');
  const source = sources.find((s) => s.id === on);
  const kind = source ? kindOf(plan, source.kindId, 'source') : kinds.find((k) => k.slug === on);
  const legs = kind && kind.what === 'house-panel' ? (systemShape(kind.system)?.legs ?? 1) : 1;
  const [own] = source ? [] : (kind?.ways ?? []);
  const device = typed ?? (own ? wayDeviceText(own) : practice === 'europe' ? 'B' : '');
  const next = source ? String(waysOf(plan, source.id).length + 1) : '1';

  const add = (): void => {
    const breakerA = Number(amps.replace(/a(mps?)?$/i, '').trim());
    if (!(breakerA > 0 && breakerA <= 1200))
      return setProblem(`“${amps}” is not a breaker rating. Write what is printed on it, like 20.`);
    const read = readWayDevice(device);
    if (!read.ok) return setProblem(problemText(read.error));
    const { camera } = session.getState();
    const circuit = {
      label: label.trim() || next,
      breakerA,
      leg: Math.min(leg, legs - 1),
      device: read.value,
    };
    if (!kind || floorId === undefined) return setProblem('Choose what the circuit hangs on.');
    const spot = session.getState().floorView.askAt ?? camera.center;
    const at = { xMm: Math.round(spot.xMm), yMm: Math.round(spot.yMm) };
    const made = source
      ? addCircuit(plan, source.id, circuit)
      : addSourceWithCircuit(plan, { kind, floorId, at }, circuit, session.newId);
    // The outlet that was pressed for comes along, in the same step.
    const { outletAt } = session.getState().floorView;
    const withCircuit = applyChanges(plan, made.changes);
    const outlet = outletAt
      ? addOutlet(
          withCircuit,
          {
            sourceId: made.sourceId,
            wayId: made.wayId,
            floorId,
            at: outletAt,
            wall: wallNear(plan, floorId, outletAt, OUTLET_REACH_MM),
          },
          session.newId,
        )
      : undefined;
    session.commit(
      `Add circuit ${circuit.label}`,
      outlet ? compose(made.changes, outlet.changes) : made.changes,
    );
    session.set({
      ...(outlet ? { selection: new Set([outlet.outlet.id]) } : {}),
      floorView: {
        ...session.getState().floorView,
        ask: undefined,
        askAt: undefined,
        outletAt: undefined,
        circuit: { sourceId: made.sourceId, wayId: made.wayId },
      },
      message: `${outlet ? `Placed wall outlet ${outlet.outlet.label}. ` : ''}The next wall outlets hang on circuit ${circuit.label}.${
        source ? '' : ' Drag its panel to where it is.'
      }`,
    });
  };

  return (
    <Modal title="New circuit" open onClose={() => closeAsk(session)}>
      <form
        className="ask-form"
        onSubmit={(e) => {
          e.preventDefault();
          add();
        }}
      >
        <label>
          On
          <select className="input" value={on} onChange={(e) => setOn(e.target.value)}>
            {sources.map((s) => (
              <option key={s.id} value={s.id}>
                panel {s.label}
              </option>
            ))}
            {kinds.map((k) => (
              <option key={k.slug} value={k.slug}>
                new: {k.name}
              </option>
            ))}
          </select>
        </label>
        <label>
          Name or number
          <input
            className="input"
            value={label}
            placeholder={next}
            onChange={(e) => setLabel(e.target.value)}
          />
        </label>
        <label>
          Breaker, amperes
          <input className="input" value={amps} onChange={(e) => setAmps(e.target.value)} />
        </label>
        <label>
          Curve and residual-current device, as printed
          <input
            className="input"
            value={device}
            placeholder={practice === 'europe' ? 'like C 30 mA A' : 'none, or like 5 mA'}
            onChange={(e) => setTyped(e.target.value)}
          />
        </label>
        {kind && legs > 1 ? (
          <label>
            Leg, as read off the panel
            <select className="input" value={leg} onChange={(e) => setLeg(Number(e.target.value))}>
              {Array.from({ length: legs }, (_, i) => (
                <option key={i} value={i}>
                  {legNames(practice, kind.system, [i])}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        {problem ? (
          <p className="field-error" role="alert">
            {problem}
          </p>
        ) : null}
        <button type="submit" className="button primary">
          Add the circuit
        </button>
      </form>
    </Modal>
  );
};
