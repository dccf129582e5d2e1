import { UNIVERSE_SLOTS } from './address.ts';
import type { Mode } from './kinds/kinds.ts';
import { kindOf, type Plan } from './plan.ts';
import type { Fixture } from './records/index.ts';

/** What a mode takes of the slots, and where it may be parted. */
export interface Footprint {
  /** All slots, those of further breaks included. */
  readonly slots: number;
  readonly parts: number;
  /** Slots of one part, where the mode says so or its slots share out evenly over its parts; undefined else. */
  readonly partSlots: number | undefined;
  /** Slots before the first part: those for the unit as a whole. */
  readonly headSlots: number;
  /** Whether the slots of a part are worked out, not given. */
  readonly partsAssumed: boolean;
  /** Numbers of slots after which the rest may lie elsewhere, rising. Never inside a part. */
  readonly cuts: readonly number[];
}

const made = new WeakMap<Mode, Footprint>();

/** Breaks of a mode as slots each; one where it has none of its own. */
const breakSlots = (mode: Mode): readonly number[] => {
  const breaks = Array.isArray(mode.breaks) ? (mode.breaks as readonly { readonly slots?: unknown }[]) : [];
  const slots = breaks.map((b) => (typeof b.slots === 'number' ? b.slots : 0));
  return slots.length > 1 ? slots : [mode.slots];
};

/** Where each break of a mode begins, by the unit's own slot from 1; one entry for a mode without breaks of its own. */
export const breakStarts = (mode: Mode): readonly number[] => {
  let at = 1;
  return breakSlots(mode).map((n) => {
    const start = at;
    at += n;
    return start;
  });
};

/** The footprint of a mode. Parts are taken to come last, after what steers the unit as a whole. */
export const footprintOf = (mode: Mode): Footprint => {
  const known = made.get(mode);
  if (known) return known;
  const breaks = breakSlots(mode);
  const slots = breaks.reduce((s, n) => s + n, 0);
  const parts = Math.max(1, mode.parts);
  const given = mode.partSlots;
  const even = parts > 1 && slots % parts === 0 ? slots / parts : undefined;
  const fits = given !== undefined && parts > 1 && given * parts <= slots;
  const partSlots = fits ? given : even;
  const headSlots = partSlots === undefined ? 0 : slots - partSlots * parts;
  const cuts = new Set<number>();
  let at = 0;
  for (const b of breaks.slice(0, -1)) {
    at += b;
    cuts.add(at);
  }
  if (partSlots !== undefined)
    for (let p = headSlots > 0 ? 0 : 1; p < parts; p++) cuts.add(headSlots + p * partSlots);
  const done: Footprint = {
    slots,
    parts,
    partSlots,
    headSlots,
    partsAssumed: partSlots !== undefined && !fits,
    cuts: [...cuts].filter((c) => c > 0 && c < slots).sort((a, b) => a - b),
  };
  made.set(mode, done);
  return done;
};

/** One stretch of slots of a fixture that lie side by side. `fromSlot` is its first slot counted on the fixture, from 1. */
export interface Span {
  readonly fromSlot: number;
  readonly slots: number;
}

/**
 * Stretches a fixture's slots are parted into so that each fits a universe (or `size` slots): as many whole parts as go in.
 * Undefined where it cannot be parted so.
 */
export const spansOf = (f: Footprint, size = UNIVERSE_SLOTS): readonly Span[] | undefined => {
  const spans: Span[] = [];
  const ends = [...f.cuts, f.slots];
  let from = 0;
  while (from < f.slots) {
    let end = -1;
    for (const e of ends) if (e > from && e - from <= size) end = e;
    if (end < 0) return undefined;
    spans.push({ fromSlot: from + 1, slots: end - from });
    from = end;
  }
  return spans;
};

/** The mode a fixture is patched in; undefined without a patch or where its kind has no such mode. */
export const patchedMode = (plan: Plan, f: Fixture): Mode | undefined =>
  f.patch && kindOf(plan, f.kindId, 'fixture')?.modes.find((m) => m.id === f.patch?.modeId);
