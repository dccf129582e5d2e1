import { add, type Point, point, rotate, sub } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { GripKind, RiggingKind, StandKind } from '../kinds/kinds.ts';
import { armDirectionDeg, fixturePlace, kindOf, type Plan, recordOf, recordsOf } from '../plan.ts';
import type { RecordOf } from '../records/index.ts';
import { nextLabel } from './place.ts';
import { ensureKind } from './shared.ts';

const FRAME_HEIGHT_MM = 2500;
/** Room between a frame's edge and the middle of its stand. */
const BESIDE_MM = 150;

interface Where {
  readonly floorId: Id;
  readonly at: Point;
  readonly rotationDeg: number;
}

/** Middles of the stands of a frame `widthMm` across, spread over its width; one stands in the middle. */
export const standSpots = (where: Where, widthMm: number, count: number): readonly Point[] =>
  Array.from({ length: count }, (_, i) => {
    const y = count === 1 ? 0 : (widthMm + 2 * BESIDE_MM) * (i / (count - 1) - 0.5);
    return add(where.at, rotate(point(0, y), where.rotationDeg));
  });

/** Adds grip gear, and the stands it takes where a kind of stand is given. */
export const placeGrip = (
  plan: Plan,
  what: Where & { readonly kind: GripKind; readonly stand?: StandKind | undefined },
  newId: NewId,
): { readonly changes: ChangeSet; readonly grip: RecordOf<'grip'> } => {
  const { kind, stand, floorId, at, rotationDeg } = what;
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const tallMm = kind.sizeMm.heightMm ?? 0;
  const count = stand ? kind.stands : 0;
  const wanted = count === 0 ? tallMm / 2 : Math.max(FRAME_HEIGHT_MM, tallMm / 2 + 300);
  const heightMm =
    stand && count > 0 ? Math.min(stand.heightMaxMm, Math.max(stand.heightMinMm, wanted)) : wanted;
  const supports: Id[] = [];
  if (stand) {
    if (count > 0) ensureKind(draft, stand);
    for (const spot of standSpots(what, kind.sizeMm.widthMm, count)) {
      const id = newId('st');
      supports.push(id);
      draft.put({ id, type: 'stand', floorId, kindId: stand.id, at: spot, rotationDeg, heightMm });
    }
  }
  const grip: RecordOf<'grip'> = {
    id: newId('gr'),
    type: 'grip',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg,
    heightMm,
    supports,
    guys: 0,
  };
  return { changes: draft.put(grip).changes(), grip };
};

/** Adds tube, truss, a point, a lift or a crane, as low as it goes. */
export const placeRigging = (
  plan: Plan,
  what: Where & { readonly kind: RiggingKind; readonly heightMm: number },
  newId: NewId,
): { readonly changes: ChangeSet; readonly rigging: RecordOf<'rigging'> } => {
  const { kind, floorId, at, rotationDeg } = what;
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const rigging: RecordOf<'rigging'> = {
    id: newId('rg'),
    type: 'rigging',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg,
    label: nextLabel(plan, 'R'),
    heightMm: what.heightMm,
    people: 0,
    operator: '',
  };
  return { changes: draft.put(rigging).changes(), rigging };
};

/** What moves along with these records because of grip gear and rigging: a frame and its stands, what hangs on a tube. */
export const gripMovedWith = (plan: Plan, ids: Set<Id>): void => {
  for (const g of recordsOf(plan, 'grip')) {
    const hangs = g.riggingId !== undefined && ids.has(g.riggingId);
    if (!ids.has(g.id) && !hangs && !g.supports.some((s) => ids.has(s))) continue;
    ids.add(g.id);
    for (const s of g.supports) ids.add(s);
  }
  for (const f of recordsOf(plan, 'fixture'))
    if (f.support.on === 'rigged' && f.support.riggingId && ids.has(f.support.riggingId)) ids.add(f.id);
};

/** Turns the stands of a frame about its middle along with it. Stands that are turned by themselves are left out. */
export const turnSupports = (
  draft: Draft,
  plan: Plan,
  grip: RecordOf<'grip'>,
  byDeg: number,
  left: ReadonlySet<Id>,
): void => {
  for (const id of grip.supports) {
    const s = recordOf(plan, 'stand', id);
    if (!s || s.locked || left.has(id)) continue;
    const at = add(grip.at, rotate(sub(s.at, grip.at), byDeg));
    draft.put({ ...s, at, rotationDeg: (((s.rotationDeg + byDeg) % 360) + 360) % 360 });
  }
};

/** Stands under a frame that carry nothing else: they go when it goes. */
export const ownSupports = (plan: Plan, grip: RecordOf<'grip'>): readonly Id[] =>
  grip.supports.filter(
    (s) =>
      !recordsOf(plan, 'fixture').some((f) => f.support.on === 'stand' && f.support.standId === s) &&
      !recordsOf(plan, 'grip').some((g) => g.id !== grip.id && g.supports.includes(s)),
  );

/** Frees grip gear and fixtures from stands and rigging that go. */
export const letGo = (draft: Draft, plan: Plan, gone: ReadonlySet<Id>): void => {
  for (const g of recordsOf(plan, 'grip')) {
    const falls = g.riggingId !== undefined && gone.has(g.riggingId);
    if (gone.has(g.id) || (!falls && !g.supports.some((s) => gone.has(s)))) continue;
    const { riggingId: _hung, ...rest } = g;
    draft.put({ ...(falls ? rest : g), supports: g.supports.filter((s) => !gone.has(s)) });
  }
  for (const f of recordsOf(plan, 'fixture')) {
    const { support } = f;
    if (gone.has(f.id) || support.on !== 'rigged' || !support.riggingId || !gone.has(support.riggingId))
      continue;
    const now = draft.get(f.id);
    const { riggingId: _gone, ...rest } = support;
    draft.put({ ...(now?.type === 'fixture' ? now : f), support: rest });
  }
};

/** Puts a cloth into frames, or takes it out. */
export const setCloth = (plan: Plan, grip: RecordOf<'grip'>, cloth: GripKind | undefined): ChangeSet => {
  const draft = new Draft(plan);
  const { clothId: _old, ...bare } = grip;
  if (cloth) ensureKind(draft, cloth);
  return draft.put(cloth ? { ...bare, clothId: cloth.id } : bare).changes();
};

/** Adds one more accessory to a fixture: an arm, a head, an adapter, grip. */
export const addAccessory = (
  plan: Plan,
  fixture: RecordOf<'fixture'>,
  kind: RiggingKind | GripKind,
): ChangeSet => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const next = { ...fixture, accessories: [...(fixture.accessories ?? []), kind.id] };
  if (kind.family !== 'rigging' || kind.what !== 'arm' || fixture.arm?.directionDeg !== undefined)
    return draft.put(next).changes();
  // A first arm goes out the way the unit faces now, and stays there when the unit is turned.
  const directionDeg = Math.round(armDirectionDeg(plan, fixture, fixturePlace(plan, fixture).at));
  return draft.put({ ...next, arm: { overLeg: false, ...fixture.arm, directionDeg } }).changes();
};

/** Takes the accessory at this place in the list off a fixture; with its last arm goes where that put it. */
export const removeAccessory = (plan: Plan, fixture: RecordOf<'fixture'>, index: number): ChangeSet => {
  const { accessories = [], arm, ...bare } = fixture;
  const left = accessories.filter((_, i) => i !== index);
  const stays = left.some((id) => kindOf(plan, id, 'rigging')?.what === 'arm');
  return new Draft(plan)
    .put({ ...bare, ...(left.length > 0 ? { accessories: left } : {}), ...(arm && stays ? { arm } : {}) })
    .changes();
};
