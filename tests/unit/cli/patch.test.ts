import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { ROOT } from '../../../src/cli/bootstrap.mjs';
import { run } from '../../../src/cli/main.ts';
import { controlFindings, universeUse } from '../../../src/engines/control/index.ts';
import { readPlan } from '../../../src/plan/file.ts';
import type { Plan } from '../../../src/plan/plan.ts';

const folder = mkdtempSync(join(tmpdir(), 'lampwright-patch-'));
afterAll(() => rmSync(folder, { recursive: true }));
const STAGE = join(folder, 'stage.json');
cpSync(join(ROOT, 'demo-sets', 'stage.plan.json'), STAGE);

const patch = async (...args: string[]): Promise<{ status: number; out: string; err: string }> => {
  let out = '';
  let err = '';
  const status = await run(['patch', ...args], {
    out: (t) => {
      out += t;
    },
    err: (t) => {
      err += t;
    },
  });
  return { status, out, err };
};

const planIn = (name: string): Plan => {
  const r = readPlan(readFileSync(join(folder, name), 'utf8'));
  if (!r.ok) throw new Error(r.error.what);
  return r.value.plan;
};

test('writes a plan with new addresses beside the old one and prints who got which', async () => {
  const before = readFileSync(STAGE, 'utf8');
  const { status, out } = await patch(STAGE, '--out', join(folder, 'new.json'));
  expect(status).toBe(0);
  expect(out).toMatch(/62 units in \d+ universes/);
  expect(readFileSync(STAGE, 'utf8')).toBe(before);
  const plan = planIn('new.json');
  // The lines of the demo still carry what they carried; the patch itself is right.
  expect(controlFindings(plan).filter((f) => !f.rule.startsWith('control-line-'))).toEqual([]);
  expect(universeUse(plan).reduce((n, u) => n + u.rows.length, 0)).toBe(62);
});

test('packs into as few as it can and says the same as JSON', async () => {
  const { out } = await patch(STAGE, '--out', join(folder, 'few.json'), '--fewest', '--json');
  const told = JSON.parse(out) as { universes: number[]; lowerBound: number; units: unknown[] };
  expect(told.units).toHaveLength(62);
  expect(told.universes).toHaveLength(told.lowerBound);
});

test.each([
  ['its own input', [STAGE, '--out', STAGE], 'is the plan that is read'],
  ['a folder', [STAGE, '--out', folder], 'is a folder'],
  ['no --out', [STAGE], '--out NEW'],
  ['an unknown order', [STAGE, '--out', join(folder, 'x.json'), '--order', 'size'], 'is no order'],
  [
    'a start that is no address',
    [STAGE, '--out', join(folder, 'x.json'), '--start', '3/513'],
    'no such slot',
  ],
  [
    'a step out of range',
    [STAGE, '--out', join(folder, 'x.json'), '--step', '0'],
    'The step is a whole number',
  ],
])('refuses %s and writes nothing', async (_name, args, words) => {
  const { status, err } = await patch(...args);
  expect(status).toBe(2);
  expect(err).toContain(words);
  expect(readdirSync(folder).filter((f) => f === 'x.json' || f.endsWith('.part'))).toEqual([]);
});

test('puts the units of each line into the universe its port carries', async () => {
  const { status } = await patch(STAGE, '--out', join(folder, 'lines.json'), '--order', 'line', '--by-line');
  expect(status).toBe(0);
  const plan = planIn('lines.json');
  expect(controlFindings(plan).filter((f) => f.severity === 'stop')).toEqual([]);
});
