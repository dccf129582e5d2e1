import { type OutlineCommand, pathCommands } from './svg-path.ts';
import type { XmlNode } from './xml.ts';

/** A flat transform: x′ = a·x + c·y + e, y′ = b·x + d·y + f. */
export type Flat = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const PLAIN_FLAT: Flat = [1, 0, 0, 1, 0, 0];

export const joinFlat = (m: Flat, n: Flat): Flat => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Path commands under a flat transform. */
export const movedPath = (d: readonly OutlineCommand[], m: Flat): readonly OutlineCommand[] => {
  const at = (x: number, y: number): readonly [number, number] => [
    m[0] * x + m[2] * y + m[4],
    m[1] * x + m[3] * y + m[5],
  ];
  return d.map((c): OutlineCommand => {
    if (c[0] === 'Z') return c;
    if (c[0] === 'C') return ['C', ...at(c[1], c[2]), ...at(c[3], c[4]), ...at(c[5], c[6])];
    return [c[0], ...at(c[1], c[2])];
  });
};

const numbersIn = (text: string): readonly number[] =>
  (text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?/g) ?? []).map(Number);

/** Reads a `transform` attribute (SVG 1.1, 7.6). What cannot be read leaves the shape where it is. */
const flatOf = (text: string | undefined): Flat => {
  let out = PLAIN_FLAT;
  for (const m of (text ?? '').slice(0, 4000).matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const [a = 0, b, c, d, e, f] = numbersIn(m[2] ?? '');
    const turn = (deg: number): Flat => {
      const r = (deg * Math.PI) / 180;
      return [Math.cos(r), Math.sin(r), -Math.sin(r), Math.cos(r), 0, 0];
    };
    const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);
    const one: Flat =
      m[1] === 'matrix'
        ? [a, b ?? 0, c ?? 0, d ?? 1, e ?? 0, f ?? 0]
        : m[1] === 'translate'
          ? [1, 0, 0, 1, a, b ?? 0]
          : m[1] === 'scale'
            ? [a, 0, 0, b ?? a, 0, 0]
            : m[1] === 'rotate'
              ? joinFlat(joinFlat([1, 0, 0, 1, b ?? 0, c ?? 0], turn(a)), [1, 0, 0, 1, -(b ?? 0), -(c ?? 0)])
              : m[1] === 'skewX'
                ? [1, 0, tan(a), 1, 0, 0]
                : m[1] === 'skewY'
                  ? [1, tan(a), 0, 1, 0, 0]
                  : PLAIN_FLAT;
    out = joinFlat(out, one);
  }
  return out;
};

const KAPPA = 0.5522847498307936;

const ellipse = (cx: number, cy: number, rx: number, ry: number): readonly OutlineCommand[] => [
  ['M', cx + rx, cy],
  ['C', cx + rx, cy + KAPPA * ry, cx + KAPPA * rx, cy + ry, cx, cy + ry],
  ['C', cx - KAPPA * rx, cy + ry, cx - rx, cy + KAPPA * ry, cx - rx, cy],
  ['C', cx - rx, cy - KAPPA * ry, cx - KAPPA * rx, cy - ry, cx, cy - ry],
  ['C', cx + KAPPA * rx, cy - ry, cx + rx, cy - KAPPA * ry, cx + rx, cy],
  ['Z'],
];

const shapeOf = (name: string, node: XmlNode): readonly OutlineCommand[] => {
  const n = (attr: string): number => numbersIn(node.attrs[attr] ?? '')[0] ?? 0;
  switch (name) {
    case 'path':
      return pathCommands(node.attrs.d ?? '');
    case 'rect': {
      const [x, y, w, h] = [n('x'), n('y'), n('width'), n('height')];
      if (!(w > 0 && h > 0)) return [];
      return [['M', x, y], ['L', x + w, y], ['L', x + w, y + h], ['L', x, y + h], ['Z']];
    }
    case 'circle':
      return n('r') > 0 ? ellipse(n('cx'), n('cy'), n('r'), n('r')) : [];
    case 'ellipse':
      return n('rx') > 0 && n('ry') > 0 ? ellipse(n('cx'), n('cy'), n('rx'), n('ry')) : [];
    case 'line':
      return [
        ['M', n('x1'), n('y1')],
        ['L', n('x2'), n('y2')],
      ];
    case 'polyline':
    case 'polygon': {
      const p = numbersIn(node.attrs.points ?? '');
      const out: OutlineCommand[] = [];
      for (let i = 0; i + 1 < p.length; i += 2) out.push([i === 0 ? 'M' : 'L', p[i] ?? 0, p[i + 1] ?? 0]);
      return name === 'polygon' && out.length > 0 ? [...out, ['Z']] : out;
    }
    default:
      return [];
  }
};

/** Parts that are not drawn where they stand. */
const NOT_DRAWN = new Set([
  'defs',
  'clipPath',
  'mask',
  'symbol',
  'pattern',
  'marker',
  'metadata',
  'title',
  'desc',
]);

/**
 * All shapes of a drawing as plain paths, their transforms applied: no styles, links, scripts, pictures or text.
 * Coordinates are the drawing's own.
 */
export const shapesOf = (svg: XmlNode): readonly (readonly OutlineCommand[])[] => {
  const out: (readonly OutlineCommand[])[] = [];
  const walk = (node: XmlNode, outer: Flat): void => {
    const name = node.name.replace(/^.*:/, '');
    if (NOT_DRAWN.has(name) || node.attrs.display === 'none') return;
    const m = joinFlat(outer, flatOf(node.attrs.transform));
    const d = shapeOf(name, node);
    if (d.length > 1) out.push(movedPath(d, m));
    if (name === 'svg' || name === 'g' || name === 'a') for (const c of node.children) walk(c, m);
  };
  walk(svg, PLAIN_FLAT);
  return out.filter((d) => d.every((c) => c.every((v) => typeof v !== 'number' || Math.abs(v) < 1e6)));
};
