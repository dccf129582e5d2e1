import type { Overnight } from '../engines/battery/index.ts';
import { formatClock } from '../kernel/units.ts';
import type { DaySummary, PoolRow, SourceDay } from './day-types.ts';

/** When a set is refuelled, in words; empty where that is not known. */
export const refuelNote = (s: SourceDay): string =>
  s.refuelMin === undefined || !s.fuelL
    ? ''
    : s.refuelMin.length > 0
      ? `refuel at ${s.refuelMin.map(formatClock).join(', ')}`
      : 'no refuelling';

/** What a power station is charged with and what is left in it, in words; empty for other sources. */
export const stationNote = ({ station }: SourceDay): string =>
  station
    ? [
        ...(station.chargesFrom !== undefined && station.chargedWh > 0
          ? [`${Math.round(station.chargedWh)} Wh charged from ${station.chargesFrom}`]
          : []),
        station.emptyMin === undefined
          ? `${Math.round((100 * station.leftWh) / station.usableWh)} % left at the end`
          : `empty at ${formatClock(station.emptyMin)}`,
      ].join(', ')
    : '';

/** What is to be said of a source's day beside its figures: when it is refuelled, what is left in a power station. */
export const sourceNote = (s: SourceDay): string =>
  [refuelNote(s), stationNote(s)].filter(Boolean).join(', ');

const packs = (p: PoolRow, n: number): string =>
  `${n} ${p.exchange ? (n === 1 ? 'unit' : 'units') : n === 1 ? 'pack' : 'packs'}`;

/** Units that are dark because their power station is empty, in words. */
const darkOn = (d: DaySummary, sourceId: string): string => {
  const labels = d.stationLoads.filter((l) => l.sourceId === sourceId && l.darkMin > 0).map((l) => l.label);
  const last = labels.pop();
  return last === undefined ? '' : labels.length === 0 ? last : `${labels.join(', ')} and ${last}`;
};

/** Packs that are not full again when the next shooting day wants them, in one line. */
export const overnightWords = (o: Overnight): string => {
  const what = o.exchange ? 'units' : 'packs';
  const wants = `Day ${o.nextDay} counts on ${o.wants} full ${what} (${o.name})`;
  const at = formatClock(o.wantedMin);
  if (o.bays === 0 && !o.exchange)
    return `${wants} from ${at}: no charger of the plan takes them, so ${o.wants - o.full} must be charged elsewhere.`;
  const where = o.exchange ? '' : ` in ${o.bays} ${o.bays === 1 ? 'bay' : 'bays'}`;
  return `${wants} from ${at}: only ${o.full} ${o.full === 1 ? 'is' : 'are'} full by then, the last at ${formatClock(o.readyMin ?? o.wantedMin)}, charging without a pause${where}.`;
};

/** What goes wrong on a day, the worst first, each in one line: units that go dark, wait, or run a power station empty. */
export const dayTroubles = (
  d: DaySummary,
): readonly { readonly dark: boolean; readonly atMin: number; readonly text: string }[] =>
  [
    ...d.pools.flatMap((p) => {
      if (!p.short) return [];
      const dark = p.short.darkMin !== undefined;
      const atMin = p.short.darkMin ?? p.short.dueMin;
      const what = dark ? 'goes dark' : 'waits for a charged one';
      const more =
        p.atHand !== undefined && p.need > p.atHand
          ? ` A plain rotation takes ${p.need}: ${p.need - p.atHand} more.`
          : '';
      const kept = p.reserve > 0 ? `, ${p.reserve} kept back` : '';
      return [
        {
          dark,
          atMin,
          text: `With ${packs(p, p.atHand ?? 0)} (${p.name}${kept}) ${p.short.label} ${what} at ${formatClock(atMin)}.${more}`,
        },
      ];
    }),
    ...d.lanes.flatMap((l) => {
      const own = l.swaps.length === 0 ? l.spans.find((s) => s.state === 'dark') : undefined;
      return own && own.unit === -1
        ? [
            {
              dark: true,
              atMin: own.startMin,
              text: `${l.label} goes dark at ${formatClock(own.startMin)}: its own cells are used up.`,
            },
          ]
        : [];
    }),
    ...d.sources.flatMap((s) =>
      s.station?.emptyMin === undefined
        ? []
        : [
            {
              dark: true,
              atMin: s.station.emptyMin,
              text: `${s.label} is empty at ${formatClock(s.station.emptyMin)}: ${darkOn(d, s.id) || 'what hangs on it'} left dark.`,
            },
          ],
    ),
    ...d.overnight.map((o) => ({ dark: false, atMin: o.wantedMin, text: overnightWords(o) })),
  ].sort((a, b) => Number(b.dark) - Number(a.dark) || a.atMin - b.atMin);
