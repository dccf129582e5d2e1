import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addIssue, issuedPlan, issueState, issuesOf, planHash } from '../../../src/plan/edits/issue.ts';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { portName } from '../../../src/plan/names.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { waysOf } from '../../../src/plan/ports.ts';
import type { AnyRecord } from '../../../src/plan/records/index.ts';
import { planChanges } from '../../../src/report/changes.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const plan = samplePlan();
const change = (p: Plan, id: string, patch: Record<string, unknown>): Plan => {
  const from = p.records.get(id);
  if (!from) throw new Error(`no record ${id}`);
  return applyChanges(p, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, ...patch } as AnyRecord }],
  });
};
const without = (p: Plan, ...ids: string[]): Plan =>
  applyChanges(p, {
    added: [],
    updated: [],
    removed: ids.map((id) => p.records.get(id)).filter((r): r is AnyRecord => r !== undefined),
  });
const wordsOf = (before: Plan, after: Plan): readonly string[] =>
  planChanges(before, after).map((c) => c.words);
const unit = (n: string) => {
  const f = recordsOf(plan, 'fixture').find((x) => x.unit === n);
  if (!f) throw new Error(`no unit ${n}`);
  return f;
};
const reread = (p: Plan): Plan => {
  const r = readPlan(serialisePlan(p));
  if (!r.ok) throw new Error(r.error.what);
  return r.value.plan;
};

describe('changes between two plans', () => {
  it('are none between a plan and itself, read anew or not', () => {
    expect(planChanges(plan, plan)).toEqual([]);
    expect(planChanges(plan, reread(plan))).toEqual([]);
  });

  it('tell a unit that moved and went to another way of the same box in one line', () => {
    const f = unit('9');
    if (f.support.on !== 'stand') throw new Error('unit 9 stood on a stand');
    const stand = recordOf(plan, 'stand', f.support.standId);
    const cable = recordsOf(plan, 'cable').find((c) => c.to.recordId === f.id);
    if (!stand || !cable) throw new Error('unit 9 had a stand and a cable');
    const other = recordsOf(plan, 'cable').find(
      (c) => c.from.recordId === cable.from.recordId && c.from.portId !== cable.from.portId,
    );
    if (!other) throw new Error('the box had another cable');
    const after = change(
      change(plan, stand.id, { at: { xMm: stand.at.xMm + 1200, yMm: stand.at.yMm } }),
      cable.id,
      { from: other.from, piecesMm: [15240] },
    );
    const was = change(plan, cable.id, { piecesMm: [15240] });
    const [only, ...more] = planChanges(was, after);
    expect(more).toEqual([]);
    expect(only?.words).toMatch(/^Unit 9 moved 3′-11½?″|^Unit 9 moved 3′-1[01]/);
    expect(only?.words).toMatch(/, now on K1 way \d, was way \d$/);
    expect(only?.recordIds[0]).toBe(f.id);
    expect(only?.recordIds).toEqual(expect.arrayContaining([stand.id, cable.id]));
    // The box lies where it is now.
    expect(only?.box && (only.box.minX + only.box.maxX) / 2).toBeCloseTo(stand.at.xMm + 1200, 6);
  });

  it('say metres in a metric plan', () => {
    const metric = change(plan, 'plan', { lengthUnits: 'metric' });
    const f = unit('9');
    const standId = f.support.on === 'stand' ? f.support.standId : '';
    const at = recordOf(plan, 'stand', standId)?.at ?? { xMm: 0, yMm: 0 };
    const words = wordsOf(metric, change(metric, standId, { at: { xMm: at.xMm, yMm: at.yMm + 1200 } }));
    expect(words[0]).toMatch(/^Unit 9 moved 1\.2 m/);
  });

  it('tell what was added, taken away and renumbered', () => {
    const f = unit('9');
    const copy = { ...f, id: 'fx-new', unit: '77', support: { on: 'floor' as const } };
    const after = applyChanges(change(plan, unit('7').id, { unit: '70' }), {
      added: [copy],
      updated: [],
      removed: [unit('13')],
    });
    const words = wordsOf(plan, after);
    expect(words).toContainEqual(expect.stringMatching(/^Unit 77 added: LED spot 350 W/));
    expect(words).toContainEqual(expect.stringMatching(/^Unit 13 removed: /));
    expect(words).toContain('Unit 7 now called unit 70');
    const gone = planChanges(plan, after).find((c) => c.what === 'removed');
    expect(gone?.recordIds).toContain(unit('13').id);
    expect(gone?.box).toBeDefined();
  });

  it('tell address, mode, gel, height and use with what they were', () => {
    const f = unit('7');
    if (!f.patch) throw new Error('unit 7 was patched');
    const after = change(plan, f.id, { patch: { ...f.patch, address: 300 }, gel: 'CTO ½', use: 'key' });
    expect(wordsOf(plan, after)[0]).toContain(`address now U2 300, was U2 ${f.patch.address}`);
    expect(wordsOf(plan, after)[0]).toContain('gel now CTO ½, was none');
  });

  it('gather levels by setup, one by one where they are few', () => {
    const setup = recordsOf(plan, 'setup')[0];
    if (!setup) throw new Error('the sample had setups');
    const fixtures = recordsOf(plan, 'fixture');
    const set = (p: Plan, id: string, pct: number): Plan => {
      const levelId = `level:${setup.id}:${id}`;
      const rest = without(p, levelId);
      return applyChanges(rest, {
        added: [{ id: levelId, type: 'level', setupId: setup.id, fixtureId: id, levelPct: pct }],
        updated: [],
        removed: [],
      });
    };
    const one = planChanges(plan, set(plan, fixtures[0]?.id ?? '', 37));
    expect(one.length).toBe(1);
    expect(one[0]?.words).toMatch(/^Setup .*: unit \S+ now 37 %, was /);
    const many = fixtures.slice(0, 8).reduce((p, f) => set(p, f.id, 37), plan);
    expect(planChanges(plan, many).length).toBe(1);
    expect(planChanges(plan, many)[0]?.words).toContain('levels of 8 units changed');
  });

  it('tell the title block and limits, and leave sheet and scale out', () => {
    const head = recordOf(plan, 'plan', 'plan');
    if (!head) throw new Error('a plan has its record');
    const after = change(plan, 'plan', {
      scene: '99',
      people: { ...head.people, gaffer: 'Q. New' },
      limits: [{ limit: 'drop-warn', value: 4, reason: 'short day' }],
      paper: { ...head.paper, sheet: 'A0' },
    });
    const words = wordsOf(plan, after);
    expect(words.some((w) => w.startsWith('Scene / set now 99'))).toBe(true);
    expect(words.some((w) => w.startsWith('Gaffer now Q. New'))).toBe(true);
    expect(words).toContain('Limit drop-warn now 4, was the table’s');
    expect(words.join(' ')).not.toMatch(/A0|paper/i);
  });

  it('tell both units when their cables are exchanged, by the ways they are on', () => {
    const into = (n: string) => {
      const c = recordsOf(plan, 'cable').find((x) => x.to.recordId === unit(n).id);
      if (!c) throw new Error(`unit ${n} had a cable`);
      return c;
    };
    const [a, b] = [into('9'), into('7')];
    const after = change(change(plan, a.id, { to: b.to }), b.id, { to: a.to });
    const words = wordsOf(plan, after);
    const way = (c: typeof a) => portName(plan, c.from);
    expect(words.find((w) => w.startsWith('Unit 9 '))).toContain(`now on ${way(b)}, was `);
    expect(words.find((w) => w.startsWith('Unit 7 '))).toContain(`now on ${way(a)}, was `);
  });

  it('tell every unit of a stand that moved, and its sand bags once', () => {
    const f = unit('9');
    if (f.support.on !== 'stand') throw new Error('unit 9 stood on a stand');
    const standId = f.support.standId;
    const two = change(plan, unit('8').id, { support: { on: 'stand', standId } });
    const stand = recordOf(two, 'stand', standId);
    const after = change(two, standId, {
      at: { xMm: (stand?.at.xMm ?? 0) + 1200, yMm: stand?.at.yMm ?? 0 },
      bags: 2,
    });
    const words = wordsOf(two, after);
    for (const n of ['8', '9'])
      expect(words.find((w) => w.startsWith(`Unit ${n} `))).toContain('moved 3′-11');
    expect(words.filter((w) => w.includes('stand sand bags now 2, was none')).length).toBe(1);
  });

  it('tell a floor, a kind, a ballast and a breaker by name', () => {
    const up = applyChanges(plan, {
      added: [{ id: 'fl-9', type: 'floor', name: 'Gallery', levelMm: 3000, northDeg: 270 }],
      updated: [],
      removed: [],
    });
    const floor = recordsOf(plan, 'floor')[0]?.name;
    const f = unit('14');
    expect(wordsOf(up, change(up, f.id, { floorId: 'fl-9' }))[0]).toContain(
      `Unit 14 now on floor Gallery, was on ${floor}`,
    );
    const [kind, other] = recordsOf(plan, 'kind').filter((k) => k.family === 'fixture');
    const lamp = recordsOf(plan, 'fixture').find((x) => x.kindId === kind?.id);
    expect(wordsOf(plan, change(plan, lamp?.id ?? '', { kindId: other?.id }))[0]).toContain(
      `now ${other?.name}, was ${kind?.name}`,
    );
    const ballast = recordsOf(plan, 'ballast')[0];
    const head = recordOf(plan, 'fixture', ballast?.fixtureId ?? '');
    const words = wordsOf(plan, change(plan, ballast?.id ?? '', { headCableMm: 3048 }));
    expect(words).toEqual([
      expect.stringMatching(new RegExp(`^Unit ${head?.unit} ballast head cable now 10′-0″, was `)),
    ]);
    const box = recordsOf(plan, 'box')[0];
    const way = box && waysOf(plan, box.id)[0];
    if (!box || !way) throw new Error('the sample had a box with ways');
    const own = change(plan, box.id, { ways: [way] });
    const ten = change(plan, box.id, { ways: [{ ...way, breakerA: 10 }] });
    expect(wordsOf(own, ten)).toEqual([
      `Box ${box.label} way ${way.label} breaker now 10 A, was ${way.breakerA} A`,
    ]);
  });

  it('tell a setup by its new name, and a box that is called otherwise once, not at each of its units', () => {
    const setup = recordsOf(plan, 'setup')[0];
    const box = recordsOf(plan, 'box')[0];
    expect(wordsOf(plan, change(plan, setup?.id ?? '', { name: 'Night, rain' }))).toEqual([
      `Setup ${setup?.name} now called setup Night, rain`,
    ]);
    expect(wordsOf(plan, change(plan, box?.id ?? '', { label: 'K9' }))).toEqual([
      `Box ${box?.label} now called box K9`,
    ]);
  });

  it('leave out what is no change of the design: a lock, a group, a view, a label’s place, a step that is ticked', () => {
    const f = unit('9');
    const locked = change(plan, f.id, { locked: true, groupId: 'g-1', order: 4 });
    const after = applyChanges(locked, {
      added: [
        { id: `label:${f.id}`, type: 'labelPlace', recordId: f.id, dxMm: 10, dyMm: 20 },
        { id: `tick:${f.id}:address`, type: 'tick', fixtureId: f.id, step: 'address', by: '', when: '' },
      ],
      updated: [],
      removed: [],
    });
    expect(planChanges(plan, after)).toEqual([]);
  });

  it('run backwards name the same things', () => {
    const after = change(plan, unit('7').id, { gel: 'blue' });
    const there = planChanges(plan, after).map((c) => c.recordIds[0]);
    expect(planChanges(after, plan).map((c) => c.recordIds[0])).toEqual(there);
  });
});

describe('an issue', () => {
  const issued = (p: Plan, id: string): Plan => {
    let n = 0;
    const made = addIssue(p, { date: '2026-03-09', note: '', by: '' }, (prefix) => `${prefix}-${id}${n++}`);
    return applyChanges(p, made.changes);
  };

  it('keeps the plan as issued, gives it back and leaves it out of the plan’s hash', () => {
    const a = issued(plan, 'a');
    const [issue] = issuesOf(a);
    if (!issue) throw new Error('no issue');
    expect(planHash(a)).toBe(planHash(plan));
    const back = issuedPlan(reread(a), issue);
    expect(back.ok && planChanges(back.value, plan)).toEqual([]);
    expect(back.ok && planHash(back.value)).toBe(planHash(plan));
  });

  it('knows whether the papers are as issued, and what they are compared with', () => {
    expect(issueState(plan)).toMatchObject({ draft: true, revision: 'A', before: undefined });
    const a = issued(plan, 'a');
    expect(issueState(a)).toMatchObject({ draft: false, revision: 'A', before: undefined });
    const changed = change(a, unit('7').id, { gel: 'blue' });
    expect(issueState(changed)).toMatchObject({ draft: true, revision: 'B' });
    expect(issueState(changed).before?.revision).toBe('A');
    const b = issued(changed, 'b');
    expect(issueState(b)).toMatchObject({ draft: false, revision: 'B' });
    expect(issueState(b).before?.revision).toBe('A');
  });

  it('does not carry earlier plans in its own: the tenth issue is no larger than the first', () => {
    const sizes: number[] = [];
    let p = plan;
    for (let i = 0; i < 4; i++) {
      p = issued(change(p, unit('7').id, { gel: `gel ${i}` }), `n${i}`);
      sizes.push(Math.max(...recordsOf(p, 'blob').map((b) => b.base64.length)));
    }
    expect((sizes[3] ?? 0) / (sizes[0] ?? 1)).toBeLessThan(1.2);
  });

  it('says so when it kept no plan, or a damaged one', () => {
    const a = issued(plan, 'a');
    const issue = issuesOf(a)[0];
    if (!issue) throw new Error('no issue');
    const { snapshotId: _s, ...bare } = issue;
    const old = issuedPlan(a, bare);
    expect(!old.ok && old.error.what).toContain('kept no plan');
    const damaged = change(a, issue.snapshotId ?? '', { base64: 'AAAA' });
    const bad = issuedPlan(damaged, issue);
    expect(!bad.ok && bad.error.what).toContain('cannot be read');
  });
});
