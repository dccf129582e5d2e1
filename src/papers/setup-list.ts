import { printAddress } from '../plan/address.ts';
import { patchedMode } from '../plan/footprint.ts';
import { kindOf } from '../plan/plan.ts';
import { placesOf } from '../report/control.ts';
import { cardProgress, setupLink } from '../report/setup-steps.ts';
import { flowArea, flowPages } from './flow.ts';
import { markFor } from './revision-marks.ts';
import { cardWalk } from './setup-cards.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'box', head: '', leastMm: 5 },
  { id: 'unit', head: 'Unit', leastMm: 14 },
  { id: 'kind', head: 'Kind', leastMm: 44, grow: 2 },
  { id: 'use', head: 'Use', leastMm: 30, grow: 1, dispensable: 2 },
  { id: 'address', head: 'Address', leastMm: 24 },
  { id: 'mode', head: 'Mode', leastMm: 36, grow: 1.5 },
  { id: 'link', head: 'Link', leastMm: 28, grow: 1 },
  { id: 'left', head: 'Still to do', leastMm: 50, grow: 3 },
  { id: 'by', head: 'By', leastMm: 24, grow: 0.5 },
];

/** All setup cards as one list: position by position, what is still to do at each unit, and who did it. */
export const setupList = (info: SetInfo): readonly PageMaker[] => {
  const groups = cardWalk(info.plan);
  const units = groups.flatMap((g) => g.fixtures);
  if (units.length === 0) return [];
  const columns = placeColumns(COLUMNS, flowArea(info).w);
  const all = units.filter((f) => cardProgress(info.plan, f).all).length;
  return flowPages(
    info,
    {
      title: 'Set-up list',
      subtitle: `Units to be set up, by position: ${all} of ${units.length} done when this was issued`,
      documentType: 'List',
      scale: 'none',
      units: 'slots',
    },
    groups.map((g) => {
      const done = g.fixtures.filter((f) => cardProgress(info.plan, f).all).length;
      return {
        head: (continued: boolean) =>
          stacked(
            headingBlock(
              `${g.position.name}${continued ? ' (continued)' : ''}`,
              `${g.fixtures.length} ${g.fixtures.length === 1 ? 'unit' : 'units'}, ${done} done`,
            ),
            tableHead(columns),
          ),
        blocks: g.fixtures.map((f) => {
          const progress = cardProgress(info.plan, f);
          const { transmitter, port } = setupLink(info.plan, f);
          const left = progress.steps.filter((s) => !s.tick);
          return tableRow(
            columns,
            {
              box: {
                draw: (ink, cell) => {
                  const y = cell.y + cell.h / 2 - 1.5;
                  ink.rect(cell.x, y, 3, 3, { weightMm: 0.25 });
                  if (progress.all) {
                    ink.line(cell.x + 0.5, y + 1.6, cell.x + 1.3, y + 2.4, 0.35);
                    ink.line(cell.x + 1.3, y + 2.4, cell.x + 2.6, y + 0.4, 0.35);
                  }
                },
              },
              unit: { text: f.unit, weight: 'semibold' },
              kind: kindOf(info.plan, f.kindId, 'fixture')?.name ?? 'kind not in the plan',
              use: f.use,
              address: { text: placesOf(info.plan, f).map(printAddress).join(', '), weight: 'semibold' },
              mode: patchedMode(info.plan, f)?.name ?? '',
              link:
                f.link === 'radio'
                  ? `radio${transmitter ? ` ${transmitter.label}` : ''}${port ? `, ${port}` : ''}`
                  : f.link === 'line'
                    ? 'line'
                    : '',
              left: left.length === progress.steps.length ? 'all' : left.map((s) => s.text).join('; '),
              by: progress.by,
            },
            { mark: markFor(info, f.id) },
          );
        }),
      };
    }),
    [
      'The order on each card: reset first, and clear an old radio link before a new one is made (common practice, no published source).',
    ],
  );
};
