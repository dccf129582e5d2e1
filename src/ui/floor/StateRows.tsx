import { poseOf } from '../../editor/handles.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { lockRecords } from '../../plan/edits/groups.ts';
import { labelPlaceOf, moveLabel, resetLabels } from '../../plan/edits/label-places.ts';
import { setNotes } from '../../plan/edits/many.ts';
import { hideRecords } from '../../plan/edits/stacking.ts';
import { planRecord } from '../../plan/plan.ts';
import { Field, Row } from '../common/Field.tsx';
import { anyText, text } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { ManyField } from './ManyField.tsx';

/** What anything on the floor can carry besides its own: a lock, being hidden, a label moved by hand, notes. */
export const StateRows = ({ ids }: { readonly ids: readonly string[] }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const records = ids.flatMap((id) => plan.records.get(id) ?? []);
  const [first] = records;
  if (!first) return null;
  const only = records.length === 1 ? first : undefined;
  const placed = records.filter((r) => labelPlaceOf(plan, r.id));
  const place = only && labelPlaceOf(plan, only.id);
  const length = { format: (mm: number) => formatLength(mm, units), disabled: readOnly };

  const box = (label: string, on: (r: (typeof records)[number]) => boolean, set: (to: boolean) => void) => (
    <label className="state-check">
      <input
        type="checkbox"
        disabled={readOnly}
        checked={records.every(on)}
        ref={(el) => {
          if (el) el.indeterminate = records.some(on) && !records.every(on);
        }}
        onChange={(e) => set(e.target.checked)}
      />
      {label}
    </label>
  );
  return (
    <>
      <Row label="State">
        {box(
          'locked',
          (r) => r.locked === true,
          (to) => session.commit(to ? 'Lock' : 'Unlock', lockRecords(plan, new Set(ids), to)),
        )}
        {box(
          'hidden',
          (r) => r.hidden === true,
          (to) => session.commit(to ? 'Hide' : 'Show', hideRecords(plan, new Set(ids), to)),
        )}
      </Row>
      {placed.length > 0 ? (
        <Row label="Label">
          {only ? 'moved by hand' : `${placed.length} moved by hand`}
          <button
            type="button"
            className="link row-hint"
            disabled={readOnly}
            onClick={() => session.commit('Let labels find their place', resetLabels(plan, ids))}
          >
            let it find its place
          </button>
        </Row>
      ) : null}
      {place && only && poseOf(plan, only.id) ? (
        <>
          <Field
            label="Label across"
            value={place.dxMm}
            {...length}
            parse={(t) => parseLengthMm(t, units)}
            onCommit={(mm) =>
              session.commit('Move the label', moveLabel(plan, only.id, { xMm: mm, yMm: place.dyMm }))
            }
          />
          <Field
            label="Label down"
            value={place.dyMm}
            {...length}
            parse={(t) => parseLengthMm(t, units)}
            onCommit={(mm) =>
              session.commit('Move the label', moveLabel(plan, only.id, { xMm: place.dxMm, yMm: mm }))
            }
          />
        </>
      ) : only && poseOf(plan, only.id) ? (
        <Row label="Label">
          <span className="soft">finds its own place</span>
          <button
            type="button"
            className="link row-hint"
            disabled={readOnly}
            onClick={() =>
              session.commit('Move the label', moveLabel(plan, only.id, { xMm: 600, yMm: -600 }))
            }
          >
            by hand
          </button>
        </Row>
      ) : null}
      <ManyField
        label="Notes"
        values={records.map((r) => (typeof r.notes === 'string' ? r.notes : ''))}
        format={text}
        parse={anyText}
        disabled={readOnly}
        onCommit={(notes) => session.commit('Change notes', setNotes(plan, ids, notes))}
      />
    </>
  );
};
