import {
  computeRigging,
  formatFactor,
  formatKg,
  formatNewtons,
  formatWind,
  riggingKey,
  windLine,
  windTable,
} from '../../engines/rigging/index.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { setCloth } from '../../plan/edits/grip.ts';
import type { GripKind } from '../../plan/kinds/kinds.ts';
import { kindOf, planRecord } from '../../plan/plan.ts';
import type { Grip } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { HungRow } from './LiftRows.tsx';
import { formatCount, parseCount, parseLean, parseWind, useChange } from './rigging-fields.ts';

/** A frame, flag or bounce: its cloth and lines, and what the wind does to it. */
export const GripRows = ({ grip }: { readonly grip: Grip }) => {
  const { session, book } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const change = useChange(grip);
  const record = planRecord(plan);
  const changePlan = useChange(record);
  const units = record.lengthUnits;
  const r = computeRigging(plan);
  const sail = r.sails.get(grip.id);
  const t = r.tipping.get(grip.id);
  const cloth = grip.clothId === undefined ? undefined : kindOf(plan, grip.clothId, 'grip');
  const sized = (k: GripKind): boolean =>
    k.what === 'cloth' && k.sizeMm.widthMm === sail?.kind.sizeMm.widthMm;
  const cloths = book.kinds().filter((k): k is GripKind => k.family === 'grip' && sized(k));
  const { windMps } = r.model.factors;
  const lines = sail ? (windMps === undefined ? windTable(r, sail) : [windLine(r, sail, windMps)]) : [];
  return (
    <>
      <Field
        label="Height"
        value={grip.heightMm}
        format={(mm) => formatLength(mm, units)}
        parse={(x) => parseLengthMm(x, units)}
        disabled={readOnly}
        hint="of its middle"
        onCommit={(mm) => change('Change height', { heightMm: Math.max(0, mm) })}
      />
      {sail && sail.areaM2 > 0 ? (
        <Field
          label="Leans"
          value={grip.tiltDeg ?? 0}
          format={(deg) => `${Math.round(deg)}°`}
          parse={parseLean}
          disabled={readOnly}
          hint="0 upright, 90 flat overhead"
          onCommit={(tiltDeg) => change('Set lean', { tiltDeg })}
        />
      ) : null}
      {sail?.kind.what === 'frame' && (cloths.length > 0 || cloth) ? (
        <Row label="Cloth">
          <select
            className="inline-input"
            aria-label="Cloth"
            disabled={readOnly}
            value={cloth?.slug ?? ''}
            onChange={(e) => {
              const kind = cloths.find((k) => k.slug === e.target.value);
              session.commit(kind ? 'Put in cloth' : 'Take out cloth', setCloth(plan, grip, kind));
            }}
          >
            <option value="">none chosen: counts as solid</option>
            {cloth && !cloths.some((k) => k.slug === cloth.slug) ? (
              <option value={cloth.slug}>{cloth.name}</option>
            ) : null}
            {cloths.map((k) => (
              <option key={k.slug} value={k.slug}>
                {k.name}
              </option>
            ))}
          </select>
        </Row>
      ) : null}
      {sail ? (
        <Row label="Mass">
          {formatKg(sail.massKg, units)}
          <span className="row-hint">
            {sail.areaM2 > 0 ? `${sail.areaM2.toFixed(1)} m² · ` : ''}
            {grip.supports.length} {grip.supports.length === 1 ? 'stand' : 'stands'}
          </span>
        </Row>
      ) : null}
      {grip.supports.length === 0 ? <HungRow record={grip} /> : null}
      {sail && sail.areaM2 > 0 ? (
        <>
          <h3 className="inspector-head">Wind</h3>
          <Field
            label="Wind here"
            value={record.windMps}
            format={(v) => (v === undefined ? '' : formatWind(v, units))}
            parse={(x) => parseWind(x.replace(/\(.*\)/, ''))}
            disabled={readOnly}
            hint={
              record.windMps === undefined ? 'not known; gusts included, 0 indoors' : 'for the whole plan'
            }
            onCommit={(windMps) => changePlan('Set wind', { windMps })}
          />
          {record.windMps === undefined || record.windMps === 0 ? null : (
            <Row label="">
              <label>
                <input
                  type="checkbox"
                  checked={record.windIsMean === true}
                  disabled={readOnly}
                  onChange={(e) => changePlan('Set wind', { windIsMean: e.target.checked })}
                />{' '}
                a forecast’s mean
              </label>
              {r.model.factors.meanMps === undefined ? null : (
                <span className="row-hint">
                  gusts {formatWind(r.model.factors.windMps ?? 0, units)} reckoned with
                </span>
              )}
            </Row>
          )}
          <Field
            label="Lines"
            value={grip.guys}
            format={formatCount}
            parse={parseCount}
            disabled={readOnly}
            hint={sail.kind.guys > 0 ? `${sail.kind.guys} asked for in wind` : undefined}
            onCommit={(guys) => change('Set lines', { guys })}
          />
          {t ? (
            <Row label="Tips at">
              <Figure figureKey={riggingKey('tipWindMps', grip.id)}>{formatWind(t.windMps, units)}</Figure>
              <span className="row-hint">lines not counted</span>
            </Row>
          ) : null}
          {lines.map((l) => (
            <Row key={l.speedMps} label={formatWind(l.speedMps, units)}>
              {windMps === l.speedMps || l.speedMps === 5 ? (
                <Figure figureKey={riggingKey('windN', grip.id)}>{formatNewtons(l.forceN, units)}</Figure>
              ) : (
                formatNewtons(l.forceN, units)
              )}
              {l.liftN > 0 ? <span className="row-hint">{formatNewtons(l.liftN, units)} upwards</span> : null}
              {t ? (
                <span className="row-hint">
                  factor {formatFactor(l.tipFactor)}
                  {Number.isFinite(l.bagsPerStand) ? `, ${l.bagsPerStand} bags a stand` : ''}
                </span>
              ) : null}
            </Row>
          ))}
          <p className="soft small">
            Figures only: the rigger decides. Outdoors no frame stands without people on it.
          </p>
        </>
      ) : null}
    </>
  );
};
