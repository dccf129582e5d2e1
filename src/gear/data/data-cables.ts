import { COMMON, type Entry, type Family, stockMm } from '../shape.ts';

interface DataCableRow {
  readonly slug: string;
  readonly name: string;
  readonly connector: 'xlr-5' | 'xlr-3' | 'ethernet';
  readonly lines?: number;
  readonly impedanceOhm: number;
  readonly longestM: number;
  readonly kgPerM: number;
  readonly feet: readonly number[];
  readonly metres: readonly number[];
  readonly acrossMm: number;
  readonly from: { readonly impedanceOhm: string; readonly longestMm: string };
  readonly also: readonly string[];
  readonly notes?: string;
}

const EIA = 'EIA-485 and ANSI E1.27-1, nominal 120 Ω pairs, from memory';
const LINE = 'common practice, no published source: 300 m of EIA-485 line at 250 kbit/s';
const NETWORK = 'ISO/IEC 11801 and TIA-568: 100 m of channel, 100 Ω pairs, from memory';

const lengths = { feet: [5, 10, 25, 50, 100], metres: [1.5, 3, 5, 10, 20, 30] };
const network = { feet: [5, 15, 25, 50, 100, 150], metres: [2, 5, 10, 20, 30, 50] };

const rows: readonly DataCableRow[] = [
  {
    slug: 'data-cable-5-pin',
    name: 'Data cable, five-pin',
    connector: 'xlr-5',
    impedanceOhm: 120,
    longestM: 300,
    kgPerM: 0.06,
    ...lengths,
    acrossMm: 7,
    from: { impedanceOhm: EIA, longestMm: LINE },
    also: ['dmx', 'control', 'xlr', 'universe', '5-pin'],
  },
  {
    slug: 'data-cable-3-pin',
    name: 'Data cable, three-pin',
    connector: 'xlr-3',
    impedanceOhm: 120,
    longestM: 300,
    kgPerM: 0.055,
    ...lengths,
    acrossMm: 7,
    from: { impedanceOhm: EIA, longestMm: LINE },
    also: ['dmx', 'control', 'xlr', 'universe', '3-pin'],
    notes:
      'ANSI E1.11 knows only five-pin connectors; a microphone cable of the same look has other pairs and can spoil a line.',
  },
  {
    slug: 'data-cable-4-lines',
    name: 'Data cable, four lines in one, five-pin ends',
    connector: 'xlr-5',
    lines: 4,
    impedanceOhm: 120,
    longestM: 300,
    kgPerM: 0.22,
    feet: [50, 100, 150],
    metres: [15, 30, 50],
    acrossMm: 14,
    from: { impedanceOhm: EIA, longestMm: LINE },
    also: ['dmx', 'control', 'snake', 'multi', 'universe'],
  },
  {
    slug: 'data-cable-network',
    name: 'Network cable, four pairs',
    connector: 'ethernet',
    impedanceOhm: 100,
    longestM: 100,
    kgPerM: 0.045,
    ...network,
    acrossMm: 6,
    from: { impedanceOhm: NETWORK, longestMm: NETWORK },
    also: ['ethernet', 'lan', 'art-net', 'sacn', 'patch'],
  },
  {
    slug: 'data-cable-network-rugged',
    name: 'Network cable, four pairs, shielded, in locking shells',
    connector: 'ethernet',
    impedanceOhm: 100,
    longestM: 100,
    kgPerM: 0.075,
    feet: [25, 50, 100, 150, 250],
    metres: [10, 20, 30, 50, 75],
    acrossMm: 8,
    from: { impedanceOhm: NETWORK, longestMm: NETWORK },
    also: ['ethernet', 'lan', 'outdoor', 'sacn', 'drum'],
    notes: 'Patch leads at both ends count into the 100 m.',
  },
];

/** Cables for control data: lines of one universe by pins, and network cable. */
export const dataCableKinds: Family = (practice) =>
  rows.map((r): Entry => {
    const stockLengthsMm = stockMm(practice, r.feet, r.metres);
    const longest = Math.max(...stockLengthsMm);
    return {
      family: 'dataCable',
      slug: r.slug,
      name: r.name,
      also: ['cable', 'data', ...r.also],
      massKg: Number(((longest / 1000) * r.kgPerM).toFixed(1)),
      massKgPerM: r.kgPerM,
      sizeMm: { lengthMm: longest, widthMm: r.acrossMm },
      symbol: r.connector === 'ethernet' ? 'network-cable' : 'data-cable',
      connector: r.connector,
      lines: r.lines ?? 1,
      impedanceOhm: r.impedanceOhm,
      longestMm: r.longestM * 1000,
      stockLengthsMm,
      basis: { all: COMMON, ...r.from },
      notes: ['Mass is of the longest stock length.', r.notes].filter(Boolean).join(' '),
    };
  });
