import { limitsOf } from '../derive/limits.ts';
import { planRecord, recordOf } from '../plan/plan.ts';
import { explain } from '../report/explain.ts';
import { findingText } from '../report/text.ts';
import type { Working } from '../report/types.ts';
import { largestLegA, legsText, readerOf } from './figures.ts';
import type { ListTable } from './lists.ts';
import { rounded } from './power-lists.ts';
import type { SetInfo } from './sheet-info.ts';
import { pointsOf } from './test-sheet.ts';
import { headlineKeys } from './workings.ts';

export const findingTable = (info: SetInfo): ListTable => ({
  name: 'findings',
  head: [
    ...['number', 'severity', 'rule', 'what', 'arithmetic', 'to do', 'limit'],
    ...['noted by', 'noted when', 'reason'],
  ],
  rows: info.assessment.findings.map((f) => {
    const t = findingText(info.plan, f);
    const a = f.acknowledged;
    return [
      ...[f.number, f.severity, f.rule, t.head, t.body, t.todo, t.citation],
      ...[a?.by ?? '', a?.when ?? '', a?.reason ?? ''],
    ];
  }),
});

/** The arithmetic behind every finding that has a figure, and behind the headline figures. */
export const workingTable = (info: SetInfo): ListTable => {
  const row = (number: string, w: Working): readonly string[] => [
    number,
    w.title,
    w.formula,
    w.inputs.map((i) => `${i.name} = ${i.value} (${i.from}${i.assumed ? ', assumed' : ''})`).join('; '),
    w.steps.join('; '),
    w.result,
    w.rule,
    w.source,
  ];
  const found = info.assessment.findings.flatMap((f) => {
    const w = f.figureKey === undefined ? undefined : explain(info.plan, f.figureKey);
    return w ? [row(f.number, w)] : [];
  });
  const headline = headlineKeys(info).flatMap((key) => {
    const w = explain(info.plan, key);
    return w ? [row('', w)] : [];
  });
  return {
    name: 'workings',
    head: ['finding', 'figure', 'formula', 'inputs', 'steps', 'result', 'rule', 'source'],
    rows: [...found, ...headline],
  };
};

/** Limits the plan sets in place of the table's. */
export const limitTable = (info: SetInfo): ListTable => ({
  name: 'limits',
  head: ['limit', 'says', 'set to', 'unit', 'table value', 'reason', 'source'],
  rows: [...limitsOf(info.plan).values()].flatMap((l) =>
    l.override
      ? [
          [
            l.id,
            l.text,
            l.value,
            l.unit,
            l.override.tableValue,
            l.override.reason,
            `${l.source}, ${l.edition}`,
          ],
        ]
      : [],
  ),
});

/** Points to measure at with what was computed there; the columns of what is measured are empty. */
export const testTable = (info: SetInfo): ListTable => {
  const r = readerOf(info.assessment, info.setupId);
  const { practice } = planRecord(info.plan);
  return {
    name: 'tests',
    head: [
      ...['source', 'point', 'legs', 'computed volts V', 'computed amps A', 'measured volts V'],
      ...['measured amps A', 'measured Hz', 'polarity', 'device test', 'by', 'when'],
    ],
    rows: r
      .roots()
      .flatMap((source) =>
        pointsOf(info, r, source.recordId).map((e) => [
          source.label,
          e.label,
          legsText(practice, e),
          rounded(r.worst(e.key, 'voltsV'), 1),
          rounded(largestLegA(r, e, 'worst'), 1),
          ...[Number.NaN, Number.NaN, Number.NaN, '', '', '', ''],
        ]),
      ),
  };
};

export const assumedTable = (info: SetInfo): ListTable => ({
  name: 'assumed',
  head: ['what was assumed'],
  rows: info.assessment.assumptions.map((a) => [a.text]),
});

export const changeTable = (info: SetInfo): ListTable => ({
  name: 'changes',
  head: ['since', 'revision', 'what', 'in words', 'floor'],
  rows: info.changes.map((c) => [
    info.options.since?.revision ?? '',
    info.options.revision,
    c.what,
    c.words,
    (c.floorId !== undefined && recordOf(info.plan, 'floor', c.floorId)?.name) || '',
  ]),
});
