import type { Point } from '../kernel/geometry.ts';
import { underlayPoint } from '../plan/edits/underlays.ts';
import { type LineWork, lineWorkOf } from '../plan/line-work.ts';
import { recordOf, recordsOf } from '../plan/plan.ts';
import type { Blob, Underlay } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { ColorRole, DisplayItem, PathCommand, Primitive } from './display-list.ts';
import { itemOf, pen, WEIGHT } from './prims.ts';

/** Points of line work in one item, so that what is out of view need not be painted. */
const CHUNK_POINTS = 4000;
/** Words smaller than this are not drawn: on paper none are that could not be read. */
const LEAST_CAP_MM = { screen: 0.8, paper: 1.8 } as const;

/** Everything laid under a floor, the lowest first. */
export const underlayItems = (ctx: DrawContext): readonly (DisplayItem | undefined)[] =>
  recordsOf(ctx.plan, 'underlay')
    .filter(
      (u) =>
        u.floorId === ctx.floorId &&
        !u.hidden &&
        u.fadePct < 100 &&
        (u.onPaper !== false || !ctx.options.forPaper) &&
        (!ctx.only || ctx.only.has(u.id)),
    )
    .flatMap((u) => {
      const blob = recordOf(ctx.plan, 'blob', u.blobId);
      if (!blob) return [];
      return u.what === 'image' ? [imageItem(ctx, u, blob)] : lineItems(ctx, u, blob);
    });

const imageItem = (ctx: DrawContext, u: Underlay, blob: Blob): DisplayItem | undefined =>
  memoItem(u, 'underlay', [blob], () => {
    const { mediaType } = blob;
    if (mediaType !== 'image/png' && mediaType !== 'image/jpeg') return undefined;
    return itemOf(`underlay:${u.id}`, u.id, 'underlay', ctx.nominalScale, [
      {
        kind: 'image',
        blobId: blob.id,
        mediaType,
        base64: blob.base64,
        xMm: u.at.xMm,
        yMm: u.at.yMm,
        rotationDeg: u.rotationDeg,
        widthMm: u.widthUnits * u.mmPerUnit,
        heightMm: u.heightUnits * u.mmPerUnit,
        opacity: 1 - u.fadePct / 100,
      },
    ]);
  });

/** Line work fades by its ink, not by opacity. */
const inkOf = (u: Underlay): ColorRole =>
  u.fadePct < 20 ? 'ink' : u.fadePct < 60 ? 'ink-soft' : 'ink-faint';

const pieces = (work: LineWork): readonly (readonly number[])[][] => {
  const out: (readonly number[])[][] = [];
  let chunk: (readonly number[])[] = [];
  let points = 0;
  for (const layer of work.layers)
    for (const path of layer.paths) {
      chunk.push(path);
      points += path.length / 2;
      if (points < CHUNK_POINTS) continue;
      out.push(chunk);
      chunk = [];
      points = 0;
    }
  if (chunk.length > 0) out.push(chunk);
  return out;
};

const pathOf = (u: Underlay, paths: readonly (readonly number[])[]): PathCommand[] => {
  const d: PathCommand[] = [];
  for (const path of paths)
    for (let i = 0; i + 1 < path.length; i += 2) {
      const p = underlayPoint(u, path[i] ?? 0, path[i + 1] ?? 0);
      d.push([i === 0 ? 'M' : 'L', p.xMm, p.yMm]);
    }
  return d;
};

const drawn = new WeakMap<
  Underlay,
  {
    readonly blob: Blob;
    readonly nominal: number;
    readonly forPaper: boolean;
    readonly items: readonly (DisplayItem | undefined)[];
  }
>();

const lineItems = (ctx: DrawContext, u: Underlay, blob: Blob): readonly (DisplayItem | undefined)[] => {
  const before = drawn.get(u);
  const { forPaper } = ctx.options;
  if (before?.blob === blob && before.nominal === ctx.nominalScale && before.forPaper === forPaper)
    return before.items;
  const work = lineWorkOf(blob);
  const items = work.ok ? itemsOf(ctx, u, work.value) : [];
  drawn.set(u, { blob, nominal: ctx.nominalScale, forPaper, items });
  return items;
};

const itemsOf = (ctx: DrawContext, u: Underlay, work: LineWork): readonly (DisplayItem | undefined)[] => {
  const role = inkOf(u);
  const lines = pieces(work).map((paths, i) =>
    itemOf(`underlay:${u.id}:${i}`, u.id, 'underlay', ctx.nominalScale, [
      { kind: 'path', d: pathOf(u, paths), stroke: pen(role, WEIGHT.thin) },
    ]),
  );
  const texts = work.texts.flatMap((t): Primitive[] => {
    const capMm = (t.cap * u.mmPerUnit) / ctx.nominalScale;
    if (capMm < LEAST_CAP_MM[ctx.options.forPaper ? 'paper' : 'screen']) return [];
    const at = underlayPoint(u, t.x, t.y);
    return [
      {
        kind: 'text',
        xMm: at.xMm,
        yMm: at.yMm,
        dxPaperMm: 0,
        dyPaperMm: 0,
        text: t.text,
        capMm,
        weight: 'regular',
        align: 'left',
        role,
        rotationDeg: t.rotationDeg + u.rotationDeg,
      },
    ];
  });
  return texts.length > 0
    ? [...lines, itemOf(`underlay:${u.id}:texts`, u.id, 'underlay', ctx.nominalScale, texts)]
    : lines;
};

const ends = new WeakMap<Underlay, { readonly blob: Blob; readonly points: readonly Point[] }>();

/** End points of the line work laid under a floor, on the floor: what walls can be drawn along. Remembered per underlay. */
export const lineEnds = (u: Underlay, blob: Blob): readonly Point[] => {
  const before = ends.get(u);
  if (before?.blob === blob) return before.points;
  const work = lineWorkOf(blob);
  const points = work.ok
    ? work.value.layers.flatMap((l) =>
        l.paths.flatMap((p) => {
          const out: Point[] = [];
          for (let i = 0; i + 1 < p.length; i += 2) out.push(underlayPoint(u, p[i] ?? 0, p[i + 1] ?? 0));
          return out;
        }),
      )
    : [];
  ends.set(u, { blob, points });
  return points;
};
