import { formatKg } from '../engines/rigging/index.ts';
import type { LengthUnits } from '../kernel/units.ts';
import { formatLength, formatWatts } from '../kernel/units.ts';
import { connector } from '../plan/connectors.ts';
import type { Kind, Mode } from '../plan/kinds/kinds.ts';
import { mountsWords } from '../plan/kinds/mount-words.ts';
import { addFixtureExtras, addLoad, addMoreFacts } from './kind-facts-more.ts';

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
  const add = (name: string, value: string | undefined, field = name, of = field): void => {
    facts.push({ name, value: value ?? '–', basis: kind.basis[field] ?? kind.basis[of] ?? '' });
  };
  const size = [kind.sizeMm.lengthMm, kind.sizeMm.widthMm, kind.sizeMm.heightMm ?? Number.NaN].filter(
    Number.isFinite,
  );
  const side = kind.basis.lengthMm === undefined ? 'widthMm' : 'lengthMm';
  add('Size', size.map((mm) => formatLength(mm, units)).join(' × '), 'sizeMm', side);
  add('Mass', kind.massKg > 0 ? formatKg(kind.massKg, units) : undefined, 'massKg');
  addLoad(kind, add);
  if (kind.family === 'fixture') {
    add('Mount', mountsWords(kind.mount.fits, units), 'mount');
    add(
      'Beam / field',
      kind.beamDeg || kind.fieldDeg ? `${kind.beamDeg ?? '–'}° / ${kind.fieldDeg ?? '–'}°` : undefined,
      'beamDeg',
    );
    add('On axis', kind.candelaCd ? `${kind.candelaCd.toLocaleString('en-US')} cd` : undefined, 'candelaCd');
    add(
      'Narrow end',
      kind.spot && `${kind.spot.beamDeg}°, ${kind.spot.candelaCd.toLocaleString('en-US')} cd`,
      'spot',
      'candelaCd',
    );
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
      'Keep clear',
      kind.clearanceMm
        ? [
            kind.clearanceMm.cloth === undefined
              ? ''
              : `cloth ${formatLength(kind.clearanceMm.cloth, units)}`,
            kind.clearanceMm.surface === undefined
              ? ''
              : `lit surfaces ${formatLength(kind.clearanceMm.surface, units)}`,
          ]
            .filter(Boolean)
            .join(', ')
        : undefined,
      'clearanceMm',
    );
    add(
      'Modes',
      kind.modes
        .map(
          (m) =>
            `${m.name}: ${slotsWord(m)} ${m.slots === 1 ? 'slot' : 'slots'}${m.parts > 1 ? ` (${m.parts} parts)` : ''}`,
        )
        .join('; ') || undefined,
      'modes',
    );
    addFixtureExtras(kind, add);
  }
  if (kind.family === 'ballast') {
    add('Runs', kind.heads.join(', ') || undefined, 'heads');
    add('Head cables', kind.headCablesMm.map((mm) => formatLength(mm, units)).join(', '), 'headCablesMm');
    add(
      'Light',
      kind.flicker === undefined
        ? undefined
        : kind.flicker === 'even'
          ? 'even'
          : 'pulses at twice the mains frequency',
      'flicker',
    );
  }
  if (kind.family === 'stand') {
    add('Rated load', formatKg(kind.ratedLoadKg, units), 'ratedLoadKg');
    add(
      'Height',
      `${formatLength(kind.heightMinMm, units)} to ${formatLength(kind.heightMaxMm, units)}`,
      'heightMaxMm',
    );
    add('Leg circle', formatLength(kind.legCircleMm, units), 'legCircleMm');
    add('Legs', String(kind.legs ?? 3), 'legs');
    add('Receives', mountsWords(kind.receives, units), 'receives');
  }
  if (kind.family === 'box' || kind.family === 'source' || kind.family === 'dimmer') {
    add('Main breaker', kind.mainBreakerA ? `${kind.mainBreakerA} A` : undefined, 'mainBreakerA');
    add(
      'Ways',
      kind.ways
        .map(
          (w) =>
            `${w.label}: ${w.breakerA} A ${w.poles}P ${w.curve}${w.rcdMa ? ` ${w.rcdMa} mA` : ''}${w.rcdMa && w.rcdType ? ` type ${w.rcdType}` : ''}`,
        )
        .join('; ') || undefined,
      'ways',
    );
  }
  if (kind.family === 'source') {
    add('Sort', kind.what.replace('-', ' '), 'what');
    add('System', `${kind.system} V`, 'system');
    add('Tank', kind.tankL === undefined ? undefined : num(kind.tankL, 'l'), 'tankL');
    add('For a moment', kind.surgeW === undefined ? undefined : formatWatts(kind.surgeW), 'surgeW');
    add(
      'Of its inverter',
      kind.inverterPct === undefined ? undefined : num(kind.inverterPct, '%'),
      'inverterPct',
    );
    add(
      'Rated',
      kind.ratedKw ? `${kind.ratedKw} kW${kind.ratedKva ? `, ${kind.ratedKva} kVA` : ''}` : undefined,
      'ratedKw',
    );
  }
  if (kind.family === 'source' && kind.what === 'power-station')
    add('Cells hold', kind.storedWh ? num(kind.storedWh, 'Wh') : undefined, 'storedWh');
  addMoreFacts(kind, add, units);
  if (kind.family === 'cable') {
    add(
      'Conductors',
      `${kind.conductor}, ${kind.legs} live${kind.neutral ? ' and neutral' : ''}${kind.parallel > 1 ? ` × ${kind.parallel}` : ''}${kind.circuits ? `, ${kind.circuits} circuits` : ''}`,
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
      'connector',
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

/** Slots of a mode: of one with several address ranges, of each. */
const slotsWord = (m: Mode): string =>
  m.breaks && m.breaks.length > 1 ? m.breaks.map((b) => b.slots).join(' + ') : String(m.slots);

const countNames = (names: readonly string[]): string => {
  const counts = new Map<string, number>();
  for (const n of names) counts.set(n, (counts.get(n) ?? 0) + 1);
  return [...counts].map(([n, c]) => (c > 1 ? `${c} × ${n}` : n)).join('; ');
};
