import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { crossedStands, doorsReached, floorPlans, legsFit } from '../clearance.ts';
import type { RiggingResult } from '../figures.ts';
import { carriedLabel } from './stands.ts';

/** Legs against walls, doors and other stands. */
export const clearanceFindings = (r: RiggingResult): readonly EngineFinding[] => {
  const { plan } = r.model;
  const floors = floorPlans(plan);
  const out: EngineFinding[] = [];
  const uses = [...r.stands.values()];
  for (const use of uses) {
    const floor = floors.get(use.stand.floorId);
    if (!floor) continue;
    const label = carriedLabel(r, use);
    const params = { label, kind: use.kind.name, legCircleMm: use.kind.legCircleMm };
    if (!legsFit(use, floor.solids))
      out.push(always('rigging-wall', 'warn', use.stand.id, [use.stand.id], params));
    for (const o of doorsReached(use, floor))
      out.push(
        always('rigging-door', 'warn', `${use.stand.id}+${o.id}`, [use.stand.id, o.id], {
          ...params,
          what: o.what,
        }),
      );
  }
  for (const [a, b] of crossedStands(uses, (id) => r.model.baseOf.get(id))) {
    const name = (id: string): string => {
      const use = r.stands.get(id);
      return use ? carriedLabel(r, use) : recordLabel(plan, plan.records.get(id));
    };
    out.push(
      always('rigging-legs', 'note', `${a.id}+${b.id}`, [a.id, b.id], {
        label: name(a.id),
        other: name(b.id),
      }),
    );
  }
  return out;
};
