import type { SourceKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../../plan/plan.ts';

/**
 * Sources that may come in place of one, those of its own system and sort first, by what they give. `first` is what is most often
 * asked about: the next larger of the same, else the largest of them.
 */
export const swapChoices = (
  plan: Plan,
  sources: readonly SourceKind[],
  sourceId: string,
): {
  readonly groups: readonly { readonly name: string; readonly kinds: readonly SourceKind[] }[];
  readonly first: SourceKind | undefined;
} => {
  const record = recordOf(plan, 'source', sourceId);
  const own = record && kindOf(plan, record.kindId, 'source');
  const gives = (k: SourceKind): number => k.ratedKva ?? k.ratedKw ?? k.mainBreakerA ?? 0;
  const sorted = [...sources].sort((a, b) => gives(a) - gives(b));
  const alike = sorted.filter((k) => own && k.system === own.system && k.what === own.what);
  const others = sources.filter((k) => !alike.includes(k));
  const rest = alike.filter((k) => k.slug !== own?.slug);
  return {
    groups: [
      { name: 'of the same system', kinds: alike },
      { name: 'others', kinds: others },
    ].filter((g) => g.kinds.length > 0),
    first: rest.find((k) => own && gives(k) > gives(own)) ?? rest.at(-1) ?? others[0],
  };
};
