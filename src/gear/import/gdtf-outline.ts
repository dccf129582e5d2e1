import { ok, type Result } from '../../kernel/result.ts';
import type { Package } from './gdtf-package.ts';
import type { Matrix } from './gdtf-values.ts';
import { numberOf } from './gdtf-values.ts';
import type { Visit } from './gdtf-walk.ts';
import type { Notices } from './notices.ts';
import type { OutlineCommand } from './svg-path.ts';
import { type Flat, movedPath, shapesOf } from './svg-shapes.ts';
import { attrOf, childrenOf, decodeXml, parseXml, type XmlNode } from './xml.ts';

/** An outline above this is not carried along. */
export const MAX_OUTLINE_CHARS = 48 * 1024;
/** Models of one unit that are drawn; a wall of pixels is drawn by its body. */
const MAX_PARTS = 40;

type Shapes = readonly (readonly OutlineCommand[])[];

/** The shapes of a drawing as plain paths; an empty list where it holds none. */
export const plainShapes = (bytes: Uint8Array): Result<Shapes> => {
  const read = parseXml(decodeXml(bytes), {
    name: 'the top view drawing',
    maxDepth: 40,
    maxElements: 20_000,
    maxAttributes: 60,
    doctype: 'ignore',
  });
  if (!read.ok) return read;
  return ok(/(^|:)svg$/.test(read.value.name) ? shapesOf(read.value) : []);
};

interface Box {
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

const boxOf = (shapes: Shapes): Box => {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const d of shapes)
    for (const c of d)
      for (let i = 1; i + 1 < c.length; i += 2) {
        const [x, y] = [Number(c[i]), Number(c[i + 1])];
        box.minX = Math.min(box.minX, x);
        box.maxX = Math.max(box.maxX, x);
        box.minY = Math.min(box.minY, y);
        box.maxY = Math.max(box.maxY, y);
      }
  return box;
};

interface ModelView {
  readonly shapes: Shapes;
  /** Where the drawing's zero is taken to be. */
  readonly origin: readonly [number, number];
}

const DRAWN_MM = 30_000;

/**
 * One model's top view brought to millimetres about the model's own middle. The standard's drawings are 1:1 in
 * millimetres with an offset to the insertion point; where none is given and the drawing lies to one side of its zero,
 * its middle is taken. A drawing in other units is stretched to the model's length and width.
 */
const viewOf = (model: XmlNode, shapes: Shapes): ModelView | undefined => {
  const box = boxOf(shapes);
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  if (!(w > 0 && h > 0)) return undefined;
  const wantW = (numberOf(attrOf(model, 'Length')) ?? 0) * 1000;
  const wantH = (numberOf(attrOf(model, 'Width')) ?? 0) * 1000;
  const near = (a: number, b: number): boolean => b <= 0 || (a / b > 0.5 && a / b < 2);
  const kx = near(w, wantW) || wantW > DRAWN_MM ? 1 : wantW / w;
  const ky = near(h, wantH) || wantH > DRAWN_MM ? 1 : wantH / h;
  const given = [numberOf(attrOf(model, 'SVGOffsetX')), numberOf(attrOf(model, 'SVGOffsetY'))];
  const aside = box.minX >= 0 || box.minY >= 0;
  const origin: readonly [number, number] =
    given.some((n) => n !== undefined && n !== 0) || !aside
      ? [given[0] ?? 0, given[1] ?? 0]
      : [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const scaled = shapes.map((d) => movedPath(d, [kx, 0, 0, ky, 0, 0]));
  return { shapes: scaled, origin: [origin[0] * kx, origin[1] * ky] };
};

/** The placement as a flat one seen from above; undefined where the part is tipped over. x right, y down. */
const flatPlace = (m: Matrix, origin: readonly [number, number]): Flat | undefined => {
  const [a = 1, b = 0, , x = 0, c = 0, d = 1, , y = 0, , , zz = 1] = m;
  if (Math.abs(zz - 1) > 0.02) return undefined;
  // In the file y runs away from the viewer, in a drawing down.
  const flat: Flat = [a, -c, -b, d, x * 1000, -y * 1000];
  const [ox, oy] = origin;
  return [
    flat[0],
    flat[1],
    flat[2],
    flat[3],
    flat[4] - flat[0] * ox - flat[2] * oy,
    flat[5] - flat[1] * ox - flat[3] * oy,
  ];
};

const text = (d: readonly OutlineCommand[]): string =>
  d.map(([letter, ...n]) => letter + n.map((v) => Number(v.toFixed(1))).join(' ')).join('');

/**
 * The unit as seen from above: the top views of its models where they stand, as plain absolute paths in millimetres.
 * Undefined, with a notice where there was something to draw, when none can be used.
 */
export const fileOutline = (
  models: XmlNode | undefined,
  file: Package,
  visits: readonly Visit[],
  notices: Notices,
): string | undefined => {
  const byName = new Map(childrenOf(models, 'Model').map((m) => [attrOf(m, 'Name') ?? '', m]));
  const views = new Map<string, ModelView | undefined>();
  const all: (readonly OutlineCommand[])[] = [];
  let parts = 0;
  let problem = '';
  for (const v of visits) {
    const model = byName.get(v.model ?? '');
    const name = attrOf(model, 'File');
    if (!model || name === undefined || parts >= MAX_PARTS) continue;
    if (!views.has(name)) {
      const bytes = file.outline(name);
      const read = bytes && plainShapes(bytes);
      if (read && !read.ok) problem ||= read.error.what;
      const view = read?.ok && read.value.length > 0 ? viewOf(model, read.value) : undefined;
      if (read?.ok && !view) problem ||= 'it holds no plain shapes';
      views.set(name, view);
    }
    const view = views.get(name);
    const flat = view && flatPlace(v.place, view.origin);
    if (!view || !flat) continue;
    parts++;
    all.push(...view.shapes.map((d) => movedPath(d, flat)));
  }
  const box = boxOf(all);
  const svg =
    all.length === 0
      ? ''
      : `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${[box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY].map((n) => Number(n.toFixed(1))).join(' ')}">${all.map((d) => `<path d="${text(d)}"/>`).join('')}</svg>`;
  if (svg.length > MAX_OUTLINE_CHARS) problem = 'it holds too many shapes';
  if (svg === '' || svg.length > MAX_OUTLINE_CHARS) {
    if (problem) notices.add(`Its top view drawing was left out: ${problem}.`);
    return undefined;
  }
  notices.add('The file has a top view drawing; its bare shapes are kept and drawn on the plan.');
  return svg;
};
