import { cellsWord } from '../derive/labels.ts';
import { drawContext, pluggedAt } from '../drawing/context.ts';
import { compareNatural } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { throwMm } from '../plan/edits/arrange.ts';
import { fixturePlace, kindOf, levelOf, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { datumOf } from './datum.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import { markFor } from './revision-marks.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Cell, type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'unit', head: 'Unit', leastMm: 12 },
  { id: 'kind', head: 'Kind', leastMm: 42, grow: 2 },
  { id: 'use', head: 'Use', leastMm: 34, grow: 2 },
  { id: 'gel', head: 'Gel', leastMm: 16, grow: 0.2, dispensable: 5 },
  { id: 'channel', head: 'Channel', leastMm: 14, dispensable: 6 },
  { id: 'power', head: 'Power', leastMm: 20, grow: 0.5 },
  { id: 'address', head: 'Address', leastMm: 16 },
  { id: 'mode', head: 'Mode', leastMm: 26, grow: 1.5, dispensable: 4, note: true },
  { id: 'height', head: 'Height', leastMm: 15, align: 'right' },
  {
    id: 'right',
    head: 'Right',
    leastMm: 15,
    align: 'right',
    group: 'Setting out, from datum',
    dispensable: 2,
  },
  { id: 'up', head: 'Up', leastMm: 15, align: 'right', group: 'Setting out, from datum', dispensable: 2 },
  { id: 'throw', head: 'Throw', leastMm: 15, align: 'right', dispensable: 3 },
  { id: 'on', head: 'Support', leastMm: 26, grow: 1, dispensable: 1 },
  { id: 'level', head: 'Level', leastMm: 11, align: 'right' },
];

const supportText = (info: SetInfo, f: Fixture): string => {
  if (f.support.on === 'stand') {
    const stand = recordOf(info.plan, 'stand', f.support.standId);
    return (stand && kindOf(info.plan, stand.kindId)?.name) ?? 'stand';
  }
  return f.support.on === 'floor' ? 'on the floor' : f.support.on === 'rigged' ? 'rigged' : 'held';
};

/** Every unit with what a label says and where it stands, per floor. Takes what the plot had no room for. */
export const unitPages = (info: SetInfo): readonly PageMaker[] => {
  const columns = placeColumns(COLUMNS, flowArea(info).w);
  const units = planRecord(info.plan).lengthUnits;
  const sections: Section[] = recordsOf(info.plan, 'floor').flatMap((floor) => {
    const ctx = drawContext(info.plan, { floorId: floor.id, setupId: info.setupId, nominalScale: 50 });
    const fixtures = [...ctx.index.fixtures].sort((a, b) => compareNatural(a.unit, b.unit));
    if (fixtures.length === 0) return [];
    const datum = datumOf(info.plan, floor.id);
    const row = (f: Fixture): Record<string, Cell> => {
      const kind = kindOf(info.plan, f.kindId, 'fixture');
      const { at, heightMm } = fixturePlace(info.plan, f);
      const universe = f.patch && recordOf(info.plan, 'universe', f.patch.universeId);
      const level = info.setupId === undefined ? undefined : levelOf(info.plan, info.setupId, f.id);
      const reach = throwMm(info.plan, f);
      return {
        unit: { text: f.unit, weight: 'semibold' },
        kind: kind?.name ?? 'kind not in the plan',
        use: f.use,
        gel: f.gel,
        channel: f.channel,
        power: cellsWord(info.plan, f) ?? pluggedAt(ctx, f.id) ?? 'not plugged',
        address: f.patch && universe ? `U${universe.number} ${f.patch.address}` : '',
        mode: f.patch ? (kind?.modes.find((m) => m.id === f.patch?.modeId)?.name ?? '') : '',
        height: formatLength(heightMm, units),
        right: formatLength(at.xMm - datum.xMm, units),
        up: formatLength(datum.yMm - at.yMm, units),
        throw: reach === undefined ? '' : formatLength(reach, units),
        on: supportText(info, f),
        level:
          level === undefined
            ? ''
            : level.levelPct <= 0
              ? 'off'
              : `${Math.round(level.levelPct)} %${level.assumed ? '*' : ''}`,
      };
    };
    return [
      {
        head: (continued: boolean) =>
          stacked(
            headingBlock(
              continued ? `${floor.name} (continued)` : floor.name,
              `${fixtures.length} units; setting out is right and up from ${datum.text}`,
            ),
            tableHead(columns),
          ),
        blocks: fixtures.map((f) => tableRow(columns, row(f), { mark: markFor(info, f.id) })),
      },
    ];
  });
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Unit list',
      subtitle: 'Units by number with power, address and place',
      documentType: 'List',
      scale: 'none',
      units: units === 'imperial' ? 'ft-in' : 'm',
    },
    sections,
    ['Level is that of the setup shown. * No level is given: counted at full.'],
  );
};
