import { fuelLitresPerH } from '../derive/fuel.ts';
import { limitOf } from '../derive/limits.ts';
import { levelFixtureId, powerAtLevel } from '../derive/loads.ts';
import type { Day } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import type { Rotation, RotationResult } from '../engines/battery/index.ts';
import { sourceRating } from '../engines/power/index.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import type { PowerStep, SourceDay } from './day-types.ts';
import { refuelTimes } from './refuel.ts';
import { stationDay } from './station-day.ts';

/** Watts a unit, a ballast or another's load draws in a stretch. A unit that is off draws its standby watts. */
const drawnW = (plan: Plan, n: SupplyNode, burning: (fixtureId: string) => number): number => {
  if (!n.load || n.branches.length === 0) return 0;
  const r = plan.records.get(n.recordId);
  if (r?.type === 'charger') return 0;
  if (n.steady || (r?.type !== 'fixture' && r?.type !== 'ballast')) return powerAtLevel(n.load, 100).wattsW;
  return powerAtLevel(n.load, burning(levelFixtureId(r))).wattsW;
};

/** Watts at the inlets of the chargers under one source at a moment: packs in bays over the charger's efficiency, and its standby. */
const chargingW = (
  plan: Plan,
  chargers: readonly SupplyNode[],
  r: Rotation,
  result: RotationResult,
  at: number,
): number => {
  const efficiency = Math.max(0.1, limitOf(plan, 'battery-charger-efficiency').value / 100);
  return chargers.reduce((sum, n) => {
    const busy = result.bays.filter(
      (b) => r.bays[b.bay]?.chargerId === n.recordId && b.startMin <= at && b.endMin > at,
    );
    const into = busy.reduce((w, b) => {
      const pool = r.pools.find((p) => p.id === b.pool);
      return w + (pool?.chargeW ?? 0) / (r.bays[b.bay]?.slower.get(b.pool) ?? 1);
    }, 0);
    const most = n.load?.wattsW ?? Number.POSITIVE_INFINITY;
    return sum + Math.min(most, into / efficiency + (n.load?.standbyW ?? 0));
  }, 0);
};

/** What each source gives over a day: watts in steps, peak, mean, energy and, for a set, fuel. Cable loss is left out. */
export const dayPower = (plan: Plan, day: Day, r: Rotation, result: RotationResult): readonly SourceDay[] => {
  const tree = supplyTree(plan);
  return tree.nodes
    .filter((n) => n.what === 'source' && n.notComputed === undefined)
    .map((source) => {
      const loads = tree.nodes.filter((n) => n.sourceId === source.recordId && n.what === 'load');
      const chargers = loads.filter((n) => plan.records.get(n.recordId)?.type === 'charger');
      const charges = result.bays.filter((b) =>
        chargers.some((c) => c.recordId === r.bays[b.bay]?.chargerId),
      );
      const edges = [
        ...new Set([
          ...day.segments.flatMap((s) => [s.startMin, s.endMin]),
          ...charges.flatMap((b) => [b.startMin, b.endMin]).filter((m) => m > day.startMin && m < day.endMin),
        ]),
      ].sort((a, b) => a - b);
      const steps = edges.slice(1).map((endMin, i): PowerStep => {
        const startMin = edges[i] ?? endMin;
        const segment = day.segments.find((s) => s.startMin <= startMin && s.endMin >= endMin);
        const level = (id: string): number => segment?.burning.get(id)?.levelPct ?? 0;
        return {
          startMin,
          endMin,
          // Between blocks nothing is taken to be drawn: the plan does not say what stays plugged.
          lightW:
            segment && segment.blocks.length > 0
              ? loads.reduce((sum, n) => sum + drawnW(plan, n, level), 0)
              : 0,
          chargerW: chargingW(plan, chargers, r, result, startMin),
        };
      });
      return { id: source.recordId, label: source.label, ...totals(plan, source.recordId, steps) };
    });
};

const totals = (
  plan: Plan,
  sourceId: string,
  steps: readonly PowerStep[],
): Omit<SourceDay, 'id' | 'label'> => {
  const rating = sourceRating(plan, sourceId);
  const record = recordOf(plan, 'source', sourceId);
  const set = record !== undefined && kindOf(plan, record.kindId, 'source')?.what === 'generator';
  let energyWh = 0;
  let hours = 0;
  let peakW = 0;
  let fuelL: number | undefined = set && rating.kw !== undefined ? 0 : undefined;
  for (const s of steps) {
    const h = (s.endMin - s.startMin) / 60;
    const w = s.lightW + s.chargerW;
    peakW = Math.max(peakW, w);
    energyWh += w * h;
    if (w > 0) hours += h;
    const litres = rating.kw === undefined ? undefined : fuelLitresPerH(rating.kw, w / 1000);
    if (fuelL !== undefined) fuelL = litres === undefined ? undefined : fuelL + litres * h;
  }
  return {
    steps,
    peakW,
    averageW: hours > 0 ? energyWh / hours : 0,
    energyWh,
    ratedW: rating.kw === undefined ? undefined : rating.kw * 1000,
    fuelL,
    refuelMin: set ? refuelTimes(plan, sourceId, rating.kw, steps) : undefined,
    station: stationDay(plan, sourceId, steps),
  };
};
