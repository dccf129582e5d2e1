import { compareNatural } from '../kernel/ids.ts';
import { portName } from '../plan/names.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { feedOf, inletsOf, placeOf } from '../plan/ports.ts';
import type { AnyRecord } from '../plan/records/index.ts';
import { datumOf } from './datum.ts';
import type { ListTable } from './lists.ts';
import { rounded } from './power-lists.ts';

/** What stands on a floor besides units and stands, in the order of the list. */
const TYPES = ['source', 'outlet', 'box', 'device', 'charger', 'pack'] as const;
const WORDS: Readonly<Record<(typeof TYPES)[number], string>> = {
  source: 'source',
  outlet: 'wall outlet',
  box: 'box',
  device: 'control gear',
  charger: 'charger',
  pack: 'pack',
};

/** Labels of where its inlets are plugged in; an outlet's is its circuit. */
const fedFrom = (plan: Plan, r: AnyRecord): string => {
  if (r.type === 'outlet') return recordOf(plan, 'source', r.sourceId)?.label ?? '';
  if (r.type === 'box' && r.plugsInto) return portName(plan, r.plugsInto);
  return inletsOf(plan, r.id)
    .flatMap((i) => {
      const cable = feedOf(plan, { recordId: r.id, portId: i.id });
      return cable ? [portName(plan, cable.from)] : [];
    })
    .join(', ');
};

/** Sources, wall outlets, boxes, control gear, chargers and packs one by one, with where they stand and what feeds them. */
export const placedTable = (plan: Plan): ListTable => ({
  name: 'placed',
  head: ['label', 'what', 'kind', 'each kg', 'fed from', 'height m', 'right m', 'up m', 'floor', 'notes'],
  rows: TYPES.flatMap((type) =>
    [...(recordsOf(plan, type) as readonly Extract<AnyRecord, { type: (typeof TYPES)[number] }>[])]
      .sort((a, b) => compareNatural(a.label, b.label) || compareNatural(a.id, b.id))
      .map((r) => {
        const place = placeOf(plan, r.id);
        const datum = datumOf(plan, r.floorId);
        const kind = 'kindId' in r && typeof r.kindId === 'string' ? kindOf(plan, r.kindId) : undefined;
        return [
          r.label,
          WORDS[type],
          kind?.name ?? '',
          rounded(kind?.massKg ?? Number.NaN, 1),
          fedFrom(plan, r),
          rounded((place?.heightMm ?? Number.NaN) / 1000, 3),
          rounded(((place?.at.xMm ?? Number.NaN) - datum.xMm) / 1000, 3),
          rounded((datum.yMm - (place?.at.yMm ?? Number.NaN)) / 1000, 3),
          recordOf(plan, 'floor', r.floorId)?.name ?? '',
          typeof r.notes === 'string' ? r.notes : '',
        ];
      }),
  ),
});
