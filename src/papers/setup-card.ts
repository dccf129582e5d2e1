import { cellsWord } from '../derive/labels.ts';
import { type DrawContext, pluggedAt } from '../drawing/context.ts';
import { footprintOf, patchedMode } from '../plan/footprint.ts';
import { fixturePlace, kindOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { placesOf } from '../report/control.ts';
import { cardProgress, settingsOf, setupLink, type UnitSetting } from '../report/setup-steps.ts';
import { cardPlan } from './card-plan.ts';
import { drawSwitches } from './card-switches.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, widthOf } from './ink.ts';
import { markFor, revisionTriangle } from './revision-marks.ts';
import type { SetInfo } from './sheet-info.ts';

export interface CardInfo {
  readonly info: SetInfo;
  readonly ctx: DrawContext;
  readonly fixture: Fixture;
  readonly number: number;
  readonly count: number;
  /** Number of the drawing, printed on each card. */
  readonly drawing: string;
  /** Where on the set the unit is. */
  readonly position: string;
}

const UNIT_CAP_MM = 14;
const ADDRESS_CAP_MM = 10;
const STEP_MM = 5;
const LINE_MM = 4.2;
/** Between lines of the least letters. */
const NARROW_MM = 2.8;
const LABEL_MM = 17;
/** Capital height of what is read at arm's length. */
const TEXT_MM = 2.5;

/** What is written in by hand on the card, where the unit has it. */
const SETTINGS: readonly (readonly [UnitSetting, string])[] = [
  ['loss', 'Signal loss'],
  ['fan', 'Fan'],
  ['curve', 'Dimming curve'],
  ['frequency', 'Frequency'],
];

const blank = (ink: Ink, x: number, y: number, w: number, caption: string): void => {
  ink.text(x, y, caption, { role: 'ink-soft' });
  const from = x + widthOf(caption) + 1.5;
  if (x + w - from > 3) ink.line(from, y + 0.6, x + w, y + 0.6, 0.18, 'ink-soft');
};

/**
 * A text in one line, in smaller letters where it is too wide, and broken in two where that is still too wide; gives the
 * baseline after it. A `lift` of −1 centres two lines on the baseline of one.
 */
const fitted = (
  ink: Ink,
  x: number,
  y: number,
  text: string,
  w: number,
  lift: 0 | -1,
  weight: 'regular' | 'semibold' = 'regular',
): number => {
  if (widthOf(text, { capMm: TEXT_MM, weight }) <= w) {
    ink.text(x, y, text, { capMm: TEXT_MM, weight });
    return y + LINE_MM;
  }
  if (widthOf(text, { weight }) <= w) {
    ink.text(x, y, text, { weight });
    return y + LINE_MM;
  }
  ink.paragraph(x, y + lift * 1.25, text, w, { weight, maxLines: 2, pitchMm: NARROW_MM });
  return y + lift * 1.25 + NARROW_MM + LINE_MM;
};

/** One card: number, address, mode, settings, what to do in order, and where the unit is. */
export const drawCard = (ink: Ink, c: CardInfo, r: Rect): void => {
  const { fixture: f, info } = c;
  const kind = kindOf(info.plan, f.kindId, 'fixture');
  const mode = patchedMode(info.plan, f);
  const footprint = mode ? footprintOf(mode) : undefined;
  const places = placesOf(info.plan, f);
  const [first, ...more] = places;
  const slots = footprint?.slots ?? 0;
  const modeName = mode?.name ?? '';
  const bold = { capMm: UNIT_CAP_MM, weight: 'semibold' } as const;
  const wide = r.w * 0.42;
  const unitCap = Math.min(UNIT_CAP_MM, (UNIT_CAP_MM * wide) / Math.max(wide, widthOf(f.unit, bold)));
  ink.text(r.x, r.y + UNIT_CAP_MM, f.unit, {
    capMm: Math.max(CAP.value, unitCap),
    weight: 'semibold',
    maxMm: wide,
  });
  const tx = r.x + Math.max(r.w * 0.32, Math.min(wide, widthOf(f.unit, { ...bold, capMm: unitCap })) + 3);
  const tw = r.x + r.w - tx;
  const named = ink.paragraph(tx, r.y + 2.6, kind?.name ?? 'kind not in the plan', tw, {
    capMm: TEXT_MM,
    weight: 'semibold',
    maxLines: 2,
    pitchMm: LINE_MM,
  });
  const used = f.use ? fitted(ink, tx, named, f.use, tw, 0) : named;
  const power = cellsWord(c.ctx.plan, f) ?? pluggedAt(c.ctx, f.id) ?? 'not plugged';
  fitted(ink, tx, used, `Power: ${power}`, tw, 0);
  let y = r.y + UNIT_CAP_MM + 5.2;
  ink.line(r.x, y, r.x + r.w, y, 0.5);
  const linkX = r.x + r.w * 0.76;
  const here = more[0] ? more[0].fromSlot - 1 : slots;
  ink.text(
    r.x,
    y + 3.2,
    `Universe and address, ${slots} ${slots === 1 ? 'slot' : 'slots'}${more.length > 0 ? ', parted' : slots > 1 && first ? `, to ${first.address + here - 1}` : ''}`,
    { role: 'ink-soft', maxMm: linkX - r.x - 2 },
  );
  ink.text(linkX + 1.6, y + 3.2, f.link === 'radio' ? 'Port' : 'Link', { role: 'ink-soft' });
  const base = y + 5 + ADDRESS_CAP_MM;
  if (first) {
    const uni = `U${first.universe}`;
    const cap = ADDRESS_CAP_MM;
    const full =
      widthOf(uni, { capMm: cap }) + 3 + widthOf(String(first.address), { capMm: cap, weight: 'semibold' });
    const k = Math.min(1, (linkX - r.x - 3) / full);
    ink.text(r.x, base, uni, { capMm: cap * k });
    ink.text(r.x + (widthOf(uni, { capMm: cap }) + 3) * k, base, String(first.address), {
      capMm: cap * k,
      weight: 'semibold',
    });
  }
  const linkW = r.x + r.w - linkX - 1.6;
  if (f.link !== 'radio')
    ink.text(linkX + 1.6, base, f.link === 'line' ? 'line' : 'not set', {
      capMm: CAP.value,
      weight: 'semibold',
      maxMm: linkW,
    });
  else {
    const { transmitter, port } = setupLink(info.plan, f);
    if (!transmitter) ink.rect(linkX + 1.6, base - 7, 8, 7.5, { weightMm: 0.25 });
    else {
      ink.text(linkX + 1.6, base - 4.4, transmitter.label, {
        capMm: CAP.value,
        weight: 'semibold',
        maxMm: linkW,
      });
      ink.text(linkX + 1.6, base, port, { capMm: CAP.note, weight: 'semibold', maxMm: linkW });
    }
  }
  ink.line(linkX, y, linkX, base + 2, 0.18);
  y = base + 2;
  ink.line(r.x, y, r.x + r.w, y, 0.25);
  if (more.length > 0) {
    ink.text(r.x, y + 3.4, 'Goes on', { role: 'ink-soft' });
    ink.text(
      r.x + LABEL_MM,
      y + 3.4,
      more.map((p) => `from its slot ${p.fromSlot} at U${p.universe} ${p.address}`).join('; '),
      { maxMm: r.w - LABEL_MM, weight: 'semibold' },
    );
    y += 4.6;
  }
  ink.text(r.x, y + 4, 'Mode', { role: 'ink-soft' });
  const underMode = fitted(ink, r.x + LABEL_MM, y + 4, modeName, r.w - LABEL_MM, 0, 'semibold');
  y = underMode + 6 - 4 - LINE_MM;
  ink.line(r.x, y, r.x + r.w, y, 0.13, 'ink-soft');
  const switches = kind?.addressBy === 'switches';
  if (switches && first) y = drawSwitches(ink, r.x, y + 1, r.w, first.address);
  else {
    ink.text(r.x, y + 4, 'Address', { role: 'ink-soft' });
    ink.text(r.x + LABEL_MM, y + 4, kind?.addressBy === 'menu' ? 'set by menu' : 'see the unit’s manual', {
      capMm: TEXT_MM,
      weight: 'semibold',
      maxMm: r.w - LABEL_MM,
    });
    y += 5.4;
  }
  const half = r.w / 2 - 2;
  const settings = settingsOf(kind);
  const fields = SETTINGS.filter(([id]) => settings.includes(id));
  fields.forEach(([, words], i) => {
    blank(ink, r.x + (i % 2) * (half + 4), y + 3.6 + Math.floor(i / 2) * 5, half, words);
  });
  y += 1 + Math.ceil(fields.length / 2) * 5;
  ink.line(r.x, y, r.x + r.w, y, 0.35);
  const { steps } = cardProgress(info.plan, f);
  const stepsW = r.w * 0.58;
  // All steps stay above the foot of the card; the usual pitch where there is room.
  const pitch = Math.min(STEP_MM, (r.y + r.h - 4.5 - (y + 5)) / Math.max(1, steps.length - 1));
  steps.forEach((s, i) => {
    const at = y + 5 + i * pitch;
    ink.rect(r.x, at - 2.75, 3, 3, { weightMm: 0.25 });
    if (s.tick) {
      ink.line(r.x + 0.5, at - 1.3, r.x + 1.3, at - 0.4, 0.35);
      ink.line(r.x + 1.3, at - 0.4, r.x + 2.6, at - 2.4, 0.35);
    }
    if (pitch >= LINE_MM) fitted(ink, r.x + 4.6, at, s.short, stepsW - 4.6, -1);
    else ink.text(r.x + 4.6, at, s.short, { maxMm: stepsW - 4.6 });
  });
  const planX = r.x + stepsW + 2;
  const under = ink.paragraph(planX, y + 4.4, c.position, r.x + r.w - planX, { maxLines: 3 });
  cardPlan(ink, c.ctx, fixturePlace(info.plan, f).at, {
    x: planX,
    y: under - 2,
    w: r.x + r.w - planX,
    h: r.y + r.h - 7 - (under - 2),
  });
  const foot = r.y + r.h;
  const changed = markFor(info, f.id);
  if (changed) revisionTriangle(ink, r.x + r.w - 3, foot - 7, changed, 4.4);
  const label = [c.drawing, info.options.revision].filter(Boolean).join(', ');
  ink.text(r.x, foot, `${label ? `${label}, ` : ''}card ${c.number} of ${c.count}`, {
    role: 'ink-soft',
    maxMm: r.w * 0.55,
  });
  blank(ink, r.x + r.w * 0.58, foot, r.w * 0.42, 'Set by');
};
