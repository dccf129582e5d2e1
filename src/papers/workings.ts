import { figureKey, type Quantity } from '../derive/types.ts';
import { explain } from '../report/explain.ts';
import { findingText } from '../report/text.ts';
import type { Finding } from '../report/types.ts';
import { LEG_QUANTITIES, readerOf } from './figures.ts';
import { type Block, columnWidth, flowPages, type Section } from './flow.ts';
import { PITCH_MM } from './ink.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { severityTag } from './signs.ts';
import { section } from './text-blocks.ts';
import { captioned, type TextLine, workingLines, wrappedLines } from './working-lines.ts';

const TAG_MM = 20;
const GAP_MM = 3.4;
/** Lines of one working kept together; a longer one runs on in the next column. */
const RUN_LINES = 24;

/** Lines as blocks, in runs that fit a column on any sheet; a hairline ends the last. */
const linesBlocks = (
  lines: readonly TextLine[],
  w: number,
  first: (ink: Parameters<Block['draw']>[0], x: number, y: number) => void,
): readonly Block[] => {
  const runs: TextLine[][] = [];
  for (let i = 0; i < lines.length; i += RUN_LINES) runs.push(lines.slice(i, i + RUN_LINES));
  return runs.map((run, k): Block => {
    const last = k === runs.length - 1;
    return {
      heightMm: run.length * PITCH_MM + (last ? GAP_MM : 0),
      draw: (ink, area) => {
        if (k === 0) first(ink, area.x, area.y);
        run.forEach((line, i) => {
          const y = area.y + 3.2 + i * PITCH_MM;
          for (const c of line)
            ink.text(area.x + c.x, y, c.text, {
              maxMm: c.w,
              ...(c.strong ? { weight: 'semibold' as const } : {}),
              ...(c.soft ? { role: 'ink-soft' as const } : {}),
            });
        });
        if (!last) return;
        const y = area.y + area.h - GAP_MM / 2 + 0.4;
        ink.line(area.x, y, area.x + w, y, 0.13, 'ink-faint');
      },
    };
  });
};

const findingBlocks = (info: SetInfo, f: Finding, w: number): readonly Block[] => {
  const t = findingText(info.plan, f);
  const working = f.figureKey === undefined ? undefined : explain(info.plan, f.figureKey);
  return linesBlocks(
    [
      ...wrappedLines(t.head, TAG_MM, w - TAG_MM, 3),
      ...(working ? workingLines(working, w) : captioned('Basis', t.body, w)),
      ...(t.citation ? captioned('Limit', t.citation, w) : []),
    ],
    w,
    (ink, x, y) => {
      severityTag(ink, f.severity, f.number, x, y + 3.2);
      ink.anchor(`working:${f.number}`, x, y);
      ink.link(x, y + 0.4, TAG_MM - 1, 4, `finding:${f.number}`);
    },
  );
};

/** Keys of the headline figures: of each source the worst amps on each leg and the neutral, and its power. */
export const headlineKeys = (info: SetInfo): readonly string[] => {
  const { figures, setups } = info.assessment;
  const r = readerOf(info.assessment, info.setupId);
  return r.roots().flatMap((s) => {
    const quantities: Quantity[] = [
      ...s.legs.map((l) => LEG_QUANTITIES[l] ?? 'leg0A'),
      ...(s.neutral ? (['neutralA'] as const) : []),
      'inW',
      'inVa',
    ];
    return quantities.flatMap((q) => {
      const worst = figures.worst(s.key, q);
      const setup = setups[worst.setupIndex];
      return setup && Number.isFinite(worst.value) ? [figureKey(q, s.key, setup.id)] : [];
    });
  });
};

/** The arithmetic behind every finding and every headline figure: formula, inputs, rule and source. */
export const workingPages = (info: SetInfo): readonly PageMaker[] => {
  const columns = columnWidth(info, 2) >= 130 ? 2 : 1;
  const w = columnWidth(info, columns);
  const headline = headlineKeys(info).flatMap((key) => {
    const working = explain(info.plan, key);
    return working
      ? linesBlocks([...wrappedLines(working.title, 0, w, 2), ...workingLines(working, w)], w, () => {})
      : [];
  });
  const sections: readonly Section[] = [
    ...section(
      'Findings',
      'how each was reckoned',
      info.assessment.findings.flatMap((f) => findingBlocks(info, f, w)),
    ),
    ...section('Headline figures', 'each source in its worst setup', headline),
  ];
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Workings',
      subtitle: 'Formula, inputs, rule and source of findings and headline figures',
      documentType: 'Calculation',
      scale: 'none',
      units: 'as given',
    },
    sections,
    [
      'Any other figure has its working on screen, and by “explain” on the command line. (assumed): taken from elsewhere because the plan does not say.',
    ],
    columns,
  );
};
