import { type Box, emptyBox, growBox, isEmptyBox, type Point, unionBox } from '../kernel/geometry.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { facingOf } from '../plan/edits/arrange.ts';
import { fixturePlace, kindOf, recordOf, recordsOf } from '../plan/plan.ts';
import { waysOf } from '../plan/ports.ts';
import { aimOf } from './beams.ts';
import { type DrawContext, kindLook, memoItem } from './context.ts';
import type { DisplayItem } from './display-list.ts';
import { drawnSize } from './gear.ts';
import { gripNames } from './grip.ts';
import { type LabelGrid, labelGrid } from './label-grid.ts';
import { addObstacles, textCover } from './label-obstacles.ts';
import {
  BUBBLE_CAP_MM,
  bubbleRadius,
  LABEL_CAP_MM,
  type LabelAsk,
  type LabelLine,
  type LabelSpot,
  placeLabel,
  placeOverStrokes,
  takeSpot,
} from './label-place.ts';
import { findingTags, line, paperPoint, spotDeps, spotPrimitives, unitFacts } from './label-text.ts';
import { groundedText, itemOf, textPrim } from './prims.ts';
import { roomSpots } from './room-faces.ts';
import { roomTextBox, roomTextItem, roomTexts } from './rooms.ts';
import { fitText, showable, textWidthMm } from './text.ts';

/** What became of the units' labels: full ones, those cut to the number, and those without room even for that. */
export interface LabelReport {
  readonly full: number;
  readonly numberOnly: readonly Id[];
  readonly leftOut: readonly Id[];
}

export interface Labels {
  readonly items: readonly DisplayItem[];
  readonly report: LabelReport;
}

/** Work that can be put aside after each step and taken up again. */
export type Steps<T> = Generator<undefined, T, undefined>;

export const noLabels: Labels = { items: [], report: { full: 0, numberOnly: [], leftOut: [] } };

interface Placer {
  readonly tags: ReadonlyMap<Id, readonly LabelLine[]>;
  readonly ctx: DrawContext;
  readonly grid: LabelGrid;
  readonly bounds: Box | undefined;
  readonly out: DisplayItem[];
}

const push = (p: Placer, item: DisplayItem | undefined): void => {
  if (item) p.out.push(item);
};

/** What rooms measure, in a free spot as near to their middles as there is. Without one it is left out. */
const roomLabels = (p: Placer): void => {
  if (!p.ctx.options.rooms) return;
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

/** A text beside a thing, without a bubble. */
const placeBeside = (
  p: Placer,
  record: object & { readonly id: Id },
  at: Point,
  halfMm: readonly [number, number],
  facingDeg: number,
  texts: readonly LabelLine[],
): void => {
  const n = p.ctx.nominalScale;
  const tags = p.tags.get(record.id) ?? [];
  const lines = [...texts, ...tags];
  const ask: LabelAsk = {
    at: paperPoint(at, n),
    halfMm: [halfMm[0] / n, halfMm[1] / n],
    facingDeg,
    bubbleMm: 0,
    lines,
    owner: record.id,
    bounds: p.bounds,
    maxMm: 23,
  };
  const whole = placeLabel(p.grid, ask);
  const shown = whole ? lines : [...texts.slice(0, 1), ...tags];
  const spot =
    whole ??
    placeLabel(p.grid, { ...ask, lines: shown }) ??
    placeOverStrokes(p.grid, { ...ask, lines: shown });
  if (!spot) return;
  takeSpot(p.grid, spot, record.id);
  push(
    p,
    memoItem(record, `label|${n}`, spotDeps(spot, shown), () =>
      itemOf(`label:${record.id}`, record.id, 'labels', n, spotPrimitives(spot, shown, n, undefined)),
    ),
  );
};

function* pieceLabels(p: Placer): Steps<void> {
  const n = p.ctx.nominalScale;
  for (const s of recordsOf(p.ctx.plan, 'setPiece')) {
    if (s.floorId !== p.ctx.floorId || s.hidden || s.label === '') continue;
    yield;
    const text = showable(s.label).text;
    const prim = textPrim(s.at, 0, LABEL_CAP_MM / 2, text, {
      capMm: LABEL_CAP_MM,
      align: 'center',
      role: 'ink-soft',
    });
    if (prim.kind !== 'text') continue;
    const cover = textCover(prim, n, 0.5);
    if (cover.some((b) => p.grid.cost(b, s.id) === undefined)) {
      placeBeside(p, s, s.at, [2 * n, 1 * n], 0, [line(s.label, 'regular', true)]);
      continue;
    }
    for (const b of cover) p.grid.addBox(b, `label:${s.id}`);
    push(
      p,
      memoItem(s, `label|${n}`, [], () => itemOf(`label:${s.id}`, s.id, 'labels', n, [prim])),
    );
  }
}

/** Texts that run along aim lines: the throw, heights included. */
function* throwLabels(p: Placer): Steps<void> {
  const n = p.ctx.nominalScale;
  if (!p.ctx.options.aims) return;
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
      if (cover.some((b) => p.grid.cost(b, f.id) === undefined)) continue;
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
  for (const type of ['box', 'charger', 'device', 'source'] as const) {
    for (const r of recordsOf(plan, type)) {
      if (r.floorId !== floorId || r.hidden) continue;
      yield;
      const look = kindLook(plan, r.kindId);
      const facts = r.type === 'source' && r.ways && r.ways.length > 0 ? `${look.name}` : look.name;
      placeBeside(p, r, r.at, [look.lengthMm / 2, look.widthMm / 2], r.rotationDeg, [
        line(r.label || type, 'semibold'),
        line(facts),
      ]);
    }
  }
  for (const g of gripNames(p.ctx))
    placeBeside(p, g.record, g.record.at, g.halfMm, g.record.rotationDeg, g.lines);
  for (const o of recordsOf(plan, 'outlet')) {
    if (o.floorId !== floorId || o.hidden) continue;
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

function* unitLabels(p: Placer): Steps<LabelReport> {
  const { ctx, grid } = p;
  const n = ctx.nominalScale;
  let full = 0;
  const numberOnly: Id[] = [];
  const leftOut: Id[] = [];
  for (const f of ctx.index.fixtures) {
    yield;
    const { at } = fixturePlace(ctx.plan, f);
    const kind = kindOf(ctx.plan, f.kindId);
    const look = kindLook(ctx.plan, f.kindId);
    const size = drawnSize(look, n);
    const unit = fitText(showable(f.unit || '?').text, BUBBLE_CAP_MM, 'regular', 9);
    const rMm = bubbleRadius(unit);
    const said = unitFacts(ctx, f);
    const facts = said === '' ? [] : [line(said)];
    const shows = ctx.options.labelFields;
    const name = shows.includes('kind') ? [line(look.name, 'semibold')] : [];
    const use = f.use && shows.includes('use') ? [line(f.use)] : [];
    const tags = p.tags.get(f.id) ?? [];
    const ask = (lines: readonly LabelLine[], maxMm: number): LabelAsk => ({
      at: paperPoint(at, n),
      halfMm: [size.lengthMm / 2 / n, size.widthMm / 2 / n],
      facingDeg: facingOf(ctx.plan, f),
      bubbleMm: rMm,
      lines,
      owner: f.id,
      bounds: p.bounds,
      maxMm,
    });
    const tiers: readonly (readonly [readonly LabelLine[], number])[] = [
      [[...name, ...use, ...facts, ...tags], 24],
      [[...(use.length > 0 ? use : name), ...facts, ...tags], 17],
      [tags, 30],
    ];
    let lines: readonly LabelLine[] = [];
    let spot: LabelSpot | undefined;
    for (const [tierLines, maxMm] of tiers) {
      lines = tierLines;
      spot = placeLabel(grid, ask(lines, maxMm));
      if (spot) break;
    }
    // A label that was asked to say no more than the number is whole with it.
    const bare = name.length + use.length + facts.length === 0;
    if (spot && (bare || lines.length > tags.length)) full++;
    else {
      lines = tags;
      spot ??= placeOverStrokes(grid, ask(tags, 47));
      (spot ? numberOnly : leftOut).push(f.id);
    }
    if (!spot) continue;
    const placed = spot;
    takeSpot(grid, placed, f.id);
    push(
      p,
      memoItem(f, `label|${n}`, [unit, kind, ...spotDeps(placed, lines)], () =>
        itemOf(
          `label:${f.id}`,
          f.id,
          'labels',
          n,
          spotPrimitives(placed, lines, n, { text: unit, rMm, dashed: false }),
        ),
      ),
    );
  }
  const byUnit = (ids: Id[]): readonly Id[] =>
    ids.sort((a, b) =>
      compareNatural(
        recordOf(ctx.plan, 'fixture', a)?.unit ?? '',
        recordOf(ctx.plan, 'fixture', b)?.unit ?? '',
      ),
    );
  return { full, numberOnly: byUnit(numberOnly), leftOut: byUnit(leftOut) };
}

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
  const p: Placer = { tags: findingTags(ctx), ctx, grid, bounds, out: [] };
  yield* pieceLabels(p);
  roomLabels(p);
  yield* throwLabels(p);
  yield* placeNames(p);
  const report = yield* unitLabels(p);
  return { items: p.out, report };
}
