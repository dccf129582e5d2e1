import { addressOf, cleanText, composed, IDENTITY, type Matrix, matrixOf } from './gdtf-values.ts';
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

/** A geometry met on a walk, with the references that lead to it, outermost first. */
export interface Visit {
  readonly geometry: Geometry;
  readonly references: readonly Geometry[];
  readonly place: Matrix;
  /** Model of the reference that took the geometry's place. */
  readonly model: string | undefined;
}

const NOT_GEOMETRY = new Set(['Break', 'PinPatch', 'Protocol']);
/** Instances in one mode. Real fixtures stay in the hundreds. */
const MAX_INSTANCES = 20_000;
const MAX_REFERENCE_DEPTH = 16;

/** The geometries of a fixture type. Bad reference offsets are told and taken as 1. */
export const geometryTree = (geometries: XmlNode | undefined, notices: Notices): GeometryTree => {
  const read = (xml: XmlNode): Geometry => ({
    name: attrOf(xml, 'Name') ?? '',
    type: xml.name,
    model: attrOf(xml, 'Model'),
    place: matrixOf(attrOf(xml, 'Position')),
    xml,
    children: xml.children.filter((c) => !NOT_GEOMETRY.has(c.name)).map(read),
    target: xml.name === 'GeometryReference' ? (attrOf(xml, 'Geometry') ?? '') : undefined,
    breaks: childrenOf(xml, 'Break').map((b) => readBreak(b, attrOf(xml, 'Name') ?? '', notices)),
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

const readBreak = (xml: XmlNode, reference: string, notices: Notices): ReferenceBreak => {
  const one = (name: string, text: string | undefined): number => {
    const n = text === undefined ? 1 : addressOf(text);
    if (n === undefined)
      notices.add(
        `Reference “${cleanText(reference)}”: its ${name} “${cleanText(text, 30)}” is no DMX address; 1 was taken. Check the footprint against the unit’s manual.`,
      );
    return n ?? 1;
  };
  return {
    number: one('break', attrOf(xml, 'DMXBreak')),
    offset: one('offset', attrOf(xml, 'DMXOffset')),
  };
};

/**
 * Walks a geometry and all below it, references followed once for each place they stand. Rings of references are
 * told and cut. Undefined where it grows beyond any real fixture.
 */
export const walkGeometry = (
  tree: GeometryTree,
  root: Geometry,
  notices: Notices,
): readonly Visit[] | undefined => {
  const visits: Visit[] = [];
  const walk = (
    g: Geometry,
    references: readonly Geometry[],
    path: readonly Geometry[],
    outer: Matrix,
    model?: string,
  ): boolean => {
    if (visits.length >= MAX_INSTANCES) return false;
    const place = composed(outer, g.place);
    visits.push({ geometry: g, references, place, model: model ?? g.model });
    if (g.target !== undefined) {
      const target = tree.byName.get(g.target);
      if (!target)
        notices.add(
          `Reference “${cleanText(g.name)}” names a geometry that is not there (“${cleanText(g.target)}”); its part is left out.`,
        );
      else if (path.includes(target) || references.length >= MAX_REFERENCE_DEPTH)
        notices.add(
          `Reference “${cleanText(g.name)}” leads back to the geometry it is in; it was not followed.`,
        );
      else if (!walk(target, [...references, g], [...path, target], place, g.model)) return false;
    }
    return g.children.every((c) => walk(c, references, [...path, c], place));
  };
  return walk(root, [], [root], IDENTITY) ? visits : undefined;
};
