import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Problem, type Result } from '../../kernel/result.ts';
import { UNIVERSE_SLOTS, universeProblem } from '../address.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { breakStarts, footprintOf, patchedMode, spansOf } from '../footprint.ts';
import type { Mode } from '../kinds/kinds.ts';
import { recordName } from '../names.ts';
import { kindOf, type Plan, recordOf } from '../plan.ts';
import type { Fixture, Patch } from '../records/index.ts';
import { setDimmerPatch } from './dimmer-patch.ts';
import { universeAt } from './universes.ts';

/** What to set of a fixture's patch; what is absent stays as it is. The universe goes by its number. */
export interface PatchChange {
  readonly modeId?: string;
  readonly universe?: number;
  readonly address?: number;
  readonly paired?: boolean;
  /** Where further stretches of a parted fixture lie; an empty list makes it whole again. */
  readonly spans?: readonly {
    readonly fromSlot: number;
    readonly universe: number;
    readonly address: number;
  }[];
}

const modeFor = (plan: Plan, f: Fixture, modeId: string | undefined): Mode | undefined => {
  const modes = kindOf(plan, f.kindId, 'fixture')?.modes ?? [];
  if (modeId !== undefined) return modes.find((m) => m.id === modeId);
  return modes.find((m) => m.slots > 0);
};

const addressProblem = (address: number, slots: number): Problem | undefined => {
  const highest = UNIVERSE_SLOTS - Math.max(1, slots) + 1;
  if (highest < 1)
    return {
      what: `Its mode takes ${slots} slots, more than one universe holds.`,
      todo: 'Let the program assign its address: it parts it between parts where its mode allows.',
    };
  return Number.isInteger(address) && address >= 1 && address <= highest
    ? undefined
    : {
        what: `Address ${address} does not fit: its mode takes ${slots} slots.`,
        todo: `Choose an address from 1 to ${highest}.`,
      };
};

/**
 * A fixture with its patch changed; a universe that is not in the plan comes into the draft. What `setPatch` does, for many
 * at once.
 */
export const patchedWith = (plan: Plan, draft: Draft, f: Fixture, change: PatchChange): Result<Fixture> => {
  const mode = modeFor(plan, f, change.modeId ?? f.patch?.modeId);
  if (!mode)
    return fail({
      what: `${recordName(plan, f)}: its kind has no such mode.`,
      todo: 'Choose one of the modes of its kind.',
    });
  const old: Partial<Patch> = f.patch ?? {};
  const { spans: before, ...rest } = old;
  const keeps = change.modeId === undefined || change.modeId === old.modeId;
  const wanted = change.spans ?? (keeps ? undefined : []);
  const address = change.address ?? old.address ?? 1;
  for (const n of [change.universe, ...(wanted ?? []).map((s) => s.universe)]) {
    const problem = n === undefined ? undefined : universeProblem(n);
    if (problem) return fail(problem);
  }
  const problem = stretchProblem(mode, address, wanted ?? before ?? []);
  if (problem) return fail(problem);
  const universeId =
    change.universe !== undefined || old.universeId === undefined
      ? universeAt(plan, draft, change.universe ?? 1)
      : old.universeId;
  const spans =
    wanted?.map((s) => ({
      fromSlot: s.fromSlot,
      universeId: universeAt(plan, draft, s.universe),
      address: s.address,
    })) ??
    before ??
    [];
  const patch: Patch = {
    ...rest,
    modeId: mode.id,
    universeId,
    address,
    paired: change.paired ?? old.paired ?? false,
    ...(spans.length > 0 ? { spans } : {}),
  };
  return ok({ ...f, patch });
};

/**
 * Sets mode, universe, address or pairing of one fixture. A fixture without a patch gets its kind's first mode, universe 1
 * and address 1 where those are not given; a universe that is not in the plan is added. A changed mode makes a parted
 * fixture whole again. Fails where the mode is not among those of the kind or the slots do not fit the universe; overlaps
 * with others are allowed, a finding shows them.
 */
export const setPatch = (plan: Plan, fixtureId: Id, change: PatchChange): Result<ChangeSet> => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) return fail({ what: 'That unit is not in the plan.' });
  const draft = new Draft(plan);
  const next = patchedWith(plan, draft, f, change);
  return next.ok ? ok(draft.put(next.value).changes()) : next;
};

const stretchProblem = (
  mode: Mode,
  address: number,
  spans: readonly { readonly fromSlot: number; readonly address: number }[],
): Problem | undefined => {
  const { slots, cuts } = footprintOf(mode);
  const starts = [{ fromSlot: 1, address }, ...spans];
  for (const [i, s] of starts.entries()) {
    if (i > 0 && (!cuts.includes(s.fromSlot - 1) || s.fromSlot <= (starts[i - 1]?.fromSlot ?? 0)))
      return {
        what: `It cannot be parted before its slot ${s.fromSlot}.`,
        todo: 'Part it between parts only.',
      };
    const problem = addressProblem(s.address, (starts[i + 1]?.fromSlot ?? slots + 1) - s.fromSlot);
    if (problem) return problem;
  }
  return undefined;
};

/** Moves one stretch of a fixture, the one that begins with its own slot `fromSlot`, to another place. */
export const moveStretch = (
  plan: Plan,
  fixtureId: Id,
  fromSlot: number,
  universe: number,
  address: number,
): Result<ChangeSet> => {
  if (recordOf(plan, 'box', fixtureId)) return setDimmerPatch(plan, fixtureId, { universe, address });
  if (fromSlot === 1) return setPatch(plan, fixtureId, { universe, address });
  const f = recordOf(plan, 'fixture', fixtureId);
  const spans = (f?.patch?.spans ?? []).map((s) =>
    s.fromSlot === fromSlot
      ? { fromSlot, universe, address }
      : {
          fromSlot: s.fromSlot,
          universe: recordOf(plan, 'universe', s.universeId)?.number ?? 1,
          address: s.address,
        },
  );
  return setPatch(plan, fixtureId, { spans });
};

/**
 * Gives one break of a fixture's mode an address of its own: its slots from its own slot `fromSlot` on go there, those of the
 * breaks after it keep the place they have. The first break moves the fixture's address alone.
 */
export const setBreak = (
  plan: Plan,
  fixtureId: Id,
  fromSlot: number,
  universe: number,
  address: number,
): Result<ChangeSet> => {
  const f = recordOf(plan, 'fixture', fixtureId);
  const mode = f && patchedMode(plan, f);
  if (!f?.patch || !mode)
    return fail({ what: 'That unit has no patch yet.', todo: 'Give it an address first.' });
  const starts = breakStarts(mode);
  if (!starts.includes(fromSlot))
    return fail({ what: `${recordName(plan, f)} has no break that begins with its slot ${fromSlot}.` });
  const numberOf = (id: Id): number => recordOf(plan, 'universe', id)?.number ?? 1;
  const places = [
    { fromSlot: 1, universe: numberOf(f.patch.universeId), address: f.patch.address },
    ...(f.patch.spans ?? []).map((s) => ({
      fromSlot: s.fromSlot,
      universe: numberOf(s.universeId),
      address: s.address,
    })),
  ];
  const at = (slot: number) => {
    const p = [...places].reverse().find((x) => x.fromSlot <= slot) ?? places[0];
    return {
      fromSlot: slot,
      universe: p?.universe ?? 1,
      address: (p?.address ?? 1) + slot - (p?.fromSlot ?? 1),
    };
  };
  const next = starts.find((s) => s > fromSlot);
  const others = places.filter((p) => p.fromSlot !== fromSlot && p.fromSlot !== next);
  const all = [...others, { fromSlot, universe, address }, ...(next === undefined ? [] : [at(next)])].sort(
    (a, b) => a.fromSlot - b.fromSlot,
  );
  const [first, ...spans] = all;
  return setPatch(plan, fixtureId, {
    universe: first?.universe ?? universe,
    address: first?.address ?? address,
    spans,
  });
};

/** Takes the patch of fixtures away. Locked ones keep theirs. */
export const clearPatch = (plan: Plan, fixtureIds: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    if (!f?.patch || f.locked) continue;
    const { patch: _, ...rest } = f;
    draft.put(rest);
  }
  return draft.changes();
};

/**
 * Puts fixtures into a mode. Those without a patch are left alone, as are those whose kind does not have it; where the
 * new footprint does not fit behind the address, that one fails and nothing is changed.
 */
export const setMode = (plan: Plan, fixtureIds: Iterable<Id>, modeId: string): Result<ChangeSet> => {
  const draft = new Draft(plan);
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    const mode = f?.patch && kindOf(plan, f.kindId, 'fixture')?.modes.find((m) => m.id === modeId);
    if (!f?.patch || !mode) continue;
    const { spans: _, ...patch } = f.patch;
    const footprint = footprintOf(mode);
    if (spansOf(footprint)?.length === 1) {
      const problem = addressProblem(patch.address, footprint.slots);
      if (problem) return fail({ ...problem, what: `${recordName(plan, f)}: ${problem.what}` });
    }
    draft.put({ ...f, patch: { ...patch, modeId } });
  }
  return ok(draft.changes());
};

/** Marks fixtures as paired, so that they may share slots, or takes the mark away. */
export const setPaired = (plan: Plan, fixtureIds: Iterable<Id>, paired: boolean): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    if (f?.patch && f.patch.paired !== paired) draft.put({ ...f, patch: { ...f.patch, paired } });
  }
  return draft.changes();
};

/** How channels are numbered: from a first number in steps, with words before it. */
export interface ChannelRule {
  readonly from: number;
  readonly step: number;
  readonly prefix: string;
}

/** Numbers the channels of fixtures in the order they are given. Locked ones keep theirs and their number is passed over. */
export const renumberChannels = (plan: Plan, inOrder: readonly Id[], rule: ChannelRule): ChangeSet => {
  const draft = new Draft(plan);
  const chosen = new Set(inOrder);
  const kept = new Set<string>();
  for (const r of plan.records.values())
    if (r.type === 'fixture' && (r.locked || !chosen.has(r.id)) && r.channel !== '') kept.add(r.channel);
  let n = rule.from;
  for (const id of inOrder) {
    const f = recordOf(plan, 'fixture', id);
    if (!f || f.locked) continue;
    while (kept.has(`${rule.prefix}${n}`)) n += rule.step || 1;
    const channel = `${rule.prefix}${n}`;
    n += rule.step || 1;
    if (channel !== f.channel) draft.put({ ...f, channel });
  }
  return draft.changes();
};
