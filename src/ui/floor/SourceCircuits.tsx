import { useState } from 'react';
import { legNames } from '../../derive/systems.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { addOutlet, changeCircuit } from '../../plan/edits/outlets.ts';
import { kindOf, planRecord } from '../../plan/plan.ts';
import { waysOf } from '../../plan/ports.ts';
import type { Source } from '../../plan/records/index.ts';
import { readWayDevice, wayDeviceText } from '../../plan/way-device.ts';
import { Field } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** The circuits of a house panel or wall circuit: breaker as read off the panel, and the outlets that hang on them. */
export const SourceCircuits = ({ source }: { readonly source: Source }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const ways = waysOf(plan, source.id);
  const [wayId, setWayId] = useState(ways[0]?.id ?? '');
  const kind = kindOf(plan, source.kindId, 'source');
  const way = ways.find((w) => w.id === wayId);
  if (!kind || (kind.what !== 'house-panel' && kind.what !== 'wall-circuit')) return null;

  const place = (): void => {
    const { camera, floorId } = session.getState();
    if (!floorId || !way) return;
    const made = addOutlet(
      plan,
      { sourceId: source.id, wayId: way.id, floorId, at: camera.center },
      session.newId,
    );
    session.commit(`Add wall outlet ${made.outlet.label}`, made.changes);
    session.set({ selection: new Set([made.outlet.id]), message: 'Drag the outlet to its wall.' });
  };

  return (
    <>
      <h3 className="inspector-head">Circuits, as read off the panel</h3>
      <div className="row">
        <label className="row-label" htmlFor="circuit-choice">
          Circuit
        </label>
        <div className="row-value">
          <select
            id="circuit-choice"
            className="inline-input"
            value={wayId}
            onChange={(e) => setWayId(e.target.value)}
          >
            {ways.map((w) => (
              <option key={w.id} value={w.id}>
                {w.label} · {w.breakerA} A · leg {legNames(planRecord(plan).practice, kind.system, w.legs)}
              </option>
            ))}
          </select>
        </div>
      </div>
      {way ? (
        <>
          <Field
            label="Name"
            value={way.label}
            format={(s) => s}
            parse={(s) => (s.trim() ? ok(s.trim()) : fail({ what: 'A circuit needs a number or a name.' }))}
            disabled={readOnly}
            onCommit={(label) =>
              session.commit('Rename circuit', changeCircuit(plan, source.id, way.id, { label }))
            }
          />
          <Field
            label="Breaker"
            value={way.breakerA}
            format={(a) => `${a} A`}
            parse={parseAmps}
            disabled={readOnly}
            onCommit={(breakerA) =>
              session.commit('Change breaker', changeCircuit(plan, source.id, way.id, { breakerA }))
            }
          />
          <Field
            label="Device"
            value={wayDeviceText(way)}
            format={(s) => s || 'none'}
            parse={(s) => {
              const device = readWayDevice(s);
              return device.ok ? ok(wayDeviceText(device.value)) : device;
            }}
            disabled={readOnly}
            onCommit={(s) => {
              const device = readWayDevice(s);
              if (device.ok)
                session.commit(
                  'Change device',
                  changeCircuit(plan, source.id, way.id, { device: device.value }),
                );
            }}
          />
          <p>
            <button type="button" className="button" disabled={readOnly} onClick={place}>
              Add wall outlet
            </button>
          </p>
        </>
      ) : null}
    </>
  );
};

const parseAmps = (t: string): Result<number> => {
  const n = Number(t.replace(/a(mps?)?$/i, '').trim());
  return n > 0 && n <= 1200
    ? ok(n)
    : fail({ what: `“${t}” is not a breaker rating.`, todo: 'Write what is printed on it, like 20.' });
};
