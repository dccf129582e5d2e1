import type { EngineFinding } from '../../derive/findings.ts';
import { always } from '../../derive/findings.ts';
import { recordLabel } from '../../derive/labels.ts';
import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { universeProblem } from '../../plan/address.ts';
import { dimmerSlots } from '../../plan/edits/dimmer-patch.ts';
import { footprintOf, patchedMode } from '../../plan/footprint.ts';
import { type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Box, Fixture } from '../../plan/records/index.ts';
import { rememberedEach } from '../../plan/remembered.ts';
import type { PatchRow } from './types.ts';

interface Checked {
  readonly rows: readonly PatchRow[];
  readonly byUniverse: ReadonlyMap<Id, readonly PatchRow[]>;
  readonly findings: readonly EngineFinding[];
}

const memo = new WeakMap<Plan, Checked>();

/** All stretches of patched slots, by address, and what is wrong. Kept per plan. */
export const checkPatch = (plan: Plan): Checked => {
  const known = memo.get(plan);
  if (known) return known;
  const rows: PatchRow[] = [];
  const findings: EngineFinding[] = [];
  for (const own of patchRows(plan, recordsOf(plan, 'fixture'))) {
    rows.push(...own.rows);
    findings.push(...own.findings);
  }
  for (const own of dimmerRows(plan, recordsOf(plan, 'box'))) {
    rows.push(...own.rows);
    findings.push(...own.findings);
  }
  rows.sort((a, b) => a.address - b.address || (a.fixtureId < b.fixtureId ? -1 : 1));
  const byUniverse = new Map<Id, PatchRow[]>();
  for (const r of rows) {
    const list = byUniverse.get(r.universeId);
    if (list) list.push(r);
    else byUniverse.set(r.universeId, [r]);
  }
  for (const list of byUniverse.values()) findings.push(...overlaps(plan, list));
  // Two parted fixtures may meet more than once; every meeting keeps an id of its own.
  const seen = new Map<string, number>();
  for (const [i, f] of findings.entries()) {
    const times = seen.get(`${f.rule}:${f.about}`) ?? 0;
    seen.set(`${f.rule}:${f.about}`, times + 1);
    if (times > 0) findings[i] = { ...f, about: `${f.about}#${times + 1}` };
  }
  findings.push(...universeFindings(plan));
  const done = { rows, byUniverse, findings };
  memo.set(plan, done);
  return done;
};

/** A fixture's part of the patch. */
interface Own {
  readonly rows: readonly PatchRow[];
  readonly findings: readonly EngineFinding[];
}

const NOTHING: Own = { rows: [], findings: [] };

/** One fixture's patch as stretches of slots; none where it has no patch or cannot be placed. Remembered. */
const patchRows = rememberedEach((plan, f: Fixture): Own => {
  const patch = f.patch;
  if (!patch) return NOTHING;
  const findings: EngineFinding[] = [];
  const label = recordLabel(plan, f);
  const mode = patchedMode(plan, f);
  const starts = [
    { fromSlot: 1, universeId: patch.universeId, address: patch.address },
    ...(patch.spans ?? []),
  ];
  const lost = starts.some((s) => !recordOf(plan, 'universe', s.universeId));
  if (lost) findings.push(always('control-universe', 'stop', f.id, [f.id], { label }));
  if (!mode) findings.push(always('control-mode', 'stop', f.id, [f.id], { label, modeId: patch.modeId }));
  if (lost || !mode) return { rows: [], findings };
  const { slots: total, cuts } = footprintOf(mode);
  const cut = starts.find(
    (s, i) => i > 0 && (!cuts.includes(s.fromSlot - 1) || s.fromSlot <= (starts[i - 1]?.fromSlot ?? 0)),
  );
  if (cut) {
    findings.push(
      always('control-cut', 'stop', f.id, [f.id], { label, fromSlot: cut.fromSlot, slots: total }),
    );
    return { rows: [], findings };
  }
  const rows: PatchRow[] = [];
  for (const [i, s] of starts.entries()) {
    const universe = recordOf(plan, 'universe', s.universeId);
    const slots = (starts[i + 1]?.fromSlot ?? total + 1) - s.fromSlot;
    const highest = limitOf(plan, 'universe-slots').value - Math.max(1, slots) + 1;
    const { address } = s;
    if (!Number.isInteger(address) || address < 1 || address > highest) {
      findings.push(
        always('control-address', 'stop', f.id, [f.id], {
          label,
          address,
          slots,
          highest,
          universe: universe?.number ?? 0,
        }),
      );
      return { rows: [], findings };
    }
    rows.push({
      fixtureId: f.id,
      universeId: s.universeId,
      address,
      slots,
      last: address + slots - 1,
      fromSlot: s.fromSlot,
      total,
      modeName: mode.name,
      paired: patch.paired,
    });
  }
  return { rows, findings };
});

/** The stretch of slots a dimmer listens to; none where it has no address or cannot be placed. Remembered. */
const dimmerRows = rememberedEach((plan, b: Box): Own => {
  if (!b.patch) return NOTHING;
  const label = recordLabel(plan, b);
  const { universeId, address } = b.patch;
  const universe = recordOf(plan, 'universe', universeId);
  if (!universe) return { rows: [], findings: [always('control-universe', 'stop', b.id, [b.id], { label })] };
  const slots = dimmerSlots(plan, b);
  const highest = limitOf(plan, 'universe-slots').value - Math.max(1, slots) + 1;
  if (!Number.isInteger(address) || address < 1 || address > highest) {
    const figures = { label, address, slots, highest, universe: universe.number };
    return { rows: [], findings: [always('control-address', 'stop', b.id, [b.id], figures)] };
  }
  const row: PatchRow = {
    fixtureId: b.id,
    universeId,
    address,
    slots,
    last: address + slots - 1,
    fromSlot: 1,
    total: slots,
    modeName: slots === 1 ? 'dimmer' : `dimmer, ${slots} ways`,
    paired: false,
  };
  return { rows: [row], findings: [] };
});

/**
 * Fixtures that share slots without being meant to. Two fixtures may share where both are marked paired.
 * Each stretch is reported once, against the first one below it that it meets.
 */
const overlaps = (plan: Plan, rows: readonly PatchRow[]): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  let open: PatchRow[] = [];
  for (const r of rows) {
    if (r.slots === 0) continue;
    open = open.filter((o) => o.last >= r.address);
    const clash = open.find((x) => !(x.paired && r.paired) || x.fixtureId === r.fixtureId);
    if (clash) out.push(overlap(plan, 'control-overlap', 'stop', clash, r));
    else {
      const uneven = open.find((x) => x.address !== r.address || x.slots !== r.slots);
      if (uneven) out.push(overlap(plan, 'control-paired', 'warn', uneven, r));
    }
    open.push(r);
  }
  return out;
};

const overlap = (
  plan: Plan,
  rule: string,
  severity: EngineFinding['severity'],
  o: PatchRow,
  r: PatchRow,
): EngineFinding => {
  const [a, b] = [o.fixtureId, r.fixtureId].sort() as [Id, Id];
  return always(rule, severity, `${a}+${b}`, [o.fixtureId, r.fixtureId], {
    label: recordLabel(plan, plan.records.get(o.fixtureId)),
    other: recordLabel(plan, plan.records.get(r.fixtureId)),
    universe: recordOf(plan, 'universe', r.universeId)?.number ?? 0,
    from: r.address,
    to: Math.min(o.last, r.last),
  });
};

/** Universes whose number no network has, and two that share one. */
const universeFindings = (plan: Plan): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  const first = new Map<number, Id>();
  for (const u of recordsOf(plan, 'universe')) {
    const same = first.get(u.number);
    if (universeProblem(u.number))
      out.push(always('control-number', 'stop', u.id, [u.id], { number: u.number }));
    else if (same)
      out.push(always('control-twice', 'stop', `${same}+${u.id}`, [same, u.id], { number: u.number }));
    else first.set(u.number, u.id);
  }
  return out;
};
