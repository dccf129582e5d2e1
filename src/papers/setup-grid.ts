import { compareNatural } from '../kernel/ids.ts';
import { formatWatts } from '../kernel/units.ts';
import { colorNoteText } from '../plan/color-note.ts';
import { setupsItMovesIn } from '../plan/edits/moves.ts';
import { kindOf, levelId, levelOf, recordOf, recordsOf, setupsOf } from '../plan/plan.ts';
import type { Fixture, Setup } from '../plan/records/index.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Cell, type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const UNIT: readonly Column[] = [
  { id: 'unit', head: 'Unit', leastMm: 12 },
  { id: 'use', head: 'Use', leastMm: 40, grow: 0.6 },
  { id: 'kind', head: 'Kind', leastMm: 44, grow: 0.4, dispensable: 2 },
];
const SETUP_MM = 20;
/** Columns of few setups are no wider, so that the eye keeps its line. */
const SETUP_MOST_MM = 46;
const GAP_MM = 2.2;

/** As many setups as fit side by side, in their order. */
const groupsOf = (setups: readonly Setup[], widthMm: number): readonly (readonly Setup[])[] => {
  const fixed = UNIT.filter((c) => !c.dispensable).reduce((s, c) => s + c.leastMm + GAP_MM, 0);
  const each = Math.max(1, Math.floor((widthMm - fixed) / (SETUP_MM + GAP_MM)));
  const out: Setup[][] = [];
  for (let i = 0; i < setups.length; i += each) out.push(setups.slice(i, i + each));
  return out;
};

const setupHead = (s: Setup): string => s.scene || s.name;

/** Units by setups with the level and colour of each, as the crew sets them. */
export const setupGridPages = (info: SetInfo): readonly PageMaker[] => {
  const setups = setupsOf(info.plan);
  const fixtures = [...recordsOf(info.plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));
  if (setups.length === 0 || fixtures.length === 0) return [];
  const w = flowArea(info).w;
  let anyAssumed = false;
  let anyMoved = false;
  const level = (s: Setup, f: Fixture): Cell => {
    const { levelPct, assumed } = levelOf(info.plan, s.id, f.id);
    if (assumed) anyAssumed = true;
    const elsewhere = setupsItMovesIn(info.plan, f.id).includes(s.id);
    if (elsewhere) anyMoved = true;
    const sign = elsewhere ? '†' : '';
    if (levelPct <= 0) return { text: `off${sign}`, role: 'ink-soft' };
    const note = colorNoteText(recordOf(info.plan, 'level', levelId(s.id, f.id)));
    return [`${Math.round(levelPct)}${assumed ? '*' : ''}${sign}`, note].filter(Boolean).join(' · ');
  };
  const sources = info.assessment.entities.filter((e) => e.what === 'source');
  const sum = (s: Setup): Cell => {
    const on = fixtures.filter((f) => levelOf(info.plan, s.id, f.id).levelPct > 0).length;
    const at = info.assessment.figures.setupIds.indexOf(s.id);
    const watts = sources
      .map((e) => info.assessment.figures.get(e.key, 'loadW', at))
      .filter((w) => !Number.isNaN(w))
      .reduce((a, b) => a + b, 0);
    return {
      text: sources.length > 0 ? `${on} on · ${formatWatts(watts)}` : `${on} on`,
      weight: 'semibold',
    };
  };
  const fixed = UNIT.reduce((sum, c) => sum + c.leastMm + GAP_MM, 0);
  const sections = groupsOf(setups, w).map((group): Section => {
    const each = Math.min(
      SETUP_MOST_MM,
      Math.max(SETUP_MM, (w - fixed) / Math.max(1, group.length) - GAP_MM - 2),
    );
    const columns = placeColumns(
      [
        ...UNIT,
        ...group.map((s): Column => ({ id: s.id, head: setupHead(s), leastMm: each, align: 'right' })),
        { id: 'rest', head: '', leastMm: 1, grow: 2 },
      ],
      w,
    );
    const names = group
      .filter((s) => s.scene)
      .map((s) => `${s.scene} ${s.name}`)
      .join(' · ');
    return {
      head: (continued) =>
        stacked(headingBlock(continued ? 'Levels (continued)' : 'Levels', names), tableHead(columns)),
      blocks: [
        ...fixtures.map((f) =>
          tableRow(columns, {
            unit: { text: f.unit, weight: 'semibold' },
            use: f.use,
            kind: kindOf(info.plan, f.kindId)?.name ?? '',
            ...Object.fromEntries(group.map((s) => [s.id, level(s, f)])),
          }),
        ),
        tableRow(columns, {
          use: { text: 'units on, from the sources', role: 'ink-soft' },
          ...Object.fromEntries(group.map((s) => [s.id, sum(s)])),
        }),
      ],
    };
  });
  return flowPages(
    info,
    {
      title: 'Setups',
      subtitle: 'Level of every unit in every setup',
      documentType: 'List',
      scale: 'none',
      units: '%',
    },
    sections,
    [
      [
        'Levels in per cent.',
        anyAssumed ? '* No level is given: counted at full.' : '',
        anyMoved ? '† Stands elsewhere in this setup: see its plot.' : '',
      ]
        .filter(Boolean)
        .join(' '),
    ],
  );
};
