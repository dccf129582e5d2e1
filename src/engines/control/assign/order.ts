import { linesInOrder } from '../../../derive/data-lines.ts';
import { compareIds, compareNatural } from '../../../kernel/ids.ts';
import { fixturePlace, type Plan, recordOf } from '../../../plan/plan.ts';
import type { Fixture } from '../../../plan/records/index.ts';

/** How fixtures follow one another: by their numbers, by where they are, along a short walk, or as the data lines reach them. */
export type Order = 'unit' | 'channel' | 'left-right' | 'top-bottom' | 'path' | 'line';

/** Fixtures closer than this across the direction of reading count as side by side. */
const BAND_MM = 500;
/** Walks over more units than this are not shortened any further. */
const IMPROVE_UP_TO = 150;

interface Spot {
  readonly fixture: Fixture;
  readonly xMm: number;
  readonly yMm: number;
}

/** Fixtures in an order. Floors come one after the other, the lowest first; ties go by unit number, then id. */
export const orderFixtures = (plan: Plan, fixtures: readonly Fixture[], order: Order): readonly Fixture[] => {
  const byUnit = [...fixtures].sort((a, b) => compareNatural(a.unit, b.unit) || compareIds(a.id, b.id));
  if (order === 'unit') return byUnit;
  if (order === 'channel')
    return byUnit.sort(
      (a, b) => Number(a.channel === '') - Number(b.channel === '') || compareNatural(a.channel, b.channel),
    );
  if (order === 'line') return alongLines(plan, byUnit);
  return floorsOf(plan, byUnit).flatMap((list) => {
    const spots = list.map((fixture) => ({ fixture, ...fixturePlace(plan, fixture).at }));
    const ordered =
      order === 'path'
        ? walk(spots)
        : banded(spots, order === 'left-right' ? ['xMm', 'yMm'] : ['yMm', 'xMm']);
    return ordered.map((s) => s.fixture);
  });
};

/** Line by line in the order of their labels, stop by stop; what no line reaches comes after, by unit number. */
const alongLines = (plan: Plan, byUnit: readonly Fixture[]): readonly Fixture[] => {
  const at = new Map<string, number>();
  for (const l of linesInOrder(plan)) for (const id of l.stops) if (!at.has(id)) at.set(id, at.size);
  const place = (f: Fixture): number => at.get(f.id) ?? Number.POSITIVE_INFINITY;
  return [...byUnit].sort((a, b) => (place(a) === place(b) ? 0 : place(a) - place(b)));
};

const floorsOf = (plan: Plan, fixtures: readonly Fixture[]): readonly (readonly Fixture[])[] => {
  const floors = new Map<string, Fixture[]>();
  for (const f of fixtures) {
    const list = floors.get(f.floorId);
    if (list) list.push(f);
    else floors.set(f.floorId, [f]);
  }
  const level = (id: string): number => recordOf(plan, 'floor', id)?.levelMm ?? 0;
  return [...floors].sort(([a], [b]) => level(a) - level(b) || compareIds(a, b)).map(([, list]) => list);
};

/** By one coordinate in bands, by the other inside a band. */
const banded = (spots: readonly Spot[], [along, across]: readonly ['xMm' | 'yMm', 'xMm' | 'yMm']): Spot[] => {
  const sorted = [...spots].sort((a, b) => a[along] - b[along]);
  const out: Spot[] = [];
  for (let i = 0; i < sorted.length; ) {
    const start = sorted[i]?.[along] ?? 0;
    let j = i;
    while (j < sorted.length && (sorted[j]?.[along] ?? 0) - start <= BAND_MM) j++;
    out.push(...sorted.slice(i, j).sort((a, b) => a[across] - b[across]));
    i = j;
  }
  return out;
};

const apart = (a: Spot | undefined, b: Spot | undefined): number =>
  a && b ? Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) : 0;

/** Always to the nearest one next, from the upper left corner; then crossings are taken out where there are not too many. */
const walk = (spots: readonly Spot[]): Spot[] => {
  const sorted = [...spots].sort((a, b) => a.xMm + a.yMm - (b.xMm + b.yMm));
  const n = sorted.length;
  const x = Float64Array.from(sorted, (s) => s.xMm);
  const y = Float64Array.from(sorted, (s) => s.yMm);
  // Those still to come, in no order; of several equally near the first in the sorted list is taken.
  const left = Int32Array.from({ length: n }, (_, i) => i);
  const out: Spot[] = [];
  let at = 0;
  let slot = 0;
  for (let count = n; count > 0; ) {
    const spot = sorted[at];
    if (spot) out.push(spot);
    count--;
    left[slot] = left[count] as number;
    const [ax, ay] = [x[at] as number, y[at] as number];
    let best = Number.POSITIVE_INFINITY;
    let next = n;
    for (let k = 0; k < count; k++) {
      const i = left[k] as number;
      const dx = (x[i] as number) - ax;
      const dy = (y[i] as number) - ay;
      const d = dx * dx + dy * dy;
      if (d < best || (d === best && i < next)) {
        best = d;
        next = i;
        slot = k;
      }
    }
    at = next;
  }
  return out.length <= IMPROVE_UP_TO ? uncrossed(out) : out;
};

/** Turns stretches of a walk round while that shortens it. */
const uncrossed = (path: Spot[]): Spot[] => {
  for (let better = true, rounds = 0; better && rounds < 30; rounds++) {
    better = false;
    for (let i = 0; i < path.length - 2; i++)
      for (let j = i + 1; j < path.length - 1; j++) {
        const before = apart(path[i], path[i + 1]) + apart(path[j], path[j + 1]);
        const after = apart(path[i], path[j]) + apart(path[i + 1], path[j + 1]);
        if (after >= before - 1e-6) continue;
        path.splice(i + 1, j - i, ...path.slice(i + 1, j + 1).reverse());
        better = true;
      }
  }
  return path;
};
