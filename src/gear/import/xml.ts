import { strFromU8 } from 'fflate';
import { SaxesParser } from 'saxes';
import { fail, ok, type Problem, type Result } from '../../kernel/result.ts';

/** An element with its attributes and child elements. Text between elements is not kept: fixture files have none. */
export interface XmlNode {
  readonly name: string;
  readonly attrs: Readonly<Record<string, string>>;
  readonly children: readonly XmlNode[];
}

export interface XmlLimits {
  /** What the text is, for messages. */
  readonly name: string;
  readonly maxDepth: number;
  readonly maxElements: number;
  readonly maxAttributes: number;
  /** A document type is refused, or stepped over without being read. Entities of its own are never expanded. */
  readonly doctype: 'refuse' | 'ignore';
  /** Elements left out with all they hold. */
  readonly skip?: ReadonlySet<string>;
}

class Stop extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.what);
    this.problem = problem;
  }
}

const CHUNK = 65536;

/** Text of an XML part: UTF-8, UTF-16 with a byte order mark, or Latin-1 where it says so and is no UTF-8. */
export const decodeXml = (bytes: Uint8Array): string => {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return utf16(bytes.subarray(2), 0);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return utf16(bytes.subarray(2), 1);
  // UTF-16 without a mark: every second byte of the first letters is zero.
  if (bytes[0] === 0x3c && bytes[1] === 0) return utf16(bytes, 0);
  if (bytes[0] === 0 && bytes[1] === 0x3c) return utf16(bytes, 1);
  // Some writers fill up with zero bytes.
  let end = bytes.length;
  while (end > 0 && bytes[end - 1] === 0) end--;
  const text = strFromU8(bytes.subarray(0, end))
    .replace(/^\ufeff/, '')
    .trimStart();
  const latin = /^<\?xml[^>]*encoding\s*=\s*["'](iso-8859-1|latin-?1|windows-1252|us-ascii)["']/i;
  return text.includes('\ufffd') && latin.test(text.slice(0, 200))
    ? strFromU8(bytes.subarray(0, end), true).trimStart()
    : text;
};

const utf16 = (bytes: Uint8Array, high: 0 | 1): string => {
  const parts: string[] = [];
  for (let at = 0; at + 1 < bytes.length; at += CHUNK) {
    const codes: number[] = [];
    for (let i = at; i < at + CHUNK && i + 1 < bytes.length; i += 2) {
      const a = bytes[i] ?? 0;
      const b = bytes[i + 1] ?? 0;
      codes.push(high === 0 ? a | (b << 8) : (a << 8) | b);
    }
    parts.push(String.fromCharCode(...codes));
  }
  return parts.join('').trimStart();
};

/**
 * Reads XML into a tree within limits. Gives a problem with line and column for text that is not well-formed,
 * is nested too deeply, has too many elements, or has a document type where that is refused.
 */
export const parseXml = (text: string, limits: XmlLimits): Result<XmlNode> => {
  const parser = new SaxesParser<{ xmlns: false }>({ xmlns: false });
  const place = (): string => `line ${parser.line}, column ${parser.column} of ${limits.name}`;
  const stop = (what: string, todo: string): never => {
    throw new Stop({ what, where: place(), todo });
  };
  let root: XmlNode | undefined;
  const open: { readonly children: XmlNode[]; readonly skipped: boolean }[] = [];
  let elements = 0;
  let attributes = 0;

  parser.on('error', (e) =>
    stop(
      `${limits.name} is not well-formed XML: ${e.message.replace(/^[^ ]*?\d+:\d+: /, '').slice(0, 160)}`,
      'Get the file again, or have its author save it anew.',
    ),
  );
  parser.on('doctype', () => {
    if (limits.doctype === 'refuse')
      stop(
        `${limits.name} declares a document type, which fixture files never do and which can hide harmful entities.`,
        'Do not use this file unless its author can give one without <!DOCTYPE …>.',
      );
  });
  parser.on('attribute', () => {
    if (++attributes > limits.maxAttributes)
      stop(`An element of ${limits.name} has more than ${limits.maxAttributes} attributes.`, TOO_MUCH);
  });
  parser.on('opentag', (tag) => {
    attributes = 0;
    if (++elements > limits.maxElements)
      stop(`${limits.name} has more than ${limits.maxElements} elements.`, TOO_MUCH);
    if (open.length >= limits.maxDepth)
      stop(`${limits.name} is nested more than ${limits.maxDepth} elements deep.`, TOO_MUCH);
    const parent = open.at(-1);
    const skipped = parent?.skipped === true || limits.skip?.has(tag.name) === true;
    const children: XmlNode[] = [];
    if (!skipped) {
      const node: XmlNode = { name: tag.name, attrs: tag.attributes, children };
      if (parent) parent.children.push(node);
      else root ??= node;
    }
    open.push({ children, skipped });
  });
  parser.on('closetag', () => {
    open.pop();
  });

  try {
    for (let at = 0; at < text.length; at += CHUNK) parser.write(text.slice(at, at + CHUNK));
    parser.close();
  } catch (error) {
    if (error instanceof Stop) return fail(error.problem);
    throw error;
  }
  return root
    ? ok(root)
    : fail({ what: `${limits.name} is empty.`, todo: 'Get the file again from where it came from.' });
};

const TOO_MUCH = 'No real fixture needs so much. Ask its author for a plain file.';

/** All child elements with this name; where none is written so, those whose letters differ in case only. */
export const childrenOf = (node: XmlNode | undefined, name: string): readonly XmlNode[] => {
  const exact = node?.children.filter((c) => c.name === name) ?? [];
  if (exact.length > 0 || !node) return exact;
  const low = name.toLowerCase();
  return node.children.filter((c) => c.name.length === low.length && c.name.toLowerCase() === low);
};

/** The first child element with this name. */
export const childOf = (node: XmlNode | undefined, name: string): XmlNode | undefined =>
  childrenOf(node, name)[0];

/** An attribute without white space at its ends, found whatever its case; undefined where it is absent or empty. */
export const attrOf = (node: XmlNode | undefined, name: string): string | undefined => {
  if (!node) return undefined;
  let value = node.attrs[name];
  if (value === undefined) {
    const low = name.toLowerCase();
    const key = Object.keys(node.attrs).find((k) => k.length === low.length && k.toLowerCase() === low);
    value = key === undefined ? undefined : node.attrs[key];
  }
  const text = value?.trim();
  return text === '' ? undefined : text;
};
