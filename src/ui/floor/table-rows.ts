import { poseOf } from '../../editor/handles.ts';
import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { applyChanges, type ChangeSet, compose } from '../../plan/change-set.ts';
import { aimAtMark, moveRecords, tiltOf } from '../../plan/edits/arrange.ts';
import { changeRecord, setLevels } from '../../plan/edits/document.ts';
import { lockRecords } from '../../plan/edits/groups.ts';
import { heightOf, letGoOfMarks, setFacings, setHeights, setNotes, setTilts } from '../../plan/edits/many.ts';
import { hideRecords } from '../../plan/edits/stacking.ts';
import { recordName } from '../../plan/names.ts';
import { kindOf, levelOf, type Plan, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { AnyRecord, RecordType } from '../../plan/records/index.ts';
import {
  anyText,
  formatLevel,
  formatTilt,
  parseDegrees,
  parseHeight,
  parseLevel,
  parseTilt,
} from '../common/parse.ts';
import { freeUnit } from './fields.ts';
import { ADDRESS, FED_FROM } from './table-feeds.ts';
import type { Column, Sight, TableRow } from './table-types.ts';

export type { Column, TableRow } from './table-types.ts';

const GEAR: readonly RecordType[] = [
  'fixture',
  'ballast',
  'box',
  'source',
  'stand',
  'grip',
  'rigging',
  'outlet',
  'charger',
  'pack',
  'device',
  'mark',
  'setPiece',
];
const SHOWN: readonly RecordType[] = [
  ...GEAR,
  'wall',
  'opening',
  'dimension',
  'underlay',
  'photo',
  'feature',
  'crossing',
];

const WORDS: Partial<Record<RecordType, string>> = {
  fixture: 'fixture',
  ballast: 'ballast',
  box: 'box',
  source: 'source',
  stand: 'stand',
  grip: 'grip',
  rigging: 'rigging',
  outlet: 'wall outlet',
  mark: 'mark',
  setPiece: 'set piece',
  wall: 'wall',
  opening: 'opening',
  dimension: 'dimension',
  charger: 'charger',
  pack: 'pack',
  underlay: 'underlay',
  photo: 'photo',
  feature: 'outdoors',
  crossing: 'cable crossing',
  device: 'control gear',
};

const then = <T>(r: Result<T>, make: (v: T) => Result<ChangeSet>): Result<ChangeSet> =>
  r.ok ? make(r.value) : r;
const unitsOf = (plan: Plan) => planRecord(plan).lengthUnits;
const patch = (plan: Plan, r: AnyRecord, p: Record<string, unknown>): Result<ChangeSet> =>
  changeRecord(plan, r, p as Partial<AnyRecord>);

const place = (name: string, axis: 'xMm' | 'yMm'): Column => ({
  name,
  for: GEAR,
  text: (r, { plan }) => {
    const at = poseOf(plan, r.id)?.center;
    return at ? formatLength(at[axis], unitsOf(plan)) : '';
  },
  edit: (plan, r, text) =>
    then(parseLengthMm(text, unitsOf(plan)), (mm) => {
      const at = poseOf(plan, r.id)?.center;
      const by = { xMm: 0, yMm: 0, [axis]: mm - (at?.[axis] ?? 0) };
      return ok(moveRecords(plan, new Set([r.id]), by));
    }),
});

const free = (name: string, field: 'use' | 'gel' | 'channel'): Column => ({
  name,
  for: ['fixture'],
  text: (r) => (r.type === 'fixture' ? r[field] : ''),
  edit: (plan, r, text) => then(anyText(text), (v) => patch(plan, r, { [field]: v })),
});

const ALL: readonly Column[] = [
  { name: 'Type', for: [], text: (r) => (r.type === 'opening' ? r.what : (WORDS[r.type] ?? r.type)) },
  {
    name: 'Name',
    for: ['fixture', 'box', 'source', 'outlet', 'mark', 'setPiece', 'rigging', 'charger', 'pack', 'device'],
    text: (r, { plan }) =>
      r.type === 'fixture'
        ? r.unit
        : r.type === 'mark'
          ? r.name
          : 'label' in r && typeof r.label === 'string'
            ? r.label
            : recordName(plan, r),
    edit: (plan, r, text) =>
      then(r.type === 'fixture' ? freeUnit(plan, r.id, text) : anyText(text), (v) =>
        patch(plan, r, r.type === 'fixture' ? { unit: v } : r.type === 'mark' ? { name: v } : { label: v }),
      ),
  },
  {
    name: 'Kind',
    for: [],
    text: (r, { plan }) =>
      'kindId' in r && typeof r.kindId === 'string'
        ? (kindOf(plan, r.kindId)?.name ?? 'kind missing')
        : r.type === 'wall'
          ? r.material
          : '',
  },
  place('Across', 'xMm'),
  place('Down', 'yMm'),
  {
    name: 'Height',
    for: ['fixture', 'stand', 'grip', 'rigging', 'outlet', 'device', 'mark', 'setPiece', 'wall'],
    text: (r, { plan }) => {
      const mm = heightOf(plan, r);
      return mm === undefined ? '' : formatLength(mm, unitsOf(plan));
    },
    edit: (plan, r, text) => then(parseHeight(text, unitsOf(plan)), (mm) => ok(setHeights(plan, [r.id], mm))),
  },
  {
    name: 'Facing',
    for: [
      'fixture',
      'box',
      'source',
      'outlet',
      'device',
      'charger',
      'pack',
      'mark',
      'setPiece',
      'grip',
      'rigging',
    ],
    text: (r, { plan }) => {
      const deg = poseOf(plan, r.id)?.facingDeg;
      return deg === undefined ? '' : `${Math.round(deg)}°`;
    },
    edit: (plan, r, text) => then(parseDegrees(text), (deg) => ok(setFacings(plan, [r.id], deg))),
  },
  {
    name: 'Tilt',
    for: ['fixture'],
    text: (r, { plan }) => (r.type === 'fixture' ? formatTilt(tiltOf(plan, r)) : ''),
    edit: (plan, r, text) => then(parseTilt(text), (deg) => ok(setTilts(plan, [r.id], deg))),
  },
  {
    name: 'Aim',
    for: ['fixture'],
    text: (r, { plan }) =>
      r.type === 'fixture' && r.aim.at === 'mark' ? (recordOf(plan, 'mark', r.aim.markId)?.name ?? '') : '',
    edit: (plan, r, text) => {
      const name = text.trim().toLowerCase();
      if (name === '') return ok(letGoOfMarks(plan, [r.id]));
      const mark = recordsOf(plan, 'mark').find((m) => m.what !== 'note' && m.name.toLowerCase() === name);
      return mark
        ? ok(aimAtMark(plan, [r.id], mark.id))
        : fail({
            what: `No mark is called “${text}”.`,
            todo: 'Write the name of a mark, or nothing to let go.',
          });
    },
  },
  {
    name: 'Level',
    for: ['fixture'],
    text: (r, { plan, setupId }) =>
      r.type === 'fixture' && setupId ? formatLevel(levelOf(plan, setupId, r.id).levelPct) : '',
    edit: (plan, r, text, setupId) =>
      then(parseLevel(text), (v) => ok(setLevels(plan, setupId ?? '', setupId ? [r.id] : [], v))),
  },
  free('Use', 'use'),
  free('Gel', 'gel'),
  free('Channel', 'channel'),
  {
    name: 'State',
    for: SHOWN,
    text: (r) => [r.locked ? 'locked' : '', r.hidden ? 'hidden' : ''].filter(Boolean).join(', '),
    edit: (plan, r, text) => {
      const words = text
        .toLowerCase()
        .split(/[\s,]+/)
        .filter(Boolean);
      const wrong = words.find((w) => w !== 'locked' && w !== 'hidden');
      if (wrong !== undefined)
        return fail({ what: `“${wrong}” is no state.`, todo: 'Write locked, hidden, both or nothing.' });
      const one = new Set([r.id]);
      const first = lockRecords(plan, one, words.includes('locked'));
      const shown = hideRecords(applyChanges(plan, first), one, words.includes('hidden'));
      return ok(compose(first, shown));
    },
  },
  {
    name: 'Notes',
    for: SHOWN,
    text: (r) => (typeof r.notes === 'string' ? r.notes : ''),
    edit: (plan, r, text) => then(anyText(text), (v) => ok(setNotes(plan, [r.id], v))),
  },
  ADDRESS,
  FED_FROM,
];

/** What is asked for most stands first: a small screen shows so many columns. `floor.css` has their widths. */
const ORDER: readonly string[] = [
  ...['Type', 'Name', 'Kind', 'Use', 'Fed from', 'Address', 'Channel', 'Level', 'Aim', 'Height'],
  ...['Across', 'Down', 'Facing', 'Tilt', 'Gel', 'State', 'Notes'],
];

/** The columns of the table, in order. */
export const COLUMNS: readonly Column[] = [...ALL].sort(
  (a, b) => ORDER.indexOf(a.name) - ORDER.indexOf(b.name),
);

/** Where a type comes when the table is sorted by type: lights first, what is built last. */
export const typeRank = (type: RecordType): number => SHOWN.indexOf(type);

/** One row for everything that stands on a floor. */
export const rowsOf = (plan: Plan, floorId: Id | undefined, setupId: Id | undefined): readonly TableRow[] => {
  const feed = new Map(recordsOf(plan, 'cable').map((c) => [c.to.recordId, c]));
  const ballast = new Map(recordsOf(plan, 'ballast').map((b) => [b.fixtureId, b.id]));
  const sight: Sight = { plan, setupId, feed, ballast };
  const walls = new Set(recordsOf(plan, 'wall').flatMap((w) => (w.floorId === floorId ? [w.id] : [])));
  return SHOWN.flatMap((type) => recordsOf(plan, type) as readonly AnyRecord[]).flatMap((r) => {
    const here = r.type === 'opening' ? walls.has(r.wallId) : 'floorId' in r && r.floorId === floorId;
    return here ? [{ id: r.id, type: r.type, cells: COLUMNS.map((c) => c.text(r, sight)) }] : [];
  });
};
