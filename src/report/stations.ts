import { always, type EngineFinding } from '../derive/findings.ts';
import { limitOf } from '../derive/limits.ts';
import { shootingDays } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import { rootKind, rootLabel, supplyRoots } from '../derive/supply-roots.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import { dayAtHand, rotationOf } from '../engines/battery/index.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import { chargesAfter } from './chargers.ts';
import { chargedFrom, dayPower } from './day-power.ts';
import { stationLoads } from './station-loads.ts';
import { stationNights } from './station-nights.ts';

/** Watts a load takes at the moment it is switched on, as a multiple of what it takes at full. */
const inrushW = (l: LoadSpec): number => l.wattsW * (l.inrushMultiple ?? 1);

const loadsOf = (plan: Plan, sourceId: string): readonly SupplyNode[] =>
  supplyTree(plan).nodes.filter((n) => n.sourceId === sourceId && n.what === 'load' && n.load !== undefined);

/** Power stations that run empty on a day, and those and inverters that switching on may trip. */
export const stationFindings = (plan: Plan): readonly EngineFinding[] => {
  const stations = supplyRoots(plan).filter((s) => rootKind(plan, s.id)?.what === 'power-station');
  if (stations.length === 0) return [];
  return [
    ...stations.flatMap((s) => [...surge(plan, s.id), ...chained(plan, s.id)]),
    ...emptied(plan),
    ...stationNights(plan),
  ];
};

/** A power station charged from a power station: that is not reckoned with. */
const chained = (plan: Plan, stationId: string): readonly EngineFinding[] => {
  const from = chargedFrom(plan, stationId);
  if (!from?.station) return [];
  return [
    always('station-chain', 'note', stationId, [stationId, from.sourceId], {
      label: recordOf(plan, 'source', stationId)?.label ?? '',
      from: from.sourceId === stationId ? 'itself' : from.label,
    }),
  ];
};

const emptied = (plan: Plan): readonly EngineFinding[] =>
  shootingDays(plan).flatMap((day) => {
    const r = rotationOf(plan, day);
    const sources = dayPower(plan, day, r, dayAtHand(r));
    const lanes = stationLoads(plan, day, sources);
    return sources.flatMap((s): EngineFinding[] => {
      if (s.station?.emptyMin === undefined) return [];
      const dark = lanes.filter((l) => l.sourceId === s.id && l.darkMin > 0);
      const late = chargesAfter(plan, day, s.id, s.station.emptyMin);
      const lost = s.station.spans
        .filter((x) => x.state === 'empty')
        .reduce((sum, x) => sum + x.endMin - x.startMin, 0);
      return [
        {
          ...always('station-empty', 'warn', `${day.day}/${s.id}`, [s.id, ...dark.map((l) => l.fixtureId)], {
            label: s.label,
            dark: dark.map((l) => l.label).join(', '),
            day: day.day,
            emptyMin: s.station.emptyMin,
            lostMin: lost,
            storedWh: s.station.storedWh,
            usableWh: s.station.usableWh,
            wantedWh: s.station.wantedWh,
            chargedWh: s.station.chargedWh,
            from: s.station.chargesFrom ?? '',
            charges: late.charges,
            chargers: late.chargers.join(', '),
            units: new Set(loadsOf(plan, s.id).map((n) => n.recordId)).size,
          }),
          figure: lost,
        },
      ];
    });
  });

/** All at full, and the load with the greatest inrush of its own switched on last. */
const surge = (plan: Plan, sourceId: string): readonly EngineFinding[] => {
  const kind = rootKind(plan, sourceId);
  const ratedW = (recordOf(plan, 'source', sourceId)?.ratedKw ?? kind?.ratedKw ?? Number.NaN) * 1000;
  const surgeW = kind?.surgeW ?? (ratedW * limitOf(plan, 'station-surge').value) / 100;
  const loads = loadsOf(plan, sourceId);
  if (!(surgeW > 0) || loads.length === 0) return [];
  const total = loads.reduce((sum, n) => sum + (n.load?.wattsW ?? 0), 0);
  const extra = (n: SupplyNode): number => (n.load ? inrushW(n.load) - n.load.wattsW : 0);
  const [worst] = [...loads].sort((a, b) => extra(b) - extra(a));
  if (!worst) return [];
  const watts = total + extra(worst);
  if (!(watts > surgeW * (1 + 1e-9)) || extra(worst) <= 0) return [];
  return [
    {
      ...always('station-surge', 'warn', sourceId, [sourceId, worst.recordId], {
        label: rootLabel(plan, sourceId),
        load: worst.label,
        watts,
        surgeW,
        restW: total - (worst.load?.wattsW ?? 0),
        inrushW: worst.load ? inrushW(worst.load) : 0,
        assumed: kind?.surgeW === undefined ? 1 : 0,
        limitRow: 'station-surge',
      }),
      figure: watts,
    },
  ];
};
