import { contentHash } from '../../kernel/canonical.ts';
import type { NewId } from '../../kernel/ids.ts';
import { compareIds } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordsOf } from '../plan.ts';
import type { RecordOf } from '../records/index.ts';

/** Issues of the papers, oldest first: by revision, A to Z and then AA on. */
export const issuesOf = (plan: Plan): readonly RecordOf<'issue'>[] =>
  [...recordsOf(plan, 'issue')].sort(
    (a, b) => a.revision.length - b.revision.length || compareIds(a.revision, b.revision),
  );

/** The revision letter the next issue gets. I and O are left out, as they read like figures. */
export const nextRevision = (plan: Plan): string => {
  const last = issuesOf(plan).at(-1)?.revision;
  if (last === undefined) return LETTERS[0] ?? 'A';
  const digits = [...last].map((c) => LETTERS.indexOf(c));
  for (let i = digits.length - 1; i >= 0; i--) {
    const d = (digits[i] ?? 0) + 1;
    digits[i] = d % LETTERS.length;
    if (d < LETTERS.length) return digits.map((n) => LETTERS[n]).join('');
  }
  return 'A'.repeat(last.length + 1);
};

const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** SHA-256 of everything in the plan but its issues: tells whether anything changed since one. */
export const planHash = (plan: Plan): string =>
  contentHash(
    [...plan.records.values()].filter((r) => r.type !== 'issue').sort((a, b) => compareIds(a.id, b.id)),
  );

/** Records an issue of the papers as they are now. */
export const addIssue = (
  plan: Plan,
  what: { readonly date: string; readonly note: string; readonly by: string },
  newId: NewId,
): { readonly changes: ChangeSet; readonly issue: RecordOf<'issue'> } => {
  const issue: RecordOf<'issue'> = {
    id: newId('is'),
    type: 'issue',
    revision: nextRevision(plan),
    date: what.date,
    note: what.note,
    by: what.by,
    planHash: planHash(plan),
  };
  return { changes: new Draft(plan).put(issue).changes(), issue };
};
