import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { limitOf } from '../../../derive/limits.ts';
import { planRecord } from '../../../plan/plan.ts';
import type { PlanRecord } from '../../../plan/records/index.ts';
import { remembered, rememberedEach } from '../../../plan/remembered.ts';
import { crossedStands, doorsReached, floorPlans, legsFit } from '../clearance.ts';
import { obstaclesOf, piecesMet } from '../clearance-set.ts';
import type { RiggingResult } from '../figures.ts';
import type { StandUse } from '../model.ts';
import { carriedLabel } from './stands.ts';

/** Walls, doors and set pieces that stands are held against, once while they and the plan's own record are the same. */
const around = remembered((plan, _record: PlanRecord) => ({
  floors: floorPlans(plan),
  obstacles: obstaclesOf(plan, limitOf(plan, 'rigging-set-height').value),
}));

/** One stand's legs against walls, doors and furniture. */
const ofStand = rememberedEach(
  (plan, use: StandUse, { floors, obstacles }: ReturnType<typeof around>): readonly EngineFinding[] => {
    const out: EngineFinding[] = [];
    const label = carriedLabel(plan, use);
    const params = { label, kind: use.kind.name, legCircleMm: use.kind.legCircleMm };
    const floor = floors.get(use.stand.floorId);
    const pieces = piecesMet(use, obstacles.get(use.stand.floorId) ?? [], floor?.solids ?? []);
    for (const { piece, how } of pieces)
      out.push(
        always('rigging-set', 'note', `${use.stand.id}+${piece.id}`, [use.stand.id, piece.id], {
          ...params,
          piece: piece.label || 'a set piece',
          how,
        }),
      );
    if (!floor) return out;
    if (!legsFit(use, floor.solids))
      out.push(always('rigging-wall', 'warn', use.stand.id, [use.stand.id], params));
    for (const o of doorsReached(use, floor))
      out.push(
        always('rigging-door', 'warn', `${use.stand.id}+${o.id}`, [use.stand.id, o.id], {
          ...params,
          what: o.what,
        }),
      );
    return out;
  },
);

/** Legs against walls, doors, furniture and other stands. */
export const clearanceFindings = (r: RiggingResult): readonly EngineFinding[] => {
  const { plan } = r.model;
  const uses = [...r.stands.values()];
  const out = ofStand(plan, uses, around(plan, planRecord(plan))).flat();
  for (const [a, b] of crossedStands(uses, (id) => r.model.baseOf.get(id))) {
    const name = (id: string): string => {
      const use = r.stands.get(id);
      return use ? carriedLabel(plan, use) : recordLabel(plan, plan.records.get(id));
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
