import { footprintOf, patchedMode } from './footprint.ts';
import type { FixtureKind } from './kinds/kinds.ts';
import { kindOf, levelId, type Plan, recordOf } from './plan.ts';
import type { Fixture, Level, PartLevel } from './records/index.ts';

/** How the parts of a unit lie: rows from the top, columns across it, both counted in the order of its mode. */
export interface PartGrid {
  readonly rows: number;
  readonly columns: number;
  /** The kind says so; else it is taken from its shape. */
  readonly given: boolean;
}

/** Styles whose parts make a field; the parts of others lie in a row. */
const FIELDS: readonly string[] = ['mat', 'panel', 'soft-panel', 'blanket'];

/** Parts a unit has: those of the mode it is patched in, else of the mode of its kind with most. One: none apart. */
export const partCount = (plan: Plan, f: Fixture): number => {
  const mode = patchedMode(plan, f);
  if (mode) return footprintOf(mode).parts;
  const modes = kindOf(plan, f.kindId, 'fixture')?.modes ?? [];
  return modes.reduce((most, m) => Math.max(most, footprintOf(m).parts), 1);
};

/** The field or row that so many parts of a kind make. A square number of parts of a flat unit is taken as a square. */
export const partGrid = (kind: FixtureKind | undefined, parts: number): PartGrid => {
  const columns = kind?.partColumns;
  if (columns !== undefined && parts % columns === 0) return { rows: parts / columns, columns, given: true };
  const side = Math.round(Math.sqrt(parts));
  const square = parts > 3 && side * side === parts && FIELDS.includes(kind?.style ?? '');
  return square ? { rows: side, columns: side, given: false } : { rows: 1, columns: parts, given: false };
};

/** Levels and colours of the parts of a unit in a setup; undefined where the unit has one level for all. */
export const partsOf = (plan: Plan, setupId: string, fixtureId: string): readonly PartLevel[] | undefined => {
  const parts = recordOf(plan, 'level', levelId(setupId, fixtureId))?.parts;
  return parts && parts.length > 0 ? parts : undefined;
};

/** A level record with the unit as a whole at so many per cent: its parts too, whose colours are kept. */
export const atWholeLevel = (
  level: Pick<Level, 'id' | 'type' | 'setupId' | 'fixtureId' | 'parts'>,
  levelPct: number,
): Level => ({
  ...level,
  levelPct,
  ...(level.parts && level.parts.length > 0 ? { parts: level.parts.map((p) => ({ ...p, levelPct })) } : {}),
});

/** Whether every part of a unit, or the unit without parts, is at a level. */
export const isAtLevel = (level: Pick<Level, 'levelPct' | 'parts'>, levelPct: number): boolean =>
  level.levelPct === levelPct && (level.parts ?? []).every((p) => p.levelPct === levelPct);
