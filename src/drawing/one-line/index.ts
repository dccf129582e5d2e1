import type { Id } from '../../kernel/ids.ts';
import type { Plan } from '../../plan/plan.ts';
import { supplySummary } from '../../report/summary.ts';
import type { Assessment } from '../../report/types.ts';
import type { DisplayItem } from '../display-list.ts';
import { itemOf } from '../prims.ts';
import { makeSketch } from '../sketch.ts';
import { oneLineContext } from './context.ts';
import { diagramsOf } from './diagram.ts';
import { COLUMN_MM, GAP_MM, WIDER_MM } from './metrics.ts';
import type {
  Block,
  FigureZone,
  OneLineContext,
  OneLineSheet,
  OneLineView,
  Painter,
  Room,
  Root,
  SheetReference,
} from './types.ts';

export type { FigureZone, OneLineSheet, OneLineView, Room, SheetReference } from './types.ts';

/** Room without end: the whole network in one drawing, for a screen that pans. */
export const ENDLESS: Room = { widthMm: Number.POSITIVE_INFINITY, heightMm: Number.POSITIVE_INFINITY };

const ENDLESS_COLUMN_MM = 40;

interface Diagram {
  readonly root: Root;
  readonly part: number;
  readonly block: Block;
}

interface Spot extends Diagram {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
}

const rootKey = (r: Root): string => `${r.what}:${r.entity.key}`;

/**
 * The one-line diagram of a plan in one setup: source at the top, what it feeds below, loads at the ends. Where the room
 * is too small, boxes and then single ways go on on sheets of their own, named at both ends. Nothing crosses: every
 * part has its own columns. All measures are paper millimetres from the room's upper left corner. `view` is for screens:
 * it folds boxes and starts at one of them.
 */
export const oneLineSheets = (
  plan: Plan,
  assessment: Assessment,
  setupId: Id | undefined,
  room: Room,
  view?: OneLineView,
): readonly OneLineSheet[] => {
  const steps = oneLineSteps(plan, assessment, setupId, room, view);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
};

/** As `oneLineSheets`, a diagram or a sheet at a time. */
export function* oneLineSteps(
  plan: Plan,
  assessment: Assessment,
  setupId: Id | undefined,
  room: Room,
  view?: OneLineView,
): Generator<undefined, readonly OneLineSheet[], undefined> {
  const at = (columnMm: number) => spotsAt(plan, assessment, setupId, room, columnMm, view);
  if (!Number.isFinite(room.widthMm)) return yield* sheetsOf(yield* at(ENDLESS_COLUMN_MM));
  const narrow = yield* at(COLUMN_MM);
  for (const columnMm of WIDER_MM) {
    const wide = yield* at(columnMm);
    if (wide.sheets <= narrow.sheets) return yield* sheetsOf(wide);
  }
  return yield* sheetsOf(narrow);
}

/** Where all diagrams stand, before anything is drawn. */
interface Spots {
  readonly spots: readonly Spot[];
  readonly sheets: number;
  /** Gives the figures that were drawn since it was asked last. */
  readonly figures: () => FigureZone[];
}

function* spotsAt(
  plan: Plan,
  assessment: Assessment,
  setupId: Id | undefined,
  room: Room,
  columnMm: number,
  view?: OneLineView,
): Generator<undefined, Spots, undefined> {
  let figures: FigureZone[] = [];
  const c = oneLineContext(
    plan,
    assessment,
    setupId,
    columnMm,
    view?.folded,
    view && ((f) => figures.push(f)),
  );
  const rows = new Map(supplySummary(plan, assessment, setupId).sources.map((s) => [s.id, s]));
  const diagrams: Diagram[] = [];
  const seen = new Set<string>();
  const queue: Root[] = topsOf(c, view?.topId);
  for (let root = queue.shift(); root; root = queue.shift()) {
    if (seen.has(rootKey(root))) continue;
    seen.add(rootKey(root));
    const at = root;
    diagramsOf(c, root, room, (id) => rows.get(id)).forEach((block, part) => {
      diagrams.push({ root: at, part, block });
      queue.push(...block.cuts);
    });
    yield;
  }
  const spots = pack(diagrams, room);
  const take = (): FigureZone[] => {
    const taken = figures;
    figures = [];
    return taken;
  };
  return { spots, sheets: Math.max(0, ...spots.map((s) => s.sheet + 1)), figures: take };
}

function* sheetsOf(at: Spots): Generator<undefined, readonly OneLineSheet[], undefined> {
  const where = new Map<string, number>();
  const origin = new Map<string, number>();
  for (const s of at.spots) {
    if (s.part === 0) where.set(rootKey(s.root), s.sheet);
    for (const cut of s.block.cuts) origin.set(rootKey(cut), s.sheet);
  }
  const sheets: OneLineSheet[] = [];
  for (let i = 0; i < at.sheets; i++) {
    at.figures();
    const drawn = drawSheet(
      at.spots.filter((s) => s.sheet === i),
      where,
      origin,
    );
    sheets.push({ ...drawn, figures: at.figures() });
    yield;
  }
  return sheets;
}

/** Every source; or the one source or box a screen asks for, with the run that feeds it. */
const topsOf = (c: OneLineContext, topId: string | undefined): Root[] => {
  const sources = c.r.roots().map((entity): Root => ({ what: 'source', entity }));
  if (topId === undefined) return sources;
  const source = sources.find((s) => s.entity.recordId === topId);
  if (source) return [source];
  const entity = c.r.entity(topId);
  if (entity?.what !== 'box') return sources;
  const feed = c.r.entity(entity.parentKey ?? '');
  return [{ what: 'box', entity, cable: feed?.what === 'cable' ? feed : undefined }];
};

/** Diagrams on shelves, shelves on sheets, in the order they come, each on the first shelf that has room. */
const pack = (diagrams: readonly Diagram[], room: Room): readonly Spot[] => {
  const shelves: { sheet: number; y: number; h: number; x: number }[] = [];
  const used: number[] = [];
  return diagrams.map((d) => {
    const { w, h } = d.block;
    let shelf = shelves.find((s) => h <= s.h && s.x + w <= room.widthMm);
    if (!shelf) {
      let sheet = used.findIndex((y) => y + h <= room.heightMm);
      if (sheet < 0) {
        sheet = used.length;
        used.push(0);
      }
      // On an endless sheet all stand side by side at the top.
      shelf = {
        sheet,
        y: used[sheet] ?? 0,
        h: Math.max(h, room.heightMm === Number.POSITIVE_INFINITY ? room.heightMm : 0),
        x: 0,
      };
      shelves.push(shelf);
      used[sheet] = shelf.y + h + GAP_MM * 1.5;
    }
    const x = shelf.x;
    shelf.x += w + GAP_MM;
    return { ...d, sheet: shelf.sheet, x, y: shelf.y };
  });
};

const drawSheet = (
  spots: readonly Spot[],
  where: ReadonlyMap<string, number>,
  origin: ReadonlyMap<string, number>,
): Omit<OneLineSheet, 'figures'> => {
  const items: DisplayItem[] = [];
  const references: SheetReference[] = [];
  const painter: Painter = {
    item: (entity, draw, part) => {
      const sketch = makeSketch();
      draw(sketch);
      const key = part === undefined ? entity.key : `${entity.key}#${part}`;
      const made = itemOf(key, entity.recordId, 'gear', 1, sketch.primitives);
      if (made) items.push(made);
    },
    reference: (root, xMm, yMm, back) => {
      const toSheet = (back ? origin : where).get(rootKey(root));
      if (toSheet !== undefined) references.push({ xMm, yMm, toSheet });
    },
  };
  for (const s of spots) s.block.draw(painter, s.x, s.y);
  return {
    items,
    references,
    subjects: [...new Set(spots.map((s) => s.root.entity.label))],
    widthMm: Math.max(0, ...spots.map((s) => s.x + s.block.w)),
    heightMm: Math.max(0, ...spots.map((s) => s.y + s.block.h)),
  };
};
