import { dayNumbers } from '../derive/schedule.ts';
import { formatClock } from '../kernel/units.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { daySummary } from '../report/day.ts';
import { findingText } from '../report/text.ts';
import type { Assessment } from '../report/types.ts';
import { noticeList } from './ink.ts';
import { cableList, circuitList, gearList, type ListTable, patchList } from './lists.ts';
import { boxList, coilList, legList, rounded, runList } from './power-lists.ts';
import { radioTable } from './radio-list.ts';
import { type PaperOptions, type SetInfo, setInfo } from './sheet-info.ts';
import { hungTable, levelTable, standTable, truckTable, unitTable } from './unit-lists.ts';

const findingTable = (info: SetInfo): ListTable => ({
  name: 'findings',
  head: [
    'number',
    'severity',
    'rule',
    'what',
    'arithmetic',
    'to do',
    'limit',
    'noted by',
    'noted when',
    'reason',
  ],
  rows: info.assessment.findings.map((f) => {
    const t = findingText(info.plan, f);
    const a = f.acknowledged;
    return [
      f.number,
      f.severity,
      f.rule,
      t.head,
      t.body,
      t.todo,
      t.citation,
      a?.by ?? '',
      a?.when ?? '',
      a?.reason ?? '',
    ];
  }),
});

const assumedTable = (info: SetInfo): ListTable => ({
  name: 'assumed',
  head: ['what was assumed'],
  rows: info.assessment.assumptions.map((a) => [a.text]),
});

const changeTable = (info: SetInfo): ListTable => ({
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

const blockTable = (info: SetInfo): ListTable => ({
  name: 'day',
  head: ['day', 'start', 'end', 'what', 'setup', 'crew', 'label'],
  rows: [...recordsOf(info.plan, 'block')]
    .sort((a, b) => a.day - b.day || a.startMin - b.startMin || (a.id < b.id ? -1 : 1))
    .map((b) => [
      b.day,
      formatClock(b.startMin),
      formatClock(b.endMin),
      b.what,
      (b.setupId !== undefined && recordOf(info.plan, 'setup', b.setupId)?.name) || '',
      b.crew,
      b.label,
    ]),
});

const runtimeTable = (info: SetInfo): ListTable => ({
  name: 'runtimes',
  head: ['day', 'unit', 'kind', 'runs on', 'setup', 'level %', 'worst min', 'best min', 'not computed'],
  rows: dayNumbers(info.plan).flatMap((day) =>
    daySummary(info.plan, day).lanes.flatMap((l) =>
      l.problem || l.runtimes.length === 0
        ? [
            [
              day,
              l.label,
              l.kindName,
              l.on,
              '',
              Number.NaN,
              Number.NaN,
              Number.NaN,
              l.problem ?? 'off all day',
            ],
          ]
        : l.runtimes.map((r) => [
            day,
            l.label,
            l.kindName,
            l.on,
            r.setupName,
            rounded(r.levelPct, 1),
            rounded(r.minutes.low, 1),
            rounded(r.minutes.high, 1),
            '',
          ]),
    ),
  ),
});

const swapTable = (info: SetInfo): ListTable => ({
  name: 'swaps',
  head: ['day', 'time', 'unit', 'off', 'left in it %', 'on', 'dark min'],
  rows: dayNumbers(info.plan).flatMap((day) =>
    daySummary(info.plan, day)
      .lanes.flatMap((l) => l.swaps.map((s) => ({ l, s })))
      .sort((a, b) => a.s.atMin - b.s.atMin)
      .map(({ l, s }) => [
        day,
        formatClock(s.atMin),
        l.label,
        s.out,
        rounded(s.outPct, 0),
        s.into,
        s.darkMin,
      ]),
  ),
});

/** Every list of a set of papers as plain rows, in a fixed order; those with nothing in them have only their heads. */
export const allLists = (plan: Plan, assessment: Assessment, options: PaperOptions): readonly ListTable[] => {
  const info = setInfo(plan, assessment, options, noticeList());
  return [
    circuitList(plan, assessment, info.setupId),
    legList(info),
    boxList(info),
    runList(info),
    coilList(info),
    cableList(plan),
    unitTable(info),
    levelTable(info),
    patchList(plan),
    radioTable(info),
    gearList(plan),
    truckTable(info),
    standTable(info),
    hungTable(info),
    blockTable(info),
    runtimeTable(info),
    swapTable(info),
    findingTable(info),
    assumedTable(info),
    changeTable(info),
  ];
};
