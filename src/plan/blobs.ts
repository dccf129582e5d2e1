import { fromBase64, toBase64 } from '../kernel/base64.ts';
import { bytesHash } from '../kernel/canonical.ts';
import type { Id } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { MAX_KEPT_PIXELS, readImageHeader } from './image-header.ts';
import { type Plan, recordsOf } from './plan.ts';
import type { AnyRecord, Blob } from './records/index.ts';

/** One part of a plan may be so large, and all of them together. */
export const MAX_BLOB_BYTES = 24 * 1024 * 1024;
export const MAX_BLOBS_BYTES = 48 * 1024 * 1024;
export const MAX_BLOBS = 1000;

const ID = /^blob:([0-9a-f]{64})$/;

/** The SHA-256 that a blob's id names; undefined where the id is no such id. */
export const hashOfId = (id: Id): string | undefined => ID.exec(id)?.[1];

/** The record for bytes, under the id that their SHA-256 gives. */
export const blobOf = (bytes: Uint8Array, mediaType: Blob['mediaType']): Blob => ({
  id: `blob:${bytesHash(bytes)}`,
  type: 'blob',
  mediaType,
  base64: toBase64(bytes),
});

const decoded = new WeakMap<Blob, Uint8Array | undefined>();

/** The bytes of a blob; undefined where its text is no base64. Remembered per record. */
export const blobBytes = (blob: Blob): Uint8Array | undefined => {
  if (!decoded.has(blob)) decoded.set(blob, fromBase64(blob.base64));
  return decoded.get(blob);
};

/** Bytes of a blob from the length of its text alone. */
export const blobSize = (blob: Pick<Blob, 'base64'>): number => Math.floor((blob.base64.length / 4) * 3);

/**
 * Looks at a blob before anything decodes it as a picture: base64, and for a picture a header of its own sort that
 * names no more pixels than a plan keeps. Gives what is wrong in words, or undefined.
 */
export const blobFault = (blob: Blob): string | undefined => {
  if (blobSize(blob) > MAX_BLOB_BYTES) return `it is larger than ${MAX_BLOB_BYTES / 1024 / 1024} MB`;
  if (blob.mediaType !== 'image/png' && blob.mediaType !== 'image/jpeg') return undefined;
  // A JPEG may carry much before its frame; most have it within the first bytes.
  const start = fromBase64(blob.base64, 0x10000);
  if (!start) return 'its bytes are no base64';
  const header = readImageHeader(start) ?? readImageHeader(blobBytes(blob) ?? start);
  if (header && header.widthPx * header.heightPx > MAX_KEPT_PIXELS)
    return `its picture has ${header.widthPx} × ${header.heightPx} pixels, more than is decoded`;
  return undefined;
};

const REFERENCE = /"(blob:[0-9a-f]{64})"/g;

/** Blobs that anything in the plan names, whatever field it is in. */
export const usedBlobIds = (plan: Plan, lineOf: (r: AnyRecord) => string): ReadonlySet<Id> => {
  const used = new Set<Id>();
  const look = (text: string): void => {
    for (const m of text.matchAll(REFERENCE)) if (m[1]) used.add(m[1]);
  };
  for (const r of plan.records.values()) if (r.type !== 'blob' && r.type !== 'kind') look(lineOf(r));
  for (const s of plan.setAside) look(JSON.stringify(s.value) ?? '');
  look(JSON.stringify(plan.extra));
  return used;
};

/** Checks that bytes still fit into a plan with what it holds. */
export const roomForBlob = (plan: Plan, bytes: number): Result<void> => {
  const blobs = recordsOf(plan, 'blob');
  const held = blobs.reduce((sum, b) => sum + blobSize(b), 0);
  const mb = (n: number): string => (n / 1024 / 1024).toFixed(1);
  if (bytes > MAX_BLOB_BYTES)
    return fail({
      what: `It would take ${mb(bytes)} MB; one part of a plan may have ${mb(MAX_BLOB_BYTES)} MB.`,
      todo: 'Make it smaller first, or take a part of it.',
    });
  if (held + bytes > MAX_BLOBS_BYTES || blobs.length >= MAX_BLOBS)
    return fail({
      what: `The plan’s pictures take ${mb(held)} MB already, and this one ${mb(bytes)} MB; a plan may hold ${mb(MAX_BLOBS_BYTES)} MB.`,
      todo: 'Remove underlays or photos that are not needed any more.',
    });
  return ok(undefined);
};
