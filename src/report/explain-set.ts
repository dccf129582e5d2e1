import { fuelSource, readFuel } from '../derive/fuel.ts';
import { limitCitation, limitOf } from '../derive/limits.ts';
import { rootKind } from '../derive/supply-roots.ts';
import { parseFigureKey, positive, sourceRating } from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import { formatFuel, formatPct, formatVoltAmps, formatWatts } from '../kernel/units.ts';
import { type Plan, planRecord, recordOf } from '../plan/plan.ts';
import { tankOf } from './refuel.ts';
import type { SetRow, SourceRow } from './summary-types.ts';
import type { Assessment, Working, WorkingInput } from './types.ts';

/** A figure of a set as a whole: share of its rating, what it gives, its lightest running, fuel an hour, hours of a tank. */
export type SetFigure = 'share' | 'givesW' | 'givesVa' | 'lightest' | 'fuel' | 'tank';

/** Hours of a tank as shown: one decimal below ten. */
export const tankHours = (h: number): string => `${h < 9.95 ? h.toFixed(1) : h.toFixed(0)} h`;

interface Asked {
  readonly plan: Plan;
  readonly a: Assessment;
  readonly source: SourceRow;
  readonly set: SetRow;
  readonly setup: string;
}

type Body = Omit<Working, 'key'> | undefined;

/** The arithmetic behind a figure of a set, from its row for one setup; undefined where it is not known. */
export const explainSet = (
  plan: Plan,
  a: Assessment,
  source: SourceRow,
  setupId: Id | undefined,
  figure: SetFigure,
): Working | undefined => {
  const { set } = source;
  if (!set) return undefined;
  const setup = (a.setups.find((s) => s.id === setupId) ?? a.setups[0])?.name ?? '';
  const w = WORKINGS[figure]({ plan, a, source, set, setup });
  return w && { ...w, key: `${figure} of ${source.id}, ${setup}` };
};

const line = (name: string, value: string, from: string, assumed = false): WorkingInput => ({
  name,
  value,
  from,
  assumed,
});

const limitLine = (plan: Plan, id: string): WorkingInput => {
  const l = limitOf(plan, id);
  return line(id, `${l.value} ${l.unit}`, `rule of the plan: ${limitCitation(l)}`);
};

/** Rated kilowatts or kVA, and where they are from; the one that is not given follows from the other. */
const ratedLines = ({ plan, source }: Asked, of: 'kw' | 'kva'): readonly WorkingInput[] => {
  const record = recordOf(plan, 'source', source.id);
  const rating = sourceRating(plan, source.id);
  const own = positive(of === 'kw' ? record?.ratedKw : record?.ratedKva);
  const name = of === 'kw' ? 'rated kW' : 'rated kVA';
  const value =
    of === 'kw'
      ? formatWatts(1000 * (rating.kw ?? Number.NaN))
      : formatVoltAmps(1000 * (rating.kva ?? Number.NaN));
  return rating.derived === of
    ? [
        line(name, value, `its other rating, at the power factor sets are rated at`, true),
        limitLine(plan, 'generator-rating-pf'),
      ]
    : [line(name, value, own === undefined ? 'its kind' : 'the plan')];
};

const shareOf = ({ plan, source, set }: Asked): Body => {
  const common = {
    title: `What ${source.label} gives of its rating where it stands`,
    rule: 'power-derating',
  };
  if (set.shareFrom === 'plan')
    return {
      ...common,
      formula: 'share as its maker gives it',
      inputs: [line('share of its rating', formatPct(100 * set.share), 'the plan, for this place')],
      steps: [],
      result: formatPct(100 * set.share),
      source: 'The plan’s own figure goes before the derating table',
    };
  const { altitudeM, ambientC } = planRecord(plan);
  const ids = ['derate-altitude-from', 'derate-altitude', 'derate-air-from', 'derate-air'] as const;
  const [highFrom = 0, high = 0, warmFrom = 0, warm = 0] = ids.map((id) => limitOf(plan, id).value);
  const [upM, overC] = [Math.max(0, (altitudeM ?? 0) - highFrom), Math.max(0, ambientC - warmFrom)];
  const part = (by: number, beyond: number, per: number): number => 1 - (by * beyond) / per / 100;
  const digits = (n: number): string => n.toFixed(3);
  return {
    ...common,
    formula: 'share = (1 − less for height) × (1 − less for heat)',
    inputs: [
      line(
        'height above the sea',
        `${altitudeM ?? 0} m`,
        altitudeM === undefined ? 'not given in the plan' : 'the plan',
        altitudeM === undefined,
      ),
      line('air', `${ambientC} °C`, 'the plan'),
      ...ids.map((id) => limitLine(plan, id)),
    ],
    steps: [
      `height: 1 − ${high} % × ${upM} m ÷ 500 m = ${digits(part(high, upM, 500))}`,
      `heat: 1 − ${warm} % × ${overC} °C ÷ 5 °C = ${digits(part(warm, overC, 5))}`,
      `${digits(part(high, upM, 500))} × ${digits(part(warm, overC, 5))} = ${digits(set.share)}`,
    ],
    result: formatPct(100 * set.share),
    source: limitCitation(limitOf(plan, 'derate-altitude')),
  };
};

const givesOf =
  (of: 'kw' | 'kva') =>
  (asked: Asked): Body => {
    const { plan, source, set } = asked;
    const gives = of === 'kw' ? set.givesW : set.givesVa;
    const rated = sourceRating(plan, source.id)[of];
    const share = shareOf(asked);
    if (gives === undefined || rated === undefined || !share) return undefined;
    const text = (n: number): string => (of === 'kw' ? formatWatts(n) : formatVoltAmps(n));
    return {
      title: `${of === 'kw' ? 'Kilowatts' : 'kVA'} ${source.label} gives where it stands`,
      formula: 'what it gives = rating × share',
      inputs: [...ratedLines(asked, of), ...share.inputs],
      steps: [
        ...share.steps,
        `${text(rated * 1000)} × ${Number((100 * set.share).toFixed(1))} % = ${text(gives)}`,
      ],
      result: text(gives),
      rule: 'power-derating',
      source: share.source,
    };
  };

const lightestOf = (asked: Asked): Body => {
  const { plan, a, source, set } = asked;
  const q = parseFigureKey(source.watts.figureKey)?.quantity;
  const ratedW = source.watts.rated;
  if (!q || ratedW === undefined || !Number.isFinite(set.lightestPct)) return undefined;
  const running = a.setups
    .map((s, i) => ({ name: s.name, watts: a.figures.get(source.id, q, i) }))
    .filter((s) => s.watts > 0)
    .sort((x, y) => x.watts - y.watts);
  const least = running[0];
  return (
    least && {
      title: `Lightest running of ${source.label}`,
      formula: 'share = least load of all setups in which it runs ÷ rated kilowatts',
      inputs: [
        line('load', formatWatts(least.watts), `${least.name}, of ${running.length} in which it runs`),
        ...ratedLines(asked, 'kw'),
        limitLine(plan, 'generator-light-load'),
      ],
      steps: [`${formatWatts(least.watts)} ÷ ${formatWatts(ratedW)} = ${formatPct(set.lightestPct)}`],
      result: formatPct(set.lightestPct),
      rule: 'power-generator-light',
      source: limitCitation(limitOf(plan, 'generator-light-load')),
    }
  );
};

const fuelOf = (asked: Asked): Body => {
  const { plan, source, set, setup } = asked;
  const { rated, now } = source.watts;
  const read = rated === undefined ? undefined : readFuel(rated / 1000, now / 1000);
  if (rated === undefined || !read || set.fuelNowLph === undefined) return undefined;
  const units = planRecord(plan).lengthUnits;
  const perH = (litres: number): string => `${formatFuel(litres, units)} an hour`;
  const sizes = read.sizes.map((s) => `${s.ratedKw} kW: ${perH(s.litresPerH)}`);
  return {
    title: `Fuel of ${source.label}, ${setup}`,
    formula: 'read off a chart of diesel sets, straight lines between its loads and its sizes',
    inputs: [
      line('load', formatWatts(now), `${setup}, the load flow`),
      ...ratedLines(asked, 'kw'),
      line('fuel chart', 'approximate', 'printed for 25, 50, 75 and 100 % of the rating, by size of set'),
    ],
    steps: [
      `${formatWatts(now)} ÷ ${formatWatts(rated)} = ${formatPct(read.loadPct)}`,
      ...(read.readPct > read.loadPct
        ? [`below the chart’s least load: read at ${formatPct(read.readPct)}`]
        : []),
      ...(sizes.length > 0 ? [`at ${formatPct(read.readPct)}: ${sizes.join('; ')}`] : []),
      ...(sizes.length > 1 ? [`in between for ${formatWatts(rated)}: ${perH(read.litresPerH)}`] : []),
    ],
    result: perH(read.litresPerH),
    rule: 'power-fuel',
    source: `Approximate, actual use differs. Chart: ${fuelSource}`,
  };
};

const tankOfSet = (asked: Asked): Body => {
  const { plan, source, set, setup } = asked;
  const { tankL, assumed } = tankOf(plan, source.id);
  const fuel = fuelOf(asked);
  if (tankL === undefined || set.tankNowH === undefined || !fuel) return undefined;
  const units = planRecord(plan).lengthUnits;
  const kind = rootKind(plan, source.id)?.name;
  return {
    title: `Hours a full tank of ${source.label} lasts, ${setup}`,
    formula: 'hours = tank ÷ fuel an hour',
    inputs: [
      line(
        'tank',
        formatFuel(tankL, units),
        assumed ? `its kind${kind ? `, ${kind}` : ''}` : 'the plan',
        assumed,
      ),
      ...fuel.inputs,
    ],
    steps: [...fuel.steps, `${formatFuel(tankL, units)} ÷ ${fuel.result} = ${tankHours(set.tankNowH)}`],
    result: tankHours(set.tankNowH),
    rule: 'power-fuel',
    source: fuel.source,
  };
};

const WORKINGS: Readonly<Record<SetFigure, (asked: Asked) => Body>> = {
  share: shareOf,
  givesW: givesOf('kw'),
  givesVa: givesOf('kva'),
  lightest: lightestOf,
  fuel: fuelOf,
  tank: tankOfSet,
};
