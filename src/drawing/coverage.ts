import type { Id } from '../kernel/ids.ts';
import type { CoverageGrid, SpotChoice } from '../report/radio.ts';
import { contourRings, type Ring, simplerRing } from './contours.ts';
import type { DisplayItem, Fill, PathCommand, Primitive } from './display-list.ts';
import { scaleColor } from './scale-color.ts';

/** Margins at which the picture changes its tone, dB; below the first it has none. */
export const COVERAGE_STEPS_DB: readonly number[] = [0, 5, 10, 15, 20, 30, 40];

/** Lines that part the four steps of the verdict. */
const LINES_DB: readonly number[] = [0, 10, 20];
const OPACITY = 0.5;

/** One tone of the picture with the margins it stands for. */
export interface CoverageTone {
  readonly fromDb: number;
  /** Undefined for the last tone. */
  readonly toDb: number | undefined;
  /** Its place on the scale from dark to light. */
  readonly scale: number;
  readonly opacity: number;
}

/** A tone on white as one solid colour: what paper prints and what lies over it stays readable. */
export const toneOnWhite = (t: CoverageTone): string => {
  const hex = scaleColor(t.scale);
  const part = (i: number): string =>
    Math.round(255 + (Number.parseInt(hex.slice(i, i + 2), 16) - 255) * t.opacity)
      .toString(16)
      .padStart(2, '0');
  return `#${part(1)}${part(3)}${part(5)}`;
};

/** The tones of a coverage picture, the least margin first: for the picture and its legend alike. */
export const coverageTones = (): readonly CoverageTone[] =>
  COVERAGE_STEPS_DB.map((fromDb, i) => ({
    fromDb,
    toDb: COVERAGE_STEPS_DB[i + 1],
    scale: i / (COVERAGE_STEPS_DB.length - 1),
    opacity: OPACITY,
  }));

/** A grid as it is drawn over the floor. */
type Grid = Pick<CoverageGrid, 'originXMm' | 'originYMm' | 'stepMm' | 'columns' | 'rows' | 'marginDb'>;

const pathOf = (grid: Grid, rings: readonly Ring[], backwards: boolean): PathCommand[] =>
  rings.flatMap((ring): PathCommand[] => {
    const points = backwards ? [...ring].reverse() : ring;
    return [
      ...points.map(([x, y], i): PathCommand => {
        const xMm = Math.round(grid.originXMm + x * grid.stepMm);
        const yMm = Math.round(grid.originYMm + y * grid.stepMm);
        return [i === 0 ? 'M' : 'L', xMm, yMm];
      }),
      ['Z'],
    ];
  });

/** The lines of rings as open runs, without what lies along the rim of the grid. */
const linesOf = (grid: Grid, rings: readonly Ring[]): PathCommand[] => {
  const rim = ([x, y]: readonly [number, number]): boolean =>
    x <= 0 || y <= 0 || x >= grid.columns - 1 || y >= grid.rows - 1;
  return rings.flatMap((ring): PathCommand[] => {
    return [...ring, ring[0] ?? [0, 0]].flatMap((p, i): PathCommand[] => {
      const before = ring[i - 1];
      const xMm = Math.round(grid.originXMm + p[0] * grid.stepMm);
      const yMm = Math.round(grid.originYMm + p[1] * grid.stepMm);
      const pen = before !== undefined && !(rim(before) && rim(p));
      return [[pen ? 'L' : 'M', xMm, yMm]];
    });
  });
};

const ringLength = (r: Ring): number =>
  r.reduce((sum, [x, y], i) => {
    const [px, py] = r[(i + r.length - 1) % r.length] ?? [x, y];
    return sum + Math.hypot(x - px, y - py);
  }, 0);

/** Where a line is written on: the highest point of its longest ring inside the grid, so that texts of several keep apart. */
const labelPlace = (
  grid: Grid,
  rings: readonly Ring[],
  turn: number,
): readonly [number, number] | undefined => {
  const longest = rings.reduce<Ring | undefined>(
    (a, r) => (a && ringLength(a) >= ringLength(r) ? a : r),
    undefined,
  );
  const angle = (turn * 2 * Math.PI) / 3 - Math.PI / 2;
  const inside = longest?.filter(
    ([x, y]) => x > 0.5 && y > 0.5 && x < grid.columns - 1.5 && y < grid.rows - 1.5,
  );
  return inside?.reduce<readonly [number, number] | undefined>((best, p) => {
    const score = (q: readonly [number, number]): number => q[0] * Math.cos(angle) + q[1] * Math.sin(angle);
    return best && score(best) >= score(p) ? best : p;
  }, undefined);
};

/**
 * A coverage picture as items of the `coverage` layer: filled contours by tone, and lines at 0, 10 and 20 dB with their
 * figure. `toleranceMm` is how far an outline may lie beside the true one. Tones shine through on a screen and are
 * solid on white paper.
 */
export const coverageItems = (
  grid: CoverageGrid,
  toleranceMm: number,
  on: 'screen' | 'white' = 'screen',
): readonly DisplayItem[] => {
  const { columns, rows, stepMm } = grid;
  const box = {
    minX: grid.originXMm,
    minY: grid.originYMm,
    maxX: grid.originXMm + (columns - 1) * stepMm,
    maxY: grid.originYMm + (rows - 1) * stepMm,
  };
  const recordId: Id = grid.senderIds[0] ?? grid.floorId;
  const ringsAt = new Map<number, readonly Ring[]>();
  for (const db of COVERAGE_STEPS_DB)
    ringsAt.set(
      db,
      contourRings(grid.marginDb, columns, rows, db)
        .map((r) => simplerRing(r, toleranceMm / stepMm))
        .filter((r) => r.length > 2),
    );
  const tones = coverageTones().flatMap((tone): DisplayItem[] => {
    const own = pathOf(grid, ringsAt.get(tone.fromDb) ?? [], false);
    if (own.length === 0) return [];
    const next = tone.toDb === undefined ? [] : pathOf(grid, ringsAt.get(tone.toDb) ?? [], true);
    const fill: Fill =
      on === 'white'
        ? { role: 'ink-faint', color: toneOnWhite(tone) }
        : { role: 'ink-faint', opacity: tone.opacity, scale: tone.scale };
    const prims: Primitive[] = [{ kind: 'path', d: [...own, ...next], fill }];
    return [{ key: `coverage:${tone.fromDb}`, recordId, layer: 'coverage', primitives: prims, box }];
  });
  const lines = LINES_DB.flatMap((db, i): DisplayItem[] => {
    const rings = ringsAt.get(db) ?? [];
    if (rings.length === 0) return [];
    const at = labelPlace(grid, rings, i);
    const prims: Primitive[] = [
      {
        kind: 'path',
        d: linesOf(grid, rings),
        stroke: { role: 'ink-soft', weightMm: 0.18, ...(db === 0 ? { dashMm: [1.5, 1] } : {}) },
      },
    ];
    if (at)
      prims.push({
        kind: 'text',
        xMm: grid.originXMm + at[0] * stepMm,
        yMm: grid.originYMm + at[1] * stepMm,
        dxPaperMm: 0.6,
        dyPaperMm: -0.6,
        text: `${db} dB`,
        capMm: 1.8,
        weight: 'semibold',
        align: 'left',
        role: 'ink',
      });
    return [{ key: `coverage-line:${db}`, recordId, layer: 'coverage', primitives: prims, box }];
  });
  return [...tones, ...lines];
};

/** Places found for transmitters: 1 the best, then the runners-up; the two of a pair share a number. */
export const spotItems = (
  floorId: Id,
  choices: readonly SpotChoice[],
  nominalScale: number,
): readonly DisplayItem[] =>
  choices
    .flatMap((c, i) =>
      c.places.map((p, k): DisplayItem => {
        const r = 2.6 * nominalScale;
        return {
          key: `spot:${i}:${k}`,
          recordId: floorId,
          layer: 'notes',
          box: { minX: p.xMm - r, minY: p.yMm - r, maxX: p.xMm + r, maxY: p.yMm + r },
          primitives: [
            {
              kind: 'circle',
              xMm: p.xMm,
              yMm: p.yMm,
              rMm: i === 0 ? 2.6 : 2.1,
              space: 'paper',
              fill: { role: i === 0 ? 'accent' : 'paper' },
              stroke: { role: 'accent', weightMm: 0.35 },
            },
            {
              kind: 'text',
              xMm: p.xMm,
              yMm: p.yMm,
              dxPaperMm: 0,
              dyPaperMm: 0.9,
              text: String(i + 1),
              capMm: 1.8,
              weight: 'semibold',
              align: 'center',
              role: i === 0 ? 'paper' : 'ink',
            },
          ],
        };
      }),
    )
    // The best lies on top where places meet.
    .reverse();
