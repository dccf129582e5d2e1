import { symbolShape } from '../drawing/symbols.ts';
import { compareNatural } from '../kernel/ids.ts';
import type { LengthUnits } from '../kernel/units.ts';
import { connector } from '../plan/connectors.ts';
import type { FixtureKind, Kind } from '../plan/kinds/kinds.ts';
import { mountWords } from '../plan/kinds/mount-words.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';
import { outletSockets, outletSymbol, outletWord } from '../plan/outlet-sockets.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { AnyRecord } from '../plan/records/index.ts';

/** One line of the key: a symbol that is on the drawing, what it is and how many there are. */
export interface KeyRow {
  readonly symbolId: string;
  readonly look: { readonly lengthMm: number; readonly widthMm: number };
  readonly name: string;
  /** What it is put on, in the plan's units; empty where that says nothing. */
  readonly mount: string;
  readonly count: number;
  /** Input watts of one, ballast included; undefined where it takes none or the plan does not give them. */
  readonly eachW: number | undefined;
  /** Stands are drawn as the circle of their legs. */
  readonly circle: boolean;
  /** A light; the rest of the key is other gear. */
  readonly light: boolean;
}

/** The rest of the key in this order. */
const ORDER: readonly AnyRecord['type'][] = [
  'ballast',
  'source',
  'box',
  'outlet',
  'device',
  'charger',
  'pack',
  'stand',
  'grip',
  'rigging',
  'mark',
  'setPiece',
];

const mountOf = (kind: Kind, units: LengthUnits): string => {
  const first = kind.family === 'fixture' ? kind.mount.fits[0] : undefined;
  return first === undefined ? '' : mountWords(first, units);
};

const wattsOf = (kind: Kind): number | undefined => {
  const load = 'load' in kind ? (kind.load as LoadSpec | undefined) : undefined;
  if (load) return load.unknown === true || kind.family === 'ballast' ? undefined : load.wattsW;
  return undefined;
};

const outletRow = (plan: Plan, id: string): Omit<KeyRow, 'count'> | undefined => {
  const o = recordOf(plan, 'outlet', id);
  if (!o) return undefined;
  const { count } = outletSockets(o);
  const symbolId = outletSymbol(count);
  const what = (connector(o.connector)?.name ?? o.connector).replace(/\s*\(.*\)$/, '');
  return {
    symbolId,
    look: symbolShape(symbolId),
    name: `Wall outlet, ${outletWord(count)}, ${what}`,
    mount: '',
    eachW: undefined,
    circle: false,
    light: false,
  };
};

const rowOf = (plan: Plan, r: AnyRecord, units: LengthUnits): Omit<KeyRow, 'count'> | undefined => {
  if (r.type === 'outlet') return outletRow(plan, r.id);
  const kind = 'kindId' in r && typeof r.kindId === 'string' ? kindOf(plan, r.kindId) : undefined;
  if (!kind) return undefined;
  return {
    symbolId: kind.symbol,
    look: kind.sizeMm,
    name: kind.name,
    mount: mountOf(kind, units),
    eachW: wattsOf(kind),
    circle: kind.family === 'stand',
    light: kind.family === 'fixture',
  };
};

/** Kinds of lights on a floor with their counts, the most power first. */
const lightRows = (plan: Plan, floorId: string | undefined, units: LengthUnits): readonly KeyRow[] => {
  const rows = new Map<string, { kind: FixtureKind; count: number; eachW: number | undefined }>();
  const ballastW = new Map<string, number>();
  for (const b of recordsOf(plan, 'ballast')) {
    const k = kindOf(plan, b.kindId, 'ballast');
    if (k) ballastW.set(b.fixtureId, k.load.wattsW);
  }
  for (const f of recordsOf(plan, 'fixture')) {
    if (floorId !== undefined && f.floorId !== floorId) continue;
    const kind = kindOf(plan, f.kindId, 'fixture');
    if (!kind) continue;
    const row = rows.get(kind.id) ?? { kind, count: 0, eachW: wattsOf(kind) ?? ballastW.get(f.id) };
    row.count += 1;
    rows.set(kind.id, row);
  }
  return [...rows.values()]
    .sort(
      (a, b) => (b.eachW ?? 0) * b.count - (a.eachW ?? 0) * a.count || (a.kind.name < b.kind.name ? -1 : 1),
    )
    .map(({ kind, count, eachW }) => ({
      symbolId: kind.symbol,
      look: kind.sizeMm,
      name: kind.name,
      mount: mountOf(kind, units),
      count,
      eachW,
      circle: false,
      light: true,
    }));
};

/**
 * Every symbol that is drawn on a floor, with what it is, how many there are and its input watts: lights first, the most
 * power first, then power, control, stands and rigging, and the set.
 */
export const keyRows = (plan: Plan, floorId: string | undefined, units: LengthUnits): readonly KeyRow[] => {
  const rest: KeyRow[] = [];
  for (const type of ORDER) {
    const rows = new Map<string, KeyRow>();
    for (const r of recordsOf(plan, type)) {
      if (r.hidden || (floorId !== undefined && (r as { floorId?: string }).floorId !== floorId)) continue;
      const made = rowOf(plan, r, units);
      if (!made) continue;
      const same = rows.get(`${made.symbolId} ${made.name}`);
      rows.set(`${made.symbolId} ${made.name}`, { ...made, count: (same?.count ?? 0) + 1 });
    }
    rest.push(...[...rows.values()].sort((a, b) => compareNatural(a.name, b.name)));
  }
  return [...lightRows(plan, floorId, units), ...rest];
};
