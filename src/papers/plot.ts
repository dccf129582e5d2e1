import { drawFloorSteps, type FloorDrawing } from '../drawing/draw-floor.ts';
import type { Id } from '../kernel/ids.ts';
import { planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { drawFindingHeads } from './findings-list.ts';
import { frameOf, type Rect } from './frame.ts';
import { CAP, type Ink } from './ink.ts';
import { drawKey, drawSigns, SIGNS_MM } from './key.ts';
import { keyRows } from './key-rows.ts';
import type { Page } from './page.ts';
import { placeList } from './place-list.ts';
import {
  type ColumnBlock,
  cautionBlock,
  notesBlock,
  reducedBlock,
  revisionsBlock,
  settingOutBlock,
} from './plot-blocks.ts';
import { type PlotLayout, type PlotView, partName, plotLayout, plotViews } from './plot-layout.ts';
import { clearTexts, drawPartKey, matchMarks, wholeTexts } from './plot-parts.ts';
import { drawPowerSummary } from './power-summary.ts';
import { cloudItems } from './revision-marks.ts';
import { drawScales } from './scale-bars.ts';
import { CAUTION, framedPage, type PageMaker, type SetInfo } from './sheet-info.ts';
import { TITLE_HEIGHT_MM } from './title-block.ts';

/** Stored pictures with more letters of base64 than this are left out: they would be larger than all else together. */
const MAX_PICTURE_BASE64 = 16 * 1024 * 1024;

/** First letters of the base64 text of a file of this type (PNG: ISO/IEC 15948; JPEG: ISO/IEC 10918-1). */
const SIGNATURES = { 'image/png': 'iVBORw0KGgo', 'image/jpeg': '/9j/' } as const;

/** Why a stored picture cannot be printed, in words; undefined where it can. */
const pictureFault = (p: {
  readonly mediaType: keyof typeof SIGNATURES;
  readonly base64: string;
}): string | undefined =>
  !p.base64.startsWith(SIGNATURES[p.mediaType])
    ? 'An underlay is no picture that can be read and is left out of the papers. Bring it in again.'
    : p.base64.length > MAX_PICTURE_BASE64
      ? `An underlay of more than ${MAX_PICTURE_BASE64 / 1024 / 1024} MB is left out of the papers. Bring it in again as a smaller picture.`
      : undefined;

/** The floor of a plot at its scale, with its labels, marks of changes and match lines. */
function* drawnFloor(
  info: SetInfo,
  floorId: Id,
  view: PlotView,
  sheetNumber: number,
): Generator<void, FloorDrawing, undefined> {
  const marks = [
    ...cloudItems(info, floorId, view.ratio),
    ...(view.part ? matchMarks(view, view.part, sheetNumber) : []),
  ];
  const list = yield* drawFloorSteps(info.plan, {
    floorId,
    setupId: info.setupId,
    nominalScale: view.ratio,
    assessment: info.assessment,
    options: { findings: true, forPaper: true },
    bounds: view.bounds,
    marks,
  });
  const items = list.items
    .filter((i) => recordOf(info.plan, 'underlay', i.recordId)?.onPaper !== false)
    .filter((i) => {
      const why = i.primitives.map((p) => (p.kind === 'image' ? pictureFault(p) : undefined)).find(Boolean);
      if (why) info.notices.say(why);
      return !why;
    });
  return { ...list, items };
}

/** Labels that say less than they would with room, in words. */
const labelWords = (list: FloorDrawing, tabled: number): string => {
  const { full, numberOnly, leftOut } = list.labels;
  const all = full + numberOnly.length + leftOut.length;
  const cut = numberOnly.length + leftOut.length;
  if (cut === 0) return '';
  const where =
    tabled === cut
      ? 'see the table in the margin'
      : tabled > 0
        ? 'see margin and unit list'
        : 'see the unit list';
  const none = leftOut.length > 0 ? ` ${leftOut.length} of ${all} units without room for a number.` : '';
  return ` ${numberOnly.length} of ${all} labels reduced to the number: ${where}.${none}`;
};

const drawPlan = (
  ink: Ink,
  info: SetInfo,
  floorId: Id,
  layout: PlotLayout,
  view: PlotView,
  list: FloorDrawing,
  tabled: number,
): void => {
  const { drawing: area, captionMm } = layout;
  const clip = { x: area.x + 0.35, y: area.y + 0.35, w: area.w - 0.7, h: area.h - captionMm + 1 };
  const window = {
    minX: view.originXMm + (clip.x + 1) * view.ratio,
    minY: view.originYMm + (clip.y + 1) * view.ratio,
    maxX: view.originXMm + (clip.x + clip.w - 1) * view.ratio,
    maxY: view.originYMm + (clip.y + clip.h - 1) * view.ratio,
  };
  ink.add([
    {
      kind: 'clip',
      xMm: clip.x,
      yMm: clip.y,
      widthMm: clip.w,
      heightMm: clip.h,
      items: placeList(clearTexts(wholeTexts(list, window)), {
        floorXMm: view.originXMm,
        floorYMm: view.originYMm,
        pageXMm: 0,
        pageYMm: 0,
      }),
    },
  ]);
  const floor = recordOf(info.plan, 'floor', floorId);
  const several = recordsOf(info.plan, 'floor').length > 1 && floor ? `${floor.name}, ` : '';
  const part = view.part ? `, part ${partName(view.part.column, view.part.row)}` : '';
  const y = area.y + area.h - captionMm + 6;
  const keyW = view.part ? 46 : 0;
  if (view.part)
    drawPartKey(ink, view.part, area.x + area.w - 4, y + 5.6, { x: 0, y: 0, w: 42, h: captionMm - 3 });
  if (!layout.column)
    ink.paragraph(area.x + 6, y + 11.2, CAUTION, area.w - 12, { maxLines: 2, pitchMm: 3.3 });
  ink.text(area.x + 6, y, `Plan, ${several}setup ${info.setupName}${part}`, {
    capMm: CAP.head,
    weight: 'semibold',
    maxMm: area.w - 12 - keyW,
  });
  ink.paragraph(
    area.x + 6,
    y + 4.4,
    `${view.text} at full size on ${info.sheet.text}. Broken outline: off in this setup.${labelWords(list, tabled)}`,
    area.w - 12 - keyW,
    { maxLines: 2, pitchMm: 3.3 },
  );
};

/** Fills the column from its foot up with what has room, the key in what is left; gives how many reduced labels it tells. */
const drawColumn = (
  ink: Ink,
  info: SetInfo,
  c: Rect,
  view: PlotView | undefined,
  floorId: Id,
  list: FloorDrawing | undefined,
): number => {
  ink.line(c.x, c.y, c.x, c.y + c.h, 0.35);
  const x = c.x + 4;
  const w = c.w - 8;
  const below: ColumnBlock[] = [cautionBlock(w)];
  const kinds = keyRows(info.plan, floorId, info.units).length;
  const keyLeast = 20 + Math.min(kinds, 4) * 4.4;
  let left = c.h - keyLeast - (below[0]?.heightMm ?? 0);
  const offer = (b: ColumnBlock | undefined, first: boolean): boolean => {
    if (!b || b.heightMm > left) return false;
    left -= b.heightMm;
    if (first) below.unshift(b);
    else below.push(b);
    return true;
  };
  const signs: ColumnBlock = { heightMm: SIGNS_MM, draw: (i, bx, by, bw) => void drawSigns(i, bx, by, bw) };
  // In the order of what is needed most; revisions stand below the cautions, the rest above.
  offer(revisionsBlock(info, floorId, view, w), false);
  offer(notesBlock(info, w), true);
  offer(signs, true);
  const reducedIds = list ? [...list.labels.numberOnly, ...list.labels.leftOut] : [];
  const keyMore = Math.max(0, kinds - 4) * 5.4;
  const reduced = reducedBlock(info, floorId, reducedIds, w, left - keyMore);
  const tabled = reduced && offer(reduced.block, false) ? reduced.shown : 0;
  const onFloor = recordsOf(info.plan, 'fixture').filter((f) => f.floorId === floorId && !f.hidden);
  if (!view?.part)
    offer(
      settingOutBlock(
        info,
        floorId,
        onFloor.map((f) => f.id),
        w,
        left - keyMore,
      ),
      false,
    );
  const belowH = below.reduce((s, b) => s + b.heightMm, 0);
  const key = drawKey(ink, info, x, c.y + 1, w, c.h - belowH - 2, view?.ratio ?? 48, floorId);
  let y = key.y + 1;
  for (const b of below) {
    b.draw(ink, x, y, w);
    y += b.heightMm;
    if (y < c.y + c.h - 2) ink.line(c.x, y, c.x + c.w, y, 0.25);
  }
  return tabled;
};

const plotPart = (info: SetInfo, floorId: Id, layout: PlotLayout, view: PlotView | undefined): PageMaker => {
  const settings = planRecord(info.plan);
  const scale = view ? `${view.text}${info.units === 'imperial' ? ` (1:${view.ratio})` : ''}` : 'none';
  const floor = recordOf(info.plan, 'floor', floorId);
  const part = view?.part
    ? `, part ${partName(view.part.column, view.part.row)} of ${view.part.rows} × ${view.part.columns}`
    : '';
  // Drawn before the page is laid out, and let go with it.
  let list: FloorDrawing | undefined;
  function* prepare(sheetNumber: number): Generator<void, void, undefined> {
    list = view && (yield* drawnFloor(info, floorId, view, sheetNumber));
  }
  const page = (sheetNumber: number, sheetCount: number): Page => {
    if (!list) for (const _ of prepare(sheetNumber));
    const drawn = list;
    list = undefined;
    return framedPage(
      info,
      {
        title: 'Lighting plot',
        subtitle: `Plan of ${floor?.name || 'the floor'} with fixtures and power${part}`,
        documentType: 'Lighting plot',
        scale,
        units: settings.lengthUnits === 'imperial' ? 'ft-in' : 'm',
      },
      (ink, f) => {
        const { drawing, column, power, findings, scales } = layout;
        const tabled = column ? drawColumn(ink, info, column, view, floorId, drawn) : 0;
        if (view && drawn) drawPlan(ink, info, floorId, layout, view, drawn, tabled);
        else
          ink.text(drawing.x + drawing.w / 2, drawing.y + drawing.h / 2, 'Nothing is drawn on this floor.', {
            capMm: CAP.value,
            align: 'center',
            role: 'ink-soft',
          });
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
            ratio: view?.ratio,
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
    )(sheetNumber, sheetCount);
  };
  return Object.assign(page, { prepare });
};

/** What stands beside the drawing on a wider sheet, on a page of its own: key, signs, notes, revisions. */
const keyPage = (info: SetInfo, floorId: Id, view: PlotView): PageMaker =>
  framedPage(
    info,
    {
      title: 'Lighting plot',
      subtitle: `Key to the plan of ${recordOf(info.plan, 'floor', floorId)?.name || 'the floor'}`,
      documentType: 'Lighting plot',
      scale: 'none',
      units: planRecord(info.plan).lengthUnits === 'imperial' ? 'ft-in' : 'm',
    },
    (ink, f) => {
      const h = f.h - TITLE_HEIGHT_MM;
      drawColumn(ink, info, { ...f, h }, { ...view, part: undefined }, floorId, undefined);
      ink.line(f.x, f.y + h, f.x + f.w, f.y + h, 0.35);
    },
  );

/**
 * The lighting plot of one floor at a true standard scale: one page, or several with match marks where it does not fit. With
 * `key`, a sheet too narrow for a key beside the drawing gets a page for it.
 */
export const plotPage = (info: SetInfo, floorId: Id, key = true): readonly PageMaker[] => {
  const layout = plotLayout(frameOf(info.sheet));
  const views = plotViews(info, floorId, layout, info.notices.say);
  const [first] = views;
  if (!first) return [plotPart(info, floorId, layout, undefined)];
  const parts = views.map((view) => plotPart(info, floorId, layout, view));
  return layout.column || !key ? parts : [...parts, keyPage(info, floorId, first)];
};
