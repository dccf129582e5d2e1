import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { blockFault, blocksOfDay, type Day, dayNumbers, shootingDays } from '../../../derive/schedule.ts';
import { recordName } from '../../../plan/names.ts';
import { type Plan, recordsOf } from '../../../plan/plan.ts';
import { dayAtHand, packsByRule } from '../least.ts';
import { batteryUnits, cellC } from '../model.ts';
import { overnight } from '../overnight.ts';
import { ownCellsDay } from '../own-cells.ts';
import { rotationOf, stockOf } from '../rotation.ts';

/** Blocks that take no part in the day, and why. */
export const blockFindings = (plan: Plan): readonly EngineFinding[] =>
  recordsOf(plan, 'block').flatMap((b) => {
    const fault = blockFault(plan, b);
    if (!fault) return [];
    const params = { label: recordName(plan, b), startMin: b.startMin, endMin: b.endMin };
    return [always(`day-block-${fault}`, 'warn', b.id, [b.id], params)];
  });

/** Blocks of one crew that run at the same time: a crew is in one place, so one of them is likely a slip. */
export const overlapFindings = (plan: Plan): readonly EngineFinding[] =>
  dayNumbers(plan).flatMap((day) => {
    const blocks = blocksOfDay(plan, day).filter((b) => blockFault(plan, b) === undefined);
    return blocks.flatMap((b, i): EngineFinding[] => {
      const before = blocks.slice(0, i).filter((x) => x.crew === b.crew && x.endMin > b.startMin);
      const [longest] = [...before].sort((x, y) => y.endMin - x.endMin);
      if (!longest) return [];
      const untilMin = Math.min(b.endMin, longest.endMin);
      return [
        {
          ...always('day-block-overlap', 'note', b.id, [b.id, longest.id], {
            label: recordName(plan, b),
            other: recordName(plan, longest),
            crew: b.crew,
            startMin: b.startMin,
            untilMin,
          }),
          figure: untilMin - b.startMin,
        },
      ];
    });
  });

/** Packs that the next day counts on and that are not full by then. */
export const overnightFindings = (plan: Plan): readonly EngineFinding[] =>
  overnight(plan).map((o): EngineFinding => {
    const stock = recordsOf(plan, 'stock').filter((s) => s.kindId === o.pool);
    const units = batteryUnits(plan).filter((u) => (o.exchange ? u.fixture.kindId : u.pack?.id) === o.pool);
    return {
      // Where the plan has no bay for them they charge elsewhere: then it only says how many, and by when.
      ...always(
        'battery-overnight',
        o.bays === 0 && !o.exchange ? 'note' : 'warn',
        `${o.day}/${o.pool}`,
        stock.length > 0 ? stock.map((s) => s.id) : units.map((u) => u.fixture.id),
        {
          pack: o.name,
          exchange: o.exchange ? 1 : 0,
          day: o.day,
          nextDay: o.nextDay,
          bays: o.bays,
          wantedMin: o.wantedMin,
          wants: o.wants,
          full: o.full,
          readyMin: o.readyMin ?? -1,
        },
      ),
      figure: o.wants - o.full,
    };
  });

/** Units that go dark on a day, with the packs there are, or on their own cells. */
export const dayFindings = (plan: Plan): readonly EngineFinding[] =>
  shootingDays(plan).flatMap((day) => [...shortPools(plan, day), ...ownCells(plan, day), ...cold(plan, day)]);

const shortPools = (plan: Plan, day: Day): EngineFinding[] => {
  const r = rotationOf(plan, day);
  const result = dayAtHand(r);
  const need = packsByRule(r);
  return [...result.shortPools].map(([id, { short, dark }]): EngineFinding => {
    const pool = r.pools.find((p) => p.id === id);
    const first = dark ?? short;
    const unit = r.units[first.unit];
    const stock = stockOf(plan, id);
    const missing = (need.get(id) ?? 0) - (pool?.packs ?? 0);
    return {
      ...always(
        dark ? 'battery-dark' : 'battery-late',
        dark ? 'warn' : 'note',
        `${day.day}/${id}`,
        [
          unit?.id ?? id,
          ...recordsOf(plan, 'stock')
            .filter((s) => s.kindId === id)
            .map((s) => s.id),
        ],
        {
          label: unit?.label ?? '',
          day: day.day,
          dueMin: first.dueMin,
          ...(dark ? { darkMin: dark.darkMin } : {}),
          pack: pool?.name ?? '',
          exchange: pool?.exchange ? 1 : 0,
          packs: pool?.packs ?? 0,
          count: stock?.count ?? 0,
          reserve: stock?.reserve ?? 0,
          need: need.get(id) ?? 0,
          missing,
          bays: r.bays.filter((b) => b.pools.has(id)).length,
        },
      ),
      figure: missing,
    };
  });
};

const ownCells = (plan: Plan, day: Day): EngineFinding[] =>
  batteryUnits(plan).flatMap((u) => {
    if (u.problem !== undefined || u.mode !== 'own-cells' || u.fixture.ownCells?.when === 'exchange')
      return [];
    const own = ownCellsDay(plan, day, u);
    if (own.darkMin === undefined) return [];
    const lost = own.spans
      .filter((s) => s.state === 'dark')
      .reduce((sum, s) => sum + s.endMin - s.startMin, 0);
    return [
      {
        ...always('battery-own-dark', 'warn', `${day.day}/${u.fixture.id}`, [u.fixture.id], {
          label: u.label,
          kind: u.kindName,
          day: day.day,
          darkMin: own.darkMin,
          lostMin: lost,
          wh: u.ratedWh,
          recharge: u.fixture.ownCells?.when === 'recharge' ? 1 : 0,
        }),
        figure: lost,
      },
    ];
  });

/** Charging in the cold. */
const cold = (plan: Plan, day: Day): EngineFinding[] => {
  const r = rotationOf(plan, day);
  const least = limitOf(plan, 'battery-charge-cold').value;
  if (cellC(plan) >= least || r.bays.length === 0 || !r.units.some((u) => u.stretches.length > 0)) return [];
  return [
    always('battery-charge-cold', 'warn', String(day.day), [...new Set(r.bays.map((b) => b.chargerId))], {
      day: day.day,
      cellC: cellC(plan),
      limitRow: 'battery-charge-cold',
    }),
  ];
};
