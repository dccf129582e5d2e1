import { linesInOrder } from '../derive/data-lines.ts';
import { type Box, emptyBox, growBox, isEmptyBox, type Point, unionBox } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { recordOf, recordsOf } from '../plan/plan.ts';
import { waysOf } from '../plan/ports.ts';
import { aimOf } from './beams.ts';
import { type DrawContext, kindLook, memoItem } from './context.ts';
import { lineMiddle, lineTag } from './data-lines.ts';
import type { DisplayItem } from './display-list.ts';
import { gripNames } from './grip.ts';
import { labelGrid } from './label-grid.ts';
import { addObstacles, textCover } from './label-obstacles.ts';
import { LABEL_CAP_MM } from './label-place.ts';
import { itsTurn, type Placer, placeBeside, push, type Steps } from './label-placer.ts';
import { findingTags, line, MAX_LINE_MM } from './label-text.ts';
import { type LabelReport, unitLabels } from './label-units.ts';
import { groundedText, itemOf, textPrim } from './prims.ts';
import { roomSpots } from './room-faces.ts';
import { roomTextBox, roomTextItem, roomTexts } from './rooms.ts';
import { showable, textWidthMm, wrapText } from './text.ts';

export type { Steps } from './label-placer.ts';
export type { LabelReport } from './label-units.ts';

export interface Labels {
  readonly items: readonly DisplayItem[];
  readonly report: LabelReport;
}

export const noLabels: Labels = { items: [], report: { full: 0, numberOnly: [], leftOut: [] } };

/** What rooms measure, in a free spot as near to their middles as there is. Without one it is left out. */
const roomLabels = (p: Placer): void => {
  if (!p.ctx.options.rooms || p.handsTurn || p.ctx.only) return;
  for (const t of roomTexts(p.ctx)) {
    const owner = `room:${t.key}`;
    const at = roomSpots(t.room).find((spot) => {
      const box = roomTextBox(t, spot, p.ctx.nominalScale);
      return p.grid.clear(box.minX, box.minY, box.maxX, box.maxY) && p.grid.soft(box) === 0;
    });
    if (!at) continue;
    p.grid.addBox(roomTextBox(t, at, p.ctx.nominalScale), owner);
    push(p, roomTextItem(p.ctx, t, at));
  }
};

function* pieceLabels(p: Placer): Steps<void> {
  const n = p.ctx.nominalScale;
  for (const s of recordsOf(p.ctx.plan, 'setPiece')) {
    if (s.floorId !== p.ctx.floorId || s.hidden || s.label === '' || !itsTurn(p, s.id)) continue;
    yield;
    if (p.handsTurn) {
      placeBeside(p, s, s.at, [2 * n, 1 * n], 0, [line(s.label, 'regular', true)]);
      continue;
    }
    const text = showable(s.label).text;
    const prim = textPrim(s.at, 0, LABEL_CAP_MM / 2, text, {
      capMm: LABEL_CAP_MM,
      align: 'center',
      role: 'ink-soft',
    });
    if (prim.kind !== 'text') continue;
    const cover = textCover(prim, n, 0.5);
    if (cover.some((b) => p.grid.cost(b, s.id) === undefined || !within(p, b))) {
      placeBeside(p, s, s.at, [2 * n, 1 * n], 0, [line(s.label, 'regular', true)]);
      continue;
    }
    for (const b of cover) p.grid.addBox(b, `label:${s.id}`);
    push(
      p,
      memoItem(s, `label|${n}`, [], () =>
        withAnchor(itemOf(`label:${s.id}`, s.id, 'labels', n, [prim]), s.at),
      ),
    );
  }
}

/** Texts that run along aim lines: the throw, heights included. */
function* throwLabels(p: Placer): Steps<void> {
  const n = p.ctx.nominalScale;
  if (!p.ctx.options.aims || p.handsTurn || p.ctx.only) return;
  for (const f of p.ctx.index.fixtures) {
    const aim = aimOf(p.ctx, f);
    if (!aim) continue;
    yield;
    const text = formatLength(aim.throwMm, p.ctx.settings.lengthUnits);
    let deg = (Math.atan2(aim.to.yMm - aim.from.yMm, aim.to.xMm - aim.from.xMm) * 180) / Math.PI;
    if (deg > 90) deg -= 180;
    if (deg <= -90) deg += 180;
    const lengthMm = Math.hypot(aim.to.xMm - aim.from.xMm, aim.to.yMm - aim.from.yMm) / n;
    if (textWidthMm(text, LABEL_CAP_MM) > lengthMm * 0.8) continue;
    for (const [t, above] of THROW_PLACES) {
      const off = above ? -0.7 : LABEL_CAP_MM + 0.7;
      const rad = (deg * Math.PI) / 180;
      const at = {
        xMm: aim.from.xMm + (aim.to.xMm - aim.from.xMm) * t,
        yMm: aim.from.yMm + (aim.to.yMm - aim.from.yMm) * t,
      };
      const look = { capMm: LABEL_CAP_MM, align: 'center', role: 'aim', rotationDeg: deg } as const;
      const prims = groundedText(at, -off * Math.sin(rad), off * Math.cos(rad), text, look, n);
      const prim = prims[1];
      if (prim?.kind !== 'text') continue;
      const cover = textCover(prim, n, 0.1);
      if (cover.some((b) => p.grid.cost(b, f.id) === undefined || !within(p, b))) continue;
      for (const b of cover) p.grid.addBox(b, `label:${f.id}`);
      push(
        p,
        memoItem(f, `throw|${n}`, [prim.xMm, prim.yMm, prim.dxPaperMm, prim.dyPaperMm, deg, text], () =>
          itemOf(`throw:${f.id}`, f.id, 'labels', n, prims),
        ),
      );
      break;
    }
  }
}

const THROW_PLACES: readonly (readonly [number, boolean])[] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].flatMap(
  (t) => [[t, true] as const, [t, false] as const],
);

function* placeNames(p: Placer): Steps<void> {
  const { plan, floorId } = p.ctx;
  for (const type of ['box', 'charger', 'pack', 'device', 'source'] as const) {
    for (const r of recordsOf(plan, type)) {
      if (r.floorId !== floorId || r.hidden || !itsTurn(p, r.id)) continue;
      yield;
      const look = kindLook(plan, r.kindId);
      const facts = r.type === 'source' && r.ways && r.ways.length > 0 ? `${look.name}` : look.name;
      placeBeside(p, r, r.at, [look.lengthMm / 2, look.widthMm / 2], r.rotationDeg, [
        line(r.label || type, 'semibold'),
        ...wrapText(facts, LABEL_CAP_MM, 'regular', MAX_LINE_MM, 2).map((t) => line(t)),
      ]);
    }
  }
  for (const g of gripNames(p.ctx)) placeBeside(p, g.record, g.record.at, g.halfMm, g.facingDeg, g.lines);
  for (const o of recordsOf(plan, 'outlet')) {
    if (o.floorId !== floorId || o.hidden || !itsTurn(p, o.id)) continue;
    yield;
    const source = recordOf(plan, 'source', o.sourceId);
    const way = waysOf(plan, o.sourceId).find((w) => w.id === o.wayId);
    const facts = [source?.label, way ? `circuit ${way.label}, ${way.breakerA} A` : '']
      .filter(Boolean)
      .join(', ');
    const half = Math.max(135, 2 * p.ctx.nominalScale);
    placeBeside(p, o, o.at, [half, half * 0.75], o.rotationDeg, [
      line(o.label || 'outlet', 'semibold'),
      line(facts),
    ]);
  }
  for (const m of recordsOf(plan, 'mark')) {
    if (m.floorId !== floorId || m.hidden || m.name === '') continue;
    const half: readonly [number, number] = m.what === 'camera' ? [310, 140] : [170, 170];
    placeBeside(p, m, m.at, half, m.facingDeg, [line(m.name)]);
  }
}

/** Whether a box on paper is whole in the part that is drawn. */
const within = (p: Placer, b: Box): boolean =>
  p.bounds === undefined ||
  (b.minX >= p.bounds.minX && b.maxX <= p.bounds.maxX && b.minY >= p.bounds.minY && b.maxY <= p.bounds.maxY);

const paperBox = (b: Box, n: number): Box => ({
  minX: b.minX / n,
  minY: b.minY / n,
  maxX: b.maxX / n,
  maxY: b.maxY / n,
});

/**
 * Texts for everything drawn, placed one after the other by record id, so that the same plan at the same nominal
 * scale always gives the same places. Units fall back from a full label to a short one, then to their number.
 */
export function* labelSteps(ctx: DrawContext, items: readonly DisplayItem[]): Steps<Labels> {
  const n = ctx.nominalScale;
  const drawn = items.reduce((b, i) => unionBox(b, i.box), emptyBox);
  // Labels go no further from what they name than this.
  const reach = isEmptyBox(drawn) ? drawn : growBox(paperBox(drawn, n), 110);
  const grid = labelGrid(reach);
  for (const [i, item] of items.entries()) {
    addObstacles(grid, item, ctx.nominalScale);
    if (i % 16 === 0) yield;
  }
  const bounds = ctx.bounds && paperBox(ctx.bounds, n);
  const p: Placer = {
    tags: findingTags(ctx),
    ctx,
    grid,
    bounds,
    out: [],
    hand: placedByHand(ctx),
    handsTurn: false,
  };
  const byHand = p.hand.size > 0 ? yield* turn(p, true) : noLabels.report;
  const byItself = yield* turn(p, false);
  return {
    items: p.out,
    report: {
      full: byHand.full + byItself.full,
      numberOnly: [...byHand.numberOnly, ...byItself.numberOnly],
      leftOut: [...byHand.leftOut, ...byItself.leftOut],
    },
  };
}

function* turn(p: Placer, hands: boolean): Steps<LabelReport> {
  p.handsTurn = hands;
  yield* pieceLabels(p);
  roomLabels(p);
  yield* throwLabels(p);
  yield* placeNames(p);
  const report = yield* unitLabels(p);
  yield* lineNames(p);
  return report;
}

/** Data lines by label and universe, where there is room left. */
function* lineNames(p: Placer): Steps<void> {
  if (!p.ctx.options.cables) return;
  for (const l of linesInOrder(p.ctx.plan)) {
    const at = l.hidden || !itsTurn(p, l.id) ? undefined : lineMiddle(p.ctx, l);
    const tag = at && lineTag(p.ctx, l);
    if (!at || !tag) continue;
    yield;
    placeBeside(p, l, at, [0, 0], 0, [line(tag, 'semibold', true)]);
  }
}

const placedByHand = (ctx: DrawContext): ReadonlyMap<Id, Point> =>
  new Map(recordsOf(ctx.plan, 'labelPlace').map((l) => [l.recordId, { xMm: l.dxMm, yMm: l.dyMm }]));

/** Only the labels that were put by hand, of the records that are looked at: they go where they are told. */
export const handLabels = (ctx: DrawContext): readonly DisplayItem[] => {
  const hand = placedByHand(ctx);
  if (hand.size === 0) return [];
  const p: Placer = {
    tags: findingTags(ctx),
    ctx,
    grid: labelGrid(emptyBox),
    bounds: undefined,
    out: [],
    hand,
    handsTurn: true,
  };
  for (const steps = turn(p, true); !steps.next().done; );
  return p.out;
};

const withAnchor = (item: DisplayItem | undefined, anchor: Point): DisplayItem | undefined =>
  item && { ...item, anchor };
