import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { floorsOf } from '../floors.ts';
import { type Plan, recordsOf } from '../plan.ts';
import type { Floor } from '../records/index.ts';
import { removeRecords } from './arrange.ts';

/** Height of a storey whose ceiling is not known, and the thickness of what is between two. */
const STOREY_MM = 3000;
const SLAB_MM = 300;

/** Adds a floor above the highest one, alone or with the walls and openings of another drawn on it as well. */
export const addFloor = (
  plan: Plan,
  what: { readonly name: string; readonly wallsOf?: Id | undefined },
  newId: NewId,
): { readonly changes: ChangeSet; readonly floor: Floor } => {
  const floors = floorsOf(plan);
  const top = [...floors].sort((a, b) => b.levelMm - a.levelMm)[0];
  const floor: Floor = {
    id: newId('fl'),
    type: 'floor',
    name: what.name.trim() || `Floor ${floors.length + 1}`,
    levelMm: top ? top.levelMm + (top.ceilingMm ?? STOREY_MM) + SLAB_MM : 0,
    northDeg: top?.northDeg ?? 270,
    order: Math.max(0, ...floors.map((f) => f.order ?? 0)) + (floors.some((f) => f.order) ? 1 : 0),
  };
  const draft = new Draft(plan).put(floor);
  const walls = new Map<Id, Id>();
  if (what.wallsOf !== undefined)
    for (const w of recordsOf(plan, 'wall'))
      if (w.floorId === what.wallsOf) {
        const id = newId('wl');
        walls.set(w.id, id);
        draft.put({ ...w, id, floorId: floor.id });
      }
  for (const o of recordsOf(plan, 'opening')) {
    const wallId = walls.get(o.wallId);
    if (wallId !== undefined) draft.put({ ...o, id: newId('op'), wallId });
  }
  return { changes: draft.changes(), floor };
};

/** Takes a floor away with everything on it. The last one stays. */
export const removeFloor = (plan: Plan, id: Id): Result<ChangeSet> => {
  if (recordsOf(plan, 'floor').length < 2)
    return fail({ what: 'A plan has at least one floor.', todo: 'Add another one first.' });
  const here = [...plan.records.values()].filter((r) => 'floorId' in r && r.floorId === id);
  // What is locked goes too: its floor is no more.
  const open = new Draft(plan);
  for (const r of here) if (r.locked) open.put({ ...r, locked: false });
  const unlocked = new Map(plan.records);
  for (const { to } of open.changes().updated) unlocked.set(to.id, to);
  const gone = removeRecords({ ...plan, records: unlocked }, new Set(here.map((r) => r.id)));
  const draft = new Draft(plan).remove(id);
  for (const r of gone.removed) draft.remove(r.id);
  for (const { to } of gone.updated) draft.put(to);
  return ok(draft.changes());
};

/** Moves a floor one place up or down in the list of floors. */
export const reorderFloor = (plan: Plan, id: Id, by: 1 | -1): ChangeSet => {
  const all = [...floorsOf(plan)];
  const i = all.findIndex((f) => f.id === id);
  const [own, other] = [all[i], all[i + by]];
  const draft = new Draft(plan);
  if (!own || !other) return draft.changes();
  all[i] = other;
  all[i + by] = own;
  all.forEach((f, k) => {
    if (f.order !== k + 1) draft.put({ ...f, order: k + 1 });
  });
  return draft.changes();
};

/** How many things are on a floor. */
export const countOn = (plan: Plan, id: Id): number => {
  let n = 0;
  for (const r of plan.records.values()) if ('floorId' in r && r.floorId === id) n++;
  return n;
};
