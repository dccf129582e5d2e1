import { strFromU8 } from 'fflate';

/** Whether the bytes hold the sign that stands for an unreadable character, written as itself. */
const holdsSign = (bytes: Uint8Array): boolean => {
  for (let i = bytes.indexOf(0xef); i >= 0; i = bytes.indexOf(0xef, i + 1))
    if (bytes[i + 1] === 0xbf && bytes[i + 2] === 0xbd) return true;
  return false;
};

/** UTF-8 bytes as text; undefined where they are none. Pure code has no decoder of its own. */
export const decodeUtf8 = (bytes: Uint8Array): string | undefined => {
  const text = strFromU8(bytes);
  return text.includes('\ufffd') && !holdsSign(bytes) ? undefined : text;
};

/** Bytes as text where each is one character (ISO 8859-1). */
export const decodeLatin1 = (bytes: Uint8Array): string => strFromU8(bytes, true);
