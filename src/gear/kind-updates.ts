import type { Id } from '../kernel/ids.ts';
import type { Kind } from '../plan/kinds/kinds.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import { kindHash } from './book.ts';
import { kindDifferences } from './kind-differences.ts';

/** A kind of a plan that a book has in another form. Nothing is changed until someone has looked at it. */
export interface KindUpdate {
  /** The kind as the plan has it. */
  readonly from: Kind;
  readonly to: Kind;
  readonly differences: readonly string[];
  /** Records of the plan that have this kind. */
  readonly records: readonly Id[];
}

/** Kinds of a plan whose slug is in the book with other content, in the plan's order. For `replaceKind`, one by one. */
export const kindUpdates = (plan: Plan, book: readonly Kind[]): readonly KindUpdate[] => {
  const bySlug = new Map(book.map((k) => [k.slug, k]));
  const users = new Map<Id, Id[]>();
  for (const r of plan.records.values()) {
    if (!('kindId' in r) || typeof r.kindId !== 'string') continue;
    const list = users.get(r.kindId);
    if (list) list.push(r.id);
    else users.set(r.kindId, [r.id]);
  }
  return recordsOf(plan, 'kind').flatMap((from) => {
    const to = bySlug.get(from.slug);
    if (!to || to.family !== from.family || kindHash(to) === kindHash(from)) return [];
    return [{ from, to, differences: kindDifferences(from, to), records: users.get(from.id) ?? [] }];
  });
};
