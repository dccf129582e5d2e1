import { cablesInCrossings, rampPieces } from '../../derive/crossings.ts';
import { isArea, spotRadius } from '../../derive/outdoors.ts';
import { overheadLimit } from '../../derive/overhead.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Crossing, Feature } from '../../plan/records/index.ts';
import { Field, Row } from '../common/Field.tsx';
import { parseHeight } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { formatKilovolts, parseKilovolts } from './NextScout.tsx';

const positive = (r: Result<number>): Result<number> =>
  r.ok && r.value <= 0 ? fail({ what: 'It is more than nothing.' }) : r;

/** Height, volts and size of something outdoors. */
export const FeatureRows = ({ feature: f }: { readonly feature: Feature }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const commit = (label: string, next: Feature): void => {
    const r = changeRecord(plan, next, {});
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };
  const line = f.what === 'power-line';
  const flat = f.what === 'exit' || f.what === 'fire-lane' || f.what === 'wet-area' || f.what === 'water';
  const need = line ? overheadLimit(plan, f.voltsV) : undefined;
  return (
    <>
      {flat ? null : (
        <Field
          label={line ? 'Lowest wire' : f.what === 'ground' ? 'Above floor' : 'Height'}
          value={f.heightMm}
          format={(mm) => (mm === 0 ? '' : formatLength(mm, units))}
          parse={(t) =>
            t.trim() === '' ? ok(0) : f.what === 'ground' ? parseLengthMm(t, units) : parseHeight(t, units)
          }
          hint={line && f.heightMm === 0 ? 'empty: not known; its owner says' : ''}
          disabled={readOnly}
          onCommit={(heightMm) => commit('Change height', { ...f, heightMm })}
        />
      )}
      {line ? (
        <Field
          label="Volts"
          value={f.voltsV}
          format={formatKilovolts}
          parse={parseKilovolts}
          hint={f.voltsV === undefined ? 'empty: not known' : ''}
          disabled={readOnly}
          onCommit={(voltsV) => {
            const { voltsV: _old, ...bare } = f;
            commit('Change volts', voltsV === undefined ? bare : { ...bare, voltsV });
          }}
        />
      ) : null}
      {need ? (
        <Row label="To keep">
          {formatLength(need.needMm, units)}
          <span className="row-hint">{need.limit.source}, from memory; the owner of the line decides</span>
        </Row>
      ) : null}
      {f.points.length === 1 ? (
        <Field
          label="Radius"
          value={spotRadius(f)}
          format={(mm) => formatLength(mm, units)}
          parse={(t) => positive(parseLengthMm(t, units))}
          disabled={readOnly}
          onCommit={(radiusMm) => commit('Change radius', { ...f, radiusMm })}
        />
      ) : (
        <Row label="Shape">
          {isArea(f) ? `area with ${f.points.length} corners` : `line with ${f.points.length} points`}
          <span className="row-hint">pull its corners on the drawing</span>
        </Row>
      )}
    </>
  );
};

/** How a cable crossing is, and what goes through it. */
export const CrossingRows = ({ crossing: x }: { readonly crossing: Crossing }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const cables = cablesInCrossings(plan).get(x.id)?.size ?? 0;
  const pieces = rampPieces(x, cables);
  const commit = (label: string, patch: Partial<Crossing>): void => {
    const r = changeRecord(plan, x, patch);
    if (r.ok) session.commit(label, r.value);
  };
  return (
    <>
      <Row label="How">
        <select
          className="inline-input"
          aria-label="How the cables cross"
          value={x.how}
          disabled={readOnly}
          onChange={(e) => commit('Change crossing', { how: e.target.value === 'flown' ? 'flown' : 'ramp' })}
        >
          <option value="ramp">ramp on the ground</option>
          <option value="flown">flown over it</option>
        </select>
      </Row>
      <Field
        label="Length"
        value={x.lengthMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => positive(parseLengthMm(t, units))}
        disabled={readOnly}
        onCommit={(lengthMm) => commit('Change length', { lengthMm })}
      />
      {x.how === 'flown' ? (
        <Field
          label="Lowest cable"
          value={x.heightMm}
          format={(mm) => (mm === 0 ? '' : formatLength(mm, units))}
          parse={(t) => (t.trim() === '' ? ok(0) : parseHeight(t, units))}
          disabled={readOnly}
          onCommit={(heightMm) => commit('Change height', { heightMm })}
        />
      ) : null}
      <Row label="Takes">
        {cables} {cables === 1 ? 'cable' : 'cables'}
        {x.how === 'ramp' ? (
          <span className="row-hint">
            {pieces} {pieces === 1 ? 'piece' : 'pieces'} of ramp, {x.channels} channels each
          </span>
        ) : null}
      </Row>
    </>
  );
};
