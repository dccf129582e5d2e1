import { ok, type Result } from '../../kernel/result.ts';
import { decodeXml, parseXml, type XmlNode } from './xml.ts';

/** An outline above this is not carried along. */
export const MAX_OUTLINE_CHARS = 48 * 1024;

const SHAPES: Readonly<Record<string, readonly string[]>> = {
  svg: ['viewBox', 'width', 'height'],
  g: ['transform'],
  path: ['d', 'transform'],
  rect: ['x', 'y', 'width', 'height', 'rx', 'ry', 'transform'],
  circle: ['cx', 'cy', 'r', 'transform'],
  ellipse: ['cx', 'cy', 'rx', 'ry', 'transform'],
  line: ['x1', 'y1', 'x2', 'y2', 'transform'],
  polyline: ['points', 'transform'],
  polygon: ['points', 'transform'],
};
/** Numbers, path letters, names of transforms, units: what drawn shapes are written with, and nothing else. */
const PLAIN = /^[\w\s.,+\-()%]*$/;

/**
 * A drawing reduced to bare shapes: no styles, links, scripts, pictures or text, written anew from what was
 * understood. Undefined where nothing is left or it is too large to carry along.
 */
export const plainOutline = (bytes: Uint8Array): Result<string | undefined> => {
  const read = parseXml(decodeXml(bytes), {
    name: 'the top view drawing',
    maxDepth: 40,
    maxElements: 20_000,
    maxAttributes: 60,
    doctype: 'ignore',
  });
  if (!read.ok) return read;
  if (localName(read.value) !== 'svg') return ok(undefined);
  const text = written(read.value, true);
  const drawn = /<(path|rect|circle|ellipse|line|polyline|polygon)\b/.test(text);
  return ok(drawn && text.length <= MAX_OUTLINE_CHARS ? text : undefined);
};

const localName = (node: XmlNode): string => node.name.replace(/^svg:/, '');

const written = (node: XmlNode, root = false): string => {
  const name = localName(node);
  const allowed = Object.hasOwn(SHAPES, name) && (root || name !== 'svg') ? SHAPES[name] : undefined;
  if (!allowed) return '';
  const attrs = allowed
    .flatMap((a) => {
      const value = node.attrs[a]?.replace(/\s+/g, ' ').trim();
      return value !== undefined && PLAIN.test(value) ? [` ${a}="${value}"`] : [];
    })
    .join('');
  const inner = node.children.map((c) => written(c)).join('');
  const space = root ? ' xmlns="http://www.w3.org/2000/svg"' : '';
  return inner ? `<${name}${space}${attrs}>${inner}</${name}>` : `<${name}${space}${attrs}/>`;
};
