import { strToU8, zlibSync } from 'fflate';
import { jsPDF } from 'jspdf';

/** Bytes as the string of characters 0 to 255 that jsPDF works with. */
export const binaryString = (bytes: Uint8Array): string => {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 8192)
    parts.push(String.fromCharCode(...bytes.subarray(i, i + 8192)));
  return parts.join('');
};

/** First line of a stream that is deflated already; no operator of a page begins with it. */
const PACKED = '%packed\n';

interface Filters {
  processDataByFilters(
    data: string,
    filters: readonly string[],
  ): { readonly data: string; readonly reverseChain: string };
}

/**
 * jsPDF deflates all pages in one go when the file is put together, and builds each byte by byte. Streams that come
 * deflated are passed through, so that a page can be packed as soon as it is drawn and its text let go.
 */
const letPackedThrough = (): void => {
  const api = jsPDF.API as unknown as Filters;
  const plain = api.processDataByFilters;
  api.processDataByFilters = (data, filters) =>
    data.startsWith(PACKED)
      ? { data: data.slice(PACKED.length), reverseChain: '/FlateDecode' }
      : plain.call(api, data, filters);
};
letPackedThrough();

/** Effort of deflating: from here on more of it saves less than a thirtieth. */
const LEVEL = 4;

/** A stream of ASCII operators deflated and marked, and a number that changes with it (FNV-1a over its bytes). */
export const packed = (operators: string): { readonly stream: string; readonly hash: number } => {
  const bytes = zlibSync(strToU8(operators, true), { level: LEVEL });
  let hash = 0x811c9dc5;
  for (const b of bytes) hash = Math.imul(hash ^ b, 0x01000193);
  return { stream: PACKED + binaryString(bytes), hash: hash >>> 0 };
};
