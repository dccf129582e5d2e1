import { always, type EngineFinding } from '../derive/findings.ts';
import { shootingDays } from '../derive/schedule.ts';
import { supplyTree } from '../derive/supply.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import { dayOf, rotationOf, supplyOf } from '../engines/battery/index.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { dayPower } from './day-power.ts';
import { stationOf } from './station-day.ts';

/** Watts a load takes at the moment it is switched on, as a multiple of what it takes at full. */
const inrushW = (l: LoadSpec): number => l.wattsW * (l.inrushMultiple ?? 1);

const loadsOf = (plan: Plan, sourceId: string): readonly SupplyNode[] =>
  supplyTree(plan).nodes.filter((n) => n.sourceId === sourceId && n.what === 'load' && n.load !== undefined);

/** Power stations that run empty on a day, and those that switching on may trip. */
export const stationFindings = (plan: Plan): readonly EngineFinding[] => {
  const stations = recordsOf(plan, 'source').filter((s) => stationOf(plan, s.id));
  if (stations.length === 0) return [];
  return [...stations.flatMap((s) => surge(plan, s.id)), ...emptied(plan)];
};

const emptied = (plan: Plan): readonly EngineFinding[] =>
  shootingDays(plan).flatMap((day) => {
    const r = rotationOf(plan, day);
    return dayPower(plan, day, r, dayOf(r, supplyOf(r))).flatMap((s): EngineFinding[] => {
      if (s.station?.emptyMin === undefined) return [];
      const lost = s.station.spans
        .filter((x) => x.state === 'empty')
        .reduce((sum, x) => sum + x.endMin - x.startMin, 0);
      return [
        {
          ...always('station-empty', 'warn', `${day.day}/${s.id}`, [s.id], {
            label: s.label,
            day: day.day,
            emptyMin: s.station.emptyMin,
            lostMin: lost,
            storedWh: s.station.storedWh,
            usableWh: s.station.usableWh,
            energyWh: s.energyWh,
            units: new Set(loadsOf(plan, s.id).map((n) => n.recordId)).size,
          }),
          figure: lost,
        },
      ];
    });
  });

/** All at full, and the load with the greatest inrush of its own switched on last. */
const surge = (plan: Plan, sourceId: string): readonly EngineFinding[] => {
  const surgeW = stationOf(plan, sourceId)?.surgeW;
  const loads = loadsOf(plan, sourceId);
  if (surgeW === undefined || loads.length === 0) return [];
  const total = loads.reduce((sum, n) => sum + (n.load?.wattsW ?? 0), 0);
  const extra = (n: SupplyNode): number => (n.load ? inrushW(n.load) - n.load.wattsW : 0);
  const [worst] = [...loads].sort((a, b) => extra(b) - extra(a));
  if (!worst) return [];
  const watts = total + extra(worst);
  if (!(watts > surgeW * (1 + 1e-9)) || extra(worst) <= 0) return [];
  const source = recordOf(plan, 'source', sourceId);
  return [
    {
      ...always('station-surge', 'warn', sourceId, [sourceId, worst.recordId], {
        label: source?.label ?? '',
        load: worst.label,
        watts,
        surgeW,
        restW: total - (worst.load?.wattsW ?? 0),
        inrushW: worst.load ? inrushW(worst.load) : 0,
        limitRow: 'station-surge',
      }),
      figure: watts,
    },
  ];
};
