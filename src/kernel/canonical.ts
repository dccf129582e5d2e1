import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** Plain JSON data. */
export type Json =
  | null
  | boolean
  | number
  | string
  | readonly Json[]
  | { readonly [key: string]: Json | undefined };

/** JSON text with sorted keys and no white space: the same bytes for the same data, whatever the order it was built in. */
export const canonicalJson = (value: unknown): string => JSON.stringify(sortKeys(value));

const sortKeys = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(sortKeys);
  if (value === null || typeof value !== 'object') return value;
  const out: Record<string, unknown> = {};
  for (const key of Object.keys(value).sort()) {
    const v = (value as Record<string, unknown>)[key];
    if (v !== undefined) out[key] = sortKeys(v);
  }
  return out;
};

/** SHA-256 of the canonical JSON, in hexadecimal. */
export const contentHash = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonicalJson(value))));

/** Text as UTF-8 bytes, the same in a browser and in Node. */
export const utf8Bytes = (text: string): Uint8Array => utf8ToBytes(text);

/** SHA-256 of bytes, in hexadecimal (FIPS 180-4). */
export const bytesHash = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));
