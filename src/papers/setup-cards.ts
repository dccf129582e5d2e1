import { byPosition, type Position } from '../derive/positions.ts';
import { type DrawContext, drawContext } from '../drawing/context.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { orderFixtures } from '../report/control.ts';
import { cardUnits } from '../report/setup-steps.ts';
import type { Rect } from './frame.ts';
import type { Ink } from './ink.ts';
import { type CardInfo, drawCard } from './setup-card.ts';
import { drawCardAside } from './setup-card-aside.ts';
import { framedPage, type PageMaker, type SetInfo } from './sheet-info.ts';
import { TITLE_HEIGHT_MM } from './title-block.ts';
import { LEAST_STRIP_MM, STRIP_HEIGHT_MM } from './title-strip.ts';

/** Cards are no smaller than this; what is over is shared out. */
const LEAST_W_MM = 74;
const LEAST_H_MM = 97;
const MARGIN_MM = 3;
/** Lines of notes over a title strip. */
const NOTES_MM = 8;

interface CardGrid {
  readonly area: Rect;
  readonly columns: number;
  readonly rows: number;
  readonly w: number;
  readonly h: number;
}

const gridIn = (frame: Rect): CardGrid => {
  const area = {
    x: frame.x + MARGIN_MM,
    y: frame.y + MARGIN_MM,
    w: frame.w - 2 * MARGIN_MM,
    h: frame.h - (frame.w >= LEAST_STRIP_MM ? STRIP_HEIGHT_MM + NOTES_MM : TITLE_HEIGHT_MM) - 2 * MARGIN_MM,
  };
  const columns = Math.max(1, Math.floor(area.w / LEAST_W_MM));
  const rows = Math.max(1, Math.floor(area.h / LEAST_H_MM));
  return { area, columns, rows, w: area.w / columns, h: area.h / rows };
};

/** Where to cut: short marks at the edge of the cards and crosses where four meet, joined by faint dashes. */
const cutMarks = (ink: Ink, g: CardGrid): void => {
  const { x, y, w, h } = g.area;
  const mark = 3;
  for (let c = 0; c <= g.columns; c++) {
    const at = x + c * g.w;
    if (c > 0 && c < g.columns) ink.line(at, y, at, y + h, 0.13, 'ink-faint', [1, 1.6]);
    ink.line(at, y - MARGIN_MM + 0.8, at, y + 1, 0.25);
    ink.line(at, y + h - 1, at, y + h + MARGIN_MM - 0.8, 0.25);
  }
  for (let r = 0; r <= g.rows; r++) {
    const at = y + r * g.h;
    if (r > 0 && r < g.rows) ink.line(x, at, x + w, at, 0.13, 'ink-faint', [1, 1.6]);
    ink.line(x - MARGIN_MM + 0.8, at, x + 1, at, 0.25);
    ink.line(x + w - 1, at, x + w + MARGIN_MM - 0.8, at, 0.25);
  }
  for (let c = 1; c < g.columns; c++)
    for (let r = 1; r < g.rows; r++) {
      const cx = x + c * g.w;
      const cy = y + r * g.h;
      ink.line(cx - mark / 2, cy, cx + mark / 2, cy, 0.25);
      ink.line(cx, cy - mark / 2, cx, cy + mark / 2, 0.25);
    }
};

/** Units that get a card with where they are: position by position, on a short walk from one to the next. */
export const cardWalk = (
  plan: Plan,
): readonly { readonly position: Position; readonly fixtures: readonly Fixture[] }[] =>
  byPosition(plan, orderFixtures(plan, cardUnits(plan), 'path'));

/**
 * A card for every unit with an address: what whoever sets it up does, in order, to be cut apart and handed out. Cards
 * come position by position, in the order of a walk past the units.
 */
export const setupCards = (info: SetInfo): readonly PageMaker[] => {
  const cards = cardWalk(info.plan).flatMap((g) =>
    g.fixtures.map((fixture) => ({ fixture, position: g.position.name })),
  );
  if (cards.length === 0) return [];
  const contexts = new Map<string, DrawContext>();
  const contextOf = (floorId: string): DrawContext => {
    const known = contexts.get(floorId);
    if (known) return known;
    const made = drawContext(info.plan, { floorId, setupId: info.setupId, nominalScale: 50 });
    contexts.set(floorId, made);
    return made;
  };
  const frameGrid = gridIn({
    x: 20,
    y: 10,
    w: info.sheet.widthMm - 30,
    h: info.sheet.heightMm - 20,
  });
  const perPage = frameGrid.columns * frameGrid.rows;
  const count = Math.ceil(cards.length / perPage);
  return Array.from({ length: count }, (_, page) =>
    framedPage(
      info,
      {
        title: 'Setup cards',
        subtitle: `Cards by position, by the way past the units${count > 1 ? ` (${page + 1} of ${count})` : ''}`,
        documentType: 'Cards',
        scale: 'none',
        units: 'slots',
        strip: true,
      },
      (ink, frame) => {
        const g = gridIn(frame);
        cutMarks(ink, g);
        cards.slice(page * perPage, (page + 1) * perPage).forEach(({ fixture, position }, i) => {
          const card: CardInfo = {
            info,
            ctx: contextOf(fixture.floorId),
            fixture,
            number: page * perPage + i + 1,
            count: cards.length,
            position,
            drawing: planRecord(info.plan).drawingNumber,
          };
          drawCard(ink, card, {
            x: g.area.x + (i % g.columns) * g.w + 4,
            y: g.area.y + Math.floor(i / g.columns) * g.h + 4,
            w: g.w - 8,
            h: g.h - 8,
          });
        });
        drawCardAside(ink, frame, g.w, g.h);
      },
    ),
  );
};
