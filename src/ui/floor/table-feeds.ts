import { takerOf } from '../../editor/connect.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type Address, parseAddress, printAddress } from '../../plan/address.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { plugByBridge } from '../../plan/edits/adapters.ts';
import { setOnPacks } from '../../plan/edits/day.ts';
import { setDimmerPatch } from '../../plan/edits/dimmer-patch.ts';
import { outletsFor } from '../../plan/edits/outlets-for.ts';
import { clearPatch, setPatch } from '../../plan/edits/patch.ts';
import { unplug } from '../../plan/edits/plug.ts';
import { portName, recordName } from '../../plan/names.ts';
import { kindOf, type Plan, recordOf } from '../../plan/plan.ts';
import { feedOf, inletsOf, pluggedInto } from '../../plan/ports.ts';
import type { AnyRecord } from '../../plan/records/index.ts';
import type { Column, Making } from './table-types.ts';

/** The columns that say what feeds a thing and where it listens, written as people write them. */

const PACKS = /^(own )?(cells?|packs?|batter(y|ies))$/i;

/** `k1 way 4`, `K1·4`, `K1 4` and `K1-4` are one name. */
const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/\bway\b/g, ' ')
    .replace(/[\s·.,/-]+/g, ' ')
    .trim();

const feedEdit = (plan: Plan, r: AnyRecord, text: string, made: Making): Result<ChangeSet> => {
  const unit = r.type === 'fixture' ? r : undefined;
  const kind = unit && kindOf(plan, unit.kindId, 'fixture');
  if (PACKS.test(text.trim()))
    return unit && (kind?.ownCellsWh !== undefined || kind?.packIn !== undefined)
      ? ok(setOnPacks(plan, [r.id], true))
      : fail({ what: `${recordName(plan, r)} runs on no packs.` });
  const recordId = takerOf(plan, r.id);
  const inlet = inletsOf(plan, recordId)[0];
  if (!inlet) return fail({ what: `${recordName(plan, r)} takes no power.` });
  const to = { recordId, portId: inlet.id };
  const wanted = plain(text);
  if (wanted === '') return ok(unplug(plan, to));
  const now = feedOf(plan, to);
  if (now && plain(portName(plan, now.from)) === wanted) return ok({ added: [], updated: [], removed: [] });
  const named = outletsFor(plan, to, made.cables, made.adapters).filter(
    (o) => plain(portName(plan, o.ref)) === wanted,
  );
  if (named.length === 0)
    return fail({
      what: `No outlet that fits is called “${text.trim()}” on this floor.`,
      todo: 'Write it like W1 or K1 way 4, cells for packs, or nothing to unplug.',
    });
  // A wall outlet has room for several plugs; a port on gear takes one.
  const free = named.find(
    (o) => recordOf(plan, 'outlet', o.ref.recordId) !== undefined || pluggedInto(plan, o.ref).length === 0,
  );
  if (!free) {
    const by = named.flatMap((o) => pluggedInto(plan, o.ref))[0];
    return fail({
      what: `${text.trim()} is taken${by ? ` by ${recordName(plan, by.to.recordId)}` : ''}.`,
      todo: 'Unplug that first, or write another.',
    });
  }
  return ok(plugByBridge(plan, free.ref, to, free.bridge, made.newId));
};

/** Universe and first address of a unit or a dimmer. */
const addressOf = (plan: Plan, r: AnyRecord): Address | undefined => {
  const patch = r.type === 'fixture' || r.type === 'box' ? r.patch : undefined;
  const universe = patch && recordOf(plan, 'universe', patch.universeId)?.number;
  return patch && universe !== undefined ? { universe, address: patch.address } : undefined;
};

/** Universe and first address; nothing takes them away. */
export const ADDRESS: Column = {
  name: 'Address',
  for: ['fixture', 'box'],
  text: (r, { plan }) => {
    const at = addressOf(plan, r);
    return at ? printAddress(at) : '';
  },
  edit: (plan, r, text) => {
    const at = text.trim() === '' ? ok(undefined) : parseAddress(text, addressOf(plan, r)?.universe);
    if (!at.ok) return at;
    if (r.type === 'box') return setDimmerPatch(plan, r.id, at.value);
    return at.value ? setPatch(plan, r.id, at.value) : ok(clearPatch(plan, [r.id]));
  },
};

/** The outlet something is plugged into; nothing unplugs it. */
export const FED_FROM: Column = {
  name: 'Fed from',
  for: ['fixture', 'box', 'charger', 'device'],
  text: (r, { plan, feed, ballast }) => {
    if (r.type === 'fixture' && r.onPacks) return 'cells';
    const cable = feed.get(ballast.get(r.id) ?? r.id);
    return cable ? portName(plan, cable.from) : '';
  },
  edit: (plan, r, text, _setup, made) => feedEdit(plan, r, text, made),
};
