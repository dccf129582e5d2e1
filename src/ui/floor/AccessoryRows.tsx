import { balanceKg, formatKg, riggingKey } from '../../engines/rigging/index.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { addAccessory, removeAccessory } from '../../plan/edits/grip.ts';
import type { GripKind, RiggingKind } from '../../plan/kinds/kinds.ts';
import { kindOf, planRecord } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { parseKg, useChange } from './rigging-fields.ts';

const WHAT: ReadonlySet<string> = new Set(['arm', 'head', 'clamp', 'plate', 'bond']);

const isAccessory = (k: { readonly family: string }): k is RiggingKind | GripKind =>
  k.family === 'rigging' && WHAT.has((k as RiggingKind).what);

/** Arms, heads, adapters and bonds on a unit, and where its arm puts it. */
export const AccessoryRows = ({ fixture }: { readonly fixture: Fixture }) => {
  const { session, book } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const change = useChange(fixture);
  const units = planRecord(plan).lengthUnits;
  const own = (fixture.accessories ?? []).map((id) => kindOf(plan, id, 'rigging', 'grip'));
  const arm = own.find((k) => k?.family === 'rigging' && k.what === 'arm');
  const where = fixture.arm ?? { overLeg: false };
  const reachMm = arm?.family === 'rigging' ? (arm.reachMm ?? 0) : 0;
  /** Changes the arm; what is taken away is left out of the record. */
  const setArm = (patch: Readonly<Record<string, number | undefined>>): void => {
    const next = Object.fromEntries(
      Object.entries({ ...where, ...patch }).filter(([, v]) => v !== undefined),
    );
    change('Set arm', { arm: next });
  };
  return (
    <>
      <Row label="With">
        <select
          className="inline-input"
          aria-label="Add an accessory"
          disabled={readOnly}
          value=""
          onChange={(e) => {
            const kind = book.find(e.target.value);
            if (kind && isAccessory(kind))
              session.commit(`Add ${kind.name} to unit ${fixture.unit}`, addAccessory(plan, fixture, kind));
          }}
        >
          <option value="">{own.length > 0 ? 'add another' : 'no accessories'}</option>
          {book
            .kinds()
            .filter(isAccessory)
            .map((k) => (
              <option key={k.slug} value={k.slug}>
                {k.name}
              </option>
            ))}
        </select>
      </Row>
      {own.map((k, i) => (
        // Two of one kind may hang on a unit, so only the place in the list tells them apart.
        <Row key={i} label="">
          {k?.name ?? 'kind missing'}
          <button
            type="button"
            className="link soft row-hint"
            disabled={readOnly}
            aria-label={`Take off ${k?.name ?? 'accessory'}`}
            onClick={() => session.commit('Take off accessory', removeAccessory(plan, fixture, i))}
          >
            take off
          </button>
        </Row>
      ))}
      {arm && fixture.support.on === 'stand' ? (
        <>
          <Field
            label="Arm out"
            value={where.outMm ?? reachMm}
            format={(mm) => formatLength(mm, units)}
            parse={(t) => parseLengthMm(t, units)}
            disabled={readOnly}
            hint={where.outMm === undefined ? 'its whole reach, assumed' : undefined}
            onCommit={(outMm) => change('Set arm', { arm: { ...where, outMm: Math.max(0, outMm) } })}
          />
          <Row label="">
            <label>
              <input
                type="checkbox"
                checked={where.overLeg}
                disabled={readOnly}
                onChange={(e) => change('Set arm', { arm: { ...where, overLeg: e.target.checked } })}
              />{' '}
              a leg lies under the arm
            </label>
          </Row>
          <Field
            label="Arm towards"
            value={where.directionDeg}
            format={(deg) => (deg === undefined ? '' : `${Math.round(deg)}°`)}
            parse={parseDirection}
            disabled={readOnly}
            hint={where.directionDeg === undefined ? 'the way the unit faces' : 'clockwise from the right'}
            onCommit={(directionDeg) => setArm({ directionDeg })}
          />
          <Field
            label="Weight"
            value={where.counterKg}
            format={(kg) => (kg === undefined ? '' : formatKg(kg, units))}
            parse={(t) => parseKg(t.replace(/\(.*\)/, ''))}
            disabled={readOnly}
            hint="a counterweight on the arm"
            onCommit={(counterKg) => setArm({ counterKg })}
          />
          <Field
            label="Hung back"
            value={where.counterMm}
            format={(mm) => (mm === undefined ? '' : formatLength(mm, units))}
            parse={(t) => (t.trim() === '' ? ok(undefined) : parseLengthMm(t, units))}
            disabled={readOnly}
            hint="the counterweight from the column"
            onCommit={(counterMm) => setArm({ counterMm })}
          />
          {where.counterMm && fixture.support.on === 'stand' ? (
            <Row label="Balances at">
              <Figure figureKey={riggingKey('counterKg', fixture.support.standId)}>
                {formatKg(balanceKg(plan, fixture), units)}
              </Figure>
              <span className="row-hint">the arm’s own mass left out</span>
            </Row>
          ) : null}
        </>
      ) : null}
    </>
  );
};

const parseDirection = (t: string): Result<number | undefined> => {
  const s = t.replace('°', '').trim().replace(',', '.');
  if (s === '') return ok(undefined);
  const n = Number(s);
  return Number.isFinite(n) && Math.abs(n) <= 360
    ? ok(((n % 360) + 360) % 360)
    : fail({
        what: `“${t}” is not a direction.`,
        todo: 'Write degrees clockwise from the right: 90 is down the page.',
      });
};
