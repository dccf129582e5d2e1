import { CONNECTOR_WORDS, dataCableName, lineLengths, needsTerminator } from '../derive/data-lines.ts';
import { compareIds } from '../kernel/ids.ts';
import { formatCableLength } from '../kernel/units.ts';
import { connector } from '../plan/connectors.ts';
import { kindOf, planRecord, recordsOf } from '../plan/plan.ts';
import { spareBasis, sparePct, sparesFor } from '../report/spares.ts';
import { cell } from './figures.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import { runsOf } from './runs.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { crossingsSection } from './site-sheet.ts';
import { headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

/** Pieces of one kind and stock length. */
export interface CableLine {
  readonly kindId: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly pieces: number;
  readonly spare: number;
}

/** What to order: pieces by kind and stock length with spares, and the joints between pieces by kind. */
export const cableLines = (
  info: SetInfo,
): { readonly lines: readonly CableLine[]; readonly joints: ReadonlyMap<string, number> } => {
  const counts = new Map<string, { kindId: string; name: string; lengthMm: number; pieces: number }>();
  const joints = new Map<string, number>();
  for (const run of runsOf(info)) {
    joints.set(run.kindId, (joints.get(run.kindId) ?? 0) + run.couplings);
    for (const mm of run.piecesMm) {
      const key = `${run.kindId}|${mm}`;
      const line = counts.get(key) ?? { kindId: run.kindId, name: run.kindName, lengthMm: mm, pieces: 0 };
      line.pieces += 1;
      counts.set(key, line);
    }
  }
  for (const l of lineLengths(info.plan)) {
    const kindId = l.kindId ?? `data ${l.connector}`;
    const name = dataCableName(info.plan, l);
    joints.set(kindId, (joints.get(kindId) ?? 0) + l.couplings);
    for (const mm of l.hops.flatMap((h) => h.piecesMm)) {
      const key = `${kindId}|${mm}`;
      const line = counts.get(key) ?? { kindId, name, lengthMm: mm, pieces: 0 };
      line.pieces += 1;
      counts.set(key, line);
    }
  }
  const lines = [...counts.values()]
    .sort((a, b) => compareIds(a.name, b.name) || b.lengthMm - a.lengthMm)
    .map((l) => ({ ...l, spare: sparesFor(info.plan, 'cable', l.pieces) }));
  return { lines, joints };
};

/** Cable to order by type and stock length, with spares and joints counted. */
export const cableOrderPages = (info: SetInfo): readonly PageMaker[] => {
  const { lines, joints } = cableLines(info);
  if (lines.length === 0) return [];
  const units = planRecord(info.plan).lengthUnits;
  const columns = placeColumns(
    [
      { id: 'cable', head: 'Cable', leastMm: 50, grow: 2 },
      { id: 'length', head: 'Stock length', leastMm: 20, align: 'right' },
      { id: 'need', head: 'On the plan', leastMm: 18, align: 'right' },
      { id: 'spare', head: 'Spare', leastMm: 14, align: 'right' },
      { id: 'order', head: 'Order', leastMm: 14, align: 'right' },
      { id: 'total', head: 'Length in all', leastMm: 20, align: 'right', dispensable: 2 },
      { id: 'joints', head: 'Joints', leastMm: 14, align: 'right' },
      { id: 'ends', head: 'Plug and socket', leastMm: 60, grow: 3, dispensable: 1 },
      { id: 'got', head: 'Loaded', leastMm: 14 },
    ],
    flowArea(info).w,
  );
  const ends = (kindId: string): string => {
    const data = kindOf(info.plan, kindId, 'dataCable');
    if (data) return `${CONNECTOR_WORDS[data.connector]} data, plug to socket`;
    const k = kindOf(info.plan, kindId, 'cable');
    const name = (id: string): string => connector(id)?.name ?? id;
    return !k ? '' : k.plug === k.socket ? name(k.plug) : `${name(k.plug)} to ${name(k.socket)}`;
  };
  const terminators = recordsOf(info.plan, 'line').filter(
    (l) => l.terminated && needsTerminator(info.plan, l),
  ).length;
  const total = lines.reduce((s, l) => s + l.pieces, 0);
  const spare = lines.reduce((s, l) => s + l.spare, 0);
  const section: Section = {
    head: (continued) =>
      stacked(
        headingBlock(
          continued ? 'Cable (continued)' : 'Cable',
          `spares: ${sparePct(info.plan, 'cable')} % of each line, rounded up (${spareBasis(info.plan, ['cable'])})`,
        ),
        tableHead(columns),
      ),
    blocks: [
      ...lines.map((l, i) => {
        const first = lines[i - 1]?.kindId !== l.kindId;
        return tableRow(columns, {
          cable: first ? { text: l.name, weight: 'semibold' } : '',
          length: formatCableLength(l.lengthMm, units),
          need: cell(l.pieces),
          spare: cell(l.spare),
          order: { text: cell(l.pieces + l.spare), weight: 'semibold' },
          total: formatCableLength(l.lengthMm * (l.pieces + l.spare), units),
          joints: first ? cell(joints.get(l.kindId) ?? 0) : '',
          ends: first ? ends(l.kindId) : '',
          got: { draw: (ink, c) => ink.rect(c.x, c.y + 0.8, 12, c.h - 1.6, { weightMm: 0.18 }) },
        });
      }),
      tableRow(
        columns,
        {
          cable: { text: 'All pieces', weight: 'semibold' },
          need: { text: cell(total), weight: 'semibold' },
          spare: { text: cell(spare), weight: 'semibold' },
          order: { text: cell(total + spare), weight: 'semibold' },
          joints: { text: cell([...joints.values()].reduce((s, n) => s + n, 0)), weight: 'semibold' },
        },
        { rule: 'thin' },
      ),
    ],
  };
  return flowPages(
    info,
    {
      title: 'Cable list',
      subtitle: 'Cable by type and stock length, spares and joints counted',
      documentType: 'List',
      scale: 'none',
      units: units === 'imperial' ? 'ft' : 'm',
    },
    [
      section,
      ...(recordsOf(info.plan, 'crossing').length > 0 ? [crossingsSection(info, flowArea(info).w)] : []),
    ],
    [
      ...(terminators > 0 ? [`Terminators of 120 Ω for the ends of data lines: ${terminators}.`] : []),
      'Adaptors drawn as runs are in the list under their own names. A joint is a plug and socket between two pieces of one run.',
    ],
  );
};
