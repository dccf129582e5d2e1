import { cellsWord } from '../derive/labels.ts';
import { drawContext, pluggedAt } from '../drawing/context.ts';
import { wrapText } from '../drawing/text.ts';
import { compareNatural } from '../kernel/ids.ts';
import { printAddress } from '../plan/address.ts';
import { kindOf, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import type { LabelStock } from '../plan/records/index.ts';
import { legsText } from './figures.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, makeInk, PITCH_MM, widthOf } from './ink.ts';
import { LABEL_STOCKS, labelFaults, wholeLabels } from './label-stocks.ts';
import { runsOf } from './runs.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { sheetName } from './sheet-info.ts';

/** Left free inside each edge: label sheets and printers are never in line to the millimetre. */
const MARGIN_MM = 2.5;

/** The plan's own label sheet, else the usual one of its units. */
export const stockOf = (info: SetInfo): LabelStock => {
  const own = planRecord(info.plan).paper.labels;
  const usual = LABEL_STOCKS.find((s) => s.units === info.units) ?? LABEL_STOCKS[0];
  if (own) return own;
  if (!usual) throw new Error('the list of label sheets is empty');
  return usual.stock;
};

type Label = (ink: Ink, room: Rect) => void;

const labelSheets = (info: SetInfo, title: string, labels: readonly Label[]): readonly PageMaker[] => {
  if (labels.length === 0) return [];
  const s = stockOf(info);
  const { faults, prints } = labelFaults(s);
  for (const f of faults) info.notices.say(f);
  if (!prints) return [];
  const { columns, rows } = wholeLabels(s);
  const perPage = columns * rows;
  return Array.from(
    { length: Math.ceil(labels.length / perPage) },
    (_, page): PageMaker =>
      (sheetNumber) => {
        const ink = makeInk(info.notices);
        labels.slice(page * perPage, (page + 1) * perPage).forEach((draw, i) => {
          draw(ink, {
            x: s.leftMm + (i % columns) * s.pitchXMm + MARGIN_MM,
            y: s.topMm + Math.floor(i / columns) * s.pitchYMm + MARGIN_MM,
            w: s.widthMm - 2 * MARGIN_MM,
            h: s.heightMm - 2 * MARGIN_MM,
          });
        });
        return {
          title: `${sheetName(sheetNumber)} ${title}`,
          widthMm: s.sheetWidthMm,
          heightMm: s.sheetHeightMm,
          items: ink.items,
        };
      },
  );
};

/** A large word at the left, as large as the label allows, and lines beside it; as many lines as have room. */
const wordAndLines = (
  ink: Ink,
  r: Rect,
  word: string,
  lines: readonly { readonly text: string; readonly strong?: boolean }[],
): void => {
  const wide = r.w * 0.4;
  const most = Math.min(r.h * 0.62, 16);
  const unit = widthOf(word, { capMm: 1, weight: 'semibold' });
  const cap = Math.max(1.8, Math.min(most, wide / Math.max(0.1, unit)));
  ink.text(r.x, r.y + r.h / 2 + cap / 2, word, { capMm: cap, weight: 'semibold', maxMm: wide });
  const x = r.x + Math.min(wide, widthOf(word, { capMm: cap, weight: 'semibold' })) + 3;
  const w = r.x + r.w - x;
  const shown = lines.filter((l) => l.text !== '');
  // The larger letters where everything has room in them.
  for (const [cap, pitch] of [
    [CAP.value, 4.4],
    [CAP.note, PITCH_MM],
  ] as const) {
    const rows = Math.max(1, Math.floor((r.h - cap) / pitch) + 1);
    const said = shown.flatMap((l) =>
      wrapText(l.text, cap, l.strong ? 'semibold' : 'regular', w, 2).map((text) => ({ ...l, text })),
    );
    const whole = said.length <= rows && !said.some((l) => l.text.endsWith('…'));
    if (!whole && cap !== CAP.note) continue;
    const kept = said.slice(0, rows);
    const top = r.y + (r.h - ((kept.length - 1) * pitch + cap)) / 2 + cap;
    kept.forEach((l, i) => {
      ink.text(x, top + i * pitch, l.text, {
        capMm: cap,
        maxMm: w,
        ...(l.strong ? { weight: 'semibold' as const } : {}),
      });
    });
    return;
  }
};

/** A label for every unit: number, what it is, use, where it takes power, address. */
export const unitLabelPages = (info: SetInfo): readonly PageMaker[] => {
  const fixtures = [...recordsOf(info.plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));
  return labelSheets(
    info,
    'Unit labels',
    fixtures.map(
      (f): Label =>
        (ink, room) => {
          const ctx = drawContext(info.plan, { floorId: f.floorId, setupId: info.setupId, nominalScale: 50 });
          const universe = f.patch && recordOf(info.plan, 'universe', f.patch.universeId);
          wordAndLines(ink, room, f.unit, [
            { text: kindOf(info.plan, f.kindId)?.name ?? '', strong: true },
            { text: f.use },
            { text: cellsWord(ctx.plan, f) ?? pluggedAt(ctx, f.id) ?? '' },
            {
              text:
                f.patch && universe
                  ? printAddress({ universe: universe.number, address: f.patch.address })
                  : '',
            },
            { text: planRecord(info.plan).production },
          ]);
        },
    ),
  );
};

/** Two labels for every run, one for each end: number, from and to, pieces, legs. */
export const cableLabelPages = (info: SetInfo): readonly PageMaker[] => {
  const { practice } = planRecord(info.plan);
  return labelSheets(
    info,
    'Cable labels',
    runsOf(info).flatMap((run) =>
      (['source end', 'load end'] as const).map(
        (end): Label =>
          (ink, room) =>
            wordAndLines(ink, room, run.number, [
              { text: `${run.from} to ${run.to}`, strong: true },
              { text: run.kindName },
              {
                text: [run.pieces, run.entity?.sourceId === undefined ? '' : legsText(practice, run.entity)]
                  .filter(Boolean)
                  .join(', '),
              },
              { text: end },
            ]),
      ),
    ),
  );
};
