import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { applyChanges, type ChangeSet, diffPlans } from '../../plan/change-set.ts';
import { type ColorNote, colorNoteText, readColorNote } from '../../plan/color-note.ts';
import { setColorCells, setLevelCells } from '../../plan/edits/day.ts';
import { samePlaceAs, stayHere } from '../../plan/edits/moves.ts';
import { levelId, type Plan, recordOf } from '../../plan/plan.ts';
import type { Level } from '../../plan/records/index.ts';
import { readLevel } from './grid-model.ts';

/** A value for one unit in one setup. */
export interface UnitValue<V> {
  readonly fixtureId: Id;
  readonly setupId: Id;
  readonly value: V | undefined;
}

/** One thing the grid of setups can show and edit for every unit in every setup. */
export interface Facet<V> {
  readonly id: 'level' | 'color' | 'place';
  readonly name: string;
  /** What it says of one cell, and of several, in undo steps and messages. */
  readonly one: string;
  readonly many: string;
  readonly at: (plan: Plan, setupId: Id, fixtureId: Id) => V | undefined;
  readonly text: (value: V) => string;
  readonly read: (text: string) => Result<V | undefined>;
  readonly edit: (plan: Plan, values: readonly UnitValue<V>[]) => ChangeSet;
  /** Whether a key begins typing a value. */
  readonly begins: (key: string) => boolean;
  readonly help: string;
}

const levelAt = (plan: Plan, setupId: Id, fixtureId: Id): Level | undefined =>
  recordOf(plan, 'level', levelId(setupId, fixtureId));

export const LEVELS: Facet<number> = {
  id: 'level',
  name: 'Levels',
  one: 'level',
  many: 'levels',
  at: (plan, s, f) => levelAt(plan, s, f)?.levelPct,
  text: String,
  read: readLevel,
  edit: (plan, values) =>
    setLevelCells(
      plan,
      values.map(({ value, ...x }) => ({ ...x, levelPct: value })),
    ),
  begins: (key) => /^[0-9of]$/i.test(key),
  help: 'Type a level, 0 for off; Delete clears it (full, assumed).',
};

export const COLORS: Facet<ColorNote> = {
  id: 'color',
  name: 'Colours',
  one: 'colour',
  many: 'colours',
  at: (plan, s, f) => {
    const l = levelAt(plan, s, f);
    return l && colorNoteText(l) !== ''
      ? {
          ...(l.cctK === undefined ? {} : { cctK: l.cctK }),
          ...(l.color === undefined ? {} : { color: l.color }),
        }
      : undefined;
  },
  text: colorNoteText,
  read: readColorNote,
  edit: (plan, values) =>
    setColorCells(
      plan,
      values.map(({ value, ...x }) => ({ ...x, note: value })),
    ),
  begins: (key) => key.length === 1 && key !== ' ',
  help: 'Type a colour temperature (5600), words (steel blue), or both (5600 K, half green); Delete clears it.',
};

/** A place of one unit in one setup. */
export interface PlaceIn {
  readonly fixtureId: Id;
  readonly setupId: Id;
}

export const PLACES: Facet<PlaceIn> = {
  id: 'place',
  name: 'Places',
  one: 'place',
  many: 'places',
  // A unit at its usual place has one too: it can be filled over a setup in which it stands elsewhere.
  at: (_plan, setupId, fixtureId) => ({ setupId, fixtureId }),
  text: () => 'own place',
  read: (text) =>
    text.trim() === ''
      ? ok(undefined)
      : fail({ what: 'A place is not typed.', todo: 'Press Enter and move the unit on the floor.' }),
  edit: (plan, values) => {
    let next = plan;
    for (const v of values) {
      if (v.value === undefined) next = applyChanges(next, stayHere(next, v.setupId, [v.fixtureId]));
      else if (v.value.fixtureId === v.fixtureId)
        next = applyChanges(next, samePlaceAs(next, v.value.setupId, v.setupId, [v.fixtureId]));
    }
    return diffPlans(plan, next);
  },
  begins: () => false,
  help: 'Enter shows the unit on the floor in that setup, to be moved there; fill right gives its place to other setups, Delete its usual one back.',
};
