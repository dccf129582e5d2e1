import type { DataPort, DcPort, FixtureKind, Kind } from '../plan/kinds/kinds.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';

/** One column of a table for people: its head, and what it says of a kind. */
export type Column = readonly [head: string, cell: (kind: Kind) => string | number | undefined];

export const size = (k: Kind): string => `${k.sizeMm.widthMm} × ${k.sizeMm.lengthMm}`;
export const connectorsOf = (k: Kind): string | undefined =>
  'inlets' in k && Array.isArray(k.inlets)
    ? grouped((k.inlets as readonly { readonly connector: string }[]).map((i) => i.connector)) || undefined
    : undefined;
/** Where the figures are from, fields of one origin together. */
export const basisOf = (k: Kind): string => {
  const fields = new Map<string, string[]>();
  for (const [field, from] of Object.entries(k.basis))
    fields.set(from, [...(fields.get(from) ?? []), ...(field === 'all' ? [] : [field])]);
  return [...fields]
    .map(([from, f]) => (f.length > 0 && k.basis.all !== from ? `${f.join(', ')}: ${from}` : from))
    .join('; ');
};

export const grouped = (items: readonly string[]): string => {
  const counts = new Map<string, number>();
  for (const i of items) counts.set(i, (counts.get(i) ?? 0) + 1);
  return [...counts].map(([item, n]) => (n > 1 ? `${n} × ${item}` : item)).join(', ');
};

export const waysOf = (k: Kind): string | undefined =>
  k.family === 'box' || k.family === 'source' || k.family === 'dimmer'
    ? grouped(
        k.ways.map((w) => `${w.breakerA} A ${w.poles}-pole ${w.curve}${w.rcdMa ? ` ${w.rcdMa} mA` : ''}`),
      ) || undefined
    : undefined;
export const outletsOf = (k: Kind): string | undefined =>
  'outlets' in k && Array.isArray(k.outlets)
    ? grouped((k.outlets as readonly { readonly connector: string }[]).map((o) => o.connector)) || undefined
    : undefined;

export const loadOf = (k: Kind): LoadSpec | undefined =>
  'load' in k ? (k.load as LoadSpec | undefined) : undefined;
export const dataOf = (ports: readonly DataPort[]): string =>
  grouped(ports.map((p) => (p.universes > 1 ? `${p.connector} (${p.universes})` : p.connector)));
export const dcOf = (ports: readonly DcPort[]): string =>
  grouped(ports.map((p) => `${p.connector} ${p.voltsV} V ${p.maxA} A`));
/** A column for one family. */
export const of =
  <F extends Kind['family']>(
    families: readonly F[],
    cell: (k: Extract<Kind, { family: F }>) => string | number | undefined,
  ) =>
  (k: Kind): string | number | undefined =>
    (families as readonly string[]).includes(k.family)
      ? cell(k as Extract<Kind, { family: F }>) || undefined
      : undefined;
export const RADIO = ['transmitter', 'receiver', 'repeater'] as const;
export const DATA = ['node', 'dataSplitter'] as const;
export const isFixture = (k: Kind): k is FixtureKind => k.family === 'fixture';
export const optics = (k: Kind): string | undefined => {
  if (!isFixture(k) || k.beamDeg === undefined) return undefined;
  return k.spot ? `${k.spot.beamDeg}–${k.beamDeg}°` : `${k.beamDeg}°`;
};
export const candela = (k: Kind): string | number | undefined => {
  if (!isFixture(k)) return undefined;
  return k.spot ? `${k.spot.candelaCd} / ${k.candelaCd}` : k.candelaCd;
};

export const metres = (mm: number | undefined): string => (mm === undefined ? '–' : String(mm / 1000));

export const NAME: Column = ['Kind', (k) => k.name];
export const BASIS: Column = ['From', basisOf];
export const MASS: Column = ['kg', (k) => k.massKg];
export const SIZE: Column = ['Size mm', size];
export const WATTS: Column = ['Input W', (k) => loadOf(k)?.wattsW];
export const FACTOR: Column = ['Power factor', (k) => loadOf(k)?.powerFactor];
export const INLET: Column = ['Inlet', connectorsOf];
