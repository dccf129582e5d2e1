import { fuelLitresPerH, fuelSource } from '../derive/fuel.ts';
import { limitCitation, limitOf } from '../derive/limits.ts';
import { sourceRating } from '../engines/power/index.ts';
import { formatClock, formatFuel, formatWatts } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { daySummary } from './day.ts';
import { type DayKey, readDayKey } from './day-keys.ts';
import type { PowerStep, SourceDay } from './day-types.ts';
import { explainDayHours } from './explain-hours.ts';
import { powerParts } from './power-parts.ts';
import { tankOf } from './refuel.ts';
import type { Working, WorkingInput } from './types.ts';

/** Lines of a working before the rest is told together. */
const MOST = 16;

const ENERGY_SOURCE =
  'Energy is power × time (definition of the watt-hour). Watts are those of the kinds at nominal volts and by the levels of the setup that burns; loss in cables is left out.';

export const hoursText = (h: number): string => `${Number(h.toFixed(2))} h`;
const kwh = (wh: number): string => `${(wh / 1000).toFixed(1)} kWh`;
const total = (s: PowerStep): number => s.lightW + s.chargerW;
const long = (s: PowerStep): number => (s.endMin - s.startMin) / 60;
const between = (s: PowerStep): string => `${formatClock(s.startMin)} to ${formatClock(s.endMin)}`;

/** The first lines, and how many more there are with what they come to. */
const shortened = <T>(all: readonly T[], say: (x: T) => string, rest: (more: readonly T[]) => string) =>
  all.length <= MOST ? all.map(say) : [...all.slice(0, MOST - 1).map(say), rest(all.slice(MOST - 1))];

interface Asked {
  readonly plan: Plan;
  readonly key: DayKey;
  readonly day: string;
  readonly s: SourceDay;
  readonly on: readonly PowerStep[];
}

type Body = Omit<Working, 'key'> | { readonly why: string };

/** The working of a figure of a shooting day; words where there is none, undefined where the key is of another figure. */
export const explainDay = (plan: Plan, text: string): Working | { readonly why: string } | undefined => {
  const key = readDayKey(text);
  if (!key) return undefined;
  const d = daySummary(plan, key.day);
  if (d.blocks.length === 0) return { why: `There are no blocks on day ${key.day}.` };
  const day = `day ${key.day}`;
  const hours = explainDayHours(plan, key, d);
  if (hours) return 'why' in hours ? hours : { key: text, ...hours };
  const make = WORKINGS[key.figure];
  if (!make) return { why: `Of a day there is no figure ${key.figure}.` };
  const s = d.sources.find((x) => x.id === key.of);
  if (!s) return { why: `There is no source of power ${key.of} in this plan, or it is not computed.` };
  const w = make({ plan, key, day, s, on: s.steps.filter((x) => total(x) > 0) });
  return 'why' in w ? w : { key: text, ...w };
};

/** What is drawn in one step, thing by thing. */
const drawn = ({ plan, key, day, s }: Asked, step: PowerStep, title: string): Body => {
  const parts = powerParts(plan, key.day, s.id, step.startMin);
  const listed = parts.reduce((sum, p) => sum + p.watts, 0);
  const inputs = [
    ...(parts.length <= MOST ? parts : parts.slice(0, MOST - 1)).map(
      (p): WorkingInput => ({
        name: p.label,
        value: formatWatts(p.watts),
        from: 'its kind, at its level in the setup that burns',
        assumed: false,
      }),
    ),
    ...(parts.length > MOST
      ? [
          {
            name: `${parts.length - MOST + 1} more`,
            value: formatWatts(parts.slice(MOST - 1).reduce((sum, p) => sum + p.watts, 0)),
            from: 'their kinds, at their levels',
            assumed: false,
          },
        ]
      : []),
    ...(step.chargerW > 0
      ? [
          {
            name: 'chargers, and power stations that are charged',
            value: formatWatts(step.chargerW),
            from: 'packs in their bays as the day is played, over the efficiency of the chargers',
            assumed: true,
          },
        ]
      : []),
  ];
  return {
    title: `${title} of ${s.label}, ${day}`,
    formula: 'sum of what draws from it at once',
    inputs,
    steps: [
      `${between(step)}: units ${formatWatts(step.lightW)}${step.chargerW > 0 ? ` + chargers ${formatWatts(step.chargerW)} = ${formatWatts(total(step))}` : ''}`,
      ...(step.lightW === 0 && listed > 0 ? ['it gives nothing then: it is empty or is charged itself'] : []),
      ...(s.ratedW
        ? [`${Math.round((100 * total(step)) / s.ratedW)} % of its ${formatWatts(s.ratedW)}`]
        : []),
    ],
    result: formatWatts(total(step)),
    rule: 'day-power',
    source: ENERGY_SOURCE,
  };
};

const nothing = (a: Asked): Body => ({ why: `Nothing is drawn from ${a.s.label} on ${a.day}.` });

const energyInputs = (on: readonly PowerStep[]): readonly WorkingInput[] => [
  {
    name: 'stretches in which something is drawn',
    value: `${on.length}, ${hoursText(on.reduce((h, x) => h + long(x), 0))}`,
    from: 'blocks of the day, and when packs charge',
    assumed: false,
  },
];

const energySteps = (s: SourceDay, on: readonly PowerStep[]): readonly string[] => [
  ...shortened(
    on,
    (x) => `${between(x)}: ${formatWatts(total(x))} × ${hoursText(long(x))} = ${kwh(total(x) * long(x))}`,
    (more) => `${more.length} more stretches: ${kwh(more.reduce((sum, x) => sum + total(x) * long(x), 0))}`,
  ),
  `together ${kwh(s.energyWh)}`,
];

const litres = (ratedKw: number, x: PowerStep): number =>
  (fuelLitresPerH(ratedKw, total(x) / 1000) ?? 0) * long(x);

const setInputs = ({ plan, s }: Asked, ratedKw: number): readonly WorkingInput[] => [
  {
    name: 'rated kilowatts of the set',
    value: formatWatts(1000 * ratedKw),
    from:
      sourceRating(plan, s.id).derived === 'kw'
        ? 'its kVA × the power factor sets are rated at'
        : 'the plan, else its kind',
    assumed: sourceRating(plan, s.id).derived === 'kw',
  },
  {
    name: 'litres an hour',
    value: 'by its load',
    from: 'chart of typical diesel sets, see the source below',
    assumed: true,
  },
];

const FUEL_SOURCE = `Chart of typical diesel sets, straight lines between its loads and sizes; below a quarter of the rating the quarter’s figure holds. ${fuelSource}. The maker’s own sheet comes first.`;

const WORKINGS: Readonly<Record<string, (a: Asked) => Body>> = {
  dayPeakW: (a) => {
    const top = a.on.find((x) => total(x) >= a.s.peakW - 1e-9);
    return top ? drawn(a, top, 'Peak') : nothing(a);
  },
  dayDrawnW: (a) => {
    const at = a.key.atMin ?? 0;
    const step = a.s.steps.find((x) => x.startMin <= at + 1e-3 && x.endMin > at + 1e-3);
    return step
      ? drawn(a, step, 'Power')
      : { why: `${a.s.label} has no stretch at ${formatClock(at)} on ${a.day}.` };
  },
  dayEnergyWh: (a) =>
    a.on.length === 0
      ? nothing(a)
      : {
          title: `Energy of ${a.s.label}, ${a.day}`,
          formula: 'sum of watts × hours over the day',
          inputs: energyInputs(a.on),
          steps: energySteps(a.s, a.on),
          result: kwh(a.s.energyWh),
          rule: 'day-energy',
          source: ENERGY_SOURCE,
        },
  dayAverageW: (a) =>
    a.on.length === 0
      ? nothing(a)
      : {
          title: `Average of ${a.s.label}, ${a.day}`,
          formula: 'energy ÷ hours in which anything is drawn',
          inputs: energyInputs(a.on),
          steps: [
            ...energySteps(a.s, a.on),
            `${kwh(a.s.energyWh)} ÷ ${hoursText(a.on.reduce((h, x) => h + long(x), 0))} = ${formatWatts(a.s.averageW)}`,
          ],
          result: formatWatts(a.s.averageW),
          rule: 'day-power',
          source: ENERGY_SOURCE,
        },
  dayFuelL: (a) => {
    const units = planRecord(a.plan).lengthUnits;
    const kw = a.s.ratedW === undefined ? undefined : a.s.ratedW / 1000;
    if (kw === undefined || a.s.fuelL === undefined)
      return {
        why: `Fuel of ${a.s.label} is not known: it is no set, or its size or its load is off the chart.`,
      };
    return {
      title: `Fuel of ${a.s.label}, ${a.day}`,
      formula: 'sum of litres an hour at each load × hours',
      inputs: setInputs(a, kw),
      steps: [
        ...shortened(
          a.on,
          (x) =>
            `${between(x)}: ${formatWatts(total(x))} is ${Math.round(total(x) / kw / 10)} %, ${(fuelLitresPerH(kw, total(x) / 1000) ?? 0).toFixed(1)} L/h × ${hoursText(long(x))} = ${litres(kw, x).toFixed(1)} L`,
          (more) =>
            `${more.length} more stretches: ${more.reduce((sum, x) => sum + litres(kw, x), 0).toFixed(1)} L`,
        ),
        `together ${a.s.fuelL.toFixed(1)} L`,
      ],
      result: formatFuel(a.s.fuelL, units),
      rule: 'day-fuel',
      source: FUEL_SOURCE,
    };
  },
  dayRefuelMin: (a) => {
    const kw = a.s.ratedW === undefined ? undefined : a.s.ratedW / 1000;
    const { tankL, assumed } = tankOf(a.plan, a.s.id);
    if (kw === undefined || a.s.refuelMin === undefined || tankL === undefined)
      return {
        why: `When ${a.s.label} is refuelled is not known: it has no tank that is known, or its load is off the chart.`,
      };
    const refill = limitOf(a.plan, 'fuel-refill-at');
    const first = a.s.steps[0]?.startMin ?? 0;
    const burnt = (from: number, to: number): number =>
      a.on.reduce((sum, x) => {
        const min = Math.max(0, Math.min(to, x.endMin) - Math.max(from, x.startMin));
        return sum + ((fuelLitresPerH(kw, total(x) / 1000) ?? 0) * min) / 60;
      }, 0);
    const stops = a.s.refuelMin;
    const end = a.s.steps.at(-1)?.endMin ?? first;
    const since = (i: number): number => (i === 0 ? first : (stops[i - 1] ?? first));
    const used = burnt(stops.at(-1) ?? first, end);
    return {
      title: `Refuelling of ${a.s.label}, ${a.day}`,
      formula: 'filled up whenever so much of the tank is left; the day begins with a full one',
      inputs: [
        ...setInputs(a, kw),
        { name: 'tank', value: `${tankL} L`, from: assumed ? 'its kind' : 'the plan', assumed },
        {
          name: refill.id,
          value: `${refill.value} ${refill.unit}`,
          from: limitCitation(refill),
          assumed: !refill.override,
        },
      ],
      steps: [
        ...shortened(
          stops.map((at, i) => ({ at, from: since(i) })),
          (x) =>
            `${formatClock(x.from)} to ${formatClock(x.at)}: ${burnt(x.from, x.at).toFixed(1)} L of ${tankL} L burnt, ${(tankL - burnt(x.from, x.at)).toFixed(1)} L left: filled up`,
          (more) => `${more.length} more times`,
        ),
        `to the end at ${formatClock(end)}: ${used.toFixed(1)} L burnt, ${(tankL - used).toFixed(1)} L left`,
      ],
      result: stops.length > 0 ? stops.map(formatClock).join(', ') : 'no refuelling',
      rule: 'day-refuel',
      source: FUEL_SOURCE,
    };
  },
};
