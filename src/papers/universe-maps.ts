import { recordOf } from '../plan/plan.ts';
import { type PatchRow, type UniverseUse, universeUse } from '../report/control.ts';
import { type Block, flowArea, flowPages } from './flow.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, widthOf } from './ink.ts';
import { universeRemark } from './patch-sheet.ts';
import { markFor, revisionTriangle } from './revision-marks.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';

const PER_ROW = 128;
const ROWS = 512 / PER_ROW;
const LANE_MM = 6.4;
const LANE_GAP_MM = 1.4;
const HEAD_MM = 7;
const RULER_MM = 3.4;
const LEAD_MM = 9;
/** Triangle of a unit that changed. */
const MARK_MM = 3.4;
const SMALL_MARK_MM = 2.7;
const LEGEND =
  'A block for each unit with its number and slots. Free slots are hatched. A heavy outline marks paired units.';
const HEIGHT_MM = HEAD_MM + RULER_MM + ROWS * (LANE_MM + LANE_GAP_MM) + 4;

interface Piece extends Rect {
  readonly first: boolean;
}

const piecesOf = (area: Rect, from: number, to: number): readonly Piece[] => {
  const cell = (area.w - LEAD_MM) / PER_ROW;
  const out: Piece[] = [];
  for (let r = Math.floor((from - 1) / PER_ROW); r <= Math.floor((to - 1) / PER_ROW); r++) {
    const a = Math.max(from - 1, r * PER_ROW) - r * PER_ROW;
    const b = Math.min(to, (r + 1) * PER_ROW) - r * PER_ROW;
    const y = area.y + HEAD_MM + RULER_MM + r * (LANE_MM + LANE_GAP_MM);
    out.push({ x: area.x + LEAD_MM + a * cell, y, w: (b - a) * cell, h: LANE_MM, first: out.length === 0 });
  }
  return out;
};

/** Rows that lie on one another, paired or by mistake, as one: its texts would lie on one another too. */
const stacksOf = (rows: readonly PatchRow[]): readonly (readonly PatchRow[])[] => {
  const stacks: PatchRow[][] = [];
  let end = 0;
  for (const r of [...rows].filter((x) => x.slots > 0).sort((a, b) => a.address - b.address)) {
    const last = stacks.at(-1);
    if (last && r.address <= end) last.push(r);
    else stacks.push([r]);
    end = Math.max(end, r.last);
  }
  return stacks;
};

const drawBlock = (
  ink: Ink,
  area: Rect,
  rows: readonly PatchRow[],
  unitOf: (r: PatchRow) => string,
  letter: string | undefined,
): void => {
  for (const r of rows)
    for (const p of piecesOf(area, r.address, r.last))
      ink.rect(p.x, p.y, p.w, p.h, { weightMm: r.paired ? 0.5 : 0.25, fill: 'paper' });
  const [r] = rows;
  if (!r) return;
  const unit = rows.length > 1 ? `${unitOf(r)} +${rows.length - 1}` : unitOf(r);
  const pieces = piecesOf(area, r.address, r.last);
  const room = pieces.reduce<Piece | undefined>((best, p) => (best && best.w >= p.w ? best : p), undefined);
  if (!room) return;
  const range = r.slots > 1 ? `${r.address}–${r.last}` : String(r.address);
  const bold = { capMm: CAP.value, weight: 'semibold' } as const;
  const size =
    widthOf(unit, bold) + 1.6 <= room.w ? bold : ({ capMm: CAP.note, weight: 'semibold' } as const);
  const unitW = widthOf(unit, size);
  const base = room.y + LANE_MM / 2 + (size.capMm ?? CAP.note) / 2;
  // A unit narrower than its number is named on the patch sheet only.
  if (unitW + 0.6 > room.w) return;
  const markMm = letter === undefined ? 0 : MARK_MM + 1.6;
  const wide = unitW + widthOf(range) + 4 + markMm <= room.w;
  const marked = letter !== undefined && (wide || unitW + markMm + 1 <= room.w);
  if (marked) {
    const x = wide ? room.x + 1 + unitW + markMm / 2 : room.x + room.w / 2 + (unitW + 1) / 2;
    revisionTriangle(ink, x, room.y + LANE_MM / 2, letter, MARK_MM);
  } else if (letter !== undefined && room.w >= SMALL_MARK_MM * 1.3)
    // Between the lanes, over a block that is too narrow for both.
    revisionTriangle(ink, room.x + room.w / 2, room.y - 0.2, letter, SMALL_MARK_MM);
  if (wide) {
    ink.text(room.x + 1, base, unit, size);
    ink.text(room.x + room.w - 1, base, range, { align: 'right', role: 'ink-soft' });
  } else ink.text(room.x + room.w / 2 - (marked ? markMm / 2 : 0), base, unit, { ...size, align: 'center' });
};

const universeBlock = (info: SetInfo, u: UniverseUse): Block => ({
  heightMm: HEIGHT_MM,
  draw: (ink, area) => {
    const name = recordOf(info.plan, 'universe', u.universeId)?.name ?? '';
    const head = { capMm: CAP.head, weight: 'semibold' } as const;
    const title = `U${u.number}${name ? ` ${name}` : ''}`;
    const w = Math.min(area.w * 0.4, widthOf(title, head));
    ink.text(area.x, area.y + 4.4, title, { ...head, maxMm: area.w * 0.4 });
    ink.text(area.x + w + 4, area.y + 4.4, universeRemark(u), { role: 'ink-soft', maxMm: area.w - w - 4 });
    const cell = (area.w - LEAD_MM) / PER_ROW;
    for (let s = 0; s <= PER_ROW; s += 16) {
      const x = area.x + LEAD_MM + s * cell;
      ink.line(x, area.y + HEAD_MM + RULER_MM - 1.2, x, area.y + HEAD_MM + RULER_MM - 0.3, 0.13, 'ink-soft');
    }
    for (let r = 0; r < ROWS; r++) {
      const y = area.y + HEAD_MM + RULER_MM + r * (LANE_MM + LANE_GAP_MM);
      ink.text(area.x + LEAD_MM - 1.5, y + LANE_MM / 2 + CAP.note / 2, String(r * PER_ROW + 1), {
        align: 'right',
        role: 'ink-soft',
      });
      ink.rect(area.x + LEAD_MM, y, area.w - LEAD_MM, LANE_MM, { weightMm: 0.13, role: 'ink-faint' });
    }
    for (const g of u.gaps)
      for (const p of piecesOf(area, g.from, g.to)) {
        const words = p.first ? `${g.to - g.from + 1} free` : '';
        const shown = words !== '' && widthOf(words) + 3 <= p.w;
        const skip = shown ? widthOf(words) + 3 : 0;
        if (p.w - skip > 0.5)
          ink.rect(p.x + skip, p.y, p.w - skip, p.h, {
            hatch: { role: 'ink-faint', angleDeg: 45, spacingMm: 2.4 },
          });
        if (shown) ink.text(p.x + 1.2, p.y + LANE_MM / 2 + CAP.note / 2, words, { role: 'ink-soft' });
      }
    const unitOf = (r: PatchRow): string =>
      recordOf(info.plan, 'fixture', r.fixtureId)?.unit ??
      recordOf(info.plan, 'box', r.fixtureId)?.label ??
      '';
    for (const rows of stacksOf(u.rows))
      drawBlock(ink, area, rows, unitOf, markFor(info, ...rows.map((r) => r.fixtureId)));
  },
});

/** The 512 slots of every universe in use, 128 to a row, with a block for each unit and the free slots hatched. */
export const universeMaps = (info: SetInfo): readonly PageMaker[] => {
  const uses = universeUse(info.plan).filter((u) => u.rows.length > 0);
  if (uses.length === 0 || flowArea(info).h < HEIGHT_MM + 12) return [];
  return flowPages(
    info,
    {
      title: 'Universe maps',
      subtitle: 'Slots of each universe, 128 to a row, a tick at every sixteenth',
      documentType: 'Diagram',
      scale: 'none',
      units: 'slots',
    },
    [
      {
        head: () => ({
          heightMm: 5.5,
          keep: true,
          draw: (ink, area) => {
            ink.text(area.x, area.y + 3.2, LEGEND, { role: 'ink-soft', maxMm: area.w });
          },
        }),
        blocks: uses.map((u) => universeBlock(info, u)),
      },
    ],
    [
      'Units on the same slots share one block: its first unit and how many more. A block too narrow for its number is on the patch sheet.',
    ],
  );
};
