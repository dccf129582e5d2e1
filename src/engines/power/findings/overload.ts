import type { EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { legName } from '../../../derive/systems.ts';
import type { Quantity } from '../../../derive/types.ts';
import { planRecord } from '../../../plan/plan.ts';
import { neutralCurrents } from '../harmonics.ts';
import type { Judged } from '../types.ts';
import { figureAt, inSetups, mostOver, passing, ROUNDING } from './context.ts';

const LEG_QUANTITIES: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

/** Rule id by what sets a limit. */
const RULES: Readonly<Record<string, string>> = {
  breaker: 'power-breaker',
  'main-breaker': 'power-main-breaker',
  connector: 'power-connector',
  outlet: 'power-outlet',
  cable: 'power-cable',
  generator: 'power-generator-leg',
  transformer: 'power-transformer',
  dimmer: 'power-dimmer',
  adapter: 'power-adapter',
  inverter: 'power-inverter-over',
};

/** An inlet behind a cable that is over by the same or a lower limit is not reported again: the cable's socket sits on it. */
const saidByCable = (c: Judged, n: SupplyNode, amps: number): boolean => {
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

/** Third-harmonic amps in the neutral of a node; 0 where none is known. */
const thirdA = (c: Judged, n: SupplyNode, setup: number): number => {
  const source = c.sources.get(n.sourceId ?? '');
  const run = source?.setups[setup];
  if (!source || !run) return 0;
  const local = source.model.nodeOf.indexOf(n.index);
  return neutralCurrents(source.model, run.sweep, run.wattsW, run.varsVar)?.third[local] ?? 0;
};

/** Breakers that carry most of what they may, and still within it. */
export const closeBreakers = (c: Judged): readonly EngineFinding[] => {
  const from = limitOf(c.plan, 'breaker-close').value;
  return c.part.flatMap((n) => {
    const limit = c.limits[n.index]?.leg;
    if (!limit || (limit.setBy !== 'breaker' && limit.setBy !== 'main-breaker')) return [];
    // The use counts the neutral as well, so it is never below the legs' own.
    if (mostOver(c, n, 'usePct') < from * (1 - 3 * ROUNDING)) return [];
    const share = (s: number): number =>
      (100 * Math.max(...n.legs.map((l) => figureAt(c, n, LEG_QUANTITIES[l] ?? 'leg0A', s)))) / limit.limitA;
    const hit = passing(c.setups.length, share, from * (1 - 2 * ROUNDING));
    if (!hit || hit.value > 100 * (1 + ROUNDING)) return [];
    const leg = n.legs.reduce((a, b) => {
      const [x, y] = [a, b].map((l) => figureAt(c, n, LEG_QUANTITIES[l] ?? 'leg0A', hit.worst));
      return (y ?? 0) > (x ?? 0) ? b : a;
    }, n.legs[0] ?? 0);
    const { limitA, ratingA, setBy, rule } = limit;
    return [
      inSetups(c, 'power-close', 'note', n, hit, LEG_QUANTITIES[leg], hit.value, {
        amps: (hit.value * limitA) / 100,
        limitA,
        ratingA,
        setBy,
        limitRow: rule,
        leg: legName(planRecord(c.plan).practice, n.system, leg),
        legs: n.legs.length,
        pct: hit.value,
      }),
    ];
  });
};

/** Legs and neutrals that carry more than their limit. One finding per thing, on its worst leg. */
export const overloads = (c: Judged): readonly EngineFinding[] => {
  const practice = planRecord(c.plan).practice;
  const out: EngineFinding[] = [];
  for (const n of c.part) {
    const limit = c.limits[n.index];
    if (!(mostOver(c, n, 'usePct') > 100 * (1 + ROUNDING))) continue;
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
              ...(setBy === 'breaker' ? { curve: n.way?.curve ?? '' } : {}),
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
            thirdA: thirdA(c, n, hit.worst),
            pct: (100 * hit.value) / limitA,
          }),
        );
    }
  }
  return out;
};
