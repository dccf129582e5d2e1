import type { EngineFinding } from '../../../derive/findings.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { legName } from '../../../derive/systems.ts';
import type { Quantity } from '../../../derive/types.ts';
import { planRecord } from '../../../plan/plan.ts';
import type { Computed } from '../types.ts';
import { figureAt, inSetups, passing } from './context.ts';

const LEG_QUANTITIES: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

/** Rule id by what sets a limit. */
const RULES: Readonly<Record<string, string>> = {
  breaker: 'power-breaker',
  'main-breaker': 'power-main-breaker',
  connector: 'power-connector',
  outlet: 'power-outlet',
  cable: 'power-cable',
  generator: 'power-generator-leg',
};

/** An inlet behind a cable that is over by the same or a lower limit is not reported again: the cable's socket sits on it. */
const saidByCable = (c: Computed, n: SupplyNode, amps: number): boolean => {
  const up = c.tree.nodes[n.parent];
  if (up?.what !== 'cable' || (n.what !== 'load' && n.what !== 'box')) return false;
  const above = c.limits[up.index]?.leg;
  const own = c.limits[n.index]?.leg;
  return (
    above !== undefined &&
    own !== undefined &&
    own.setBy === 'connector' &&
    above.limitA <= own.limitA &&
    amps > above.limitA
  );
};

/** Legs and neutrals that carry more than their limit. One finding per thing, on its worst leg. */
export const overloads = (c: Computed): readonly EngineFinding[] => {
  const practice = planRecord(c.plan).practice;
  const out: EngineFinding[] = [];
  c.tree.nodes.forEach((n, i) => {
    const limit = c.limits[i];
    if (!passing(c.setups.length, (s) => figureAt(c, n, 'usePct', s), 100)) return;
    if (limit?.leg) {
      const { limitA, ratingA, setBy, rule } = limit.leg;
      const legOf = (s: number): number =>
        n.legs.reduce((a, b) => {
          const [x, y] = [a, b].map((l) => figureAt(c, n, LEG_QUANTITIES[l] ?? 'leg0A', s));
          return (y ?? 0) > (x ?? 0) ? b : a;
        }, n.legs[0] ?? 0);
      const most = (s: number): number => figureAt(c, n, LEG_QUANTITIES[legOf(s)] ?? 'leg0A', s);
      const hit = passing(c.setups.length, most, limitA);
      if (hit && !saidByCable(c, n, hit.value)) {
        const leg = legOf(hit.worst);
        out.push(
          inSetups(
            c,
            RULES[setBy] ?? 'power-breaker',
            'stop',
            n,
            hit,
            LEG_QUANTITIES[leg],
            (100 * hit.value) / limitA,
            {
              amps: hit.value,
              limitA,
              ratingA,
              setBy,
              limitRow: rule,
              leg: legName(practice, n.system, leg),
              legs: n.legs.length,
              pct: (100 * hit.value) / limitA,
            },
          ),
        );
      }
    }
    if (limit?.neutral) {
      const { limitA, ratingA, setBy, rule } = limit.neutral;
      const hit = passing(c.setups.length, (s) => figureAt(c, n, 'neutralA', s), limitA);
      // With one leg the neutral carries the leg's own current, which is judged there.
      if (hit && n.legs.length > 1)
        out.push(
          inSetups(c, 'power-neutral', 'stop', n, hit, 'neutralA', (100 * hit.value) / limitA, {
            amps: hit.value,
            limitA,
            ratingA,
            setBy,
            limitRow: rule,
            pct: (100 * hit.value) / limitA,
          }),
        );
    }
  });
  return out;
};
