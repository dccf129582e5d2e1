import { legName } from '../derive/systems.ts';
import { formatAmps, formatCableLength, formatVolts, formatWatts } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { roomLeft } from './room.ts';
import type { Assessment, Working, WorkingInput } from './types.ts';
import type { WhereAsked, WherePlace } from './where-to-plug.ts';

/** A figure of a place to plug in. */
export type PlaceFigure = 'neededMm' | 'loadA' | 'freeAfterA' | 'voltsV';

/** The arithmetic behind a figure of a place to plug in, from the call that found it; undefined where it is not known. */
export const explainPlace = (
  plan: Plan,
  a: Assessment,
  asked: WhereAsked,
  place: WherePlace,
  figure: PlaceFigure,
): Working | undefined => {
  const common = { key: `${figure} at ${place.label}`, rule: 'power-where' };
  const w = WORKINGS[figure]({ plan, a, asked, place });
  return w && { ...common, ...w };
};

const LEGS = ['leg0A', 'leg1A', 'leg2A'] as const;

interface Asked {
  readonly plan: Plan;
  readonly a: Assessment;
  readonly asked: WhereAsked;
  readonly place: WherePlace;
}

type Body = Omit<Working, 'key' | 'rule'> | undefined;

const line = (name: string, value: string, from: string, assumed = false): WorkingInput => ({
  name,
  value,
  from,
  assumed,
});

const lengthOf = ({ plan, place }: Asked): Body => {
  const units = planRecord(plan).lengthUnits;
  const mm = (n: number): string => formatCableLength(n, units);
  const { drawnMm, risesMm, slackMm } = place.basis.run;
  return {
    title: `Cable to run from ${place.label}`,
    formula: 'L = way on the floor + rises at both ends + slack',
    inputs: [
      line('way on the floor', mm(drawnMm), 'along and across, from the outlet to the load'),
      line('rises', mm(risesMm), 'heights of both ends'),
      line('slack-pct', mm(slackMm), 'rule of the plan: a share of the rest, but at least slack-min', true),
    ],
    steps: [
      `${mm(drawnMm)} + ${mm(risesMm)} + ${mm(slackMm)} = ${mm(place.neededMm)}`,
      ...(place.piecesMm.length > 0
        ? [`made up of stock lengths: ${place.piecesMm.map(mm).join(' + ')}`]
        : []),
    ],
    result: mm(place.neededMm),
    source: 'Common practice, no published source',
  };
};

const ampsOf = ({ asked, place }: Asked): Body => {
  const { overV, over } = place.basis;
  return {
    title: `Amps the load takes at ${place.label}`,
    formula: 'I = P ÷ power factor ÷ V',
    inputs: [
      line('watts', formatWatts(asked.loadW), 'asked'),
      line('power factor', `${asked.powerFactor}`, 'asked'),
      line('volts', formatVolts(overV), over),
    ],
    steps: [
      `${formatWatts(asked.loadW)} ÷ ${asked.powerFactor} ÷ ${formatVolts(overV)} = ${formatAmps(place.loadA)}`,
    ],
    result: formatAmps(place.loadA),
    source: 'Apparent power over volts',
  };
};

/** Limit and worst currents of a thing and of all it is fed through, as inputs. */
const roomInputs = (plan: Plan, a: Assessment, entityKey: string): readonly WorkingInput[] => {
  const byKey = new Map(a.entities.map((e) => [e.key, e]));
  const inputs: WorkingInput[] = [];
  for (let at = byKey.get(entityKey); at; at = at.parentKey ? byKey.get(at.parentKey) : undefined) {
    const limit = at.legLimit;
    if (!limit) continue;
    const worst = LEGS.map((q) => a.figures.worst(at?.key ?? '', q).value);
    const shown = at.legs.filter((l) => Number.isFinite(worst[l]));
    const name = (l: number): string => legName(planRecord(plan).practice, at?.system, l);
    inputs.push(
      line(
        at.label,
        `${formatAmps(limit.limitA)} less ${shown.map((l) => formatAmps(worst[l] ?? 0)).join(', ')}`,
        `limit, by its ${limit.setBy.replace('-', ' ')}; worst on ${shown.map((l) => `leg ${name(l)}`).join(', ')}`,
      ),
    );
  }
  return inputs;
};

const ROOM_SOURCE = 'Limits by the practice’s rules; other loads on the circuits are not known';

/** The arithmetic behind the room left at a thing of the supply; undefined where a limit or current on the way is not known. */
export const explainRoom = (plan: Plan, a: Assessment, entityKey: string): Working | undefined => {
  const room = roomLeft(a, entityKey);
  const label = a.entities.find((e) => e.key === entityKey)?.label;
  return room && label !== undefined
    ? {
        key: `room at ${entityKey}`,
        title: `Room left at ${label}`,
        formula: 'free = limit − worst current, the least over it and all that feeds it',
        inputs: roomInputs(plan, a, entityKey),
        steps: [`${room.setBy} leaves least: ${formatAmps(room.freeA)} here, of ${formatAmps(room.limitA)}`],
        result: formatAmps(room.freeA),
        rule: 'power-where',
        source: ROOM_SOURCE,
      }
    : undefined;
};

const roomOf = ({ plan, a, place }: Asked): Body => {
  const { room, outletKey } = place.basis;
  return {
    title: `Room left at ${place.label} with the load on it`,
    formula: 'free = limit − worst current − load, the least over the outlet and all that feeds it',
    inputs: [...roomInputs(plan, a, outletKey), line('load', formatAmps(place.loadA), 'watts over volts')],
    steps: [
      `${room.setBy} leaves least: ${formatAmps(room.freeA)} for what is plugged in here, of ${formatAmps(room.limitA)}`,
      `${formatAmps(room.freeA)} − ${formatAmps(place.loadA)} = ${formatAmps(place.freeAfterA)}`,
    ],
    result: formatAmps(place.freeAfterA),
    source: ROOM_SOURCE,
  };
};

const voltsOf = ({ plan, a, place }: Asked): Body => {
  const { outletV, outletSetup, cable } = place.basis;
  if (place.voltsV === undefined) return undefined;
  const units = planRecord(plan).lengthUnits;
  const setup = a.setups[outletSetup]?.name;
  const ohm = (n: number): string => `${(n * 1000).toFixed(2)} Ω/km`;
  return {
    title: `Volts of the load at ${place.label}`,
    formula: 'V = V at the outlet − I × (R of the leg + R of the way back) × L',
    inputs: [
      line('volts at the outlet', formatVolts(outletV), `least over all setups${setup ? `: ${setup}` : ''}`),
      line('amps', formatAmps(place.loadA), 'watts over volts'),
      ...(cable
        ? [
            line('length', formatCableLength(cable.totalMm, units), 'the pieces it is made up of'),
            line(
              'resistance, leg and back',
              `${ohm(cable.legOhmPerM)} + ${ohm(cable.backOhmPerM)}`,
              place.kind?.name ?? '',
            ),
          ]
        : []),
    ],
    steps: [
      cable
        ? `lost in the cable: ${formatVolts(outletV - place.voltsV)}`
        : 'plugged in with its own lead: nothing more is lost',
      `${formatVolts(outletV)} − ${formatVolts(outletV - place.voltsV)} = ${formatVolts(place.voltsV)}`,
      'of a load on several legs the way back is counted in full, rather too much than too little',
      'the drop of the new load on what feeds the outlet is not in it: the full load flow counts it once the load is plugged in',
    ],
    result: formatVolts(place.voltsV),
    source: 'Ohm’s law; resistances of the conductors’ table',
  };
};

const WORKINGS: Readonly<Record<PlaceFigure, (q: Asked) => Body>> = {
  neededMm: lengthOf,
  loadA: ampsOf,
  freeAfterA: roomOf,
  voltsV: voltsOf,
};
