import { fail, ok, type Result } from '../../kernel/result.ts';
import { beamDegOf, takesDoors } from '../../plan/beam.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { kindOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Doors are put on as wide open as the beam, at least so far. */
const OPEN_DEG = 45;

/** The lens and the barn doors of a unit, where its kind has them. */
export const BeamRows = ({ fixture }: { readonly fixture: Fixture }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const kind = kindOf(plan, fixture.kindId, 'fixture');
  if (!kind || kind.beamDeg === undefined) return null;
  const change = (label: string, patch: Partial<Fixture>): void => {
    const r = changeRecord(plan, fixture, patch);
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };
  const { spot, beamDeg: wideDeg } = kind;
  const now = beamDegOf(kind, fixture) ?? wideDeg;
  const { doors } = fixture;
  const leaf = (label: string, deg: number, side: 'leftDeg' | 'rightDeg') => (
    <Field
      label={label}
      value={deg}
      format={(d) => `${Math.round(d)}°`}
      parse={parseLeaf}
      disabled={readOnly}
      onCommit={(d) => doors && change('Set barn doors', { doors: { ...doors, [side]: d } })}
    />
  );
  const flat = (label: string, deg: number | undefined, side: 'topDeg' | 'bottomDeg') => (
    <Field<number | undefined>
      label={label}
      value={deg}
      format={(d) => (d === undefined ? '' : `${Math.round(d)}°`)}
      parse={(t) => (t.trim() === '' ? ok(undefined) : parseLeaf(t))}
      disabled={readOnly}
      hint={deg === undefined ? 'not said' : undefined}
      onCommit={(d) => {
        if (!doors) return;
        const { [side]: _old, ...rest } = doors;
        change('Set barn doors', { doors: d === undefined ? rest : { ...rest, [side]: d } });
      }}
    />
  );
  return (
    <>
      {spot ? (
        <Field
          label="Beam"
          value={now}
          format={(d) => `${Math.round(d)}°`}
          parse={(t) => parseZoom(t, spot.beamDeg, wideDeg)}
          disabled={readOnly}
          hint={`spot ${Math.round(spot.beamDeg)}° to ${Math.round(wideDeg)}°${fixture.zoomPct === undefined ? ', wide assumed' : ''}`}
          onCommit={(d) =>
            change('Set the zoom', {
              zoomPct: Math.round((1000 * (d - spot.beamDeg)) / (wideDeg - spot.beamDeg || 1)) / 10,
            })
          }
        />
      ) : null}
      {takesDoors(kind) ? (
        <>
          <Row label="Barn doors">
            <label className="state-check">
              <input
                type="checkbox"
                disabled={readOnly}
                checked={doors !== undefined}
                onChange={(e) => {
                  const { doors: _off, ...bare } = fixture;
                  const open = Math.max(OPEN_DEG, Math.round(now / 2));
                  if (e.target.checked)
                    change('Put on barn doors', { doors: { leftDeg: open, rightDeg: open } });
                  else
                    session.commit('Take off barn doors', {
                      added: [],
                      updated: [{ from: fixture, to: bare }],
                      removed: [],
                    });
                }}
              />
              on
            </label>
          </Row>
          {doors ? (
            <>
              {leaf('Left leaf', doors.leftDeg, 'leftDeg')}
              {leaf('Right leaf', doors.rightDeg, 'rightDeg')}
              {flat('Top leaf', doors.topDeg, 'topDeg')}
              {flat('Bottom leaf', doors.bottomDeg, 'bottomDeg')}
            </>
          ) : null}
        </>
      ) : null}
    </>
  );
};

const number = (t: string): number =>
  Number(/^([+-]?\d+(?:[.,]\d+)?)\s*°?$/.exec(t.trim().replace('−', '-'))?.[1]?.replace(',', '.') ?? 'x');

const parseLeaf = (t: string): Result<number> => {
  const n = number(t);
  return n >= -30 && n <= 90
    ? ok(n)
    : fail({
        what: `“${t}” is no angle of a leaf.`,
        todo: 'Write 0 for along the throw to 90 for wide open.',
      });
};

/** A zoom as typed: a beam angle, `spot`, `flood`, `wide`. */
const parseZoom = (t: string, spotDeg: number, wideDeg: number): Result<number> => {
  const word = t.trim().toLowerCase();
  if (word === 'spot') return ok(spotDeg);
  if (word === 'flood' || word === 'wide') return ok(wideDeg);
  const n = number(t);
  return n >= Math.min(spotDeg, wideDeg) && n <= Math.max(spotDeg, wideDeg)
    ? ok(n)
    : fail({
        what: `“${t}” is not an angle its zoom has.`,
        todo: `Write ${Math.round(spotDeg)} to ${Math.round(wideDeg)} degrees, spot or wide.`,
      });
};
