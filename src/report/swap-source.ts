import { systemShape } from '../derive/systems.ts';
import type { Id } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { applyChanges, type ChangeSet, compose, Draft } from '../plan/change-set.ts';
import { replaceChosen } from '../plan/edits/kinds.ts';
import type { SourceKind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import { assess } from './assess.ts';
import { type SourceRow, supplySummary } from './summary.ts';
import { findingText } from './text.ts';
import type { Finding } from './types.ts';

/** A leg, the neutral, or the power of a source with one kind and with the other, each in its worst setup. */
export interface SwapLine {
  readonly name: string;
  readonly unit: 'A' | 'W' | 'VA';
  readonly before: number;
  readonly after: number;
  /** Per cent of what may be used; NaN where no limit is known. */
  readonly beforePct: number;
  readonly afterPct: number;
  /** What may be used; undefined where no limit is known. */
  readonly beforeLimit: number | undefined;
  readonly afterLimit: number | undefined;
  /** Keys of both figures in their worst setups, the second in the plan with the other source. */
  readonly beforeKey: string | undefined;
  readonly afterKey: string | undefined;
}

/** What another kind of source would do. Nothing happens until `changes` are committed. */
export interface SourceSwap {
  readonly title: string;
  readonly changes: ChangeSet;
  /** What no longer fits and stays as it is, in words. */
  readonly unfit: readonly string[];
  readonly lines: readonly SwapLine[];
  /** Stops and warns that come and go, as their head lines with their severity. */
  readonly appear: readonly SwapFinding[];
  readonly go: readonly SwapFinding[];
  /** Loads that lose their feed or are no longer computed. */
  readonly unfed: readonly Id[];
}

export interface SwapFinding {
  readonly severity: Finding['severity'];
  readonly head: string;
}

/**
 * Tries another kind of source in place of one: plugs stay on ports with the same id or place. What was written down of
 * the old one alone (ratings, loop, panel circuits) is dropped; its volts stay where the systems have the same volts.
 * Gives a problem where there is no such source or it has that kind already.
 */
export const swapSource = (plan: Plan, sourceId: Id, kind: SourceKind): Result<SourceSwap> => {
  const source = recordOf(plan, 'source', sourceId);
  if (!source) return fail({ what: 'That source is not in the plan.', todo: 'Choose one of its sources.' });
  const replaced = replaceChosen(plan, new Set([sourceId]), kind);
  if (!replaced.ok) return replaced;
  const between = applyChanges(plan, replaced.value.changes);
  const next = recordOf(between, 'source', sourceId);
  const old = kindOf(plan, source.kindId, 'source');
  if (!next) throw new Error('a replaced source is gone');
  const { ratedKw, ratedKva, mainBreakerA, ratingShare, loopOhm, voltsV, ways, ...bare } = next;
  const sameVolts =
    old !== undefined && systemShape(old.system)?.nominalV === systemShape(kind.system)?.nominalV;
  const panel = kind.ways.length === 0 && ways !== undefined;
  const changes = compose(
    replaced.value.changes,
    new Draft(between)
      .put({
        ...bare,
        ...(sameVolts && voltsV !== undefined ? { voltsV } : {}),
        ...(panel ? { ways } : {}),
      } as typeof next)
      .changes(),
  );
  const after = applyChanges(plan, changes);
  const was = assess(plan, { revision: 0 });
  const is = assess(after, { revision: 0 });
  const words = (p: Plan, f: Finding): SwapFinding => ({
    severity: f.severity,
    head: findingText(p, f).head,
  });
  const grave = (f: Finding): boolean => f.severity !== 'note';
  const had = new Set(was.findings.map((f) => `${f.id}|${f.severity}`));
  const has = new Set(is.findings.map((f) => `${f.id}|${f.severity}`));
  const summaries = [supplySummary(plan, was), supplySummary(after, is)] as const;
  const rows = summaries.map((s) => s.sources.find((r) => r.id === sourceId));
  const computed = new Set(was.entities.filter((e) => e.notComputed === undefined).map((e) => e.key));
  const lost = is.entities.filter((e) => e.notComputed !== undefined && computed.has(e.key));
  const lostIds = new Set(lost.map((e) => e.recordId));
  /** What is not computed any more has not got better. */
  const settled = (f: Finding): boolean =>
    !f.recordIds.some((id) => lostIds.has(id)) && !lost.some((e) => f.id.endsWith(`:${e.key}`));
  return ok({
    title: `${source.label || 'Source'}: ${kind.name} in place of ${old?.name ?? 'what it is'}`,
    changes,
    unfit: replaced.value.unfit,
    lines: linesOf(rows[0], rows[1]),
    appear: is.findings
      .filter((f) => grave(f) && !had.has(`${f.id}|${f.severity}`))
      .map((f) => words(after, f)),
    go: was.findings
      .filter((f) => grave(f) && settled(f) && !has.has(`${f.id}|${f.severity}`))
      .map((f) => words(plan, f)),
    unfed: lost.filter((e) => e.what === 'load').map((e) => e.recordId),
  });
};

/** Key of a figure in another setup than its own. */
const keyInSetup = (key: string, setupId: Id | undefined): string | undefined =>
  setupId === undefined ? undefined : `${key.slice(0, key.lastIndexOf('@'))}@${setupId}`;

const linesOf = (before: SourceRow | undefined, after: SourceRow | undefined): readonly SwapLine[] => {
  const names = [...new Set([...(before?.legs ?? []), ...(after?.legs ?? [])].map((l) => l.name))];
  const amps = (
    name: string,
    a: SourceRow['neutral'] | undefined,
    b: SourceRow['neutral'] | undefined,
  ): SwapLine => ({
    name,
    unit: 'A',
    before: a?.worstA ?? Number.NaN,
    after: b?.worstA ?? Number.NaN,
    beforePct: a?.worstPct ?? Number.NaN,
    afterPct: b?.worstPct ?? Number.NaN,
    beforeLimit: a?.limitA,
    afterLimit: b?.limitA,
    beforeKey: a && keyInSetup(a.figureKey, a.worstSetupId),
    afterKey: b && keyInSetup(b.figureKey, b.worstSetupId),
  });
  const power = (name: string, unit: 'W' | 'VA', pick: 'watts' | 'voltAmps'): SwapLine => ({
    name,
    unit,
    before: before?.[pick].worst ?? Number.NaN,
    after: after?.[pick].worst ?? Number.NaN,
    beforePct: before?.[pick].worstPct ?? Number.NaN,
    afterPct: after?.[pick].worstPct ?? Number.NaN,
    beforeLimit: before?.[pick].gives,
    afterLimit: after?.[pick].gives,
    beforeKey: before && keyInSetup(before[pick].figureKey, before[pick].worstSetupId),
    afterKey: after && keyInSetup(after[pick].figureKey, after[pick].worstSetupId),
  });
  return [
    ...names.map((n) =>
      amps(
        n,
        before?.legs.find((l) => l.name === n),
        after?.legs.find((l) => l.name === n),
      ),
    ),
    amps('N', before?.neutral, after?.neutral),
    power('real power', 'W', 'watts'),
    power('apparent power', 'VA', 'voltAmps'),
  ];
};
