import type { Id } from '../../../kernel/ids.ts';
import { footprintOf, patchedMode } from '../../../plan/footprint.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../../plan/plan.ts';
import type { Fixture } from '../../../plan/records/index.ts';
import { checkPatch } from '../check.ts';
import type { Item } from './blocks.ts';
import { carrierOf } from './carrier.ts';
import type { AssignOptions, Common } from './options.ts';
import { orderFixtures } from './order.ts';
import type { Chosen } from './types.ts';

/** Who gets an address, in order, and who stays. */
export const choose = (
  plan: Plan,
  o: AssignOptions,
): { readonly chosen: readonly Chosen[]; readonly kept: readonly Id[] } => {
  const kept: Id[] = [];
  const chosen = new Map<Id, Chosen>();
  const patched = new Set(checkPatch(plan).rows.map((r) => r.fixtureId));
  const asked = recordsOf(plan, 'fixture').filter((f) => o.fixtureIds?.has(f.id) ?? true);
  for (const fixture of asked) {
    const modes = kindOf(plan, fixture.kindId, 'fixture')?.modes ?? [];
    const own = patchedMode(plan, fixture);
    const mode = own ?? modes.find((m) => m.slots > 0);
    if (!mode || footprintOf(mode).slots === 0) continue;
    if (fixture.locked || (o.keepPatched && patched.has(fixture.id))) kept.push(fixture.id);
    else chosen.set(fixture.id, { fixture, mode, modeAssumed: !own });
  }
  const order = orderFixtures(
    plan,
    [...chosen.values()].map((c) => c.fixture),
    o.order,
  );
  return { chosen: order.flatMap((f) => chosen.get(f.id) ?? []), kept };
};

const commonKey = (plan: Plan, f: Fixture, common: Common): string => {
  switch (common) {
    case 'nothing':
      return '';
    case 'group':
      return f.groupId ?? '';
    case 'kind':
      return f.kindId;
    case 'floor':
      return f.floorId;
    case 'rigging':
      return f.support.on === 'rigged' ? (f.support.riggingId ?? '') : '';
    case 'link':
      return f.link;
    case 'line': {
      const carrier = carrierOf(plan, f);
      // Two lines on one universe share it.
      return carrier?.home === undefined ? (carrier?.id ?? '') : `universe ${carrier.home}`;
    }
  }
};

/** Paired fixtures that lie on one another now, in the same mode of the same kind, stay on one another. */
export const itemsOf = (plan: Plan, chosen: readonly Chosen[], o: AssignOptions): readonly Item[] => {
  const byPlace = new Map<string, Chosen[]>();
  for (const c of chosen) {
    const p = c.fixture.patch;
    const key =
      p?.paired && !c.modeAssumed
        ? `${c.fixture.kindId}|${p.modeId}|${p.universeId}|${p.address}|${JSON.stringify(p.spans ?? [])}`
        : c.fixture.id;
    const list = byPlace.get(key);
    if (list) list.push(c);
    else byPlace.set(key, [c]);
  }
  return [...byPlace.values()].flatMap((list) => {
    const [c] = list;
    if (!c) return [];
    return [
      {
        ids: list.map((x) => x.fixture.id),
        footprint: footprintOf(c.mode),
        togetherKey: commonKey(plan, c.fixture, o.together),
        ownKey: commonKey(plan, c.fixture, o.ownUniverse),
        home: o.ownUniverse === 'line' ? carrierOf(plan, c.fixture)?.home : undefined,
      },
    ];
  });
};

/** Items by what has a universe of its own, in the order of their first ones. */
export const ownParts = (items: readonly Item[]): readonly (readonly Item[])[] => {
  const parts = new Map<string, Item[]>();
  for (const i of items) {
    const list = parts.get(i.ownKey);
    if (list) list.push(i);
    else parts.set(i.ownKey, [i]);
  }
  // What a port carries already goes first, so that nothing else takes its place.
  const home = (list: readonly Item[]): number => list[0]?.home ?? Number.POSITIVE_INFINITY;
  return [...parts.values()].sort((a, b) => (home(a) === home(b) ? 0 : home(a) - home(b)));
};

/** Slots by universe number that fixtures which stay have. */
export const takenBy = (plan: Plan, moved: ReadonlySet<Id>) => {
  const taken = new Map<number, { address: number; last: number }[]>();
  for (const r of checkPatch(plan).rows) {
    const number = recordOf(plan, 'universe', r.universeId)?.number;
    if (number === undefined || moved.has(r.fixtureId) || r.slots === 0) continue;
    const list = taken.get(number);
    if (list) list.push(r);
    else taken.set(number, [r]);
  }
  return taken;
};
