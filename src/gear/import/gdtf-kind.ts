import { type FixtureKind, fixtureKindSchema } from '../../plan/kinds/kinds.ts';
import { kindRecord } from '../book.ts';
import { PROFILES } from '../mains.ts';
import { identityOf } from './gdtf-identity.ts';
import { type FileLight, fileLight } from './gdtf-light.ts';
import { readModes } from './gdtf-modes.ts';
import { fileOutline } from './gdtf-outline.ts';
import type { Package } from './gdtf-package.ts';
import { filePorts } from './gdtf-ports.ts';
import { type FilePower, filePower } from './gdtf-power.ts';
import { fileSize } from './gdtf-size.ts';
import { describe, styleOf } from './gdtf-style.ts';
import { type Geometry, geometryTree } from './gdtf-tree.ts';
import { cleanText, numberOf, positiveOf } from './gdtf-values.ts';
import { type Visit, Walker } from './gdtf-walk.ts';
import type { Notices } from './notices.ts';
import type { ImportOptions } from './options.ts';
import { attrOf, childOf, type XmlNode } from './xml.ts';

interface Context extends ImportOptions {
  readonly fileName: string;
  readonly version: string;
}

const FILE = 'the fixture file';
/** Mass assumed where a file gives none: heavy for its watts, so that stands and clamps are judged with care. */
const ASSUMED_KG_PER_W = 0.04;
const ASSUMED_MIN_KG = 3;
const ASSUMED_SIDE_MM = 300;
const MAX_KG = 2000;

const ASSUMED_WORDS: Readonly<Record<string, string>> = {
  massKg: 'mass',
  sizeMm: 'size',
  inlets: 'power connector',
  mount: 'mount',
  source: 'sort of light source',
  'load.powerFactor': 'power factor',
  'load.volts': 'range of volts',
  'load.behaviour': 'standby, inrush, leakage and harmonics',
};

/** Makes the kind. Every field is either the file's, with its place, or marked as assumed. */
export const kindFromFile = (
  type: XmlNode,
  file: Package,
  context: Context,
  notices: Notices,
): FixtureKind => {
  const tree = geometryTree(childOf(type, 'Geometries'), notices);
  const walker = new Walker(tree, notices);
  const modes = readModes(type, tree, walker, notices);
  if (modes.length === 0) notices.add('No mode could be read, so the unit cannot be patched yet.');
  const roots = modes.length > 0 ? modes.map((m) => m.root) : tree.top.slice(0, 1);
  const { visits, power } = mainWalk(type, walker, roots, context, notices);
  const light = fileLight(visits, type);
  const size = fileSize(childOf(type, 'Models'), visits, notices);
  const ports = filePorts(type, visits, power, context.practice ?? 'europe', notices);
  const parts = Math.max(1, ...modes.map((m) => m.mode.parts));
  const style = styleOf(light, parts, size);
  const mass = massOf(type, power);
  const outline = fileOutline(childOf(type, 'Models'), file, visits, notices);
  const load = loadOf(light.source, power);
  const identity = identityOf(type);
  const operating = operatingOf(type);
  const basis: Record<string, string> = {
    all: FILE,
    massKg: mass.basis,
    sizeMm: size ? `${FILE}: its models, seen from above` : 'assumed: the file gives no size',
    inlets: ports.inletBasis,
    mount: 'assumed: fixture files do not say',
    'load.wattsW': load.wattsBasis,
    ...(power?.powerFactor === undefined
      ? { 'load.powerFactor': 'assumed for its sort of light source' }
      : {}),
    ...(power?.voltsMinV === undefined || power.voltsMaxV === undefined
      ? { 'load.volts': 'assumed: 100 to 240 V' }
      : {}),
    'load.behaviour': 'assumed for its sort of light source',
    ...(light.sourceAssumed ? { source: 'assumed: the file does not say' } : {}),
  };
  if (!power) notices.add('The file does not say what power the unit takes. Enter it from the rating plate.');
  if (mass.assumed)
    notices.add('The file gives no mass; a heavy one was assumed. Weigh the unit or read its plate.');
  if (!size) notices.add('The file gives no size; 300 × 300 mm was assumed.');
  const assumed = Object.keys(basis).filter((field) => basis[field]?.startsWith('assumed'));
  notices.add(`Assumed, for the file does not say: ${assumed.map((f) => ASSUMED_WORDS[f] ?? f).join(', ')}.`);
  const kind = fixtureKindSchema.parse({
    id: 'unhashed',
    type: 'kind',
    family: 'fixture',
    slug: identity.slug,
    name: cleanText(context.name) || describe(light, style, parts, size?.widthMm, power),
    also: identity.also,
    notes: `Imported from ${cleanText(context.fileName, 80)}${identity.words ? `: ${identity.words}` : ''}.`,
    source: light.source,
    style: style.style,
    symbol: style.symbol,
    massKg: mass.massKg,
    sizeMm: size ?? { lengthMm: ASSUMED_SIDE_MM, widthMm: ASSUMED_SIDE_MM },
    mount: { fits: ['clamp'] },
    inlets: ports.inlets,
    outlets: ports.outlets,
    load: load.load,
    modes: modes.map((m) => m.mode),
    ...light.optics,
    ...(ports.data.length > 0 ? { dataConnectors: ports.data } : {}),
    ...(operating ? { operatingC: operating } : {}),
    ...(outline ? { outlineSvg: outline } : {}),
    basis,
    origin: { book: 'file', version: context.version },
    fixtureFile: identity.file,
  });
  return kindRecord(kind) as FixtureKind;
};

/** The walk of the mode that takes the most power: it has all the parts that count. */
const mainWalk = (
  type: XmlNode,
  walker: Walker,
  roots: readonly Geometry[],
  context: Context,
  notices: Notices,
): { readonly visits: readonly Visit[]; readonly power: FilePower | undefined } => {
  let best: { visits: readonly Visit[]; power: FilePower | undefined } | undefined;
  for (const root of new Set(roots)) {
    const visits = walker.visits(root) ?? [];
    const power = filePower(type, visits, notices);
    if (!best || (power?.wattsW ?? 0) > (best.power?.wattsW ?? 0)) best = { visits, power };
  }
  const found = best ?? { visits: [], power: filePower(type, [], notices) };
  const { wattsW } = context;
  return wattsW === undefined
    ? found
    : { ...found, power: { ...found.power, wattsW, from: 'entered at the import', lampOnly: false } };
};

const loadOf = (source: FileLight['source'], power: FilePower | undefined) => {
  const profile =
    source === 'tungsten'
      ? PROFILES.tungsten
      : source === 'discharge'
        ? PROFILES['ballast-corrected']
        : source === 'fluorescent'
          ? PROFILES.fluorescent
          : PROFILES.led;
  const wattsW = power?.wattsW ?? 0;
  const { range: _range, ...behaviour } = { range: undefined, ...profile };
  return {
    load: {
      ...behaviour,
      wattsW,
      standbyW: Math.min(behaviour.standbyW, wattsW),
      powerFactor: power?.powerFactor ?? profile.powerFactor,
      voltsMinV: power?.voltsMinV ?? Math.min(100, power?.voltsMaxV ?? 100),
      voltsMaxV: power?.voltsMaxV ?? Math.max(240, power?.voltsMinV ?? 240),
      ...(power ? {} : { unknown: true }),
    },
    wattsBasis: !power
      ? 'not known: the file does not say'
      : power.lampOnly
        ? `${FILE}: ${power.from}; losses are not in it`
        : power.from === 'entered at the import'
          ? power.from
          : `${FILE}: ${power.from}`,
  };
};

const massOf = (type: XmlNode, power: FilePower | undefined) => {
  const properties = childOf(childOf(type, 'PhysicalDescriptions'), 'Properties');
  const massKg = positiveOf(attrOf(childOf(properties, 'Weight'), 'Value'), MAX_KG);
  if (massKg !== undefined) return { massKg: Number(massKg.toFixed(3)), basis: FILE, assumed: false };
  const guess = Math.max(ASSUMED_MIN_KG, (power?.wattsW ?? 0) * ASSUMED_KG_PER_W);
  return {
    massKg: Number(guess.toFixed(1)),
    basis: `assumed: ${ASSUMED_KG_PER_W} kg per watt, at least ${ASSUMED_MIN_KG} kg; the file gives none`,
    assumed: true,
  };
};

const operatingOf = (type: XmlNode): { lowC: number; highC: number } | undefined => {
  const node = childOf(childOf(childOf(type, 'PhysicalDescriptions'), 'Properties'), 'OperatingTemperature');
  const lowC = numberOf(attrOf(node, 'Low'));
  const highC = numberOf(attrOf(node, 'High'));
  return lowC !== undefined && highC !== undefined && lowC < highC && highC < 200 && lowC > -100
    ? { lowC, highC }
    : undefined;
};
