import { fail, ok, type Result } from '../../kernel/result.ts';
import { cleanText, MAX_SLOT } from './gdtf-values.ts';
import type { Visit } from './gdtf-walk.ts';
import type { Notices } from './notices.ts';

/** A channel of a mode before its references are followed. */
export interface Channel {
  readonly geometry: string;
  readonly break: number | 'overwrite';
  /** Slots within the break, most significant byte first; empty for a virtual channel. */
  readonly offsets: readonly number[];
  /** What it controls, in words. */
  readonly label: string;
}

/** One break of a mode: a range of slots with a start address of its own. */
export interface BreakFootprint {
  readonly number: number;
  /** Highest occupied slot: gaps count. */
  readonly slots: number;
  /** How many different slots are occupied. */
  readonly occupied: number;
  /** Slots that two channels claim. */
  readonly clashes: readonly number[];
  /** By slot, from slot 1; empty text for a gap. */
  readonly names: readonly string[];
}

export interface Footprint {
  readonly breaks: readonly BreakFootprint[];
  /** Parts that can be controlled one by one: how often the most repeated channel stands in the mode. */
  readonly parts: number;
  /** Channels without slots, which a unit works out by itself. */
  readonly virtual: number;
}

const BYTE_WORDS = ['', ' fine', ' ultra fine', ' uber fine'];
/** How much work the modes of one file may be: instances of channels and claims of slots. */
export const MAX_CLAIMS = 500_000;

/** What is left of the work a file may be. */
export interface Budget {
  claims: number;
}

/**
 * The slots of a mode, break by break. A channel on a geometry met directly keeps its slots; one on a geometry
 * that references stand for is there once for each, at slot = offset + (offset of the matching break − 1). An
 * ordinary channel takes the first break of its number, `Overwrite` takes the last break and its number.
 * References within references add up. Source: DIN SPEC 15800, GeometryReference and DMXChannel.
 */
export const footprintOf = (
  visits: readonly Visit[],
  channels: readonly Channel[],
  mode: string,
  budget: Budget,
  notices: Notices,
): Result<Footprint, string> => {
  const byGeometry = new Map<string, Channel[]>();
  for (const c of channels) {
    const list = byGeometry.get(c.geometry);
    if (list) list.push(c);
    else byGeometry.set(c.geometry, [c]);
  }
  const breaks = new Map<number, Map<number, string[]>>();
  const instances = new Map<Channel, number>();
  let virtual = 0;
  for (const v of visits) {
    for (const c of byGeometry.get(v.geometry.name) ?? []) {
      budget.claims -= 1 + c.offsets.length;
      if (budget.claims < 0) return fail('it claims more slots than any real fixture has');
      const at = startOf(c, v, mode, notices);
      if (c.offsets.length === 0) virtual++;
      else instances.set(c, (instances.get(c) ?? 0) + 1);
      for (const [i, offset] of c.offsets.entries()) {
        const slot = offset + at.shift;
        if (slot > MAX_SLOT) return fail(`a channel lands on slot ${slot}`);
        const slots = breaks.get(at.break) ?? new Map<number, string[]>();
        breaks.set(at.break, slots);
        const names = slots.get(slot);
        if (names) names.push(nameOf(c, v, i));
        else slots.set(slot, [nameOf(c, v, i)]);
      }
    }
  }
  const met = new Set(visits.map((v) => v.geometry.name));
  const unused = [...byGeometry.keys()].filter((g) => !met.has(g));
  if (unused.length > 0)
    notices.add(
      `Mode “${mode}”: channels on ${unused
        .slice(0, 5)
        .map((g) => `“${cleanText(g, 40)}”`)
        .join(', ')} are not used, for that part is not in the mode.`,
    );
  return ok({
    breaks: [...breaks].sort(([a], [b]) => a - b).map(([number, slots]) => breakOf(number, slots)),
    parts: partsOf(visits, byGeometry, instances),
    virtual,
  });
};

/** Break of a channel's instance and what is added to its offsets. */
const startOf = (
  c: Channel,
  v: Visit,
  mode: string,
  notices: Notices,
): { readonly break: number; readonly shift: number } => {
  let number = c.break;
  let shift = 0;
  for (const reference of v.references.toReversed()) {
    const match =
      number === 'overwrite' ? reference.breaks.at(-1) : reference.breaks.find((b) => b.number === number);
    if (match) {
      shift += match.offset - 1;
      number = match.number;
    } else if (number !== 'overwrite' && reference.breaks.length > 0)
      notices.add(
        `Mode “${mode}”: reference “${reference.label}” says nothing of break ${number}; its slots were taken as they are. Check the footprint against the unit’s manual.`,
      );
  }
  if (number === 'overwrite') {
    notices.add(
      `Mode “${mode}”: a channel (${c.label}) takes its break from a reference, but there is none; break 1 was taken.`,
    );
    number = 1;
  }
  return { break: number, shift };
};

const nameOf = (c: Channel, v: Visit, byte: number): string => {
  const part = v.references.map((r) => r.label).join(' ');
  return `${part ? `${part}: ` : ''}${c.label}${BYTE_WORDS[byte] ?? ` byte ${byte + 1}`}`;
};

const breakOf = (number: number, slots: ReadonlyMap<number, readonly string[]>): BreakFootprint => {
  let highest = 0;
  for (const slot of slots.keys()) highest = Math.max(highest, slot);
  return {
    number,
    slots: highest,
    occupied: slots.size,
    clashes: [...slots]
      .filter(([, names]) => names.length > 1)
      .map(([slot]) => slot)
      .sort((a, b) => a - b),
    names: Array.from({ length: highest }, (_, i) => (slots.get(i + 1) ?? []).slice(0, 4).join(' / ')),
  };
};

const partsOf = (
  visits: readonly Visit[],
  byGeometry: ReadonlyMap<string, readonly Channel[]>,
  instances: ReadonlyMap<Channel, number>,
): number => {
  let most = 1;
  for (const n of instances.values()) most = Math.max(most, n);
  if (most > 1) return most;
  // Parts drawn out one by one: the same function on several beams.
  const beams = new Map<string, Set<string>>();
  for (const { geometry } of visits) {
    if (geometry.type !== 'Beam') continue;
    for (const c of byGeometry.get(geometry.name) ?? [])
      if (c.offsets.length > 0) beams.set(c.label, (beams.get(c.label) ?? new Set()).add(geometry.name));
  }
  for (const names of beams.values()) most = Math.max(most, names.size);
  return most;
};
