import { Fragment, useMemo } from 'react';
import { formatAmps } from '../../kernel/units.ts';
import { applyChanges, type ChangeSet } from '../../plan/change-set.ts';
import type { Plan } from '../../plan/plan.ts';
import { assess } from '../../report/assess.ts';
import { explain } from '../../report/explain.ts';
import { type Meter, type SupplySummary, supplySummary } from '../../report/summary.ts';
import type { Assessment, Severity, Working } from '../../report/types.ts';
import { useSettled } from '../hooks.ts';
import { Figure, TriedFigure } from './Figure.tsx';
import { worstKey } from './figure-keys.ts';

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
          <span className="strong">{r.source}, worst setup</span>{' '}
          {r.wires.map(({ was, now: meter }, i) => (
            <Fragment key={meter.name}>
              {i > 0 ? ' · ' : ''}
              {meter.name} {was ? <Figure figureKey={worstKey(was)}>{formatAmps(was.worstA)}</Figure> : '–'} →{' '}
              <TriedFigure working={() => withChange(after, meter)}>{formatAmps(meter.worstA)}</TriedFigure>
            </Fragment>
          ))}
        </p>
      ))}
    </section>
  );
};

/** The working of a current with the change made. */
const withChange = (after: Plan, meter: Meter): Working | undefined => {
  const key = worstKey(meter);
  const w = key === undefined ? undefined : explain(after, key);
  return w && { ...w, title: `${w.title}, with the change` };
};

interface LegRow {
  readonly source: string;
  readonly wires: readonly { readonly was: Meter | undefined; readonly now: Meter }[];
}

const legRows = (before: SupplySummary, after: SupplySummary): readonly LegRow[] =>
  after.sources.flatMap((s) => {
    const old = before.sources.find((x) => x.id === s.id);
    const meters = (x: typeof s): readonly Meter[] => [...x.legs, ...(x.legs.length > 1 ? [x.neutral] : [])];
    const wires = meters(s).map((now, i) => ({ was: old && meters(old)[i], now }));
    return wires.length > 0 ? [{ source: s.label, wires }] : [];
  });
