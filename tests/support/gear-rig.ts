import { gearBook } from '../../src/gear/index.ts';
import type { Practice } from '../../src/plan/records/index.ts';
import { PlanBuilder } from './plan-builder.ts';

/** A plan built from kinds of the gear book by their slugs. */
export const gearRig = (practice: Practice = 'north-america') => {
  const b = new PlanBuilder(
    practice === 'europe' ? { practice, lengthUnits: 'metric', frequencyHz: 50 } : {},
  );
  const book = new Map(gearBook(practice).map((k) => [k.slug, k]));
  /** Takes a kind of the book into the plan; gives its id. */
  const kind = (slug: string): string => {
    const k = book.get(slug);
    if (!k) throw new Error(`no ${slug} in the ${practice} book`);
    return b.put(k).id;
  };
  /** A cable between a port and an inlet, by the slug of its kind; 15.24 m unless told. */
  const run = (slug: string, from: readonly [string, string], to: readonly [string, string], mm = 15_240) =>
    b.cable(kind(slug), from, to, mm);
  return { b, kind, run, plan: () => b.plan() };
};
