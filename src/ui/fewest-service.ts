import type { Result } from '../kernel/result.ts';
import type { Plan } from '../plan/plan.ts';
import type { Fewest, FewestStep } from '../report/fewest.ts';

/** The search for the fewest packs and bays of a day, away from the screen's own thread. */
export interface FewestService {
  /** Told of each step; stopped by the signal. */
  find(
    plan: Plan,
    day: number,
    tell: (step: FewestStep) => void,
    signal: AbortSignal,
  ): Promise<Result<Fewest>>;
}
