import { useMemo } from 'react';
import { formatAmps } from '../../kernel/units.ts';
import { applyChanges, type ChangeSet } from '../../plan/change-set.ts';
import type { Plan } from '../../plan/plan.ts';
import { assess } from '../../report/assess.ts';
import { type SupplySummary, supplySummary } from '../../report/summary.ts';
import type { Assessment, Severity } from '../../report/types.ts';
import { useSettled } from '../hooks.ts';

const LEVELS: readonly Severity[] = ['stop', 'warn', 'note'];

/** What a change that is only offered would bring: findings and the worst current of each leg, as they are and with it. */
export const ChangeEffect = ({
  plan,
  changes,
  assessment,
  setupId,
}: {
  readonly plan: Plan;
  readonly changes: ChangeSet;
  readonly assessment: Assessment | undefined;
  readonly setupId: string | undefined;
}) => {
  const settled = useSettled(changes, 200);
  const after = useMemo(() => applyChanges(plan, settled), [plan, settled]);
  const then = useMemo(() => assess(after, { revision: 0, previous: assessment }), [after, assessment]);
  const now = assessment ?? then;
  const rows = useMemo(
    () => legRows(supplySummary(plan, now, setupId), supplySummary(after, then, setupId)),
    [plan, now, after, then, setupId],
  );
  const count = (a: Assessment, level: Severity): number =>
    a.findings.filter((f) => f.severity === level).length;
  return (
    <section className="change-effect" aria-label="Before and after">
      <p>
        <span className="strong">Findings</span>{' '}
        {LEVELS.map((l) => `${l} ${count(now, l)} → ${count(then, l)}`).join(' · ')}
      </p>
      {rows.map((r) => (
        <p key={r.source}>
          <span className="strong">{r.source}, worst setup</span> {r.words}
        </p>
      ))}
    </section>
  );
};

const legRows = (
  before: SupplySummary,
  after: SupplySummary,
): readonly { readonly source: string; readonly words: string }[] =>
  after.sources.flatMap((s) => {
    const old = before.sources.find((x) => x.id === s.id);
    const wires = (x: typeof s) => [...x.legs, ...(x.legs.length > 1 ? [x.neutral] : [])];
    const words = wires(s).map((m, i) => {
      const was = old ? wires(old)[i]?.worstA : undefined;
      return `${m.name} ${was === undefined ? '–' : formatAmps(was)} → ${formatAmps(m.worstA)}`;
    });
    return words.length > 0 ? [{ source: s.label, words: words.join(' · ') }] : [];
  });
