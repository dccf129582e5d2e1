import { contentHash } from '../../kernel/canonical.ts';
import { cleanText } from './gdtf-values.ts';
import { attrOf, childOf, childrenOf, type XmlNode } from './xml.ts';

/** Who the unit is in its own file's words, and a slug that stays the same for later versions of the file. */
export const identityOf = (type: XmlNode) => {
  const get = (name: string): string => cleanText(attrOf(type, name));
  const name = get('Name') || get('LongName') || get('ShortName') || 'unnamed';
  const maker = get('Manufacturer');
  const typeId = get('FixtureTypeID').toUpperCase();
  const revision = childrenOf(childOf(type, 'Revisions'), 'Revision').at(-1);
  const known = /[1-9A-F]/.test(typeId.replace(/[^0-9A-F]/g, ''));
  const key = contentHash(known ? typeId : `${maker}/${name}`).slice(0, 6);
  const word =
    name
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 40) || 'unit';
  const file = {
    name,
    maker,
    ...(known ? { typeId } : {}),
    ...(revision ? { revised: cleanText(attrOf(revision, 'Date'), 40) } : {}),
  };
  return {
    slug: `file-${word}-${key}`,
    also: [...new Set([name, get('LongName'), get('ShortName'), maker])].filter(Boolean),
    words: [get('LongName') || name, maker && `by ${maker}`].filter(Boolean).join(' '),
    file,
  };
};
