import type { Id } from '../../kernel/ids.ts';
import { formatLength, type LengthUnits } from '../../kernel/units.ts';
import { moveOf } from '../../plan/moves.ts';
import { type Plan, planRecord, recordOf } from '../../plan/plan.ts';
import type { Fixture, Move } from '../../plan/records/index.ts';

const LEAST_MM = 5;
const LEAST_DEG = 1;
const ARROWS = ['→', '↘', '↓', '↙', '←', '↖', '↑', '↗'] as const;

/** How a unit stands in a setup where it stands elsewhere than usual. */
export interface Elsewhere {
  /** `1.25 m ↗`, as on the drawing; `aimed anew` where only that differs. */
  readonly text: string;
  readonly words: string;
}

const heightOf = (plan: Plan, f: Fixture): number | undefined => {
  const stand = f.support.on === 'stand' ? recordOf(plan, 'stand', f.support.standId) : undefined;
  return (stand as { heightMm?: number } | undefined)?.heightMm ?? f.heightMm;
};

/** What is different of a unit's place in a setup; undefined where it stands where it always does. */
export const elsewhereIn = (plan: Plan, setupId: Id, fixtureId: Id): Elsewhere | undefined => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) return undefined;
  const stand = f.support.on === 'stand' ? recordOf(plan, 'stand', f.support.standId) : undefined;
  const own = moveOf(plan, setupId, f.id);
  const carried = stand && moveOf(plan, setupId, stand.id);
  if (!own && !carried) return undefined;
  const units = planRecord(plan).lengthUnits;
  const [from, to] = carried && stand ? [stand.at, carried.at] : [f.at, (own as Move).at];
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const far = Math.hypot(dx, dy);
  const parts: string[] = [];
  if (far >= LEAST_MM)
    parts.push(
      `${formatLength(far, units)} ${ARROWS[Math.round((Math.atan2(dy, dx) * 4) / Math.PI + 8) % 8] ?? ''}`,
    );
  const height = own?.heightMm;
  const usual = heightOf(plan, f);
  if (height !== undefined && usual !== undefined && Math.abs(height - usual) >= LEAST_MM)
    parts.push(upOrDown(height - usual, units));
  if (own && aimsElsewhere(f, own)) parts.push('aimed anew');
  const text = parts.join(', ') || 'a place of its own';
  return { text, words: `In this setup: ${text}${text === 'a place of its own' ? ', as usual so far' : ''}` };
};

const upOrDown = (byMm: number, units: LengthUnits): string =>
  `${formatLength(Math.abs(byMm), units)} ${byMm > 0 ? 'higher' : 'lower'}`;

const aimsElsewhere = (f: Fixture, m: Move): boolean => {
  if (f.aim.at === 'mark') return m.aimMarkId !== f.aim.markId;
  if (m.aimMarkId !== undefined) return true;
  const turned = Math.abs((m.facingDeg ?? f.aim.facingDeg) - f.aim.facingDeg);
  return (
    Math.min(turned, 360 - turned) >= LEAST_DEG ||
    Math.abs((m.tiltDeg ?? f.aim.tiltDeg) - f.aim.tiltDeg) >= LEAST_DEG
  );
};
