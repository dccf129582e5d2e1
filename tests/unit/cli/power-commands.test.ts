import { linkSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { lampwright } from '../../support/command.ts';
import { generatorRig } from '../../support/plan-builder.ts';

const folder = mkdtempSync(join(tmpdir(), 'lampwright-power-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Four units of 10 A on leg A and two that are not plugged in. */
const planFile = (name: string): string => {
  const { b, plug } = generatorRig();
  b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' });
  for (const way of [1, 4, 7, 10]) plug('f', way, 0);
  for (const xMm of [2000, 4000]) b.fixture('f', { at: { xMm, yMm: 0 } });
  const path = join(folder, name);
  writeFileSync(path, serialisePlan(b.plan()));
  return path;
};

const planAt = (path: string) => {
  const read = readPlan(readFileSync(path, 'utf8'));
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
};

test('power-plug-all: plug writes a plan with everything plugged in, the same each time, and leaves its input alone', async () => {
  const plan = planFile('plug.json');
  const before = readFileSync(plan, 'utf8');
  const out = join(folder, 'plugged.json');
  const { status, out: text } = await lampwright('plug', plan, '--out', out);
  expect([status, readFileSync(plan, 'utf8')]).toEqual([0, before]);
  expect(text).toMatch(/2 plugged in, 0 left/);
  expect(recordsOf(planAt(out), 'cable')).toHaveLength(7);
  const first = readFileSync(out, 'utf8');
  await lampwright('plug', plan, '--out', out, '--json');
  expect(readFileSync(out, 'utf8')).toBe(first);
});

test('power-balance: balance prints scores, bound and trade-off, keeps a cap, and speaks JSON', async () => {
  const plan = planFile('balance.json');
  const out = join(folder, 'balanced.json');
  const { status, out: text } = await lampwright('balance', plan, '--out', out);
  expect(status).toBe(0);
  expect(text).toMatch(/bound: .*proved the best/);
  expect(text).toMatch(/with at most 2 moves/);
  expect(text).toMatch(/De-energize/);
  const capped = await lampwright('balance', plan, '--out', out, '--moves', '1', '--json');
  const told = JSON.parse(capped.out);
  expect(told.moves).toHaveLength(1);
  expect(told.sources[0].after.worstLegA).toBeCloseTo(30, 6);
});

test('power-balance: a new plan is never written over the one that is read, by whatever name', async () => {
  const plan = planFile('own.json');
  const before = readFileSync(plan, 'utf8');
  const link = join(folder, 'link.json');
  linkSync(plan, link);
  for (const command of ['plug', 'balance'])
    for (const out of [plan, link, folder]) {
      const r = await lampwright(command, plan, '--out', out);
      expect([command, out, r.status, r.out]).toEqual([command, out, 2, '']);
      expect(r.err).not.toMatch(/\n\s+at /);
    }
  expect(readFileSync(plan, 'utf8')).toBe(before);
  expect((await lampwright('plug', plan)).status).toBe(2);
  expect((await lampwright('balance', plan, '--out', 'x', '--moves', 'many')).status).toBe(2);
});

test('power-what-if: what-if names things by label or id and refuses what is not there', async () => {
  const plan = planFile('what-if.json');
  const trip = await lampwright('what-if', plan, '--trip', 'K1/4');
  expect(trip.status).toBe(0);
  expect(trip.out).toMatch(/K1 way 4 trips.*Unit \d+: dark/s);
  expect((await lampwright('what-if', plan, '--lose', 'leg=Generator/A')).out).toMatch(/loses leg A/);
  const json = await lampwright('what-if', plan, '--lose', 'neutral=K1', '--json');
  expect(JSON.parse(json.out)).toMatchObject({ format: 'lampwright-what-if', voltsKnown: true });
  for (const args of [
    [],
    ['--trip', 'K9/1'],
    ['--trip', 'K1'],
    ['--trip', 'K1/99'],
    ['--lose', 'leg=Generator/D'],
    ['--lose', 'sleep'],
    ['--trip', 'K1/4', '--lose', 'neutral=K1'],
    ['--trip', 'K1/4', '--setup', 'none'],
    ['--swap', 'Generator'],
    ['--swap', 'Generator=no-such-set'],
    ['--swap', 'K1=generator-100kw-3ph'],
    ['--swap', 'Generator=generator-100kw-3ph', '--trip', 'K1/4'],
  ]) {
    const r = await lampwright('what-if', plan, ...args);
    expect([args.join(' '), r.status, r.out]).toEqual([args.join(' '), 2, '']);
  }
});

test('power-fault-loop: what-if tells the loop at the end of each run and what opens', async () => {
  const plan = planFile('loops.json');
  const told = await lampwright('what-if', plan, '--loops');
  expect(told.status).toBe(0);
  // A set whose loop no one has measured.
  expect(told.out).toMatch(/measure the loop\. It opens at once with a loop of [\d.]+ Ω or less/);
  expect(told.out).toMatch(/no time is set/);
  const json = JSON.parse((await lampwright('what-if', plan, '--loops', '--json')).out) as { rows: object[] };
  expect(json.rows.length).toBeGreaterThan(1);
  expect((await lampwright('what-if', plan, '--loops', '--trip', 'K1/4')).status).toBe(2);
});

test('power-what-if: what-if tells what another source of the book would do', async () => {
  const plan = planFile('swap.json');
  const small = await lampwright('what-if', plan, '--swap', 'Generator=generator-100kw-3ph');
  expect(small.status).toBe(0);
  expect(small.out).toMatch(/in place of/);
  expect(small.out).toMatch(/ {2}A: [\d.]+ A .*→ [\d.]+ A/);
  const json = await lampwright('what-if', plan, '--swap', 'Generator=generator-100kw-3ph', '--json');
  const told = JSON.parse(json.out) as { format: string; lines: { name: string }[] };
  expect(told.format).toBe('lampwright-what-if');
  expect(told.lines.map((l) => l.name)).toEqual(['A', 'B', 'C', 'N', 'real power', 'apparent power']);
});

test('power-size: size names the smallest set of the book that carries the plan with headroom', async () => {
  const plan = planFile('size.json');
  const { status, out } = await lampwright('size', plan, '--json');
  expect(status).toBe(0);
  const set = JSON.parse(out).sizes.find((s: { what: string }) => s.what === 'generator');
  // 40 A on one leg and 20 % more: 48 A × 360 V = 17.3 kVA, and a main breaker of 60 A or more.
  expect(set).toMatchObject({ now: 'larger', kind: expect.stringMatching(/^generator-.*-3ph$/) });
  const more = JSON.parse((await lampwright('size', plan, '--headroom', '300', '--json')).out);
  expect(more.sizes[0].kind).not.toBe(set.kind);
  expect((await lampwright('size', plan)).out).toMatch(/with 20 % headroom/);
});
