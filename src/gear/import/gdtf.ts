import { fail, ok, type Problem, type Result } from '../../kernel/result.ts';
import type { FixtureKind } from '../../plan/kinds/kinds.ts';
import { kindFromFile } from './gdtf-kind.ts';
import { openPackage } from './gdtf-package.ts';
import { cleanText } from './gdtf-values.ts';
import { Notices } from './notices.ts';
import type { ImportOptions } from './options.ts';
import { attrOf, childOf, parseXml } from './xml.ts';

/** A kind read from a fixture file, to be looked at before it is kept. */
export interface ImportedKind {
  readonly kind: FixtureKind;
  /** What was assumed, is odd or should be checked, in words. */
  readonly notices: readonly string[];
  /** What could not be read and was left out. */
  readonly problems: readonly Problem[];
}

/** Parts that say nothing this program uses, left out while reading. */
const SKIPPED = new Set([
  'ChannelSet',
  'SubChannelSet',
  'Wheels',
  'FTPresets',
  'FTMacros',
  'Relations',
  'Emitters',
  'Filters',
  'ColorSpace',
  'AdditionalColorSpaces',
  'Gamuts',
  'DMXProfiles',
  'CRIs',
]);

const LIMITS = {
  name: 'description.xml',
  maxDepth: 100,
  maxElements: 500_000,
  maxAttributes: 100,
  doctype: 'refuse',
  skip: SKIPPED,
} as const;

/**
 * Reads an open fixture file (GDTF, DIN SPEC 15800, versions 1.0 to 1.2, and older ones as far as they agree) into a
 * user's fixture kind: modes with footprints, power, mass, size, beam, connectors. Its own name and maker are kept as
 * other names and in the notes. What the file does not say is assumed and marked so in `basis`; watts it does not say
 * are marked as not known. Never throws for what a file holds: a file that cannot be read gives a problem.
 */
export const importGdtf = (
  bytes: Uint8Array,
  fileName: string,
  options: ImportOptions = {},
): Result<ImportedKind> => {
  const notices = new Notices();
  const named = (p: Problem): { readonly ok: false; readonly error: Problem } =>
    fail({ ...p, where: [cleanText(fileName, 80), p.where].filter(Boolean).join(': ') });
  const opened = openPackage(bytes, notices);
  if (!opened.ok) return named(opened.error);
  const xml = parseXml(opened.value.description, LIMITS);
  if (!xml.ok) return named(xml.error);
  const root = xml.value;
  const type = /^fixturetype$/i.test(root.name) ? root : childOf(root, 'FixtureType');
  if (!type)
    return named({
      what: `Its description is no fixture type (it begins with <${cleanText(root.name, 30)}>).`,
      where: 'description.xml',
      todo: 'Choose a fixture file (GDTF).',
    });
  const version = attrOf(root, 'DataVersion');
  if (version === undefined || !/^\d{1,3}\.\d{1,3}$/.test(version))
    notices.add('The file does not say which version of the format it follows.');
  else if (!/^1\.[012]$/.test(version))
    notices.add(
      Number(version) < 1
        ? `The file follows an early version of the format (${version}); check its modes against the unit’s manual.`
        : `The file follows a version of the format (${version}) newer than 1.2; what is new in it was not read.`,
    );
  const kind = kindFromFile(type, opened.value, { ...options, fileName, version: version ?? '' }, notices);
  return ok({ kind, notices: notices.lines, problems: notices.problems });
};
