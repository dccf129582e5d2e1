import { recordLabel } from '../derive/labels.ts';
import { limitCitation, limitOf, limitsOf } from '../derive/limits.ts';
import { fixturesBehind } from '../derive/loaded-hours.ts';
import { type Day, shootingDays, stretchesOf } from '../derive/schedule.ts';
import type { Id } from '../kernel/ids.ts';
import { formatClock } from '../kernel/units.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { DayKey } from './day-keys.ts';
import type { DaySummary } from './day-types.ts';
import type { Working, WorkingInput } from './types.ts';
import { unitHours } from './unit-hours.ts';

const MOST = 16;
const h = (minutes: number): string => `${Number((minutes / 60).toFixed(2))} h`;

interface Span {
  readonly startMin: number;
  readonly endMin: number;
}

/** Stretches of a day in which any of some fixtures burns, those that touch joined; all fixtures without a choice. */
const spansOf = (day: Day, ids?: ReadonlySet<Id>): readonly Span[] => {
  const out: Span[] = [];
  for (const s of day.segments) {
    if (![...s.burning.keys()].some((id) => !ids || ids.has(id))) continue;
    const last = out.at(-1);
    if (last?.endMin === s.startMin) out[out.length - 1] = { ...last, endMin: s.endMin };
    else out.push({ startMin: s.startMin, endMin: s.endMin });
  }
  return out;
};

const spanText = (s: Span): string =>
  `${formatClock(s.startMin)} to ${formatClock(s.endMin)}: ${h(s.endMin - s.startMin)}`;
const sum = (spans: readonly Span[]): number => spans.reduce((n, s) => n + s.endMin - s.startMin, 0);

/** Stretches with pauses shorter than a limit counted in, the longest first. */
const longest = (spans: readonly Span[], restMin: number): Span | undefined => {
  const runs: Span[] = [];
  for (const s of spans) {
    const last = runs.at(-1);
    if (last && s.startMin - last.endMin < restMin) runs[runs.length - 1] = { ...last, endMin: s.endMin };
    else runs.push(s);
  }
  return runs.sort((a, b) => sum([b]) - sum([a]))[0];
};

const SOURCE =
  'Hours are counted from the blocks of the day and the levels of their setups: at any level above 0 a unit burns.';

const blocksInput: WorkingInput = {
  name: 'blocks of the day',
  value: 'from and to',
  from: 'the plan: what burns in each, by its setup or by what is named to stay on',
  assumed: false,
};

type Body = Omit<Working, 'key'> | { readonly why: string };

/** The working of hours on a day: with light, of a circuit, of a unit; undefined where the key is of another figure. */
export const explainDayHours = (plan: Plan, key: DayKey, d: DaySummary): Body | undefined => {
  const day = shootingDays(plan).find((x) => x.day === key.day);
  switch (key.figure) {
    case 'dayLightH':
      return day && lightHours(day);
    case 'dayLoadedH':
      return day && loaded(plan, day, key, d);
    case 'dayBurnsH':
      return day && burns(plan, day, key);
    default:
      return undefined;
  }
};

const lightHours = (day: Day): Body => {
  const spans = spansOf(day);
  return {
    title: `Hours with light, day ${day.day}`,
    formula: 'sum of the stretches in which any unit burns',
    inputs: [blocksInput],
    steps: spans.map(spanText),
    result: h(sum(spans)),
    rule: 'day-hours',
    source: SOURCE,
  };
};

const loaded = (plan: Plan, day: Day, key: DayKey, d: DaySummary): Body => {
  const c = d.circuits.find((x) => x.key === key.of);
  const ids = fixturesBehind(plan, key.of);
  if (!c || !ids)
    return {
      why: `Hours of ${key.of} are not counted: there is no such circuit, nothing on it burns that day, or something on it is not switched by a level.`,
    };
  const rest = limitOf(plan, 'continuous-rest');
  const counts = limitsOf(plan).get('continuous-hours');
  const spans = spansOf(day, ids);
  const top = longest(spans, rest.value * 60);
  const names = [...ids].map((id) => recordLabel(plan, recordOf(plan, 'fixture', id)));
  return {
    title: `Hours ${c.label} is loaded, day ${day.day}`,
    formula:
      'sum of the stretches in which anything on it burns; at a stretch: pauses shorter than the rest counted in',
    inputs: [
      blocksInput,
      {
        name: 'units on it',
        value: String(names.length),
        from: names.length > MOST ? `${names.slice(0, MOST).join(', ')} and more` : names.join(', '),
        assumed: false,
      },
      {
        name: rest.id,
        value: `${rest.value} ${rest.unit}`,
        from: limitCitation(rest),
        assumed: !rest.override,
      },
      ...(counts
        ? [
            {
              name: counts.id,
              value: `${counts.value} ${counts.unit}`,
              from: limitCitation(counts),
              assumed: false,
            },
          ]
        : []),
    ],
    steps: [
      ...spans.map(spanText),
      `together ${h(sum(spans))}`,
      ...(top ? [`the longest stretch, ${spanText(top)}`] : []),
    ],
    result: `${h(sum(spans))}, at a stretch ${h(top ? sum([top]) : 0)}`,
    rule: 'day-loaded-hours',
    source: counts ? `${SOURCE} ${counts.text} ${limitCitation(counts)}.` : SOURCE,
  };
};

const burns = (plan: Plan, day: Day, key: DayKey): Body => {
  const u = unitHours(plan, day.day).find((x) => x.fixtureId === key.of);
  if (!u) return { why: `${key.of} does not burn on day ${day.day}, or is not in the plan.` };
  const spans = stretchesOf(day, key.of);
  return {
    title: `Hours ${u.label} burns, day ${day.day}`,
    formula: 'sum of the stretches in which it burns',
    inputs: [blocksInput],
    steps: [
      ...spans.map(
        (s) =>
          `${spanText(s)} at ${Math.round(s.levelPct)} % in ${recordOf(plan, 'setup', s.setupId)?.name ?? s.setupId}`,
      ),
      `together ${h(sum(spans))}`,
    ],
    result: `${h(60 * u.totalH)}${u.longestH < u.totalH ? `, at a stretch ${h(60 * u.longestH)}` : ''}`,
    rule: 'day-hours',
    source: SOURCE,
  };
};
