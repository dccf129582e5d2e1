import { recordLabel } from '../../derive/labels.ts';
import { computeRigging, formatKg, formatWind, isLift, riggingKey } from '../../engines/rigging/index.ts';
import { fail, type Result } from '../../kernel/result.ts';
import { formatLength, formatPct, type LengthUnits, parseLengthMm } from '../../kernel/units.ts';
import { alongOf, barSize, hangOn, setRiggingHeight, slideAlong } from '../../plan/edits/hang.ts';
import { planRecord, recordsOf } from '../../plan/plan.ts';
import type { Fixture, Grip, Rigging } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { anyText, parseHeight, text } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { formatCount, parseCount, parseKg, useChange } from './rigging-fields.ts';

/** Tube, a point, a lift or a crane: load, people, reach and who works it. */
export const LiftRows = ({ rigging }: { readonly rigging: Rigging }) => {
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const { session } = useServices();
  const change = useChange(rigging);
  const units = planRecord(plan).lengthUnits;
  const use = computeRigging(plan).rigging.get(rigging.id);
  if (!use) return <p className="soft">Its kind is not in the plan, so nothing is computed.</p>;
  const lift = isLift(use.kind);
  const length = (label: string, mm: number, field: string) => (
    <Field
      label={label}
      value={mm}
      format={(v) => formatLength(v, units)}
      parse={(t) => parseLengthMm(t, units)}
      disabled={readOnly}
      onCommit={(v) => change(`Change ${label.toLowerCase()}`, { [field]: Math.max(0, v) })}
    />
  );
  return (
    <>
      <Field
        label="Height"
        value={rigging.heightMm}
        format={(v) => formatLength(v, units)}
        parse={(t) => parseHeight(t, units)}
        disabled={readOnly}
        onCommit={(mm) => session.commit('Change height', setRiggingHeight(plan, rigging.id, mm))}
      />
      {lift ? length('Reach', rigging.reachMm ?? 0, 'reachMm') : null}
      {use.kind.what === 'pipe' || use.kind.what === 'truss'
        ? length('Length', barSize(use.kind, rigging).lengthMm, 'lengthMm')
        : null}
      <Field
        label="Rated load"
        value={rigging.ratedLoadKg}
        format={(v) => (v === undefined ? '' : formatKg(v, units))}
        parse={(t) => parseKg(t.replace(/\(.*\)/, ''))}
        disabled={readOnly}
        hint={
          use.ratedAssumed
            ? use.ratedKg === undefined
              ? 'not known: read the plate'
              : `${formatKg(use.ratedKg, units)} by its kind; read the plate`
            : undefined
        }
        onCommit={(ratedLoadKg) => change('Set rated load', { ratedLoadKg })}
      />
      {use.kind.people === undefined ? null : (
        <Field
          label="People"
          value={rigging.people}
          format={formatCount}
          parse={parseCount}
          disabled={readOnly}
          hint={`at most ${use.kind.people}`}
          onCommit={(people) => change('Set people', { people })}
        />
      )}
      <Row label="Load">
        <Figure figureKey={riggingKey('loadPct', rigging.id)}>{formatKg(use.loadKg, units)}</Figure>
        {use.ratedKg === undefined ? null : (
          <span className="row-hint">{formatPct((100 * use.loadKg) / use.ratedKg)} of the rated load</span>
        )}
      </Row>
      {lift ? (
        <>
          <Field
            label="Worked by"
            value={rigging.operator}
            format={text}
            parse={anyText}
            disabled={readOnly}
            hint={use.kind.operator}
            onCommit={(operator) => change('Set who works it', { operator })}
          />
          <Row label="Cable up">
            <Figure figureKey={riggingKey('cableUpMm', rigging.id)}>
              {formatLength(use.cableUpMm, units)}
            </Figure>
            <span className="row-hint">along the arm</span>
          </Row>
          {use.kind.windLimitMps === undefined ? null : (
            <Row label="Wind limit">
              {use.kind.windLimitMps === 0 ? 'indoors only' : formatWind(use.kind.windLimitMps, units)}
            </Row>
          )}
        </>
      ) : null}
      <p className="soft small">Figures only. Overhead work is for qualified riggers.</p>
    </>
  );
};

/** What a rigged unit or a frame hangs on, of the rigging on its floor. */
export const HungRow = ({ record }: { readonly record: Fixture | Grip }) => {
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const { session } = useServices();
  const change = useChange(record);
  if (record.type === 'fixture' && record.support.on !== 'rigged') return null;
  const along = record.type === 'fixture' ? alongOf(plan, record) : undefined;
  const units = planRecord(plan).lengthUnits;
  const all = recordsOf(plan, 'rigging').filter((r) => r.floorId === record.floorId);
  const now =
    record.type === 'grip'
      ? record.riggingId
      : record.support.on === 'rigged'
        ? record.support.riggingId
        : undefined;
  if (all.length === 0 && now === undefined) return null;
  const hang = (id: string): void => {
    const what = id === '' ? {} : { riggingId: id };
    if (record.type === 'fixture' && what.riggingId !== undefined)
      session.commit('Change what it hangs on', hangOn(plan, [record.id], what.riggingId));
    else if (record.type === 'fixture') change('Change what it hangs on', { support: { on: 'rigged' } });
    else change('Change what it hangs on', { riggingId: what.riggingId });
  };
  return (
    <>
      <Row label="Hangs on">
        <select
          className="inline-input"
          aria-label="Hangs on"
          disabled={readOnly}
          value={now ?? ''}
          onChange={(e) => hang(e.target.value)}
        >
          <option value="">not said</option>
          {all.map((r) => (
            <option key={r.id} value={r.id}>
              {recordLabel(plan, r)}
            </option>
          ))}
        </select>
      </Row>
      {along ? (
        <Field
          label="Along it"
          value={along.alongMm}
          format={(mm) => formatLength(mm, units)}
          parse={(t) => parseAlong(t, units, along.line.lengthMm)}
          disabled={readOnly}
          hint={`of ${formatLength(along.line.lengthMm, units)}${along.besideMm > 20 ? `, ${formatLength(along.besideMm, units)} beside it` : ''}`}
          onCommit={(mm) => session.commit('Slide along', slideAlong(plan, record.id, mm))}
        />
      ) : null}
    </>
  );
};

const parseAlong = (t: string, units: LengthUnits, mostMm: number): Result<number> => {
  const r = parseLengthMm(t, units);
  return r.ok && (r.value < 0 || r.value > mostMm)
    ? fail({ what: 'That is beyond its end.', todo: `Write 0 to ${formatLength(mostMm, units)}.` })
    : r;
};
