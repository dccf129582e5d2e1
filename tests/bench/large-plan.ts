import { demoMakers } from '../../demo-sets/make/all.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import { removeRecords } from '../../src/plan/edits/arrange.ts';
import { readPlan } from '../../src/plan/file.ts';
import { levelId, type Plan, recordsOf } from '../../src/plan/plan.ts';

type Json = Record<string, unknown>;

const SHARED = new Set(['plan', 'kind', 'floor', 'setup', 'level', 'acknowledgement', 'issue']);
/** Copies stand side by side, this far apart. */
const PITCH_MM = 45_000;

const isObject = (v: unknown): v is Json => typeof v === 'object' && v !== null && !Array.isArray(v);

/** A record with other ids, moved along x. Outlines of set pieces are about their own centre and stay. */
const copyOf = (value: unknown, rename: (id: string) => string, byMm: number): unknown => {
  if (typeof value === 'string') return rename(value);
  if (Array.isArray(value)) return value.map((v) => copyOf(v, rename, byMm));
  if (!isObject(value)) return value;
  const out: Json = {};
  for (const [key, v] of Object.entries(value))
    out[key] = key === 'xMm' ? Number(v) + byMm : key === 'outline' ? v : copyOf(v, rename, byMm);
  return out;
};

/** The stage demo several times side by side: as many fixtures and setups as asked, all of them plugged in, with levels. */
export const largePlan = (fixtures = 600, setups = 12): Plan => {
  const stage = demoMakers.stage?.();
  if (!stage) throw new Error('the stage demo is gone');
  const all = [...stage.records.values()];
  const own = all.filter((r) => !SHARED.has(r.type));
  const ids = new Set(own.map((r) => r.id));
  const perCopy = recordsOf(stage, 'fixture').length;
  const records: unknown[] = all.filter((r) => r.type === 'plan' || r.type === 'kind' || r.type === 'floor');
  for (let copy = 0; copy * perCopy < fixtures; copy++) {
    const rename = (id: string): string => (ids.has(id) ? `${id}-c${copy}` : id);
    for (const r of own) records.push(copyOf(r, rename, copy * PITCH_MM));
  }
  for (let s = 0; s < setups; s++)
    records.push({ id: `setup-${s}`, type: 'setup', order: s, name: `Setup ${s + 1}` });
  const read = readPlan(JSON.stringify({ format: 'lampwright-plan', version: 1, records }));
  if (!read.ok || read.value.notices.length > 0) throw new Error('the large plan cannot be read');
  const surplus = recordsOf(read.value.plan, 'fixture').slice(fixtures);
  const trimmed = applyChanges(
    read.value.plan,
    removeRecords(read.value.plan, new Set(surplus.map((f) => f.id))),
  );
  const levels = recordsOf(trimmed, 'fixture').flatMap((f, i) =>
    Array.from({ length: setups }, (_, s) => ({
      id: levelId(`setup-${s}`, f.id),
      type: 'level' as const,
      setupId: `setup-${s}`,
      fixtureId: f.id,
      levelPct: (i * 37 + s * 53) % 101,
    })),
  );
  return applyChanges(trimmed, { added: levels, updated: [], removed: [] });
};
