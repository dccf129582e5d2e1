import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { View } from '../records/index.ts';

/** Saved views in the order of their names. */
export const viewsOf = (plan: Plan): readonly View[] =>
  [...recordsOf(plan, 'view')].sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1));

/** A name no other view has: as asked, else with the next number behind it. */
const freeName = (plan: Plan, wanted: string, but?: Id): string => {
  const used = new Set(recordsOf(plan, 'view').flatMap((v) => (v.id === but ? [] : [v.name])));
  const base = wanted.trim() || 'View';
  if (!used.has(base)) return base;
  for (let n = 2; ; n++) if (!used.has(`${base} ${n}`)) return `${base} ${n}`;
};

/** Saves a view under a name. */
export const addView = (
  plan: Plan,
  view: Omit<View, 'id' | 'type'>,
  newId: NewId,
): { readonly changes: ChangeSet; readonly view: View } => {
  const made = { ...view, id: newId('vw'), type: 'view', name: freeName(plan, String(view.name)) } as View;
  return { changes: new Draft(plan).put(made).changes(), view: made };
};

/** Gives a saved view what is seen now, under the name it has. */
export const retakeView = (plan: Plan, id: Id, view: Omit<View, 'id' | 'type' | 'name'>): ChangeSet => {
  const old = recordOf(plan, 'view', id);
  const draft = new Draft(plan);
  if (old) draft.put({ ...view, id, type: 'view', name: old.name } as View);
  return draft.changes();
};

export const renameView = (plan: Plan, id: Id, name: string): ChangeSet => {
  const old = recordOf(plan, 'view', id);
  const draft = new Draft(plan);
  if (old && name.trim() !== '' && old.name !== name.trim())
    draft.put({ ...old, name: freeName(plan, name, id) });
  return draft.changes();
};

export const removeView = (plan: Plan, id: Id): ChangeSet => {
  const draft = new Draft(plan);
  if (recordOf(plan, 'view', id)) draft.remove(id);
  return draft.changes();
};
