import { recordLabel } from '../derive/labels.ts';
import { coverageItems, coverageTones, toneOnWhite } from '../drawing/coverage.ts';
import { drawFloor } from '../drawing/draw-floor.ts';
import type { Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { recordOf, recordsOf } from '../plan/plan.ts';
import { type CoverageGrid, coverage, formatDb, HINT, type RadioResult } from '../report/radio.ts';
import { type Block, flowArea, type Section } from './flow.ts';
import type { Rect } from './frame.ts';
import { type Ink, widthOf } from './ink.ts';
import { placeList } from './place-list.ts';
import type { SetInfo } from './sheet-info.ts';
import { fittingScale, scaleText } from './sheets.ts';
import { headingBlock } from './table.ts';

const LEGEND_MM = 12;
/** Where its words stand under the tones. */
const NARROW_LEGEND_MM = 24;
/** Between the places of a picture on the floor, and on paper where that is more. */
const STEP_M = 0.4;
const STEP_PAPER_MM = 1;
/** Metres between the places of a grid that only tells how large the picture is. */
const ROUGH_M = 5;
/** How far its outlines may lie off, on paper. */
const TOLERANCE_PAPER_MM = 0.15;

const drawLegend = (
  ink: Ink,
  x: number,
  y: number,
  grid: CoverageGrid,
  info: SetInfo,
  scale: string,
  widthMm: number,
): void => {
  const tones = coverageTones();
  const w = 13;
  tones.forEach((t, i) => {
    ink.add([
      {
        kind: 'path',
        d: [
          ['M', x + i * w, y],
          ['L', x + (i + 1) * w, y],
          ['L', x + (i + 1) * w, y + 3.6],
          ['L', x + i * w, y + 3.6],
          ['Z'],
        ],
        fill: { role: 'ink-faint', color: toneOnWhite(t) },
        stroke: { role: 'ink-soft', weightMm: 0.13 },
      },
    ]);
    ink.text(x + i * w, y + 6.6, `${t.fromDb}${i === tones.length - 1 ? ' dB and more' : ''}`);
  });
  ink.text(x, y + 10, 'weak', { role: 'ink-soft' });
  ink.text(x + 2 * w, y + 10, 'fair', { role: 'ink-soft' });
  ink.text(x + 4 * w, y + 10, 'good', { role: 'ink-soft' });
  // Words stand beside the tones, and under them where the page is narrow.
  const beside = x + (tones.length + 1.6) * w;
  const narrow = widthMm < 240;
  const right = narrow ? x : beside;
  const top = narrow ? y + 14 : y + 2.6;
  const who = grid.senderIds.map((id) => recordLabel(info.plan, info.plan.records.get(id))).join(', ');
  const room = x + widthMm - right;
  const under = ink.paragraph(
    right,
    top,
    `Margin of ${who} for a receiver ${formatLength(grid.heightM * 1000, info.units)} up that needs ${String(grid.sensitivityDbm).replace('-', '−')} dBm. No tone: not expected to reach.`,
    room,
    { maxLines: 2 },
  );
  ink.paragraph(right, under, `${scale} at full size on ${info.sheet.text}. ${HINT}`, room, { maxLines: 2 });
};

interface Tag {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly strong: boolean;
}

/** What is written into the picture: transmitters by their label, receivers with their margin. */
const tagsOf = (r: RadioResult, floorId: Id): readonly Tag[] => [
  ...[...r.model.senders.values()]
    .filter((s) => s.floorId === floorId)
    .map((s): Tag => ({ text: s.label, x: s.spot.x, y: s.spot.y, strong: true })),
  ...[...r.model.listeners.values()]
    .filter((l) => l.floorId === floorId && l.what !== 'repeater')
    .map((l): Tag => {
      const link = r.links.get(l.id);
      const margin = link && Number.isFinite(link.marginDb) ? formatDb(link.marginDb) : 'no link';
      return { text: `${l.label}: ${margin}`, x: l.spot.x, y: l.spot.y, strong: false };
    }),
];

const TAG_MM = 3.4;

/**
 * Writes tags beside their places inside a window, each below those before it where they would lie on one another. One
 * that finds no room is left to the list of links; its place is marked all the same.
 */
const drawTags = (
  ink: Ink,
  tags: readonly Tag[],
  at: (xM: number, yM: number) => { readonly x: number; readonly y: number },
  window: Rect,
): void => {
  const taken: { tag: Tag; x: number; y: number; w: number; from: { x: number; y: number } }[] = [];
  for (const tag of tags) {
    const p = at(tag.x, tag.y);
    const w = widthOf(tag.text, { weight: tag.strong ? 'semibold' : 'regular' }) + 1.6;
    const right = p.x + 1.8;
    const x = right + w <= window.x + window.w ? right : p.x - 1.8 - w;
    let y = p.y - TAG_MM / 2;
    const meets = (): boolean =>
      taken.some((o) => x < o.x + o.w && o.x < x + w && y < o.y + TAG_MM && o.y < y + TAG_MM);
    for (let n = 0; n < 12 && meets(); n++) y += TAG_MM + 0.3;
    ink.circle(p.x, p.y, tag.strong ? 1.1 : 0.7, {
      fill: tag.strong ? 'accent' : 'ink',
      role: 'paper',
      weightMm: 0.2,
    });
    const inside = x >= window.x && y >= window.y && y + TAG_MM <= window.y + window.h;
    if (inside && !meets()) taken.push({ tag, x, y, w, from: p });
  }
  // Tags after all lines, so that no line goes through one.
  for (const { x, y, w, from } of taken)
    ink.line(from.x, from.y, x < from.x ? x + w : x, y + TAG_MM / 2, 0.13);
  for (const { tag, x, y, w } of taken) {
    ink.rect(x, y, w, TAG_MM, { fill: 'paper', weightMm: tag.strong ? 0.35 : 0.13 });
    ink.text(x + 0.8, y + 2.5, tag.text, { weight: tag.strong ? 'semibold' : 'regular' });
  }
};

/** The floor with its coverage picture under it, as large as the page takes. */
export const pictureSection = (info: SetInfo, r: RadioResult, floorId: Id): Section[] => {
  const senderIds = [...r.model.senders.values()].filter((s) => s.floorId === floorId).map((s) => s.id);
  if (senderIds.length === 0) return [];
  // A grid of few places tells how large the picture is.
  const ask = { floorId, senderIds };
  const rough = coverage(info.plan, { ...ask, stepM: ROUGH_M });
  if (!rough) return [];
  const area = flowArea(info);
  const heightMm = area.h - 12;
  const legendMm = area.w < 240 ? NARROW_LEGEND_MM : LEGEND_MM;
  const room = { width: area.w - 2, height: heightMm - legendMm - 4 };
  const sizeOf = (g: CoverageGrid) => ({
    width: (g.columns - 1) * g.stepMm,
    height: (g.rows - 1) * g.stepMm,
  });
  const about = fittingScale(info.units, sizeOf(rough), room).ratio;
  const floor = recordOf(info.plan, 'floor', floorId)?.name ?? '';
  const several = recordsOf(info.plan, 'floor').length > 1;
  const picture: Block = {
    heightMm,
    draw: (ink, a) => {
      const stepM = Math.max(STEP_M, (STEP_PAPER_MM * about) / 1000);
      const grid = coverage(info.plan, { ...ask, stepM }) ?? rough;
      const size = sizeOf(grid);
      const { ratio } = fittingScale(info.units, size, room);
      const list = drawFloor(info.plan, {
        floorId,
        setupId: info.setupId,
        nominalScale: ratio,
        options: { beams: false, aims: false, cables: false, dimensions: false, labels: false },
      });
      // The legend tells the tones and the tags the places; texts and their grounds would lie across walls and contours here.
      const tones = coverageItems(grid, TOLERANCE_PAPER_MM * ratio, 'white').map((i) => ({
        ...i,
        primitives: i.primitives.filter((p) => p.kind !== 'text'),
      }));
      const items = [...tones, ...list.items.filter((i) => i.primitives.every((p) => p.kind !== 'text'))];
      const centreX = grid.originXMm + size.width / 2;
      const centreY = grid.originYMm + size.height / 2;
      const h = heightMm - legendMm - 2;
      ink.add([
        {
          kind: 'clip',
          xMm: a.x,
          yMm: a.y,
          widthMm: a.w,
          heightMm: h,
          items: placeList(
            { ...list, items },
            { floorXMm: centreX, floorYMm: centreY, pageXMm: a.x + a.w / 2, pageYMm: a.y + h / 2 },
          ),
        },
      ]);
      drawTags(
        ink,
        tagsOf(r, floorId),
        (xM, yM) => ({
          x: a.x + a.w / 2 + (xM * 1000 - centreX) / ratio,
          y: a.y + h / 2 + (yM * 1000 - centreY) / ratio,
        }),
        { x: a.x, y: a.y, w: a.w, h },
      );
      drawLegend(ink, a.x, a.y + h + 2, grid, info, scaleText(ratio, info.units), a.w);
    },
  };
  return [
    {
      head: () =>
        headingBlock(
          several ? `Coverage, ${floor}` : 'Coverage',
          'margin in dB, the best of all transmitters',
        ),
      blocks: [picture],
    },
  ];
};
