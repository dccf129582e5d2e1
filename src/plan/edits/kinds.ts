import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { mates } from '../connectors.ts';
import type { Kind } from '../kinds/kinds.ts';
import { portName, recordName } from '../names.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan.ts';
import type { AnyRecord, RecordOf } from '../records/index.ts';
import { leadsWithoutOutlet, withOtherKind } from './kind-refs.ts';
import { ensureKind } from './shared.ts';

/** What giving records another kind does, to be looked at before it is applied. */
export interface KindReplacement {
  readonly changes: ChangeSet;
  /** Records that get the new kind. */
  readonly records: readonly Id[];
  /** What no longer fits and was left as it is, in words. */
  readonly unfit: readonly string[];
}

interface Ports {
  readonly id: string;
  readonly connector: string;
}

const portsOf = (kind: Kind, side: 'inlets' | 'outlets'): readonly Ports[] => {
  switch (kind.family) {
    case 'fixture':
    case 'ballast':
    case 'box':
    case 'dimmer':
    case 'adapter':
    case 'converter':
    case 'charger':
    case 'transmitter':
    case 'receiver':
    case 'repeater':
    case 'node':
    case 'dataSplitter':
    case 'video':
      return kind[side];
    case 'source':
      return side === 'outlets' ? kind.outlets : (kind.inlets ?? []);
    default:
      return [];
  }
};

/** The port of the new kind that takes over: the one with the same id, else the one at the same place in the list. */
const heir = (from: Kind, to: Kind, side: 'inlets' | 'outlets', id: string): Ports | undefined => {
  const now = portsOf(to, side);
  const same = now.find((p) => p.id === id);
  if (same) return same;
  const place = portsOf(from, side).findIndex((p) => p.id === id);
  const other = place < 0 ? undefined : now[place];
  // A port that keeps its own old id has its own cable.
  return other && portsOf(from, side).some((p) => p.id === other.id) ? undefined : other;
};

/**
 * Gives every record of one kind another kind of the same family. Cables stay on ports with the same id, else move to
 * the port at the same place; a patched mode stays by id, else by name. Packs, converters, accessories and cloths that
 * records name beside their own kind follow. What no longer fits is left as written and listed. The old kind leaves the plan. Gives a problem where the old kind is not in the plan or the families differ.
 */
export const replaceKind = (plan: Plan, fromKindId: Id, kind: Kind): Result<KindReplacement> => {
  const from = recordOf(plan, 'kind', fromKindId);
  if (!from)
    return fail({
      what: 'The kind to replace is not in the plan.',
      todo: 'Choose one of the kinds the plan uses.',
    });
  if (from.family !== kind.family)
    return fail({
      what: `“${from.name}” (${from.family}) cannot become “${kind.name}” (${kind.family}).`,
      todo: 'Choose a kind of the same family.',
    });
  const draft = new Draft(plan);
  if (fromKindId === kind.id) return ok({ changes: draft.changes(), records: [], unfit: [] });
  ensureKind(draft, kind);
  const records: Id[] = [];
  const unfit: string[] = [];
  for (const r of plan.records.values()) {
    const next = withOtherKind(r, fromKindId, kind.id);
    const own = 'kindId' in r && r.kindId === fromKindId;
    if (!own && next === r) continue;
    records.push(r.id);
    draft.put(own ? repointed(plan, next, from, kind, unfit) : next);
  }
  moveCables(plan, draft, new Set(records), from, kind, unfit);
  draft.remove(fromKindId);
  return ok({ changes: draft.changes(), records, unfit });
};

/**
 * Gives chosen records another kind of their family, in place: they keep spot, aim, stand, plug and address where these
 * fit; what does not is left as written and listed. Locked records and those of other families stay as they are.
 */
export const replaceChosen = (plan: Plan, ids: ReadonlySet<Id>, kind: Kind): Result<KindReplacement> => {
  const byKind = new Map<Id, AnyRecord[]>();
  for (const id of ids) {
    const r = plan.records.get(id);
    if (!r || r.locked || r.type !== kind.family || !('kindId' in r) || r.kindId === kind.id) continue;
    const list = byKind.get(r.kindId);
    if (list) list.push(r);
    else byKind.set(r.kindId, [r]);
  }
  if (byKind.size === 0)
    return fail({
      what: `Nothing chosen can become “${kind.name}”.`,
      todo: 'Choose things of the same family that are not locked and are not of that kind already.',
    });
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const records: Id[] = [];
  const unfit: string[] = [];
  for (const [fromId, list] of byKind) {
    const from = recordOf(plan, 'kind', fromId);
    if (!from) continue;
    for (const r of list) {
      records.push(r.id);
      draft.put(repointed(plan, r, from, kind, unfit));
    }
    moveCables(plan, draft, new Set(list.map((r) => r.id)), from, kind, unfit);
  }
  return ok({ changes: draft.changes(), records, unfit });
};

/** A record with the new kind, and what of its own does not go with it. */
const repointed = (plan: Plan, r: AnyRecord, from: Kind, kind: Kind, unfit: string[]): AnyRecord => {
  const name = recordName(plan, r);
  const next = { ...r, kindId: kind.id } as AnyRecord;
  const lost = (what: string): void => {
    unfit.push(`${name}: ${what}`);
  };
  if (next.type === 'fixture' && kind.family === 'fixture' && from.family === 'fixture') {
    if (kind.needsBallast !== from.needsBallast)
      lost(kind.needsBallast ? 'the new kind needs a ballast' : 'the new kind needs no ballast');
    for (const b of recordsOf(plan, 'ballast')) {
      const heads = b.fixtureId === next.id ? kindOf(plan, b.kindId, 'ballast')?.heads : undefined;
      if (heads && kind.needsBallast && !heads.includes(kind.slug))
        lost('its ballast is not one for the new kind');
    }
    const { patch } = next;
    if (patch && !kind.modes.some((m) => m.id === patch.modeId)) {
      const old = from.modes.find((m) => m.id === patch.modeId);
      const same = kind.modes.find((m) => m.name === old?.name);
      if (same) return { ...next, patch: { ...patch, modeId: same.id } };
      lost(`its mode “${old?.name ?? patch.modeId}” is not among the new modes`);
    } else if (patch) {
      const before = from.modes.find((m) => m.id === patch.modeId)?.slots;
      const after = kind.modes.find((m) => m.id === patch.modeId)?.slots;
      if (before !== undefined && before !== after)
        lost(`its mode takes ${after} slots, not ${before}: look at the addresses after it`);
    }
  }
  if (next.type === 'stand' && kind.family === 'stand') {
    if (next.heightMm < kind.heightMinMm || next.heightMm > kind.heightMaxMm)
      lost(`it stands at ${Math.round(next.heightMm)} mm, which the new stand does not reach`);
  }
  if (next.type === 'ballast' && kind.family === 'ballast') {
    const head = recordOf(plan, 'fixture', next.fixtureId);
    const slug = head && kindOf(plan, head.kindId, 'fixture')?.slug;
    if (slug !== undefined && !kind.heads.includes(slug)) lost('the new ballast does not run its head');
  }
  if (next.type === 'box' && kind.family === 'box')
    for (const w of next.ways ?? [])
      if (!kind.ways.some((k) => k.id === w.id)) lost(`its change to way ${w.label} has no way to go to`);
  if (next.type === 'pack') unfit.push(...leadsWithoutOutlet(plan, next.id, kind));
  if (next.type === 'source' && kind.family === 'source') wallOutlets(plan, next, kind.ways, unfit);
  if (next.type === 'cable' && kind.family === 'cable') {
    const odd = (next.piecesMm ?? []).filter((mm) => !kind.stockLengthsMm.includes(mm));
    if (odd.length > 0)
      lost(`pieces of ${odd.map((mm) => `${mm} mm`).join(', ')} are no stock lengths of the new cable`);
    const start = connectorAt(plan, next.from.recordId, next.from.portId, 'outlets');
    const end = connectorAt(plan, next.to.recordId, next.to.portId, 'inlets');
    if (start !== undefined && !mates(start, kind.plug)) lost('its plug does not fit the outlet');
    if (end !== undefined && !mates(kind.socket, end)) lost('its socket does not fit the inlet');
  }
  return next;
};

/** Wall outlets on circuits that the new source does not have. */
const wallOutlets = (
  plan: Plan,
  source: RecordOf<'source'>,
  ways: readonly { readonly id: string }[],
  unfit: string[],
): void => {
  if (source.ways) return;
  for (const o of recordsOf(plan, 'outlet'))
    if (o.sourceId === source.id && !ways.some((w) => w.id === o.wayId))
      unfit.push(`${recordName(plan, o)}: its circuit is not on the new source`);
};

const connectorAt = (
  plan: Plan,
  recordId: Id,
  portId: string,
  side: 'inlets' | 'outlets',
): string | undefined => {
  const r = plan.records.get(recordId);
  if (r?.type === 'outlet') return r.connector;
  const kind = r && 'kindId' in r && typeof r.kindId === 'string' ? kindOf(plan, r.kindId) : undefined;
  return kind && portsOf(kind, side).find((p) => p.id === portId)?.connector;
};

/** Leads the cables at changed records to the ports that take over. */
const moveCables = (
  plan: Plan,
  draft: Draft,
  changed: ReadonlySet<Id>,
  from: Kind,
  kind: Kind,
  unfit: string[],
): void => {
  for (const cable of recordsOf(plan, 'cable')) {
    let next = cable;
    const cableKind = kindOf(plan, cable.kindId, 'cable');
    for (const [end, side] of [
      ['from', 'outlets'],
      ['to', 'inlets'],
    ] as const) {
      // A cable at a port that was never there is a fault of its own, told elsewhere.
      const { recordId, portId } = cable[end];
      if (!changed.has(recordId) || !portsOf(from, side).some((p) => p.id === portId)) continue;
      const port = heir(from, kind, side, cable[end].portId);
      const where = portName(plan, cable[end]);
      if (!port)
        unfit.push(
          `${recordName(plan, cable)}: ${where} has no such ${end === 'from' ? 'outlet' : 'inlet'} any more`,
        );
      else {
        const fits =
          !cableKind ||
          (end === 'from' ? mates(port.connector, cableKind.plug) : mates(cableKind.socket, port.connector));
        if (!fits)
          unfit.push(
            `${recordName(plan, cable)}: its ${end === 'from' ? 'plug' : 'socket'} does not fit ${where} any more`,
          );
        if (port.id !== cable[end].portId) next = { ...next, [end]: { ...next[end], portId: port.id } };
      }
    }
    if (next !== cable) draft.put(next);
  }
};
