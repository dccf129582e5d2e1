import { poseOf } from '../../editor/handles.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { setFacings, setHeights } from '../../plan/edits/many.ts';
import { planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { AnyRecord, Device, Mark, SetPiece } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { parseDegrees, parseHeight } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useChange } from './rigging-fields.ts';

/** Width of the picture area that a focal length is taken for when none is said: 3-perforation 35 mm film. */
const SENSOR_MM = 24.9;

/** Angle of view across for a focal length on a sensor so wide: 2·atan(width / 2f). */
const viewFor = (focalMm: number, sensorMm: number): number =>
  (2 * Math.atan(sensorMm / (2 * focalMm)) * 180) / Math.PI;

const focalFor = (viewDeg: number): number =>
  SENSOR_MM / (2 * Math.tan((Math.min(179, viewDeg) * Math.PI) / 360));

/** An angle of view as typed: `40°`, or a lens like `35 mm`, `35 mm on 36`. */
export const parseView = (t: string): Result<number> => {
  const s = t.trim().toLowerCase().replaceAll(',', '.');
  const lens = /^(\d+(?:\.\d+)?)\s*mm(?:\s*(?:on|\/)\s*(\d+(?:\.\d+)?)(?:\s*mm)?)?$/.exec(s);
  const deg = lens
    ? viewFor(Number(lens[1]), Number(lens[2] ?? SENSOR_MM))
    : Number(/^(\d+(?:\.\d+)?)\s*°?$/.exec(s)?.[1] ?? Number.NaN);
  return deg > 0 && deg < 175
    ? ok(Math.round(deg * 10) / 10)
    : fail({
        what: `“${t}” is no angle of view.`,
        todo: 'Write degrees like 40, a lens like 35 mm, or a lens on a sensor like 35 mm on 36.',
      });
};

/** Where something faces, and how high it is, for what has no rows of its own for these. */
export const PlotRows = ({ record }: { readonly record: AnyRecord }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const pose = poseOf(plan, record.id);
  const turns = record.type !== 'fixture' && (record.type !== 'mark' || record.what !== 'note');
  const high = record.type === 'device' || record.type === 'outlet' || record.type === 'setPiece';
  if (!pose) return null;
  return (
    <>
      {high ? (
        <Field
          label="Height"
          value={record.heightMm}
          format={(mm) => formatLength(mm, units)}
          parse={(t) => parseHeight(t, units)}
          disabled={readOnly || (record.type === 'device' && isCarried(record))}
          hint={record.type === 'device' && isCarried(record) ? 'of what carries it' : undefined}
          onCommit={(mm) => session.commit('Change height', setHeights(plan, [record.id], mm))}
        />
      ) : null}
      {turns ? (
        <Field
          label="Facing"
          value={pose.facingDeg}
          format={(d) => `${Math.round(d)}°`}
          parse={parseDegrees}
          disabled={readOnly || record.locked === true}
          onCommit={(d) => session.commit('Turn', setFacings(plan, [record.id], d))}
        />
      ) : null}
      {record.type === 'mark' && record.what === 'camera' ? <ViewRow camera={record} /> : null}
      {record.type === 'device' ? <CarriedRow device={record} /> : null}
      {record.type === 'setPiece' ? <PieceRows piece={record} /> : null}
    </>
  );
};

const isCarried = (d: Device): boolean => d.standId !== undefined || d.fixtureId !== undefined;

const ViewRow = ({ camera }: { readonly camera: Mark }) => {
  const readOnly = useSessionSlice((s) => s.readOnly);
  const change = useChange(camera);
  const { viewDeg } = camera;
  return (
    <Field
      label="View"
      value={viewDeg ?? 0}
      format={(d) => (d === 0 ? '' : `${d}°`)}
      parse={parseView}
      disabled={readOnly}
      hint={
        viewDeg ? `${Math.round(focalFor(viewDeg))} mm lens on ${SENSOR_MM} mm` : 'not known: no frame lines'
      }
      onCommit={(d) => change('Change the angle of view', { viewDeg: d })}
    />
  );
};

/** What carries a piece of control gear: a stand or a fixture of its floor, else the floor. */
const CarriedRow = ({ device }: { readonly device: Device }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const change = useChange(device);
  const stands = recordsOf(plan, 'stand').filter((s) => s.floorId === device.floorId);
  const fixtures = recordsOf(plan, 'fixture').filter((f) => f.floorId === device.floorId);
  const onStand = (id: string): string => {
    const unit = fixtures.find((f) => f.support.on === 'stand' && f.support.standId === id);
    return unit ? `the stand of unit ${unit.unit}` : `a stand at ${short(id)}`;
  };
  const short = (id: string): string => {
    const at = recordOf(plan, 'stand', id)?.at;
    const { lengthUnits } = planRecord(plan);
    return at ? `${formatLength(at.xMm, lengthUnits)}, ${formatLength(at.yMm, lengthUnits)}` : '';
  };
  return (
    <Row label="On">
      <select
        className="inline-input"
        aria-label="Carried by"
        disabled={readOnly}
        value={device.fixtureId ?? device.standId ?? ''}
        onChange={(e) => {
          const id = e.target.value;
          const at = poseOf(session.getState().plan, device.id)?.center ?? device.at;
          const fixtureId = recordOf(plan, 'fixture', id) ? id : undefined;
          const standId = recordOf(plan, 'stand', id) ? id : undefined;
          change('Change what carries it', { at, fixtureId, standId });
        }}
      >
        <option value="">the floor, a table or a wall</option>
        {stands.map((s) => (
          <option key={s.id} value={s.id}>
            {onStand(s.id)}
          </option>
        ))}
        {fixtures.map((f) => (
          <option key={f.id} value={f.id}>
            unit {f.unit}
          </option>
        ))}
      </select>
    </Row>
  );
};

const PieceRows = ({ piece }: { readonly piece: SetPiece }) => {
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const change = useChange(piece);
  const units = planRecord(plan).lengthUnits;
  const o = piece.outline;
  if (o.shape === 'polygon') return null;
  const size = (label: string, mm: number, field: 'lengthMm' | 'widthMm') => (
    <Field
      label={label}
      value={mm}
      format={(v) => formatLength(v, units)}
      parse={(t) => {
        const r = parseLengthMm(t, units);
        return r.ok && r.value < 1 ? fail({ what: 'It needs a size above 0.' }) : r;
      }}
      disabled={readOnly}
      onCommit={(v) => change(`Change ${label.toLowerCase()}`, { outline: { ...o, [field]: v } })}
    />
  );
  return (
    <>
      {size('Length', o.lengthMm, 'lengthMm')}
      {size('Width', o.widthMm, 'widthMm')}
    </>
  );
};
