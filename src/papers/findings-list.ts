import { wrapText } from '../drawing/text.ts';
import { planRecord, recordsOf } from '../plan/plan.ts';
import { findingText } from '../report/text.ts';
import type { Finding } from '../report/types.ts';
import { type Block, flowArea, type Section } from './flow.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, PITCH_MM } from './ink.ts';
import type { SetInfo } from './sheet-info.ts';
import { severityTag } from './signs.ts';
import { headingBlock } from './table.ts';
import { textCap, textPitch } from './text-blocks.ts';

const TAG_MM = 20;
/** The longest a single finding may run on paper. */
const MAX_LINES = 8;

const findingBlock = (info: SetInfo, f: Finding, w: number): Block => {
  const t = findingText(info.plan, f);
  const textW = w - TAG_MM;
  const head = t.head;
  const body = [t.body, t.todo, t.citation ? `[${t.citation}]` : ''].filter(Boolean).join(' ');
  const known = f.acknowledged
    ? `Known to ${f.acknowledged.by}, ${f.acknowledged.when}: ${f.acknowledged.reason}`
    : '';
  const capMm = textCap(w);
  const pitchMm = textPitch(capMm);
  const lines =
    wrapText(head, capMm, 'semibold', textW, 2).length +
    wrapText(body, CAP.note, 'regular', textW, MAX_LINES).length +
    (known ? wrapText(known, CAP.note, 'regular', textW, 3).length : 0);
  return {
    heightMm: lines * PITCH_MM + 2.2 + 2 * (pitchMm - PITCH_MM),
    draw: (ink, area) => {
      const base = area.y + capMm + 1.4;
      severityTag(ink, f.severity, f.number, area.x, base);
      ink.anchor(`finding:${f.number}`, area.x, area.y);
      ink.link(area.x, area.y + 0.4, TAG_MM - 1, 4, `working:${f.number}`);
      let y = ink.paragraph(area.x + TAG_MM, base, head, textW, {
        capMm,
        pitchMm,
        weight: 'semibold',
        maxLines: 2,
      });
      y = ink.paragraph(area.x + TAG_MM, y, body, textW, { maxLines: MAX_LINES });
      if (known) ink.paragraph(area.x + TAG_MM, y, known, textW, { role: 'ink-soft', maxLines: 3 });
      ink.line(area.x, area.y + area.h, area.x + area.w, area.y + area.h, 0.13, 'ink-faint');
    },
  };
};

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;

const textRow = (text: string, w: number): Block => {
  const lines = wrapText(text, CAP.note, 'regular', w, 6).length;
  return {
    heightMm: lines * PITCH_MM + 1,
    draw: (ink, area) => {
      ink.paragraph(area.x, area.y + 3, text, w, { maxLines: 6 });
    },
  };
};

const hasCover = (info: SetInfo): boolean => info.sheets.includes('cover');

/** Findings in words, what was assumed, and limits the plan set in place of the table's. */
export const findingSections = (info: SetInfo): readonly Section[] => {
  const { findings, assumptions } = info.assessment;
  const w = flowArea(info).w;
  const by = (s: Finding['severity']): number => findings.filter((f) => f.severity === s).length;
  const out: Section[] = [
    {
      head: (continued) =>
        headingBlock(
          continued ? 'Findings (continued)' : 'Findings',
          `${count(by('stop'), 'stop')}, ${count(by('warn'), 'warn')}, ${count(by('note'), 'note')}; computed from this plan, other loads unknown`,
        ),
      blocks:
        findings.length > 0
          ? findings.map((f) => findingBlock(info, f, w))
          : [textRow('No finding. That is no leave to energize: see the cautions.', w)],
    },
  ];
  // A cover says what was assumed and which limits were set; a schedule on its own must.
  const alone = !hasCover(info);
  if (alone && assumptions.length > 0) {
    out.push({
      head: (continued) =>
        headingBlock(
          continued ? 'Assumed (continued)' : 'Assumed',
          'taken from elsewhere because the plan does not say',
        ),
      blocks: assumptions.map((a) => textRow(a.text, w)),
    });
  }
  const overrides = planRecord(info.plan).limits;
  if (alone && overrides.length > 0) {
    out.push({
      head: () => headingBlock('Limits set in this plan', 'in place of the table’s'),
      blocks: overrides.map((o) => textRow(`${o.limit}: ${o.value}. ${o.reason}`, w)),
    });
  }
  const known = recordsOf(info.plan, 'acknowledgement').length;
  if (known > 0 && findings.every((f) => !f.acknowledged)) {
    out.push({
      head: () => headingBlock('Acknowledgements', 'none of those in the plan still fits a finding'),
      blocks: [textRow(`${count(known, 'acknowledgement')} lapsed.`, w)],
    });
  }
  return out;
};

/** Heads of the findings, stops first, as many as the box holds; what is left out is said. */
export const drawFindingHeads = (ink: Ink, info: SetInfo, box: Rect): void => {
  const { findings } = info.assessment;
  ink.text(box.x, box.y + 5, 'Findings', { capMm: CAP.value, weight: 'semibold' });
  if (findings.length === 0) {
    ink.text(box.x, box.y + 10.5, 'No finding. That is no leave to energize: see the cautions.', {
      maxMm: box.w,
    });
    return;
  }
  const fit = Math.floor((box.h - 12) / 4.2);
  const shown = findings.length <= fit ? findings : findings.slice(0, fit - 1);
  let y = box.y + 10.5;
  for (const f of shown) {
    severityTag(ink, f.severity, f.number, box.x, y);
    ink.link(box.x, y - 3, box.w, 4, `finding:${f.number}`, `working:${f.number}`);
    ink.text(box.x + TAG_MM, y, findingText(info.plan, f).head, { maxMm: box.w - TAG_MM });
    y += 4.2;
  }
  const left = findings.length - shown.length;
  if (left > 0)
    ink.text(box.x, y, `${left} more on the circuit schedule`, { role: 'ink-soft', maxMm: box.w });
};
