import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { straightInto } from '../../../src/plan/edits/adapters.ts';
import { moveRecords, removeRecords } from '../../../src/plan/edits/arrange.ts';
import { recordOf } from '../../../src/plan/plan.ts';
import { gearRig } from '../../support/gear-rig.ts';

const rig = () => {
  const r = gearRig();
  const source = r.b.source(r.kind('wall-circuit-15'), { label: 'W', voltsV: 120 });
  const tee = r.b.box(r.kind('tee-household-3'), {
    label: 'A1',
    plugsInto: { recordId: source.id, portId: '1a' },
  });
  return { ...r, source, tee };
};

describe('an adapter plugged straight into an outlet', () => {
  it('goes where its outlet goes, and not the other way round', () => {
    const { plan, source, tee } = rig();
    const after = applyChanges(plan(), moveRecords(plan(), new Set([source.id]), { xMm: 1000, yMm: 0 }));
    expect(recordOf(after, 'box', tee.id)?.at.xMm).toBe(1000);
    const alone = applyChanges(plan(), moveRecords(plan(), new Set([tee.id]), { xMm: 1000, yMm: 0 }));
    expect(recordOf(alone, 'source', source.id)?.at.xMm).toBe(0);
    expect(straightInto(plan(), source.id, '1a').map((b) => b.id)).toEqual([tee.id]);
  });

  it('stays, unplugged, when what it hangs on is removed; a port that is gone is told', () => {
    const { plan, source, tee, b } = rig();
    const after = applyChanges(plan(), removeRecords(plan(), new Set([source.id])));
    expect(recordOf(after, 'box', tee.id)).toBeDefined();
    expect(recordOf(after, 'box', tee.id)?.plugsInto).toBeUndefined();
    b.put({ ...tee, plugsInto: { recordId: source.id, portId: 'gone' } });
    expect(referenceProblems(plan()).map((p) => p.field)).toContain('plugsInto');
  });
});
