import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addIssue } from '../../../src/plan/edits/issue.ts';
import { serialisePlan } from '../../../src/plan/file.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import type { AnyRecord } from '../../../src/plan/records/index.ts';
import { lampwright } from '../../support/command.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const folder = mkdtempSync(join(tmpdir(), 'lampwright-papers-'));
afterAll(() => rmSync(folder, { recursive: true }));

const kept = (name: string, plan: Plan): string => {
  const path = join(folder, name);
  writeFileSync(path, serialisePlan(plan));
  return path;
};
const withGel = (plan: Plan, gel: string): Plan => {
  const from = recordsOf(plan, 'fixture').find((f) => f.unit === '7');
  if (!from) throw new Error('the sample has lost unit 7');
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, gel } as AnyRecord }],
  });
};
let n = 0;
const issued = (plan: Plan, date: string): Plan =>
  applyChanges(plan, addIssue(plan, { date, note: '', by: '' }, (p) => `${p}-${n++}`).changes);

const first = kept('first.json', samplePlan());
const second = kept('second.json', withGel(samplePlan(), 'CTO ½'));
const twice = kept(
  'twice.json',
  withGel(issued(withGel(issued(samplePlan(), '2026-03-02'), 'blue'), '2026-03-09'), 'red'),
);

describe('changes', () => {
  test('between two files', async () => {
    const { status, out } = await lampwright('changes', first, second);
    expect(status).toBe(0);
    expect(out).toContain(': 1 change.\n');
    expect(out).toContain('Unit 7 gel now CTO ½, was none.\n');
    expect((await lampwright('changes', first, first)).out).toContain(': 0 changes.\n');
  });

  test('since the last issue, and between any two', async () => {
    expect((await lampwright('changes', twice)).out).toBe(
      'From issue B to the plan as it is now: 1 change.\nUnit 7 gel now red, was blue.\n',
    );
    expect((await lampwright('changes', twice, '--from', 'a', '--to', 'b')).out).toBe(
      'From issue A to issue B: 1 change.\nUnit 7 gel now blue, was none.\n',
    );
    const json = JSON.parse((await lampwright('changes', twice, '--from', 'A', '--json')).out);
    expect(json.changes[0].words).toBe('Unit 7 gel now red, was none');
    expect(json.changes[0].box.maxX).toBeGreaterThan(json.changes[0].box.minX);
  });

  test('refuses what is not there, in words', async () => {
    const never = await lampwright('changes', first);
    expect([never.status, never.err.includes('was never issued')]).toEqual([2, true]);
    const wrong = await lampwright('changes', twice, '--from', 'Q');
    expect([wrong.status, wrong.err.includes('It has: A, B.')]).toEqual([2, true]);
    expect((await lampwright('changes', first, second, '--from', 'A')).status).toBe(2);
  });
});

describe('papers', () => {
  test('as every format, the same bytes each time', async () => {
    const [a, b] = [join(folder, 'a'), join(folder, 'b')];
    const formats = 'csv,xlsx,svg,png,dxf,plan';
    for (const out of [a, b])
      expect((await lampwright('papers', first, '--out', out, '--format', formats)).status).toBe(0);
    const names = readdirSync(a).sort();
    for (const name of [
      'lists.xlsx',
      'floor-1.svg',
      'floor-1.png',
      'floor-1.dxf',
      'plan.plan.json',
      'runs.csv',
    ])
      expect(names).toContain(name);
    expect(names).not.toContain('papers.pdf');
    for (const name of names)
      expect(readFileSync(join(a, name)).equals(readFileSync(join(b, name))), name).toBe(true);
    expect(readFileSync(join(a, 'floor-1.png')).subarray(1, 4).toString()).toBe('PNG');
    expect(readFileSync(join(a, 'plan.plan.json'), 'utf8')).toBe(readFileSync(first, 'utf8'));
  });

  test('refuse a format there is none of', async () => {
    const { status, err } = await lampwright(
      'papers',
      first,
      '--out',
      join(folder, 'c'),
      '--format',
      'pdf,docx',
    );
    expect(status).toBe(2);
    expect(err).toContain('There is no format “docx”');
  });
});
