const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
/** Bytes taken at a time, so that the text does not grow by single characters to megabytes. */
const STEP = 0x6000;

/** Bytes as base64 (RFC 4648, section 4), padded; the same in a browser and in Node. */
export const toBase64 = (bytes: Uint8Array): string => {
  const out: string[] = [];
  for (let from = 0; from < bytes.length; from += STEP) {
    let text = '';
    const end = Math.min(from + STEP, bytes.length);
    for (let i = from; i < end; i += 3) {
      const n = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
      const left = bytes.length - i;
      text +=
        (ALPHABET[n >> 18] ?? '') +
        (ALPHABET[(n >> 12) & 63] ?? '') +
        (left > 1 ? (ALPHABET[(n >> 6) & 63] ?? '') : '=') +
        (left > 2 ? (ALPHABET[n & 63] ?? '') : '=');
    }
    out.push(text);
  }
  return out.join('');
};

const CODES = new Int16Array(128).fill(-1);
for (let i = 0; i < ALPHABET.length; i++) CODES[ALPHABET.charCodeAt(i)] = i;

/** Bytes of a base64 text; undefined where it is none. No more than `upTo` of them are read. */
export const fromBase64 = (text: string, upTo = Number.POSITIVE_INFINITY): Uint8Array | undefined => {
  if (text.length % 4 !== 0) return undefined;
  const padding = text.endsWith('==') ? 2 : text.endsWith('=') ? 1 : 0;
  const last = text.length - padding;
  const bytes = new Uint8Array(Math.min((text.length / 4) * 3 - padding, upTo));
  let at = 0;
  for (let i = 0; i < text.length && at < bytes.length; i += 4) {
    const a = CODES[text.charCodeAt(i)] ?? -1;
    const b = CODES[text.charCodeAt(i + 1)] ?? -1;
    const c = i + 2 < last ? (CODES[text.charCodeAt(i + 2)] ?? -1) : 0;
    const d = i + 3 < last ? (CODES[text.charCodeAt(i + 3)] ?? -1) : 0;
    if ((a | b | c | d) < 0) return undefined;
    bytes[at++] = (a << 2) | (b >> 4);
    if (at < bytes.length) bytes[at++] = ((b & 15) << 4) | (c >> 2);
    if (at < bytes.length) bytes[at++] = ((c & 3) << 6) | d;
  }
  return bytes;
};
