import { gearBook } from '../gear/index.ts';
import type { AdapterKind } from '../plan/kinds/adapter.ts';
import type { BallastKind, CableKind, Kind, KindFamily, StandKind } from '../plan/kinds/kinds.ts';
import { type Plan, planRecord, recordsOf } from '../plan/plan.ts';

/** The gear the editor can place and run: the gear book as the editor needs it. */
export interface Book {
  /** All kinds, in the book's order. */
  kinds(): readonly Kind[];
  /** The kind with this slug. */
  find(slug: string): Kind | undefined;
  cables(): readonly CableKind[];
  /** Ends between unlike connectors of power, tees among them. */
  adapters(): readonly AdapterKind[];
  stands(): readonly StandKind[];
  /** The ballast that runs this head, by the head's slug. */
  ballastFor(headSlug: string): BallastKind | undefined;
}

/** A book over a list of kinds. Lists by family and the index by slug are made once. */
export const bookOf = (kinds: readonly Kind[]): Book => {
  const bySlug = new Map(kinds.map((k) => [k.slug, k]));
  const family = <F extends KindFamily>(f: F): readonly Extract<Kind, { family: F }>[] =>
    kinds.filter((k): k is Extract<Kind, { family: F }> => k.family === f);
  const cables = family('cable');
  const adapters = family('adapter').filter((k) => k.what !== 'data');
  const stands = family('stand');
  const ballasts = family('ballast');
  return {
    kinds: () => kinds,
    find: (slug) => bySlug.get(slug),
    cables: () => cables,
    adapters: () => adapters,
    stands: () => stands,
    ballastFor: (slug) => ballasts.find((b) => b.heads.includes(slug)),
  };
};

/** The built-in book of the plan's practice, with the kinds that only the plan itself holds after it. */
export const bookForPlan = (plan: Plan): Book => {
  const builtIn = gearBook(planRecord(plan).practice);
  const known = new Set(builtIn.map((k) => k.slug));
  return bookOf([...builtIn, ...recordsOf(plan, 'kind').filter((k) => !known.has(k.slug))]);
};
