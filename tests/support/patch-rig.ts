import { type AssignOptions, assignAddresses } from '../../src/engines/control/index.ts';
import { printAddress } from '../../src/plan/address.ts';
import { type Plan, recordOf } from '../../src/plan/plan.ts';
import type { RecordOf } from '../../src/plan/records/index.ts';
import { PlanBuilder } from './plan-builder.ts';

/** A unit by the slots of its mode, or by parts of so many slots. */
export interface RigUnit {
  readonly slots: number;
  readonly parts?: number;
  readonly partSlots?: number;
  readonly more?: Partial<RecordOf<'fixture'>>;
}

/** A plan of units with the footprints given, numbered from 1, and universes 1 to `universes`. */
export const patchRig = (units: readonly (number | RigUnit)[], universes = 0) => {
  const b = new PlanBuilder();
  const fixtures = units.map((unit, i) => {
    const u: RigUnit = typeof unit === 'number' ? { slots: unit } : unit;
    const slug = `k${u.slots}-${u.parts ?? 1}-${u.partSlots ?? 0}`;
    if (!b.records.has(slug))
      b.fixtureKind(
        slug,
        {},
        {
          modes: [
            {
              id: 'm',
              name: `${u.slots} slots`,
              slots: u.slots,
              parts: u.parts ?? 1,
              ...(u.partSlots === undefined ? {} : { partSlots: u.partSlots }),
            },
          ],
        },
      );
    return b.fixture(slug, { id: `f${String(i + 1).padStart(4, '0')}`, unit: String(i + 1), ...u.more });
  });
  for (let n = 1; n <= universes; n++)
    b.put({ id: `universe-${n}`, type: 'universe', number: n, name: '', colorIndex: n - 1 });
  return { b, fixtures, plan: b.plan() };
};

/** The addresses an assignment gives, in the order of its rows; parted units joined by a plus sign. */
export const placesBy = (plan: Plan, options: AssignOptions): readonly string[] => {
  const r = assignAddresses(plan, options);
  if (!r.ok) throw new Error(r.error.what);
  return r.value.rows.map((row) => row.after.map(printAddress).join(' + '));
};

/** The printed address of a fixture of a plan; empty without a patch. */
export const addressOf = (plan: Plan, id: string): string => {
  const patch = recordOf(plan, 'fixture', id)?.patch;
  const universe = patch && recordOf(plan, 'universe', patch.universeId);
  return patch && universe ? printAddress({ universe: universe.number, address: patch.address }) : '';
};
