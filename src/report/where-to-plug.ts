import { recordLabel, wayLabel } from '../derive/labels.ts';
import { newRunParts } from '../derive/lengths.ts';
import { makeUp } from '../derive/stock.ts';
import { balancedV, legNames, legVoltsV, lineToLineV, type SystemShape } from '../derive/systems.ts';
import {
  computePower,
  type Place,
  type PowerResult,
  placesOf,
  wireImpedance,
} from '../engines/power/index.ts';
import type { Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { connector, mates } from '../plan/connectors.ts';
import { type Bridge, bridges, straightInto } from '../plan/edits/adapters.ts';
import type { AdapterKind } from '../plan/kinds/adapter.ts';
import type { CableKind } from '../plan/kinds/kinds.ts';
import { type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { cablesAt, placeOf, waysOf } from '../plan/ports.ts';
import type { PortRef } from '../plan/records/index.ts';
import { type RoomLeft, roomLeft } from './room.ts';
import type { Assessment } from './types.ts';

export interface WhereAsked {
  readonly floorId: Id;
  readonly at: Point;
  readonly loadW: number;
  readonly powerFactor: number;
  /** Connector of the load's own inlet. */
  readonly connector: string;
  readonly legs?: number;
  readonly neutral?: boolean;
  readonly heightMm?: number;
  /** Most places to give; 5 when absent. */
  readonly most?: number;
  /** Cable kinds to choose from; those of the plan when absent. */
  readonly book?: readonly CableKind[];
  /** Adapters to choose from where no cable has both ends; none when absent. */
  readonly adapters?: readonly AdapterKind[];
}

/** One place to plug in, nearest first. */
export interface WherePlace {
  readonly ref: PortRef;
  /** `K1 way 3` or `W2`. */
  readonly label: string;
  readonly legs: string;
  readonly sourceId: Id;
  /** Cable to run: its kind, the length needed and the pieces that make it up, in mm. Undefined where no kind fits both ends. */
  readonly kind: CableKind | undefined;
  /** That cable, and the adapter it starts from where no cable has both ends. */
  readonly bridge: Bridge | undefined;
  readonly neededMm: number;
  readonly piecesMm: readonly number[];
  /** Amps the load takes, and what stays free on the way to the source in the worst setup with it plugged in. */
  readonly loadA: number;
  readonly freeAfterA: number;
  /** Volts at its end by the worst setup's volts at the outlet and the fall in the new cable; undefined where not known. */
  readonly voltsV: number | undefined;
  /** What these figures were reckoned from. */
  readonly basis: PlaceBasis;
}

export interface PlaceBasis {
  /** Volts by which the volt-amperes are divided for amps on a leg, and what they are. */
  readonly overV: number;
  readonly over: string;
  readonly run: ReturnType<typeof newRunParts>;
  /** Made-up length of the cable in mm, ohms a metre of one leg and of the way back; undefined without a cable. */
  readonly cable:
    | { readonly totalMm: number; readonly legOhmPerM: number; readonly backOhmPerM: number }
    | undefined;
  readonly room: RoomLeft;
  /** Least volts at the outlet over all setups, NaN where not known, and the position of their setup. */
  readonly outletV: number;
  readonly outletSetup: number;
  readonly outletKey: string;
}

/**
 * The nearest free outlets that take a load with room in every setup, on the same floor, with the cable to run and the volts
 * to expect. Computed from this plan; other loads on the circuits are not known.
 */
export const whereToPlug = (plan: Plan, a: Assessment, asked: WhereAsked): readonly WherePlace[] => {
  const power = computePower(plan);
  const found = [...power.sources.keys()].flatMap((id) =>
    freePlaces(plan, power, id).flatMap((p) => placeFor(plan, power, a, id, p, asked) ?? []),
  );
  return found
    .sort((x, y) => x.neededMm - y.neededMm || y.freeAfterA - x.freeAfterA)
    .slice(0, asked.most ?? 5);
};

/** Plugs in an outlet already: of the plan's cables and adapters, and of other people. */
export const plugsAt = (plan: Plan, p: Place): number => {
  const { recordId, portId } = p.ref;
  const wall = recordOf(plan, 'outlet', recordId) !== undefined;
  return (
    cablesAt(plan, recordId).filter((c) => c.from.recordId === recordId && c.from.portId === portId).length +
    recordsOf(plan, 'otherLoad').filter((o) => o.on.recordId === recordId && (o.on.portId === portId || wall))
      .length +
    straightInto(plan, recordId, portId).length
  );
};

/** Outlets of a source that have room for one plug more. */
export const freePlaces = (plan: Plan, power: PowerResult, sourceId: Id): readonly Place[] =>
  placesOf(power, sourceId).filter((p) => plugsAt(plan, p) < p.capacity);

/** What people call an outlet: a wall outlet's own label, else its way. */
export const placeLabel = (plan: Plan, p: Place): string => {
  const owner = plan.records.get(p.ref.recordId);
  if (owner?.type === 'outlet') return recordLabel(plan, owner);
  const way = waysOf(plan, p.ref.recordId).find((w) => w.id === p.port.wayId);
  return way
    ? wayLabel(recordLabel(plan, owner), way)
    : [recordLabel(plan, owner), p.port.label ?? p.port.id].join(' ');
};

/** Volts by which a load's volt-amperes are divided for amps on a leg: its leg's, those between its two legs, or all legs' together. */
export const voltsOver = (
  shape: SystemShape,
  legs: readonly number[],
  neutral: boolean,
): { readonly overV: number; readonly over: string } => {
  const [a = 0, b, c] = legs;
  if (b === undefined) return { overV: legVoltsV(shape, a), over: 'nominal, leg to neutral' };
  if (c === undefined && !neutral) return { overV: lineToLineV(shape, a, b), over: 'nominal, leg to leg' };
  return c === undefined
    ? { overV: legVoltsV(shape, a) + legVoltsV(shape, b), over: 'nominal, both legs to neutral together' }
    : { overV: balancedV(shape), over: 'nominal, all legs to neutral together' };
};

const placeFor = (
  plan: Plan,
  power: PowerResult,
  a: Assessment,
  sourceId: Id,
  p: Place,
  asked: WhereAsked,
): WherePlace | undefined => {
  const here = placeOf(plan, p.ref.recordId);
  const legs = asked.legs ?? 1;
  const neutral = asked.neutral ?? true;
  if (!here || here.floorId !== asked.floorId || p.legs.length !== legs || p.port.neutral !== neutral)
    return undefined;
  const book = asked.book ?? recordsOf(plan, 'kind').filter((k): k is CableKind => k.family === 'cable');
  const inlet = { connector: asked.connector, legs, neutral };
  const bridge = bridges(p.port, inlet, book, asked.adapters ?? [])[0];
  const kind = bridge?.cable;
  if (!kind && !mates(p.port.connector, asked.connector)) return undefined;
  const node = power.tree.byKey.get(p.way.key);
  const shape = power.sources.get(sourceId)?.model;
  if (!node || !shape) return undefined;
  const own = p.chain.at(-1)?.transformer?.shape ?? shape.shape;
  const { overV, over } = voltsOver(own, p.legs, neutral);
  const loadA = asked.loadW / asked.powerFactor / overV;
  // A plate of several sockets carries more than one plug may.
  if (loadA > (connector(p.port.connector)?.ratingA || Number.POSITIVE_INFINITY)) return undefined;
  const key = p.at.key;
  const room = roomLeft(a, key);
  if (!room || room.freeA < loadA) return undefined;
  const run = newRunParts(plan, here, { at: asked.at, heightMm: asked.heightMm ?? 0 });
  const neededMm = run.drawnMm + run.risesMm + run.slackMm;
  const made = kind ? makeUp(neededMm, kind.stockLengthsMm) : { piecesMm: [], totalMm: neededMm };
  const z = kind && wireImpedance(plan, kind);
  const cable = z && {
    totalMm: made.totalMm,
    legOhmPerM: z.legOhmPerM,
    backOhmPerM: neutral ? z.neutralOhmPerM : z.legOhmPerM,
  };
  const dropV = cable ? (loadA * (cable.legOhmPerM + cable.backOhmPerM) * cable.totalMm) / 1000 : 0;
  const worst = a.figures.worst(key, 'voltsV');
  return {
    ref: p.ref,
    label: placeLabel(plan, p),
    legs: legNames(planRecord(plan).practice, node.system, p.legs),
    sourceId,
    kind,
    bridge,
    neededMm,
    piecesMm: made.piecesMm,
    loadA,
    freeAfterA: room.freeA - loadA,
    voltsV: Number.isNaN(worst.value) ? undefined : worst.value - dropV,
    basis: {
      overV,
      over,
      run,
      cable,
      room,
      outletV: worst.value,
      outletSetup: worst.setupIndex,
      outletKey: key,
    },
  };
};
