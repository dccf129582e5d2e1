import { cutsPhase, isResistive } from '../../../derive/dimmers.ts';
import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { isWetSpot } from '../../../derive/outdoors.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { type Plan, planRecord, recordOf } from '../../../plan/plan.ts';
import type { Box, Outlet } from '../../../plan/records/index.ts';
import type { Judged } from '../types.ts';
import { ROUNDING } from './context.ts';

/** Sums of something over each node of a part and all that hangs on it, by place in the part. */
export const sumsBelow = (c: Judged, own: (n: SupplyNode) => number): Float64Array => {
  const { part, from } = c;
  const sums = Float64Array.from(part, own);
  for (let i = sums.length - 1; i >= 0; i--) {
    const up = (part[i]?.parent ?? -1) - from;
    if (up >= 0) sums[up] = (sums[up] ?? 0) + (sums[i] ?? 0);
  }
  return sums;
};

/** Standing leakage of what is plugged in behind a residual-current device, against its trip class. */
export const leakage = (c: Judged): readonly EngineFinding[] => {
  const adviceRow = limitOf(c.plan, 'rcd-leakage-advice');
  const warnRow = limitOf(c.plan, 'rcd-leakage-warn');
  const guarded = c.part.filter((n) => n.way?.rcdMa !== undefined);
  if (guarded.length === 0) return [];
  const sums = sumsBelow(c, (n) => (n.branches.length > 0 ? (n.load?.leakageMa ?? 0) : 0));
  return guarded.flatMap((n) => {
    const tripMa = n.way?.rcdMa;
    if (tripMa === undefined || !(tripMa > 0) || n.notComputed !== undefined) return [];
    const leakageMa = sums[n.index - c.from] ?? 0;
    const pct = (100 * leakageMa) / tripMa;
    const row = [warnRow, adviceRow].find((r) => pct > r.value * (1 + ROUNDING));
    if (!row) return [];
    return [
      {
        ...always('power-leakage', row === warnRow ? 'warn' : 'note', n.key, [n.recordId], {
          label: n.label,
          leakageMa,
          tripMa,
          pct,
          limitPct: row.value,
          limitRow: row.id,
        }),
        figure: pct,
      } satisfies EngineFinding,
    ];
  });
};

/** The residual-current device with the lowest trip class ahead of a node, its own way included; undefined without one. */
const deviceAhead = (c: Judged, n: SupplyNode): number | undefined => {
  let least: number | undefined;
  for (let at: SupplyNode | undefined = n; at; at = c.tree.nodes[at.parent]) {
    const ma = at.way?.rcdMa;
    if (ma !== undefined && ma > 0 && (least === undefined || ma < least)) least = ma;
  }
  return least;
};

/** Marked as wet, or drawn in a wet area or in water. */
const isWet = (plan: Plan, r: Outlet | Box | undefined): boolean =>
  r !== undefined && (r.wet ?? isWetSpot(plan, r.floorId, r.at));

/** Wall outlets and boxes in wet places with no residual-current device that guards people ahead of what is plugged in. */
export const wetPlaces = (c: Judged): readonly EngineFinding[] => {
  const mostMa = limitOf(c.plan, 'rcd-people-max').value;
  const guarded = (n: SupplyNode): boolean => (deviceAhead(c, n) ?? Infinity) <= mostMa * (1 + ROUNDING);
  return c.part.flatMap((n) => {
    if (n.notComputed !== undefined || n.sourceId === undefined) return [];
    const wet =
      (n.what === 'outlet' && isWet(c.plan, recordOf(c.plan, 'outlet', n.recordId))) ||
      (n.what === 'box' && isWet(c.plan, recordOf(c.plan, 'box', n.recordId)));
    if (!wet) return [];
    const places =
      n.what === 'outlet'
        ? [n]
        : (c.tree.children[n.index] ?? [])
            .flatMap((i) => c.tree.nodes[i] ?? [])
            .filter((x) => (c.tree.children[x.index] ?? []).length > 0);
    const open = places.filter((x) => !guarded(x));
    if (open.length === 0) return [];
    const devices = open.map((x) => deviceAhead(c, x) ?? 0);
    return [
      always('power-wet', 'warn', n.key, [n.recordId], {
        label: n.label,
        places: open.map((x) => x.label).join(', '),
        tripMa: Math.max(...devices),
        mostMa,
        figure: open.length,
      }),
    ];
  });
};

/**
 * Residual-current devices of a type that may not open for what hangs on them: type AC ahead of electronic loads or phase-cut
 * dimmers, type AC, A or F ahead of electronic loads over three legs, whose fault may leak smooth direct current. Where the plan
 * does not say the type, a European device is taken as type A (assumed), which is a note; of a North American one nothing is told.
 */
export const deviceTypes = (c: Judged): readonly EngineFinding[] => {
  const usual = planRecord(c.plan).practice === 'europe' ? ('A' as const) : undefined;
  const guarded = c.part.filter((n) => n.way?.rcdMa !== undefined && (n.way.rcdType ?? usual) !== undefined);
  if (guarded.length === 0) return [];
  const electronic = (n: SupplyNode): boolean =>
    n.branches.length > 0 && n.load !== undefined && !n.transformer && !isResistive(n.load);
  const cut = (n: SupplyNode): boolean => n.dimmer !== undefined && cutsPhase(n.dimmer.how);
  const pulsating = sumsBelow(c, (n) => (electronic(n) || cut(n) ? 1 : 0));
  const smooth = sumsBelow(c, (n) => (electronic(n) && n.branches.length > 2 ? 1 : 0));
  return guarded.flatMap((n) => {
    const type = n.way?.rcdType ?? usual;
    const assumed = n.way?.rcdType === undefined;
    if (n.notComputed !== undefined || type === undefined || type === 'B') return [];
    const threeLeg = smooth[n.index - c.from] ?? 0;
    const count = threeLeg > 0 ? threeLeg : type === 'AC' ? (pulsating[n.index - c.from] ?? 0) : 0;
    if (count === 0) return [];
    return [
      {
        ...always('power-device-type', assumed ? 'note' : 'warn', n.key, [n.recordId], {
          label: n.label,
          type,
          assumed: assumed ? 1 : 0,
          wants: threeLeg > 0 ? 'B' : 'A',
          count,
        }),
        figure: count,
      } satisfies EngineFinding,
    ];
  });
};
