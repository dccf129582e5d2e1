import { formatKg, formatWind } from '../engines/rigging/index.ts';
import { formatLength, formatWatts, type LengthUnits } from '../kernel/units.ts';
import type { DataPort, DcPort, FixtureKind, Kind, PackIn } from '../plan/kinds/kinds.ts';
import { mountsWords } from '../plan/kinds/mount-words.ts';
import { loadOf, wattsUnknown } from './kind-words.ts';
import { airFact } from './pack-air.ts';

/** Adds one line: its name, value, the field its basis stands under, and the one to look at where that has none. */
type Add = (name: string, value: string | undefined, field?: string, of?: string) => void;

/** With a true minus. */
const num = (n: number, unit: string): string => `${Number(n.toPrecision(4))} ${unit}`.replace('-', '−');
const counted = (texts: readonly string[]): string | undefined => {
  const counts = new Map<string, number>();
  for (const t of texts) counts.set(t, (counts.get(t) ?? 0) + 1);
  return [...counts].map(([t, n]) => (n > 1 ? `${n} × ${t}` : t)).join('; ') || undefined;
};

/** What a kind draws from the mains. Lines only for families that can. */
export const addLoad = (kind: Kind, add: Add): void => {
  const load = loadOf(kind);
  if (!load && kind.family !== 'fixture') return;
  const own =
    kind.family === 'fixture' && kind.needsBallast
      ? 'by its ballast'
      : wattsUnknown(kind)
        ? 'watts not known'
        : load && formatWatts(load.wattsW);
  // A list's lights take these from their sort of source.
  const behaves = kind.basis.load === undefined ? 'load.behaviour' : 'load';
  add('Input', own, 'wattsW', 'load');
  add('Power factor', load?.powerFactor.toFixed(2), 'powerFactor', 'load');
  add('Volts', load && `${load.voltsMinV} to ${load.voltsMaxV} V`, 'voltsMinV', 'load');
  add('Standby', load && num(load.standbyW, 'W'), 'standbyW', behaves);
  add('Third harmonic', load && num(load.thirdHarmonicPct, '%'), 'thirdHarmonicPct', behaves);
  add(
    'Inrush',
    load?.inrushMultiple ? `${load.inrushMultiple} × for ${load.inrushMs ?? '?'} ms` : undefined,
    'inrushMultiple',
    behaves,
  );
  add('Leakage', load && num(load.leakageMa, 'mA'), 'leakageMa', behaves);
  add('As volts fall', load && (MODELS[load.model] ?? load.model), 'model', 'load.behaviour');
};

const MODELS: Readonly<Record<string, string>> = {
  'constant-power': 'keeps its watts, draws more amps',
  'constant-current': 'keeps its amps',
  'constant-impedance': 'a resistance: fewer amps and watts',
  tungsten: 'a lamp: fewer amps and watts, less light',
  exponential: 'watts by an exponent of its own',
};

const PLATES: Readonly<Record<string, string>> = {
  'v-plate': 'V-type plate',
  'three-stud': 'three-stud plate',
  'slide-7v': 'slide-on',
  'block-28': 'block, 28 V',
  'block-48': 'block, 48 V',
  'belt-xlr4': 'belt, four-pin',
  terminals: 'terminals',
  'built-in': 'built in',
};

const CHEMISTRIES: Readonly<Record<string, string>> = {
  'li-ion': 'lithium-ion',
  lifepo4: 'lithium iron phosphate',
  nimh: 'nickel-metal hydride',
  'lead-acid': 'lead-acid',
};

const DATA_PORTS: Readonly<Record<DataPort['connector'], string>> = {
  'xlr-5': 'five-pin',
  'xlr-3': 'three-pin',
  ethernet: 'network',
  radio: 'radio',
  usb: 'USB',
};

const dataWords = (ports: readonly DataPort[]): string | undefined =>
  counted(
    ports.map(
      (p) => `${DATA_PORTS[p.connector]}${p.universes > 1 ? ` (up to ${p.universes} universes)` : ''}`,
    ),
  );

const dcWords = (ports: readonly DcPort[]): string | undefined =>
  counted(ports.map((p) => `${p.connector.replace(/-/g, ' ')} ${num(p.voltsV, 'V')}, ${num(p.maxA, 'A')}`));

const addPackIn = (p: PackIn | undefined, add: Add): void => {
  const many = p && p.packs > 1 ? `${p.packs} packs in ${p.joined}` : 'one pack';
  add(
    'On packs',
    p &&
      `${many}, ${p.plates.map((x) => PLATES[x] ?? x).join(' or ')}, ${p.minV} to ${p.maxV} V${p.maxW === undefined ? '' : `, at most ${formatWatts(p.maxW)}`}${p.maxA === undefined ? '' : `, ${num(p.maxA, 'A')} through each`}${p.inrushMultiple === undefined ? '' : `, for a moment ${p.inrushMultiple} times as much when switched on`}${p.hotSwap ? ', changed while it runs' : ''}`,
    'packIn',
  );
};

/** Packs, built-in radio and settings of a fixture. */
export const addFixtureExtras = (kind: FixtureKind, add: Add): void => {
  const { radioIn: r } = kind;
  addPackIn(kind.packIn, add);
  add(
    'Built-in radio',
    r &&
      `takes signals from ${num(r.sensitivityDbm, 'dBm')}, ${num(r.antennaGainDbi, 'dBi')}, ${r.fromMhz} to ${r.toMhz} MHz`,
    'radioIn',
  );
  add('Address set by', kind.addressBy, 'addressBy');
  add(
    'Controlled by',
    kind.controlBy &&
      { app: 'its maker’s app only', local: 'hand at the unit', manual: 'hand' }[kind.controlBy],
    'controlBy',
  );
};

/** Lines of grip, rigging, packs, chargers, converters, dimmers, adapters, radio and data gear. */
export const addMoreFacts = (kind: Kind, add: Add, units: LengthUnits): void => {
  switch (kind.family) {
    case 'grip':
      add('Sort', kind.what, 'what');
      add('Face in the wind', kind.areaM2 === undefined ? undefined : num(kind.areaM2, 'm²'), 'areaM2');
      add(
        'Share of the wind on a board',
        kind.windShare === undefined ? undefined : num(kind.windShare * 100, '%'),
        'windShare',
      );
      add('Stands', kind.stands > 0 ? String(kind.stands) : undefined, 'stands');
      add('Lines outdoors', kind.guys > 0 ? String(kind.guys) : undefined, 'guys');
      add('Goes on', mountsWords(kind.fits, units) || undefined, 'fits');
      break;
    case 'rigging':
      add('Sort', kind.what, 'what');
      add(
        'Rated load',
        kind.ratedLoadKg === undefined ? 'by its maker’s table' : formatKg(kind.ratedLoadKg, units),
        'ratedLoadKg',
      );
      add('Reach', kind.reachMm === undefined ? undefined : formatLength(kind.reachMm, units), 'reachMm');
      add(
        'Height',
        kind.heightMinMm === undefined || kind.heightMaxMm === undefined
          ? undefined
          : `${formatLength(kind.heightMinMm, units)} to ${formatLength(kind.heightMaxMm, units)}`,
        'heightMaxMm',
      );
      add(
        'Circle of legs or wheels',
        kind.legCircleMm === undefined ? undefined : formatLength(kind.legCircleMm, units),
        'legCircleMm',
      );
      add('People', kind.people === undefined ? undefined : String(kind.people), 'people');
      add(
        'Wind limit',
        kind.windLimitMps === undefined
          ? undefined
          : kind.windLimitMps === 0
            ? 'indoors only'
            : formatWind(kind.windLimitMps, units),
        'windLimitMps',
      );
      add('Worked by', kind.operator, 'operator');
      add('Goes on', mountsWords(kind.fits, units) || undefined, 'fits');
      add('Offers', mountsWords(kind.receives, units) || undefined, 'receives');
      break;
    case 'pack':
      add('Holds', `${num(kind.energyWh, 'Wh')}, ${num(kind.capacityAh, 'Ah')}`, 'energyWh', 'capacityAh');
      add('Volts', `${kind.voltsV} V, from ${kind.fullV} V full to ${kind.emptyV} V empty`, 'voltsV');
      add('Gives', `${num(kind.continuousA, 'A')}, for a moment ${num(kind.peakA, 'A')}`, 'continuousA');
      add('Charging', `${formatWatts(kind.chargeW)}, ${kind.chargeMin} min to full`, 'chargeW');
      add('Plate', PLATES[kind.plate] ?? kind.plate, 'plate');
      add('Cells', `${kind.cells} in a row, ${CHEMISTRIES[kind.chemistry] ?? kind.chemistry}`, 'chemistry');
      add(
        'Outlets for leads',
        kind.dcOut.length > 0
          ? kind.dcOut.map((o) => `${o.label ?? o.id} to ${num(o.maxA, 'A')}`).join(', ')
          : undefined,
        'dcOut',
      );
      add('By air', airFact(kind.chemistry, kind.energyWh));
      break;
    case 'charger':
      add('Bays', `${kind.bays}, ${kind.together} at once`, 'bays');
      add(
        'Into a pack',
        `${formatWatts(kind.bayW)}${kind.sharedW ? `, ${formatWatts(kind.sharedW)} for all` : ''}`,
        'bayW',
      );
      add('Plate', kind.plates.map((p) => PLATES[p] ?? p).join(', '), 'plates');
      add(
        'Packs',
        `${kind.packVolts.minV} to ${kind.packVolts.maxV} V, ${kind.chemistries.map((c) => CHEMISTRIES[c] ?? c).join(', ')}`,
        'packVolts',
      );
      break;
    case 'converter':
      add('Gives', `${kind.outputV ? `${kind.outputV} V, ` : ''}${formatWatts(kind.outputW)}`, 'outputW');
      add('Efficiency', num(kind.efficiencyPct, '%'), 'efficiencyPct');
      add('Rated', kind.ratedKva === undefined ? undefined : num(kind.ratedKva, 'kVA'), 'ratedKva');
      add('Battery holds', kind.storedWh ? num(kind.storedWh, 'Wh') : undefined, 'storedWh');
      add('Wound for', kind.inputV === undefined ? undefined : num(kind.inputV, 'V'), 'inputV');
      add(
        'Impedance',
        kind.impedancePct === undefined ? undefined : num(kind.impedancePct, '%'),
        'impedancePct',
      );
      add('Direct current in', dcWords(kind.dcIn), 'dcIn');
      add('Direct current out', dcWords(kind.dcOut), 'dcOut');
      add('Plate', counted(kind.plates.map((p) => PLATES[p] ?? p)), 'plates');
      break;
    case 'dimmer':
      add('A way carries', formatWatts(kind.wayW), 'wayW');
      add('Dims by', kind.how.replace(/-/g, ' '), 'how');
      add('Dims from', kind.leastW > 0 ? formatWatts(kind.leastW) : undefined, 'leastW');
      add('Loses', num(kind.lossPct, '%'), 'lossPct');
      add('Slots', kind.slots > 0 ? String(kind.slots) : 'none, by hand', 'slots');
      break;
    case 'adapter':
      add('Circuits', String(kind.circuits), 'circuits');
      add('Conductor', kind.conductor, 'conductor');
      add('Carries', kind.ampacityA === undefined ? undefined : num(kind.ampacityA, 'A'), 'ampacityA');
      add(
        'Breaker before it',
        kind.upstreamA === undefined ? undefined : `${kind.upstreamA} A at most`,
        'upstreamA',
      );
      break;
    case 'transmitter':
    case 'receiver':
    case 'repeater':
      add('Universes', String(kind.universes), 'universes');
      add('Band', kind.bands.map((b) => `${b.fromMhz} to ${b.toMhz} MHz`).join('; '), 'bands');
      add('Radiates', kind.bands.map((b) => num(b.eirpDbm, 'dBm')).join('; '), 'bands');
      add(
        'Aerial',
        `${kind.antenna.replace(/-/g, ' ')}, ${num(kind.antennaGainDbi, 'dBi')}`,
        'antennaGainDbi',
      );
      add('Takes signals from', num(kind.sensitivityDbm, 'dBm'), 'sensitivityDbm');
      if (kind.family !== 'receiver')
        add('At its aerial socket', num(kind.conductedDbm, 'dBm'), 'conductedDbm');
      if (kind.family === 'repeater') add('Delay', num(kind.delayMs, 'ms'), 'delayMs');
      add('Links at once', kind.linksMax === undefined ? undefined : `${kind.linksMax} at most`, 'linksMax');
      add(
        'Passed on',
        kind.mesh && `${kind.mesh.hopsMax} times at most, each at ${num(kind.mesh.relayEirpDbm, 'dBm')}`,
        'mesh',
      );
      add('Supply', num(kind.supplyW, 'W'), 'supplyW');
      add('Back-up cell', kind.backupWh === undefined ? undefined : num(kind.backupWh, 'Wh'), 'backupWh');
      break;
    case 'dataCable':
      add('Ends', DATA_PORTS[kind.connector], 'connector');
      add('Mass of a metre', `${num(kind.massKgPerM, 'kg')}`, 'massKgPerM');
      add('Lines in it', String(kind.lines), 'lines');
      add('Pairs', num(kind.impedanceOhm, 'Ω'), 'impedanceOhm');
      add('Longest run', formatLength(kind.longestMm, units), 'longestMm');
      add(
        'Stock lengths',
        kind.stockLengthsMm.map((mm) => formatLength(mm, units)).join(', '),
        'stockLengthsMm',
      );
      break;
    case 'node':
      add('Universes', String(kind.universes), 'universes');
      add('Supply', num(kind.supplyW, 'W'), 'supplyW');
      add('Back-up cell', kind.backupWh === undefined ? undefined : num(kind.backupWh, 'Wh'), 'backupWh');
      break;
    case 'video':
      add('Supply', num(kind.supplyW, 'W'), 'supplyW');
      addPackIn(kind.packIn, add);
      break;
    case 'dataSplitter':
      add('Isolated', kind.isolated ? 'yes' : 'no', 'isolated');
      add('Unit loads', String(kind.unitLoads), 'unitLoads');
      add('Supply', num(kind.supplyW, 'W'), 'supplyW');
      add('Back-up cell', kind.backupWh === undefined ? undefined : num(kind.backupWh, 'Wh'), 'backupWh');
      break;
    default:
  }
  if ('rdm' in kind && typeof kind.rdm === 'boolean')
    add('Both ways', kind.rdm ? 'answers from fixtures pass' : 'answers do not pass', 'rdm');
  if ('dataIn' in kind) add('Data in', dataWords(kind.dataIn as readonly DataPort[]), 'dataIn');
  if ('dataOut' in kind) add('Data out', dataWords(kind.dataOut as readonly DataPort[]), 'dataOut');
};
