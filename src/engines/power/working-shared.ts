import { loadPower, loadSpecOf } from '../../derive/loads.ts';
import type { SupplyNode } from '../../derive/supply-types.ts';
import type { Quantity } from '../../derive/types.ts';
import { formatWatts } from '../../kernel/units.ts';
import type { Subject, WorkingLine } from './working-types.ts';

export const setupName = (s: Subject): string => s.result.setups[s.setup]?.name ?? '';
export const figure = (s: Subject, q: Quantity, key = s.node.key): number =>
  s.result.figures.get(key, q, s.setup);
export const childrenOf = (s: Subject): readonly SupplyNode[] =>
  (s.result.tree.children[s.node.index] ?? []).flatMap((i) => s.result.tree.nodes[i] ?? []);

/** A current as a phasor: `12.3 A ∠ −31.8°`. */
export const phasor = (amps: Float64Array, at: number): string => {
  const re = amps[at] ?? 0;
  const im = amps[at + 1] ?? 0;
  const deg = (Math.atan2(im, re) * 180) / Math.PI;
  return `${Math.hypot(re, im).toFixed(2)} A ∠ ${deg.toFixed(1).replace('-', '−')}°`;
};

export const localOf = (s: Subject, n: SupplyNode): number => s.source.model.nodeOf.indexOf(n.index);

/** Inputs of a load's own power: rated, standby, level, power factor. */
export const loadLines = (s: Subject): WorkingLine[] => {
  const r = s.plan.records.get(s.node.recordId);
  if (r?.type !== 'fixture' && r?.type !== 'ballast') return [];
  const spec = loadSpecOf(s.plan, r);
  const p = loadPower(s.plan, r, s.result.setups[s.setup]?.id ?? '');
  if (!spec || !p) return [];
  const kind = s.plan.records.get(r.kindId);
  const basis = kind?.type === 'kind' ? kind.basis : {};
  const from = (field: string): string => basis[field] ?? basis.all ?? 'the kind';
  const line = (name: string, value: string, source: string, assumed: boolean): WorkingLine => ({
    name,
    value,
    from: source,
    assumed,
  });
  return [
    line('rated watts', formatWatts(spec.wattsW), from('load'), from('load') === 'assumed'),
    line('standby watts', formatWatts(spec.standbyW), from('load'), from('load') === 'assumed'),
    line(
      'level',
      `${p.levelPct} %`,
      p.levelAssumed ? 'no level in this setup: full' : `level in ${setupName(s)}`,
      p.levelAssumed,
    ),
    line(
      'power factor',
      `${spec.powerFactor}${spec.leading ? ' leading' : ''}`,
      from('load'),
      from('load') === 'assumed',
    ),
    line('load model', spec.model.replace('-', ' '), from('load'), from('load') === 'assumed'),
  ];
};
