import { drawFloor, floorExtents } from '../drawing/draw-floor.ts';
import { wrapText } from '../drawing/text.ts';
import { type Box, isEmptyBox } from '../kernel/geometry.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { hiddenOn } from '../plan/edits/stacking.ts';
import { planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { drawFindingHeads } from './findings-list.ts';
import { frameOf, type Rect, TITLE_WIDTH_MM } from './frame.ts';
import { CAP, type Ink, PITCH_MM } from './ink.ts';
import { drawKey, drawSigns, SIGNS_MM } from './key.ts';
import { keyRows } from './key-rows.ts';
import { placeList } from './place-list.ts';
import { drawPowerSummary } from './power-summary.ts';
import { drawScales } from './scale-bars.ts';
import { CAUTION, framedPage, type PageMaker, type SetInfo } from './sheet-info.ts';
import { fittingScale, scaleText } from './sheets.ts';
import { TITLE_HEIGHT_MM } from './title-block.ts';

/** Room kept around the geometry for labels and dimensions, across and down, and for the caption below. */
const SIDE_MM = 24;
const TOP_MM = 13;
const CAPTION_MM = 13;
/** Widest power summary. */
const POWER_MM = 165;
/** Room that a scale asked for must leave at each side. */
const LEAST_MM = 5;

interface Layout {
  readonly drawing: Rect;
  readonly column: Rect | undefined;
  readonly power: Rect | undefined;
  /** Room for the heads of findings between power and scales, on large sheets. */
  readonly findings: Rect | undefined;
  /** Height of the caption under the drawing. */
  readonly captionMm: number;
  readonly scales: Rect;
}

/** How the frame is divided: drawing, key column at the right, strip below it with summary, scales and title block. */
const layoutOf = (f: Rect): Layout => {
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
    captionMm: columnW > 0 ? CAPTION_MM : CAPTION_MM + 9,
  };
};

interface View {
  readonly ratio: number;
  readonly text: string;
  readonly bounds: Box;
  readonly originXMm: number;
  readonly originYMm: number;
}

const viewOf = (info: SetInfo, floorId: Id, layout: Layout): View | undefined => {
  const { drawing: area, captionMm } = layout;
  const box = floorExtents(info.plan, floorId);
  if (!box || isEmptyBox(box)) return undefined;
  const size = { width: box.maxX - box.minX, height: box.maxY - box.minY };
  const room = { width: area.w - 2 * SIDE_MM, height: area.h - 2 * TOP_MM - captionMm };
  const chosen = planRecord(info.plan).paper.scale;
  const fits = (r: number): boolean =>
    size.width / r <= area.w - 2 * LEAST_MM && size.height / r <= area.h - captionMm - 2 * LEAST_MM;
  const best = fittingScale(info.units, size, room).ratio;
  const ratio = chosen && chosen > 0 && fits(chosen) ? chosen : best;
  if (chosen && chosen > 0 && !fits(chosen)) {
    info.notices.say(
      `The plan does not fit ${info.sheet.text} at ${scaleText(chosen, info.units)} as asked; it is drawn at ${scaleText(ratio, info.units)}.`,
    );
  }
  if (!fits(ratio)) {
    info.notices.say(
      `The plan does not fit ${info.sheet.text} at any standard scale; it is cut at the edge of the drawing.`,
    );
  }
  const cx = area.x + area.w / 2;
  const cy = area.y + (area.h - captionMm) / 2;
  const originXMm = (box.minX + box.maxX) / 2 - cx * ratio;
  const originYMm = (box.minY + box.maxY) / 2 - cy * ratio;
  const pad = 3;
  return {
    ratio,
    text: scaleText(ratio, info.units),
    originXMm,
    originYMm,
    bounds: {
      minX: originXMm + (area.x + pad) * ratio,
      minY: originYMm + (area.y + pad + 3) * ratio,
      maxX: originXMm + (area.x + area.w - pad) * ratio,
      maxY: originYMm + (area.y + area.h - captionMm) * ratio,
    },
  };
};

const drawPlan = (ink: Ink, info: SetInfo, floorId: Id, layout: Layout, view: View): void => {
  const { drawing: area, captionMm } = layout;
  const list = drawFloor(info.plan, {
    floorId,
    setupId: info.setupId,
    nominalScale: view.ratio,
    assessment: info.assessment,
    options: { findings: true },
    bounds: view.bounds,
  });
  ink.add([
    {
      kind: 'clip',
      xMm: area.x + 0.35,
      yMm: area.y + 0.35,
      widthMm: area.w - 0.7,
      heightMm: area.h - captionMm + 1,
      items: placeList(list, { floorXMm: view.originXMm, floorYMm: view.originYMm, pageXMm: 0, pageYMm: 0 }),
    },
  ]);
  const floor = recordOf(info.plan, 'floor', floorId);
  const several = recordsOf(info.plan, 'floor').length > 1 && floor ? `${floor.name}, ` : '';
  const y = area.y + area.h - captionMm + 6;
  if (!layout.column) ink.paragraph(area.x + 6, y + 9.4, CAUTION, area.w - 12, { maxLines: 2 });
  ink.text(area.x + 6, y, `Plan, ${several}setup ${info.setupName}`, {
    capMm: CAP.head,
    weight: 'semibold',
    maxMm: area.w - 12,
  });
  const { full, numberOnly, leftOut } = list.labels;
  const all = full + numberOnly.length + leftOut.length;
  const hidden = hiddenOn(info.plan, floorId).length;
  const cut =
    (numberOnly.length > 0
      ? ` ${numberOnly.length} of ${all} labels reduced to the number: see the unit list.`
      : '') +
    (leftOut.length > 0 ? ` ${leftOut.length} of ${all} units without room for a number.` : '') +
    (hidden > 0 ? ` ${hidden} ${hidden === 1 ? 'thing is' : 'things are'} hidden on this drawing.` : '');
  ink.text(
    area.x + 6,
    y + 4.4,
    `${view.text} at full size on ${info.sheet.text}. Broken outline: off in this setup.${cut}`,
    { maxMm: area.w - 12 },
  );
};

interface ColumnBlock {
  readonly heightMm: number;
  draw(ink: Ink, x: number, y: number, w: number): void;
}

const textBlock = (head: string, lines: readonly string[]): ColumnBlock => ({
  heightMm: 6.6 + lines.length * PITCH_MM + 1.6,
  draw: (ink, x, y) => {
    ink.text(x, y + 5.2, head, { capMm: CAP.value, weight: 'semibold' });
    lines.forEach((l, i) => {
      ink.text(x, y + 9.4 + i * PITCH_MM, l);
    });
  },
});

const notesBlock = (info: SetInfo, w: number): ColumnBlock => {
  const n = info.assessment.findings.length;
  const notes = [
    'Sizes are of the plan as drawn. If a size looks wrong, ask; do not scale a copy. Heights are floor to lamp centre.',
    'A label reads: name, use, then way of the box, universe and address, height.',
    'Cable lengths are stock lengths made up to cover route, rises and slack.',
    `${n} ${n === 1 ? 'finding' : 'findings'}, and what was assumed, are on the circuit schedule.`,
  ].map((t) => wrapText(t, CAP.note, 'regular', w - 5));
  return {
    heightMm: 8.2 + notes.flat().length * PITCH_MM,
    draw: (ink, x, y) => {
      ink.text(x, y + 5.2, 'Notes', { capMm: CAP.value, weight: 'semibold' });
      let base = y + 9.4;
      notes.forEach((lines, i) => {
        ink.text(x, base, String(i + 1), { weight: 'semibold' });
        for (const l of lines) {
          ink.text(x + 5, base, l);
          base += PITCH_MM;
        }
      });
    },
  };
};

const cautionBlock = (w: number): ColumnBlock =>
  textBlock('Cautions', [...wrapText(CAUTION, CAP.note, 'regular', w)]);

const revisionsBlock = (info: SetInfo): ColumnBlock | undefined => {
  const issues = [...recordsOf(info.plan, 'issue')]
    .sort((a, b) => compareNatural(b.revision, a.revision))
    .slice(0, 4)
    .reverse();
  if (issues.length === 0) return undefined;
  return {
    heightMm: 12 + issues.length * 4.2,
    draw: (ink, x, y, w) => {
      ink.text(x, y + 5.2, 'Revisions', { capMm: CAP.value, weight: 'semibold' });
      issues.forEach((r, i) => {
        const base = y + 10 + i * 4.2;
        ink.text(x + 3, base, r.revision, { weight: 'semibold', align: 'center' });
        ink.text(x + 8, base, r.date, { maxMm: 20 });
        ink.text(x + 29, base, r.note, { maxMm: w - 44 });
        ink.text(x + w, base, r.by, { align: 'right', maxMm: 14 });
      });
    },
  };
};

const drawColumn = (ink: Ink, info: SetInfo, c: Rect, view: View | undefined, floorId: Id): void => {
  ink.line(c.x, c.y, c.x, c.y + c.h, 0.35);
  const x = c.x + 4;
  const w = c.w - 8;
  const below: ColumnBlock[] = [cautionBlock(w)];
  const keyLeast = 20 + Math.min(keyRows(info.plan, floorId, info.units).length, 4) * 4.4;
  let left = c.h - keyLeast - (below[0]?.heightMm ?? 0);
  const offer = (b: ColumnBlock | undefined, first: boolean): void => {
    if (!b || b.heightMm > left) return;
    left -= b.heightMm;
    if (first) below.unshift(b);
    else below.push(b);
  };
  const signs: ColumnBlock = { heightMm: SIGNS_MM, draw: (i, bx, by, bw) => void drawSigns(i, bx, by, bw) };
  offer(notesBlock(info, w), true);
  offer(signs, true);
  offer(revisionsBlock(info), false);
  const belowH = below.reduce((s, b) => s + b.heightMm, 0);
  const key = drawKey(ink, info, x, c.y + 1, w, c.h - belowH - 2, view?.ratio ?? 48, floorId);
  let y = key.y + 1;
  for (const b of below) {
    b.draw(ink, x, y, w);
    y += b.heightMm;
    if (y < c.y + c.h - 2) ink.line(c.x, y, c.x + c.w, y, 0.25);
  }
};

/** The lighting plot of one floor at a true standard scale. */
export const plotPage = (info: SetInfo, floorId: Id): PageMaker => {
  const layout = layoutOf(frameOf(info.sheet));
  const view = viewOf(info, floorId, layout);
  const settings = planRecord(info.plan);
  const scale = view ? `${view.text}${info.units === 'imperial' ? ` (1:${view.ratio})` : ''}` : 'none';
  const floor = recordOf(info.plan, 'floor', floorId);
  return framedPage(
    info,
    {
      title: 'Lighting plot',
      subtitle: `Plan of ${floor?.name || 'the floor'} with fixtures and power`,
      documentType: 'Lighting plot',
      scale,
      units: settings.lengthUnits === 'imperial' ? 'ft-in' : 'm',
    },
    (ink, f) => {
      const { drawing, column, power, findings, scales } = layout;
      if (view) drawPlan(ink, info, floorId, layout, view);
      else
        ink.text(drawing.x + drawing.w / 2, drawing.y + drawing.h / 2, 'Nothing is drawn on this floor.', {
          capMm: CAP.value,
          align: 'center',
          role: 'ink-soft',
        });
      if (column) drawColumn(ink, info, column, view, floorId);
      ink.line(f.x, drawing.y + drawing.h, f.x + f.w, drawing.y + drawing.h, 0.35);
      if (power) {
        drawPowerSummary(ink, info, power.x + 5, power.y + 1, power.w - 10, power.h - 2);
        ink.line(scales.x, scales.y, scales.x, scales.y + scales.h, 0.35);
      }
      if (findings) {
        ink.line(findings.x, findings.y, findings.x, findings.y + findings.h, 0.35);
        drawFindingHeads(ink, info, { ...findings, x: findings.x + 5, w: findings.w - 10 });
      }
      drawScales(
        ink,
        {
          ratio: view?.ratio ?? 50,
          text: view?.text ?? 'none',
          units: info.units,
          northDeg: floor?.northDeg ?? 270,
        },
        scales.x + 5,
        scales.y,
        scales.w - 10,
        scales.h,
      );
    },
  );
};
