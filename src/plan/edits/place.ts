import type { Point } from '../../kernel/geometry.ts';
import type { NewId } from '../../kernel/ids.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type {
  AdapterKind,
  BallastKind,
  BoxKind,
  ConverterKind,
  DataSplitterKind,
  DimmerKind,
  FixtureKind,
  NodeKind,
  ReceiverKind,
  RepeaterKind,
  SceneryKind,
  SourceKind,
  StandKind,
  TransmitterKind,
  VideoKind,
} from '../kinds/kinds.ts';
import { type Plan, recordsOf } from '../plan.ts';
import type { RecordOf } from '../records/index.ts';
import { ensureKind } from './shared.ts';

/** The lowest whole unit number not yet used on the plan. */
export const nextUnit = (plan: Plan): string => {
  const used = new Set(recordsOf(plan, 'fixture').map((f) => f.unit));
  for (let n = 1; ; n++) if (!used.has(String(n))) return String(n);
};

/** The next free label with this letter: K1, K2 … */
export const nextLabel = (plan: Plan, letter: string): string => {
  const used = new Set<string>();
  for (const r of plan.records.values()) if ('label' in r && typeof r.label === 'string') used.add(r.label);
  for (let n = 1; ; n++) if (!used.has(`${letter}${n}`)) return `${letter}${n}`;
};

export interface PlaceFixture {
  readonly kind: FixtureKind;
  /** The ballast's kind for a discharge head. */
  readonly ballast?: BallastKind | undefined;
  readonly floorId: string;
  readonly at: Point;
  readonly heightMm: number;
  readonly facingDeg: number;
}

/** Adds a fixture (and its ballast beside it) with the next free unit number. Gives the change and the new record. */
export const placeFixture = (
  plan: Plan,
  what: PlaceFixture,
  newId: NewId,
): { readonly changes: ChangeSet; readonly fixture: RecordOf<'fixture'> } => {
  const draft = new Draft(plan);
  ensureKind(draft, what.kind);
  const hung = what.kind.mount.fits.includes('hung') || what.kind.mount.fits.every((m) => m === 'clamp');
  const fixture: RecordOf<'fixture'> = {
    id: newId('fx'),
    type: 'fixture',
    floorId: what.floorId,
    kindId: what.kind.id,
    at: what.at,
    heightMm: what.heightMm,
    aim: { at: 'facing', facingDeg: what.facingDeg, tiltDeg: 0 },
    support: { on: hung ? 'rigged' : 'floor' },
    unit: nextUnit(plan),
    channel: '',
    use: '',
    gel: '',
    link: 'none',
    onPacks: false,
  };
  draft.put(fixture);
  if (what.kind.needsBallast && what.ballast) {
    ensureKind(draft, what.ballast);
    draft.put({
      id: newId('bl'),
      type: 'ballast',
      floorId: what.floorId,
      kindId: what.ballast.id,
      at: { xMm: what.at.xMm, yMm: what.at.yMm + 900 },
      rotationDeg: 0,
      fixtureId: fixture.id,
      headCableMm: what.ballast.headCablesMm[0] ?? 7500,
    });
  }
  return { changes: draft.changes(), fixture };
};

/** Adds an empty stand. */
export const placeStand = (
  plan: Plan,
  kind: StandKind,
  floorId: string,
  at: Point,
  newId: NewId,
): { readonly changes: ChangeSet; readonly stand: RecordOf<'stand'> } => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const heightMm = Math.min(kind.heightMaxMm, Math.max(kind.heightMinMm, 2000));
  const stand: RecordOf<'stand'> = {
    id: newId('st'),
    type: 'stand',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg: 0,
    heightMm,
  };
  return { changes: draft.put(stand).changes(), stand };
};

/** Kinds that stand on the floor as a box does. */
export type AnyBoxKind = BoxKind | DimmerKind | ConverterKind | AdapterKind;

const BOX_LETTER: Readonly<Record<AnyBoxKind['family'], string>> = {
  box: 'K',
  dimmer: 'DM',
  converter: 'TF',
  adapter: 'AD',
};

/** Adds a distribution box, dimmer, transformer or splitter with the next free label. */
export const placeBox = (
  plan: Plan,
  kind: AnyBoxKind,
  floorId: string,
  at: Point,
  newId: NewId,
): { readonly changes: ChangeSet; readonly box: RecordOf<'box'> } => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const box: RecordOf<'box'> = {
    id: newId('bx'),
    type: 'box',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg: 0,
    label: nextLabel(plan, BOX_LETTER[kind.family]),
  };
  return { changes: draft.put(box).changes(), box };
};

/** Kinds of control gear that stand on the floor. */
export type DeviceKind =
  | TransmitterKind
  | ReceiverKind
  | RepeaterKind
  | NodeKind
  | DataSplitterKind
  | VideoKind;

const DEVICE_LETTER: Readonly<Record<DeviceKind['family'], string>> = {
  transmitter: 'TX',
  receiver: 'RX',
  repeater: 'RP',
  node: 'N',
  dataSplitter: 'DS',
  video: 'V',
};

/** Adds a piece of control gear with the next free label. Transmitters go up above heads, the rest near the floor. */
export const placeDevice = (
  plan: Plan,
  kind: DeviceKind,
  floorId: string,
  at: Point,
  newId: NewId,
): { readonly changes: ChangeSet; readonly device: RecordOf<'device'> } => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const radio = kind.family === 'transmitter' || kind.family === 'repeater';
  const device: RecordOf<'device'> = {
    id: newId('dv'),
    type: 'device',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg: 0,
    heightMm: radio ? 2500 : kind.family === 'node' ? 800 : 0,
    label: nextLabel(plan, DEVICE_LETTER[kind.family]),
    ports: [],
    band: 0,
  };
  return { changes: draft.put(device).changes(), device };
};

const SOURCE_LETTER: Readonly<Record<SourceKind['what'], string>> = {
  generator: 'G',
  service: 'S',
  'house-panel': 'P',
  'wall-circuit': 'W',
  'power-station': 'B',
};

/** Adds a source with the next free label of its sort. Its volts stay unknown until someone measures them. */
export const placeSource = (
  plan: Plan,
  kind: SourceKind,
  floorId: string,
  at: Point,
  newId: NewId,
): { readonly changes: ChangeSet; readonly source: RecordOf<'source'> } => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const source: RecordOf<'source'> = {
    id: newId('sr'),
    type: 'source',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg: 0,
    label: nextLabel(plan, SOURCE_LETTER[kind.what]),
  };
  return { changes: draft.put(source).changes(), source };
};

/** Adds a camera, an actor's mark or a note. */
export const placeMark = (
  plan: Plan,
  what: RecordOf<'mark'>['what'],
  floorId: string,
  at: Point,
  newId: NewId,
  kind?: SceneryKind,
): { readonly changes: ChangeSet; readonly mark: RecordOf<'mark'> } => {
  const names = recordsOf(plan, 'mark')
    .filter((m) => m.what === what)
    .map((m) => m.name)
    .sort(compareNatural);
  const word = what === 'camera' ? 'Cam' : what === 'talent' ? 'Mark' : 'Note';
  const mark: RecordOf<'mark'> = {
    id: newId('mk'),
    type: 'mark',
    floorId,
    what,
    at,
    heightMm: what === 'note' ? 0 : 1600,
    facingDeg: 270,
    name: `${word} ${what === 'camera' ? String.fromCharCode(65 + (names.length % 26)) : names.length + 1}`,
    ...(what === 'camera' ? { viewDeg: 40 } : {}),
    ...(kind ? { kindId: kind.id } : {}),
  };
  const draft = new Draft(plan);
  if (kind) ensureKind(draft, kind);
  return { changes: draft.put(mark).changes(), mark };
};
