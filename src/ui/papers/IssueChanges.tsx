import { useMemo } from 'react';
import { issuedPlan, issueState, issuesOf } from '../../plan/edits/issue.ts';
import type { Plan } from '../../plan/plan.ts';
import { planChanges } from '../../report/changes.ts';
import { ChangesList, ONLY_SHEETS } from './ChangesList.tsx';

/** What changed since the last issue, as the papers of the next one will mark it. */
export const IssueChanges = ({ plan }: { readonly plan: Plan }) => {
  const last = issuesOf(plan).at(-1);
  const changes = useMemo(() => {
    const before = last && issuedPlan(plan, last);
    return before?.ok ? planChanges(before.value, plan) : undefined;
  }, [plan, last]);
  const asIssued = useMemo(() => !issueState(plan).draft, [plan]);
  if (!last) return null;
  return changes ? (
    <>
      <h3 className="inspector-head">
        {changes.length} {changes.length === 1 ? 'change' : 'changes'} since {last.revision}
      </h3>
      <ChangesList changes={changes} none={asIssued ? 'The plan is as it was issued.' : ONLY_SHEETS} />
    </>
  ) : (
    <p className="soft">Issue {last.revision} kept no plan, so what changed since cannot be listed.</p>
  );
};
