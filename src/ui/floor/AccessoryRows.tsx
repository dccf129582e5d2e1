import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { addAccessory, removeAccessory } from '../../plan/edits/grip.ts';
import type { GripKind, RiggingKind } from '../../plan/kinds/kinds.ts';
import { kindOf, planRecord } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useChange } from './rigging-fields.ts';

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
        </>
      ) : null}
    </>
  );
};
