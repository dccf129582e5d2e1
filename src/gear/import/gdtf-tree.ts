import { addressOf, cleanText, type Matrix, matrixOf } from './gdtf-values.ts';
import type { Notices } from './notices.ts';
import { attrOf, childrenOf, type XmlNode } from './xml.ts';

/** Where one break of a reference starts within its mode. Offsets count from 1. */
export interface ReferenceBreak {
  readonly number: number;
  readonly offset: number;
}

/** One element of the geometry tree. */
export interface Geometry {
  readonly name: string;
  /** The name made fit to show. */
  readonly label: string;
  /** Name of its element, like `Beam` or `GeometryReference`. */
  readonly type: string;
  readonly model: string | undefined;
  readonly place: Matrix;
  readonly xml: XmlNode;
  readonly children: readonly Geometry[];
  /** For a reference: the geometry it stands for. */
  readonly target: string | undefined;
  readonly breaks: readonly ReferenceBreak[];
}

export interface GeometryTree {
  readonly top: readonly Geometry[];
  /** Every geometry by name, top level first. */
  readonly byName: ReadonlyMap<string, Geometry>;
}

const NOT_GEOMETRY = new Set(['Break', 'PinPatch', 'Protocol']);
const MAX_BREAKS = 64;

/** The geometries of a fixture type. Bad reference offsets are told and taken as 1. */
export const geometryTree = (geometries: XmlNode | undefined, notices: Notices): GeometryTree => {
  const read = (xml: XmlNode): Geometry => ({
    name: attrOf(xml, 'Name') ?? '',
    label: cleanText(attrOf(xml, 'Name'), 40),
    type: xml.name,
    model: attrOf(xml, 'Model'),
    place: matrixOf(attrOf(xml, 'Position')),
    xml,
    children: xml.children.filter((c) => !NOT_GEOMETRY.has(c.name)).map(read),
    target: /^geometryreference$/i.test(xml.name) ? (attrOf(xml, 'Geometry') ?? '') : undefined,
    breaks: readBreaks(xml, notices),
  });
  const top = (geometries?.children ?? []).map(read);
  const byName = new Map<string, Geometry>();
  const index = (list: readonly Geometry[]): void => {
    for (const g of list) if (g.name !== '' && !byName.has(g.name)) byName.set(g.name, g);
    for (const g of list) index(g.children);
  };
  index(top);
  return { top, byName };
};

const readBreaks = (xml: XmlNode, notices: Notices): readonly ReferenceBreak[] => {
  const all = childrenOf(xml, 'Break');
  if (all.length === 0) return [];
  const reference = cleanText(attrOf(xml, 'Name'), 40);
  if (all.length > MAX_BREAKS)
    notices.add(`Reference “${reference}” has ${all.length} breaks; only ${MAX_BREAKS} were read.`);
  return all.slice(0, MAX_BREAKS).map((b) => readBreak(b, reference, notices));
};

const readBreak = (xml: XmlNode, reference: string, notices: Notices): ReferenceBreak => {
  const one = (name: string, text: string | undefined): number => {
    const n = text === undefined ? 1 : addressOf(text);
    if (n === undefined)
      notices.add(
        `Reference “${reference}”: its ${name} “${cleanText(text, 30)}” is no DMX address; 1 was taken. Check the footprint against the unit’s manual.`,
      );
    return n ?? 1;
  };
  return {
    number: one('break', attrOf(xml, 'DMXBreak')),
    offset: one('offset', attrOf(xml, 'DMXOffset')),
  };
};
