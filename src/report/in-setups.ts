import type { EngineFinding } from '../derive/findings.ts';
import { planInSetup, setupsWithMoves } from '../plan/moves.ts';
import type { Plan } from '../plan/plan.ts';

const RANK = { stop: 0, warn: 1, note: 2 } as const;

const worse = (a: EngineFinding, b: EngineFinding): boolean =>
  RANK[a.severity] < RANK[b.severity] || (a.severity === b.severity && (a.figure ?? 0) > (b.figure ?? 0));

/**
 * Findings of an engine that looks at where things stand, over all setups: once where nothing moves; else for the plan as it
 * stands in each setup, each finding as bad as in its worst one, with the setups it holds in where it does not in all.
 */
export const findingsInSetups = (
  plan: Plan,
  setupIds: readonly string[],
  find: (p: Plan) => readonly EngineFinding[],
): readonly EngineFinding[] => {
  const moved = setupsWithMoves(plan);
  if (moved.size === 0 || setupIds.length === 0) return find(plan);
  const found = new Map<string, { worst: EngineFinding; worstSetup: number; setups: number[] }>();
  setupIds.forEach((id, i) => {
    for (const f of find(planInSetup(plan, id))) {
      const key = `${f.rule}:${f.about}`;
      const known = found.get(key);
      if (!known) found.set(key, { worst: f, worstSetup: i, setups: [i] });
      else {
        known.setups.push(i);
        if (worse(f, known.worst)) {
          known.worst = f;
          known.worstSetup = i;
        }
      }
    }
  });
  return [...found.values()].map(({ worst, worstSetup, setups }) =>
    setups.length === setupIds.length ? worst : { ...worst, setups, worstSetup },
  );
};
