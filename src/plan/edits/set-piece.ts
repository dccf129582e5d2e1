import type { Point } from '../../kernel/geometry.ts';
import type { NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { SceneryKind } from '../kinds/kinds.ts';
import type { Plan } from '../plan.ts';
import type { RecordOf } from '../records/index.ts';
import { ensureKind } from './shared.ts';

/** Adds furniture or a vehicle as a set piece of its kind's size, turned by `rotationDeg`. */
export const placeSetPiece = (
  plan: Plan,
  what: {
    readonly kind: SceneryKind;
    readonly floorId: string;
    readonly at: Point;
    readonly rotationDeg: number;
  },
  newId: NewId,
): { readonly changes: ChangeSet; readonly piece: RecordOf<'setPiece'> } => {
  const { kind } = what;
  const piece: RecordOf<'setPiece'> = {
    id: newId('sp'),
    type: 'setPiece',
    floorId: what.floorId,
    at: what.at,
    rotationDeg: what.rotationDeg,
    outline: { shape: 'rect', lengthMm: kind.sizeMm.lengthMm, widthMm: kind.sizeMm.widthMm },
    heightMm: kind.sizeMm.heightMm ?? 0,
    label: kind.name,
    line: 'solid',
    kindId: kind.id,
  };
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  return { changes: draft.put(piece).changes(), piece };
};
