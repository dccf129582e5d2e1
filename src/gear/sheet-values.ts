import { MM_PER_INCH } from '../kernel/units.ts';
import { connector, connectors } from '../plan/connectors.ts';
import type { Mode } from '../plan/kinds/kinds.ts';
import type { Mount } from './fixture.ts';
import type { Sheet } from './sheet-text.ts';

const KG_PER_LB = 0.45359237;
const MAX_MODES = 200;

/** A column of the list. `factor` turns what is written into the unit of `field`. */
export interface Column {
  readonly field: string;
  readonly factor?: number;
  /** Letters that may stand behind a number. */
  readonly unit?: string;
}

/** Columns by heading, in the order they are written in. Headings are compared without case and brackets. */
export const COLUMNS: Readonly<Record<string, Column>> = {
  name: { field: 'name' },
  slug: { field: 'slug' },
  source: { field: 'source' },
  watts: { field: 'wattsW', unit: 'W' },
  'power factor': { field: 'powerFactor' },
  'volts min': { field: 'voltsMinV', unit: 'V' },
  'volts max': { field: 'voltsMaxV', unit: 'V' },
  connector: { field: 'connector' },
  'mass kg': { field: 'massKg', unit: 'kg' },
  'length mm': { field: 'lengthMm', unit: 'mm' },
  'width mm': { field: 'widthMm', unit: 'mm' },
  'height mm': { field: 'heightMm', unit: 'mm' },
  mount: { field: 'mount' },
  'beam deg': { field: 'beamDeg', unit: '°' },
  'field deg': { field: 'fieldDeg', unit: '°' },
  modes: { field: 'modes' },
  also: { field: 'also' },
  notes: { field: 'notes' },
};

const OTHER_HEADINGS: Readonly<Record<string, Column>> = {
  'mass lb': { field: 'massKg', factor: KG_PER_LB, unit: 'lb' },
  'length in': { field: 'lengthMm', factor: MM_PER_INCH, unit: 'in' },
  'width in': { field: 'widthMm', factor: MM_PER_INCH, unit: 'in' },
  'height in': { field: 'heightMm', factor: MM_PER_INCH, unit: 'in' },
  mass: { field: 'massKg', unit: 'kg' },
  length: { field: 'lengthMm', unit: 'mm' },
  width: { field: 'widthMm', unit: 'mm' },
  height: { field: 'heightMm', unit: 'mm' },
  beam: { field: 'beamDeg', unit: '°' },
  field: { field: 'fieldDeg', unit: '°' },
  pf: { field: 'powerFactor' },
};

/** A heading as it is looked up: without case and brackets. */
export const headingKey = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[()[\]_/,]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** A column of a list of lights. */
export const columnOf = (heading: string): Column | undefined => {
  const key = headingKey(heading);
  if (Object.hasOwn(COLUMNS, key)) return COLUMNS[key];
  return Object.hasOwn(OTHER_HEADINGS, key) ? OTHER_HEADINGS[key] : undefined;
};

/** A number of a cell in the unit of its field: with its unit's letters behind it, and a decimal comma between semicolons. */
export const cellNumber = (
  cell: string,
  column: Column,
  separator: Sheet['separator'],
): number | undefined => {
  let text = cell.trim();
  const { unit } = column;
  if (unit && text.toLowerCase().endsWith(unit.toLowerCase())) text = text.slice(0, -unit.length).trim();
  if (separator !== ',') text = text.replace(/^(-?\d+),(\d+)$/, '$1.$2');
  if (!/^-?(\d+(\.\d*)?|\.\d+)$/.test(text)) return undefined;
  const n = Number(text) * (column.factor ?? 1);
  return column.factor === undefined ? n : Number(n.toFixed(3));
};

/** Row of the connector table by its id or its name. */
export const connectorIdOf = (cell: string): string | undefined => {
  const text = cell.trim().toLowerCase();
  return connector(text)?.id ?? connectors.find((c) => c.name.toLowerCase() === text)?.id;
};

/** Ways of writing a mount. */
export const MOUNTS: Readonly<Record<string, Mount>> = {
  'pin-16': 'pin-16',
  '16': 'pin-16',
  '16 mm': 'pin-16',
  '5/8': 'pin-16',
  '5/8"': 'pin-16',
  'spigot-28': 'spigot-28',
  '28': 'spigot-28',
  '28 mm': 'spigot-28',
  '1-1/8': 'spigot-28',
  '1-1/8"': 'spigot-28',
  clamp: 'clamp',
  clip: 'clip',
  socket: 'socket',
  hung: 'hung',
  floor: 'floor',
  held: 'held',
};

/** Mounts between semicolons, commas or bars; undefined where one is not known. */
export const mountsOfCell = (cell: string): Mount[] | undefined => {
  const words = cell
    .toLowerCase()
    .split(/[;,|]/)
    .map((w) => w.trim())
    .filter(Boolean);
  const found = words.map((w) => (Object.hasOwn(MOUNTS, w) ? MOUNTS[w] : undefined));
  return found.length > 0 && found.every((m) => m !== undefined) ? [...new Set(found as Mount[])] : undefined;
};

/** Modes as `8-bit:4;16-bit:8`, with parts behind a stroke: `pixels:36/12`. Undefined where one is not written so. */
export const modesOfCell = (cell: string): Mode[] | undefined => {
  const modes: Mode[] = [];
  for (const text of cell.split(/[;|]/)) {
    if (text.trim() === '') continue;
    if (modes.length >= MAX_MODES) return undefined;
    const m = /^(.+):\s*(\d{1,5})\s*(?:\/\s*(\d{1,4}))?$/.exec(text.trim());
    const name = m?.[1]?.trim() ?? '';
    const [slots, parts] = [Number(m?.[2]), Number(m?.[3] ?? 1)];
    if (!m || name === '' || name.length > 100 || slots > 32_768 || parts < 1) return undefined;
    const base = name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-+|-+$/g, '');
    let id = base || 'mode';
    for (let n = 2; modes.some((x) => x.id === id); n++) id = `${base || 'mode'}-${n}`;
    modes.push({ id, name, slots, parts });
  }
  return modes;
};

export const cellOfModes = (modes: readonly Mode[]): string =>
  modes.map((m) => `${m.name.replace(/[;|]/g, ',')}:${m.slots}${m.parts > 1 ? `/${m.parts}` : ''}`).join(';');
