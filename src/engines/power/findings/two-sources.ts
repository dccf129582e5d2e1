import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { limitOf } from '../../../derive/limits.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import type { Id } from '../../../kernel/ids.ts';
import { kindOf, recordOf, recordsOf } from '../../../plan/plan.ts';
import { placeOf } from '../../../plan/ports.ts';
import type { Computed } from '../types.ts';

interface Spot {
  readonly sourceId: Id;
  readonly recordId: Id;
  readonly label: string;
  readonly floorId: Id;
  readonly xMm: number;
  readonly yMm: number;
}

interface Meeting {
  readonly a: Spot;
  readonly b: Spot;
  readonly apartMm: number;
}

const pairKey = (a: Id, b: Id): string => (a < b ? `${a}+${b}` : `${b}+${a}`);

/**
 * Supplies that do not come from one earth by what they are: everything but two supplies of one house. What hangs on a
 * source counts only where something draws from it.
 */
const apart = (c: Computed): ((a: Id, b: Id) => boolean) => {
  const house = (id: Id): boolean => {
    const s = recordOf(c.plan, 'source', id);
    const what = s && kindOf(c.plan, s.kindId, 'source')?.what;
    return what === 'house-panel' || what === 'wall-circuit' || what === 'service';
  };
  return (a, b) => a !== b && !(house(a) && house(b));
};

/**
 * Two supplies in reach of one another: things fed by one stand within reach of things fed by the other, or a data line joins
 * units fed by both. How their earths are joined is for a qualified person.
 */
export const twoSources = (c: Computed): readonly EngineFinding[] => {
  const used = new Set(
    c.tree.nodes
      .filter((n) => n.branches.length > 0 && n.sourceId !== undefined)
      .map((n) => n.sourceId as Id),
  );
  if (used.size < 2) return [];
  const differ = apart(c);
  const all = [...used];
  if (!all.some((a, i) => all.slice(i + 1).some((b) => differ(a, b)))) return [];
  return [...inReach(c, used, differ), ...byData(c, used, differ)];
};

const spotsOf = (c: Computed, used: ReadonlySet<Id>): readonly Spot[] => {
  const seen = new Set<Id>();
  return c.tree.nodes.flatMap((n) => {
    if (n.what !== 'load' && n.what !== 'box' && n.what !== 'source') return [];
    if (n.sourceId === undefined || !used.has(n.sourceId) || seen.has(n.recordId)) return [];
    // The cord a power station is charged by joins its ground to that of the circuit it is plugged into.
    if (n.what === 'load' && recordOf(c.plan, 'source', n.recordId)) return [];
    seen.add(n.recordId);
    const place = placeOf(c.plan, n.recordId);
    if (!place) return [];
    return [
      {
        sourceId: n.sourceId,
        recordId: n.recordId,
        label: n.label,
        floorId: place.floorId,
        xMm: place.at.xMm,
        yMm: place.at.yMm,
      },
    ];
  });
};

const inReach = (
  c: Computed,
  used: ReadonlySet<Id>,
  differ: (a: Id, b: Id) => boolean,
): readonly EngineFinding[] => {
  const reachMm = limitOf(c.plan, 'arms-reach').value * 1000;
  const cells = new Map<number, Spot[]>();
  const nearest = new Map<string, Meeting>();
  const cell = (mm: number): number => Math.floor(mm / reachMm);
  // Floors lie in one grid: what is on another is passed over below.
  const key2 = (x: number, y: number): number => x * 1_000_003 + y;
  for (const s of spotsOf(c, used)) {
    for (let dx = -1; dx <= 1; dx++)
      for (let dy = -1; dy <= 1; dy++)
        for (const o of cells.get(key2(cell(s.xMm) + dx, cell(s.yMm) + dy)) ?? []) {
          if (o.floorId !== s.floorId || !differ(s.sourceId, o.sourceId)) continue;
          const apartMm = Math.hypot(s.xMm - o.xMm, s.yMm - o.yMm);
          const key = pairKey(s.sourceId, o.sourceId);
          if (apartMm > reachMm || apartMm >= (nearest.get(key)?.apartMm ?? Number.POSITIVE_INFINITY))
            continue;
          nearest.set(key, { a: o, b: s, apartMm });
        }
    const own = key2(cell(s.xMm), cell(s.yMm));
    const there = cells.get(own);
    if (there) there.push(s);
    else cells.set(own, [s]);
  }
  return [...nearest].map(([key, m]) =>
    always('power-two-sources', 'warn', key, [m.a.recordId, m.b.recordId], {
      label: m.a.label,
      other: m.b.label,
      source: sourceLabel(c, m.a.sourceId),
      otherSource: sourceLabel(c, m.b.sourceId),
      apartMm: m.apartMm,
    }),
  );
};

const sourceLabel = (c: Computed, id: Id): string => c.tree.byKey.get(id)?.label ?? '';

/** Data lines whose ends are fed by different supplies: one finding for each two supplies. */
const byData = (
  c: Computed,
  used: ReadonlySet<Id>,
  differ: (a: Id, b: Id) => boolean,
): readonly EngineFinding[] => {
  const lines = recordsOf(c.plan, 'line');
  if (lines.length === 0) return [];
  const fedBy = new Map<Id, SupplyNode>();
  for (const n of c.tree.nodes)
    if (n.what === 'load' && n.sourceId !== undefined && used.has(n.sourceId)) {
      const ballast = recordOf(c.plan, 'ballast', n.recordId);
      fedBy.set(ballast ? ballast.fixtureId : n.recordId, n);
    }
  const out = new Map<string, EngineFinding>();
  for (const line of lines) {
    const fed = [line.from.recordId, ...line.stops].flatMap((id) => fedBy.get(id) ?? []);
    for (let i = 1; i < fed.length; i++) {
      const [a, b] = [fed[i - 1], fed[i]];
      if (!a?.sourceId || !b?.sourceId || !differ(a.sourceId, b.sourceId)) continue;
      const key = pairKey(a.sourceId, b.sourceId);
      if (out.has(key)) continue;
      out.set(
        key,
        always('power-shared-data', 'warn', key, [line.id, a.recordId, b.recordId], {
          label: line.label || recordLabel(c.plan, c.plan.records.get(line.from.recordId)),
          one: a.label,
          other: b.label,
          source: sourceLabel(c, a.sourceId),
          otherSource: sourceLabel(c, b.sourceId),
        }),
      );
    }
  }
  return [...out.values()];
};
