import { type Zippable, zipSync } from 'fflate';
import { toBase64 } from '../kernel/base64.ts';
import { bytesHash, utf8Bytes } from '../kernel/canonical.ts';
import type { Id } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { blobBytes, hashOfId, MAX_BLOB_BYTES, MAX_BLOBS } from './blobs.ts';
import { MAX_PLAN_BYTES, type ReadPlan, readPlan, serialisePlan, usedBlobs } from './file.ts';
import type { Plan } from './plan.ts';
import { recordsOf } from './plan.ts';
import type { AnyRecord, Blob } from './records/index.ts';
import { decodeUtf8 } from './utf8.ts';
import { MAX_ZIP_BYTES, readZipDirectory, readZipEntry, type ZipEntry } from './zip.ts';

/** A plan file with parts is no larger than this. */
export const MAX_PLAN_FILE_BYTES = MAX_ZIP_BYTES;
const RECORDS = 'plan.json';
const PART = /^parts\/([0-9a-f]{64})$/;

/** Whether bytes begin like a zip container. */
export const isContainer = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

const NEVER = new Date(1980, 0, 1);

/**
 * A plan as the bytes of a file: plain JSON, or, where it has parts such as pictures, a zip with `plan.json` and each
 * part as `parts/<SHA-256>`. Parts that nothing in the plan names are left out. The same plan gives the same bytes.
 */
export const planFileBytes = (plan: Plan): { readonly bytes: Uint8Array; readonly sort: 'json' | 'zip' } => {
  const used = usedBlobs(plan);
  const records = new Map<Id, AnyRecord>();
  const parts: Zippable = {};
  for (const [id, r] of plan.records) {
    if (r.type !== 'blob') records.set(id, r);
    else if (used.has(id)) records.set(id, withoutBytes(r, parts));
  }
  const text = utf8Bytes(serialisePlan({ ...plan, records }));
  if (Object.keys(parts).length === 0) return { bytes: text, sort: 'json' };
  return {
    bytes: zipSync({ [RECORDS]: [text, { level: 6 }], ...parts }, { mtime: NEVER }),
    sort: 'zip',
  };
};

/** A blob's record for the file, with its bytes among the parts; one whose bytes are not what its id says stays whole. */
const withoutBytes = (blob: Blob, parts: Zippable): AnyRecord => {
  const bytes = blobBytes(blob);
  const hash = hashOfId(blob.id);
  if (!bytes || !hash || bytesHash(bytes) !== hash) return blob;
  // Pictures are packed already.
  parts[`parts/${hash}`] = [bytes, { level: blob.mediaType === 'application/json' ? 6 : 0 }];
  const { base64: _bytes, ...rest } = blob;
  return rest as AnyRecord;
};

/** Reads the bytes of a plan file, plain or with parts. Sizes, counts and names are looked at before anything is unpacked. */
export const readPlanBytes = (bytes: Uint8Array, name = 'the file'): Result<ReadPlan> => {
  if (bytes.length > MAX_PLAN_FILE_BYTES)
    return fail({
      what: `${name} is too large to be a plan (${Math.round(bytes.length / 1e6)} MB; the limit is ${Math.round(MAX_PLAN_FILE_BYTES / 1e6)} MB).`,
      todo: 'Choose a plan file saved by this program.',
    });
  if (isContainer(bytes)) return readContainer(bytes, name);
  const text = textOf(bytes, name);
  return text.ok ? readPlan(text.value, name) : text;
};

const textOf = (bytes: Uint8Array, name: string): Result<string> => {
  const text = decodeUtf8(bytes);
  return text === undefined
    ? fail({
        what: `${name} is not text in UTF-8.`,
        where: 'the file as a whole',
        todo: 'Choose a plan file saved by this program.',
      })
    : ok(text);
};

const readContainer = (bytes: Uint8Array, name: string): Result<ReadPlan> => {
  const inside = <T>(r: Result<T>): Result<T> =>
    r.ok ? r : fail({ ...r.error, what: `${name} cannot be read. ${r.error.what}` });
  const directory = inside(readZipDirectory(bytes));
  if (!directory.ok) return directory;
  const entry = directory.value.find((e) => e.name === RECORDS);
  if (!entry)
    return fail({
      what: `${name} is a zip file, but no plan: it holds no ${RECORDS}.`,
      where: 'the top of the zip',
      todo: 'Choose a file saved by this program.',
    });
  const json = inside(readZipEntry(bytes, entry, MAX_PLAN_BYTES));
  if (!json.ok) return json;
  const text = textOf(json.value, `${RECORDS} in ${name}`);
  if (!text.ok) return text;
  const parts = partsOf(directory.value, name);
  if (!parts.ok) return parts;
  return readPlan(text.value, name, {
    bytesOf: (id) => {
      const hash = hashOfId(id);
      const part = hash === undefined ? undefined : parts.value.get(hash);
      if (!part) return fail('its bytes are not in the file');
      const read = readZipEntry(bytes, part, MAX_BLOB_BYTES);
      if (!read.ok) return fail(`its bytes cannot be read. ${read.error.what}`);
      if (bytesHash(read.value) !== hash) return fail('its bytes are not those it was saved with');
      return ok(toBase64(read.value));
    },
  });
};

const partsOf = (entries: readonly ZipEntry[], name: string): Result<ReadonlyMap<string, ZipEntry>> => {
  const parts = new Map<string, ZipEntry>();
  for (const e of entries) {
    const hash = PART.exec(e.name)?.[1];
    if (hash !== undefined) parts.set(hash, e);
  }
  return parts.size > MAX_BLOBS
    ? fail({
        what: `${name} holds ${parts.size} parts; a plan has at most ${MAX_BLOBS}.`,
        todo: 'Choose a file saved by this program.',
      })
    : ok(parts);
};

/** Whether a plan is written as a zip: it has parts that something in it names. */
export const hasParts = (plan: Plan): boolean => {
  const blobs = recordsOf(plan, 'blob');
  if (blobs.length === 0) return false;
  const used = usedBlobs(plan);
  return blobs.some((b) => used.has(b.id));
};
