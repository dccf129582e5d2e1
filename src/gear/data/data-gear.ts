import type { Practice } from '../../plan/records/index.ts';
import { CLASS_VALUES, mains } from '../mains.ts';
import { COMMON, type Entry, type Family } from '../shape.ts';

const ports = (
  count: number,
  side: 'in' | 'out',
  connector: 'xlr-5' | 'xlr-3' | 'ethernet' | 'usb',
  universes = 1,
  word = 'line',
) =>
  Array.from({ length: count }, (_, i) => ({
    id: `${connector === 'ethernet' ? 'network' : connector === 'usb' ? 'usb' : side}-${i + 1}`,
    connector,
    universes,
    label: count > 1 ? `${word} ${i + 1}` : word,
  }));

const fed = (practice: Practice, supplyW: number) => {
  const { load, inlets } = mains(practice, 'domestic', supplyW > 75 ? 'led' : 'led-small', supplyW, {
    standbyW: 0,
  });
  return { supplyW, load, inlets };
};

interface NodeRow {
  readonly slug: string;
  readonly name: string;
  readonly what: 'desk' | 'node' | 'switch' | 'merger';
  readonly universes: number;
  readonly lines: number;
  readonly network: number;
  readonly supplyW: number;
  readonly kg: number;
  readonly size: readonly [number, number];
  readonly symbol: string;
  readonly linesIn?: number;
  readonly backupWh?: number;
  readonly rdm?: boolean;
  readonly also?: string;
}

const nodeRows: readonly NodeRow[] = [
  {
    slug: 'desk-small',
    name: 'Lighting desk, small, one universe',
    what: 'desk',
    universes: 1,
    lines: 1,
    network: 0,
    supplyW: 15,
    kg: 3,
    size: [450, 280],
    symbol: 'desk-small',
  },
  {
    slug: 'desk-2',
    name: 'Lighting desk, 2 universes',
    what: 'desk',
    universes: 2,
    lines: 2,
    network: 1,
    supplyW: 45,
    kg: 7,
    size: [600, 400],
    symbol: 'desk',
  },
  {
    slug: 'desk-8',
    name: 'Lighting desk, 8 universes',
    what: 'desk',
    universes: 8,
    lines: 4,
    network: 2,
    supplyW: 120,
    kg: 16,
    size: [800, 550],
    symbol: 'desk',
    rdm: true,
    backupWh: 60,
  },
  {
    slug: 'desk-64',
    name: 'Lighting desk, 64 universes',
    what: 'desk',
    universes: 64,
    lines: 6,
    network: 2,
    supplyW: 300,
    kg: 38,
    size: [1100, 700],
    symbol: 'desk',
    rdm: true,
    backupWh: 150,
  },
  {
    slug: 'desk-computer',
    name: 'Computer as a desk, one universe by USB',
    what: 'desk',
    universes: 1,
    lines: 1,
    network: 1,
    supplyW: 65,
    kg: 2,
    size: [350, 250],
    symbol: 'computer',
    also: 'laptop,interface',
    backupWh: 60,
  },
  {
    slug: 'desk-tablet',
    name: 'Tablet as a desk, network',
    what: 'desk',
    universes: 8,
    lines: 0,
    network: 1,
    supplyW: 15,
    kg: 0.6,
    size: [250, 180],
    symbol: 'tablet',
    also: 'tablet',
    backupWh: 30,
  },
  {
    slug: 'node-1',
    name: 'Network node, one line',
    what: 'node',
    universes: 1,
    lines: 1,
    network: 1,
    supplyW: 4,
    kg: 0.5,
    size: [90, 130],
    symbol: 'node',
    also: 'gateway',
  },
  {
    slug: 'node-2',
    name: 'Network node, 2 lines',
    what: 'node',
    universes: 2,
    lines: 2,
    network: 1,
    supplyW: 6,
    kg: 0.8,
    size: [130, 150],
    symbol: 'node',
    also: 'gateway',
    rdm: true,
  },
  {
    slug: 'node-4',
    name: 'Network node, 4 lines',
    what: 'node',
    universes: 4,
    lines: 4,
    network: 2,
    supplyW: 10,
    kg: 1.8,
    size: [220, 180],
    symbol: 'node',
    also: 'gateway',
    rdm: true,
  },
  {
    slug: 'node-8',
    name: 'Network node, 8 lines, for a rack',
    what: 'node',
    universes: 8,
    lines: 8,
    network: 2,
    supplyW: 20,
    kg: 3.5,
    size: [480, 220],
    symbol: 'node-rack',
    also: 'gateway',
    rdm: true,
  },
  {
    slug: 'node-16-pixel',
    name: 'Network node, 16 universes, for LED strip',
    what: 'node',
    universes: 16,
    lines: 0,
    network: 2,
    supplyW: 15,
    kg: 1.6,
    size: [220, 160],
    symbol: 'node-rack',
    also: 'pixel driver,gateway',
  },
  {
    slug: 'switch-5',
    name: 'Network switch, 5 ports',
    what: 'switch',
    universes: 64,
    lines: 0,
    network: 5,
    supplyW: 5,
    kg: 0.4,
    size: [150, 100],
    symbol: 'switch',
  },
  {
    slug: 'switch-10',
    name: 'Network switch, 10 ports, for the road',
    what: 'switch',
    universes: 256,
    lines: 0,
    network: 10,
    supplyW: 60,
    kg: 3.5,
    size: [480, 250],
    symbol: 'switch',
    also: 'power over ethernet',
  },
  {
    slug: 'merger-2',
    name: 'Merger, 2 lines into one',
    what: 'merger',
    universes: 1,
    lines: 1,
    linesIn: 2,
    network: 0,
    supplyW: 5,
    kg: 1.2,
    size: [180, 150],
    symbol: 'merger',
  },
];

interface SplitterRow {
  readonly slug: string;
  readonly name: string;
  readonly outs: number;
  readonly isolated: boolean;
  readonly rdm: boolean;
  readonly supplyW: number;
  readonly kg: number;
  readonly size: readonly [number, number];
  readonly symbol: string;
  readonly backupWh?: number;
}

const splitterRows: readonly SplitterRow[] = [
  {
    slug: 'split-data-2',
    name: 'Data splitter, 2 lines out',
    outs: 2,
    isolated: false,
    rdm: false,
    supplyW: 3,
    kg: 0.6,
    size: [120, 120],
    symbol: 'data-splitter',
  },
  {
    slug: 'split-data-4',
    name: 'Data splitter, 4 isolated lines out',
    outs: 4,
    isolated: true,
    rdm: false,
    supplyW: 6,
    kg: 1.5,
    size: [230, 150],
    symbol: 'data-splitter',
  },
  {
    slug: 'split-data-4-rdm',
    name: 'Data splitter, 4 isolated lines out, both ways',
    outs: 4,
    isolated: true,
    rdm: true,
    supplyW: 8,
    kg: 1.6,
    size: [230, 150],
    symbol: 'data-splitter',
  },
  {
    slug: 'split-data-4-cell',
    name: 'Data splitter, 4 isolated lines out, own cell',
    outs: 4,
    isolated: true,
    rdm: true,
    supplyW: 6,
    kg: 1.9,
    size: [230, 170],
    symbol: 'data-splitter',
    backupWh: 40,
  },
  {
    slug: 'split-data-8',
    name: 'Data splitter, 8 isolated lines out, for a rack',
    outs: 8,
    isolated: true,
    rdm: false,
    supplyW: 12,
    kg: 3,
    size: [480, 200],
    symbol: 'data-splitter-rack',
  },
  {
    slug: 'split-data-10-rdm',
    name: 'Data splitter, 10 isolated lines out, both ways',
    outs: 10,
    isolated: true,
    rdm: true,
    supplyW: 20,
    kg: 3.6,
    size: [480, 220],
    symbol: 'data-splitter-rack',
  },
];

const both = (practice: Practice, supplyW: number, backupWh: number | undefined) => ({
  ...fed(practice, supplyW),
  ...(backupWh === undefined ? {} : { backupWh }),
});

const basis = (backupWh: number | undefined) => ({
  all: COMMON,
  supplyW: 'planning value of the class, assumed',
  ...(backupWh === undefined ? {} : { backupWh: 'planning value of the class, assumed' }),
  ...CLASS_VALUES,
});

const nodes: Family = (practice) =>
  nodeRows.map(
    (r): Entry => ({
      family: 'node',
      what: r.what,
      slug: r.slug,
      name: r.name,
      also: ['control', 'dmx', r.what, ...(r.also?.split(',') ?? [])],
      symbol: r.symbol,
      massKg: r.kg,
      sizeMm: { widthMm: r.size[0], lengthMm: r.size[1] },
      dataIn: [
        ...(r.what === 'node' || r.what === 'switch'
          ? ports(r.network, 'in', 'ethernet', r.universes, 'network')
          : []),
        ...ports(r.linesIn ?? 0, 'in', 'xlr-5', 1, 'line in'),
      ],
      dataOut: [
        ...(r.what === 'desk' ? ports(r.network, 'out', 'ethernet', r.universes, 'network') : []),
        ...ports(r.lines, 'out', 'xlr-5'),
      ],
      universes: r.universes,
      rdm: r.rdm ?? false,
      ...both(practice, r.supplyW, r.backupWh),
      basis: basis(r.backupWh),
    }),
  );

const splitters: Family = (practice) =>
  splitterRows.map(
    (r): Entry => ({
      family: 'dataSplitter',
      slug: r.slug,
      name: r.name,
      also: ['control', 'dmx', 'splitter', 'opto', 'booster'],
      symbol: r.symbol,
      massKg: r.kg,
      sizeMm: { widthMm: r.size[0], lengthMm: r.size[1] },
      dataIn: ports(1, 'in', 'xlr-5', 1, 'line in'),
      dataOut: [
        { id: 'through', connector: 'xlr-5', universes: 1, label: 'through' },
        ...ports(r.outs, 'out', 'xlr-5'),
      ],
      isolated: r.isolated,
      rdm: r.rdm,
      unitLoads: 1,
      ...both(practice, r.supplyW, r.backupWh),
      basis: { ...basis(r.backupWh), unitLoads: 'one unit load of EIA-485, assumed' },
    }),
  );

export const dataGearKinds: Family = (practice) => [...nodes(practice), ...splitters(practice)];
