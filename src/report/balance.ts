import { recordLabel, wayLabel } from '../derive/labels.ts';
import {
  balanceProblem,
  compareScores,
  computePower,
  type Found,
  improveExactly,
  type PowerResult,
  polish,
  type Score,
  type SourceProblem,
  search,
  tradeOff,
  worstLegBound,
} from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import { type ChangeSet, compose, Draft, noChanges } from '../plan/change-set.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import { autoRoute, placeOf, waysOf } from '../plan/ports.ts';

export type { Score } from '../engines/power/index.ts';

/** One plug to move, on its own a change the plan takes. Two that trade places are taken together or the outlet is shared. */
export interface BalanceMove {
  readonly cableId: Id;
  readonly sourceId: Id;
  /** What moves, like `Unit 7`, and from which way to which. */
  readonly label: string;
  readonly fromLabel: string;
  readonly toLabel: string;
  readonly changes: ChangeSet;
}

export interface BalancedSource {
  readonly sourceId: Id;
  readonly label: string;
  /** Scores at nominal currents, legs as plain sums of rms amps. */
  readonly before: Score;
  readonly after: Score;
  /** No assignment of these plugs has a lower worst leg than this; `gapPct` is how far above it the answer is. */
  readonly boundA: number;
  readonly gapPct: number;
  /** The answer's overloads and worst leg are proved to be the best there is. Only without a cap on moves. */
  readonly proved: boolean;
  /** The best found with at most 0, 1, 2, … moves. */
  readonly trade: readonly Score[];
  readonly basis: BalanceBasis;
}

/** What the scores of a source were reckoned from: where each plug lies, by its position in the problem of `rootKey`. */
export interface BalanceBasis {
  readonly rootKey: string;
  readonly before: Int32Array;
  readonly after: Int32Array;
  readonly trade: readonly Int32Array[];
}

export interface Balanced {
  readonly sources: readonly BalancedSource[];
  readonly moves: readonly BalanceMove[];
  /** All moves as one change. */
  readonly changes: ChangeSet;
}

export interface BalanceOptions {
  /** At most so many plugs are moved. */
  readonly moves?: number | undefined;
  /** Only these sources; all when absent. */
  readonly sourceIds?: readonly Id[] | undefined;
}

/** Rows of the trade-off when no cap is given. */
const TRADE_ROWS = 8;
/** Plugs up to which the exact search is tried. */
const EXACT_PLUGS = 24;

/**
 * Moves plugs between ways for the fewest overloads in any setup, then the least worst leg over all setups, then neutral,
 * then the fewest moves, then cable. Locked cables stay. Sources one by one; a cap on moves is spent where most is over.
 */
export const balanceLegs = (plan: Plan, options: BalanceOptions = {}): Balanced => {
  const power = computePower(plan);
  const problems = [...power.sources.keys()]
    .filter((id) => options.sourceIds === undefined || options.sourceIds.includes(id))
    .flatMap((id) => rootsOf(power, id).flatMap((key) => balanceProblem(power, key) ?? []))
    .filter((p) => p.problem.plugs.length > 0);
  let left = options.moves === undefined ? undefined : Math.max(0, Math.floor(options.moves));
  const sources: BalancedSource[] = [];
  const moves: BalanceMove[] = [];
  for (const p of problems) {
    const solved = balanceSource(p, left);
    if (left !== undefined) left -= solved.found.score.moves;
    sources.push({
      sourceId: p.sourceId,
      label: p.root.label,
      ...solved.row,
    });
    moves.push(...movesOf(plan, p, solved.found));
  }
  return { sources, moves, changes: moves.reduce((all, m) => compose(all, m.changes), noChanges) };
};

/** A source and the outputs of the transformers on it: their legs are balanced each by themselves. */
const rootsOf = (power: PowerResult, sourceId: Id): readonly string[] => [
  sourceId,
  ...power.tree.nodes.filter((n) => n.sourceId === sourceId && n.transformer).map((n) => n.key),
];

const balanceSource = (
  p: SourceProblem,
  cap: number | undefined,
): { readonly found: Found; readonly row: Omit<BalancedSource, 'sourceId' | 'label'> } => {
  const { problem } = p;
  const trade = tradeOff(problem, Math.min(cap ?? TRADE_ROWS, problem.plugs.length));
  const before = trade[0] as Found;
  let best = trade.at(-1) as Found;
  let proved = false;
  if (cap === undefined) {
    let found = search(problem);
    if (problem.plugs.length <= EXACT_PLUGS) {
      const exact = improveExactly(problem, found);
      if (exact.found !== found) found = polish(problem, exact.found.at);
      proved = exact.proved;
    }
    best = [found, ...trade].reduce((a, b) => (compareScores(b.score, a.score) < 0 ? b : a));
  }
  const boundA = proved ? best.score.worstLegA : worstLegBound(problem);
  return {
    found: best,
    row: {
      before: before.score,
      after: best.score,
      boundA,
      gapPct: boundA > 0 ? (100 * (best.score.worstLegA - boundA)) / boundA : 0,
      proved,
      trade: trade.map((t) => t.score),
      basis: {
        rootKey: p.root.key,
        before: before.at,
        after: best.at,
        trade: trade.map((t) => t.at),
      },
    },
  };
};

/** The outlet of a place in a balance, by its way. */
export const slotLabel = (plan: Plan, p: SourceProblem, slot: number): string => {
  const at = p.places[slot];
  if (!at) return '';
  const owner = plan.records.get(at.ref.recordId);
  if (owner?.type === 'outlet') return recordLabel(plan, owner);
  const way = waysOf(plan, at.ref.recordId).find((w) => w.id === at.port.wayId);
  return way
    ? wayLabel(recordLabel(plan, owner), way)
    : [recordLabel(plan, owner), at.port.label ?? at.port.id].join(' ');
};

const movesOf = (plan: Plan, p: SourceProblem, found: Found): readonly BalanceMove[] =>
  p.problem.plugs.flatMap((plug, i) => {
    const to = found.at[i] ?? -1;
    const cable = p.cables[i];
    const place = p.places[to];
    if (to === plug.at || !cable || !place) return [];
    const label = (slot: number): string => slotLabel(plan, p, slot);
    const a = placeOf(plan, place.ref.recordId);
    const b = placeOf(plan, cable.to.recordId);
    const same = place.ref.recordId === cable.from.recordId;
    const route =
      same || !a || !b ? cable.route : { ...cable.route, auto: true, points: [...autoRoute(a.at, b.at)] };
    const current = recordOf(plan, 'cable', cable.id) ?? cable;
    return [
      {
        cableId: cable.id,
        sourceId: p.sourceId,
        label: recordLabel(plan, plan.records.get(cable.to.recordId)),
        fromLabel: label(plug.at),
        toLabel: label(to),
        changes: new Draft(plan)
          .put({ ...current, from: { ...current.from, ...place.ref }, route })
          .changes(),
      },
    ];
  });
