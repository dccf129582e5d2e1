import { useMemo, useState } from 'react';
import { issuedPlan, issueState, issuesOf } from '../../plan/edits/issue.ts';
import type { Plan } from '../../plan/plan.ts';
import { planChanges } from '../../report/changes.ts';
import { useSessionSlice } from '../hooks.ts';
import { useUi } from '../ui-state.ts';
import { ChangesList, ONLY_SHEETS } from './ChangesList.tsx';

/** Two states of a plan that are compared, with what they are called. */
export interface Compared {
  readonly from: string;
  readonly to: string;
  readonly before: Plan;
  readonly after: Plan;
  /** The second one is the plan as it is at work: it goes on as the plan does. */
  readonly now?: boolean;
}

/** A comparison with the plan as it is at work, brought up to it; undefined where its issue was undone meanwhile. */
export const broughtUp = (c: Compared, plan: Plan): Compared | undefined => {
  const there = (revision: string): boolean => issuesOf(plan).some((i) => i.revision === revision);
  if (!there(c.from) || !(c.now || there(c.to))) return undefined;
  if (!c.now) return c;
  const { draft, revision } = issueState(plan);
  return { ...c, to: draft ? revision : `${revision}, as it is now`, after: plan };
};

const NOW = '';

/** The issues of the plan, what changed since the last one, and any two of them compared. */
export const IssuesTab = ({ show }: { readonly show: (c: Compared) => void }) => {
  const open = useUi((u) => u.open);
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const state = useMemo(() => issueState(plan), [plan]);
  const issues = issuesOf(plan);
  const kept = issues.filter((i) => i.snapshotId !== undefined);
  const [from, setFrom] = useState<string>();
  const [to, setTo] = useState(NOW);
  const since = kept.find((i) => i.id === from) ?? kept.at(-1);
  const until = kept.find((i) => i.id === to);
  const compared = useMemo((): Compared | string | undefined => {
    if (!since) return undefined;
    const before = issuedPlan(plan, since);
    if (!before.ok) return `${before.error.what} ${before.error.todo}`;
    if (!until)
      return broughtUp({ from: since.revision, to: '', before: before.value, after: plan, now: true }, plan);
    const after = issuedPlan(plan, until);
    if (!after.ok) return `${after.error.what} ${after.error.todo}`;
    return { from: since.revision, to: until.revision, before: before.value, after: after.value };
  }, [plan, since, until]);
  const changes = useMemo(
    () => (compared && typeof compared !== 'string' ? planChanges(compared.before, compared.after) : []),
    [compared],
  );
  return (
    <>
      <h3 className="inspector-head">Issues</h3>
      {issues.length === 0 ? (
        <p className="soft">
          Not issued yet. “Issue papers” gives revision A and keeps the plan as it is now.
        </p>
      ) : (
        <ul className="papers-notices">
          {issues.map((i) => (
            <li key={i.id}>
              <span className="strong">{i.revision}</span> {i.date} {i.note}{' '}
              {i.by ? <span className="soft">by {i.by}</span> : null}
            </li>
          ))}
        </ul>
      )}
      <p className="soft small">
        {!state.last
          ? ''
          : state.draft
            ? `The plan has changed since ${state.last.revision}; what prints now is a draft of ${state.revision}.`
            : `The plan is as it was issued in ${state.last.revision}.`}
      </p>
      <button type="button" className="button" disabled={readOnly} onClick={() => open('issue')}>
        Issue papers…
      </button>
      {kept.length > 0 ? (
        <>
          <h3 className="inspector-head">What changed</h3>
          <div className="papers-grid">
            <label className="papers-field">
              From
              <select className="input" value={since?.id ?? ''} onChange={(e) => setFrom(e.target.value)}>
                {kept.map((i) => (
                  <option key={i.id} value={i.id}>
                    {i.revision} {i.date}
                  </option>
                ))}
              </select>
            </label>
            <label className="papers-field">
              To
              <select className="input" value={to} onChange={(e) => setTo(e.target.value)}>
                <option value={NOW}>now</option>
                {kept.map((i) => (
                  <option key={i.id} value={i.id}>
                    {i.revision} {i.date}
                  </option>
                ))}
              </select>
            </label>
          </div>
          {typeof compared === 'string' ? (
            <p className="field-error">{compared}</p>
          ) : compared ? (
            <>
              <p className="soft small">
                {changes.length} {changes.length === 1 ? 'change' : 'changes'} from {compared.from} to{' '}
                {compared.to}
              </p>
              <button
                type="button"
                className="button"
                disabled={changes.length === 0}
                onClick={() => show(compared)}
              >
                Show on the plot
              </button>
              <ChangesList
                changes={changes}
                {...(!until && state.draft && since?.id === state.last?.id ? { none: ONLY_SHEETS } : {})}
              />
            </>
          ) : null}
        </>
      ) : null}
    </>
  );
};
