import { poseOf } from '../../editor/handles.ts';
import type { Id } from '../../kernel/ids.ts';
import { ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { moveRecords, setHeight, tiltOf } from '../../plan/edits/arrange.ts';
import { changeRecord, setLevels } from '../../plan/edits/document.ts';
import { portName, recordName } from '../../plan/names.ts';
import { fixturePlace, kindOf, levelOf, type Plan, planRecord, recordsOf } from '../../plan/plan.ts';
import type { AnyRecord, Cable, RecordType } from '../../plan/records/index.ts';
import { anyText, formatLevel, parseDegrees, parseHeight, parseLevel } from '../common/parse.ts';
import { freeUnit } from './fields.ts';

export interface TableRow {
  readonly id: Id;
  readonly type: RecordType;
  /** One text for each column. */
  readonly cells: readonly string[];
}

interface Sight {
  readonly plan: Plan;
  readonly setupId: Id | undefined;
  readonly feed: ReadonlyMap<Id, Cable>;
  readonly ballast: ReadonlyMap<Id, Id>;
}

export interface Column {
  readonly name: string;
  readonly for: readonly RecordType[];
  readonly text: (r: AnyRecord, s: Sight) => string;
  /** What writing this text into the cell does. Absent where the cell is only to be read. */
  readonly edit?: (plan: Plan, r: AnyRecord, text: string, setupId: Id | undefined) => Result<ChangeSet>;
}

const GEAR: readonly RecordType[] = [
  'fixture',
  'ballast',
  'box',
  'source',
  'stand',
  'grip',
  'rigging',
  'outlet',
  'mark',
  'setPiece',
];
const SHOWN: readonly RecordType[] = [...GEAR, 'wall', 'opening', 'dimension'];

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
};

const then = <T>(r: Result<T>, make: (v: T) => Result<ChangeSet>): Result<ChangeSet> =>
  r.ok ? make(r.value) : r;
const unitsOf = (plan: Plan) => planRecord(plan).lengthUnits;
const patch = (plan: Plan, r: AnyRecord, p: Record<string, unknown>): Result<ChangeSet> =>
  changeRecord(plan, r, p as Partial<AnyRecord>);

const heightOf = (plan: Plan, r: AnyRecord): number | undefined =>
  r.type === 'fixture'
    ? fixturePlace(plan, r).heightMm
    : 'heightMm' in r && typeof r.heightMm === 'number'
      ? r.heightMm
      : undefined;

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

/** The columns of the table, in order. */
export const COLUMNS: readonly Column[] = [
  { name: 'Type', for: [], text: (r) => (r.type === 'opening' ? r.what : (WORDS[r.type] ?? r.type)) },
  {
    name: 'Name',
    for: ['fixture', 'box', 'source', 'outlet', 'mark', 'setPiece', 'rigging'],
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
    for: ['fixture', 'stand', 'grip', 'rigging', 'outlet', 'mark', 'wall'],
    text: (r, { plan }) => {
      const mm = heightOf(plan, r);
      return mm === undefined ? '' : formatLength(mm, unitsOf(plan));
    },
    edit: (plan, r, text) =>
      then(parseHeight(text, unitsOf(plan)), (mm) =>
        r.type === 'fixture' ? ok(setHeight(plan, r.id, mm)) : patch(plan, r, { heightMm: mm }),
      ),
  },
  {
    name: 'Facing',
    for: ['fixture', 'box', 'source', 'outlet', 'mark', 'setPiece', 'grip', 'rigging'],
    text: (r, { plan }) => {
      const deg = poseOf(plan, r.id)?.facingDeg;
      return deg === undefined ? '' : `${Math.round(deg)}°`;
    },
    edit: (plan, r, text) =>
      then(parseDegrees(text), (deg) =>
        patch(
          plan,
          r,
          r.type === 'fixture'
            ? { aim: { at: 'facing', facingDeg: deg, tiltDeg: tiltOf(plan, r) } }
            : r.type === 'mark'
              ? { facingDeg: deg }
              : { rotationDeg: deg },
        ),
      ),
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
    name: 'Fed from',
    for: [],
    text: (r, { plan, feed, ballast }) => {
      const cable = feed.get(ballast.get(r.id) ?? r.id);
      return cable ? portName(plan, cable.from) : '';
    },
  },
];

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
