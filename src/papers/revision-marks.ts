import type { DisplayItem, PathCommand, Primitive } from '../drawing/display-list.ts';
import { type Box, boxesMeet, growBox, type Point, unionBox } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import type { Ink } from './ink.ts';
import type { SetInfo } from './sheet-info.ts';

/** The sign of a change: a triangle, `sizeMm` high with its middle at (x, y), and the revision letter in it. */
export const revisionTriangle = (ink: Ink, x: number, y: number, letter: string, sizeMm = 5): void => {
  ink.path(triangle(x, y, sizeMm), { weightMm: 0.25, role: 'accent', fill: 'paper' });
  ink.text(x, y + sizeMm * 0.36, letter, {
    align: 'center',
    weight: 'semibold',
    role: 'accent',
    maxMm: sizeMm * 0.9,
  });
};

const triangle = (x: number, y: number, size: number): readonly PathCommand[] => [
  ['M', x, y - size * 0.55],
  ['L', x + size * 0.62, y + size * 0.5],
  ['L', x - size * 0.62, y + size * 0.5],
  ['Z'],
];

/** Letter to mark a record with; undefined where it is as it was in the issue before. */
export const markFor = (info: SetInfo, ...ids: readonly (Id | undefined)[]): string | undefined =>
  ids.some((id) => id !== undefined && info.changed.has(id)) ? info.options.revision : undefined;

const PAD_MM = 2.2;
const ARC_MM = 4;
const TRIANGLE_MM = 5;

/** Boxes that meet become one, until none do, so that no cloud crosses another. */
const joined = (boxes: readonly Box[]): readonly Box[] => {
  let list = [...boxes];
  for (let again = true; again; ) {
    again = false;
    const out: Box[] = [];
    for (const b of list) {
      const at = out.findIndex((o) => boxesMeet(o, b));
      const met = out[at];
      if (met) {
        out[at] = unionBox(met, b);
        again = true;
      } else out.push(b);
    }
    list = out;
  }
  return list;
};

/** A cloud line round a box: arcs that bulge outwards, as even as its sides allow. */
const cloudPath = (b: Box, arcMm: number): readonly PathCommand[] => {
  const d: PathCommand[] = [['M', b.minX, b.minY]];
  const side = (x1: number, y1: number, x2: number, y2: number): void => {
    const n = Math.max(1, Math.round(Math.hypot(x2 - x1, y2 - y1) / arcMm));
    const [dx, dy] = [(x2 - x1) / n, (y2 - y1) / n];
    // Outwards is to the left of a walk clockwise on a sheet whose y runs down.
    const [ox, oy] = [dy * 0.55, -dx * 0.55];
    for (let i = 0; i < n; i++) {
      const [ax, ay] = [x1 + dx * i, y1 + dy * i];
      d.push([
        'C',
        ax + dx * 0.1 + ox,
        ay + dy * 0.1 + oy,
        ax + dx * 0.9 + ox,
        ay + dy * 0.9 + oy,
        ax + dx,
        ay + dy,
      ]);
    }
  };
  side(b.minX, b.minY, b.maxX, b.minY);
  side(b.maxX, b.minY, b.maxX, b.maxY);
  side(b.maxX, b.maxY, b.minX, b.maxY);
  side(b.minX, b.maxY, b.minX, b.minY);
  return [...d, ['Z']];
};

/** Where something changed on a floor since the issue before, in floor millimetres: one box for what lies together. */
export const changedBoxes = (info: SetInfo, floorId: Id, ratio: number): readonly Box[] =>
  joined(
    info.changes.flatMap((c) => (c.floorId === floorId && c.box ? [growBox(c.box, PAD_MM * ratio)] : [])),
  );

/** Where the triangle of a cloud stands: at the first of its corners that is clear of the other clouds and triangles. */
const triangleSpots = (boxes: readonly Box[], size: number): readonly Point[] => {
  const taken: Box[] = [...boxes];
  return boxes.map((b) => {
    const [dx, dy] = [size * 0.75, size * 0.6];
    const corners: readonly Point[] = [
      { xMm: b.maxX + dx, yMm: b.minY - dy },
      { xMm: b.minX - dx, yMm: b.minY - dy },
      { xMm: b.maxX + dx, yMm: b.maxY + dy },
      { xMm: b.minX - dx, yMm: b.maxY + dy },
    ];
    const around = (p: Point): Box =>
      growBox({ minX: p.xMm, maxX: p.xMm, minY: p.yMm, maxY: p.yMm }, size * 0.6);
    const at =
      corners.find((p) => !taken.some((t) => t !== b && boxesMeet(t, around(p)))) ?? corners[0] ?? corners[1];
    const spot = at ?? { xMm: b.maxX, yMm: b.minY };
    taken.push(around(spot));
    return spot;
  });
};

/** Clouds with the revision letter round what changed on a floor, for the floor's own display list. */
export const cloudItems = (info: SetInfo, floorId: Id, ratio: number): readonly DisplayItem[] => {
  const boxes = changedBoxes(info, floorId, ratio);
  const size = TRIANGLE_MM * ratio;
  const spots = triangleSpots(boxes, size);
  return boxes.map((box, i): DisplayItem => {
    const { xMm: x, yMm: y } = spots[i] ?? { xMm: box.maxX, yMm: box.minY };
    const stroke = { role: 'accent', weightMm: 0.25 } as const;
    const primitives: Primitive[] = [
      { kind: 'path', d: cloudPath(box, ARC_MM * ratio), stroke },
      { kind: 'path', d: triangle(x, y, size), stroke, fill: { role: 'paper' } },
      {
        kind: 'text',
        xMm: x,
        yMm: y,
        dxPaperMm: 0,
        dyPaperMm: TRIANGLE_MM * 0.36,
        text: info.options.revision,
        capMm: 1.8,
        weight: 'semibold',
        align: 'center',
        role: 'accent',
      },
    ];
    return {
      key: `change:${floorId}:${i}`,
      recordId: `change:${i}`,
      layer: 'notes',
      primitives,
      box: growBox(unionBox(box, { minX: x, minY: y, maxX: x, maxY: y }), size),
    };
  });
};
