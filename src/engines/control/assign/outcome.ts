import type { Id } from '../../../kernel/ids.ts';
import { Draft } from '../../../plan/change-set.ts';
import { universeAt } from '../../../plan/edits/universes.ts';
import { breakStarts, footprintOf, patchedMode } from '../../../plan/footprint.ts';
import { type Plan, recordOf, recordsOf } from '../../../plan/plan.ts';
import type { Fixture } from '../../../plan/records/index.ts';
import type { Item } from './blocks.ts';
import type { AssignOptions } from './options.ts';
import type { Piece } from './place.ts';
import type { Assignment, AssignRow, Chosen, PatchPlace } from './types.ts';

/** Where a fixture's slots lie now. */
export const placesOf = (plan: Plan, f: Fixture): readonly PatchPlace[] => {
  if (!f.patch) return [];
  const all = [
    { fromSlot: 1, universeId: f.patch.universeId, address: f.patch.address },
    ...(f.patch.spans ?? []),
  ];
  return all.map((s) => ({
    universe: recordOf(plan, 'universe', s.universeId)?.number ?? Number.NaN,
    address: s.address,
    fromSlot: s.fromSlot,
  }));
};

/**
 * Where each break of a fixture's mode begins (breaks are sets of slots with an address of their own); one place for a mode
 * without breaks. Empty without a patch or a mode.
 */
export const breakPlaces = (plan: Plan, f: Fixture): readonly PatchPlace[] => {
  const mode = patchedMode(plan, f);
  const places = placesOf(plan, f);
  if (!mode || places.length === 0) return [];
  return breakStarts(mode).map((fromSlot) => {
    const at = [...places].reverse().find((p) => p.fromSlot <= fromSlot);
    return {
      universe: at?.universe ?? Number.NaN,
      address: (at?.address ?? Number.NaN) + fromSlot - (at?.fromSlot ?? fromSlot),
      fromSlot,
    };
  });
};

/** The proposal as rows to look at and one change-set. */
export const outcome = (
  plan: Plan,
  o: AssignOptions,
  chosen: readonly Chosen[],
  pieces: readonly Piece[],
  more: { bound: number; proved: boolean; kept: readonly Id[]; notices: readonly string[] },
): Assignment => {
  const draft = new Draft(plan);
  const byFixture = new Map<Id, Piece[]>();
  const itemOf = new Map<Id, Item>();
  for (const p of pieces)
    for (const id of p.item.ids) {
      const list = byFixture.get(id);
      if (list) list.push(p);
      else byFixture.set(id, [p]);
      itemOf.set(id, p.item);
    }
  const known = new Set(recordsOf(plan, 'universe').map((u) => u.number));
  const universes = [...new Set(pieces.map((p) => p.universe))].sort((a, b) => a - b);
  const channels = new Map<Item, string>();
  const rows: AssignRow[] = [];
  for (const { fixture, mode, modeAssumed } of chosen) {
    const own = byFixture.get(fixture.id);
    const item = itemOf.get(fixture.id);
    if (!own || !item) continue;
    const sorted = [...own].sort((a, b) => a.fromSlot - b.fromSlot);
    const before = placesOf(plan, fixture);
    const after = sorted.map(({ universe, address, fromSlot }) => ({ universe, address, fromSlot }));
    if (o.channelsFrom !== undefined && !channels.has(item))
      channels.set(item, String(o.channelsFrom + channels.size));
    const channelAfter = channels.get(item) ?? fixture.channel;
    const changed =
      modeAssumed || channelAfter !== fixture.channel || JSON.stringify(before) !== JSON.stringify(after);
    rows.push({
      fixtureId: fixture.id,
      modeId: mode.id,
      slots: footprintOf(mode).slots,
      modeAssumed,
      before,
      after,
      channelBefore: fixture.channel,
      channelAfter,
      changed,
    });
    if (changed) draft.put(patched(plan, draft, fixture, mode.id, after, channelAfter));
  }
  return {
    rows,
    changes: draft.changes(),
    universes,
    newUniverses: universes.filter((n) => !known.has(n)),
    lowerBound: more.bound,
    proved: o.fewest && more.proved,
    kept: more.kept,
    notices: more.notices,
  };
};

/** The fixture with its new patch; universes that are missing come into the draft. */
const patched = (
  plan: Plan,
  draft: Draft,
  fixture: Fixture,
  modeId: string,
  after: readonly PatchPlace[],
  channel: string,
): Fixture => {
  const [first, ...rest] = after.map((p) => ({ ...p, universeId: universeAt(plan, draft, p.universe) }));
  if (!first) return fixture;
  const { spans: _, ...old } = fixture.patch ?? { paired: false };
  return {
    ...fixture,
    channel,
    patch: {
      ...old,
      modeId,
      universeId: first.universeId,
      address: first.address,
      ...(rest.length > 0
        ? { spans: rest.map(({ fromSlot, universeId, address }) => ({ fromSlot, universeId, address })) }
        : {}),
    },
  };
};
