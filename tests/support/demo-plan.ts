import { readFileSync } from 'node:fs';
import { readPlan } from '../../src/plan/file.ts';
import type { Plan } from '../../src/plan/plan.ts';

/** One of the demo plans, by its short name. */
export const demoPlan = (name: 'study' | 'street' | 'stage'): Plan => {
  const file = `${name}.plan.json`;
  const read = readPlan(readFileSync(new URL(`../../demo-sets/${file}`, import.meta.url), 'utf8'), file);
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
};
