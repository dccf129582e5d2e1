import type { PlanChange } from '../../report/changes.ts';

const SHOWN = 200;

/** Said of a plan that is not as it was issued and has no change to tell. */
export const ONLY_SHEETS =
  'No change of the design: only the choice of sheets, views, places of labels, ticked steps or locks are others.';

/** Changes in words, as many as a screen can hold. */
export const ChangesList = ({
  changes,
  none = 'No change.',
}: {
  readonly changes: readonly PlanChange[];
  /** What is said where there are none. */
  readonly none?: string;
}) =>
  changes.length === 0 ? (
    <p className="soft">{none}</p>
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
