import { poseOf } from '../../editor/handles.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { moveRecords } from '../../plan/edits/arrange.ts';
import { planRecord } from '../../plan/plan.ts';
import type { AnyRecord } from '../../plan/records/index.ts';
import { Field } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Where a thing is on the floor, by number: across from and down from the floor's zero. */
export const PlaceRows = ({ record }: { readonly record: AnyRecord }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = planRecord(plan).lengthUnits;
  const at = poseOf(plan, record.id)?.center;
  if (!at) return null;
  const move = (x: number, y: number): void =>
    session.commit('Move by number', moveRecords(plan, new Set([record.id]), { xMm: x, yMm: y }));
  const still = readOnly || record.locked === true;
  return (
    <>
      <Field
        label="Across"
        value={at.xMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => parseLengthMm(t, units)}
        disabled={still}
        onCommit={(mm) => move(mm - at.xMm, 0)}
      />
      <Field
        label="Down"
        value={at.yMm}
        format={(mm) => formatLength(mm, units)}
        parse={(t) => parseLengthMm(t, units)}
        disabled={still}
        onCommit={(mm) => move(0, mm - at.yMm)}
      />
    </>
  );
};
