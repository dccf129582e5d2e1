import { gunzipSync, gzipSync, strFromU8 } from 'fflate';
import { fromBase64, toBase64 } from '../../kernel/base64.ts';
import { bytesHash, contentHash, utf8Bytes } from '../../kernel/canonical.ts';
import type { NewId } from '../../kernel/ids.ts';
import { compareIds } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { MAX_PLAN_BYTES, readPlan, serialisePlan } from '../file.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
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

const SNAPSHOT_TYPE = 'application/gzip';

/** SHA-256 of everything in the plan but its issues and plans as issued: tells whether anything changed since one. */
export const planHash = (plan: Plan): string =>
  contentHash(
    [...plan.records.values()]
      .filter((r) => r.type !== 'issue' && !(r.type === 'blob' && r.mediaType === SNAPSHOT_TYPE))
      // A part's id is the hash of its bytes already.
      .map((r) => (r.type === 'blob' ? { id: r.id, type: r.type } : r))
      .sort((a, b) => compareIds(a.id, b.id)),
  );

/** The plan as it is now, as a blob: its file without stored pictures and earlier issues' plans, gzip. */
const snapshotOf = (plan: Plan): RecordOf<'blob'> => {
  const records = new Map([...plan.records].filter(([, r]) => r.type !== 'blob'));
  // The time in the gzip header is left out, so that the same plan gives the same bytes.
  const bytes = gzipSync(utf8Bytes(serialisePlan({ ...plan, records })), { mtime: 0, level: 9 });
  return {
    id: `blob:${bytesHash(bytes)}`,
    type: 'blob',
    mediaType: SNAPSHOT_TYPE,
    base64: toBase64(bytes),
  };
};

/** The plan as it was issued, with the pictures stored now; a problem in words where the issue kept none. */
export const issuedPlan = (plan: Plan, issue: RecordOf<'issue'>): Result<Plan> => {
  const blob = issue.snapshotId === undefined ? undefined : recordOf(plan, 'blob', issue.snapshotId);
  if (!blob)
    return fail({
      what: `Issue ${issue.revision} kept no plan.`,
      todo: 'Issues of older versions of the program did not. Open the plan file of that day and compare the two files.',
    });
  const broken = fail({
    what: `The plan kept with issue ${issue.revision} cannot be read.`,
    todo: 'Open the plan file of that day and compare the two files.',
  });
  const bytes = blob.mediaType === SNAPSHOT_TYPE ? fromBase64(blob.base64) : undefined;
  if (!bytes) return broken;
  // The last four bytes of a gzip member are its length unpacked (RFC 1952).
  const size = bytes.slice(-4).reduce((n, b, i) => n + b * 256 ** i, 0);
  if (size > MAX_PLAN_BYTES) return broken;
  let text: string;
  try {
    text = strFromU8(gunzipSync(bytes, { out: new Uint8Array(size) }));
  } catch {
    return broken;
  }
  const read = readPlan(text, `issue ${issue.revision}`);
  if (!read.ok) return broken;
  const pictures = recordsOf(plan, 'blob').filter((b) => b.mediaType !== SNAPSHOT_TYPE);
  const records = new Map(read.value.plan.records);
  for (const b of pictures) records.set(b.id, b);
  return ok({ ...read.value.plan, records });
};

/** Where the papers of a plan stand: issued as they are now, changed since, or never issued. */
export interface IssueState {
  readonly last: RecordOf<'issue'> | undefined;
  /** The plan is not what was issued last, or nothing was issued. */
  readonly draft: boolean;
  /** Revision the papers carry now: the last one, or the one that would be next. */
  readonly revision: string;
  /** Issue that changes are marked against; undefined for a first issue. */
  readonly before: RecordOf<'issue'> | undefined;
}

export const issueState = (plan: Plan): IssueState => {
  const issues = issuesOf(plan);
  const last = issues.at(-1);
  const draft = last === undefined || last.planHash !== planHash(plan);
  return draft
    ? { last, draft, revision: nextRevision(plan), before: last }
    : { last, draft, revision: last.revision, before: issues.at(-2) };
};

/** Records an issue of the papers as they are now, with the plan as issued. */
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
  const snapshot = snapshotOf(plan);
  const kept = { ...issue, snapshotId: snapshot.id };
  return { changes: new Draft(plan).put(snapshot).put(kept).changes(), issue: kept };
};
