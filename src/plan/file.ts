import { compareIds, type Id } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { blobFault, usedBlobIds } from './blobs.ts';
import { farNumber } from './far-numbers.ts';
import { migrate } from './migrations.ts';
import type { Plan, SetAside } from './plan.ts';
import { type AnyRecord, type RecordOf, type RecordType, recordSchemas } from './records/index.ts';

export const PLAN_FORMAT = 'lampwright-plan';
/** Raised with every change that older programs could not read. */
export const PLAN_VERSION = 1;
/** Files above this are refused before they are decoded. */
export const MAX_PLAN_BYTES = 64 * 1024 * 1024;

export interface ReadPlan {
  readonly plan: Plan;
  /** What was set aside or repaired, in words. */
  readonly notices: readonly string[];
  /** A file of a newer version is shown but never written back. */
  readonly newer: boolean;
}

export interface ReadOptions {
  /** Bytes, as base64, of a blob whose record does not carry them; or why they cannot be had. */
  readonly bytesOf?: (id: Id) => Result<string, string>;
  /** Longest text that is looked at; `MAX_PLAN_BYTES` where nothing is said. */
  readonly maxChars?: number;
}

/**
 * Reads the text of a plan file. A record that cannot be read is set aside and written back later as it was;
 * a text that is no plan at all gives a problem that says what, where and what to do.
 */
export const readPlan = (text: string, name = 'the file', options: ReadOptions = {}): Result<ReadPlan> => {
  const maxChars = options.maxChars ?? MAX_PLAN_BYTES;
  if (text.length > maxChars) {
    return fail({
      what: `${name} is too large to be a plan (${Math.round(text.length / 1e6)} MB; the limit is ${Math.round(maxChars / 1e6)} MB).`,
      todo: 'Choose a plan file saved by this program.',
    });
  }
  let data: unknown;
  try {
    data = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (cause) {
    return fail({
      what: `${name} is not readable as JSON: ${cause instanceof Error ? plainJsonError(cause.message) : 'unknown error'}.`,
      where: jsonErrorPlace(text, cause),
      todo: 'The file may be cut off or changed by hand. Open the last good copy, or correct it at that place.',
    });
  }
  if (!isObject(data) || data.format !== PLAN_FORMAT) {
    return fail({
      what: `${name} is not a plan: it lacks "format": "${PLAN_FORMAT}".`,
      where: 'the top of the file',
      todo: 'Choose a file saved by this program.',
    });
  }
  const bad = forbiddenKey(data);
  if (bad) {
    return fail({
      what: `${name} holds a key that is never part of a plan (${bad.at(-1) ?? ''}).`,
      where: bad.join(' › '),
      todo: 'Remove it with a text editor if you trust the rest of the file.',
    });
  }
  if (typeof data.version !== 'number' || !Number.isInteger(data.version) || data.version < 1) {
    return fail({
      what: `${name} has no valid version number.`,
      where: '"version" at the top of the file',
      todo: `It should be a whole number from 1 to ${PLAN_VERSION}.`,
    });
  }
  const newer = data.version > PLAN_VERSION;
  const current = newer ? data : migrate(data, data.version);
  if (!Array.isArray(current.records)) {
    return fail({
      what: `${name} has no list of records.`,
      where: '"records"',
      todo: 'Open the last good copy.',
    });
  }
  return readRecords(current, current.records, name, newer, options);
};

const readRecords = (
  data: Record<string, unknown>,
  list: readonly unknown[],
  name: string,
  newer: boolean,
  options: ReadOptions,
): Result<ReadPlan> => {
  const records = new Map<string, AnyRecord>();
  const setAside: SetAside[] = [];
  const aside = (key: string, value: unknown, reason: string): void => {
    setAside.push({ key, value, reason });
  };
  list.forEach((value, i) => {
    const key = isObject(value) && typeof value.id === 'string' ? value.id : `record ${i + 1}`;
    const read = readRecord(value, options);
    if (!read.ok) aside(key, value, read.error);
    else if (records.has(read.value.id)) aside(key, value, 'another record has the same id');
    else records.set(read.value.id, read.value);
  });
  if (!records.has('plan')) {
    return fail({
      what: `${name} lacks the record about the plan itself (or it cannot be read).`,
      where: setAside.find((s) => s.key === 'plan')?.reason ?? 'no record has the id "plan"',
      todo: 'Open the last good copy, or correct that record.',
    });
  }
  const { format: _f, version: _v, records: _r, ...extra } = data;
  const notices = setAside.map(
    (s) => `${s.key} could not be read and was set aside, unchanged: ${s.reason}.`,
  );
  if (newer) notices.unshift('This plan was saved by a newer version of the program. It is shown read-only.');
  return ok({ plan: { records, setAside, extra }, notices, newer });
};

const LEVEL_KEYS = new Set(['id', 'type', 'setupId', 'fixtureId', 'levelPct']);

/**
 * Whether a value is a level with nothing but its plain fields. Of these a plan has one for each unit in each setup, more
 * than of all else together; reading them by the schema would take most of the time of opening a large plan.
 */
const isPlainLevel = (v: Record<string, unknown>): v is Record<string, unknown> & RecordOf<'level'> =>
  v.type === 'level' &&
  typeof v.id === 'string' &&
  v.id !== '' &&
  typeof v.setupId === 'string' &&
  typeof v.fixtureId === 'string' &&
  Number.isFinite(v.levelPct) &&
  Object.keys(v).every((k) => LEVEL_KEYS.has(k));

const readRecord = (written: unknown, options: ReadOptions): Result<AnyRecord, string> => {
  if (!isObject(written)) return fail('it is not a record');
  let value = written;
  const type = value.type;
  const far = farNumber(value);
  if (far !== undefined) return fail(far);
  if (isPlainLevel(value)) return ok(value);
  if (typeof type !== 'string' || !Object.hasOwn(recordSchemas, type)) {
    return fail(`its type “${String(type)}” is not known to this version`);
  }
  if (type === 'blob' && value.base64 === undefined && typeof value.id === 'string') {
    const bytes = options.bytesOf?.(value.id) ?? fail('its bytes are not in the file');
    if (!bytes.ok) return bytes;
    value = { ...value, base64: bytes.value };
  }
  const parsed = recordSchemas[type as RecordType].safeParse(value);
  if (parsed.success) {
    const record = parsed.data as AnyRecord;
    const fault = record.type === 'blob' ? blobFault(record) : undefined;
    return fault === undefined ? ok(record) : fail(fault);
  }
  const first = parsed.error.issues[0];
  if (!first) return fail('it does not fit its type');
  const place = first.path.map(String).join('.') || 'record';
  return fail(
    first.message.endsWith('received undefined') ? `${place} is missing` : `${place}: ${first.message}`,
  );
};

const TYPE_ORDER = Object.keys(recordSchemas);

/**
 * The text of a plan file: UTF-8 JSON, one record per line, sorted by type and id, keys sorted.
 * The same plan always gives the same bytes.
 */
export const serialisePlan = (plan: Plan): string => {
  const sorted = [...plan.records.values()].sort(
    (a, b) => TYPE_ORDER.indexOf(a.type) - TYPE_ORDER.indexOf(b.type) || compareIds(a.id, b.id),
  );
  const lines = [...sorted.map(recordLine), ...plan.setAside.map((s) => JSON.stringify(s.value))];
  const extra = Object.keys(plan.extra)
    .sort()
    .map((k) => `,\n${JSON.stringify(k)}: ${JSON.stringify(plan.extra[k])}`)
    .join('');
  return `{"format": "${PLAN_FORMAT}", "version": ${PLAN_VERSION}, "records": [\n${lines.join(',\n')}\n]${extra}}\n`;
};

const lines = new WeakMap<AnyRecord, string>();

/** One record as a line of the file: id and type first, then its keys in order. */
const recordLine = (r: AnyRecord): string => {
  let line = lines.get(r);
  if (line === undefined) {
    const { id, type, ...rest } = r;
    line = JSON.stringify({ id, type, ...(ordered(rest) as object) });
    lines.set(r, line);
  }
  return line;
};

/** Blobs that anything in the plan names. The others are left out of plan files. */
export const usedBlobs = (plan: Plan): ReadonlySet<Id> => usedBlobIds(plan, recordLine);

const ordered = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(ordered);
  if (!isObject(value)) return value;
  return Object.fromEntries(
    Object.keys(value)
      .sort()
      .filter((k) => value[k] !== undefined)
      .map((k) => [k, ordered(value[k])]),
  );
};

const isObject = (v: unknown): v is Record<string, unknown> =>
  typeof v === 'object' && v !== null && !Array.isArray(v);

const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

/** Deepest that a plan's values may nest. */
const DEEPEST = 60;

/** The way to a key that no plan has, made only where there is one: every value of a file is looked at. */
const forbiddenKey = (value: unknown, depth = 0): readonly string[] | undefined => {
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth > DEEPEST) return ['(nested too deeply)'];
  if (Array.isArray(value)) {
    for (let i = 0; i < value.length; i++) {
      const deeper = forbiddenKey(value[i], depth + 1);
      if (deeper) return [String(i), ...deeper];
    }
    return undefined;
  }
  for (const key of Object.keys(value)) {
    if (FORBIDDEN.has(key)) return [key];
    const deeper = forbiddenKey((value as Record<string, unknown>)[key], depth + 1);
    if (deeper) return [key, ...deeper];
  }
  return undefined;
};

const plainJsonError = (message: string): string => message.split('\n')[0]?.slice(0, 160) ?? message;

const jsonErrorPlace = (text: string, cause: unknown): string => {
  const at = cause instanceof Error ? /position (\d+)/.exec(cause.message)?.[1] : undefined;
  if (at === undefined) return 'the end of the file';
  const before = text.slice(0, Number(at));
  const line = before.split('\n').length;
  return `line ${line}, column ${before.length - before.lastIndexOf('\n')}`;
};
