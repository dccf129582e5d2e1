import { formatLength, type LengthUnits } from '../kernel/units.ts';
import { recordName } from '../plan/names.ts';
import { fixturePlace, kindOf, type Plan, planRecord, recordOf } from '../plan/plan.ts';
import type { SessionState } from './session.ts';
import { capital } from './words.ts';

type OnFloor = Pick<SessionState, 'plan' | 'floorId'>;

/** What a view of the floor needs to know beside the drawing. */
export const lengthUnitsOf = (plan: Plan): LengthUnits => planRecord(plan).lengthUnits;

/** Where north points on the floor, degrees clockwise from +x. */
export const northDegOf = (s: OnFloor): number =>
  (s.floorId === undefined ? undefined : recordOf(s.plan, 'floor', s.floorId))?.northDeg ?? 270;

/** The selection in words, for those who hear the screen. */
export const selectionWords = (s: Pick<SessionState, 'plan' | 'selection'>): string => {
  const ids = [...s.selection].filter((id) => s.plan.records.has(id));
  if (ids.length === 0) return 'Nothing selected.';
  const [id] = ids;
  if (ids.length > 1 || id === undefined) return `${ids.length} things selected.`;
  const r = s.plan.records.get(id);
  if (r?.type !== 'fixture') return `${capital(recordName(s.plan, id))} selected.`;
  const units = lengthUnitsOf(s.plan);
  const kind = kindOf(s.plan, r.kindId, 'fixture');
  const { at, heightMm } = fixturePlace(s.plan, r);
  const place = `${formatLength(at.xMm, units)} across, ${formatLength(at.yMm, units)} down`;
  return `Unit ${r.unit}${kind ? `, ${kind.name}` : ''} selected. At ${place}, ${formatLength(heightMm, units)} high.`;
};
