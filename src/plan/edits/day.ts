import type { Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { clampMinute } from '../clock.ts';
import { type ColorNote, colorNoteText } from '../color-note.ts';
import type { Kind } from '../kinds/kinds.ts';
import { atWholeLevel, isAtLevel } from '../part-levels.ts';
import { levelId, type Plan, planRecord, recordOf, recordsOf, setupsOf } from '../plan.ts';
import { LAST_MINUTE } from '../records/day.ts';
import type {
  BatterySettings,
  Block,
  GeoPlace,
  Level,
  OwnCellsUse,
  PackUse,
  Stock,
} from '../records/index.ts';
import { copyMoves } from './moves.ts';
import { nextLabel } from './place.ts';
import { ensureKind } from './shared.ts';

/** Adds a block to a day. */
export const addBlock = (
  plan: Plan,
  block: Pick<Block, 'day' | 'startMin' | 'endMin' | 'what'> &
    Partial<Pick<Block, 'setupId' | 'label' | 'crew'>>,
  newId: NewId,
): ChangeSet =>
  new Draft(plan)
    .put({ burnsThrough: [], label: '', crew: 'shooting', ...block, id: newId('bk'), type: 'block' })
    .changes();

/**
 * Sets a block's times. With `shiftRest` every other block of the day that starts at or after the block's old end moves by
 * as much as the end does.
 */
export const setBlockTimes = (
  plan: Plan,
  blockId: Id,
  times: { readonly startMin?: number; readonly endMin?: number },
  shiftRest: boolean,
): ChangeSet => {
  const b = recordOf(plan, 'block', blockId);
  if (!b) throw new Error(`no block ${blockId}`);
  const next = {
    ...b,
    startMin: clampMinute(times.startMin ?? b.startMin),
    endMin: clampMinute(times.endMin ?? b.endMin),
  };
  const draft = new Draft(plan);
  if (next.startMin !== b.startMin || next.endMin !== b.endMin) draft.put(next);
  const by = next.endMin - b.endMin;
  if (shiftRest && by !== 0)
    for (const r of recordsOf(plan, 'block'))
      if (r.id !== b.id && r.day === b.day && r.startMin >= b.endMin)
        draft.put({ ...r, startMin: clampMinute(r.startMin + by), endMin: clampMinute(r.endMin + by) });
  return draft.changes();
};

/** Moves a block and, with `shiftRest`, all that start at or after its old end, by some minutes. */
export const moveBlock = (plan: Plan, blockId: Id, byMin: number, shiftRest: boolean): ChangeSet => {
  const b = recordOf(plan, 'block', blockId);
  if (!b) throw new Error(`no block ${blockId}`);
  const draft = new Draft(plan);
  for (const r of recordsOf(plan, 'block')) {
    const moves = r.id === b.id || (shiftRest && r.day === b.day && r.startMin >= b.endMin);
    if (moves && byMin !== 0)
      draft.put({ ...r, startMin: clampMinute(r.startMin + byMin), endMin: clampMinute(r.endMin + byMin) });
  }
  return draft.changes();
};

/** Changes what a block is, its setup, words or crew. A block that burns no setup of its own may be left without one. */
export const changeBlock = (
  plan: Plan,
  blockId: Id,
  patch: Partial<Pick<Block, 'what' | 'label' | 'crew' | 'day'>> & { readonly setupId?: Id | undefined },
): ChangeSet => {
  const b = recordOf(plan, 'block', blockId);
  if (!b) throw new Error(`no block ${blockId}`);
  const { setupId, ...rest } = { ...b, ...patch };
  const next = { ...rest, ...(setupId === undefined ? {} : { setupId }) } as Block;
  return new Draft(plan).put(next).changes();
};

/** Names the units that stay on through a block. */
export const setBurnsThrough = (plan: Plan, blockId: Id, fixtureIds: readonly Id[]): ChangeSet => {
  const b = recordOf(plan, 'block', blockId);
  if (!b) throw new Error(`no block ${blockId}`);
  return new Draft(plan).put({ ...b, burnsThrough: [...fixtureIds] }).changes();
};

/** Minutes that a day laid out from the setups gives to each part, and how long a crew works before it eats. */
const LAID_OUT = { preLight: 60, setup: 120, meal: 60, wrap: 30, mealAfter: 360 } as const;

/**
 * Lays a day out from the setups in their order: a pre-light, each setup for so long, a meal before six hours of work are over (common
 * practice, no published source), wrap. As many setups as fit before noon of the next day. The day has no blocks before.
 */
export const layOutDay = (plan: Plan, day: number, startMin: number, newId: NewId): ChangeSet => {
  const draft = new Draft(plan);
  const setups = setupsOf(plan);
  let at = clampMinute(startMin);
  let sinceMeal = at;
  const put = (what: Block['what'], minutes: number, setupId?: Id): void => {
    const endMin = Math.min(at + minutes, LAST_MINUTE);
    if (endMin <= at) return;
    draft.put({
      id: newId('bk'),
      type: 'block',
      day,
      startMin: at,
      endMin,
      what,
      label: '',
      burnsThrough: [],
      crew: 'shooting',
      ...(setupId === undefined ? {} : { setupId }),
    });
    at = endMin;
  };
  const first = setups[0];
  if (first) put('pre-light', LAID_OUT.preLight, first.id);
  for (const s of setups) {
    if (at + LAID_OUT.setup + LAID_OUT.wrap > LAST_MINUTE) break;
    if (at + LAID_OUT.setup - sinceMeal > LAID_OUT.mealAfter) {
      put('meal', LAID_OUT.meal);
      sinceMeal = at;
    }
    put('setup', LAID_OUT.setup, s.id);
  }
  if (first) put('wrap', LAID_OUT.wrap);
  return draft.changes();
};

/** Copies the blocks of a day to another, which has none. */
export const copyDay = (plan: Plan, from: number, to: number, newId: NewId): ChangeSet => {
  const draft = new Draft(plan);
  for (const b of recordsOf(plan, 'block')) if (b.day === from) draft.put({ ...b, id: newId('bk'), day: to });
  return draft.changes();
};

/** Levels of several units in several setups at once; without a level the record goes and the unit is at full, assumed. */
export const setLevelCells = (
  plan: Plan,
  cells: Iterable<{ readonly setupId: Id; readonly fixtureId: Id; readonly levelPct: number | undefined }>,
): ChangeSet => {
  const draft = new Draft(plan);
  for (const { setupId, fixtureId, levelPct } of cells) {
    const id = levelId(setupId, fixtureId);
    const old = recordOf(plan, 'level', id);
    if (levelPct === undefined) {
      // A colour is kept; without one the unit is at full, assumed.
      if (old && (old.color !== undefined || old.cctK !== undefined)) {
        if (old.levelPct !== 100) draft.put({ ...old, levelPct: 100 });
      } else if (old) draft.remove(id);
    } else if (!old || !isAtLevel(old, levelPct))
      draft.put(atWholeLevel(old ?? { id, type: 'level' as const, setupId, fixtureId }, levelPct));
  }
  return draft.changes();
};

/** Colours of several units in several setups at once. A unit without a level is at full from then on, as it was assumed to be. */
export const setColorCells = (
  plan: Plan,
  cells: Iterable<{ readonly setupId: Id; readonly fixtureId: Id; readonly note: ColorNote | undefined }>,
): ChangeSet => {
  const draft = new Draft(plan);
  for (const { setupId, fixtureId, note } of cells) {
    const id = levelId(setupId, fixtureId);
    const old = recordOf(plan, 'level', id);
    if (colorNoteText(old) === colorNoteText(note)) continue;
    const {
      color: _color,
      cctK: _cct,
      ...rest
    } = old ?? {
      id,
      type: 'level' as const,
      setupId,
      fixtureId,
      levelPct: 100,
    };
    draft.put({ ...rest, ...note } as Level);
  }
  return draft.changes();
};

/** Puts a setup at another place in the order. */
export const moveSetup = (plan: Plan, setupId: Id, toIndex: number): ChangeSet => {
  const setups = [...setupsOf(plan)];
  const at = setups.findIndex((s) => s.id === setupId);
  const [moved] = at < 0 ? [] : setups.splice(at, 1);
  if (!moved) throw new Error(`no setup ${setupId}`);
  setups.splice(Math.max(0, Math.min(setups.length, toIndex)), 0, moved);
  const draft = new Draft(plan);
  setups.forEach((s, i) => {
    if (s.order !== i + 1) draft.put({ ...s, order: i + 1 });
  });
  return draft.changes();
};

/** Copies a setup with its levels and places and puts the copy right after it. */
export const duplicateSetup = (plan: Plan, setupId: Id, name: string, newId: NewId): ChangeSet => {
  const setup = recordOf(plan, 'setup', setupId);
  if (!setup) throw new Error(`no setup ${setupId}`);
  const id = newId('su');
  const draft = new Draft(plan);
  let order = 0;
  for (const s of setupsOf(plan)) {
    order++;
    if (s.order !== order) draft.put({ ...s, order });
    if (s.id === setupId) draft.put({ ...s, id, name, order: ++order });
  }
  for (const l of recordsOf(plan, 'level'))
    if (l.setupId === setupId) draft.put({ ...l, id: levelId(id, l.fixtureId), setupId: id });
  copyMoves(plan, draft, setupId, id);
  return draft.changes();
};

/** Puts fixtures on packs of a kind, off a pack on the floor, or with `undefined` on no packs of the plan's. They take no mains then. */
export const setPacks = (
  plan: Plan,
  fixtureIds: Iterable<Id>,
  use: PackUse | undefined,
  kinds: readonly Kind[] = [],
): ChangeSet => {
  const draft = new Draft(plan);
  for (const k of kinds) ensureKind(draft, k);
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    if (!f || f.locked) continue;
    const { packs: _packs, packFrom: _from, ...rest } = f;
    draft.put(use ? { ...rest, packs: use, onPacks: true } : rest);
  }
  return draft.changes();
};

/** Says whether fixtures run on packs or their own cells, or take mains. */
export const setOnPacks = (plan: Plan, fixtureIds: Iterable<Id>, onPacks: boolean): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    if (f && !f.locked && f.onPacks !== onPacks) draft.put({ ...f, onPacks });
  }
  return draft.changes();
};

/** Says what is done with a unit when its own cells are empty. */
export const setOwnCells = (plan: Plan, fixtureId: Id, use: OwnCellsUse): ChangeSet => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) throw new Error(`no fixture ${fixtureId}`);
  return new Draft(plan).put({ ...f, ownCells: use }).changes();
};

/** Sets how many packs of a kind there are. A plan has one row for each kind. */
export const setStock = (
  plan: Plan,
  kind: Kind,
  patch: Partial<Pick<Stock, 'count' | 'reserve'>> & { readonly sohPct?: number | undefined },
  newId: NewId,
): ChangeSet => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const old = recordsOf(plan, 'stock').find((s) => s.kindId === kind.id);
  const { sohPct, ...rest } = {
    ...(old ?? { id: newId('sk'), type: 'stock' as const, kindId: kind.id, count: 0, reserve: 0 }),
    ...patch,
  };
  draft.put({ ...rest, ...(sohPct === undefined ? {} : { sohPct }) });
  return draft.changes();
};

/** Puts a charger on the floor with the next free label. */
export const addCharger = (plan: Plan, kind: Kind, floorId: Id, at: Point, newId: NewId): ChangeSet => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  draft.put({
    id: newId('ch'),
    type: 'charger',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg: 0,
    label: nextLabel(plan, 'C'),
  });
  return draft.changes();
};

/** Changes values that hold for all packs; `undefined` gives one back to the table. */
export const setBatterySettings = (
  plan: Plan,
  patch: { readonly [K in keyof BatterySettings]?: number | boolean | undefined },
): ChangeSet => {
  const head = planRecord(plan);
  const next: Record<string, unknown> = { ...head.batteries, ...patch };
  for (const key of Object.keys(next)) if (next[key] === undefined) delete next[key];
  return new Draft(plan).put({ ...head, batteries: next }).changes();
};

/** Sets where on earth the set is; `undefined` forgets it. */
export const setGeoPlace = (plan: Plan, place: GeoPlace | undefined): ChangeSet => {
  const { place: _old, ...head } = planRecord(plan);
  return new Draft(plan).put(place ? { ...head, place } : head).changes();
};

/** Sets the date of a shooting day. Days before it that have none get an empty date. */
export const setDayDate = (plan: Plan, day: number, date: string): ChangeSet => {
  const head = planRecord(plan);
  const dates = Array.from({ length: Math.max(day, head.dates.length) }, (_, i) => head.dates[i] ?? '');
  dates[day - 1] = date;
  return new Draft(plan).put({ ...head, dates }).changes();
};
