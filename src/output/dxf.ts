import type {
  DisplayItem,
  DisplayList,
  DrawingLayer,
  PathCommand,
  Primitive,
} from '../drawing/display-list.ts';
import { DRAWING_LAYERS } from '../drawing/display-list.ts';
import { itemsBox } from '../drawing/draw-floor.ts';
import { hatchLines } from '../drawing/hatch.ts';
import { scaledSymbol } from '../drawing/symbols.ts';
import type { Point } from '../kernel/geometry.ts';
import type { LengthUnits } from '../kernel/units.ts';

/*
 * The drawing as DXF of release 12 (AC1009), the oldest that every reader takes: one layer per subject, symbols as blocks,
 * texts as texts, all in floor millimetres or inches with y up. Curves become short straight pieces, since release 12 has no splines;
 * pictures and plain areas of colour are left out.
 */

/** Colour numbers of the layers; 7 is black or white, whichever the ground asks for. */
const LAYER_COLORS: Readonly<Record<DrawingLayer, number>> = {
  underlay: 9,
  coverage: 9,
  architecture: 7,
  set: 8,
  beams: 8,
  cables: 30,
  data: 94,
  stands: 8,
  gear: 7,
  notes: 5,
  dimensions: 8,
  labels: 7,
};

const layerName = (l: DrawingLayer): string => l.toUpperCase();
const CURVE_PIECES = 8;

const num = (n: number): string => {
  const s = String(Number(n.toFixed(4)));
  return s.includes('e') ? n.toFixed(4) : s;
};

/** Group codes and values, a line each. */
const groups = (...pairs: readonly (readonly [number, string | number])[]): string =>
  pairs.map(([code, v]) => `${code}\r\n${typeof v === 'number' ? num(v) : v}\r\n`).join('');

/** A text for release 12: what is not plain ASCII by its code point, line breaks as spaces. */
const plain = (s: string): string =>
  [...s]
    .map((c) => {
      const n = c.codePointAt(0) ?? 32;
      if (n < 32 || n === 127) return ' ';
      if (n < 127) return c;
      return n > 0xffff ? '?' : `\\U+${n.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');

interface Line {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** Paths as polylines. */
const polylines = (d: readonly PathCommand[]): readonly Line[] => {
  const out: { points: Point[]; closed: boolean }[] = [];
  let at: Point = { xMm: 0, yMm: 0 };
  for (const c of d) {
    const line = out.at(-1);
    if (c[0] === 'M') {
      at = { xMm: c[1], yMm: c[2] };
      out.push({ points: [at], closed: false });
    } else if (c[0] === 'L') {
      at = { xMm: c[1], yMm: c[2] };
      line?.points.push(at);
    } else if (c[0] === 'C') {
      const from = at;
      for (let i = 1; i <= CURVE_PIECES; i++) {
        const t = i / CURVE_PIECES;
        const u = 1 - t;
        const k = [u ** 3, 3 * u * u * t, 3 * u * t * t, t ** 3] as const;
        line?.points.push({
          xMm: k[0] * from.xMm + k[1] * c[1] + k[2] * c[3] + k[3] * c[5],
          yMm: k[0] * from.yMm + k[1] * c[2] + k[2] * c[4] + k[3] * c[6],
        });
      }
      at = { xMm: c[5], yMm: c[6] };
    } else if (line) {
      line.closed = true;
      at = line.points[0] ?? at;
    }
  }
  return out.filter((l) => l.points.length > 1);
};

const straight = (a: Point, b: Point, layer: string, dashed = false): string =>
  groups(
    [0, 'LINE'],
    [8, layer],
    ...(dashed ? ([[6, 'DASHED']] as const) : []),
    [10, a.xMm],
    [20, -a.yMm],
    [30, 0],
    [11, b.xMm],
    [21, -b.yMm],
    [31, 0],
  );

const polyline = (l: Line, layer: string, dashed: boolean): string => {
  const [a, b] = l.points;
  if (l.points.length === 2 && a && b) return straight(a, b, layer, dashed);
  return (
    groups(
      [0, 'POLYLINE'],
      [8, layer],
      ...(dashed ? ([[6, 'DASHED']] as const) : []),
      [66, 1],
      [70, l.closed ? 1 : 0],
      [10, 0],
      [20, 0],
      [30, 0],
    ) +
    l.points.map((p) => groups([0, 'VERTEX'], [8, layer], [10, p.xMm], [20, -p.yMm], [30, 0])).join('') +
    groups([0, 'SEQEND'], [8, layer])
  );
};

const circle = (x: number, y: number, r: number, layer: string): string =>
  groups([0, 'CIRCLE'], [8, layer], [10, x], [20, -y], [30, 0], [40, r]);

const ALIGN = { left: 0, center: 1, right: 2 } as const;

const textEntity = (p: Extract<Primitive, { kind: 'text' }>, nominal: number, layer: string): string => {
  const x = p.xMm + p.dxPaperMm * nominal;
  const y = -(p.yMm + p.dyPaperMm * nominal);
  const align = ALIGN[p.align];
  return groups(
    [0, 'TEXT'],
    [8, layer],
    [10, x],
    [20, y],
    [30, 0],
    [40, p.capMm * nominal],
    [1, plain(p.text)],
    [50, -(p.rotationDeg ?? 0)],
    [7, 'STANDARD'],
    ...(align === 0
      ? []
      : ([
          [72, align],
          [11, x],
          [21, y],
          [31, 0],
        ] as const)),
  );
};

type SymbolItem = Extract<Primitive, { kind: 'symbol' }>;

/** Blocks of symbols by look, numbered as they are met. */
const blockNames = () => {
  const names = new Map<string, { name: string; symbol: SymbolItem }>();
  return {
    nameOf: (s: SymbolItem): string => {
      const key = `${s.symbolId}|${num(s.lengthMm)}|${num(s.widthMm)}|${s.broken}`;
      const known = names.get(key);
      if (known) return known.name;
      const name = `${s.symbolId
        .toUpperCase()
        .replace(/[^A-Z0-9]/g, '_')
        .slice(0, 24)}_${names.size + 1}`;
      names.set(key, { name, symbol: s });
      return name;
    },
    all: () => [...names.values()],
  };
};

const primitive = (
  p: Primitive,
  nominal: number,
  layer: string,
  blockOf: (s: SymbolItem) => string,
): string => {
  switch (p.kind) {
    case 'path': {
      const hatch = p.fill?.hatch;
      const lines = hatch
        ? hatchLines(p.d, hatch.angleDeg, hatch.spacingMm * nominal).map(([a, b]) => straight(a, b, layer))
        : [];
      const own = p.stroke
        ? polylines(p.d).map((l) => polyline(l, layer, p.stroke?.dashMm !== undefined))
        : [];
      return [...lines, ...own].join('');
    }
    case 'circle':
      return p.stroke ? circle(p.xMm, p.yMm, p.space === 'floor' ? p.rMm : p.rMm * nominal, layer) : '';
    case 'text':
      return textEntity(p, nominal, layer);
    case 'symbol':
      return groups(
        [0, 'INSERT'],
        [8, layer],
        [2, blockOf(p)],
        [10, p.xMm],
        [20, -p.yMm],
        [30, 0],
        [50, -p.rotationDeg],
      );
    case 'image':
      return '';
  }
};

const blockText = (name: string, s: SymbolItem): string =>
  groups([0, 'BLOCK'], [8, '0'], [2, name], [70, 0], [10, 0], [20, 0], [30, 0], [3, name], [1, '']) +
  scaledSymbol(s.symbolId, s.lengthMm, s.widthMm)
    .flatMap(({ line, d }) => polylines(d).map((l) => polyline(l, '0', s.broken && line === 'outline')))
    .join('') +
  groups([0, 'ENDBLK'], [8, '0']);

const tables = (nominal: number): string => {
  const dash = [1.2 * nominal, -0.8 * nominal] as const;
  const layers = [
    groups([0, 'LAYER'], [2, '0'], [70, 0], [62, 7], [6, 'CONTINUOUS']),
    ...DRAWING_LAYERS.map((l) =>
      groups([0, 'LAYER'], [2, layerName(l)], [70, 0], [62, LAYER_COLORS[l]], [6, 'CONTINUOUS']),
    ),
  ];
  return (
    groups([0, 'SECTION'], [2, 'TABLES']) +
    groups([0, 'TABLE'], [2, 'LTYPE'], [70, 2]) +
    groups([0, 'LTYPE'], [2, 'CONTINUOUS'], [70, 0], [3, 'Solid line'], [72, 65], [73, 0], [40, 0]) +
    groups(
      [0, 'LTYPE'],
      [2, 'DASHED'],
      [70, 0],
      [3, '__ __ __'],
      [72, 65],
      [73, 2],
      [40, 2 * nominal],
      [49, dash[0]],
      [49, dash[1]],
    ) +
    groups([0, 'ENDTAB']) +
    groups([0, 'TABLE'], [2, 'LAYER'], [70, layers.length]) +
    layers.join('') +
    groups([0, 'ENDTAB']) +
    groups([0, 'TABLE'], [2, 'STYLE'], [70, 1]) +
    groups(
      [0, 'STYLE'],
      [2, 'STANDARD'],
      [70, 0],
      [40, 0],
      [41, 1],
      [50, 0],
      [71, 0],
      [42, 1],
      [3, 'txt'],
      [4, ''],
    ) +
    groups([0, 'ENDTAB']) +
    groups([0, 'ENDSEC'])
  );
};

const entities = (item: DisplayItem, nominal: number, blockOf: (s: SymbolItem) => string): string =>
  item.primitives.map((p) => primitive(p, nominal, layerName(item.layer), blockOf)).join('');

/** Unit of the lengths of a file. */
export type DxfUnit = 'mm' | 'in';

/** The unit a crew draws in that gives lengths in these. */
export const dxfUnit = (units: LengthUnits): DxfUnit => (units === 'imperial' ? 'in' : 'mm');

const MM_PER_INCH = 25.4;
/** Codes of coordinates, radii, heights of texts and lengths of dashes. */
const LENGTH_CODES: ReadonlySet<string> = new Set(['10', '11', '20', '21', '30', '31', '40', '49']);

/** The text of a file in millimetres with all its lengths in inches; what are no lengths stay as they are. */
const inInches = (text: string): string => {
  const lines = text.split('\r\n');
  let subject = '';
  for (let i = 0; i + 1 < lines.length; i += 2) {
    const [code, value] = [lines[i] ?? '', lines[i + 1] ?? ''];
    if (code === '0' || code === '9') subject = value;
    if (!LENGTH_CODES.has(code) || subject === 'STYLE' || subject === '$LTSCALE') continue;
    lines[i + 1] = String(Number((Number(value) / MM_PER_INCH).toFixed(6)));
  }
  return lines.join('\r\n');
};

/** A drawn floor as the text of a DXF file, in millimetres unless inches are asked for. The same drawing gives the same text. */
export const displayListToDxf = (list: DisplayList, unit: DxfUnit = 'mm'): string => {
  const blocks = blockNames();
  const body = list.items.map((i) => entities(i, list.nominalScale, blocks.nameOf)).join('');
  const box = itemsBox(list.items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const header =
    groups([999, `Lengths in ${unit === 'in' ? 'inches' : 'millimetres'}`]) +
    groups([0, 'SECTION'], [2, 'HEADER']) +
    groups([9, '$ACADVER'], [1, 'AC1009']) +
    groups([9, '$EXTMIN'], [10, box.minX], [20, -box.maxY], [30, 0]) +
    groups([9, '$EXTMAX'], [10, box.maxX], [20, -box.minY], [30, 0]) +
    groups([9, '$LTSCALE'], [40, 1]) +
    groups([0, 'ENDSEC']);
  const whole =
    header +
    tables(list.nominalScale) +
    groups([0, 'SECTION'], [2, 'BLOCKS']) +
    blocks
      .all()
      .map(({ name, symbol }) => blockText(name, symbol))
      .join('') +
    groups([0, 'ENDSEC']) +
    groups([0, 'SECTION'], [2, 'ENTITIES']) +
    body +
    groups([0, 'ENDSEC'], [0, 'EOF']);
  return unit === 'in' ? inInches(whole) : whole;
};
