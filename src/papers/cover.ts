import { limitsOf } from '../derive/limits.ts';
import { wrapText } from '../drawing/text.ts';
import { planRecord } from '../plan/plan.ts';
import { cautions } from '../report/cautions.ts';
import { findingText } from '../report/text.ts';
import { type Block, flowArea, flowPages, type Section } from './flow.ts';
import { CAP, PITCH_MM } from './ink.ts';
import { type PageMaker, type SetInfo, sheetName } from './sheet-info.ts';
import { severityTag } from './signs.ts';
import { headingBlock } from './table.ts';

/** Lines in columns: each a block of one height. */
const inColumns = (texts: readonly (() => string)[], w: number, columns: number): readonly Block[] => {
  const rows = Math.ceil(texts.length / columns);
  const colW = w / columns;
  return Array.from(
    { length: rows },
    (_, row): Block => ({
      heightMm: 4.4,
      draw: (ink, area) => {
        for (let c = 0; c < columns; c++)
          ink.text(area.x + c * colW, area.y + 3.2, texts[c * rows + row]?.() ?? '', { maxMm: colW - 4 });
      },
    }),
  );
};

const paragraph = (text: string, w: number, lead = ''): Block => {
  const left = lead === '' ? 0 : 36;
  const lines = wrapText(text, CAP.note, 'regular', w - left, 5).length;
  return {
    heightMm: lines * PITCH_MM + 1.2,
    draw: (ink, area) => {
      if (lead !== '') ink.text(area.x, area.y + 3.2, lead, { weight: 'semibold', maxMm: left - 2 });
      ink.paragraph(area.x + left, area.y + 3.2, text, w - left, { maxLines: 5 });
    },
  };
};

/** Blocks two to a row on a wide sheet, read across. */
const twoUp = (make: (widthMm: number) => readonly Block[], w: number): readonly Block[] => {
  if (w < 300) return make(w);
  const half = w / 2 - 4;
  const blocks = make(half);
  const rows = Math.ceil(blocks.length / 2);
  return Array.from({ length: rows }, (_, row): Block => {
    const pair = [blocks[row], blocks[rows + row]];
    return {
      heightMm: Math.max(...pair.map((b) => b?.heightMm ?? 0)),
      draw: (ink, area) => {
        pair.forEach((b, i) => {
          b?.draw(ink, { ...area, x: area.x + i * (half + 8), w: half });
        });
      },
    };
  });
};

/** Named boxes to write in, three to a row. */
const writeIns = (names: readonly string[], w: number): readonly Block[] => {
  const cols = w > 250 ? 3 : w > 160 ? 2 : 1;
  const colW = w / cols;
  return Array.from(
    { length: Math.ceil(names.length / cols) },
    (_, row): Block => ({
      heightMm: 11,
      draw: (ink, area) => {
        for (let c = 0; c < cols; c++) {
          const name = names[row * cols + c];
          if (name === undefined) continue;
          const x = area.x + c * colW;
          ink.text(x, area.y + 2.6, name, { role: 'ink-soft', maxMm: colW - 4 });
          ink.rect(x, area.y + 3.6, colW - 4, 6.2, { weightMm: 0.25 });
        }
      },
    }),
  );
};

const ROLES: Readonly<Record<string, string>> = {
  'director-of-photography': 'Director of photography',
  gaffer: 'Gaffer',
  'best-boy': 'Best boy',
  'drawn-by': 'Drawn by',
  department: 'Department',
};

const EMERGENCY = [
  'Who stops the set, and where',
  'Main isolator, and who works it',
  'Generator stop',
  'Nearest hospital with emergency department',
  'Emergency number and set address',
  'Medic on set, radio channel',
];

const roleName = (role: string): string => ROLES[role] ?? role.replaceAll('-', ' ');

const section = (title: string, remark: string, blocks: readonly Block[]): readonly Section[] =>
  blocks.length === 0
    ? []
    : [{ head: (continued) => headingBlock(continued ? `${title} (continued)` : title, remark, 3), blocks }];

const findingLines = (info: SetInfo, w: number): readonly Block[] =>
  info.assessment.findings.map((f): Block => {
    const known = f.acknowledged;
    return {
      heightMm: known ? 8 : 4.4,
      draw: (ink, area) => {
        severityTag(ink, f.severity, f.number, area.x, area.y + 3.2);
        ink.text(area.x + 20, area.y + 3.2, findingText(info.plan, f).head, { maxMm: w - 20 });
        if (known)
          ink.text(area.x + 20, area.y + 6.7, `noted by ${known.by}, ${known.when}: ${known.reason}`, {
            role: 'ink-soft',
            maxMm: w - 20,
          });
      },
    };
  });

const SIGNATURE: Block = {
  heightMm: 16,
  draw: (ink, area) => {
    const names = ['Name', 'Signature', 'Date'];
    const colW = area.w / 3;
    names.forEach((name, i) => {
      const x = area.x + i * colW;
      ink.line(x, area.y + 10, x + colW - 6, area.y + 10, 0.25);
      ink.text(x, area.y + 13.4, name, { role: 'ink-soft' });
    });
  },
};

const sectionsFor = (info: SetInfo, index: readonly (() => string)[]): readonly Section[] => {
  const w = flowArea(info).w;
  const head = planRecord(info.plan);
  const columns = w > 250 ? 3 : w > 160 ? 2 : 1;
  const people = Object.entries(head.people).filter(([, v]) => v !== '');
  const facts = [
    head.location === '' ? '' : `Location: ${head.location}`,
    head.dates.length === 0 ? '' : `Dates: ${head.dates.join(', ')}`,
    ...people.map(([role, v]) => `${roleName(role)}: ${v}`),
  ].filter(Boolean);
  const overrides = [...limitsOf(info.plan).values()].filter((l) => l.override);
  return [
    ...section(
      'Contacts',
      'as typed in the plan',
      facts.length > 0
        ? inColumns(
            facts.map((f) => () => f),
            w,
            columns,
          )
        : [paragraph('No one is named in the plan.', w)],
    ),
    ...section('In an emergency', 'to be written in on the day', writeIns(EMERGENCY, w)),
    ...section('Sheets', 'after this cover', inColumns(index, w, columns)),
    ...section('Findings', 'stops first; a note that one is known changes no status', findingLines(info, w)),
    ...section(
      'Limits set in this plan',
      'in place of the table’s',
      overrides.map((l) =>
        paragraph(
          `${l.text} Set to ${l.value} ${l.unit} in place of ${l.override?.tableValue}: ${l.override?.reason}`,
          w,
          l.id,
        ),
      ),
    ),
    ...section(
      'Assumed',
      'taken from elsewhere because the plan does not say',
      twoUp((half) => info.assessment.assumptions.map((a) => paragraph(a.text, half)), w),
    ),
    ...section(
      'Cautions',
      'they stand whatever the sheets say',
      twoUp((half) => cautions(head.practice).map((c) => paragraph(c.text, half, c.title)), w),
    ),
    ...section('Seen', 'by a person; the program does not sign', [SIGNATURE]),
  ];
};

/** The sheets of one kind in a set. */
export interface SheetGroup {
  readonly name: string;
  readonly count: number;
}

/**
 * The cover of a set: contacts, emergency boxes, the sheets after it with their numbers, findings with who noted them,
 * overrides, assumptions, cautions and a line to sign on.
 */
export const coverPages = (info: SetInfo, groups: readonly SheetGroup[]): readonly PageMaker[] => {
  // How many pages the cover itself takes is known once it is laid out, before any of them is drawn.
  let covers = 0;
  const index = groups.map((g, i) => (): string => {
    const first = covers + groups.slice(0, i).reduce((s, x) => s + x.count, 0) + 1;
    const last = first + g.count - 1;
    return `${sheetName(first)}${last > first ? ` to ${sheetName(last)}` : ''}  ${g.name}`;
  });
  const pages = flowPages(
    info,
    {
      title: 'Cover',
      subtitle: 'Contacts, sheets, findings, assumptions and cautions',
      documentType: 'Cover',
      scale: 'none',
      units: 'none',
    },
    sectionsFor(info, index),
    [
      'Figures are computed from this plan; other loads are unknown. Nothing on these sheets is leave to energize.',
    ],
  );
  covers = pages.length;
  return pages;
};
