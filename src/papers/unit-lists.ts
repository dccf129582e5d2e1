import { cellsWord } from '../derive/labels.ts';
import { drawContext, pluggedAt } from '../drawing/context.ts';
import { compareNatural } from '../kernel/ids.ts';
import { planInSetup } from '../plan/moves.ts';
import { fixturePlace, kindOf, levelOf, recordOf, recordsOf, setupsOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { DEPARTMENTS, gearLines } from '../report/gear-lines.ts';
import { riggingRows } from '../report/rigging-rows.ts';
import { datumOf } from './datum.ts';
import type { ListTable } from './lists.ts';
import { rounded } from './power-lists.ts';
import type { SetInfo } from './sheet-info.ts';

const SUPPORT = { stand: 'stand', floor: 'on the floor', rigged: 'rigged', held: 'held' } as const;

const sorted = (info: SetInfo): readonly Fixture[] =>
  [...recordsOf(info.plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));

/** Every unit with power, address and place in the shown setup; lengths in metres from the datum of its floor. */
export const unitTable = (info: SetInfo): ListTable => {
  const plan = planInSetup(info.plan, info.setupId);
  return {
    name: 'units',
    head: [
      ...['unit', 'kind', 'use', 'gel', 'channel', 'power', 'universe', 'address', 'mode', 'support'],
      ...['height m', 'right m', 'up m', 'level %', 'floor'],
    ],
    rows: sorted(info).map((f) => {
      const ctx = drawContext(plan, { floorId: f.floorId, setupId: info.setupId, nominalScale: 50 });
      const kind = kindOf(plan, f.kindId, 'fixture');
      const { at, heightMm } = fixturePlace(plan, f);
      const datum = datumOf(plan, f.floorId);
      const universe = f.patch && recordOf(plan, 'universe', f.patch.universeId);
      const level = info.setupId === undefined ? undefined : levelOf(plan, info.setupId, f.id);
      return [
        f.unit,
        kind?.name ?? '',
        f.use,
        f.gel,
        f.channel,
        cellsWord(ctx.plan, f) ?? pluggedAt(ctx, f.id) ?? '',
        universe?.number ?? Number.NaN,
        f.patch && universe ? f.patch.address : Number.NaN,
        f.patch ? (kind?.modes.find((m) => m.id === f.patch?.modeId)?.name ?? '') : '',
        SUPPORT[f.support.on],
        rounded(heightMm / 1000, 3),
        rounded((at.xMm - datum.xMm) / 1000, 3),
        rounded((datum.yMm - at.yMm) / 1000, 3),
        level && !level.assumed ? level.levelPct : Number.NaN,
        recordOf(plan, 'floor', f.floorId)?.name ?? '',
      ];
    }),
  };
};

/** Level of every unit in every setup; empty where the plan gives none and full is assumed. */
export const levelTable = (info: SetInfo): ListTable => {
  const setups = setupsOf(info.plan);
  return {
    name: 'setups',
    head: ['unit', 'kind', 'use', ...setups.map((s) => [s.scene, s.name].filter(Boolean).join(' '))],
    rows: sorted(info).map((f) => [
      f.unit,
      kindOf(info.plan, f.kindId)?.name ?? '',
      f.use,
      ...setups.map((s) => {
        const l = levelOf(info.plan, s.id, f.id);
        return l.assumed ? Number.NaN : l.levelPct;
      }),
    ]),
  };
};

/** What is loaded, with spares and masses, by department. */
export const truckTable = (info: SetInfo): ListTable => ({
  name: 'truck',
  head: ['department', 'type', 'kind', 'on the plan', 'spare', 'order', 'each kg', 'all kg'],
  rows: gearLines(info.plan, (mm) => `${rounded(mm / 1000, 2)} m`)
    .map((l) => [
      l.department,
      l.type,
      l.name,
      l.count,
      l.spare,
      l.order,
      rounded(l.eachKg, 2),
      rounded(l.allKg, 2),
    ])
    .sort((a, b) => DEPARTMENTS.indexOf(a[0] as never) - DEPARTMENTS.indexOf(b[0] as never)),
});

/** Stands with load, rating, tipping and bags; factors that nothing bounds are empty. */
export const standTable = (info: SetInfo): ListTable => ({
  name: 'stands',
  head: [
    ...['stand', 'kind', 'carries', 'height m', 'load kg', 'rated kg', '% of rating'],
    ...['tipping factor', 'tips at wind m/s', 'bags', 'bags reckoned'],
  ],
  rows: riggingRows(info.plan).stands.map((s) => [
    s.label,
    s.kindName,
    s.carries,
    rounded(s.heightMm / 1000, 3),
    rounded(s.loadKg, 1),
    s.ratedKg,
    rounded(s.loadPct, 1),
    rounded(s.tipFactor, 2),
    rounded(s.tipWindMps, 1),
    s.bags,
    rounded(s.bagsWanted, 0),
  ]),
});

/** Tube, points, lifts and cranes with what hangs on them. */
export const hungTable = (info: SetInfo): ListTable => ({
  name: 'rigging',
  head: [
    'what',
    'kind',
    'carries',
    'height m',
    'gear kg',
    'people kg',
    'rated kg',
    'rating from',
    'worked by',
  ],
  rows: riggingRows(info.plan).hung.map((h) => [
    h.label,
    h.kindName,
    h.carries,
    rounded(h.heightMm / 1000, 3),
    rounded(h.loadKg, 1),
    rounded(h.peopleKg, 1),
    h.ratedKg ?? Number.NaN,
    h.ratedKg === undefined ? '' : h.ratedAssumed ? 'its kind' : 'this one',
    h.operator,
  ]),
});
