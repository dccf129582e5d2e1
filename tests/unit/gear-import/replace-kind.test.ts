import { describe, expect, test } from 'vitest';
import { kindUpdates } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { replaceKind } from '../../../src/plan/edits/kinds.ts';
import type { Kind } from '../../../src/plan/kinds/kinds.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText } from '../../../src/report/text.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const replaced = (plan: Plan, from: string, kind: Kind) => {
  const r = replaceKind(plan, from, kind);
  if (!r.ok) throw new Error(r.error.what);
  return { ...r.value, after: applyChanges(plan, r.value.changes) };
};

const rig = () => {
  const b = new PlanBuilder();
  b.sourceKind('set', {
    ways: [{ id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
    outlets: [{ id: 'o1', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: '1' }],
  });
  b.cableKind('cord');
  const lamp = b.fixtureKind('lamp', {}, { modes: [{ id: 'a', name: 'A', slots: 4, parts: 1 }] });
  const source = b.source('set');
  b.put({ id: 'u', type: 'universe', number: 1, name: '', colorIndex: 0 });
  const unit = b.fixture('lamp', {
    unit: '7',
    patch: { modeId: 'a', universeId: 'u', address: 1, paired: false },
  });
  const cable = b.cable('cord', [source.id, 'o1'], [unit.id, 'in']);
  return { b, lamp, source, unit, cable, plan: b.plan() };
};

describe('giving records another kind', () => {
  test('the same ports and modes: all records move, nothing is unfit, the old kind leaves', () => {
    const { plan, lamp, unit, cable } = rig();
    const next = { ...lamp, id: 'lamp@2', massKg: 9 };
    const { after, records, unfit } = replaced(plan, 'lamp', next);
    expect([records, unfit]).toEqual([[unit.id], []]);
    expect(after.records.get(unit.id)).toEqual({ ...unit, kindId: 'lamp@2' });
    expect(after.records.get(cable.id)).toBe(cable);
    expect(after.records.has('lamp')).toBe(false);
    expect(referenceProblems(after)).toEqual([]);
  });

  test('renamed ports and modes are found by place and by name', () => {
    const { plan, lamp, unit, cable } = rig();
    const { after, unfit } = replaced(plan, 'lamp', {
      ...lamp,
      id: 'lamp@2',
      inlets: [{ id: 'mains', connector: 'stage-pin-20', legs: 1, neutral: true }],
      modes: [{ id: 'a-new', name: 'A', slots: 4, parts: 1 }],
    });
    expect(unfit).toEqual([]);
    expect(after.records.get(cable.id)).toEqual({ ...cable, to: { recordId: unit.id, portId: 'mains' } });
    expect(after.records.get(unit.id)).toMatchObject({ patch: { modeId: 'a-new' } });
    expect(referenceProblems(after)).toEqual([]);
  });

  test('what no longer fits is left as it is and listed', () => {
    const { plan, lamp, unit, cable } = rig();
    const { after, unfit } = replaced(plan, 'lamp', {
      ...lamp,
      id: 'lamp@2',
      needsBallast: true,
      inlets: [{ id: 'in', connector: 'iec-32-1', legs: 1, neutral: true }],
      modes: [{ id: 'b', name: 'B', slots: 4, parts: 1 }],
    });
    expect(unfit).toEqual([
      'unit 7: the new kind needs a ballast',
      'unit 7: its mode “A” is not among the new modes',
      expect.stringMatching(/^cable .*: its socket does not fit unit 7 any more$/),
    ]);
    expect(after.records.get(unit.id)).toMatchObject({ patch: { modeId: 'a' } });
    expect(after.records.get(cable.id)).toBe(cable);
    expect(replaced(plan, 'lamp', { ...lamp, id: 'x', inlets: [] }).unfit[0]).toMatch(
      /no such inlet any more/,
    );
  });

  test('another footprint of the same mode is told', () => {
    const { plan, lamp } = rig();
    const modes = [{ id: 'a', name: 'A', slots: 6, parts: 1 }];
    expect(replaced(plan, 'lamp', { ...lamp, id: 'lamp@2', modes }).unfit[0]).toMatch(/takes 6 slots, not 4/);
  });

  test('two outlets never fall onto one', () => {
    const { b, plan, source } = rig();
    const kind = plan.records.get('set') as Extract<Kind, { family: 'source' }>;
    const outlet = (id: string) => ({ id, connector: 'stage-pin-20', legs: 1, neutral: true, wayId: '1' });
    const wide = b.put({ ...kind, outlets: [outlet('o1'), outlet('o2')] });
    const second = b.fixture('lamp');
    const cable = b.cable('cord', [source.id, 'o2'], [second.id, 'in']);
    const { after, unfit } = replaced(b.plan(), 'set', {
      ...wide,
      id: 'set@2',
      outlets: [outlet('x'), outlet('o1')],
    });
    // o1 keeps its own id; o2 stood where o1 is now, and has nowhere to go.
    expect(after.records.get(cable.id)).toBe(cable);
    expect(unfit).toHaveLength(1);
  });

  test('stands, wall outlets, boxes, ballasts and cables say what they lose', () => {
    const b = new PlanBuilder();
    const way = { id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na' as const, legs: [0] };
    const panel = b.sourceKind('panel', { ways: [way] });
    const box = b.boxKind('box', { ways: [way] });
    const lamp = b.fixtureKind('head', null, { needsBallast: true });
    const ballast = b.ballastKind('bal', {}, { heads: ['head'] });
    const cord = b.cableKind('cord');
    const source = b.source('panel');
    b.outlet(source.id, '1', { label: 'W1' });
    b.box('box', { label: 'K1', ways: [{ ...way, breakerA: 15 }] });
    const head = b.fixture('head', { unit: '3' });
    b.ballast('bal', head.id);
    b.cable('cord', [source.id, 'none'], [head.id, 'none'], 7620);
    const plan = b.plan();
    expect(replaced(plan, 'panel', { ...panel, id: 'p2', ways: [] }).unfit).toEqual([
      'wall outlet W1: its circuit is not on the new source',
    ]);
    expect(replaced(plan, 'box', { ...box, id: 'b2', ways: [] }).unfit).toEqual([
      'box K1: its change to way 1 has no way to go to',
    ]);
    expect(replaced(plan, 'bal', { ...ballast, id: 'bal2', heads: ['other'] }).unfit).toEqual([
      'ballast of unit 3: the new ballast does not run its head',
    ]);
    expect(replaced(plan, 'head', { ...lamp, id: 'h2', slug: 'other-head' }).unfit).toEqual([
      'unit 3: its ballast is not one for the new kind',
    ]);
    expect(replaced(plan, 'cord', { ...cord, id: 'c2', stockLengthsMm: [5000] }).unfit[0]).toMatch(/7620 mm/);
  });

  test('another family and an absent kind are refused; the same kind changes nothing', () => {
    const { plan, lamp } = rig();
    const cord = plan.records.get('cord') as Kind;
    const other = replaceKind(plan, 'lamp', cord);
    expect(other.ok ? '' : other.error.what).toMatch(/cannot become/);
    expect(replaceKind(plan, 'nothing', lamp).ok).toBe(false);
    expect(replaced(plan, 'lamp', lamp).changes).toEqual({ added: [], updated: [], removed: [] });
  });
});

describe('kinds that a book has in another form', () => {
  test('are offered with their differences and the records that have them', () => {
    const { plan, lamp, unit } = rig();
    const newer = { ...lamp, id: 'lamp@2', massKg: 9 };
    const other = { ...lamp, id: 'other', slug: 'other' };
    expect(kindUpdates(plan, [newer, other])).toEqual([
      { from: lamp, to: newer, differences: ['mass: 5 kg → 9 kg'], records: [unit.id] },
    ]);
    expect(kindUpdates(plan, [{ ...lamp, id: 'x', origin: { book: 'file', version: '2' } }])).toEqual([]);
  });
});

test('a load whose watts are not known is not computed, and said so', () => {
  const { b } = rig();
  b.fixtureKind('lamp', { wattsW: 0, unknown: true });
  b.setup('Day', 1);
  const plan = b.plan();
  const told = assess(plan, { revision: 0 }).findings.map((f) =>
    Object.values(findingText(plan, f)).join(' '),
  );
  expect(told.join(' ')).toMatch(/watts are not known/);
});
