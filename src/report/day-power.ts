import { fuelLitresPerH } from '../derive/fuel.ts';
import { limitOf } from '../derive/limits.ts';
import { levelFixtureId, powerAtLevel } from '../derive/loads.ts';
import type { Day } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import { chargeKey } from '../derive/supply-node.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import type { Rotation, RotationResult } from '../engines/battery/index.ts';
import { sourceRating } from '../engines/power/index.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import type { PowerStep, SourceDay, StationDay } from './day-types.ts';
import { refuelTimes } from './refuel.ts';
import { type StationStep, stationDay, stationOf } from './station-day.ts';

/** Watts a unit, a ballast or another's load draws in a stretch. A unit that is off draws its standby watts. */
export const drawnW = (plan: Plan, n: SupplyNode, burning: (fixtureId: string) => number): number => {
  if (!n.load || n.branches.length === 0) return 0;
  const r = plan.records.get(n.recordId);
  if (r?.type === 'charger' || r?.type === 'source') return 0;
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

/** A source with the loads behind it and what is drawn from it in steps, its stations' charging left out. */
interface Drawn {
  readonly id: string;
  readonly label: string;
  readonly steps: readonly StationStep[];
}

const drawnFrom = (plan: Plan, day: Day, r: Rotation, result: RotationResult, source: SupplyNode): Drawn => {
  const loads = supplyTree(plan).nodes.filter((n) => n.sourceId === source.recordId && n.what === 'load');
  const chargers = loads.filter((n) => plan.records.get(n.recordId)?.type === 'charger');
  const charges = result.bays.filter((b) => chargers.some((c) => c.recordId === r.bays[b.bay]?.chargerId));
  const edges = [
    ...new Set([
      ...day.segments.flatMap((s) => [s.startMin, s.endMin]),
      ...charges.flatMap((b) => [b.startMin, b.endMin]).filter((m) => m > day.startMin && m < day.endMin),
    ]),
  ].sort((a, b) => a - b);
  const steps = edges.slice(1).map((endMin, i): StationStep => {
    const startMin = edges[i] ?? endMin;
    const segment = day.segments.find((s) => s.startMin <= startMin && s.endMin >= endMin);
    const level = (id: string): number => segment?.burning.get(id)?.levelPct ?? 0;
    const chargerW = chargingW(plan, chargers, r, result, startMin);
    return {
      startMin,
      endMin,
      // Between blocks nothing is taken to be drawn: the plan does not say what stays plugged.
      lightW:
        segment && segment.blocks.length > 0 ? loads.reduce((sum, n) => sum + drawnW(plan, n, level), 0) : 0,
      chargerW,
      lit:
        chargers.some((c) =>
          charges.some(
            (b) => r.bays[b.bay]?.chargerId === c.recordId && b.startMin <= startMin && b.endMin > startMin,
          ),
        ) || loads.some((n) => isLit(plan, n, level)),
    };
  });
  return { id: source.recordId, label: source.label, steps };
};

const isLit = (plan: Plan, n: SupplyNode, level: (fixtureId: string) => number): boolean => {
  const r = plan.records.get(n.recordId);
  return !n.steady && (r?.type === 'fixture' || r?.type === 'ballast') && level(levelFixtureId(r)) > 0;
};

/** The source a power station is charged from: its inlet is plugged into a circuit that no power station feeds. */
export const chargedFrom = (
  plan: Plan,
  stationId: string,
): { readonly sourceId: string; readonly label: string; readonly station: boolean } | undefined => {
  const n = supplyTree(plan).byKey.get(chargeKey(stationId));
  const source = n?.sourceId === undefined ? undefined : supplyTree(plan).byKey.get(n.sourceId);
  if (!n || !source || n.notComputed !== undefined || n.branches.length === 0) return undefined;
  return {
    sourceId: source.recordId,
    label: source.label,
    station: stationOf(plan, source.recordId) !== undefined,
  };
};

/** A source's steps with what power stations on it draw while they are charged. */
const withStations = (steps: readonly PowerStep[], stations: readonly StationDay[]): readonly PowerStep[] => {
  const spans = stations.flatMap((s) => s.spans.filter((x) => x.chargeW + x.throughW > 0));
  const cut = splitSteps(
    steps,
    spans.flatMap((x) => [x.startMin, x.endMin]),
  );
  return cut.map((s) => {
    const mid = (s.startMin + s.endMin) / 2;
    const into = spans.reduce(
      (sum, x) => sum + (x.startMin <= mid && x.endMin > mid ? x.chargeW + x.throughW : 0),
      0,
    );
    return into > 0 ? { ...s, chargerW: s.chargerW + into } : s;
  });
};

/** A station's steps: nothing comes from it while it is empty or is itself charged. */
const asGiven = (steps: readonly PowerStep[], station: StationDay): readonly PowerStep[] => {
  const cut = splitSteps(
    steps,
    station.spans.flatMap((x) => [x.startMin, x.endMin]),
  );
  return cut.map((s) => {
    const mid = (s.startMin + s.endMin) / 2;
    const span = station.spans.find((x) => x.startMin <= mid && x.endMin > mid);
    return span?.state === 'gives' ? s : { ...s, lightW: 0, chargerW: 0 };
  });
};

const splitSteps = (steps: readonly PowerStep[], at: readonly number[]): readonly PowerStep[] =>
  steps.flatMap((s) => {
    const inside = [...new Set(at.filter((m) => m > s.startMin + 1e-9 && m < s.endMin - 1e-9))].sort(
      (a, b) => a - b,
    );
    const edges = [s.startMin, ...inside, s.endMin];
    return edges.slice(1).map((endMin, i) => ({
      startMin: edges[i] ?? endMin,
      endMin,
      lightW: s.lightW,
      chargerW: s.chargerW,
    }));
  });

/**
 * What each source gives over a day: watts in steps, peak, mean, energy and, for a set, fuel. Cable loss is left out.
 * Power stations are played through first: what they draw to be charged is a load of the source they are plugged into.
 */
export const dayPower = (plan: Plan, day: Day, r: Rotation, result: RotationResult): readonly SourceDay[] => {
  const drawn = supplyTree(plan)
    .nodes.filter((n) => n.what === 'source' && n.notComputed === undefined)
    .map((n) => drawnFrom(plan, day, r, result, n));
  const stations = new Map<string, { readonly day: StationDay; readonly from: string | undefined }>();
  for (const d of drawn) {
    const from = stationOf(plan, d.id) && chargedFrom(plan, d.id);
    const made = stationDay(plan, d.id, d.steps, from && !from.station ? from.label : undefined);
    if (made) stations.set(d.id, { day: made, from: from && !from.station ? from.sourceId : undefined });
  }
  return drawn.map((d) => {
    const own = stations.get(d.id)?.day;
    const fed = [...stations.values()].filter((s) => s.from === d.id).map((s) => s.day);
    const bare = d.steps.map(({ lit: _, ...s }) => s);
    const steps = own ? asGiven(bare, own) : withStations(bare, fed);
    return { id: d.id, label: d.label, ...totals(plan, d.id, steps), station: own };
  });
};

const totals = (
  plan: Plan,
  sourceId: string,
  steps: readonly PowerStep[],
): Omit<SourceDay, 'id' | 'label' | 'station'> => {
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
  };
};
