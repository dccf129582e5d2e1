import type { Mode } from '../../plan/kinds/kinds.ts';
import {
  type BreakFootprint,
  type Budget,
  type Channel,
  type Footprint,
  footprintOf,
  MAX_CLAIMS,
} from './gdtf-footprint.ts';
import type { Geometry, GeometryTree } from './gdtf-tree.ts';
import { cleanText, dmxValueOf, offsetsOf } from './gdtf-values.ts';
import type { Walker } from './gdtf-walk.ts';
import type { Notices } from './notices.ts';
import { attrOf, childOf, childrenOf, type XmlNode } from './xml.ts';

const MAX_MODES = 200;
/** Slot names of all modes together that a kind carries along. */
const MAX_NAMES = 20_000;
const UNIVERSE = 512;

/** A mode as a kind keeps it, with the slots of each break. */
export interface ReadMode {
  readonly mode: Mode;
  readonly root: Geometry;
}

/** Short names of attributes as the file gives them. */
const prettyNames = (definitions: XmlNode | undefined): ReadonlyMap<string, string> =>
  new Map(
    childrenOf(childOf(definitions, 'Attributes'), 'Attribute').map((a) => [
      attrOf(a, 'Name') ?? '',
      cleanText(attrOf(a, 'Pretty') ?? attrOf(a, 'Name'), 40),
    ]),
  );

/**
 * The modes of a fixture type. `slots` is the footprint of the first break; `breaks` lists every break with its
 * number, footprint (highest slot, gaps counted), occupied slots and clashes; `slotNames` has one list per break,
 * by slot. A mode whose slots cannot be told is left out with a problem.
 */
export const readModes = (
  type: XmlNode,
  tree: GeometryTree,
  walker: Walker,
  notices: Notices,
): readonly ReadMode[] => {
  const pretty = prettyNames(childOf(type, 'AttributeDefinitions'));
  const all = childrenOf(childOf(type, 'DMXModes'), 'DMXMode');
  if (all.length > MAX_MODES)
    notices.problem({
      what: `The file has ${all.length} modes; only the first ${MAX_MODES} were read.`,
      todo: 'Ask for a file with the modes you use.',
    });
  const ids = new Set<string>();
  const modes: ReadMode[] = [];
  const work = { tree, walker, pretty, notices, budget: { claims: MAX_CLAIMS } };
  let names = 0;
  for (const xml of all.slice(0, MAX_MODES)) {
    const name = cleanText(attrOf(xml, 'Name')) || `Mode ${modes.length + 1}`;
    const read = readMode(xml, name, work);
    if (typeof read === 'string') {
      notices.problem({
        what: `Mode “${name}” was left out: ${read}.`,
        todo: 'Enter its slots by hand from the unit’s manual.',
      });
      continue;
    }
    const { footprint, root } = read;
    tellOddities(name, footprint, notices);
    names += footprint.breaks.reduce((sum, b) => sum + b.names.length, 0);
    modes.push({ mode: modeOf(freeId(name, ids), name, footprint, names <= MAX_NAMES), root });
  }
  if (names > MAX_NAMES)
    notices.add('The file names more slots than a kind carries along; the last modes have no slot names.');
  return modes;
};

const modeOf = (id: string, name: string, f: Footprint, withNames: boolean): Mode => {
  const plain = ({ names: _, clashes, ...b }: BreakFootprint) =>
    clashes.length > 0 ? { ...b, clashes: [...clashes] } : b;
  return {
    id,
    name,
    slots: f.breaks[0]?.slots ?? 0,
    parts: f.parts,
    breaks: f.breaks.map(plain),
    ...(f.virtual > 0 ? { virtual: f.virtual } : {}),
    ...(withNames ? { slotNames: f.breaks.map((b) => [...b.names]) } : {}),
  };
};

const freeId = (name: string, taken: Set<string>): string => {
  const base =
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '') || 'mode';
  let id = base;
  for (let n = 2; taken.has(id); n++) id = `${base}-${n}`;
  taken.add(id);
  return id;
};

const tellOddities = (name: string, f: Footprint, notices: Notices): void => {
  if (f.breaks.length > 1)
    notices.add(
      `Mode “${name}” has ${f.breaks.length} address ranges (${f.breaks.map((b) => `break ${b.number}: ${b.slots} slots`).join(', ')}); each needs a start address. All of them are counted in the patch, and each may lie elsewhere.`,
    );
  for (const b of f.breaks) {
    if (b.clashes.length > 0)
      notices.add(
        `Mode “${name}”, break ${b.number}: two channels claim slot ${b.clashes.slice(0, 8).join(', ')}. Check it against the unit’s manual.`,
      );
    if (b.slots > UNIVERSE)
      notices.add(`Mode “${name}”, break ${b.number}: ${b.slots} slots are more than one universe holds.`);
  }
};

interface Work {
  readonly tree: GeometryTree;
  readonly walker: Walker;
  readonly pretty: ReadonlyMap<string, string>;
  readonly notices: Notices;
  readonly budget: Budget;
}

const readMode = (
  xml: XmlNode,
  name: string,
  { tree, walker, pretty, notices, budget }: Work,
): { readonly footprint: Footprint; readonly root: Geometry } | string => {
  const root = rootOf(attrOf(xml, 'Geometry'), name, tree, notices);
  if (!root) return `its geometry “${cleanText(attrOf(xml, 'Geometry'), 40)}” is not in the file`;
  const channels: Channel[] = [];
  for (const [i, c] of childrenOf(childOf(xml, 'DMXChannels'), 'DMXChannel').entries()) {
    const channel = readChannel(c, i + 1, pretty);
    if (typeof channel === 'string') return channel;
    tellBadValues(c, name, channel.label, notices);
    channels.push(channel.geometry === '' ? { ...channel, geometry: root.name } : channel);
  }
  const visits = walker.visits(root);
  if (!visits) return 'its references multiply into more parts than any real fixture has';
  const footprint = footprintOf(visits, channels, name, budget, notices);
  return footprint.ok ? { footprint: footprint.value, root } : footprint.error;
};

const rootOf = (
  wanted: string | undefined,
  mode: string,
  tree: GeometryTree,
  notices: Notices,
): Geometry | undefined => {
  const found = tree.top.find((g) => g.name === wanted);
  if (found) return found;
  const deeper = wanted === undefined ? undefined : tree.byName.get(wanted);
  if (deeper) {
    notices.add(`Mode “${mode}” begins at a geometry that is not on the top level.`);
    return deeper;
  }
  const [only, ...others] = tree.top;
  return others.length === 0 ? only : undefined;
};

/** Names of the four bytes in files from before version 1.0, most significant first. */
const OLD_BYTES = ['Coarse', 'Fine', 'Ultra', 'Uber'];

const readChannel = (xml: XmlNode, n: number, pretty: ReadonlyMap<string, string>): Channel | string => {
  const attributes = childrenOf(xml, 'LogicalChannel').map((l) => attrOf(l, 'Attribute') ?? '');
  const label =
    [
      ...new Set(
        attributes.map((a) => (a === 'NoFeature' ? 'no function' : (pretty.get(a) ?? cleanText(a, 40)))),
      ),
    ]
      .filter(Boolean)
      .slice(0, 4)
      .join(' / ') || `channel ${n}`;
  const given = xml.attrs.Offset ?? attrOf(xml, 'Offset');
  const old = OLD_BYTES.map((b) => attrOf(xml, b)).filter((b) => b !== undefined && !/^none$/i.test(b));
  const text = given === undefined && old.length > 0 ? old.join(',') : given;
  const offsets = offsetsOf(text);
  if (!offsets)
    return `channel ${n} (${label}) has an offset that is no slot number (“${cleanText(text, 30)}”)`;
  const breakText = attrOf(xml, 'DMXBreak') ?? '1';
  const overwrite = /^overwrite$/i.test(breakText);
  if (!overwrite && !/^[1-9]\d{0,4}$/.test(breakText))
    return `channel ${n} (${label}) has a break that is no number (“${cleanText(breakText, 30)}”)`;
  return {
    geometry: attrOf(xml, 'Geometry') ?? '',
    break: overwrite ? 'overwrite' : Number(breakText),
    offsets,
    label,
  };
};

/** Values that are no DMX values. None of them is used here, but such a file deserves a second look. */
const tellBadValues = (channel: XmlNode, mode: string, label: string, notices: Notices): void => {
  const check = (node: XmlNode, names: readonly string[]): void => {
    for (const name of names) {
      const text = attrOf(node, name);
      if (text !== undefined && !/^none$/i.test(text) && !dmxValueOf(text))
        notices.add(
          `Mode “${mode}”, ${label}: ${name} “${cleanText(text, 30)}” is no DMX value (like 128/1).`,
        );
    }
  };
  check(channel, ['Highlight', 'Default']);
  for (const logical of childrenOf(channel, 'LogicalChannel'))
    for (const f of childrenOf(logical, 'ChannelFunction')) check(f, ['DMXFrom', 'Default']);
};
