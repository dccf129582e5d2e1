import { explainCurrents, explainRuntime } from '../engines/battery/index.ts';
import { explainPower } from '../engines/power/index.ts';
import { explainRadio } from '../engines/radio/index.ts';
import { explainRigging } from '../engines/rigging/index.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import type { Plan } from '../plan/plan.ts';
import { explainDay } from './explain-day.ts';
import type { Working } from './types.ts';

/** The arithmetic behind a figure, recomputed from the plan; undefined where the plan has no such figure. */
export const explain = (plan: Plan, key: string): Working | undefined => {
  const r = explainOrWhy(plan, key);
  return r.ok ? r.value : undefined;
};

/** As `explain`, with words that say why there is no working. Keys are made by `figureKey`. */
export const explainOrWhy = (plan: Plan, key: string): Result<Working> => {
  const w = key.startsWith('runtimeMin@')
    ? explainRuntime(plan, key)
    : (explainDay(plan, key) ??
      explainCurrents(plan, key) ??
      explainRadio(plan, key) ??
      explainRigging(plan, key) ??
      explainPower(plan, key));
  return 'why' in w
    ? fail({
        what: w.why,
        where: key,
        todo: `Take a key from the list that “${key.startsWith('day') || key.startsWith('runtime') ? 'day' : 'check'} --json” prints.`,
      })
    : ok(w);
};
