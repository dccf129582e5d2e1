import {
  computeRigging,
  formatFactor,
  formatKg,
  formatNewtons,
  formatWind,
  riggingKey,
} from '../../engines/rigging/index.ts';
import { formatPct } from '../../kernel/units.ts';
import { planRecord, recordOf } from '../../plan/plan.ts';
import type { AnyRecord, Fixture, Stand } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { AccessoryRows } from './AccessoryRows.tsx';
import { GripRows } from './GripRows.tsx';
import { HungRow, LiftRows } from './LiftRows.tsx';
import { formatCount, parseCount, useChange } from './rigging-fields.ts';

/** What carries a thing, in figures: load of rated load, tip-over factor, sand bags. The rigger decides. */
export const RiggingFigures = ({ record }: { readonly record: AnyRecord }) => {
  const plan = useSessionSlice((s) => s.plan);
  switch (record.type) {
    case 'fixture': {
      const stand =
        record.support.on === 'stand' ? recordOf(plan, 'stand', record.support.standId) : undefined;
      return (
        <>
          <AccessoryRows fixture={record} />
          {stand ? <StandRows stand={stand} fixture={record} /> : <HungRow record={record} />}
        </>
      );
    }
    case 'stand':
      return <StandRows stand={record} />;
    case 'grip':
      return <GripRows grip={record} />;
    case 'rigging':
      return <LiftRows rigging={record} />;
    default:
      return null;
  }
};

const StandRows = ({ stand, fixture }: { readonly stand: Stand; readonly fixture?: Fixture }) => {
  const plan = useSessionSlice((s) => s.plan);
  const readOnly = useSessionSlice((s) => s.readOnly);
  const change = useChange(stand);
  const units = planRecord(plan).lengthUnits;
  const r = computeRigging(plan);
  const use = r.stands.get(stand.id);
  const t = r.tipping.get(stand.id);
  if (!use || !t) return <p className="soft">The stand’s kind is not in the plan, so nothing is computed.</p>;
  const rated = use.kind.ratedLoadKg;
  const pct = (100 * use.loadKg) / rated;
  return (
    <>
      <h3 className="inspector-head">Stand</h3>
      <Row label="Load">
        <Figure figureKey={riggingKey('loadPct', stand.id)}>{formatKg(use.loadKg, units)}</Figure>
        <span className="row-hint">
          of {formatKg(rated, units)}
          {Number.isFinite(pct) ? `, ${formatPct(pct)}` : ''}
        </span>
      </Row>
      <Row label="Tip factor">
        <Figure figureKey={riggingKey('tipFactor', stand.id)}>{formatFactor(t.moments.factor)}</Figure>
        <span className="row-hint">
          {t.pushes.length > 0 ? 'with the plan’s wind' : 'without wind'}; {r.model.factors.tipFactor} is
          planned for
        </span>
      </Row>
      <Row label="Tips at">
        <Figure figureKey={riggingKey('tipPushN', stand.id)}>{formatNewtons(t.pushN, units)}</Figure>
        <span className="row-hint">pushed at the top, no wind</span>
      </Row>
      <Row label="">
        <Figure figureKey={riggingKey('tipTiltDeg', stand.id)}>{t.tiltDeg.toFixed(1)}° slope</Figure>
        {Number.isFinite(t.windMps) ? (
          <span className="row-hint">
            or <Figure figureKey={riggingKey('tipWindMps', stand.id)}>{formatWind(t.windMps, units)}</Figure>{' '}
            of wind
          </span>
        ) : null}
      </Row>
      <Field
        label="Sand bags"
        value={stand.bags ?? 0}
        format={formatCount}
        parse={parseCount}
        disabled={readOnly}
        hint={bagsHint(t.bagsWanted, formatKg(r.model.factors.bagKg, units))}
        onCommit={(bags) =>
          change(fixture ? `Bags on the stand of unit ${fixture.unit}` : 'Bags on stand', { bags })
        }
      />
    </>
  );
};

/** Bags that the planning factor asks for; one on every stand is good practice. */
const bagsHint = (wanted: number, each: string): string =>
  Number.isFinite(wanted)
    ? `of ${each}; at least ${Math.max(1, wanted)} advised`
    : 'no number of bags is enough';
