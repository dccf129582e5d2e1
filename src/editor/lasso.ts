import type { Point } from '../kernel/geometry.ts';
import { boxOf } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { poseOf } from './handles.ts';
import type { Picker } from './picking.ts';

/** Whether a closed loop holds a spot. */
export const loopHolds = (loop: readonly Point[], p: Point): boolean => {
  let inside = false;
  loop.forEach((a, i) => {
    const b = loop[(i + 1) % loop.length] ?? a;
    if (a.yMm > p.yMm === b.yMm > p.yMm) return;
    const x = ((b.xMm - a.xMm) * (p.yMm - a.yMm)) / (b.yMm - a.yMm) + a.xMm;
    if (p.xMm < x) inside = !inside;
  });
  return inside;
};

/** Things whose centre lies in a loop drawn by hand. */
export const insideLoop = (plan: Plan, picker: Picker, loop: readonly Point[]): readonly Id[] =>
  picker.touching(boxOf(loop)).filter((id) => {
    const at = poseOf(plan, id)?.center;
    return at !== undefined && loopHolds(loop, at);
  });
