import { recordLabel } from '../derive/labels.ts';
import { compareNatural } from '../kernel/ids.ts';
import { planInSetup } from '../plan/moves.ts';
import { recordOf } from '../plan/plan.ts';
import { computeRadio } from '../report/radio.ts';
import type { ListTable } from './lists.ts';
import type { SetInfo } from './sheet-info.ts';

/** Radio links with their margins by estimate, as plain rows. */
export const radioTable = (info: SetInfo): ListTable => {
  const plan = planInSetup(info.plan, info.setupId);
  const r = computeRadio(plan);
  const name = (id: string): string => recordLabel(plan, plan.records.get(id));
  return {
    name: 'radio',
    head: [
      'receiver',
      'universes',
      'linked to',
      'over',
      'margin dB',
      'by estimate',
      'receiver assumed',
      'not computed',
    ],
    rows: [...r.model.listeners.values()]
      .sort((a, b) => compareNatural(a.label, b.label))
      .map((l) => {
        const link = r.links.get(l.id);
        return [
          l.label,
          l.universeIds.flatMap((u) => recordOf(plan, 'universe', u)?.number ?? []).join(' '),
          link ? name(link.senderId) : '',
          link ? link.viaIds.map(name).join(' > ') : '',
          link ? Math.round(link.marginDb * 10) / 10 : Number.NaN,
          link && link.notComputed === undefined ? link.verdict : 'no link',
          l.assumed ? 'yes' : 'no',
          link?.notComputed ?? '',
        ];
      }),
  };
};
