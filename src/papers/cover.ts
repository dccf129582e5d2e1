import { limitsOf } from '../derive/limits.ts';
import { wrapText } from '../drawing/text.ts';
import { issuesOf } from '../plan/edits/issue.ts';
import { planRecord } from '../plan/plan.ts';
import { cautions } from '../report/cautions.ts';
import { findingText } from '../report/text.ts';
import type { Finding } from '../report/types.ts';
import { type Block, columnWidth, flowPages, type Section } from './flow.ts';
import { CAP } from './ink.ts';
import { type PageMaker, type SetInfo, sheetName } from './sheet-info.ts';
import { severityTag } from './signs.ts';
import { paragraphBlock, section, textCap, textPitch, writeInBlocks } from './text-blocks.ts';

const ROLES: Readonly<Record<string, string>> = {
  'director-of-photography': 'Director of photography',
  gaffer: 'Gaffer',
  'best-boy': 'Best boy',
  'drawn-by': 'Drawn by',
  department: 'Department',
};
const ROLE_ORDER = Object.keys(ROLES);

const EMERGENCY = [
  'Who stops the set, and where',
  'Main isolator: where, and who works it',
  'Generator stop: where, and who works it',
  'Nearest hospital with emergency department',
  'Emergency number and set address',
  'Medic on set, radio channel',
];

const NOTES = [
  'Figures are computed from this plan; other loads are unknown to it. What was computed against which rating is said at each figure; who decides is a person.',
  'The status stays “for review” whatever is noted as known. Only a person’s signature stands for more.',
  'Worst figures are the worst of all setups of the plan; “this setup” is the one named in the title block.',
  'An empty box is to be written in on the day: what it asks for is not in the plan and is never guessed.',
];

const roleName = (role: string): string => {
  const plain = role.replaceAll('-', ' ');
  return ROLES[role] ?? plain.charAt(0).toUpperCase() + plain.slice(1);
};

/** Production and scene in large letters. */
const nameBlock = (info: SetInfo, w: number): Block => {
  const head = planRecord(info.plan);
  const title = head.production || head.title || 'Production: not in the plan';
  const lines = wrapText(title, 7, 'semibold', w, 2);
  const sub = [head.scene, head.production ? head.title : ''].filter(Boolean).join(' · ');
  return {
    heightMm: lines.length * 10 + 10,
    draw: (ink, area) => {
      ink.paragraph(area.x, area.y + 8.6, title, w, {
        capMm: 7,
        weight: 'semibold',
        maxLines: 2,
        pitchMm: 10,
      });
      ink.text(area.x, area.y + lines.length * 10 + 5, sub, { capMm: CAP.head, role: 'ink-soft', maxMm: w });
    },
  };
};

const factBlock = (name: string, value: string, w: number): Block => {
  const lines = wrapText(value || 'not in the plan', CAP.value, 'regular', w - 46, 3);
  return {
    heightMm: lines.length * 4.4 + 1,
    draw: (ink, area) => {
      ink.text(area.x, area.y + 3.4, name, { role: 'ink-soft', maxMm: 44 });
      ink.paragraph(area.x + 46, area.y + 3.6, value || 'not in the plan', w - 46, {
        capMm: CAP.value,
        pitchMm: 4.4,
        maxLines: 3,
        ...(value ? {} : { role: 'ink-soft' as const }),
      });
    },
  };
};

/** The sheets that come with this cover, two to a row, each leading to its first page. */
const indexBlocks = (entries: readonly (() => IndexEntry)[], w: number, capMm: number): readonly Block[] => {
  const columns = w > 120 ? 2 : 1;
  const rows = Math.ceil(entries.length / columns);
  const colW = w / columns;
  return Array.from(
    { length: rows },
    (_, row): Block => ({
      heightMm: textPitch(capMm) + 1.1,
      draw: (ink, area) => {
        for (let c = 0; c < columns; c++) {
          const e = entries[c * rows + row]?.();
          if (!e) continue;
          const x = area.x + c * colW;
          ink.text(x, area.y + capMm + 1.4, e.text, { capMm, maxMm: colW - 4 });
          ink.link(x, area.y + 0.4, colW - 4, 4, `sheet:${e.id}`);
        }
      },
    }),
  );
};

const TAG_MM = 20;

/** A finding by its head, leading to where it is set out, with who noted it and why. */
const findingBlock = (info: SetInfo, f: Finding, w: number, capMm: number): Block => {
  const head = findingText(info.plan, f).head;
  const known = f.acknowledged
    ? `noted by ${f.acknowledged.by}, ${f.acknowledged.when}: ${f.acknowledged.reason}`
    : '';
  const pitchMm = textPitch(capMm);
  const headLines = wrapText(head, capMm, 'regular', w - TAG_MM, 3).length;
  const knownLines = known ? wrapText(known, capMm, 'regular', w - TAG_MM, 4).length : 0;
  return {
    heightMm: (headLines + knownLines) * pitchMm + 1,
    draw: (ink, area) => {
      const base = area.y + capMm + 1.4;
      severityTag(ink, f.severity, f.number, area.x, base);
      const y = ink.paragraph(area.x + TAG_MM, base, head, w - TAG_MM, { capMm, pitchMm, maxLines: 3 });
      if (known)
        ink.paragraph(area.x + TAG_MM, y, known, w - TAG_MM, {
          capMm,
          pitchMm,
          role: 'ink-soft',
          maxLines: 4,
        });
      ink.link(area.x, area.y + 0.4, w, area.h - 0.8, `finding:${f.number}`, `working:${f.number}`);
    },
  };
};

const SIGNATURE: Block = {
  heightMm: 15,
  draw: (ink, area) => {
    const names = ['Name', 'Signature', 'Date'];
    const colW = area.w / 3;
    names.forEach((name, i) => {
      const x = area.x + i * colW;
      ink.line(x, area.y + 9, x + colW - (i === 2 ? 0 : 6), area.y + 9, 0.25);
      ink.text(x, area.y + 12.4, name, { role: 'ink-soft' });
    });
  },
};

const issueBlocks = (info: SetInfo, w: number, capMm: number): readonly Block[] =>
  [...issuesOf(info.plan)]
    .slice(-6)
    .map((i) =>
      paragraphBlock(
        [i.date, i.note || (i.revision === 'A' ? 'First issue' : ''), i.by ? `by ${i.by}` : '']
          .filter(Boolean)
          .join(', '),
        w,
        `Revision ${i.revision}`,
        capMm,
      ),
    );

const sectionsFor = (
  info: SetInfo,
  index: readonly (() => IndexEntry)[],
  w: number,
  capMm: number,
): readonly Section[] => {
  const head = planRecord(info.plan);
  const people = Object.entries(head.people)
    .filter(([, v]) => v !== '')
    .sort(([a], [b]) => order(a) - order(b) || (a < b ? -1 : 1));
  const overrides = [...limitsOf(info.plan).values()].filter((l) => l.override);
  const { findings, assumptions } = info.assessment;
  const marked = info.changes.length;
  return [
    {
      head: (continued) => (continued ? paragraphBlock('Production (continued)', w) : nameBlock(info, w)),
      blocks: [
        factBlock('Location', head.location, w),
        factBlock('Dates', head.dates.join(', '), w),
        ...people.map(([role, v]) => factBlock(roleName(role), v, w)),
      ],
    },
    ...section(
      'In an emergency',
      'to be written in on the day',
      writeInBlocks(EMERGENCY, w, w > 120 ? 2 : 1),
    ),
    ...section('Sheets', 'with this cover', indexBlocks(index, w, capMm)),
    ...section('Seen', 'by a person; the program does not sign', [SIGNATURE]),
    ...section(
      'Findings',
      findings.length > 0
        ? 'stops first; a note that one is known changes no status'
        : 'none; that is no leave to energize',
      findings.length > 0
        ? findings.map((f) => findingBlock(info, f, w, capMm))
        : [paragraphBlock('No finding was computed from this plan. See the cautions.', w, '', capMm)],
    ),
    ...section(
      'Issues',
      marked > 0 ? `${marked} changes since ${info.options.since?.revision}` : '',
      issueBlocks(info, w, capMm),
    ),
    ...section(
      'Limits set in this plan',
      'in place of the table’s',
      overrides.map((l) =>
        paragraphBlock(
          `${l.text} Set to ${l.value} ${l.unit} in place of ${l.override?.tableValue}: ${l.override?.reason}`,
          w,
          l.id,
          capMm,
        ),
      ),
    ),
    ...section(
      'Assumed',
      'taken from elsewhere because the plan does not say',
      assumptions.map((a) => paragraphBlock(a.text, w, '', capMm)),
    ),
    ...section(
      'Cautions',
      'they stand whatever the sheets say',
      cautions(head.practice).map((c) => paragraphBlock(c.text, w, c.title, capMm)),
    ),
  ];
};

const order = (role: string): number => {
  const at = ROLE_ORDER.indexOf(role);
  return at < 0 ? ROLE_ORDER.length : at;
};

interface IndexEntry {
  readonly id: string;
  readonly text: string;
}

/** The sheets of one kind in a set. */
export interface SheetGroup {
  readonly id: string;
  readonly name: string;
  readonly count: number;
}

/**
 * The cover of a set: production and contacts, emergency boxes, the sheets with their numbers, a line to sign on, findings
 * with who noted them, overrides, assumptions and cautions. `groupsBefore` says how many groups come before it.
 */
export const coverPages = (
  info: SetInfo,
  groups: readonly SheetGroup[],
  groupsBefore: number,
): readonly PageMaker[] => {
  // How many pages the cover itself takes is known once it is laid out, before any of them is drawn.
  let covers = 0;
  const index = groups.map((g, i) => (): IndexEntry => {
    const own = i >= groupsBefore ? covers : 0;
    const first = own + groups.slice(0, i).reduce((s, x) => s + x.count, 0) + 1;
    const last = first + g.count - 1;
    return {
      id: g.id,
      text: `${sheetName(first)}${last > first ? ` to ${sheetName(last)}` : ''}  ${g.name}`,
    };
  });
  const columns = columnWidth(info, 2) >= 130 ? 2 : 1;
  const w = columnWidth(info, columns);
  const made = (capMm: number): readonly PageMaker[] =>
    flowPages(
      info,
      {
        title: 'Cover',
        subtitle: 'Contacts, sheets, findings, assumptions and cautions',
        documentType: 'Cover',
        scale: 'none',
        units: 'none',
      },
      sectionsFor(info, index, w, capMm),
      [
        'Nothing on these sheets is leave to connect or to energize anything.',
        ...NOTES.map((n, i) => `${i + 1}  ${n}`),
      ],
      columns,
    );
  // Larger letters where they cost no page.
  const small = made(CAP.note);
  const large = made(textCap(w));
  const pages = large.length > small.length ? small : large;
  covers = pages.length;
  return pages;
};
