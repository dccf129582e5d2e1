import type { EngineFinding } from '../../../derive/findings.ts';
import type { Id } from '../../../kernel/ids.ts';
import { notingReads, stillHolds } from '../../../plan/remembered.ts';
import type { Computed, Judged, PartFindings, PowerResult } from '../types.ts';
import { breakerSizesOdd } from './breaker-size.ts';
import { bypasses } from './bypass.ts';
import { connectorVolts } from './connector-volts.ts';
import { dimmedLamps, dimmedTooLittle, dimmerNeutrals } from './dimmers.ts';
import { sourceRatings } from './generator.ts';
import { inrush } from './inrush.ts';
import { inverterFeeds } from './inverter.ts';
import { closeBreakers, overloads } from './overload.ts';
import { cableChoices, weakerThanBreaker } from './protection.ts';
import { deviceTypes, leakage, wetPlaces } from './residual.ts';
import { sourceState } from './source-state.ts';
import { twoSources } from './two-sources.ts';
import { dropAdvice, highLeg, loadVolts, wrongVolts } from './volts.ts';
import { voltsUnbalance } from './volts-unbalance.ts';

/** Judges what hangs on one source by itself; a rule that looks at more than that is `whole`. */
type Rule =
  | { readonly part: (c: Judged) => readonly EngineFinding[] }
  | { readonly whole: (c: Computed) => readonly EngineFinding[] };

/** All rules, in the order they are told: what is wrong in the plan, overloads, volts, the rest. */
const RULES: readonly Rule[] = [
  { whole: (c) => c.tree.defects },
  { part: sourceState },
  { part: wrongVolts },
  { part: highLeg },
  { part: connectorVolts },
  { part: sourceRatings },
  { part: overloads },
  { part: closeBreakers },
  { part: loadVolts },
  { part: dropAdvice },
  { part: weakerThanBreaker },
  { whole: cableChoices },
  { part: dimmedLamps },
  { part: dimmerNeutrals },
  { whole: twoSources },
  { part: wetPlaces },
  { part: leakage },
  { part: deviceTypes },
  { part: inrush },
  { part: voltsUnbalance },
  { part: dimmedTooLittle },
  { part: breakerSizesOdd },
  { part: inverterFeeds },
  { part: bypasses },
];

/** Findings of a part by rule; nothing where a rule is not one for parts. */
const judge = (c: Judged): readonly (readonly EngineFinding[])[] =>
  RULES.map((r) => ('part' in r ? r.part(c) : []));

const sameLimits = (a: Computed, b: Computed, from: number, to: number): boolean => {
  for (let i = from; i < to; i++) if (a.limits[i] !== b.limits[i]) return false;
  return true;
};

/**
 * All findings of the power engine, rule by rule and in each in the order of the tree. What hangs on a source of which nothing
 * changed since an earlier result, its nodes, limits, figures and all that was asked of the plan for it, is not judged again.
 */
export const powerFindings = (
  c: Computed,
  previous: PowerResult | undefined,
): Pick<PowerResult, 'findings' | 'parts'> => {
  const parts = new Map<Id, PartFindings>();
  const found: (readonly (readonly EngineFinding[])[])[] = [];
  const unfed = (from: number, to: number): void => {
    if (to > from) found.push(judge({ ...c, sources: new Map(), part: c.tree.nodes.slice(from, to), from }));
  };
  let end = 0;
  for (const [id, segment] of c.tree.segments) {
    unfed(end, segment.start);
    const solved = c.sources.get(id);
    const before = previous?.setups === c.setups ? previous.parts.get(id) : undefined;
    const kept =
      before?.segment === segment &&
      before.solved === solved &&
      previous !== undefined &&
      sameLimits(previous, c, segment.start, segment.end) &&
      stillHolds(before.noted, c.plan)
        ? before
        : undefined;
    const own: PartFindings = kept ?? {
      segment,
      solved,
      noted: notingReads(c.plan, (plan) =>
        judge({
          ...c,
          plan,
          sources: new Map(solved ? [[id, solved]] : []),
          part: c.tree.nodes.slice(segment.start, segment.end),
          from: segment.start,
        }),
      ),
    };
    parts.set(id, own);
    found.push(own.noted.value);
    end = segment.end;
  }
  unfed(end, c.tree.nodes.length);
  const findings = RULES.flatMap((r, i) => ('whole' in r ? r.whole(c) : found.flatMap((f) => f[i] ?? [])));
  return { findings, parts };
};
