import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { recordName } from '../names.ts';
import { partCount, partGrid, partsOf } from '../part-levels.ts';
import { kindOf, levelId, levelOf, type Plan, recordOf, wholeLevelPct } from '../plan.ts';
import type { Level, PartLevel } from '../records/index.ts';

/** Level in per cent and colour (`#rrggbb`) at one end of a gradient, or of a fill. */
export interface PartLook {
  readonly levelPct: number;
  readonly color?: string | undefined;
}

/** Which way a gradient runs: across the columns, down the rows, or from the first corner to the last. */
export type GradientWay = 'across' | 'down' | 'corner';

const COLOR = /^#[0-9a-f]{6}$/i;

const lookProblem = (p: PartLook) =>
  !(p.levelPct >= 0 && p.levelPct <= 100)
    ? { what: `${p.levelPct} % is no level.`, todo: 'Levels run from 0 to 100 %.' }
    : p.color !== undefined && !COLOR.test(p.color)
      ? { what: `“${p.color}” is not a colour.`, todo: 'Write it as six hexadecimal digits, like #ffb066.' }
      : undefined;

const clean = (p: PartLook): PartLevel => ({
  levelPct: Math.round(p.levelPct * 10) / 10,
  ...(p.color === undefined ? {} : { color: p.color.toLowerCase() }),
});

/** The parts of a unit as they are in a setup: its own, or its level on each of them. */
export const partsNow = (plan: Plan, setupId: Id, fixtureId: Id): readonly PartLevel[] => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) return [];
  const count = partCount(plan, f);
  const own = partsOf(plan, setupId, fixtureId) ?? [];
  const { levelPct } = levelOf(plan, setupId, fixtureId);
  return Array.from({ length: count }, (_, i) => own[i] ?? { levelPct });
};

/**
 * Sets the parts of a unit in a setup; the unit's own level becomes their mean. Fails where there are not as many as it has,
 * a level is outside 0 to 100 % or a colour is none.
 */
export const setParts = (
  plan: Plan,
  setupId: Id,
  fixtureId: Id,
  parts: readonly PartLook[],
): Result<ChangeSet> => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f || !recordOf(plan, 'setup', setupId))
    return fail({ what: 'That unit or setup is not in the plan.' });
  const count = partCount(plan, f);
  if (count < 2)
    return fail({
      what: `${recordName(plan, f)} has one part only.`,
      todo: 'Patch it in a mode with parts.',
    });
  if (parts.length !== count)
    return fail({ what: `${recordName(plan, f)} has ${count} parts, not ${parts.length}.` });
  for (const p of parts) {
    const problem = lookProblem(p);
    if (problem) return fail(problem);
  }
  const id = levelId(setupId, fixtureId);
  const old: Level = recordOf(plan, 'level', id) ?? { id, type: 'level', setupId, fixtureId, levelPct: 100 };
  const next = parts.map(clean);
  const mean = wholeLevelPct({ levelPct: 0, parts: next });
  return ok(new Draft(plan).put({ ...old, parts: next, levelPct: mean }).changes());
};

/** Gives some parts of a unit (all without a list) one level and colour; a colour left out stays as it is. */
export const fillParts = (
  plan: Plan,
  setupId: Id,
  fixtureId: Id,
  look: Partial<PartLook>,
  which?: ReadonlySet<number>,
): Result<ChangeSet> =>
  setParts(
    plan,
    setupId,
    fixtureId,
    partsNow(plan, setupId, fixtureId).map((p, i) => (which && !which.has(i) ? p : { ...p, ...given(look) })),
  );

const given = (look: Partial<PartLook>): Partial<PartLook> => ({
  ...(look.levelPct === undefined ? {} : { levelPct: look.levelPct }),
  ...(look.color === undefined ? {} : { color: look.color }),
});

const channel = (hex: string, at: number): number => Number.parseInt(hex.slice(at, at + 2), 16);

/** A colour between two, channel by channel; `t` from 0 to 1. */
export const mixColors = (a: string, b: string, t: number): string =>
  `#${[1, 3, 5]
    .map((at) =>
      Math.round(channel(a, at) + (channel(b, at) - channel(a, at)) * t)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;

/**
 * Runs levels and colours evenly from one end of a unit to the other: along a row, or over a field across, down, or from corner
 * to corner. With a list only those parts change; the run goes over all. Colours are mixed where both ends have one.
 */
export const gradientParts = (
  plan: Plan,
  setupId: Id,
  fixtureId: Id,
  from: PartLook,
  to: PartLook,
  way: GradientWay = 'across',
  which?: ReadonlySet<number>,
): Result<ChangeSet> => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) return fail({ what: 'That unit is not in the plan.' });
  for (const end of [from, to]) {
    const problem = lookProblem(end);
    if (problem) return fail(problem);
  }
  const parts = partsNow(plan, setupId, fixtureId);
  const grid = partGrid(kindOf(plan, f.kindId, 'fixture'), parts.length);
  const share = (n: number, of: number): number => (of > 1 ? n / (of - 1) : 0);
  return setParts(
    plan,
    setupId,
    fixtureId,
    parts.map((p, i) => {
      if (which && !which.has(i)) return p;
      const column = i % grid.columns;
      const row = Math.floor(i / grid.columns);
      const t =
        way === 'across' || grid.rows === 1
          ? share(column, grid.columns)
          : way === 'down'
            ? share(row, grid.rows)
            : share(column + row, grid.columns + grid.rows - 1);
      const color =
        from.color !== undefined && to.color !== undefined
          ? mixColors(from.color, to.color, t)
          : (from.color ?? to.color ?? p.color);
      return { levelPct: from.levelPct + (to.levelPct - from.levelPct) * t, color };
    }),
  );
};

/** Copies the parts of one unit to others in the same setup; to those with another number of parts they are spread evenly. */
export const copyParts = (plan: Plan, setupId: Id, fromId: Id, toIds: Iterable<Id>): Result<ChangeSet> => {
  const parts = partsNow(plan, setupId, fromId);
  const draft = new Draft(plan);
  for (const id of toIds) {
    const f = recordOf(plan, 'fixture', id);
    if (!f || id === fromId) continue;
    const count = partCount(plan, f);
    const spread = Array.from({ length: count }, (_, i) => {
      const at =
        count === parts.length
          ? i
          : Math.min(parts.length - 1, Math.floor(((i + 0.5) * parts.length) / count));
      return parts[at] ?? { levelPct: 100 };
    });
    const r = setParts(plan, setupId, id, spread);
    if (!r.ok) return r;
    for (const level of [...r.value.added, ...r.value.updated.map((u) => u.to)]) draft.put(level);
  }
  return ok(draft.changes());
};

/** Takes the levels of parts away: the unit is at their mean as a whole. */
export const clearParts = (plan: Plan, setupId: Id, fixtureIds: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of fixtureIds) {
    const level = recordOf(plan, 'level', levelId(setupId, id));
    if (!level?.parts) continue;
    const { parts: _, ...rest } = level;
    draft.put({ ...rest, levelPct: wholeLevelPct(level) });
  }
  return draft.changes();
};
