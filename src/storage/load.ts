import type { Id } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { PLAN_VERSION, readPlan } from '../plan/file.ts';
import { migrate } from '../plan/migrations.ts';
import type { Plan } from '../plan/plan.ts';
import { checksum } from './checksum.ts';
import { editsOf } from './journal.ts';
import type { DamagedPart, Part, StoredPlan } from './medium.ts';

/** Stored plans carry their parts as text and so may be longer than files; near what one string may hold. */
const MAX_STORED_CHARS = 400 * 1024 * 1024;

export interface LoadedPlan {
  readonly plan: Plan;
  readonly notices: readonly string[];
  /** Saved by a newer program: to be shown, never written. */
  readonly newer: boolean;
  /** Number of the last entry that is in `plan`. */
  readonly seq: number;
  /** Whether the next write must carry a snapshot: the journal cannot be continued as it is. */
  readonly needsSnapshot: boolean;
  readonly damaged: readonly Pick<DamagedPart, 'what' | 'part'>[];
}

interface Raw {
  readonly data: Record<string, unknown>;
  readonly records: Map<Id | number, unknown>;
  version: number;
}

/** Rebuilds a plan from the newest whole snapshot and the entries after it. Changes nothing. */
export const loadPlan = (stored: StoredPlan): Result<LoadedPlan> => {
  const damaged: Pick<DamagedPart, 'what' | 'part'>[] = [];
  const snapshots = [...stored.snapshots].sort((a, b) => b.seq - a.seq);
  const base = snapshots.find((part) => {
    const whole = checksum(part.text) === part.sum;
    if (!whole) damaged.push({ what: 'snapshot', part });
    return whole;
  });
  if (!base)
    return fail({
      what: `“${stored.head.title}” is damaged in the browser’s storage and cannot be opened.`,
      todo: 'Open its last saved file. What is left of it is kept and can be saved as text.',
    });

  const entries = stored.entries.filter((e) => e.seq > base.seq).sort((a, b) => a.seq - b.seq);
  const raw = entries.length > 0 ? rawOf(base) : undefined;
  let seq = base.seq;
  if (raw) {
    for (const entry of entries) {
      const edits = entry.seq === seq + 1 ? editsOf(entry) : undefined;
      if (!edits) break;
      bringTo(raw, entry.version);
      for (const edit of edits) {
        for (const id of edit.remove) raw.records.delete(id);
        for (const record of edit.put) raw.records.set(record.id, record);
      }
      seq = entry.seq;
    }
    for (const part of entries) if (part.seq > seq) damaged.push({ what: 'entry', part });
  }
  const read = readPlan(raw ? textOf(raw) : base.text, `“${stored.head.title}”`, {
    maxChars: MAX_STORED_CHARS,
  });
  if (!read.ok) return read;

  const lost = stored.head.seq - seq;
  const notices = [...read.value.notices];
  if (lost > 0)
    notices.unshift(
      `The last changes (${lost} ${lost === 1 ? 'save' : 'saves'}) are damaged in the browser’s storage. The plan is shown as it was before them; they are kept aside.`,
    );
  else if (damaged.length > 0)
    notices.unshift(
      'A copy in the browser’s storage was damaged. The plan was rebuilt from an older one and the changes since; nothing is lost.',
    );
  return ok({
    plan: read.value.plan,
    notices,
    newer: read.value.newer,
    seq,
    needsSnapshot: damaged.length > 0 || lost > 0 || base.version < PLAN_VERSION,
    damaged,
  });
};

const rawOf = (base: Part): Raw => {
  const data: Record<string, unknown> = JSON.parse(base.text);
  const raw: Raw = { data, records: new Map(), version: base.version };
  keep(raw, data.records);
  return raw;
};

/** Records by id; what has no id of its own, or one that is taken, keeps its place under a number. */
const keep = (raw: Raw, list: unknown): void => {
  raw.records.clear();
  if (!Array.isArray(list)) return;
  list.forEach((value: unknown, i) => {
    const id = typeof value === 'object' && value !== null && 'id' in value ? value.id : undefined;
    raw.records.set(typeof id === 'string' && !raw.records.has(id) ? id : i, value);
  });
};

/** Entries of a later version than the snapshot apply to the migrated plan. */
const bringTo = (raw: Raw, version: number): void => {
  if (version <= raw.version) return;
  if (version === PLAN_VERSION) {
    const migrated = migrate({ ...raw.data, records: [...raw.records.values()] }, raw.version);
    Object.assign(raw.data, migrated);
    keep(raw, migrated.records);
  }
  raw.version = version;
};

const textOf = (raw: Raw): string =>
  JSON.stringify({ ...raw.data, version: raw.version, records: [...raw.records.values()] });
