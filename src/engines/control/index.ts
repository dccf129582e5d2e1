import type { EngineFinding } from '../../derive/findings.ts';
import { always } from '../../derive/findings.ts';
import { recordLabel } from '../../derive/labels.ts';
import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';

/** Where one fixture sits in its universe. `address` to `last` are the slots it takes, 1-based. */
export interface PatchRow {
  readonly fixtureId: Id;
  readonly universeId: Id;
  readonly address: number;
  readonly slots: number;
  readonly last: number;
  readonly modeName: string;
  readonly paired: boolean;
}

/** One universe with what is patched on it, in address order. */
export interface UniverseUse {
  readonly universeId: Id;
  readonly rows: readonly PatchRow[];
  /** Slots that at least one fixture takes. */
  readonly usedSlots: number;
  readonly freeSlots: number;
  readonly highestSlot: number;
}

interface Checked {
  readonly rows: readonly PatchRow[];
  readonly findings: readonly EngineFinding[];
}

const memo = new WeakMap<Plan, Checked>();

const check = (plan: Plan): Checked => {
  const known = memo.get(plan);
  if (known) return known;
  const rows: PatchRow[] = [];
  const findings: EngineFinding[] = [];
  for (const f of recordsOf(plan, 'fixture')) {
    const row = patchRow(plan, f, findings);
    if (row) rows.push(row);
  }
  rows.sort((a, b) => a.address - b.address || (a.fixtureId < b.fixtureId ? -1 : 1));
  findings.push(...overlaps(plan, rows));
  const done = { rows, findings };
  memo.set(plan, done);
  return done;
};

/** One fixture's patch, checked; undefined where it has none or it cannot be placed. */
const patchRow = (plan: Plan, f: Fixture, findings: EngineFinding[]): PatchRow | undefined => {
  const patch = f.patch;
  if (!patch) return undefined;
  const label = recordLabel(plan, f);
  const universe = recordOf(plan, 'universe', patch.universeId);
  const mode = kindOf(plan, f.kindId, 'fixture')?.modes.find((m) => m.id === patch.modeId);
  if (!universe) findings.push(always('control-universe', 'stop', f.id, [f.id], { label }));
  if (!mode) findings.push(always('control-mode', 'stop', f.id, [f.id], { label, modeId: patch.modeId }));
  if (!universe || !mode) return undefined;
  const highest = limitOf(plan, 'universe-slots').value - Math.max(1, mode.slots) + 1;
  const { address } = patch;
  if (!Number.isInteger(address) || address < 1 || address > highest) {
    findings.push(
      always('control-address', 'stop', f.id, [f.id], {
        label,
        address,
        slots: mode.slots,
        highest,
        universe: universe.number,
      }),
    );
    return undefined;
  }
  return {
    fixtureId: f.id,
    universeId: universe.id,
    address,
    slots: mode.slots,
    last: address + mode.slots - 1,
    modeName: mode.name,
    paired: patch.paired,
  };
};

/**
 * Fixtures that share slots without being meant to. Two fixtures may share where both are marked paired.
 * Each fixture is reported once, against the first one below it that it meets.
 */
const overlaps = (plan: Plan, rows: readonly PatchRow[]): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  const byUniverse = new Map<Id, PatchRow[]>();
  for (const r of rows) {
    if (r.slots === 0) continue;
    const open = (byUniverse.get(r.universeId) ?? []).filter((o) => o.last >= r.address);
    const o = open.find((x) => !(x.paired && r.paired));
    if (o) {
      const [a, b] = [o.fixtureId, r.fixtureId].sort() as [Id, Id];
      out.push(
        always('control-overlap', 'stop', `${a}+${b}`, [o.fixtureId, r.fixtureId], {
          label: recordLabel(plan, plan.records.get(o.fixtureId)),
          other: recordLabel(plan, plan.records.get(r.fixtureId)),
          universe: recordOf(plan, 'universe', r.universeId)?.number ?? 0,
          from: r.address,
          to: Math.min(o.last, r.last),
        }),
      );
    }
    byUniverse.set(r.universeId, [...open, r]);
  }
  return out;
};

/** What is wrong with the patch. */
export const controlFindings = (plan: Plan): readonly EngineFinding[] => check(plan).findings;

/** Every universe of the plan with its fixtures and the slots they take, in the order of its number. */
export const universeUse = (plan: Plan): readonly UniverseUse[] => {
  const size = limitOf(plan, 'universe-slots').value;
  return [...recordsOf(plan, 'universe')]
    .sort((a, b) => a.number - b.number || (a.id < b.id ? -1 : 1))
    .map((u) => {
      const rows = check(plan).rows.filter((r) => r.universeId === u.id);
      const taken = new Set<number>();
      for (const r of rows) for (let s = r.address; s <= r.last; s++) taken.add(s);
      return {
        universeId: u.id,
        rows,
        usedSlots: taken.size,
        freeSlots: size - taken.size,
        highestSlot: rows.reduce((h, r) => Math.max(h, r.last), 0),
      };
    });
};
