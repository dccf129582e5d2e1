import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { limitOf } from '../../../derive/limits.ts';
import { crossedStands, doorsReached, floorPlans, legsFit } from '../clearance.ts';
import { obstaclesOf, piecesMet } from '../clearance-set.ts';
import type { RiggingResult } from '../figures.ts';
import { carriedLabel } from './stands.ts';

/** Legs against walls, doors, furniture and other stands. */
export const clearanceFindings = (r: RiggingResult): readonly EngineFinding[] => {
  const { plan } = r.model;
  const floors = floorPlans(plan);
  const obstacles = obstaclesOf(plan, limitOf(plan, 'rigging-set-height').value);
  const out: EngineFinding[] = [];
  const uses = [...r.stands.values()];
  for (const use of uses) {
    const label = carriedLabel(r, use);
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
    if (!floor) continue;
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
