import { recordLabel } from '../derive/labels.ts';
import { legName } from '../derive/systems.ts';
import { BalanceState, balanceProblem, computePower, type SourceProblem } from '../engines/power/index.ts';
import { formatAmps } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { type BalancedSource, slotLabel } from './balance.ts';
import type { Working, WorkingInput } from './types.ts';

/** Which score of a balance: as it is, as offered, or the best with so many re-plugs. */
export type BalanceScore = 'before' | 'after' | number;
export type ScoreFigure = 'worstLegA' | 'neutralA' | 'overloads' | 'moves';

/** A balance with its plugs where one of its scores has them. */
export interface AskedBalance {
  readonly plan: Plan;
  readonly p: SourceProblem;
  readonly state: BalanceState;
  readonly at: Int32Array;
  readonly setup: (s: number) => string;
  readonly leg: (l: number) => string;
}

type Body = Pick<Working, 'title' | 'formula' | 'inputs' | 'steps' | 'result'>;

export const BALANCE_SOURCE =
  'Kirchhoff’s current law; legs as plain sums of rms amps, which is never too kind';

/** The arithmetic behind a score of a balance, from the plugs where that score has them. Undefined where it has none. */
export const explainBalance = (
  plan: Plan,
  source: BalancedSource,
  which: BalanceScore,
  figure: ScoreFigure,
): Working | undefined => {
  const asked = askedOf(plan, source, which);
  if (!asked) return undefined;
  const when =
    which === 'before' ? 'as it is' : which === 'after' ? 'as offered' : `with ${which} re-plugs at most`;
  const w = WORKINGS[figure](asked);
  return {
    ...w,
    key: `${figure} of ${source.basis.rootKey}, ${which}`,
    title: `${w.title} of ${source.label}, ${when}`,
    rule: 'power-balance',
    source: BALANCE_SOURCE,
  };
};

export const line = (name: string, value: string, from: string): WorkingInput => ({
  name,
  value,
  from,
  assumed: false,
});

export const askedOf = (
  plan: Plan,
  source: BalancedSource,
  which: BalanceScore,
): AskedBalance | undefined => {
  const { basis } = source;
  const at = typeof which === 'number' ? basis.trade[which] : basis[which];
  const power = computePower(plan);
  const p = balanceProblem(power, basis.rootKey);
  if (!p || !at || p.problem.plugs.length !== at.length) return undefined;
  const practice = planRecord(plan).practice;
  return {
    plan,
    p,
    at,
    state: new BalanceState(p.problem, at),
    setup: (s) => power.setups[s]?.name ?? '',
    leg: (l) => legName(practice, p.root.system, l),
  };
};

const plugLabel = ({ plan, p }: AskedBalance, i: number): string =>
  recordLabel(plan, plan.records.get(p.cables[i]?.to.recordId ?? ''));

/** Plugs fed through a thing on one of its legs, with their amps in a setup. */
const plugsOn = (
  asked: AskedBalance,
  thing: number,
  leg: number,
  setup: number,
): readonly { readonly i: number; readonly amps: number }[] =>
  asked.p.problem.plugs.flatMap((plug, i) => {
    const slot = asked.p.problem.slots[asked.at[i] ?? -1];
    if (!slot?.chain.includes(thing)) return [];
    const amps = slot.legs
      .slice(0, plug.positions)
      .reduce((sum, l, k) => sum + (l === leg ? (plug.amps[setup * plug.positions + k] ?? 0) : 0), 0);
    return amps > 0 ? [{ i, amps }] : [];
  });

/** The leg and setup in which a thing carries most. */
const mostOf = (
  { state, p }: AskedBalance,
  thing: number,
): { readonly amps: number; readonly leg: number; readonly setup: number } => {
  const { legs, setups } = p.problem;
  let most = { amps: 0, leg: 0, setup: 0 };
  for (let leg = 0; leg < legs; leg++)
    for (let setup = 0; setup < setups; setup++) {
      const amps = state.amps[(thing * legs + leg) * setups + setup] ?? 0;
      if (amps > most.amps) most = { amps, leg, setup };
    }
  return most;
};

/** From so many plugs on, a sum written out says no more than the list above it. */
const LONG_SUM = 9;

const worstLeg = (asked: AskedBalance): Body => {
  const { p, setup, leg } = asked;
  const most = mostOf(asked, 0);
  const fixed = p.problem.fixedA[most.leg * p.problem.setups + most.setup] ?? 0;
  const on = plugsOn(asked, 0, most.leg, most.setup);
  return {
    title: 'Worst leg',
    formula: 'I = Σ of the rms amps on the leg, the most of all legs and setups',
    inputs: [
      line('what does not move', formatAmps(fixed), `leg ${leg(most.leg)}, ${setup(most.setup)}`),
      ...on.map(({ i, amps }) =>
        line(plugLabel(asked, i), formatAmps(amps), slotLabel(asked.plan, p, asked.at[i] ?? -1)),
      ),
    ],
    steps: [
      `the most is on leg ${leg(most.leg)} in ${setup(most.setup)}`,
      on.length < LONG_SUM
        ? `${[fixed, ...on.map((x) => x.amps)].map(formatAmps).join(' + ')} = ${formatAmps(most.amps)}`
        : `the ${on.length + 1} currents above together: ${formatAmps(most.amps)}`,
    ],
    result: formatAmps(most.amps),
  };
};

/** What lies on the neutral in a setup as (re, im): what does not move, then plug by plug. */
const neutralParts = (asked: AskedBalance, s: number): readonly (readonly [re: number, im: number])[] => {
  const { fixedNeutral, plugs, slots, anglesRad } = asked.p.problem;
  return [
    [fixedNeutral[s * 2] ?? 0, fixedNeutral[s * 2 + 1] ?? 0],
    ...plugs.map((plug, i): readonly [number, number] => {
      let [re, im] = [0, 0];
      const legs = slots[asked.at[i] ?? -1]?.legs ?? [];
      for (let k = 0; k < plug.positions && legs.length > 0; k++) {
        const at = (s * plug.positions + k) * 2;
        const [x, y] = [plug.neutral[at] ?? 0, plug.neutral[at + 1] ?? 0];
        const angle = anglesRad[legs[k] ?? 0] ?? 0;
        re += x * Math.cos(angle) - y * Math.sin(angle);
        im += x * Math.sin(angle) + y * Math.cos(angle);
      }
      return [re, im];
    }),
  ];
};

const phasor = ([re, im]: readonly [number, number]): string =>
  `${formatAmps(Math.hypot(re, im))} ∠ ${((Math.atan2(im, re) * 180) / Math.PI).toFixed(0).replace('-', '−')}°`;

const neutral = (asked: AskedBalance): Body => {
  const sums = Array.from({ length: asked.p.problem.setups }, (_, s) => {
    const parts = neutralParts(asked, s);
    const sum = [0, 1].map((k) => parts.reduce((n, x) => n + (x[k] ?? 0), 0));
    return { s, parts, re: sum[0] ?? 0, im: sum[1] ?? 0 };
  });
  const worst = sums.reduce((a, b) => (Math.hypot(b.re, b.im) > Math.hypot(a.re, a.im) ? b : a), {
    s: 0,
    parts: neutralParts(asked, 0),
    re: 0,
    im: 0,
  });
  const amps = formatAmps(Math.hypot(worst.re, worst.im));
  return {
    title: 'Neutral',
    formula: 'I_N = |Σ of the phasors on the neutral|, the most of all setups',
    inputs: worst.parts.flatMap((x, i) =>
      i > 0 && Math.hypot(...x) < 1e-9
        ? []
        : [
            line(
              i === 0 ? 'what does not move' : plugLabel(asked, i - 1),
              phasor(x),
              i === 0 ? asked.setup(worst.s) : slotLabel(asked.plan, asked.p, asked.at[i - 1] ?? -1),
            ),
          ],
    ),
    steps: [
      `the most is in ${asked.setup(worst.s)}`,
      `Σ = ${phasor([worst.re, worst.im])}; third harmonics are not in it`,
    ],
    result: amps,
  };
};

const overloads = (asked: AskedBalance): Body => {
  const { p, setup, leg } = asked;
  const all = p.things.flatMap((thing, t) => {
    const limitA = p.problem.limitA[t] ?? Number.NaN;
    return Number.isNaN(limitA) ? [] : [{ thing, limitA, ...mostOf(asked, t) }];
  });
  const fullest = [...all].sort((x, y) => y.amps / y.limitA - x.amps / x.limitA);
  // All that are over, and the next one, so that a reader sees where it ends.
  const shown = fullest.slice(0, asked.state.overloads + 1);
  return {
    title: 'Overloads',
    formula: 'things whose worst leg passes its limit in any setup',
    inputs: shown.map((x) =>
      line(
        x.thing.label,
        `${formatAmps(x.amps)} of ${formatAmps(x.limitA)}`,
        `leg ${leg(x.leg)}, ${setup(x.setup)}; limit by the rules of the plan`,
      ),
    ),
    steps: [`${all.length} things with a limit, the fullest first: ${asked.state.overloads} over it`],
    result: `${asked.state.overloads}`,
  };
};

const moves = (asked: AskedBalance): Body => {
  const { plan, p, at } = asked;
  const moved = p.problem.plugs.flatMap((plug, i) => (at[i] === plug.at ? [] : [{ plug, i }]));
  return {
    title: 'Re-plugs',
    formula: 'plugs that lie elsewhere than they do now',
    inputs: moved.map(({ plug, i }) =>
      line(
        plugLabel(asked, i),
        slotLabel(plan, p, at[i] ?? -1),
        `now ${slotLabel(plan, p, plug.at) || 'not plugged'}`,
      ),
    ),
    steps: [`${moved.length} of ${p.problem.plugs.length} plugs that may move`],
    result: `${asked.state.moves}`,
  };
};

const WORKINGS: Readonly<Record<ScoreFigure, (asked: AskedBalance) => Body>> = {
  worstLegA: worstLeg,
  neutralA: neutral,
  overloads,
  moves,
};
