import { fail, ok, type Result } from '../../kernel/result.ts';
import { MAX_ZIP_BYTES, readZipDirectory, readZipEntry, type ZipEntry } from '../../plan/zip.ts';
import { cleanText } from './gdtf-values.ts';
import type { Notices } from './notices.ts';
import { decodeXml } from './xml.ts';

/** The description inside a fixture file, unpacked. */
export const MAX_DESCRIPTION_BYTES = 32 * 1024 * 1024;
const MAX_OUTLINE_BYTES = 2 * 1024 * 1024;

/** The parts of a fixture file that are of use here. */
export interface Package {
  readonly description: string;
  /** The top view drawing of a model by its file name without extension; undefined where there is none or it is damaged. */
  outline(model: string): Uint8Array | undefined;
}

/**
 * Opens a fixture file: a zip with `description.xml` at its root (found whatever its case), or that description alone. A zip around a single fixture file
 * is opened once; a scene or a collection is told apart.
 * Gives a problem for what is no fixture file or exceeds a limit.
 */
export const openPackage = (bytes: Uint8Array, notices: Notices, depth = 0): Result<Package> => {
  if (bytes.length === 0)
    return fail({ what: 'The file is empty.', todo: 'Get it again from where it came from.' });
  if (startsAsXml(bytes)) {
    if (bytes.length > MAX_DESCRIPTION_BYTES)
      return fail({
        what: 'The file is too large for a fixture description.',
        todo: 'Choose a fixture file.',
      });
    notices.add('The file is a bare description without its container.');
    return ok({ description: decodeXml(bytes), outline: () => undefined });
  }
  const directory = readZipDirectory(bytes);
  if (!directory.ok) return directory;
  const entry = descriptionOf(directory.value, notices);
  if (!entry) {
    const inner = directory.value.filter((e) => /\.gdtf$/i.test(e.name) && !/(^|\/)\._/.test(e.name));
    const scene = directory.value.some((e) => /(^|\/)generalscenedescription\.xml$/i.test(e.name));
    const [only] = inner;
    if (only && inner.length === 1 && !scene && depth === 0) {
      const unpacked = readZipEntry(bytes, only, MAX_ZIP_BYTES);
      if (!unpacked.ok) return unpacked;
      notices.add(
        `The file is a zip around a fixture file (${only.name.split('/').at(-1) ?? ''}); that one was read.`,
      );
      return openPackage(unpacked.value, notices, 1);
    }
    if (scene || inner.length > 1)
      return fail({
        what: scene
          ? 'The file is a whole scene with several fixtures, not one fixture file.'
          : `The file holds ${inner.length} fixture files.`,
        where: inner
          .slice(0, 5)
          .map((e) => `“${cleanText(e.name, 60)}”`)
          .join(', '),
        todo: 'Unpack it and import the fixture files in it one by one.',
      });
    return fail({
      what: 'The file holds no description.xml, so it is no fixture file (GDTF).',
      where: `its ${directory.value.length} parts`,
      todo: 'Choose a .gdtf file, or have its author save it again.',
    });
  }
  const plain = readZipEntry(bytes, entry, MAX_DESCRIPTION_BYTES);
  if (!plain.ok) return plain;
  return ok({
    description: decodeXml(plain.value),
    outline: (model) => {
      const wanted = `models/svg/${model}.svg`.toLowerCase();
      const found = directory.value.find((e) => e.name.toLowerCase() === wanted);
      if (!found) return undefined;
      const svg = readZipEntry(bytes, found, MAX_OUTLINE_BYTES);
      if (svg.ok) return svg.value;
      notices.add(`Its top view drawing was left out: ${svg.error.what}`);
      return undefined;
    },
  });
};

const startsAsXml = (bytes: Uint8Array): boolean => {
  const skip = bytes[0] === 0xef && bytes[1] === 0xbb ? 3 : (bytes[0] ?? 0) >= 0xfe ? 2 : 0;
  const head = String.fromCharCode(...bytes.subarray(skip, skip + 64))
    .replaceAll('\0', '')
    .trimStart();
  return head.startsWith('<');
};

const descriptionOf = (entries: readonly ZipEntry[], notices: Notices): ZipEntry | undefined => {
  const named = entries.filter((e) => /(^|\/)description\.xml$/i.test(e.name));
  const atRoot = named.filter((e) => !e.name.includes('/'));
  const exact = atRoot.filter((e) => e.name === 'description.xml');
  const candidates = [exact, atRoot, named].find((list) => list.length > 0) ?? [];
  if (candidates.length > 1)
    notices.add(
      `The file holds ${candidates.length} descriptions; the last one was read. Another program may read another.`,
    );
  else if (candidates.length === 1 && atRoot.length === 0)
    notices.add('The description is inside a folder of the file, where other programs may not find it.');
  return candidates.at(-1);
};
