import { contentHash } from '../../kernel/canonical.ts';
import { type FixtureKind, fixtureKindSchema } from '../../plan/kinds/kinds.ts';
import { kindRecord } from '../book.ts';
import { PROFILES } from '../mains.ts';
import { wattsWord } from '../shape.ts';
import { type FileLight, fileLight } from './gdtf-light.ts';
import { readModes } from './gdtf-modes.ts';
import { plainOutline } from './gdtf-outline.ts';
import type { Package } from './gdtf-package.ts';
import { filePorts } from './gdtf-ports.ts';
import { type FilePower, filePower } from './gdtf-power.ts';
import { fileSize } from './gdtf-size.ts';
import { type Geometry, type GeometryTree, geometryTree, type Visit, walkGeometry } from './gdtf-tree.ts';
import { cleanText, numberOf, positiveOf } from './gdtf-values.ts';
import type { Notices } from './notices.ts';
import type { ImportOptions } from './options.ts';
import { attrOf, childOf, childrenOf, type XmlNode } from './xml.ts';

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
  const modes = readModes(type, tree, notices);
  if (modes.length === 0) notices.add('No mode could be read, so the unit cannot be patched yet.');
  const { visits, power } = mainWalk(
    type,
    tree,
    modes.map((m) => m.root),
    context,
    notices,
  );
  const light = fileLight(visits, type);
  const size = fileSize(childOf(type, 'Models'), visits, notices);
  const ports = filePorts(type, visits, power, context.practice ?? 'europe', notices);
  const parts = Math.max(1, ...modes.map((m) => m.mode.parts));
  const style = styleOf(light, parts, size);
  const mass = massOf(type, power);
  const outline = outlineOf(type, file, visits, notices);
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
  tree: GeometryTree,
  roots: readonly Geometry[],
  context: Context,
  notices: Notices,
): { readonly visits: readonly Visit[]; readonly power: FilePower | undefined } => {
  let best: { visits: readonly Visit[]; power: FilePower | undefined } | undefined;
  const starts = roots.length > 0 ? [...new Set(roots)] : tree.top.slice(0, 1);
  for (const root of starts) {
    const visits = walkGeometry(tree, root, notices) ?? [];
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

interface Style {
  readonly style: string;
  readonly symbol: string;
  readonly word: string;
}

const styleOf = (
  light: FileLight,
  parts: number,
  size: { readonly widthMm: number; readonly lengthMm: number } | undefined,
): Style => {
  const { source } = light;
  if (light.moves) return { style: 'moving-head', symbol: 'moving-head', word: 'moving head' };
  if (light.beamType === 'Fresnel')
    return {
      style: 'fresnel',
      symbol: `${source === 'fluorescent' ? 'tungsten' : source}-fresnel`,
      word: 'fresnel',
    };
  if (source === 'tungsten' || source === 'discharge')
    return light.beamType === 'Spot' && source === 'tungsten'
      ? { style: 'ellipsoidal', symbol: 'ellipsoidal', word: 'spot' }
      : { style: 'par', symbol: `${source}-par`, word: 'wash' };
  if (source === 'fluorescent') return { style: 'bank', symbol: 'fluorescent-bank', word: 'bank' };
  const long = size !== undefined && size.widthMm > 4 * size.lengthMm && size.widthMm >= 400;
  if (long) return { style: 'pixel-bar', symbol: 'pixel-bar', word: 'bar' };
  if (light.beamType === 'Rectangle' || (parts > 1 && size !== undefined && size.widthMm >= 300))
    return { style: 'panel', symbol: 'led-panel', word: 'panel' };
  if (light.beamType === 'Spot' || light.beamType === 'PC')
    return { style: 'spot', symbol: 'led-spot', word: 'spot' };
  return { style: 'par', symbol: 'led-par', word: 'wash' };
};

const SOURCE_WORDS = { led: 'LED', tungsten: 'Tungsten', discharge: 'Discharge', fluorescent: 'Fluorescent' };

/** A name that describes, like those of the book: `LED bar, 4 parts, 1000 mm, 135 W`. */
const describe = (
  light: FileLight,
  style: Style,
  parts: number,
  widthMm: number | undefined,
  power: FilePower | undefined,
): string =>
  [
    `${SOURCE_WORDS[light.source]} ${style.word}`,
    parts > 1 ? `${parts} parts` : '',
    style.word === 'bar' && widthMm !== undefined ? `${widthMm} mm` : '',
    power ? wattsWord(Math.round(power.wattsW)) : 'watts not known',
  ]
    .filter(Boolean)
    .join(', ');

/** Who the unit is in its own file's words, and a slug that stays the same for later versions of the file. */
const identityOf = (type: XmlNode) => {
  const get = (name: string): string => cleanText(attrOf(type, name));
  const name = get('Name') || get('LongName') || get('ShortName') || 'unnamed';
  const maker = get('Manufacturer');
  const typeId = get('FixtureTypeID').toUpperCase();
  const revision = childrenOf(childOf(type, 'Revisions'), 'Revision').at(-1);
  const known = /[1-9A-F]/.test(typeId.replace(/[^0-9A-F]/g, ''));
  const key = contentHash(known ? typeId : `${maker}/${name}`).slice(0, 6);
  const word =
    name
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40) || 'unit';
  const file = {
    name,
    maker,
    ...(known ? { typeId } : {}),
    ...(revision ? { revised: cleanText(attrOf(revision, 'Date'), 40) } : {}),
  };
  return {
    slug: `file-${word}-${key}`,
    also: [...new Set([name, get('LongName'), get('ShortName'), maker])].filter(Boolean),
    words: [get('LongName') || name, maker && `by ${maker}`].filter(Boolean).join(' '),
    file,
  };
};

const outlineOf = (
  type: XmlNode,
  file: Package,
  visits: readonly Visit[],
  notices: Notices,
): string | undefined => {
  const models = new Map(
    childrenOf(childOf(type, 'Models'), 'Model').map((m) => [attrOf(m, 'Name') ?? '', attrOf(m, 'File')]),
  );
  const name = visits.map((v) => models.get(v.model ?? '')).find((f) => f !== undefined);
  const bytes = name === undefined ? undefined : file.outline(name);
  if (!bytes) return undefined;
  const outline = plainOutline(bytes);
  if (outline.ok && outline.value !== undefined) {
    notices.add('The file has a top view drawing; its bare shapes are kept.');
    return outline.value;
  }
  notices.add(
    `Its top view drawing was left out: ${outline.ok ? 'it holds no plain shapes or too many' : outline.error.what}`,
  );
  return undefined;
};
