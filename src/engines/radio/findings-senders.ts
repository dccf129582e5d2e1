import { always, type EngineFinding } from '../../derive/findings.ts';
import { limitOf } from '../../derive/limits.ts';
import { compareNatural, type Id } from '../../kernel/ids.ts';
import { recordOf } from '../../plan/plan.ts';
import { radioKey } from './keys.ts';
import type { RadioResult } from './links.ts';
import { backupOf, devicePower, fixtureWay } from './supply.ts';
import type { Listener, Sender } from './types.ts';

/** Names in a list for people: the first few and how many more. */
export const names = (list: readonly string[], most = 6): string => {
  if (list.length <= most) return [...list].sort(compareNatural).join(', ');
  // The first few of many, without putting all of them in order.
  const first: string[] = [];
  for (const name of list) {
    const last = first.at(-1);
    if (first.length === most && last !== undefined && compareNatural(name, last) >= 0) continue;
    const at = first.findIndex((n) => compareNatural(name, n) < 0);
    first.splice(at < 0 ? first.length : at, 0, name);
    if (first.length > most) first.pop();
  }
  return `${first.join(', ')} and ${list.length - most} more`;
};

/** Units that listen to a sender, by its id; those of a receiver's line not among them. */
export const servedBy = (r: RadioResult): ReadonlyMap<Id, readonly Listener[]> => {
  const out = new Map<Id, Listener[]>();
  for (const link of r.links.values()) {
    const l = r.model.listeners.get(link.listenerId);
    if (!l) continue;
    const list = out.get(link.senderId);
    if (list) list.push(l);
    else out.set(link.senderId, [l]);
  }
  return out;
};

/** Power of one sender: on the circuit of what it controls, without a cell, with a short one. */
const powerFindings = (
  r: RadioResult,
  s: Sender,
  served: readonly Listener[],
  out: EngineFinding[],
): void => {
  const { plan } = r.model;
  const d = recordOf(plan, 'device', s.id);
  if (!d) return;
  const power = devicePower(plan, d);
  const backup = backupOf(plan, d);
  const same =
    power.way === undefined
      ? []
      : served.filter((l) => l.what === 'fixture' && fixtureWay(plan, l.id)?.key === power.way?.key);
  if (same.length > 0)
    out.push(
      always('radio-same-circuit', 'warn', s.id, [s.id, ...same.map((l) => l.id)], {
        label: s.label,
        way: power.way?.label ?? '',
        units: names(same.map((l) => l.label)),
        backup: backup ? 1 : 0,
        minutes: backup?.minutes ?? 0,
      }),
    );
  const common = { label: s.label, count: served.length, units: names(served.map((l) => l.label)) };
  if (!backup) {
    if (served.length > 0) out.push(always('radio-no-backup', 'note', s.id, [s.id], common));
  } else if (backup.minutes < limitOf(plan, 'radio-backup-least').value)
    out.push({
      ...always('radio-backup', 'note', s.id, [s.id], { ...common, minutes: backup.minutes }),
      figureKey: radioKey('radioBackupMin', s.id),
    });
};

/** What is wrong with transmitters and repeaters themselves. */
export const senderFindings = (r: RadioResult, out: EngineFinding[]): void => {
  const { plan, senders } = r.model;
  const served = servedBy(r);
  const headMm = limitOf(plan, 'radio-head-height').value;
  for (const s of senders.values()) {
    const mine = served.get(s.id) ?? [];
    const label = s.label;
    if ((r.carried.get(s.id) ?? []).length === 0 && s.role === 'transmitter')
      out.push(always('radio-empty', 'warn', s.id, [s.id], { label }));
    if (s.linksMax !== undefined && mine.length > s.linksMax)
      out.push(always('radio-links', 'warn', s.id, [s.id], { label, count: mine.length, most: s.linksMax }));
    if (s.heightM * 1000 < headMm)
      out.push(always('radio-low', 'note', s.id, [s.id], { label, heightMm: s.heightM * 1000, headMm }));
    if (s.role === 'repeater') {
      if (s.listensToId === undefined || !senders.has(s.listensToId))
        out.push(always('radio-repeater', 'warn', s.id, [s.id], { label }));
    }
    powerFindings(r, s, mine, out);
  }
  for (const ring of r.rings)
    out.push(
      always('radio-ring', 'stop', [...ring].sort()[0] ?? '', ring, {
        labels: ring.map((id) => senders.get(id)?.label ?? id).join(', '),
      }),
    );
  const list = [...senders.values()];
  const apartM = limitOf(plan, 'radio-apart').value / 1000;
  list.forEach((a, i) => {
    for (const b of list.slice(i + 1)) {
      const distanceM = Math.hypot(a.spot.x - b.spot.x, a.spot.y - b.spot.y, a.spot.z - b.spot.z);
      const oneBand = a.band.fromMhz < b.band.toMhz && b.band.fromMhz < a.band.toMhz;
      if (oneBand && distanceM < apartM)
        out.push(
          always('radio-near', 'warn', `${a.id}/${b.id}`, [a.id, b.id], {
            label: a.label,
            other: b.label,
            distanceMm: distanceM * 1000,
            apartMm: apartM * 1000,
          }),
        );
    }
  });
};
