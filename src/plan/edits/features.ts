import type { Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf } from '../plan.ts';
import type { Crossing, Feature, FeatureWhat } from '../records/index.ts';

export interface NewFeature {
  readonly floorId: Id;
  readonly what: FeatureWhat;
  readonly shape: 'spot' | 'line' | 'area';
  readonly points: readonly Point[];
  readonly heightMm?: number | undefined;
  readonly voltsV?: number | undefined;
  readonly radiusMm?: number | undefined;
}

const LEAST_POINTS = { spot: 1, line: 2, area: 3 } as const;

/** Adds what is there outdoors, or a way to keep clear. A problem where it has too few points. */
export const addFeature = (
  plan: Plan,
  what: NewFeature,
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly feature: Feature }> => {
  const least = LEAST_POINTS[what.shape];
  const points = what.points.filter((p, i) => {
    const before = what.points[i - 1];
    return !before || Math.hypot(p.xMm - before.xMm, p.yMm - before.yMm) >= 1;
  });
  if (points.length < least)
    return fail({
      what: what.shape === 'area' ? 'An area needs three corners.' : 'A line needs two ends.',
      todo: 'Press where it goes on, or Escape to leave it.',
    });
  const feature: Feature = {
    id: newId('ft'),
    type: 'feature',
    floorId: what.floorId,
    what: what.what,
    points: [...points],
    closed: what.shape === 'area',
    heightMm: what.heightMm ?? 0,
    label: '',
    ...(what.voltsV === undefined ? {} : { voltsV: what.voltsV }),
    ...(what.radiusMm === undefined ? {} : { radiusMm: what.radiusMm }),
  };
  return ok({ changes: new Draft(plan).put(feature).changes(), feature });
};

/** Moves one corner of a feature. */
export const moveFeatureCorner = (plan: Plan, id: Id, index: number, to: Point): ChangeSet => {
  const f = recordOf(plan, 'feature', id);
  if (!f) throw new Error(`no feature ${id}`);
  const points = f.points.map((p, i) => (i === index ? { ...p, xMm: to.xMm, yMm: to.yMm } : p));
  return new Draft(plan).put({ ...f, points }).changes();
};

/** Adds a cable crossing. */
export const addCrossing = (
  plan: Plan,
  what: Pick<Crossing, 'floorId' | 'at' | 'rotationDeg' | 'lengthMm' | 'how' | 'heightMm'>,
  newId: NewId,
): { readonly changes: ChangeSet; readonly crossing: Crossing } => {
  const crossing: Crossing = { id: newId('cx'), type: 'crossing', channels: 5, ...what };
  return { changes: new Draft(plan).put(crossing).changes(), crossing };
};
