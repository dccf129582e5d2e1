import type { ConverterKind } from '../plan/kinds/converter.ts';
import type { InletPort, LoadSpec } from '../plan/kinds/ports.ts';
import { loadBranches } from './connections.ts';
import type { Reach } from './supply-reach.ts';
import type { LoadBranch } from './supply-types.ts';

/** An inverter that is fed with mains: while they live it passes them on. */
export const hasBypass = (kind: ConverterKind | undefined): kind is ConverterKind =>
  kind?.what === 'inverter' && kind.inlets.length > 0;

/** Power factor of what such a unit draws for itself, where its kind says nothing (assumed). */
const OWN_PF = 0.9;

/** Watts it draws for itself, charging left out: its losses at full output, assumed at any output. */
export const bypassOwnW = (kind: ConverterKind): number => {
  const full = kind.load?.wattsW ?? kind.outputW / Math.max(0.01, kind.efficiencyPct / 100);
  return Math.max(kind.load?.standbyW ?? 0, full - kind.outputW, 0);
};

/** Volt-amperes that may pass: its rating and what it draws for itself. */
export const bypassVa = (kind: ConverterKind): number =>
  (kind.ratedKva === undefined ? kind.outputW : kind.ratedKva * 1000) + bypassOwnW(kind);

/** What an inverter on mains draws by itself where it hangs. Gives words where it cannot be connected. */
export const bypassFeed = (
  kind: ConverterKind,
  inlet: InletPort,
  reach: Reach,
): { readonly load: LoadSpec; readonly branches: readonly LoadBranch[] } | string => {
  if (!reach.shape) return 'its supply is not known';
  const wattsW = bypassOwnW(kind);
  const load: LoadSpec = {
    powerFactor: OWN_PF,
    leading: false,
    model: 'constant-power',
    thirdHarmonicPct: 0,
    leakageMa: 0,
    voltsMinV: 0.8 * (kind.outputV ?? 0),
    voltsMaxV: 1.2 * (kind.outputV ?? Number.POSITIVE_INFINITY),
    ...kind.load,
    wattsW,
    standbyW: wattsW,
  };
  const branches = loadBranches(reach.shape, inlet, reach.legs, reach.neutral, load);
  return typeof branches === 'string' ? branches : { load, branches };
};
