import fc from 'fast-check';
import { expect, it } from 'vitest';
import { loadSpecOf } from '../../src/derive/loads.ts';
import type { SupplyNode } from '../../src/derive/supply-types.ts';
import { computePower } from '../../src/engines/power/index.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import { type Plan, recordsOf } from '../../src/plan/plan.ts';
import { referenceFindings } from '../../src/report/references.ts';
import { demoPlan } from '../support/demo-plan.ts';
import { dice, randomEdit } from '../support/random-edits.ts';

/** What draws power and is neither computed nor told of: neither itself nor anything it hangs on is in a finding. */
const silent = (plan: Plan): readonly string[] => {
  const c = computePower(plan);
  const told = new Set([
    ...c.findings.flatMap((f) => [...f.recordIds, f.about.split('/')[0]]),
    ...referenceFindings(plan).flatMap((f) => f.recordIds),
  ]);
  const within = new Set(c.tree.nodes.map((n) => n.recordId));
  /** Also where what it hangs on is in no tree: from record to record, by cables and by what is plugged straight in. */
  const ahead = (id: string, seen = new Set<string>()): boolean => {
    if (told.has(id)) return true;
    if (seen.has(id)) return false;
    seen.add(id);
    const r = plan.records.get(id);
    const feeds = recordsOf(plan, 'cable').filter((k) => k.to.recordId === id);
    const on = r?.type === 'cable' ? r.from.recordId : r?.type === 'box' ? r.plugsInto?.recordId : undefined;
    return feeds.some((k) => ahead(k.id, seen)) || (on !== undefined && ahead(on, seen));
  };
  const isTold = (n: SupplyNode): boolean => {
    for (let at: SupplyNode | undefined = n; at; at = c.tree.nodes[at.parent])
      if (ahead(at.recordId)) return true;
    return false;
  };
  const missing = [
    ...recordsOf(plan, 'fixture').filter((f) => !f.onPacks && f.packFrom === undefined),
    ...recordsOf(plan, 'ballast'),
  ].filter((r) => loadSpecOf(plan, r) && !within.has(r.id) && !told.has(r.id));
  const others = recordsOf(plan, 'otherLoad').filter((o) => !within.has(o.id) && !told.has(o.id));
  const untold = c.tree.nodes.filter((n) => n.what === 'load' && n.notComputed !== undefined && !isTold(n));
  return [...missing, ...others].map((r) => r.id).concat(untold.map((n) => n.key));
};

it.each(['study', 'street', 'stage'] as const)(
  'power-defect: on the %s plan, whatever is edited, no load is left out in silence',
  (name) => {
    const start = demoPlan(name);
    expect(silent(start)).toEqual([]);
    fc.assert(
      fc.property(fc.array(dice, { minLength: 3, maxLength: 12 }), (edits) => {
        let plan = start;
        for (const d of edits) plan = applyChanges(plan, randomEdit(plan, d));
        expect(silent(plan)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  },
  120_000,
);
