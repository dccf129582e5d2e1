import { always, type EngineFinding } from '../../../derive/findings.ts';
import { compareNatural, type Id } from '../../../kernel/ids.ts';
import { kindOf, type Plan, planRecord, recordsOf } from '../../../plan/plan.ts';
import { airClass } from '../calc.ts';
import { OWN_CELLS } from '../model.ts';
import { type Chemistry, travel } from '../tables.ts';

/** Things with lithium cells of one kind that the plan takes along. */
interface Carried {
  readonly kindId: Id;
  readonly name: string;
  readonly wh: number;
  readonly count: number;
  readonly recordIds: readonly Id[];
  /** Cells are built into equipment, and so are no spares. */
  readonly builtIn: boolean;
}

const lithium = (c: Chemistry): boolean => c === 'li-ion' || c === 'lifepo4';

/** Packs in stock, units with cells of their own, power stations: all with lithium cells that would have to fly. */
export const carriedCells = (plan: Plan): readonly Carried[] => {
  const found = new Map<Id, Carried>();
  const add = (kindId: Id, name: string, wh: number, count: number, recordId: Id, builtIn: boolean): void => {
    if (count <= 0 || !(wh > 0)) return;
    const old = found.get(kindId);
    found.set(kindId, {
      kindId,
      name,
      wh,
      builtIn,
      count: (old?.count ?? 0) + count,
      recordIds: [...(old?.recordIds ?? []), recordId],
    });
  };
  for (const s of recordsOf(plan, 'stock')) {
    const pack = kindOf(plan, s.kindId, 'pack');
    if (pack && lithium(pack.chemistry)) add(pack.id, pack.name, pack.energyWh, s.count, s.id, false);
    const unit = kindOf(plan, s.kindId, 'fixture');
    if (unit?.ownCellsWh && lithium(OWN_CELLS)) add(unit.id, unit.name, unit.ownCellsWh, s.count, s.id, true);
  }
  for (const f of recordsOf(plan, 'fixture')) {
    const kind = kindOf(plan, f.kindId, 'fixture');
    if (kind?.ownCellsWh && lithium(OWN_CELLS)) add(kind.id, kind.name, kind.ownCellsWh, 1, f.id, true);
  }
  for (const s of recordsOf(plan, 'source')) {
    const kind = kindOf(plan, s.kindId, 'source');
    if (kind?.what === 'power-station' && kind.storedWh)
      add(kind.id, kind.name, kind.storedWh, 1, s.id, true);
  }
  return [...found.values()].sort((a, b) => b.wh - a.wh || compareNatural(a.name, b.name));
};

/** Where the plan says that packs travel by air: what a passenger may not take, must ask for, or may take so many of. */
export const travelFindings = (plan: Plan): readonly EngineFinding[] => {
  const settings = planRecord(plan).batteries;
  if (settings?.byAir !== true) return [];
  const people = settings.travellers === undefined ? undefined : Math.max(0, Math.floor(settings.travellers));
  const all = carriedCells(plan);
  const common = (c: Carried) => ({ name: c.name, wh: c.wh, count: c.count, builtIn: c.builtIn ? 1 : 0 });
  // The limit is a person's, whatever the kinds.
  const large = all
    .filter((c) => !c.builtIn && airClass(c.wh) === 'ask-operator')
    .reduce((sum, c) => sum + c.count, 0);
  const each = all.flatMap((c): EngineFinding[] => {
    const air = airClass(c.wh);
    if (air === 'cabin') return [];
    if (air === 'cargo')
      return [{ ...always('battery-air-cargo', 'warn', c.kindId, c.recordIds, common(c)), figure: c.count }];
    const needs = c.builtIn ? 0 : Math.ceil(large / travel.largeSpares);
    return [
      {
        ...always('battery-air-ask', 'warn', c.kindId, c.recordIds, {
          ...common(c),
          needs,
          all: large,
          people: people ?? -1,
          most: travel.largeSpares,
        }),
        figure: c.count,
      },
    ];
  });
  const small = all.filter((c) => !c.builtIn && airClass(c.wh) === 'cabin');
  const count = small.reduce((sum, c) => sum + c.count, 0);
  if (count === 0) return each;
  const needs = Math.ceil(count / travel.smallSpares);
  return [
    ...each,
    {
      ...always(
        'battery-air-spares',
        needs > (people ?? 1) ? 'warn' : 'note',
        'small',
        small.flatMap((c) => c.recordIds),
        { count, needs, people: people ?? -1, most: travel.smallSpares },
      ),
      figure: count,
    },
  ];
};
