import { type DaySummary, leastBaysOf, leastOf } from '../report/day.ts';
import type { Section } from './flow.ts';
import type { SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const FEWEST: readonly Column[] = [
  { id: 'name', head: 'Packs', leastMm: 54, grow: 1 },
  { id: 'found', head: 'Found', leastMm: 14, align: 'right' },
  { id: 'bound', head: 'No fewer than', leastMm: 24, align: 'right' },
  { id: 'text', head: 'With fewer', leastMm: 100, grow: 3 },
];

/** The fewest packs that were found, the fewest that could do, and what happens with one fewer; the fewest bays. */
export const fewest = (info: SetInfo, d: DaySummary, w: number): Section[] => {
  const least = leastOf(info.plan, d.day);
  if (least.length === 0) return [];
  const columns = placeColumns(FEWEST, w);
  const bays = d.bays.length === 0 ? undefined : leastBaysOf(info.plan, d.day);
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? `Fewest packs, day ${d.day} (continued)` : `Fewest packs, day ${d.day}`,
            'what lies between both numbers is not known',
          ),
          tableHead(columns),
        ),
      blocks: [
        ...least.map((l) =>
          tableRow(columns, {
            name: { text: l.name, weight: 'semibold' },
            found: String(l.packs),
            bound: String(l.bound),
            text: l.text,
          }),
        ),
        ...(d.bays.length === 0
          ? []
          : [
              tableRow(columns, {
                name: { text: 'Charger bays', weight: 'semibold' },
                found: bays === undefined ? 'none' : String(bays),
                text:
                  bays === undefined
                    ? `All ${d.bays.length} do not get the packs at hand through the day.`
                    : `${bays} of ${d.bays.length} do with the packs at hand.`,
              }),
            ]),
      ],
    },
  ];
};
