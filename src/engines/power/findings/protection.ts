import { ambientMaxC, conductor } from '../../../derive/conductors.ts';
import { always, type EngineFinding } from '../../../derive/findings.ts';
import { cableLength } from '../../../derive/lengths.ts';
import { limitsOf } from '../../../derive/limits.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { connector } from '../../../plan/connectors.ts';
import type { AdapterKind } from '../../../plan/kinds/adapter.ts';
import { kindOf, planRecord, recordOf, recordsOf } from '../../../plan/plan.ts';
import { cableAmpacity } from '../ampacity.ts';
import type { Computed, Judged } from '../types.ts';
import { ROUNDING } from './context.ts';

/** Cables and outlets that are weaker than every breaker ahead of them, and runs with no breaker ahead at all. */
export const weakerThanBreaker = (c: Judged): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  const strongEnough = quickCheck(c);
  for (const n of c.part) {
    if (n.what !== 'cable' && n.what !== 'outlet' && n.what !== 'box') continue;
    const adapter = adapterOf(c, n);
    if ((n.what !== 'cable' && n.what !== 'outlet' && !adapter) || n.notComputed !== undefined) continue;
    const limits = c.limits[n.index];
    if (!limits) continue;
    if (limits.aheadA === undefined) {
      const up = c.tree.nodes[n.parent];
      if (up?.what === 'source' || up?.transformer)
        out.push(always('power-unguarded', 'warn', n.key, [n.recordId, up.recordId], { label: n.label }));
      continue;
    }
    if (!adapter && strongEnough(n, limits.aheadA)) continue;
    const weak = weakest(c, n, limits.aheadA);
    if (!weak) continue;
    const ahead = c.tree.byKey.get(limits.aheadKey ?? '');
    out.push(
      always('power-weaker', 'warn', n.key, [n.recordId, ...(ahead ? [ahead.recordId] : [])], {
        label: n.label,
        what: weak.what,
        ratingA: weak.ratingA,
        breakerA: limits.aheadA,
        ahead: ahead?.label ?? '',
        figure: limits.aheadA / weak.ratingA,
      }),
    );
  }
  return out;
};

/** Tells of most cables at once that they are as strong as the breaker ahead: connectors and ampacity of a kind that lies alone. */
const quickCheck = (c: Judged): ((n: SupplyNode, breakerA: number) => boolean) => {
  const kinds = new Map<string, number>();
  return (n, breakerA) => {
    for (const id of n.connectors) {
      const ratingA = connector(id)?.ratingA ?? 0;
      if (ratingA > 0 && ratingA < breakerA) return false;
    }
    if (n.what !== 'cable') return true;
    const cable = recordOf(c.plan, 'cable', n.recordId);
    if (!cable || cable.bundled !== undefined || cable.onDrum !== undefined) return false;
    let legA = kinds.get(cable.kindId);
    if (legA === undefined) {
      const kind = kindOf(c.plan, cable.kindId, 'cable');
      legA = kind ? cableAmpacity(c.plan, kind).legA : 0;
      kinds.set(cable.kindId, legA);
    }
    return legA >= breakerA;
  };
};

/** The kind of an adapter, tee or fan that stands in the supply. */
const adapterOf = (c: Judged, n: SupplyNode): AdapterKind | undefined => {
  const box = n.what === 'box' ? recordOf(c.plan, 'box', n.recordId) : undefined;
  return box && kindOf(c.plan, box.kindId, 'adapter');
};

/** The part of a cable, outlet or adapter that is weakest against the breaker ahead, exceptions of the practice left out. */
const weakest = (
  c: Judged,
  n: SupplyNode,
  breakerA: number,
): { readonly what: string; readonly ratingA: number } | undefined => {
  const parts: { what: string; ratingA: number }[] = [];
  const value = (id: string): number => limitsOf(c.plan).get(id)?.value ?? Number.NaN;
  for (const id of new Set(n.connectors)) {
    const ratingA = connector(id)?.ratingA ?? 0;
    const allowed =
      ratingA >= value('outlet-under-breaker-rating') && breakerA <= value('outlet-under-breaker-max');
    if (ratingA > 0 && !allowed) parts.push({ what: n.what === 'outlet' ? 'outlet' : 'connector', ratingA });
  }
  const adapter = adapterOf(c, n);
  if (adapter?.upstreamA !== undefined) parts.push({ what: 'adapter', ratingA: adapter.upstreamA });
  if (adapter?.ampacityA !== undefined && adapter.upstreamA === undefined)
    parts.push({ what: 'adapter', ratingA: adapter.ampacityA });
  const cable = n.what === 'cable' ? recordOf(c.plan, 'cable', n.recordId) : undefined;
  const kind = cable && kindOf(c.plan, cable.kindId, 'cable');
  if (kind) {
    const area = conductor(kind.conductor)?.areaMm2 ?? 0;
    const allowed = area >= value('cord-under-breaker-area') && breakerA <= value('cord-under-breaker-max');
    if (!allowed) parts.push({ what: 'cable', ratingA: cableAmpacity(c.plan, kind, cable).legA });
  }
  const weak = parts.reduce<(typeof parts)[number] | undefined>(
    (a, b) => (!a || b.ratingA < a.ratingA ? b : a),
    undefined,
  );
  return weak && weak.ratingA < breakerA * (1 - ROUNDING) ? weak : undefined;
};

/** Runs whose pieces were chosen by hand and are too short; and air warmer than the table goes. */
export const cableChoices = (c: Computed): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  for (const cable of recordsOf(c.plan, 'cable')) {
    if (!cable.piecesMm) continue;
    const l = cableLength(c.plan, cable);
    // Half a millimetre is rounding of the drawing.
    if (!l || l.totalMm + 0.5 >= l.neededMm) continue;
    out.push(
      always('power-cable-short', 'warn', cable.id, [cable.id], {
        label: c.tree.byKey.get(cable.id)?.label ?? 'cable',
        totalMm: l.totalMm,
        neededMm: l.neededMm,
        figure: l.neededMm - l.totalMm,
      }),
    );
  }
  const { ambientC } = planRecord(c.plan);
  if (ambientC > ambientMaxC && recordsOf(c.plan, 'cable').length > 0)
    out.push(always('power-ambient', 'warn', 'plan', ['plan'], { ambientC, maxC: ambientMaxC }));
  return out;
};
