import { formatKg } from '../../engines/rigging/index.ts';
import { formatLength, formatWatts, type LengthUnits } from '../../kernel/units.ts';
import { connector } from '../../plan/connectors.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';
import { mountsWords } from '../../plan/kinds/mount-words.ts';
import { wattsOf, wattsUnknown } from '../gear/filters.ts';

const joined = (...parts: readonly (string | undefined)[]): string => parts.filter(Boolean).join(' · ');
const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;
const plugName = (ports: readonly { readonly connector: string }[]): string | undefined => {
  const [first] = ports;
  return first && (connector(first.connector)?.name ?? first.connector).replace(/\s*\(.*\)$/, '');
};

/** One line on a kind: what matters when choosing it, in the plan's units. */
export const kindLine = (k: Kind, units: LengthUnits): string => {
  const kg = (n: number): string => formatKg(n, units);
  switch (k.family) {
    case 'fixture':
      return joined(
        k.ownCellsWh ? 'own cells' : k.needsBallast ? 'with ballast' : undefined,
        mountsWords(k.mount.fits, units),
        kg(k.massKg),
      );
    case 'stand':
      return joined(
        kg(k.ratedLoadKg),
        `${formatLength(k.heightMinMm, units)}–${formatLength(k.heightMaxMm, units)}`,
        mountsWords(k.receives, units),
      );
    case 'grip':
      return joined(
        k.areaM2 ? `${k.areaM2.toFixed(1)} m²` : undefined,
        k.stands > 0 ? count(k.stands, 'stand') : undefined,
        kg(k.massKg),
      );
    case 'rigging':
      return joined(
        k.ratedLoadKg ? kg(k.ratedLoadKg) : 'load by its maker',
        k.reachMm ? `reach ${formatLength(k.reachMm, units)}` : undefined,
        k.people ? count(k.people, 'person', 'people') : undefined,
      );
    case 'box':
      return joined(
        count(k.ways.length, 'way'),
        k.mainBreakerA ? `${k.mainBreakerA} A main` : plugName(k.inlets),
      );
    case 'dimmer':
      return joined(
        k.ways.length > 0 ? count(k.ways.length, 'way') : undefined,
        `${formatWatts(k.wayW)} a way`,
        k.slots > 0 ? count(k.slots, 'slot') : 'by hand',
        plugName(k.inlets),
      );
    case 'adapter':
      return joined(
        plugName(k.inlets) ?? (k.dataIn.length > 0 ? 'control data' : undefined),
        k.outlets.length > 0
          ? `${count(k.outlets.length, 'outlet')}${k.ampacityA ? `, ${k.ampacityA} A` : ''}`
          : undefined,
      );
    case 'converter':
      return joined(
        k.outputV
          ? `gives ${k.outputV} V`
          : k.dcOut[0]
            ? `gives ${k.dcOut[0].voltsV} V direct current`
            : undefined,
        `${formatWatts(k.outputW)}`,
        plugName(k.inlets),
      );
    case 'source':
      return joined(`${k.system} V`, k.ratedKva ? `${k.ratedKva} kVA` : undefined);
    case 'pack':
      return joined(`${k.voltsV} V`, `${k.continuousA} A`);
    case 'charger':
      return joined(count(k.bays, 'bay'), `${k.bayW} W each`);
    case 'transmitter':
    case 'receiver':
    case 'repeater':
      return joined(
        count(k.universes, 'universe'),
        k.bands
          .map((b) => (b.fromMhz >= 1000 ? `${(b.fromMhz / 1000).toFixed(1)} GHz` : `${b.fromMhz} MHz`))
          .join(', '),
        k.backupWh ? 'own cell' : undefined,
      );
    case 'node':
      return joined(count(k.universes, 'universe'), count(k.dataOut.length, 'port'));
    case 'video':
      return joined(formatWatts(k.supplyW), k.packIn ? 'takes a pack' : undefined);
    case 'dataSplitter':
      return joined(
        count(k.dataOut.length, 'line'),
        k.isolated ? 'isolated' : 'not isolated',
        k.rdm ? 'both ways' : undefined,
      );
    case 'cable':
      return joined(`${k.ampacityA} A`, count(k.stockLengthsMm.length, 'length'));
    case 'dataCable':
      return joined(`to ${formatLength(k.longestMm, units)}`, count(k.stockLengthsMm.length, 'length'));
    default:
      return k.also[0] ?? '';
  }
};

/** The figure at the right: input watts, what control gear draws from its supply, or a pack's energy. */
export const kindFigure = (k: Kind): string => {
  if (wattsUnknown(k)) return 'watts not known';
  if (k.family === 'pack') return `${k.energyWh} Wh`;
  const wattsW = wattsOf(k) ?? ('supplyW' in k && typeof k.supplyW === 'number' ? k.supplyW : undefined);
  return wattsW === undefined ? '' : formatWatts(wattsW);
};
