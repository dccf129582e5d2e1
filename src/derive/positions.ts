import { type Point, rotate, sub } from '../kernel/geometry.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { fixturePlace, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { Fixture, SetPiece } from '../plan/records/index.ts';
import { recordLabel } from './labels.ts';

/** Where on the set a unit is, in words, for walking from place to place. */
export interface Position {
  readonly key: string;
  readonly name: string;
}

const insidePolygon = (points: readonly Point[], p: Point): boolean => {
  let inside = false;
  points.forEach((a, i) => {
    const b = points[(i + points.length - 1) % points.length] ?? a;
    const crosses = a.yMm > p.yMm !== b.yMm > p.yMm;
    if (crosses && p.xMm < ((b.xMm - a.xMm) * (p.yMm - a.yMm)) / (b.yMm - a.yMm) + a.xMm) inside = !inside;
  });
  return inside;
};

/** Area a set piece covers in mm², and whether a spot lies on it. */
const onPiece = (s: SetPiece, at: Point): { readonly on: boolean; readonly areaMm2: number } => {
  const local = rotate(sub(at, s.at), -s.rotationDeg);
  const o = s.outline;
  if (o.shape === 'polygon') {
    const area = o.points.reduce((sum, a, i) => {
      const b = o.points[(i + 1) % o.points.length] ?? a;
      return sum + a.xMm * b.yMm - b.xMm * a.yMm;
    }, 0);
    return { on: insidePolygon(o.points, local), areaMm2: Math.abs(area) / 2 };
  }
  const [x, y] = [Math.abs(local.xMm) / (o.lengthMm / 2), Math.abs(local.yMm) / (o.widthMm / 2)];
  const on = o.shape === 'ellipse' ? Math.hypot(x, y) <= 1 : x <= 1 && y <= 1;
  return { on, areaMm2: o.lengthMm * o.widthMm };
};

/**
 * The position of a unit: the pipe, truss or lift it hangs on, else the smallest named piece of the set it is on or over,
 * else whether it hangs or stands. Floors are told apart where there are several.
 */
export const positionOf = (plan: Plan, f: Fixture): Position => {
  const floors = recordsOf(plan, 'floor');
  const floor = floors.length > 1 ? `${recordOf(plan, 'floor', f.floorId)?.name ?? ''}: ` : '';
  const of = (key: string, name: string): Position => ({
    key: `${f.floorId}/${key}`,
    name: `${floor}${name}`,
  });
  const hangsOn = f.support.on === 'rigged' ? f.support.riggingId : undefined;
  const rig = hangsOn === undefined ? undefined : recordOf(plan, 'rigging', hangsOn);
  if (rig) return of(rig.id, recordLabel(plan, rig));
  const { at } = fixturePlace(plan, f);
  let best: { readonly piece: SetPiece; readonly areaMm2: number } | undefined;
  for (const s of recordsOf(plan, 'setPiece')) {
    if (s.floorId !== f.floorId || s.label === '') continue;
    const { on, areaMm2 } = onPiece(s, at);
    if (on && (!best || areaMm2 < best.areaMm2)) best = { piece: s, areaMm2 };
  }
  if (best) return of(best.piece.id, best.piece.label);
  return f.support.on === 'rigged' ? of('rigged', 'Rigged') : of('floor', 'On stands and floor');
};

/** Units grouped by where they are. Groups come in the order of their first unit, units in the order given. */
export const byPosition = (
  plan: Plan,
  fixtures: readonly Fixture[],
): readonly { readonly position: Position; readonly fixtures: readonly Fixture[] }[] => {
  const groups = new Map<Id, { position: Position; fixtures: Fixture[] }>();
  for (const f of fixtures) {
    const position = positionOf(plan, f);
    const known = groups.get(position.key);
    if (known) known.fixtures.push(f);
    else groups.set(position.key, { position, fixtures: [f] });
  }
  return [...groups.values()];
};

/** Positions of units by name, each once, as people count. */
export const positionNames = (plan: Plan, fixtures: readonly Fixture[]): readonly Position[] => {
  const seen = new Map(fixtures.map((f) => [positionOf(plan, f).key, positionOf(plan, f)]));
  return [...seen.values()].sort((a, b) => compareNatural(a.name, b.name));
};
