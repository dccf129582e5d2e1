import type { Practice } from '../../plan/records/index.ts';
import { CLASS_VALUES, mains } from '../mains.ts';
import { COMMON, type Entry, type Family } from '../shape.ts';

type Antenna = 'inside' | 'whip' | 'whip-high-gain' | 'panel';
type BandName = '2.4' | '5' | 'sub';

/** Gain of the aerial over an isotropic one, dBi. */
const GAIN_DBI: Readonly<Record<Antenna, number>> = {
  inside: 0,
  whip: 2,
  'whip-high-gain': 5,
  panel: 12,
};

const BANDS_MHZ: Readonly<Record<Practice, Readonly<Record<BandName, readonly [number, number]>>>> = {
  'north-america': { '2.4': [2400, 2483.5], '5': [5725, 5850], sub: [902, 928] },
  europe: { '2.4': [2400, 2483.5], '5': [5725, 5875], sub: [863, 870] },
};

/** A half-wave dipole over an isotropic aerial, dB. */
const ERP_TO_EIRP_DB = 2.15;
const dBm = (mW: number): number => 10 * Math.log10(mW);

/**
 * Most a link may radiate on a band with an aerial of so many dBi, and most at its socket. North America: 47 CFR 15.247,
 * 1 W at the socket, less dB for dB above 6 dBi. Europe: EN 300 328, 20 dBm; 25 mW ERP at 863–870 MHz (EN 300 220) and
 * 25 mW at 5.8 GHz, both from memory.
 */
export const radioLimitDbm = (
  practice: Practice,
  band: BandName,
  gainDbi: number,
): { readonly eirpDbm: number; readonly conductedDbm: number } => {
  if (practice === 'north-america') {
    const conductedDbm = 30 - Math.max(0, gainDbi - 6);
    return { conductedDbm, eirpDbm: conductedDbm + gainDbi };
  }
  const eirpDbm = band === '2.4' ? dBm(100) : band === '5' ? dBm(25) : dBm(25) + ERP_TO_EIRP_DB;
  return { eirpDbm, conductedDbm: eirpDbm - gainDbi };
};

const RULES: Readonly<Record<Practice, string>> = {
  'north-america': 'at most what 47 CFR 15.247 lets a hopping link radiate',
  europe: 'at most what EN 300 328 lets a 2.4 GHz link radiate (20 dBm, from memory)',
};

interface RadioRow {
  readonly slug: string;
  readonly name: string;
  readonly family: 'transmitter' | 'receiver' | 'repeater';
  readonly bands: readonly BandName[];
  readonly universes: number;
  /** At the socket, dBm, where the rules let it; receivers answer with it. */
  readonly dBm: number;
  readonly antenna: Antenna;
  readonly sensitivityDbm: number;
  readonly supplyW: number;
  readonly backupWh?: number;
  /** From the mains by its own lead, else from a data or USB supply. */
  readonly mains?: boolean;
  readonly ports: 'line' | 'network' | 'none';
  readonly fits?: 'line' | 'fixture' | 'pocket';
  readonly kg: number;
  readonly size: readonly [number, number];
  readonly symbol: string;
  readonly only?: Practice;
  readonly also?: string;
  readonly rdm?: boolean;
  readonly linksMax?: number;
  readonly mesh?: { readonly hopsMax: number; readonly relayEirpDbm: number };
}

const S = -92;

const transmitter = (
  slug: string,
  name: string,
  row: Omit<RadioRow, 'slug' | 'name' | 'family' | 'symbol' | 'sensitivityDbm'> & Partial<RadioRow>,
): RadioRow => ({
  symbol: 'transmitter',
  sensitivityDbm: S,
  ...row,
  slug: `transmitter-${slug}`,
  name: `Transmitter, ${name}`,
  family: 'transmitter',
});

const receiver = (
  slug: string,
  name: string,
  row: Omit<RadioRow, 'slug' | 'name' | 'family' | 'symbol' | 'sensitivityDbm' | 'dBm' | 'bands'> &
    Partial<RadioRow>,
): RadioRow => ({
  symbol: 'receiver',
  sensitivityDbm: S,
  dBm: 10,
  bands: ['2.4'],
  ...row,
  slug: `receiver-${slug}`,
  name: `Receiver, ${name}`,
  family: 'receiver',
});

const rows: readonly RadioRow[] = [
  transmitter('pocket', 'pocket size, one universe, own cell', {
    bands: ['2.4'],
    universes: 1,
    dBm: 10,
    antenna: 'inside',
    supplyW: 1.5,
    backupWh: 7,
    ports: 'line',
    kg: 0.2,
    size: [70, 110],
    symbol: 'transmitter-pocket',
    also: 'battery',
  }),
  transmitter('1', 'one universe, 2.4 GHz', {
    bands: ['2.4'],
    universes: 1,
    dBm: 18,
    antenna: 'whip',
    supplyW: 4,
    mains: true,
    ports: 'line',
    kg: 0.7,
    size: [130, 160],
  }),
  transmitter('1-cell', 'one universe, 2.4 GHz, back-up cell', {
    bands: ['2.4'],
    universes: 1,
    dBm: 18,
    antenna: 'whip',
    supplyW: 4,
    backupWh: 4.5,
    mains: true,
    ports: 'line',
    kg: 1,
    size: [140, 180],
    rdm: true,
  }),
  transmitter('2', '2 universes, 2.4 GHz, back-up cell', {
    bands: ['2.4'],
    universes: 2,
    dBm: 18,
    antenna: 'whip',
    supplyW: 8,
    backupWh: 9,
    mains: true,
    ports: 'line',
    kg: 1.3,
    size: [180, 200],
    rdm: true,
  }),
  transmitter('4-network', '4 universes, network in, 2.4 GHz', {
    bands: ['2.4'],
    universes: 4,
    dBm: 20,
    antenna: 'whip-high-gain',
    supplyW: 12,
    mains: true,
    ports: 'network',
    kg: 1.8,
    size: [220, 220],
    rdm: true,
  }),
  transmitter('8-rack', '8 universes, network in, for a rack', {
    bands: ['2.4'],
    universes: 8,
    dBm: 20,
    antenna: 'whip-high-gain',
    supplyW: 25,
    mains: true,
    ports: 'network',
    kg: 3.5,
    size: [480, 220],
    symbol: 'transmitter',
    rdm: true,
  }),
  transmitter('2-two-bands', '2 universes, 2.4 and 5 GHz', {
    bands: ['2.4', '5'],
    universes: 2,
    dBm: 20,
    antenna: 'whip',
    supplyW: 8,
    mains: true,
    ports: 'line',
    kg: 1.4,
    size: [180, 200],
  }),
  transmitter('1-sub', 'one universe, below 1 GHz', {
    bands: ['sub'],
    universes: 1,
    dBm: 20,
    antenna: 'whip',
    sensitivityDbm: -100,
    supplyW: 6,
    mains: true,
    ports: 'line',
    kg: 1.2,
    size: [180, 200],
  }),
  transmitter('1-outdoor', 'one universe, outdoors, panel aerial', {
    bands: ['2.4'],
    universes: 1,
    dBm: 24,
    antenna: 'panel',
    supplyW: 7,
    mains: true,
    ports: 'line',
    kg: 2.6,
    size: [250, 120],
    symbol: 'transmitter-panel',
    also: 'weatherproof,directional',
  }),
  transmitter('2-outdoor', '2 universes, outdoors, weatherproof', {
    bands: ['2.4'],
    universes: 2,
    dBm: 20,
    antenna: 'whip-high-gain',
    supplyW: 9,
    mains: true,
    ports: 'network',
    kg: 2.2,
    size: [220, 120],
    also: 'weatherproof',
    rdm: true,
  }),
  transmitter('mesh', 'bridge for short-range bulbs and tubes', {
    bands: ['2.4'],
    universes: 1,
    dBm: 10,
    antenna: 'inside',
    sensitivityDbm: -94,
    supplyW: 2,
    backupWh: 15,
    ports: 'network',
    kg: 0.3,
    size: [90, 120],
    symbol: 'transmitter-pocket',
    also: 'low energy,tablet bridge',
    linksMax: 50,
    mesh: { hopsMax: 3, relayEirpDbm: 4 },
  }),
  transmitter('access-point', 'network access point, 2.4 and 5 GHz', {
    bands: ['2.4', '5'],
    universes: 16,
    dBm: 18,
    antenna: 'whip',
    sensitivityDbm: -90,
    supplyW: 12,
    mains: true,
    ports: 'network',
    kg: 0.8,
    size: [200, 200],
    symbol: 'access-point',
    also: 'wireless network',
    linksMax: 30,
  }),
  receiver('1', 'one universe, 2.4 GHz', {
    universes: 1,
    antenna: 'whip',
    supplyW: 3,
    mains: true,
    ports: 'line',
    fits: 'line',
    kg: 0.7,
    size: [130, 160],
  }),
  receiver('1-cell', 'one universe, 2.4 GHz, own cell', {
    universes: 1,
    antenna: 'whip',
    supplyW: 3,
    backupWh: 25,
    mains: true,
    ports: 'line',
    fits: 'line',
    kg: 0.9,
    size: [140, 180],
    rdm: true,
  }),
  receiver('2', '2 universes, 2.4 GHz', {
    universes: 2,
    antenna: 'whip',
    supplyW: 6,
    mains: true,
    ports: 'line',
    fits: 'line',
    kg: 1.2,
    size: [180, 200],
  }),
  receiver('1-two-bands', 'one universe, 2.4 and 5 GHz', {
    bands: ['2.4', '5'],
    universes: 1,
    antenna: 'whip',
    supplyW: 5,
    mains: true,
    ports: 'line',
    fits: 'line',
    kg: 1,
    size: [140, 180],
  }),
  receiver('1-sub', 'one universe, below 1 GHz', {
    bands: ['sub'],
    universes: 1,
    antenna: 'whip',
    sensitivityDbm: -100,
    supplyW: 4,
    mains: true,
    ports: 'line',
    fits: 'line',
    kg: 1,
    size: [140, 180],
  }),
  receiver('outdoor', 'one universe, outdoors, weatherproof', {
    universes: 1,
    antenna: 'whip-high-gain',
    supplyW: 5,
    mains: true,
    ports: 'line',
    fits: 'line',
    kg: 1.8,
    size: [200, 120],
    also: 'weatherproof',
  }),
  receiver('plug', 'plug-in, one fixture', {
    universes: 1,
    antenna: 'inside',
    sensitivityDbm: -90,
    supplyW: 0.7,
    ports: 'line',
    fits: 'fixture',
    kg: 0.1,
    size: [30, 110],
    symbol: 'receiver-plug',
    also: 'dongle,five-pin',
  }),
  receiver('plug-cell', 'plug-in, one fixture, own cell', {
    universes: 1,
    antenna: 'inside',
    sensitivityDbm: -90,
    supplyW: 0.7,
    backupWh: 7,
    ports: 'line',
    fits: 'fixture',
    kg: 0.15,
    size: [40, 120],
    symbol: 'receiver-plug',
    also: 'dongle',
  }),
  receiver('card', 'built into a fixture', {
    universes: 1,
    antenna: 'inside',
    sensitivityDbm: -92,
    supplyW: 0.5,
    ports: 'none',
    fits: 'fixture',
    kg: 0.05,
    size: [40, 60],
    symbol: 'receiver-plug',
    also: 'card,module',
    rdm: true,
  }),
  {
    slug: 'repeater-1',
    name: 'Repeater, one universe, 2.4 GHz',
    family: 'repeater',
    bands: ['2.4'],
    universes: 1,
    dBm: 18,
    antenna: 'whip',
    sensitivityDbm: S,
    supplyW: 6,
    mains: true,
    ports: 'none',
    kg: 0.9,
    size: [140, 180],
    symbol: 'repeater',
  },
  {
    slug: 'repeater-outdoor',
    name: 'Repeater, one universe, outdoors, own cell',
    family: 'repeater',
    bands: ['2.4'],
    universes: 1,
    dBm: 20,
    antenna: 'whip-high-gain',
    sensitivityDbm: S,
    supplyW: 6,
    backupWh: 60,
    mains: true,
    ports: 'none',
    kg: 2,
    size: [220, 120],
    symbol: 'repeater',
    also: 'weatherproof',
  },
];

const lines = (count: number, side: 'in' | 'out') =>
  Array.from({ length: count }, (_, i) => ({
    id: `${side}-${i + 1}`,
    connector: 'xlr-5' as const,
    universes: 1,
    label: count > 1 ? `line ${i + 1}` : 'line',
  }));

const dataPorts = (r: RadioRow) => {
  const sends = r.family === 'transmitter';
  const air = { id: 'air', connector: 'radio' as const, universes: r.universes, label: 'radio' };
  if (r.family === 'repeater') return { dataIn: [air], dataOut: [{ ...air, id: 'air-on' }] };
  const wired =
    r.ports === 'none'
      ? []
      : r.ports === 'network'
        ? [{ id: 'network', connector: 'ethernet' as const, universes: r.universes, label: 'network' }]
        : lines(r.universes, sends ? 'in' : 'out');
  return sends ? { dataIn: wired, dataOut: [air] } : { dataIn: [air], dataOut: wired };
};

/** A cell beside a mains supply bridges an outage; one that is all a unit has must last the day. */
const backupBasis = (r: RadioRow): string =>
  r.mains && r.family === 'transmitter'
    ? 'common practice, no published source: about an hour'
    : 'planning value of the class, assumed';

/** Its small supply: 1 W and up at 0.6 power factor, as plug-in supplies are. */
const supply = (practice: Practice, r: RadioRow) => {
  if (!r.mains) return {};
  const { load, inlets } = mains(practice, 'domestic', 'led-small', r.supplyW, { standbyW: 0 });
  return { load, inlets };
};

export const radioKinds: Family = (practice) =>
  rows
    .filter((r) => r.only === undefined || r.only === practice)
    .map((r): Entry => {
      const antennaGainDbi = GAIN_DBI[r.antenna];
      const bands = r.bands.map((band) => {
        const [fromMhz, toMhz] = BANDS_MHZ[practice][band];
        const limit = radioLimitDbm(practice, band, antennaGainDbi);
        const eirpDbm = Math.floor(Math.min(r.dBm + antennaGainDbi, limit.eirpDbm) * 100) / 100;
        return { fromMhz, toMhz, eirpDbm };
      });
      const most = Math.max(...bands.map((b) => b.eirpDbm));
      const conductedDbm = Number((most - antennaGainDbi).toFixed(2));
      return {
        family: r.family,
        slug: r.slug,
        name: r.name,
        also: ['wireless', 'radio', 'dmx', ...(r.also?.split(',') ?? [])],
        symbol: r.symbol,
        massKg: r.kg,
        sizeMm: { widthMm: r.size[0], lengthMm: r.size[1] },
        ...dataPorts(r),
        bands,
        universes: r.universes,
        antenna: r.antenna,
        antennaGainDbi,
        sensitivityDbm: r.sensitivityDbm,
        supplyW: r.supplyW,
        ...supply(practice, r),
        ...(r.backupWh === undefined ? {} : { backupWh: r.backupWh }),
        rdm: r.rdm ?? false,
        ...(r.linksMax === undefined ? {} : { linksMax: r.linksMax }),
        ...(r.mesh === undefined ? {} : { mesh: r.mesh }),
        ...(r.family === 'receiver' ? { fits: r.fits } : { conductedDbm }),
        ...(r.family === 'repeater' ? { delayMs: 10 } : {}),
        basis: {
          all: COMMON,
          bands: RULES[practice],
          conductedDbm: 'planning value of the class, assumed',
          antennaGainDbi: 'planning value of the class, assumed',
          sensitivityDbm:
            'planning value of the class, assumed: hopping links of 2.4 GHz are said to take -90 to -97 dBm',
          supplyW: 'planning value of the class, assumed',
          ...(r.backupWh === undefined ? {} : { backupWh: backupBasis(r) }),
          ...(r.family === 'repeater' ? { delayMs: 'planning value of the class, assumed' } : {}),
          ...(r.linksMax === undefined ? {} : { linksMax: 'planning value of the class, assumed' }),
          ...(r.mesh === undefined ? {} : { mesh: 'planning values of the class, assumed' }),
          ...(r.mains ? CLASS_VALUES : {}),
        },
        notes: 'A planning estimate. Approval of the equipment and the local radio rules apply.',
      } as Entry;
    });
