import { expect, it } from 'vitest';
import { gearBook } from '../../../src/gear/book.ts';
import { formatAmps, formatCableLength } from '../../../src/kernel/units.ts';
import { applyChanges, Draft } from '../../../src/plan/change-set.ts';
import type { AdapterKind } from '../../../src/plan/kinds/adapter.ts';
import type { CableKind } from '../../../src/plan/kinds/kinds.ts';
import { type Plan, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { explainPlug } from '../../../src/report/explain-plug.ts';
import { plugEverything } from '../../../src/report/plug-all.ts';
import { demoPlan } from '../../support/demo-plan.ts';

/** A demo plan with the plugs of its fixtures pulled. */
const unplugged = (name: 'street' | 'stage'): Plan => {
  const plan = demoPlan(name);
  const draft = new Draft(plan);
  const units = new Set(recordsOf(plan, 'fixture').map((f) => f.id));
  for (const c of recordsOf(plan, 'cable')) if (units.has(c.to.recordId)) draft.remove(c.id);
  return applyChanges(plan, draft.changes());
};

it.each(['street', 'stage'] as const)(
  'power-plug-all: cable and amps of every offered plug on “%s” end in the figures shown',
  (name) => {
    const plan = unplugged(name);
    const { practice, lengthUnits } = planRecord(plan);
    const book = gearBook(practice);
    let n = 0;
    const { steps } = plugEverything(plan, {
      newId: (p) => `${p}-new-${n++}`,
      book: book.filter((k): k is CableKind => k.family === 'cable'),
      adapters: book.filter((k): k is AdapterKind => k.family === 'adapter' && k.what !== 'data'),
    });
    expect(steps.length).toBeGreaterThan(2);
    for (const s of steps) {
      expect(explainPlug(plan, s, 'amps').result).toBe(formatAmps(s.amps));
      expect(s.basis.wattsW / s.basis.powerFactor / s.basis.voltsV).toBeCloseTo(s.amps, 9);
      const cable = explainPlug(plan, s, 'cable');
      expect(cable.result).toBe(`${s.kindName}, ${formatCableLength(s.lengthMm, lengthUnits)}`);
      const { drawnMm, risesMm, slackMm } = s.basis.run;
      expect(s.lengthMm).toBeGreaterThanOrEqual(drawnMm + risesMm + slackMm - 1);
      if (s.basis.piecesMm.length > 0)
        expect(s.basis.piecesMm.reduce((a, b) => a + b, 0)).toBeCloseTo(s.lengthMm, 6);
    }
  },
);
