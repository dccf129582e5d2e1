import { expect, test } from 'vitest';
import { gearBook } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { changeWay } from '../../../src/plan/edits/ways.ts';
import type { SourceKind } from '../../../src/plan/kinds/kinds.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { waysOf } from '../../../src/plan/ports.ts';
import { assess } from '../../../src/report/assess.ts';
import { swapSource } from '../../../src/report/swap-source.ts';
import { demoPlan } from '../../support/demo-plan.ts';

const plan = demoPlan('street');
const source = recordsOf(plan, 'source')[0];
const kinds = gearBook('north-america').filter((k): k is SourceKind => k.family === 'source');
const named = (part: string): SourceKind => {
  const k = kinds.find((x) => x.name.includes(part));
  if (!k) throw new Error(`no source ${part}`);
  return k;
};

test('a larger set of the same system takes the same amps at a smaller share of what it gives', () => {
  const r = swapSource(plan, source?.id ?? '', named('Generator 144 kW, three-phase'));
  expect(r.ok && r.value.unfed).toEqual([]);
  const lines = r.ok ? r.value.lines.filter((l) => l.unit === 'A' && l.name !== 'N') : [];
  expect(lines.map((l) => l.name)).toEqual(['A', 'B', 'C']);
  for (const l of lines) expect(Math.abs(l.after - l.before)).toBeLessThan(0.02 * l.before);
  const power = r.ok ? r.value.lines.find((l) => l.unit === 'W') : undefined;
  expect(power?.afterPct).toBeLessThan(power?.beforePct ?? 0);
});

test('a set whose outlets do not mate leaves loads uncomputed, and nothing of theirs counts as better', () => {
  const r = swapSource(plan, source?.id ?? '', named('Generator 2 kW'));
  expect(r.ok && r.value.unfed.length).toBeGreaterThan(40);
  expect(r.ok && r.value.appear.some((f) => f.severity === 'stop')).toBe(true);
  expect(r.ok && r.value.go).toEqual([]);
});

test('keeping it is one edit that leaves the plan sound, and the same kind again is refused', () => {
  const kind = named('Generator 144 kW, three-phase');
  const r = swapSource(plan, source?.id ?? '', kind);
  if (!r.ok) throw new Error(r.error.what);
  const after = applyChanges(plan, r.value.changes);
  expect(recordsOf(after, 'source')[0]?.kindId).toBe(kind.id);
  expect(assess(after, { revision: 1 }).findings.filter((f) => f.rule.startsWith('reference'))).toEqual([]);
  expect(swapSource(after, source?.id ?? '', kind).ok).toBe(false);
});

test('a way changed in place keeps its other ways, and takes no breaker of 0 A', () => {
  const box = recordsOf(plan, 'box').find((b) => waysOf(plan, b.id).length > 2);
  if (!box) throw new Error('no box');
  const [first] = waysOf(plan, box.id);
  const r = changeWay(plan, box.id, first?.id ?? '', { breakerA: 15, label: 'Moon' });
  if (!r.ok) throw new Error(r.error.what);
  const after = waysOf(applyChanges(plan, r.value), box.id);
  expect(after[0]).toMatchObject({ breakerA: 15, label: 'Moon' });
  expect(after.slice(1)).toEqual(waysOf(plan, box.id).slice(1));
  expect(changeWay(plan, box.id, first?.id ?? '', { breakerA: 0 }).ok).toBe(false);
  expect(changeWay(plan, box.id, 'nowhere', { breakerA: 15 }).ok).toBe(false);
});
