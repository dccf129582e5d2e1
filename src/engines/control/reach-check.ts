import { deviceKind } from '../../derive/data-lines.ts';
import { dataNet, type NetShape, portUniverses, reachOf } from '../../derive/data-net.ts';
import { always, type EngineFinding } from '../../derive/findings.ts';
import { recordLabel } from '../../derive/labels.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import { dataPortsOf } from '../../plan/ports.ts';
import type { Device, Fixture } from '../../plan/records/index.ts';
import { rememberedEach } from '../../plan/remembered.ts';
import { universeWords } from './line-words.ts';

/** Whether control gear is drawn at all: without any, how data gets about is not judged. */
export const hasLines = (plan: Plan): boolean =>
  recordsOf(plan, 'line').length > 0 || recordsOf(plan, 'device').length > 0;

/** Patched units that nothing brings data to, and ports that are set but get none. */
export const reachFindings = (plan: Plan): readonly EngineFinding[] => {
  if (!hasLines(plan)) return [];
  const { shape } = dataNet(plan);
  return [
    ...unreached(plan, recordsOf(plan, 'fixture'), shape).flat(),
    ...ofDevice(plan, recordsOf(plan, 'device'), shape).flat(),
  ];
};

const sends = (plan: Plan, universeId: Id): boolean =>
  recordsOf(plan, 'device').some(
    (d) =>
      ['transmitter', 'repeater'].includes(deviceKind(plan, d.id)?.family ?? '') &&
      portUniverses(d).includes(universeId),
  );

const NONE: readonly EngineFinding[] = [];

const unreached = rememberedEach((plan, f: Fixture, net: NetShape): readonly EngineFinding[] => {
  if (!f.patch) return NONE;
  const reach = reachOf(plan, f.id, net);
  if (reach.radioId !== undefined) return NONE;
  if (reach.lineIds.length > 0) {
    // A parted unit needs each of its universes; one on none of its line's is told of at the line.
    const own = new Set([f.patch.universeId, ...(f.patch.spans ?? []).map((s) => s.universeId)]);
    const missing = [...own].filter((u) => !reach.universes.has(u));
    if (reach.all || missing.length === 0 || missing.length === own.size) return NONE;
    return [
      always('control-no-data', 'warn', f.id, [f.id], {
        label: recordLabel(plan, f),
        universe: universeWords(plan, missing),
        link: 'parted',
      }),
    ];
  }
  if (f.link === 'radio' && sends(plan, f.patch.universeId)) return NONE;
  return [
    always('control-no-data', 'warn', f.id, [f.id], {
      label: recordLabel(plan, f),
      universe: universeWords(plan, [f.patch.universeId]),
      link: f.link,
    }),
  ];
});

const ofDevice = rememberedEach((plan, d: Device, net: NetShape): readonly EngineFinding[] => [
  ...portFindings(plan, d, net),
  ...deadPorts(plan, d, net),
]);

/** One universe on two ports of a device, more on a port than it carries, more than the device makes. */
const portFindings = (plan: Plan, d: Device, net: NetShape): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  const label = recordLabel(plan, d);
  const { dataIn, dataOut } = dataPortsOf(plan, d.id);
  const words = (id: string): string => [...dataOut, ...dataIn].find((p) => p.id === id)?.label ?? id;
  const kind = deviceKind(plan, d.id);
  const first = new Map<Id, string>();
  for (const p of d.ports) {
    const port = [...dataOut, ...dataIn].find((x) => x.id === p.portId);
    if (!port) {
      out.push(
        always('control-port-missing', 'stop', `${d.id}/${p.portId}`, [d.id], { label, port: p.portId }),
      );
      continue;
    }
    const before = first.get(p.universeId);
    if (before === undefined) first.set(p.universeId, p.portId);
    else
      out.push(
        always(
          'control-port-twice',
          kind?.family === 'transmitter' || before === p.portId ? 'warn' : 'note',
          `${d.id}/${p.portId}/${p.universeId}`,
          [d.id],
          {
            label,
            one: words(before),
            two: words(p.portId),
            universe: universeWords(plan, [p.universeId]),
            radio: kind?.family === 'transmitter' ? 1 : 0,
          },
        ),
      );
  }
  for (const port of [...dataOut, ...dataIn]) {
    const set = new Set(portUniverses(d, port.id));
    // A line from the port says the same of it.
    const told = (net.outOf.get(d.id) ?? []).some((l) => l.from.portId === port.id);
    if (set.size > port.universes && !told)
      out.push(
        always('control-port-full', 'stop', `${d.id}/${port.id}`, [d.id], {
          at: `${label}, ${port.label ?? port.id}`,
          universes: universeWords(plan, set),
          count: set.size,
          most: port.universes,
        }),
      );
  }
  const made = new Set(portUniverses(d));
  const most = kind && typeof kind.universes === 'number' ? kind.universes : made.size;
  if (made.size > most)
    out.push(
      always('control-device-full', 'stop', d.id, [d.id], {
        label,
        universes: universeWords(plan, made),
        count: made.size,
        most,
      }),
    );
  return out;
};

/** A transmitter's port or a node that is set to send what no line brings it. */
const deadPorts = (plan: Plan, d: Device, net: NetShape): readonly EngineFinding[] => {
  const kind = deviceKind(plan, d.id);
  const set = new Set(portUniverses(d));
  const needs =
    (kind?.family === 'transmitter' && kind.dataIn.length > 0 && set.size > 0) ||
    (kind?.family === 'node' && kind.what !== 'desk' && kind.what !== 'switch' && set.size > 0);
  if (!needs) return [];
  const lines = net.into.get(d.id) ?? [];
  const all = lines.some((l) => net.carried.get(l.id)?.all && !net.carried.get(l.id)?.dead);
  const brought = new Set(
    lines.flatMap((l) => (net.carried.get(l.id)?.dead ? [] : [...(net.carried.get(l.id)?.universes ?? [])])),
  );
  const dry = all ? [] : [...set].filter((u) => recordOf(plan, 'universe', u) && !brought.has(u));
  if (dry.length === 0) return [];
  return [
    always('control-port-dead', 'warn', d.id, [d.id], {
      label: recordLabel(plan, d),
      universes: universeWords(plan, dry),
      lines: lines.length,
      brings: universeWords(plan, brought),
    }),
  ];
};
