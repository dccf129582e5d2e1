import { dataCableName, lineLengths } from '../derive/data-lines.ts';
import { cableLength } from '../derive/lengths.ts';
import { limitOf } from '../derive/limits.ts';
import { compareIds, compareNatural } from '../kernel/ids.ts';
import { formatCableLength } from '../kernel/units.ts';
import { dimmerSlots } from '../plan/edits/dimmer-patch.ts';
import { footprintOf, patchedMode } from '../plan/footprint.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { placesOf } from '../report/control.ts';
import { kindCounts } from '../report/kind-counts.ts';
import { sparesFor } from '../report/spares.ts';
import type { Assessment } from '../report/types.ts';
import { type Circuit, type CircuitLoad, type Panel, panelsOf } from './circuit-rows.ts';
import { largestLegA, legsText, pctOf, type Reader, readerOf } from './figures.ts';

/** A list as plain rows, for files that other programs read. Numbers stay numbers; NaN is an empty cell. */
export interface ListTable {
  readonly name: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
}

const rounded = (v: number, decimals: number): number =>
  Number.isFinite(v) ? Number(v.toFixed(decimals)) : Number.NaN;

const unitOf = (plan: Plan, l: CircuitLoad): readonly [string, string, string] => [
  l.fixture?.unit ?? '',
  l.fixture ? (kindOf(plan, l.fixture.kindId)?.name ?? '') : l.load.label,
  l.fixture?.use ?? '',
];

const cableOf = (plan: Plan, l: CircuitLoad): readonly [string, number, string] => {
  const record = l.cable && recordOf(plan, 'cable', l.cable.recordId);
  if (!record) return ['', Number.NaN, ''];
  const units = planRecord(plan).lengthUnits;
  const length = cableLength(plan, record);
  return [
    kindOf(plan, record.kindId)?.name ?? '',
    length ? rounded((length.drawnMm + length.risesMm) / 1000, 2) : Number.NaN,
    length ? length.piecesMm.map((mm) => formatCableLength(mm, units)).join(' + ') : '',
  ];
};

const loadRow = (plan: Plan, r: Reader, p: Panel, c: Circuit, l: CircuitLoad): (string | number)[] => {
  const practice = planRecord(plan).practice;
  const worst = largestLegA(r, c.way, 'worst');
  const w = r.here(l.load.key, 'loadW');
  const va = r.here(l.load.key, 'loadVa');
  return [
    p.source.label,
    p.owner.label,
    c.wayLabel,
    c.breaker,
    legsText(practice, l.load),
    ...unitOf(plan, l),
    ...cableOf(plan, l),
    rounded(w, 1),
    va > 0 ? rounded(w / va, 3) : Number.NaN,
    rounded(va, 1),
    rounded(largestLegA(r, l.load, 'here'), 2),
    rounded(largestLegA(r, l.load, 'worst'), 2),
    rounded(worst, 2),
    c.way.legLimit?.limitA ?? Number.NaN,
    rounded(pctOf(worst, c.way.legLimit?.limitA), 1),
    rounded(r.worst(l.load.key, 'voltsV'), 2),
    rounded(r.worst(l.load.key, 'dropPct'), 2),
  ];
};

/** One row per load: where it is plugged, its cable, its load in the shown setup, and the figures of its way. */
export const circuitList = (plan: Plan, assessment: Assessment, setupId: string | undefined): ListTable => {
  const r = readerOf(assessment, setupId);
  return {
    name: 'circuits',
    head: [
      'source',
      'box',
      'way',
      'breaker',
      'legs',
      'unit',
      'kind',
      'use',
      'cable',
      'route m',
      'stock pieces',
      'load W',
      'power factor',
      'load VA',
      'amps this setup',
      'amps worst',
      'way amps worst',
      'way limit A',
      'way % of limit',
      'volts worst',
      'drop %',
    ],
    rows: panelsOf(plan, r).flatMap((p) =>
      p.circuits.flatMap((c) => c.loads.map((l) => loadRow(plan, r, p, c, l))),
    ),
  };
};

/** Pieces of cable to order, data lines with them: per kind and stock length, how many, spares counted. */
export const cableList = (plan: Plan): ListTable => {
  const units = planRecord(plan).lengthUnits;
  const counts = new Map<string, { name: string; mm: number; count: number }>();
  for (const c of recordsOf(plan, 'cable')) {
    const kind = kindOf(plan, c.kindId, 'cable');
    for (const mm of cableLength(plan, c)?.piecesMm ?? []) {
      const key = `${c.kindId}|${mm}`;
      const row = counts.get(key) ?? { name: kind?.name ?? 'kind not in the plan', mm, count: 0 };
      row.count += 1;
      counts.set(key, row);
    }
  }
  for (const l of lineLengths(plan))
    for (const mm of l.hops.flatMap((h) => h.piecesMm)) {
      const name = dataCableName(plan, l);
      const row = counts.get(`${name}|${mm}`) ?? { name, mm, count: 0 };
      row.count += 1;
      counts.set(`${name}|${mm}`, row);
    }
  const rows = [...counts.values()].sort((a, b) => compareIds(a.name, b.name) || a.mm - b.mm);
  return {
    name: 'cables',
    head: ['cable', 'stock length', 'length m', 'pieces', 'spare', 'order', 'length in all m'],
    rows: rows.map((r) => {
      const order = r.count + sparesFor(plan, 'cable', r.count);
      return [
        r.name,
        formatCableLength(r.mm, units),
        rounded(r.mm / 1000, 3),
        r.count,
        order - r.count,
        order,
        rounded((r.mm * order) / 1000, 2),
      ];
    }),
  };
};

const FAMILY_ORDER: readonly string[] = [
  ...['fixture', 'ballast', 'stand', 'grip', 'rigging', 'source', 'box', 'dimmer', 'converter', 'adapter'],
  ...['node', 'dataSplitter', 'transmitter', 'receiver', 'repeater', 'charger', 'pack'],
];
/** Families that are not in the order come last. */
const familyPlace = (family: string): number =>
  (FAMILY_ORDER.indexOf(family) + 1 || FAMILY_ORDER.length + 1) - 1;

/** Gear by kind with counts and mass, accessories, cloths and sand bags included; cable is in the cable list. */
export const gearList = (plan: Plan): ListTable => {
  const bags = recordsOf(plan, 'stand').reduce((n, st) => n + Math.max(0, st.bags ?? 0), 0);
  const bagKg = limitOf(plan, 'rigging-bag').value;
  const rows = [...kindCounts(plan)].map(([kindId, n]) => {
    const kind = kindOf(plan, kindId);
    return [
      kind?.family ?? '',
      kind?.name ?? 'kind not in the plan',
      n,
      rounded(kind?.massKg ?? Number.NaN, 1),
      rounded((kind?.massKg ?? Number.NaN) * n, 1),
      kind?.origin.book ?? '',
    ] as const;
  });
  return {
    name: 'gear',
    head: ['family', 'kind', 'count', 'each kg', 'all kg', 'book'],
    rows: [
      ...rows,
      ...(bags > 0
        ? [['grip', 'Sand bag on a stand', bags, bagKg, rounded(bagKg * bags, 1), ''] as const]
        : []),
    ].sort((a, b) => familyPlace(a[0]) - familyPlace(b[0]) || compareIds(a[1], b[1])),
  };
};

/** Universe, address and mode of every patched unit and dimmer, by universe and address; a parted unit has a row for each stretch. */
export const patchList = (plan: Plan): ListTable => {
  const rows = recordsOf(plan, 'fixture').flatMap((f) => {
    const { patch } = f;
    if (!patch) return [];
    const kind = kindOf(plan, f.kindId, 'fixture');
    const mode = patchedMode(plan, f);
    const total = mode ? footprintOf(mode).slots : Number.NaN;
    const starts = placesOf(plan, f);
    return starts.map((at, i) => {
      const slots = (starts[i + 1]?.fromSlot ?? total + 1) - at.fromSlot;
      return [
        at.universe,
        at.address,
        slots,
        at.address + slots - 1,
        f.unit,
        f.channel,
        kind?.name ?? '',
        mode?.name ?? patch.modeId,
        f.use,
        f.link,
        patch.paired ? 'paired' : '',
        starts.length > 1 ? `from its slot ${at.fromSlot} of ${total}` : '',
      ] as const;
    });
  });
  const dimmers = recordsOf(plan, 'box').flatMap((b) => {
    const universe = b.patch && recordOf(plan, 'universe', b.patch.universeId)?.number;
    const slots = dimmerSlots(plan, b);
    if (!b.patch || universe === undefined || slots === 0) return [];
    const { address } = b.patch;
    const lead = [universe, address, slots, address + slots - 1, b.label, ''] as const;
    const ways = slots === 1 ? 'dimmer' : `dimmer, ${slots} ways`;
    return [[...lead, kindOf(plan, b.kindId)?.name ?? '', ways, '', '', '', ''] as const];
  });
  return {
    name: 'patch',
    head: [
      'universe',
      'address',
      'slots',
      'last slot',
      'unit',
      'channel',
      'kind',
      'mode',
      'use',
      'link',
      'paired',
      'parted',
    ],
    rows: [...rows, ...dimmers].sort((a, b) => a[0] - b[0] || a[1] - b[1] || compareNatural(a[4], b[4])),
  };
};
