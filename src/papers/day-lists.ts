import { dayNumbers } from '../derive/schedule.ts';
import { formatClock } from '../kernel/units.ts';
import { recordOf, recordsOf } from '../plan/plan.ts';
import { daySummary } from '../report/day.ts';
import type { ListTable } from './lists.ts';
import { rounded } from './power-lists.ts';
import type { SetInfo } from './sheet-info.ts';

export const blockTable = (info: SetInfo): ListTable => ({
  name: 'day',
  head: ['day', 'start', 'end', 'what', 'setup', 'crew', 'label'],
  rows: [...recordsOf(info.plan, 'block')]
    .sort((a, b) => a.day - b.day || a.startMin - b.startMin || (a.id < b.id ? -1 : 1))
    .map((b) => [
      b.day,
      formatClock(b.startMin),
      formatClock(b.endMin),
      b.what,
      (b.setupId !== undefined && recordOf(info.plan, 'setup', b.setupId)?.name) || '',
      b.crew,
      b.label,
    ]),
});

/** What each source gives on each day, and what a set burns. */
export const energyTable = (info: SetInfo): ListTable => ({
  name: 'energy',
  head: ['day', 'source', 'peak W', 'average W', 'energy kWh', 'fuel L', 'filled up at'],
  rows: dayNumbers(info.plan).flatMap((day) =>
    daySummary(info.plan, day).sources.map((s) => [
      day,
      s.label,
      rounded(s.peakW, 0),
      rounded(s.averageW, 0),
      rounded(s.energyWh / 1000, 2),
      rounded(s.fuelL ?? Number.NaN, 1),
      (s.refuelMin ?? []).map(formatClock).join(' '),
    ]),
  ),
});

/** Packs at hand and needed, day by day. */
export const packTable = (info: SetInfo): ListTable => ({
  name: 'packs',
  head: ['day', 'packs', 'at hand', 'kept back', 'needed', 'bays', 'changes', 'first short', 'at'],
  rows: dayNumbers(info.plan).flatMap((day) =>
    daySummary(info.plan, day).pools.map((p) => [
      day,
      p.exchange ? `${p.name} (spare units)` : p.name,
      p.atHand ?? Number.NaN,
      p.reserve,
      p.need,
      p.exchange ? Number.NaN : p.bays,
      p.swaps,
      p.short?.label ?? '',
      p.short ? formatClock(p.short.darkMin ?? p.short.dueMin) : '',
    ]),
  ),
});

export const runtimeTable = (info: SetInfo): ListTable => ({
  name: 'runtimes',
  head: ['day', 'unit', 'kind', 'runs on', 'setup', 'level %', 'worst min', 'best min', 'not computed'],
  rows: dayNumbers(info.plan).flatMap((day) =>
    daySummary(info.plan, day).lanes.flatMap((l) =>
      l.problem || l.runtimes.length === 0
        ? [
            [
              ...[day, l.label, l.kindName, l.on, ''],
              ...[Number.NaN, Number.NaN, Number.NaN, l.problem ?? 'off all day'],
            ],
          ]
        : l.runtimes.map((r) => [
            day,
            l.label,
            l.kindName,
            l.on,
            r.setupName,
            rounded(r.levelPct, 1),
            rounded(r.minutes.low, 1),
            rounded(r.minutes.high, 1),
            '',
          ]),
    ),
  ),
});

export const swapTable = (info: SetInfo): ListTable => ({
  name: 'swaps',
  head: ['day', 'time', 'unit', 'off', 'left in it %', 'on', 'dark min'],
  rows: dayNumbers(info.plan).flatMap((day) =>
    daySummary(info.plan, day)
      .lanes.flatMap((l) => l.swaps.map((s) => ({ l, s })))
      .sort((a, b) => a.s.atMin - b.s.atMin)
      .map(({ l, s }) => [
        day,
        formatClock(s.atMin),
        l.label,
        s.out,
        rounded(s.outPct, 0),
        s.into,
        s.darkMin,
      ]),
  ),
});

/** What happens to control gear when its plug is pulled. */
export const backUpTable = (info: SetInfo): ListTable => ({
  name: 'backup',
  head: ['day', 'plugged in', 'on its cell min', 'when its plug is pulled'],
  rows: dayNumbers(info.plan).flatMap((day) =>
    daySummary(info.plan, day).backUps.map((b) => [day, b.label, rounded(b.minutes, 0), b.text]),
  ),
});
