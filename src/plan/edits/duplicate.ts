import type { Point } from '../../kernel/geometry.ts';
import { compareNatural, type Id, type NewId } from '../../kernel/ids.ts';
import { applyChanges, type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, setupsOf } from '../plan.ts';
import type { AnyRecord } from '../records/index.ts';
import { freeOutlet } from './floor-packs.ts';
import { nextLabel, nextUnit } from './place.ts';
import { shifted } from './shared.ts';

/** Types of what can be copied to the side. */
export const COPIED: readonly AnyRecord['type'][] = [
  'fixture',
  'stand',
  'grip',
  'rigging',
  'ballast',
  'box',
  'charger',
  'pack',
  'device',
  'source',
  'mark',
  'setPiece',
  'wall',
];

/**
 * Copies records to the side by `by` millimetres, with new ids and the next free unit numbers and labels. A fixture
 * takes its stand and ballast along and keeps its levels; cables and patches stay behind. Gives the change and the new ids.
 */
export const duplicateRecords = (
  plan: Plan,
  ids: ReadonlySet<Id>,
  by: Point,
  newId: NewId,
): { readonly changes: ChangeSet; readonly copies: ReadonlySet<Id> } => {
  const all = withCarriers(plan, ids);
  const fresh = new Map(all.map((r) => [r.id, newId(r.id.split('-')[0] ?? 'r')]));
  const moved = (id: Id): Id => fresh.get(id) ?? id;
  const draft = new Draft(plan);
  for (const r of all) {
    const { locked: _locked, groupId: _group, ...free } = shifted(r, by);
    const copy = { ...free, id: moved(r.id) } as AnyRecord;
    const now = applyChanges(plan, draft.changes());
    if (copy.type === 'fixture') {
      const { patch: _patch, ...rest } = copy;
      draft.put({
        ...rest,
        ...(rest.packFrom
          ? {
              packFrom: fresh.has(rest.packFrom.packId)
                ? { ...rest.packFrom, packId: moved(rest.packFrom.packId) }
                : freeOutlet(now, rest.packFrom),
            }
          : {}),
        unit: nextUnit(now),
        support:
          copy.support.on === 'stand'
            ? { ...copy.support, standId: moved(copy.support.standId) }
            : copy.support.on === 'rigged' && copy.support.riggingId
              ? { ...copy.support, riggingId: moved(copy.support.riggingId) }
              : copy.support,
        aim: copy.aim.at === 'mark' ? { ...copy.aim, markId: moved(copy.aim.markId) } : copy.aim,
      });
      copyLevels(plan, draft, r.id, copy.id);
    } else if (copy.type === 'box') {
      const { patch: _patch, ...rest } = copy;
      draft.put({ ...rest, label: nextLabel(now, copy.label.replace(/\d+$/, '') || 'K') });
    } else if (copy.type === 'charger') draft.put({ ...copy, label: nextLabel(now, 'C') });
    else if (copy.type === 'pack') draft.put({ ...copy, label: nextLabel(now, 'P') });
    else if (copy.type === 'grip') draft.put({ ...copy, supports: copy.supports.map(moved) });
    else if (copy.type === 'ballast') draft.put({ ...copy, fixtureId: moved(copy.fixtureId) });
    else if (copy.type === 'device' || copy.type === 'source' || copy.type === 'rigging') {
      draft.put({ ...copy, label: nextLabel(now, copy.label.replace(/\d+$/, '') || 'K') });
    } else draft.put(copy);
  }
  return { changes: draft.changes(), copies: new Set(fresh.values()) };
};

/** The records to copy, carriers and ballasts of fixtures included, units in the order of their numbers. */
const withCarriers = (plan: Plan, ids: ReadonlySet<Id>): readonly AnyRecord[] => {
  const all = new Set<Id>();
  for (const id of ids) {
    const r = plan.records.get(id);
    if (!r || !COPIED.includes(r.type)) continue;
    // A ballast without its head's copy would run the same head twice.
    if (r.type === 'ballast' && !ids.has(r.fixtureId)) continue;
    all.add(id);
    if (r.type === 'grip') for (const s of r.supports) if (plan.records.has(s)) all.add(s);
    if (r.type !== 'fixture') continue;
    if (r.support.on === 'stand') all.add(r.support.standId);
    for (const other of plan.records.values())
      if (other.type === 'ballast' && other.fixtureId === id) all.add(other.id);
  }
  const unit = (r: AnyRecord): string => (r.type === 'fixture' ? r.unit : '');
  return [...all]
    .flatMap((id) => plan.records.get(id) ?? [])
    .sort((a, b) => compareNatural(unit(a), unit(b)) || compareNatural(a.id, b.id));
};

const copyLevels = (plan: Plan, draft: Draft, from: Id, to: Id): void => {
  for (const s of setupsOf(plan)) {
    const level = plan.records.get(`level:${s.id}:${from}`);
    if (level?.type === 'level') draft.put({ ...level, id: `level:${s.id}:${to}`, fixtureId: to });
  }
};
