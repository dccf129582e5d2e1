import type { PlanChange } from '../../report/changes.ts';

const SHOWN = 200;

/** Changes in words, as many as a screen can hold. */
export const ChangesList = ({ changes }: { readonly changes: readonly PlanChange[] }) =>
  changes.length === 0 ? (
    <p className="soft">No change.</p>
  ) : (
    <ol className="papers-changes">
      {changes.slice(0, SHOWN).map((c, i) => (
        <li key={i}>{c.words}</li>
      ))}
      {changes.length > SHOWN ? (
        <li className="soft">and {changes.length - SHOWN} more on the list of changes</li>
      ) : null}
    </ol>
  );
