import { formatClock, formatWatts } from '../../kernel/units.ts';
import {
  type BayLane,
  type DaySummary,
  formatMinutes,
  type SharedPackLane,
  type SourceDay,
  type StationLoadLane,
  type UnitLane,
} from '../../report/day.ts';
import { drawnKey } from '../../report/day-keys.ts';
import type { PowerPart } from '../../report/power-parts.ts';
import { onStation } from '../../report/station-spans.ts';

/** A stretch or a moment of a lane that can be pointed at or stepped to: what it is, in words, with the arithmetic. */
export interface LaneStop {
  readonly startMin: number;
  readonly endMin: number;
  readonly head: string;
  readonly lines: readonly string[];
  /** Key of the working that can be opened. */
  readonly key?: string;
  /** Which of several rows of a lane it is in. */
  readonly row?: number;
}

export const pct = (share: number): string => `${Math.round(100 * share)} %`;
export const from = (a: number, b: number): string => `${formatClock(a)} to ${formatClock(b)}`;

const byTime = (a: LaneStop, b: LaneStop): number => a.startMin - b.startMin || a.endMin - b.endMin;

/** Stops of a unit's lane: loadings, dark gaps, charging, changes. */
export const unitStops = (l: UnitLane): readonly LaneStop[] => {
  const spans = l.spans.map((s): LaneStop => {
    const minutes = formatMinutes(s.endMin - s.startMin);
    if (s.state === 'dark')
      return {
        startMin: s.startMin,
        endMin: s.endMin,
        head: `${l.label} dark ${from(s.startMin, s.endMin)}`,
        lines: [`${minutes} without light: nothing charged is at hand.`],
      };
    const r = l.runtimes.find((x) => x.setupId === s.setupId);
    const on = s.packs.length > 0 ? ` on ${s.packs.map((p) => `#${p}`).join(' ')}` : '';
    const used = s.fromSoc - s.toSoc;
    return {
      startMin: s.startMin,
      endMin: s.endMin,
      head: `${l.label}${on}, ${from(s.startMin, s.endMin)}`,
      lines: [
        `${l.on}, ${l.kindName === '' ? 'all its units together' : `at ${Math.round(s.levelPct)} %`}${r ? ` in ${r.setupName}` : ''}`,
        ...(r && r.minutes.plan > 0
          ? [
              `${minutes} of ${formatMinutes(r.minutes.plan)} a full one lasts: ${pct(used)} of the charge`,
              `charge ${pct(s.fromSoc)} to ${pct(s.toSoc)}; a full one lasts ${r.text}, worst to best`,
            ]
          : [`charge ${pct(s.fromSoc)} to ${pct(s.toSoc)}`]),
      ],
      ...(r?.key ? { key: r.key } : {}),
    };
  });
  const charges = l.charges.map(
    (c): LaneStop => ({
      startMin: c.startMin,
      endMin: c.endMin,
      head: `${l.label} charging, ${from(c.startMin, c.endMin)}`,
      lines: [`on its own lead while it is off: ${pct(c.fromSoc)} to ${pct(c.toSoc)}`],
    }),
  );
  const swaps = l.swaps
    .filter((s) => !s.first)
    .map(
      (s): LaneStop => ({
        startMin: s.atMin,
        endMin: s.atMin,
        head: `${l.label} at ${formatClock(s.atMin)}: ${s.out ? `${s.out} off, ` : ''}${s.into} on`,
        lines: [
          ...(s.out ? [`${Math.round(s.outPct)} % left in what comes off`] : []),
          s.darkMin > 0
            ? `dark for ${formatMinutes(s.darkMin)} while it is changed`
            : s.out
              ? 'without a gap'
              : 'put on when a charged one was there',
        ],
      }),
    );
  return [...spans, ...charges, ...swaps].sort(byTime);
};

/** Stops of a charger: which pack is in which bay when. */
export const bayStops = (bays: readonly BayLane[]): readonly LaneStop[] =>
  bays
    .flatMap((b, row) =>
      b.spans.map(
        (s): LaneStop => ({
          row,
          startMin: s.startMin,
          endMin: s.endMin,
          head: `${b.label}: #${s.pack}, ${from(s.startMin, s.endMin)}`,
          lines: [`goes in at ${pct(s.fromSoc)}; ${formatMinutes(s.endMin - s.startMin)} to a full charge`],
        }),
      ),
    )
    .sort((a, b) => (a.row ?? 0) - (b.row ?? 0) || byTime(a, b));

const MOST_PARTS = 5;

/** Stops of a source: what it gives in each stretch and to whom. */
export const powerStops = (
  s: SourceDay,
  day: number,
  partsAt: (atMin: number) => readonly PowerPart[],
): readonly LaneStop[] =>
  s.steps
    .map((x): LaneStop => {
      const total = x.lightW + x.chargerW;
      const parts = partsAt(x.startMin);
      const hours = (x.endMin - x.startMin) / 60;
      const rest = parts.slice(MOST_PARTS);
      const left = s.station?.spans.find((y) => y.startMin < x.endMin && y.endMin >= x.endMin);
      return {
        startMin: x.startMin,
        endMin: x.endMin,
        head: `${s.label}: ${formatWatts(total)}, ${from(x.startMin, x.endMin)}`,
        key: drawnKey(s.id, day, x.startMin),
        lines:
          total <= 0
            ? ['nothing is drawn']
            : [
                `${formatWatts(total)} × ${Number(hours.toFixed(2))} h = ${((total * hours) / 1000).toFixed(1)} kWh`,
                ...(s.ratedW ? [`${pct(total / s.ratedW)} of its ${formatWatts(s.ratedW)}`] : []),
                ...parts.slice(0, MOST_PARTS).map((p) => `${p.label} ${formatWatts(p.watts)}`),
                ...(rest.length > 0
                  ? [`${rest.length} more, together ${formatWatts(rest.reduce((n, p) => n + p.watts, 0))}`]
                  : []),
                ...(x.chargerW > 0
                  ? [`chargers ${formatWatts(x.chargerW)}, stations being charged counted in`]
                  : []),
                ...(left ? [`${pct(left.toShare)} left in its cells at ${formatClock(x.endMin)}`] : []),
              ],
      };
    })
    .filter((x) => x.lines[0] !== 'nothing is drawn');

/** Stops of a unit that hangs on a power station. */
export const stationUnitStops = (l: StationLoadLane, station: SourceDay['station']): readonly LaneStop[] =>
  onStation(l, station).map((s) => ({
    startMin: s.startMin,
    endMin: s.endMin,
    head: `${l.label} ${s.state === 'dark' ? 'dark' : `on ${l.sourceLabel}`}, ${from(s.startMin, s.endMin)}`,
    lines:
      s.state === 'dark'
        ? [`${l.sourceLabel} is empty`]
        : [
            `at ${Math.round(s.levelPct)} %`,
            `${l.sourceLabel} goes from ${pct(s.fromShare)} to ${pct(s.toShare)} of what it can give`,
          ],
  }));

/** A pack on the floor as a lane like a unit's; its workings are those of the units it feeds. */
export const packAsLane = (p: SharedPackLane, lanes: DaySummary['lanes']): UnitLane => {
  const [first] = p.units;
  const keyOf = (setupId: string): string =>
    lanes
      .filter((l) => l.sharedPackId === p.id)
      .flatMap((l) => l.runtimes)
      .find((r) => r.setupId === setupId)?.key ?? '';
  return {
    fixtureId: first?.fixtureId ?? p.id,
    label: p.label,
    kindName: '',
    on: p.on,
    sharedPackId: undefined,
    problem: undefined,
    spans: p.spans,
    swaps: p.swaps,
    charges: [],
    currents: p.currents,
    runtimes: p.runtimes.map((r) => ({ ...r, levelPct: 100, key: keyOf(r.setupId) })),
    burnsMin: p.burnsMin,
    darkMin: p.darkMin,
  };
};
