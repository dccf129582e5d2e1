import { angleDeg, normaliseDeg } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import { poseOf } from './handles.ts';
import { OPTIONS } from './options.ts';
import type { Guide } from './overlay.ts';
import { along } from './snap-targets.ts';

/** How near an angle must be to that of another thing to be made the same. */
const REACH_DEG = 2.5;
/** Things further away than this are no example. */
const NEAR_MM = 12_000;
const ARM_MM = 900;

const apart = (a: number, b: number): number => {
  const d = normaliseDeg(a - b);
  return Math.min(d, 360 - d);
};

/**
 * The angle to turn a thing to by hand: that of another unit, of a wall, or square to them, where it is near one that no
 * round step gives; else the nearest round step. Held off, the nearest whole degree.
 */
export const turnTo = (
  plan: Plan,
  id: Id,
  wantedDeg: number,
  off: boolean,
): { readonly deg: number; readonly guides: readonly Guide[] } => {
  const round = (step: number): number => Math.round(wantedDeg / step) * step;
  if (off) return { deg: round(OPTIONS.rotateSmallDeg), guides: [] };
  const pose = poseOf(plan, id);
  const r = plan.records.get(id);
  const floorId = r && 'floorId' in r ? r.floorId : undefined;
  const step = round(OPTIONS.turnStepDeg);
  let best = { deg: step, guides: [] as readonly Guide[] };
  let least = Math.min(REACH_DEG, apart(step, wantedDeg));
  const offer = (deg: number, guides: () => readonly Guide[]): void => {
    for (const quarter of [0, 90, 180, 270]) {
      const to = deg + quarter;
      const d = apart(to, wantedDeg);
      // A round step that is as good wins: it is the simpler angle.
      if (d >= least - 0.01) continue;
      least = d;
      best = { deg: normaliseDeg(to), guides: guides() };
    }
  };
  if (!pose) return best;
  for (const f of recordsOf(plan, 'fixture')) {
    const other = f.id === id || f.floorId !== floorId ? undefined : poseOf(plan, f.id);
    if (!other) continue;
    const { xMm, yMm } = other.center;
    if (Math.hypot(xMm - pose.center.xMm, yMm - pose.center.yMm) > NEAR_MM) continue;
    offer(other.facingDeg, () => [
      { from: other.center, to: along(other.center, other.facingDeg, ARM_MM) },
      { from: pose.center, to: along(pose.center, other.facingDeg, ARM_MM) },
    ]);
  }
  for (const w of recordsOf(plan, 'wall'))
    if (w.floorId === floorId) offer(angleDeg(w.from, w.to), () => [{ from: w.from, to: w.to }]);
  return best;
};
