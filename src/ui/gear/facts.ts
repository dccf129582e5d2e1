import type { LengthUnits } from '../../kernel/units.ts';
import { formatLength, formatWatts } from '../../kernel/units.ts';
import { connector } from '../../plan/connectors.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';

/** One line about a kind: what, how much, and where the figure is from. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly basis: string;
}

const num = (n: number, unit: string): string => `${Number(n.toPrecision(4))} ${unit}`;
const connectorName = (id: string): string => connector(id)?.name ?? id;

/** Everything a kind says, as lines; the same lines for one family, so that kinds can be laid side by side. */
export const kindFacts = (kind: Kind, units: LengthUnits): readonly Fact[] => {
  const facts: Fact[] = [];
  const add = (name: string, value: string | undefined, field = name): void => {
    facts.push({ name, value: value ?? '–', basis: kind.basis[field] ?? '' });
  };
  const size = [kind.sizeMm.lengthMm, kind.sizeMm.widthMm, kind.sizeMm.heightMm ?? Number.NaN].filter(
    Number.isFinite,
  );
  add('Size', size.map((mm) => formatLength(mm, units)).join(' × '), 'sizeMm');
  add('Mass', kind.massKg > 0 ? num(kind.massKg, 'kg') : undefined, 'massKg');
  const load = kind.family === 'fixture' || kind.family === 'ballast' ? kind.load : undefined;
  if (kind.family === 'fixture' || kind.family === 'ballast') {
    add(
      'Input',
      load
        ? formatWatts(load.wattsW)
        : kind.family === 'fixture' && kind.needsBallast
          ? 'by its ballast'
          : undefined,
      'load',
    );
    add('Power factor', load ? load.powerFactor.toFixed(2) : undefined, 'load');
    add('Volts', load ? `${load.voltsMinV} to ${load.voltsMaxV} V` : undefined, 'load');
    add('Third harmonic', load ? num(load.thirdHarmonicPct, '%') : undefined, 'load');
    add(
      'Inrush',
      load?.inrushMultiple ? `${load.inrushMultiple} × for ${load.inrushMs ?? '?'} ms` : undefined,
      'load',
    );
    add('Leakage', load ? num(load.leakageMa, 'mA') : undefined, 'load');
  }
  if (kind.family === 'fixture') {
    add('Mount', kind.mount.fits.join(', '), 'mount');
    add(
      'Beam / field',
      kind.beamDeg || kind.fieldDeg ? `${kind.beamDeg ?? '–'}° / ${kind.fieldDeg ?? '–'}°` : undefined,
      'beamDeg',
    );
    add('On axis', kind.candelaCd ? `${kind.candelaCd.toLocaleString('en-US')} cd` : undefined, 'candelaCd');
    add(
      'Colour',
      kind.cct ? `${kind.cct.minK} to ${kind.cct.maxK} K${kind.cct.color ? ' and colour' : ''}` : undefined,
      'cct',
    );
    add('Own cells', kind.ownCellsWh ? num(kind.ownCellsWh, 'Wh') : undefined, 'ownCellsWh');
    add(
      'Warm-up, restrike',
      kind.warmUpMin ? `${kind.warmUpMin} min, ${kind.hotRestrikeMin ?? '–'} min` : undefined,
      'warmUpMin',
    );
    add(
      'Modes',
      kind.modes.map((m) => `${m.name}: ${m.slots}${m.parts > 1 ? ` (${m.parts} parts)` : ''}`).join('; ') ||
        undefined,
      'modes',
    );
  }
  if (kind.family === 'stand') {
    add('Rated load', num(kind.ratedLoadKg, 'kg'), 'ratedLoadKg');
    add(
      'Height',
      `${formatLength(kind.heightMinMm, units)} to ${formatLength(kind.heightMaxMm, units)}`,
      'heightMaxMm',
    );
    add('Leg circle', formatLength(kind.legCircleMm, units), 'legCircleMm');
    add('Receives', kind.receives.join(', '), 'receives');
  }
  if (kind.family === 'box' || kind.family === 'source') {
    add('Main breaker', kind.mainBreakerA ? `${kind.mainBreakerA} A` : undefined, 'mainBreakerA');
    add(
      'Ways',
      kind.ways
        .map((w) => `${w.label}: ${w.breakerA} A ${w.poles}P ${w.curve}${w.rcdMa ? ` ${w.rcdMa} mA` : ''}`)
        .join('; ') || undefined,
      'ways',
    );
  }
  if (kind.family === 'source') {
    add('System', `${kind.system} V`, 'system');
    add(
      'Rated',
      kind.ratedKw ? `${kind.ratedKw} kW${kind.ratedKva ? `, ${kind.ratedKva} kVA` : ''}` : undefined,
      'ratedKw',
    );
  }
  if (kind.family === 'cable') {
    add(
      'Conductors',
      `${kind.conductor}, ${kind.legs} live${kind.neutral ? ' and neutral' : ''}${kind.parallel > 1 ? ` × ${kind.parallel}` : ''}`,
      'conductor',
    );
    add('Carries', `${kind.ampacityA} A`, 'ampacityA');
    add('Plug', connectorName(kind.plug), 'plug');
    add('Socket', connectorName(kind.socket), 'socket');
    add(
      'Stock lengths',
      kind.stockLengthsMm.map((mm) => formatLength(mm, units)).join(', '),
      'stockLengthsMm',
    );
  }
  if ('inlets' in kind && Array.isArray(kind.inlets)) {
    add(
      'Inlet',
      (kind.inlets as readonly { connector: string }[]).map((p) => connectorName(p.connector)).join('; ') ||
        undefined,
      'inlets',
    );
  }
  if ('outlets' in kind && Array.isArray(kind.outlets)) {
    add(
      'Outlets',
      countNames((kind.outlets as readonly { connector: string }[]).map((p) => connectorName(p.connector))) ||
        undefined,
      'outlets',
    );
  }
  facts.push({ name: 'Figures from', value: kind.basis.all ?? 'as given by line', basis: '' });
  return facts;
};

const countNames = (names: readonly string[]): string => {
  const counts = new Map<string, number>();
  for (const n of names) counts.set(n, (counts.get(n) ?? 0) + 1);
  return [...counts].map(([n, c]) => (c > 1 ? `${c} × ${n}` : n)).join('; ');
};
