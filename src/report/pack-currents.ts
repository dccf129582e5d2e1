import { packCurrents, packFullKey, packInrushKey } from '../engines/battery/index.ts';
import { formatAmps } from '../kernel/units.ts';
import type { Plan } from '../plan/plan.ts';

/** What one pack gives, packs nearly empty, against what it may: in words, with the key of its working. */
export interface PackCurrentRow {
  readonly key: string;
  readonly name: string;
  readonly text: string;
  readonly over: boolean;
}

/** Current of one pack at full and, where more is taken, when switched on, by the id of a fixture or a pack on the floor. */
export const packCurrentRows = (plan: Plan, id: string): readonly PackCurrentRow[] => {
  const c = packCurrents(plan, id);
  if (!c) return [];
  const row = (key: string, name: string, amps: number, of: number): PackCurrentRow => ({
    key,
    name,
    text: `${formatAmps(amps)} of ${formatAmps(of)}`,
    over: amps > of * (1 + 1e-9),
  });
  return [
    row(
      packFullKey(id),
      'at full, for long',
      c.amps,
      Math.min(c.pack.continuousA, c.plateA ?? c.pack.continuousA),
    ),
    ...(c.inrush
      ? [row(packInrushKey(id), 'when switched on, for a moment', c.inrush.amps, c.pack.peakA)]
      : []),
  ];
};
