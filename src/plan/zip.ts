import { Inflate, strFromU8 } from 'fflate';
import { fail, ok, type Problem, type Result } from '../kernel/result.ts';

/** A zip container above this is refused before anything of it is looked at. */
export const MAX_ZIP_BYTES = 64 * 1024 * 1024;
export const MAX_ZIP_ENTRIES = 4096;
/** All parts together, as their directory says. */
const MAX_TOTAL_BYTES = 512 * 1024 * 1024;
/** A part larger than `RATIO_FROM_BYTES` may not be this many times larger than it is packed. */
const MAX_RATIO = 200;
const RATIO_FROM_BYTES = 4 * 1024 * 1024;
/** Packed bytes decoded at a time: a step gives at most about a thousand times as many. */
const STEP_BYTES = 4096;

/** One part of a zip as its directory names it. Sizes are the directory's claim. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly packedBytes: number;
  readonly plainBytes: number;
  readonly crc: number;
  /** Of its local header, from the start of the file. */
  readonly offset: number;
}

const DAMAGED = 'Get the file again from where it came from; it was probably cut off or changed on the way.';
const BOMB = 'Do not open this file; ask its author for a plain one.';

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1e6)} MB`;

/**
 * The directory of a zip file (PKWARE APPNOTE 6.3, with the 64-bit sizes of single parts). Nothing is unpacked.
 * Gives a problem for what is no zip, is damaged, holds too many or too large parts, or names that lead outside.
 */
export const readZipDirectory = (bytes: Uint8Array): Result<readonly ZipEntry[]> => {
  if (bytes.length > MAX_ZIP_BYTES)
    return fail({
      what: `The file is too large (${megabytes(bytes.length)}; the limit is ${megabytes(MAX_ZIP_BYTES)}).`,
      todo: 'Ask for a smaller copy: one without its 3D models or large pictures.',
    });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view);
  if (end === undefined)
    return fail({
      what: 'The file is no zip container, or its end is missing.',
      where: 'the end of the file',
      todo: DAMAGED,
    });
  const wide = wideEnd(view, end);
  if (wide === 'damaged') return fail(damaged('its 64-bit end record is not where it should be'));
  const at = wide?.at ?? end;
  const count = wide?.count ?? view.getUint16(end + 10, true);
  const size = wide?.size ?? view.getUint32(end + 12, true);
  if (count > MAX_ZIP_ENTRIES)
    return fail({
      what: `The file holds ${count} parts; the limit is ${MAX_ZIP_ENTRIES}.`,
      todo: 'Ask its author for a copy with only the parts it needs.',
    });
  // Written as a distance from the end, so that something put before the zip does no harm.
  const start = at - size;
  const shift = start - (wide?.offset ?? view.getUint32(end + 16, true));
  if (start < 0 || shift < 0) return fail(damaged('its directory lies outside the file'));
  return readEntries(view, bytes, { start, end: at, count, shift });
};

const damaged = (how: string): Problem => ({
  what: `The zip container is damaged: ${how}.`,
  where: 'the directory at the end of the file',
  todo: DAMAGED,
});

/** Position of the end record: the last one whose comment fits. */
const findEnd = (view: DataView): number | undefined => {
  const last = view.byteLength - 22;
  for (let at = last; at >= 0 && at >= last - 0xffff; at--) {
    if (view.getUint32(at, true) === 0x06054b50 && at + 22 + view.getUint16(at + 20, true) <= view.byteLength)
      return at;
  }
  return undefined;
};

/**
 * The 64-bit end record (APPNOTE 4.3.14 and 4.3.15) of a zip whose plain one is full, with where it begins. Undefined for
 * a zip that has none.
 */
const wideEnd = (
  view: DataView,
  end: number,
):
  | { readonly at: number; readonly count: number; readonly size: number; readonly offset: number }
  | 'damaged'
  | undefined => {
  const full =
    view.getUint16(end + 10, true) === 0xffff ||
    view.getUint32(end + 12, true) === 0xffffffff ||
    view.getUint32(end + 16, true) === 0xffffffff;
  const locator = end - 20;
  if (!full || locator < 0 || view.getUint32(locator, true) !== 0x07064b50) return undefined;
  // The record stands right before its locator; its own place may be off where something was put before the zip.
  for (const at of [locator - 56, Number(view.getBigUint64(locator + 8, true))]) {
    if (!(at >= 0) || at + 56 > locator || view.getUint32(at, true) !== 0x06064b50) continue;
    const big = (offset: number): number => Number(view.getBigUint64(at + offset, true));
    return { at, count: big(32), size: big(40), offset: big(48) };
  }
  return 'damaged';
};

const readEntries = (
  view: DataView,
  bytes: Uint8Array,
  dir: { readonly start: number; readonly end: number; readonly count: number; readonly shift: number },
): Result<readonly ZipEntry[]> => {
  const entries: ZipEntry[] = [];
  let total = 0;
  let at = dir.start;
  for (let i = 0; i < dir.count; i++) {
    if (at + 46 > dir.end || view.getUint32(at, true) !== 0x02014b50)
      return fail(damaged(`part ${i + 1} of ${dir.count} is not where it should be`));
    const nameLength = view.getUint16(at + 28, true);
    const extraLength = view.getUint16(at + 30, true);
    const next = at + 46 + nameLength + extraLength + view.getUint16(at + 32, true);
    if (next > dir.end) return fail(damaged(`the name of part ${i + 1} is cut off`));
    const flags = view.getUint16(at + 8, true);
    const rawName = bytes.subarray(at + 46, at + 46 + nameLength);
    // Some writers use backslashes.
    const name = strFromU8(rawName, (flags & 0x800) === 0).replace(/\\/g, '/');
    const trick = pathTrick(name);
    if (trick)
      return fail({
        what: `A part of the file has a name that ${trick}: “${printable(name)}”.`,
        where: `part ${i + 1} of its directory`,
        todo: BOMB,
      });
    const sizes = wideSizes(view, at, at + 46 + nameLength, extraLength);
    if (!sizes) return fail(damaged(`the sizes of part ${i + 1} cannot be read`));
    total += sizes.plainBytes;
    if (total > MAX_TOTAL_BYTES)
      return fail({
        what: `Unpacked, the file would be more than ${megabytes(MAX_TOTAL_BYTES)}.`,
        where: `“${printable(name)}” and the parts before it`,
        todo: BOMB,
      });
    entries.push({
      name,
      method: view.getUint16(at + 10, true),
      encrypted: (flags & 1) !== 0,
      crc: view.getUint32(at + 16, true),
      packedBytes: sizes.packedBytes,
      plainBytes: sizes.plainBytes,
      offset: sizes.offset + dir.shift,
    });
    at = next;
  }
  return ok(entries);
};

/** Sizes and offset of a part, from the 64-bit extra field where the plain ones are full. */
const wideSizes = (
  view: DataView,
  at: number,
  extraAt: number,
  extraLength: number,
): Pick<ZipEntry, 'packedBytes' | 'plainBytes' | 'offset'> | undefined => {
  const plain = [view.getUint32(at + 24, true), view.getUint32(at + 20, true), view.getUint32(at + 42, true)];
  if (plain.includes(0xffffffff)) {
    let field = extraAt;
    const end = extraAt + extraLength;
    while (field + 4 <= end && view.getUint16(field, true) !== 1)
      field += 4 + view.getUint16(field + 2, true);
    let value = field + 4;
    for (let k = 0; k < 3; k++) {
      if (plain[k] !== 0xffffffff) continue;
      if (value + 8 > end) return undefined;
      plain[k] = Number(view.getBigUint64(value, true));
      value += 8;
    }
  }
  const [plainBytes = 0, packedBytes = 0, offset = 0] = plain;
  return { plainBytes, packedBytes, offset };
};

const pathTrick = (name: string): string | undefined => {
  if (name.includes('\0')) return 'holds a zero byte';
  if (name.startsWith('/') || /^[a-zA-Z]:/.test(name)) return 'is an absolute path';
  if (name.split('/').includes('..')) return 'leads outside the file';
  return undefined;
};

const printable = (name: string): string =>
  name
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
    .replace(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, '�')
    .slice(0, 80);

/** Methods of packing that some programs offer, by number (APPNOTE 4.4.5). */
const METHODS: Readonly<Record<number, string>> = {
  9: 'Deflate64',
  12: 'BZIP2',
  14: 'LZMA',
  93: 'Zstandard',
  95: 'XZ',
  98: 'PPMd',
  99: 'AES encryption',
};

/** Unpacks one part, never to more than `maxBytes`, and checks its size and CRC-32. */
export const readZipEntry = (bytes: Uint8Array, entry: ZipEntry, maxBytes: number): Result<Uint8Array> => {
  const where = `“${printable(entry.name)}” inside the file`;
  const tooLarge: Problem = {
    what: `A part of the file is too large unpacked (the limit is ${megabytes(maxBytes)}).`,
    where,
    todo: 'Ask its author for a smaller one.',
  };
  const bad = (how: string): { readonly ok: false; readonly error: Problem } =>
    fail({ what: `A part of the file is damaged: ${how}.`, where, todo: DAMAGED });
  if (entry.encrypted)
    return fail({
      what: 'A part of the file is encrypted.',
      where,
      todo: 'Ask for a copy without a password.',
    });
  if (entry.plainBytes > maxBytes) return fail(tooLarge);
  const packed = packedPart(bytes, entry);
  if (!packed) return bad('it lies outside the file');
  if (entry.method !== 0 && entry.method !== 8)
    return fail({
      what: `A part of the file is packed by a method (${METHODS[entry.method] ?? entry.method}) that is not read here.`,
      where,
      todo: 'Unpack it and pack it again as a plain zip.',
    });
  const plain = entry.method === 0 ? ok(packed) : inflate(packed, maxBytes);
  if (!plain.ok) {
    if (plain.error === 'large') return fail(tooLarge);
    if (plain.error === 'bomb')
      return fail({
        what: `A part of the file unpacks to more than ${MAX_RATIO} times its size, as no honest file does.`,
        where,
        todo: BOMB,
      });
    return bad('it cannot be unpacked');
  }
  if (plain.value.length > maxBytes) return fail(tooLarge);
  if (plain.value.length !== entry.plainBytes) return bad('it has not the size its directory says');
  // Some writers leave the checksum out.
  if (entry.crc !== 0 && crc32(plain.value) !== entry.crc) return bad('its checksum is wrong');
  return plain;
};

const packedPart = (bytes: Uint8Array, entry: ZipEntry): Uint8Array | undefined => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (entry.offset + 30 > bytes.length || view.getUint32(entry.offset, true) !== 0x04034b50) return undefined;
  const start =
    entry.offset + 30 + view.getUint16(entry.offset + 26, true) + view.getUint16(entry.offset + 28, true);
  const end = start + entry.packedBytes;
  return end > bytes.length ? undefined : bytes.subarray(start, end);
};

/** Inflates in small steps, so that a part that lies about its size is stopped soon after the limit. */
const inflate = (packed: Uint8Array, maxBytes: number): Result<Uint8Array, 'large' | 'bomb' | 'damaged'> => {
  const parts: Uint8Array[] = [];
  let length = 0;
  const stream = new Inflate((chunk) => {
    parts.push(chunk);
    length += chunk.length;
  });
  try {
    for (let at = 0; at < packed.length || at === 0; at += STEP_BYTES) {
      const step = packed.subarray(at, at + STEP_BYTES);
      stream.push(step, at + STEP_BYTES >= packed.length);
      if (length > maxBytes) return fail('large');
      if (length > RATIO_FROM_BYTES && length > packed.length * MAX_RATIO) return fail('bomb');
    }
  } catch {
    // The library throws on any damage; what exactly is wrong is of no use to a person.
    return fail('damaged');
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return ok(all);
};

let crcTable: Uint32Array | undefined;

const crc32 = (bytes: Uint8Array): number => {
  if (!crcTable) {
    crcTable = new Uint32Array(256);
    for (let n = 0; n < 256; n++) {
      let c = n;
      for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
      crcTable[n] = c >>> 0;
    }
  }
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crcTable[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
};
