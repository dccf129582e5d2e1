import { type Point, polylineLengthMm } from '../kernel/geometry.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import type { DataPort } from '../plan/kinds/data-ports.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { dataPortsOf, type Place, placeOf } from '../plan/ports.ts';
import type { DataLine } from '../plan/records/index.ts';
import { rememberedEach } from '../plan/remembered.ts';
import { routeBetween } from '../plan/route.ts';
import { mazeOf } from '../plan/route-maze.ts';
import { limitOf } from './limits.ts';
import { makeUp } from './stock.ts';

/** Lengths data cable is kept in where the line names no kind; common practice, no published source. Millimetres. */
const STOCK_MM: Readonly<Record<'imperial' | 'metric', readonly number[]>> = {
  imperial: [5, 10, 15, 25, 50, 100].map((ft) => Math.round(ft * 304.8)),
  metric: [1.5, 3, 5, 10, 15, 20, 30, 50].map((m) => m * 1000),
};

/** One stretch of a data line, from a thing to the next. Lengths in mm. */
export interface LineHop {
  /** Position of the stop it leads to. */
  readonly index: number;
  readonly fromId: Id;
  readonly toId: Id;
  /** Corners between the two ends. */
  readonly points: readonly Point[];
  readonly byHand: boolean;
  readonly drawnMm: number;
  /** Down from the one end and up to the other; nothing where both hang on one pipe or truss. */
  readonly risesMm: number;
  readonly slackMm: number;
  readonly neededMm: number;
  /** Stock lengths it is made up of, longest first. */
  readonly piecesMm: readonly number[];
}

/** A data line as it is laid: its hops, and what they come to. Lengths in mm. */
export interface LineLength {
  readonly lineId: Id;
  readonly label: string;
  readonly connector: DataPort['connector'];
  readonly kindId: Id | undefined;
  readonly hops: readonly LineHop[];
  /** Stops that have no place to run to, or from. */
  readonly lost: readonly Id[];
  readonly neededMm: number;
  /** Sum of the pieces: what lies on the floor. */
  readonly totalMm: number;
  readonly pieces: number;
  /** Joints between pieces within hops. */
  readonly couplings: number;
  readonly slackAssumed: boolean;
  /** The stock lengths are the practice's own: the line names no kind of cable that has any. */
  readonly stockAssumed: boolean;
}

/** The port a line starts from; undefined where its device has no such port. */
export const startPort = (plan: Plan, line: DataLine): DataPort | undefined => {
  const { dataIn, dataOut } = dataPortsOf(plan, line.from.recordId);
  return [...dataOut, ...dataIn].find((p) => p.id === line.from.portId);
};

const byPlace = new WeakMap<object, Map<string, readonly Point[]>>();

/** The automatic way between two places, kept while nothing it goes round changes. */
const wayBetween = (plan: Plan, from: Place, to: Place): readonly Point[] => {
  const maze = mazeOf(plan, from.floorId);
  let known = byPlace.get(maze);
  if (!known) {
    known = new Map();
    byPlace.set(maze, known);
  }
  const key = [from.at.xMm, from.at.yMm, to.floorId, to.at.xMm, to.at.yMm].join('|');
  let points = known.get(key);
  if (!points) {
    points = routeBetween(plan, from, to);
    if (known.size > 4000) known.clear();
    known.set(key, points);
  }
  return points;
};

/** Corners between two stops of a line: those laid by hand, else the automatic way round walls. */
export const hopPoints = (
  plan: Plan,
  line: DataLine,
  index: number,
): { readonly points: readonly Point[]; readonly byHand: boolean } | undefined => {
  const from = placeOf(plan, index === 0 ? line.from.recordId : (line.stops[index - 1] ?? ''));
  const to = placeOf(plan, line.stops[index] ?? '');
  if (!from || !to) return undefined;
  const own = line.routes.find((r) => r.hop === index);
  return own ? { points: own.points, byHand: true } : { points: wayBetween(plan, from, to), byHand: false };
};

/** Units rigged within this height of one another stay up: the cable between them does not come down. Common practice. */
const LEVEL_MM = 1000;

/** Whether a cable between two stops stays up: both hang on one pipe or truss, or side by side at one height. */
const staysUp = (plan: Plan, fromId: Id, from: Place, toId: Id, to: Place): boolean => {
  const [a, b] = [recordOf(plan, 'fixture', fromId)?.support, recordOf(plan, 'fixture', toId)?.support];
  if (a?.on !== 'rigged' || b?.on !== 'rigged') return false;
  return a.riggingId !== undefined || b.riggingId !== undefined
    ? a.riggingId === b.riggingId
    : Math.abs(from.heightMm - to.heightMm) <= LEVEL_MM;
};

const rises = (plan: Plan, fromId: Id, from: Place, toId: Id, to: Place): number => {
  if (staysUp(plan, fromId, from, toId, to)) return Math.abs(from.heightMm - to.heightMm);
  const level = (id: string): number => recordOf(plan, 'floor', id)?.levelMm ?? 0;
  const between = from.floorId === to.floorId ? 0 : Math.abs(level(from.floorId) - level(to.floorId));
  return Math.abs(from.heightMm) + Math.abs(to.heightMm) + between;
};

const madeUp = new WeakMap<readonly number[], Map<number, readonly number[]>>();

/** The fewest pieces for a length, remembered per stock: most hops stay as they were from edit to edit. */
const piecesOf = (neededMm: number, stock: readonly number[]): readonly number[] => {
  let known = madeUp.get(stock);
  if (!known) {
    known = new Map();
    madeUp.set(stock, known);
  }
  let pieces = known.get(neededMm);
  if (!pieces) {
    pieces = makeUp(neededMm, stock).piecesMm;
    if (known.size > 4000) known.clear();
    known.set(neededMm, pieces);
  }
  return pieces;
};

/**
 * Length of a data line hop by hop, as for power cables: the drawn way, the drop and rise at either end, slack, made up of
 * stock lengths. Every hop is a cable of its own, since each stop has an in and a through.
 */
export const lineLength = (plan: Plan, line: DataLine): LineLength => {
  const own = line.kindId === undefined ? undefined : kindOf(plan, line.kindId, 'dataCable')?.stockLengthsMm;
  const stock = own && own.length > 0 ? own : STOCK_MM[planRecord(plan).lengthUnits];
  const leastSlackMm = limitOf(plan, 'slack-min').value;
  const slackPct = limitOf(plan, 'slack-pct').value;
  const hops: LineHop[] = [];
  const lost: Id[] = [];
  line.stops.forEach((toId, index) => {
    const fromId = index === 0 ? line.from.recordId : (line.stops[index - 1] ?? '');
    const from = placeOf(plan, fromId);
    const to = placeOf(plan, toId);
    const way = hopPoints(plan, line, index);
    if (!from || !to || !way) {
      lost.push(toId);
      return;
    }
    const drawnMm = polylineLengthMm([from.at, ...way.points, to.at]);
    const risesMm = rises(plan, fromId, from, toId, to);
    const base = drawnMm + risesMm;
    const slackMm =
      line.slackPct === undefined
        ? Math.max(leastSlackMm, (base * slackPct) / 100)
        : (base * Math.max(0, line.slackPct)) / 100;
    const neededMm = base + slackMm;
    const piecesMm = piecesOf(neededMm, stock);
    hops.push({ index, fromId, toId, ...way, drawnMm, risesMm, slackMm, neededMm, piecesMm });
  });
  const pieces = hops.flatMap((h) => h.piecesMm);
  return {
    lineId: line.id,
    label: line.label,
    connector: startPort(plan, line)?.connector ?? 'xlr-5',
    kindId: line.kindId,
    hops,
    lost,
    neededMm: hops.reduce((s, h) => s + h.neededMm, 0),
    totalMm: pieces.reduce((s, mm) => s + mm, 0),
    pieces: pieces.length,
    couplings: hops.reduce((s, h) => s + Math.max(0, h.piecesMm.length - 1), 0),
    slackAssumed: line.slackPct === undefined,
    stockAssumed: own === undefined || own.length === 0,
  };
};

const lengths = new WeakMap<Plan, readonly LineLength[]>();

const lengthOfEach = rememberedEach(lineLength);

/** All data lines of the plan with their lengths, by label. Kept per plan, each line's from edit to edit. */
export const lineLengths = (plan: Plan): readonly LineLength[] => {
  const known = lengths.get(plan);
  if (known) return known;
  const made = lengthOfEach(plan, linesInOrder(plan));
  lengths.set(plan, made);
  return made;
};

const sorted = new WeakMap<readonly DataLine[], readonly DataLine[]>();

/** Data lines by their label as people count: L2 before L10. */
export const linesInOrder = (plan: Plan): readonly DataLine[] => {
  const list = recordsOf(plan, 'line');
  let known = sorted.get(list);
  if (!known) {
    known = [...list].sort((a, b) => compareNatural(a.label, b.label) || (a.id < b.id ? -1 : 1));
    sorted.set(list, known);
  }
  return known;
};

/** Whether a line is EIA-485 wire, which has segments, unit loads and a terminator; else it is a network or another link. */
export const isWire = (connector: DataPort['connector']): boolean =>
  connector === 'xlr-5' || connector === 'xlr-3';

/** Words for a data connector. */
export const CONNECTOR_WORDS: Readonly<Record<DataPort['connector'], string>> = {
  'xlr-5': 'five-pin',
  'xlr-3': 'three-pin',
  ethernet: 'network',
  radio: 'radio',
  usb: 'USB',
};

/** What a line's cable is called on a list. */
export const dataCableName = (plan: Plan, l: Pick<LineLength, 'kindId' | 'connector'>): string => {
  const kind = l.kindId === undefined ? undefined : kindOf(plan, l.kindId, 'dataCable');
  return kind?.name ?? `Data cable, ${CONNECTOR_WORDS[l.connector]} (kind not said)`;
};

/** Whether the end of a line takes a terminator of its own: wire to something that passes the line on. */
export const needsTerminator = (plan: Plan, line: DataLine): boolean => {
  const end = line.stops.at(-1);
  if (end === undefined || !isWire(startPort(plan, line)?.connector ?? 'xlr-5')) return false;
  const kind = deviceKind(plan, end);
  if (!kind) return true;
  return (
    kind.family === 'dataSplitter' && kind.dataOut.some((p) => isWire(p.connector) && p.id === 'through')
  );
};

/** The kind of a device, of any of its families. */
export const deviceKind = (plan: Plan, id: Id) => {
  const d = recordOf(plan, 'device', id);
  return d && kindOf(plan, d.kindId, 'node', 'dataSplitter', 'transmitter', 'receiver', 'repeater');
};
