import { dataNet } from '../derive/data-net.ts';
import { recordLabel } from '../derive/labels.ts';
import { batteryUnits, devicePacks, runtimeAt, unitOnCells } from '../engines/battery/index.ts';
import { backupOf, computeRadio, devicePower, servedBy } from '../engines/radio/index.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { formatClock } from '../kernel/units.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { BackUpRow, DaySummary } from './day-types.ts';

export type { BackUpRow } from './day-types.ts';

/** Fixtures that get their data through a device: over its lines, over the air, and over what hears it in turn. */
export const fedBy = (plan: Plan, deviceId: Id): readonly Id[] => {
  const net = dataNet(plan);
  const served = servedBy(computeRadio(plan));
  const seen = new Set<Id>([deviceId]);
  const units = new Set<Id>();
  const queue = [deviceId];
  for (let id = queue.pop(); id !== undefined; id = queue.pop()) {
    const next = [
      ...(net.outOf.get(id) ?? []).flatMap((l) => l.stops),
      ...(served.get(id) ?? []).map((l) => l.id),
    ];
    const plugged = recordOf(plan, 'device', id)?.fixtureId;
    if (plugged !== undefined) next.push(plugged);
    for (const to of next) {
      if (seen.has(to)) continue;
      seen.add(to);
      queue.push(to);
      if (recordOf(plan, 'fixture', to)) units.add(to);
    }
  }
  return [...units];
};

const many = (n: number): string => `${n} ${n === 1 ? 'unit' : 'units'}`;

/** Two in the afternoon where the day is then at work, else the middle of it. */
const exampleMin = (d: Pick<DaySummary, 'startMin' | 'endMin'>): number => {
  const usual = 840;
  return d.endMin <= d.startMin || (d.startMin <= usual && d.endMin > usual)
    ? usual
    : Math.round((d.startMin + d.endMin) / 120) * 60;
};

/** Control gear, and units with cells of their own, that are plugged in: what a pulled plug does to each, the most units first. */
export const backUps = (plan: Plan, day: Pick<DaySummary, 'startMin' | 'endMin'>): readonly BackUpRow[] => {
  const atMin = exampleMin(day);
  const row = (
    id: Id,
    label: string,
    minutes: number,
    measured: boolean,
    feeds: readonly Id[],
  ): BackUpRow => {
    const diesMin = atMin + minutes;
    const end =
      minutes > 0
        ? `If its plug is kicked out at ${formatClock(atMin)} it dies at ${formatClock(Math.floor(diesMin))}`
        : 'If its plug is kicked out it dies at once';
    return {
      id,
      label,
      minutes,
      measured,
      feeds,
      atMin,
      diesMin,
      text: `${end}${feeds.length > 0 ? `; it feeds ${many(feeds.length)}` : ''}.`,
    };
  };
  const devices = recordsOf(plan, 'device').flatMap((d): BackUpRow[] => {
    const on = d.backupMin === undefined ? devicePacks(plan, d) : undefined;
    const b = on ? { minutes: on.minutes.plan, measured: false } : backupOf(plan, d);
    if (!b && !devicePower(plan, d).takesMains) return [];
    const feeds = fedBy(plan, d.id);
    const picture = kindOf(plan, d.kindId, 'video') !== undefined;
    return b || feeds.length > 0 || picture
      ? [row(d.id, recordLabel(plan, d), b?.minutes ?? 0, b?.measured ?? false, feeds)]
      : [];
  });
  const own = new Set(batteryUnits(plan).map((u) => u.fixture.id));
  const fixtures = recordsOf(plan, 'fixture').flatMap((f): BackUpRow[] => {
    const u = own.has(f.id) ? undefined : unitOnCells(plan, f);
    const minutes = u && runtimeAt(u, 100).minutes.plan;
    return u && minutes !== undefined && Number.isFinite(minutes)
      ? [row(f.id, u.label, minutes, false, [])]
      : [];
  });
  return [...devices, ...fixtures].sort(
    (a, b) => b.feeds.length - a.feeds.length || compareNatural(a.label, b.label),
  );
};
