import { deviceKind, isWire, startPort } from '../../derive/data-lines.ts';
import { type Carried, dataNet, type NetShape, startPorts } from '../../derive/data-net.ts';
import { always, type EngineFinding } from '../../derive/findings.ts';
import { recordLabel } from '../../derive/labels.ts';
import type { Id } from '../../kernel/ids.ts';
import { dimmerSlots } from '../../plan/edits/dimmer-patch.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import { dataPortsOf } from '../../plan/ports.ts';
import type { AnyRecord, DataLine, Device } from '../../plan/records/index.ts';
import { rememberedEach } from '../../plan/remembered.ts';
import { placesOf } from './assign/outcome.ts';
import { segmentFindings } from './line-segments.ts';
import { lineLabel, universeWords } from './line-words.ts';

/** Findings of lines by themselves: what they start from, what they carry, whom they reach, and their segments. */
export const lineFindings = (plan: Plan): readonly EngineFinding[] => {
  const { shape, segments } = dataNet(plan);
  const own = findingsOf(plan, shape.lines, shape);
  return [
    ...own.flatMap((f) => f.ends),
    ...own.flatMap((f) => f.ways),
    ...segments.flatMap((s) => segmentFindings(plan, s)),
  ];
};

/** Findings of each line, remembered while nothing they look at changes. */
const findingsOf = rememberedEach((plan, l: DataLine, net: NetShape) => {
  const c = net.carried.get(l.id);
  const start = net.outOf.get(l.from.recordId)?.find((o) => o.from.portId === l.from.portId);
  const before = start === l ? undefined : start;
  return {
    ends: [...startFindings(plan, l, c, before), ...(c ? stopFindings(plan, l, c) : [])],
    ways: [...branchFindings(plan, l, net), ...remoteFindings(plan, l, net)],
  };
});

const startFindings = (
  plan: Plan,
  l: DataLine,
  c: Carried | undefined,
  first: DataLine | undefined,
): readonly EngineFinding[] => {
  const label = lineLabel(plan, l);
  const from = recordLabel(plan, plan.records.get(l.from.recordId));
  const ids = [l.id, l.from.recordId];
  if (!plan.records.has(l.from.recordId)) return [];
  const port = startPort(plan, l);
  if (!port || !startPorts(plan, l.from.recordId).some((p) => p.id === port.id))
    return [
      always('control-line-port', 'stop', l.id, ids, { label, from, what: 'start', to: '', needs: '' }),
    ];
  const out: EngineFinding[] = [];
  if (first)
    out.push(
      always('control-line-split', 'stop', l.id, [l.id, first.id, l.from.recordId], {
        label,
        other: lineLabel(plan, first),
        at: `${from}, ${port.label ?? port.id}`,
        how: 'port',
      }),
    );
  if (c?.ring) out.push(always('control-line-ring', 'stop', l.id, ids, { label, from }));
  else if (c?.unset)
    out.push(always('control-line-unset', 'warn', l.id, ids, { label, from, port: port.label ?? port.id }));
  else if (c?.dead) out.push(always('control-line-dead', 'warn', l.id, ids, { label, from }));
  if (c && c.universes.size > port.universes)
    out.push(
      always('control-port-full', 'stop', `${l.from.recordId}/${l.from.portId}`, ids, {
        at: `${from}, ${port.label ?? port.id}`,
        universes: universeWords(plan, c.universes),
        count: c.universes.size,
        most: port.universes,
      }),
    );
  return out;
};

/** Each stop takes data of this sort, is patched, and is on a universe the line carries. */
const stopFindings = (plan: Plan, l: DataLine, c: Carried): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  const label = lineLabel(plan, l);
  const connector = startPort(plan, l)?.connector ?? 'xlr-5';
  for (const id of new Set(l.stops)) {
    const r = plan.records.get(id);
    if (!r) continue;
    const to = recordLabel(plan, r);
    const { dataIn } = dataPortsOf(plan, id);
    const fits = dataIn.some((p) => (isWire(connector) ? isWire(p.connector) : p.connector === connector));
    if (!fits) {
      out.push(
        always('control-line-port', 'stop', `${l.id}/${id}`, [l.id, id], {
          label,
          from: '',
          what: 'stop',
          to,
          needs: isWire(connector)
            ? 'five-pin or three-pin'
            : connector === 'ethernet'
              ? 'network'
              : connector,
        }),
      );
      continue;
    }
    const dimmer = r.type === 'box' && dimmerSlots(plan, r) > 0;
    if (r.type !== 'fixture' && !dimmer) continue;
    if (!r.patch) {
      out.push(always('control-line-unpatched', 'warn', `${l.id}/${id}`, [id, l.id], { label, to }));
      continue;
    }
    if (c.all || c.universes.size === 0) continue;
    const own = new Set([r.patch.universeId, ...patchSpans(r).map((s) => s.universeId)]);
    if (![...own].some((u) => c.universes.has(u)))
      out.push(
        always('control-line-universe', 'stop', `${l.id}/${id}`, [id, l.id], {
          label,
          to,
          own: universeWords(plan, own),
          carries: universeWords(plan, c.universes),
          address:
            r.type === 'fixture'
              ? placesOf(plan, r)
                  .map((p) => `U${p.universe} ${p.address}`)
                  .join(', ')
              : `${universeWords(plan, own)} ${r.patch.address}`,
        }),
      );
  }
  return out;
};

const patchSpans = (r: AnyRecord) => (r.type === 'fixture' ? (r.patch?.spans ?? []) : []);

/** Wire that branches without a splitter: a line that goes on from the middle of another, or two lines into one unit. */
const branchFindings = (plan: Plan, l: DataLine, net: NetShape): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  if (!isWire(startPort(plan, l)?.connector ?? 'xlr-5')) return out;
  const from = plan.records.get(l.from.recordId);
  if (from?.type === 'fixture')
    for (const o of net.into.get(from.id) ?? [])
      if (o.stops.at(-1) !== from.id)
        out.push(
          always('control-line-split', 'stop', `${l.id}+${o.id}`, [l.id, o.id, from.id], {
            label: lineLabel(plan, l),
            other: lineLabel(plan, o),
            at: recordLabel(plan, from),
            how: 'middle',
          }),
        );
  for (const id of new Set(l.stops)) {
    const twice = l.stops.filter((s) => s === id).length > 1;
    const other = (net.into.get(id) ?? []).find(
      (o) => o.id < l.id && isWire(startPort(plan, o)?.connector ?? 'xlr-5'),
    );
    const inputs = inputsOf(plan, id);
    const wires = (net.into.get(id) ?? []).filter((o) =>
      isWire(startPort(plan, o)?.connector ?? 'xlr-5'),
    ).length;
    if (twice || (other && wires > inputs))
      out.push(
        always('control-line-split', 'stop', `${l.id}/${id}`, [id, l.id, ...(other ? [other.id] : [])], {
          label: lineLabel(plan, l),
          other: other ? lineLabel(plan, other) : lineLabel(plan, l),
          at: recordLabel(plan, plan.records.get(id)),
          how: 'input',
        }),
      );
  }
  return out;
};

/** Wire inputs of a thing. Where its kind does not say, a unit parted over several universes has one for each. */
const inputsOf = (plan: Plan, id: Id): number => {
  const { dataIn, assumed } = dataPortsOf(plan, id);
  const inputs = dataIn.filter((p) => isWire(p.connector)).length;
  const patch = recordOf(plan, 'fixture', id)?.patch;
  if (!assumed || !patch) return inputs;
  const universes = new Set([patch.universeId, ...(patch.spans ?? []).map((s) => s.universeId)]);
  return Math.max(inputs, universes.size);
};

/** Everything active between a line that wants remote management and its desk or node passes it on. */
const remoteFindings = (plan: Plan, l: DataLine, net: NetShape): readonly EngineFinding[] => {
  if (l.remote !== true) return [];
  const out: EngineFinding[] = [];
  const seen = new Set<Id>();
  let at: Id | undefined = l.from.recordId;
  while (at !== undefined && !seen.has(at)) {
    seen.add(at);
    const kind = deviceKind(plan, at);
    if (kind && kind.rdm !== true && !(kind.family === 'node' && kind.what === 'switch'))
      out.push(
        always('control-line-remote', 'warn', `${l.id}/${at}`, [at, l.id], {
          label: lineLabel(plan, l),
          at: recordLabel(plan, plan.records.get(at)),
          kind: kind.name,
        }),
      );
    const device: Device | undefined = recordOf(plan, 'device', at);
    at = net.into.get(at)?.[0]?.from.recordId ?? device?.listensToId;
  }
  return out;
};
