import { cableLength } from '../derive/lengths.ts';
import { limitOf } from '../derive/limits.ts';
import { compareIds, compareNatural, type Id } from '../kernel/ids.ts';
import type { Kind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordsOf } from '../plan/plan.ts';
import { kindCounts } from './kind-counts.ts';
import { type SpareGroup, sparesFor } from './spares.ts';

/** Departments of a gear list in their order on paper. */
export const DEPARTMENTS = ['Lights', 'Stands and grip', 'Power', 'Cable', 'Control', 'Batteries'] as const;
export type Department = (typeof DEPARTMENTS)[number];

/** One kind of gear as it is ordered and loaded. */
export interface GearLine {
  readonly department: Department;
  /** Word for the type, like `fixture` or `stand`. */
  readonly type: string;
  readonly kindId: Id;
  readonly name: string;
  /** Pieces the plan uses, spares on top, and both together. */
  readonly count: number;
  readonly spare: number;
  readonly order: number;
  /** Mass of one and of all that is ordered; NaN where the kind is not in the plan. */
  readonly eachKg: number;
  readonly allKg: number;
  /** Book the kind is from. */
  readonly book: string;
}

const DEPARTMENT_OF: Readonly<Partial<Record<Kind['family'], Department>>> = {
  fixture: 'Lights',
  ballast: 'Lights',
  stand: 'Stands and grip',
  grip: 'Stands and grip',
  rigging: 'Stands and grip',
  source: 'Power',
  box: 'Power',
  dimmer: 'Power',
  adapter: 'Power',
  converter: 'Power',
  cable: 'Cable',
  transmitter: 'Control',
  receiver: 'Control',
  repeater: 'Control',
  node: 'Control',
  dataSplitter: 'Control',
  video: 'Control',
  pack: 'Batteries',
  charger: 'Batteries',
};

const SPARES_OF: Readonly<Partial<Record<Kind['family'], SpareGroup>>> = {
  fixture: 'lights',
  stand: 'stands',
  grip: 'grip',
  adapter: 'adapters',
};

const spareOf = (plan: Plan, family: Kind['family'], count: number): number => {
  const group = SPARES_OF[family];
  return group === undefined ? 0 : sparesFor(plan, group, count);
};

/** What stands there already and is never loaded. */
const fixed = (k: Kind | undefined): boolean =>
  k?.family === 'source' && (k.what === 'house-panel' || k.what === 'wall-circuit' || k.what === 'service');

/** Mass of a piece of cable by its length: by its mass per metre, else by its share of the longest stock length. */
const pieceKg = (k: Kind | undefined, mm: number): number => {
  if (k?.family !== 'cable') return Number.NaN;
  const perM = (k as { massKgPerM?: unknown }).massKgPerM;
  return typeof perM === 'number' ? (perM * mm) / 1000 : (k.massKg * mm) / Math.max(...k.stockLengthsMm);
};

/** Cable by kind and stock length; its name carries the length by `lengthText`. */
const cableRows = (plan: Plan, lengthText: (mm: number) => string): readonly GearLine[] => {
  const counts = new Map<string, { kindId: Id; mm: number; count: number }>();
  for (const c of recordsOf(plan, 'cable'))
    for (const mm of cableLength(plan, c)?.piecesMm ?? []) {
      const key = `${c.kindId}|${mm}`;
      const row = counts.get(key) ?? { kindId: c.kindId, mm, count: 0 };
      row.count += 1;
      counts.set(key, row);
    }
  return [...counts.values()]
    .map(({ kindId, mm, count }) => {
      const kind = kindOf(plan, kindId);
      const spare = sparesFor(plan, 'cable', count);
      const eachKg = pieceKg(kind, mm);
      return {
        mm,
        line: {
          department: 'Cable' as const,
          type: 'cable',
          kindId,
          name: `${kind?.name ?? 'kind not in the plan'}, ${lengthText(mm)}`,
          count,
          spare,
          order: count + spare,
          eachKg,
          allKg: eachKg * (count + spare),
          book: kind?.origin.book ?? '',
        },
      };
    })
    .sort(
      (a, b) =>
        compareIds(kindOf(plan, a.line.kindId)?.name ?? '', kindOf(plan, b.line.kindId)?.name ?? '') ||
        b.mm - a.mm,
    )
    .map((r) => r.line);
};

/**
 * Everything to order and load by department, type and kind, with the plan's own spares or those of common practice and with
 * masses. House panels, wall circuits and services stay where they are and are left out; packs come from the stock list.
 */
export const gearLines = (plan: Plan, lengthText: (mm: number) => string): readonly GearLine[] => {
  const rows = [...kindCounts(plan)].flatMap(([kindId, n]): GearLine[] => {
    const kind = kindOf(plan, kindId);
    if (fixed(kind)) return [];
    const spare = kind ? spareOf(plan, kind.family, n) : 0;
    const eachKg = kind?.massKg ?? Number.NaN;
    return [
      {
        department: (kind && DEPARTMENT_OF[kind.family]) ?? 'Lights',
        type: kind?.family ?? '',
        kindId,
        name: kind?.name ?? 'kind not in the plan',
        count: n,
        spare,
        order: n + spare,
        eachKg,
        allKg: eachKg * (n + spare),
        book: kind?.origin.book ?? '',
      },
    ];
  });
  const bags = recordsOf(plan, 'stand').reduce((n, st) => n + Math.max(0, st.bags ?? 0), 0);
  if (bags > 0) {
    const eachKg = limitOf(plan, 'rigging-bag').value;
    const spare = spareOf(plan, 'grip', bags);
    rows.push({
      department: 'Stands and grip',
      type: 'grip',
      kindId: '',
      name: 'Sand bag on a stand',
      count: bags,
      spare,
      order: bags + spare,
      eachKg,
      allKg: eachKg * (bags + spare),
      book: '',
    });
  }
  const types = Object.keys(DEPARTMENT_OF);
  const sorted = rows.sort(
    (a, b) =>
      DEPARTMENTS.indexOf(a.department) - DEPARTMENTS.indexOf(b.department) ||
      types.indexOf(a.type) - types.indexOf(b.type) ||
      compareNatural(a.name, b.name) ||
      compareIds(a.kindId, b.kindId),
  );
  const before = (d: Department): boolean => DEPARTMENTS.indexOf(d) <= DEPARTMENTS.indexOf('Power');
  return [
    ...sorted.filter((r) => before(r.department)),
    ...cableRows(plan, lengthText),
    ...sorted.filter((r) => !before(r.department)),
  ];
};

/** Mass of lines together, kilograms, and how many have none. */
export const massOf = (lines: readonly GearLine[]): { readonly kg: number; readonly unknown: number } => ({
  kg: lines.reduce((s, l) => s + (Number.isFinite(l.allKg) ? l.allKg : 0), 0),
  unknown: lines.filter((l) => !Number.isFinite(l.allKg)).length,
});
