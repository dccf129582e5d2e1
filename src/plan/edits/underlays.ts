import { add, distanceMm, type Point, point, rotate, scale, sub } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { blobSize, roomForBlob } from '../blobs.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Blob, Underlay } from '../records/index.ts';
import { dropStrayBlobs } from './blobs.ts';

/** What an underlay shows: a picture or line work, with its size in its own units (pixels, or units of a drawing). */
export interface UnderlaySource {
  readonly name: string;
  readonly what: Underlay['what'];
  readonly blob: Blob;
  readonly widthUnits: number;
  readonly heightUnits: number;
  /** Size of a unit on the floor where the file says it; else it is a guess until someone scales it. */
  readonly mmPerUnit?: number | undefined;
}

/** Putting things to the front or back may leave a record without a number. */
const orderOf = (u: { readonly order?: number | undefined }): number => u.order ?? 0;

/** Underlays of a floor, the lowest first. */
export const underlaysOn = (plan: Plan, floorId: Id | undefined): readonly Underlay[] =>
  recordsOf(plan, 'underlay')
    .filter((u) => u.floorId === floorId)
    .sort((a, b) => orderOf(a) - orderOf(b));

/** The spot of the floor under a spot of an underlay, given in its units. */
export const underlayPoint = (u: Underlay, x: number, y: number): Point =>
  add(u.at, rotate(scale(point(x, y), u.mmPerUnit), u.rotationDeg));

/** The four corners of an underlay on the floor, from its upper left one clockwise. */
export const underlayCorners = (u: Underlay): readonly [Point, Point, Point, Point] => [
  u.at,
  underlayPoint(u, u.widthUnits, 0),
  underlayPoint(u, u.widthUnits, u.heightUnits),
  underlayPoint(u, 0, u.heightUnits),
];

export const underlayCentre = (u: Underlay): Point => underlayPoint(u, u.widthUnits / 2, u.heightUnits / 2);

/** Whether a spot of the floor is on an underlay. */
export const isOnUnderlay = (u: Underlay, at: Point): boolean => {
  const own = scale(rotate(sub(at, u.at), -u.rotationDeg), 1 / u.mmPerUnit);
  return own.xMm >= 0 && own.yMm >= 0 && own.xMm <= u.widthUnits && own.yMm <= u.heightUnits;
};

/** Lays something under a floor with its middle at `centre`; above the underlays that are there already. */
export const addUnderlay = (
  plan: Plan,
  what: {
    readonly source: UnderlaySource;
    readonly floorId: Id;
    readonly centre: Point;
    /** Width on the floor where the file does not say how large it is. */
    readonly guessWidthMm: number;
  },
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly underlay: Underlay }> => {
  const { source } = what;
  if (!(source.widthUnits > 0 && source.heightUnits > 0))
    return fail({ what: `${source.name} has no size.`, todo: 'Choose another file.' });
  if (!recordOf(plan, 'blob', source.blob.id)) {
    const room = roomForBlob(plan, blobSize(source.blob));
    if (!room.ok) return room;
  }
  const mmPerUnit = source.mmPerUnit ?? what.guessWidthMm / source.widthUnits;
  const half = point((source.widthUnits * mmPerUnit) / 2, (source.heightUnits * mmPerUnit) / 2);
  const underlay: Underlay = {
    id: newId('ul'),
    type: 'underlay',
    floorId: what.floorId,
    name: source.name,
    what: source.what,
    blobId: source.blob.id,
    at: sub(what.centre, half),
    rotationDeg: 0,
    mmPerUnit,
    scaled: source.mmPerUnit !== undefined,
    widthUnits: source.widthUnits,
    heightUnits: source.heightUnits,
    fadePct: source.what === 'image' ? 50 : 25,
    // Line work is architecture: it stays where it is until someone unlocks it.
    ...(source.what === 'lines' ? { locked: true } : {}),
    order: Math.max(0, ...underlaysOn(plan, what.floorId).map(orderOf)) + 1,
  };
  const draft = new Draft(plan);
  if (!recordOf(plan, 'blob', source.blob.id)) draft.put(source.blob);
  return ok({ changes: draft.put(underlay).changes(), underlay });
};

/** Two spots nearer than this are one: no scale can be told from them. */
const LEAST_MM = 1e-6;

/**
 * Scales an underlay so that the stretch between two spots of the floor becomes `lengthMm` long. What lies under the
 * first spot stays there.
 */
export const scaleUnderlay = (
  plan: Plan,
  id: Id,
  a: Point,
  b: Point,
  lengthMm: number,
): Result<ChangeSet> => {
  const u = recordOf(plan, 'underlay', id);
  if (!u) throw new Error(`no underlay ${id}`);
  const now = distanceMm(a, b);
  if (now < LEAST_MM)
    return fail({ what: 'Both spots are the same.', todo: 'Press on two spots whose distance you know.' });
  if (!(lengthMm > 0))
    return fail({ what: 'A known length is more than nothing.', todo: 'Write it like 12\' 6" or 3.8.' });
  const k = lengthMm / now;
  const next: Underlay = {
    ...u,
    mmPerUnit: u.mmPerUnit * k,
    at: add(a, scale(sub(u.at, a), k)),
    scaled: true,
  };
  return ok(new Draft(plan).put(next).changes());
};

/** Turns an underlay to an angle, about its middle. */
export const turnUnderlay = (plan: Plan, id: Id, rotationDeg: number): ChangeSet => {
  const u = recordOf(plan, 'underlay', id);
  if (!u) throw new Error(`no underlay ${id}`);
  return new Draft(plan).put(turned(u, rotationDeg)).changes();
};

/** An underlay at another angle, its middle where it was. */
export const turned = (u: Underlay, rotationDeg: number): Underlay => {
  const centre = underlayCentre(u);
  const half = scale(point(u.widthUnits / 2, u.heightUnits / 2), u.mmPerUnit);
  return { ...u, rotationDeg, at: sub(centre, rotate(half, rotationDeg)) };
};

/** Puts another picture or drawing in place of an underlay's: it covers the same width of floor at the same angle. */
export const replaceUnderlay = (plan: Plan, id: Id, source: UnderlaySource): Result<ChangeSet> => {
  const u = recordOf(plan, 'underlay', id);
  if (!u) throw new Error(`no underlay ${id}`);
  const draft = new Draft(plan);
  if (!recordOf(plan, 'blob', source.blob.id)) {
    const room = roomForBlob(plan, blobSize(source.blob));
    if (!room.ok) return room;
    draft.put(source.blob);
  }
  draft.put({
    ...u,
    name: source.name,
    what: source.what,
    blobId: source.blob.id,
    mmPerUnit: source.mmPerUnit ?? (u.mmPerUnit * u.widthUnits) / source.widthUnits,
    scaled: source.mmPerUnit !== undefined || u.scaled,
    widthUnits: source.widthUnits,
    heightUnits: source.heightUnits,
  });
  dropStrayBlobs(draft, plan, [id]);
  return ok(draft.changes());
};

/** Moves an underlay one place up or down among those of its floor. */
export const restackUnderlay = (plan: Plan, id: Id, by: 1 | -1): ChangeSet => {
  const u = recordOf(plan, 'underlay', id);
  if (!u) throw new Error(`no underlay ${id}`);
  const all = [...underlaysOn(plan, u.floorId)];
  const i = all.findIndex((x) => x.id === id);
  const other = all[i + by];
  if (!other) return new Draft(plan).changes();
  all[i] = other;
  all[i + by] = u;
  const draft = new Draft(plan);
  all.forEach((x, k) => {
    if (x.order !== k + 1) draft.put({ ...x, order: k + 1 });
  });
  return draft.changes();
};
