import { expect, it } from 'vitest';
import { kindOf, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { explainFault } from '../../../src/report/explain-fault.ts';
import { restrikeWords, voltsTaken } from '../../../src/report/explain-fault-kind.ts';
import { type Fault, whatIf } from '../../../src/report/whatif.ts';
import { demoPlan } from '../../support/demo-plan.ts';

/** Every leg and neutral of the sources, and the ways that feed a ballast. */
const faultsOf = (plan: ReturnType<typeof demoPlan>): readonly Fault[] => {
  const { entities } = assess(plan, { revision: 0 });
  const byKey = new Map(entities.map((e) => [e.key, e]));
  const ballasts = entities.filter((e) => plan.records.get(e.recordId)?.type === 'ballast').slice(0, 2);
  return [
    ...recordsOf(plan, 'source').flatMap((s): readonly Fault[] => [
      ...[0, 1, 2].map((leg) => ({ loseLeg: { sourceId: s.id, leg } })),
      { loseNeutral: { recordId: s.id } },
    ]),
    ...ballasts.flatMap((b): readonly Fault[] => {
      let at = byKey.get(b.parentKey ?? '');
      while (at && at.what !== 'way') at = byKey.get(at.parentKey ?? '');
      return at?.wayId === undefined ? [] : [{ trip: { ownerId: at.recordId, wayId: at.wayId } }];
    }),
  ];
};

it('power-what-if: the volts a load takes and the minutes to restrike tell the kind they are from and what they rest on', () => {
  const plan = demoPlan('street');
  const [takes, restrikes] = [new Set<string>(), new Set<string>()];
  for (const fault of faultsOf(plan)) {
    const r = whatIf(plan, fault);
    if (!r.ok) continue;
    for (const l of r.value.loads.filter((x) => x.state !== 'as before')) {
      const of = (what: 'takes' | 'restrike') =>
        explainFault(plan, fault, r.value.setupId, { load: l.key, of: what });
      const record = plan.records.get(l.recordId);
      const ownKind = record && 'kindId' in record ? kindOf(plan, String(record.kindId)) : undefined;
      expect(of('takes')?.result).toBe(Number.isFinite(l.voltsMinV) ? voltsTaken(l) : undefined);
      if (ownKind) {
        expect(of('takes')?.inputs[0]?.from).toContain(ownKind.name);
        takes.add(l.key);
      }
      const restrike = of('restrike');
      expect(restrike?.result).toBe(l.restrikeMin === undefined ? undefined : restrikeWords(l.restrikeMin));
      if (!restrike) continue;
      const head = record?.type === 'ballast' ? recordOf(plan, 'fixture', record.fixtureId) : record;
      const headKind = head?.type === 'fixture' ? kindOf(plan, head.kindId, 'fixture') : undefined;
      const basis = headKind?.basis.hotRestrikeMin ?? headKind?.basis.all ?? '';
      expect(restrike.inputs[0]?.from).toContain(headKind?.name);
      expect(restrike.inputs[0]?.from).toContain(basis);
      expect(restrike.inputs[0]?.assumed).toBe(basis.includes('assumed'));
      restrikes.add(l.key);
    }
  }
  expect(takes.size).toBeGreaterThan(3);
  expect(restrikes.size).toBeGreaterThan(0);
});

it('power-what-if: a load whose volts nothing bounds takes any', () => {
  expect(voltsTaken({ voltsMinV: 0, voltsMaxV: Number.POSITIVE_INFINITY })).toBe('any');
  expect(voltsTaken({ voltsMinV: 90, voltsMaxV: 250 })).toBe('90–250 V');
});
