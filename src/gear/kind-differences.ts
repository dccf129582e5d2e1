import type { Kind } from '../plan/kinds/kinds.ts';

/** Words for fields whose own names would not tell a person enough. */
const WORDS: Readonly<Record<string, string>> = {
  also: 'other names',
  massKg: 'mass',
  'sizeMm.lengthMm': 'length',
  'sizeMm.widthMm': 'width',
  'sizeMm.heightMm': 'height',
  'mount.fits': 'mount',
  'load.wattsW': 'watts',
  'load.standbyW': 'standby watts',
  'load.powerFactor': 'power factor',
  'load.model': 'load model',
  'load.thirdHarmonicPct': 'third harmonic',
  'load.inrushMultiple': 'inrush, times the running current',
  'load.inrushMs': 'length of the inrush',
  'load.leakageMa': 'leakage',
  'load.voltsMinV': 'least volts',
  'load.voltsMaxV': 'most volts',
  'load.unknown': 'watts not known',
  candelaCd: 'light output',
  beamDeg: 'beam',
  fieldDeg: 'field',
  'cct.minK': 'warmest colour temperature',
  'cct.maxK': 'coldest colour temperature',
  'cct.color': 'colours',
  needsBallast: 'needs a ballast',
  outlineSvg: 'outline',
  'clearanceMm.cloth': 'distance to cloth',
  'clearanceMm.surface': 'distance to lit surfaces',
  flicker: 'flicker',
  circuits: 'circuits',
  energyWh: 'energy',
  capacityAh: 'capacity',
  fullV: 'volts when full',
  emptyV: 'volts when empty',
  continuousA: 'current all the time',
  peakA: 'current for a moment',
  bayW: 'watts of a bay',
  eirpDbm: 'radiated power',
  conductedDbm: 'power at the aerial socket',
  sensitivityDbm: 'weakest signal',
  antennaGainDbi: 'gain of the aerial',
  backupWh: 'back-up cell',
  radioIn: 'built-in radio',
  dataIn: 'data in',
  dataOut: 'data out',
  dcIn: 'direct current in',
  dcOut: 'direct current out',
};

/** Lists whose members have ids (or numbers), and what a member is called. */
const MEMBERS: Readonly<Record<string, string>> = {
  modes: 'mode',
  inlets: 'inlet',
  outlets: 'outlet',
  ways: 'way',
  breaks: 'break',
  dataIn: 'data in',
  dataOut: 'data out',
  dcIn: 'direct current in',
  dcOut: 'direct current out',
};

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/Kg$/, ' kg'],
  [/Mm$/, ' mm'],
  [/Deg$/, '°'],
  [/Pct$/, ' %'],
  [/Ma$/, ' mA'],
  [/Ms$/, ' ms'],
  [/Mhz$/, ' MHz'],
  [/Dbm$/, ' dBm'],
  [/Dbi$/, ' dBi'],
  [/Ah$/, ' Ah'],
  [/Min$/, ' min'],
  [/Wh$/, ' Wh'],
  [/Cd$/, ' cd'],
  [/Kva$/, ' kVA'],
  [/Kw$/, ' kW'],
  [/[a-z]W$/, ' W'],
  [/[a-z]V$/, ' V'],
  [/[a-z]A$/, ' A'],
  [/[a-z]K$/, ' K'],
];

/** Not content: the id follows from the rest, and the origin is told apart. */
const LEFT_OUT = new Set(['id', 'type', 'origin']);
const MAX_TEXT = 60;

interface Field {
  readonly label: string;
  readonly text: string;
  readonly raw: string;
}

const textOf = (key: string, value: unknown): string => {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return `${value}${UNITS.find(([pattern]) => pattern.test(key))?.[1] ?? ''}`;
  if (Array.isArray(value)) return value.map((v) => textOf(key, v)).join(', ');
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > MAX_TEXT ? `${text.slice(0, MAX_TEXT - 1)}…` : text;
};

const plainWords = (key: string): string =>
  key
    .replace(/(Kg|Mm|Deg|Pct|Ma|Ms|Mhz|Dbm|Dbi|Ah|Wh|Cd|Kva|Kw|(?<=[a-z])[WVAK])$/, '')
    .replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);

const memberKey = (v: unknown): string | undefined => {
  if (typeof v !== 'object' || v === null) return undefined;
  const { id, number } = v as { readonly id?: unknown; readonly number?: unknown };
  return typeof id === 'string' ? id : typeof number === 'number' ? String(number) : undefined;
};

/** All single fields of a kind by path. */
const fieldsOf = (value: unknown, path: readonly string[], label: string, out: Map<string, Field>): void => {
  const key = path.at(-1) ?? '';
  const put = (): void => {
    out.set(path.join('/'), { label, text: textOf(key, value), raw: JSON.stringify(value) });
  };
  if (Array.isArray(value)) {
    const keys = value.map(memberKey);
    const word = MEMBERS[key];
    if (!word || keys.includes(undefined)) {
      put();
      return;
    }
    value.forEach((v, i) => {
      const name = `${label === key ? '' : `${label.slice(0, -key.length)}`}${word} “${keys[i]}”`;
      out.set([...path, keys[i] ?? ''].join('/'), { label: name, text: '', raw: '' });
      fieldsOf(v, [...path, keys[i] ?? ''], name, out);
    });
  } else if (typeof value === 'object' && value !== null) {
    for (const [k, v] of Object.entries(value)) {
      if (v === undefined || (path.length === 0 && LEFT_OUT.has(k)) || (path.length > 0 && k === 'id'))
        continue;
      const dotted = [...path, k].join('.');
      const own = WORDS[dotted] ?? (MEMBERS[k] ? k : plainWords(k));
      const next = path.length === 0 || WORDS[dotted] ? own : `${label}, ${own}`;
      fieldsOf(v, [...path, k], next, out);
    }
  } else put();
};

/**
 * What differs from one kind to another, one line for each field in words: `mass: 3.2 kg → 3.5 kg`,
 * `mode “16-bit” added`. Ids and origins are left out. An empty list means the same content.
 */
export const kindDifferences = (from: Kind, to: Kind): readonly string[] => {
  const before = new Map<string, Field>();
  const after = new Map<string, Field>();
  fieldsOf(from, [], '', before);
  fieldsOf(to, [], '', after);
  const lines: string[] = [];
  const gone = (
    path: string,
    other: ReadonlyMap<string, Field>,
    fields: ReadonlyMap<string, Field>,
  ): boolean => {
    // A member that is only on one side is told once, without its fields.
    const parts = path.split('/');
    for (let n = 1; n < parts.length; n++) {
      const parent = parts.slice(0, n).join('/');
      if (fields.get(parent)?.raw === '' && !other.has(parent)) return true;
    }
    return false;
  };
  for (const [path, f] of before) {
    const t = after.get(path);
    if (t && t.raw === f.raw) continue;
    if (t && f.text === t.text) lines.push(`${f.label}: changed`);
    else if (t) lines.push(`${f.label}: ${f.text || 'nothing'} → ${t.text || 'nothing'}`);
    else if (!gone(path, after, before))
      lines.push(f.raw === '' ? `${f.label} removed` : `${f.label}: ${f.text} → none`);
  }
  for (const [path, t] of after) {
    if (before.has(path) || gone(path, before, after)) continue;
    lines.push(t.raw === '' ? `${t.label} added` : `${t.label}: none → ${t.text}`);
  }
  return lines;
};
