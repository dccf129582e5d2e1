import { floorExtents } from '../drawing/draw-floor.ts';
import { type Box, isEmptyBox } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { planInSetup } from '../plan/moves.ts';
import { planRecord } from '../plan/plan.ts';
import { type Rect, TITLE_WIDTH_MM } from './frame.ts';
import type { SetInfo } from './sheet-info.ts';
import { fittingScale, scalesFor, scaleText } from './sheets.ts';
import { TITLE_HEIGHT_MM } from './title-block.ts';

/** Room kept around the geometry for labels and dimensions, across and down, and for the caption below. */
const SIDE_MM = 24;
const TOP_MM = 13;
const CAPTION_MM = 16;
/** Widest power summary. */
const POWER_MM = 165;
/** Room that a scale asked for must leave at each side. */
const LEAST_MM = 5;
/** What two neighbouring parts of a plot both show. */
const OVERLAP_MM = 30;
/** A plot in more parts than this is no longer of use to anyone. */
export const MAX_PARTS = 24;

/** How the frame of a plot is divided. */
export interface PlotLayout {
  readonly drawing: Rect;
  readonly column: Rect | undefined;
  readonly power: Rect | undefined;
  /** Room for the heads of findings between power and scales, on large sheets. */
  readonly findings: Rect | undefined;
  /** Height of the caption under the drawing. */
  readonly captionMm: number;
  readonly scales: Rect;
}

/** Drawing, key column at the right, strip below it with summary, scales and title block. */
export const plotLayout = (f: Rect): PlotLayout => {
  const columnW = f.w >= 330 ? 98 : f.w >= 230 ? 82 : 0;
  const beside = f.w - TITLE_WIDTH_MM;
  const bandH = beside >= 60 ? 0 : 46;
  const h = f.h - TITLE_HEIGHT_MM - bandH;
  const strip =
    bandH > 0
      ? { x: f.x, y: f.y + h, w: f.w, h: bandH }
      : { x: f.x, y: f.y + h, w: beside, h: TITLE_HEIGHT_MM };
  const scalesW = strip.w >= 165 ? Math.min(96, strip.w * 0.45) : strip.w;
  const rest = strip.w - scalesW;
  const powerW = rest >= POWER_MM + 110 ? POWER_MM : rest;
  return {
    drawing: { x: f.x, y: f.y, w: f.w - columnW, h },
    column: columnW > 0 ? { x: f.x + f.w - columnW, y: f.y, w: columnW, h } : undefined,
    power: strip.w >= 165 ? { ...strip, w: powerW } : undefined,
    findings: rest > powerW ? { ...strip, x: strip.x + powerW, w: rest - powerW } : undefined,
    scales: { ...strip, x: strip.x + rest, w: scalesW },
    captionMm: columnW > 0 ? CAPTION_MM : CAPTION_MM + 6,
  };
};

/** What one page of a plot shows: a scale, the part of the floor in its window, and where that lies on the page. */
export interface PlotView {
  readonly ratio: number;
  readonly text: string;
  /** Part of the floor in which labels are set. */
  readonly bounds: Box;
  /** Floor point at the page's upper left corner. */
  readonly originXMm: number;
  readonly originYMm: number;
  /** Set where the plot comes in parts. */
  readonly part: PlotPart | undefined;
}

export interface PlotPart {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
  /** Floor coordinates of the match lines. */
  readonly matchX: readonly number[];
  readonly matchY: readonly number[];
}

/** Letter of the row and number of the column, like `B2`. */
export const partName = (column: number, row: number): string =>
  `${String.fromCharCode(65 + row)}${column + 1}`;

/** The window of the drawing as the labels may use it, for a floor point at the page's corner. */
const viewAt = (
  layout: PlotLayout,
  ratio: number,
  text: string,
  originXMm: number,
  originYMm: number,
  part?: PlotPart,
): PlotView => {
  const { drawing: area, captionMm } = layout;
  const pad = 3;
  return {
    ratio,
    text,
    originXMm,
    originYMm,
    part,
    bounds: {
      minX: originXMm + (area.x + pad) * ratio,
      minY: originYMm + (area.y + pad + 3) * ratio,
      maxX: originXMm + (area.x + area.w - pad) * ratio,
      maxY: originYMm + (area.y + area.h - captionMm) * ratio,
    },
  };
};

/** How many windows of `room` side by side cover `need`, each overlapping the next. */
const partsFor = (need: number, room: number): number =>
  need <= room ? 1 : Math.ceil((need - OVERLAP_MM) / (room - OVERLAP_MM));

/** Columns and rows of windows that a floor at a scale takes, without making them: a slipped figure asks for no end of them. */
const partsNeeded = (layout: PlotLayout, box: Box, ratio: number) => {
  const { drawing: area, captionMm } = layout;
  const room = { w: area.w - 2 * LEAST_MM, h: area.h - captionMm - 2 * LEAST_MM };
  const columns = partsFor((box.maxX - box.minX) / ratio + 2 * TOP_MM, room.w);
  const rows = partsFor((box.maxY - box.minY) / ratio + 2 * TOP_MM, room.h);
  return { room, columns, rows, count: columns * rows };
};

/** Views of a floor that does not fit on one page: rows of windows from its upper left corner, centred as a whole. */
const partedViews = (layout: PlotLayout, box: Box, ratio: number, text: string): readonly PlotView[] => {
  const { drawing: area } = layout;
  const { room, columns, rows } = partsNeeded(layout, box, ratio);
  const step = { w: (room.w - OVERLAP_MM) * ratio, h: (room.h - OVERLAP_MM) * ratio };
  const covered = {
    w: (columns - 1) * step.w + room.w * ratio,
    h: (rows - 1) * step.h + room.h * ratio,
  };
  const x0 = (box.minX + box.maxX) / 2 - covered.w / 2;
  const y0 = (box.minY + box.maxY) / 2 - covered.h / 2;
  const half = (OVERLAP_MM / 2) * ratio;
  const matchX = Array.from({ length: columns - 1 }, (_, i) => x0 + (i + 1) * step.w + half);
  const matchY = Array.from({ length: rows - 1 }, (_, i) => y0 + (i + 1) * step.h + half);
  return Array.from({ length: rows * columns }, (_, i) => {
    const column = i % columns;
    const row = Math.floor(i / columns);
    const originX = x0 + column * step.w - (area.x + LEAST_MM) * ratio;
    const originY = y0 + row * step.h - (area.y + LEAST_MM) * ratio;
    return viewAt(layout, ratio, text, originX, originY, { column, row, columns, rows, matchX, matchY });
  });
};

/** The smallest scale at which units and their numbers can be told apart, and in how many parts a plot may come for it. */
const LEAST_LEGIBLE = 200;
const LEGIBLE_PARTS = 6;

/**
 * Views at a scale that can be read, for a floor that would be too small with the usual room round it: one with little
 * room where that is enough, else parts; none where those would be too many.
 */
const legibleViews = (
  info: SetInfo,
  layout: PlotLayout,
  box: Box,
  size: { readonly width: number; readonly height: number },
  best: number,
): readonly PlotView[] => {
  const { drawing: area, captionMm } = layout;
  const tight = fittingScale(info.units, size, {
    width: area.w - 2 * TOP_MM,
    height: area.h - captionMm - 2 * TOP_MM,
  }).ratio;
  if (tight <= LEAST_LEGIBLE && tight < best)
    return [viewAt(layout, tight, scaleText(tight, info.units), 0, 0)];
  const ratio = Math.max(
    0,
    ...scalesFor(info.units)
      .map((s) => s.ratio)
      .filter((r) => r <= LEAST_LEGIBLE),
  );
  if (!(ratio > 0 && partsNeeded(layout, box, ratio).count <= LEGIBLE_PARTS)) return [];
  return partedViews(layout, box, ratio, scaleText(ratio, info.units));
};

/**
 * The pages a plot of a floor needs: one where it fits at the scale that is asked for or, without one, at the largest that
 * does; several with match marks where it does not. None for an empty floor. What was not possible is said.
 */
export const plotViews = (
  info: SetInfo,
  floorId: Id,
  layout: PlotLayout,
  say: (text: string) => void,
): readonly PlotView[] => {
  const { drawing: area, captionMm } = layout;
  const box = floorExtents(planInSetup(info.plan, info.setupId), floorId);
  if (!box || isEmptyBox(box)) return [];
  const size = { width: box.maxX - box.minX, height: box.maxY - box.minY };
  const room = { width: area.w - 2 * SIDE_MM, height: area.h - 2 * TOP_MM - captionMm };
  const asked = planRecord(info.plan).paper.scale;
  const chosen = asked !== undefined && asked > 0 ? asked : undefined;
  const fits = (r: number): boolean =>
    size.width / r <= area.w - 2 * LEAST_MM && size.height / r <= area.h - captionMm - 2 * LEAST_MM;
  const best = fittingScale(info.units, size, room).ratio;
  const centred = (ratio: number): PlotView =>
    viewAt(
      layout,
      ratio,
      scaleText(ratio, info.units),
      (box.minX + box.maxX) / 2 - (area.x + area.w / 2) * ratio,
      (box.minY + box.maxY) / 2 - (area.y + (area.h - captionMm) / 2) * ratio,
    );
  if (chosen !== undefined && fits(chosen)) return [centred(chosen)];
  const wanted = chosen ?? best;
  if (chosen === undefined && fits(best)) {
    if (best <= LEAST_LEGIBLE) return [centred(best)];
    const legible = legibleViews(info, layout, box, size, best);
    if (legible.length === 1) return legible.map((v) => centred(v.ratio));
    if (legible.length > 0) {
      say(
        `On one sheet of ${info.sheet.text} the plot would be at ${scaleText(best, info.units)}, too small to read: it comes in ${legible.length} parts with match marks at ${legible[0]?.text ?? ''}. A larger sheet takes it whole.`,
      );
      return legible;
    }
    return [centred(best)];
  }
  const { count } = partsNeeded(layout, box, wanted);
  const sheets = count < 10_000 ? `${count}` : 'thousands of';
  if (count <= MAX_PARTS) {
    say(
      `The plan does not fit on one sheet of ${info.sheet.text} at ${scaleText(wanted, info.units)}: its plot comes in ${count} parts with match marks.${fits(best) ? ` ${scaleText(best, info.units)} is the largest scale that fits on one.` : ' No standard scale fits on one.'}`,
    );
    return partedViews(layout, box, wanted, scaleText(wanted, info.units));
  }
  if (fits(best)) {
    const legible = best > LEAST_LEGIBLE ? legibleViews(info, layout, box, size, best) : [];
    const [first] = legible;
    if (first) {
      const parts = legible.length > 1 ? `, in ${legible.length} parts with match marks` : '';
      say(
        `At ${scaleText(wanted, info.units)} as asked the plot would take ${sheets} sheets of ${info.sheet.text}; it is drawn at ${first.text}${parts}.`,
      );
      return legible.length > 1 ? legible : [centred(first.ratio)];
    }
    say(
      `At ${scaleText(wanted, info.units)} as asked the plot would take ${sheets} sheets of ${info.sheet.text}; it is drawn at ${scaleText(best, info.units)}.`,
    );
    return [centred(best)];
  }
  const small = partsNeeded(layout, box, best);
  if (small.count <= MAX_PARTS) {
    say(
      `At ${scaleText(wanted, info.units)} as asked the plot would take ${sheets} sheets of ${info.sheet.text}; it is drawn at ${scaleText(best, info.units)}, in ${small.count} parts with match marks.`,
    );
    return partedViews(layout, box, best, scaleText(best, info.units));
  }
  say(
    `The plan does not fit ${info.sheet.text} at any standard scale, not even in ${MAX_PARTS} parts: its middle is drawn and the rest is cut off. Choose a larger sheet, or split the plan into floors.`,
  );
  return [centred(best)];
};
