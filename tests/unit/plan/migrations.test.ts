import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { PLAN_VERSION, readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { migrate, migrations } from '../../../src/plan/migrations.ts';
import { recordTypes } from '../../support/json-arbitrary.ts';
import { need } from '../../support/storage-world.ts';

const folder = new URL('../../old-plans/', import.meta.url);
const kept = readdirSync(folder).filter((name) => name.endsWith('.json'));
const versions = Array.from({ length: PLAN_VERSION }, (_, i) => i + 1);

test('there is one migration between each version and the next', () => {
  expect(migrations).toHaveLength(PLAN_VERSION - 1);
});

test('a missing step is a mistake of the program and throws', () => {
  expect(() => migrate({}, 0)).toThrow('no migration from version 0');
});

test('a plan of every version is kept', () => {
  expect(kept.sort()).toEqual(versions.map((v) => `v${v}.json`).sort());
});

describe.each(versions)('the kept plan of version %i', (version) => {
  const text = readFileSync(new URL(`v${version}.json`, folder), 'utf8');

  test('is of that version and opens with nothing set aside', () => {
    expect(JSON.parse(text).version).toBe(version);
    const read = need(readPlan(text));
    expect(read.notices).toEqual([]);
    expect(read.newer).toBe(false);
    expect(read.plan.records.size).toBe(JSON.parse(text).records.length);
  });

  test('keeps its unknown keys and gives a plan of the present version', () => {
    const read = need(readPlan(text));
    const saved = JSON.parse(serialisePlan(read.plan));
    expect(saved.version).toBe(PLAN_VERSION);
    expect(saved['x-later']).toEqual({ kept: true });
    expect(saved.records.find((r: { id: string }) => r.id === 'mark-1')['x-note']).toBe('kept');
  });

  test('holds a record of every type that version had', () => {
    if (version !== PLAN_VERSION) return;
    const types = new Set(JSON.parse(text).records.map((r: { type: string }) => r.type));
    expect(recordTypes.filter((t) => !types.has(t))).toEqual([]);
  });
});

test('the kept plan of the present version loses nothing when it is read and written', () => {
  const text = readFileSync(new URL(`v${PLAN_VERSION}.json`, folder), 'utf8');
  const saved = serialisePlan(need(readPlan(text)).plan);
  const byId = (file: string): unknown =>
    Object.fromEntries(JSON.parse(file).records.map((r: { id: string }) => [r.id, r]));
  expect(byId(saved)).toMatchObject(byId(text) as object);
  expect(serialisePlan(need(readPlan(saved)).plan)).toBe(saved);
});
