import { kindOf, type Plan } from '../../plan/plan.ts';
import { converterIdOf, drawAt } from './model.ts';
import type { BatteryUnit } from './types.ts';

/**
 * What a unit takes from its packs for a moment when it is switched on at full: `multiple` times what it takes for long.
 * Behind an inverter that is the inrush of its mains supply; else what its kind says of its inlet for packs. Undefined
 * where nothing more is taken, or nothing is known of it.
 */
export const inrushOf = (
  plan: Plan,
  u: BatteryUnit,
): { readonly watts: number; readonly multiple: number; readonly inverter: boolean } | undefined => {
  const kind = kindOf(plan, u.fixture.kindId, 'fixture');
  const id = converterIdOf(u.fixture);
  const inverter = id !== undefined && kindOf(plan, id, 'converter')?.what === 'inverter';
  const multiple = (inverter ? kind?.load?.inrushMultiple : kind?.packIn?.inrushMultiple) ?? 1;
  if (!(multiple > 1)) return undefined;
  const watts = inverter ? (u.ratedW * multiple) / u.efficiency : drawAt(u, 100).packW * multiple;
  return Number.isFinite(watts) ? { watts, multiple, inverter } : undefined;
};
