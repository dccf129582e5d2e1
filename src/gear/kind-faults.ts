import type { Kind } from '../plan/kinds/kinds.ts';
import type { LoadSpec } from '../plan/kinds/ports.ts';
import { moreFaults } from './kind-faults-more.ts';

/**
 * What is wrong with the figures of a kind that has the right shape: negative masses, factors above 1, ports with one
 * id. In words, without the kind's name; an empty list where nothing is.
 */
export const kindFaults = (kind: Kind): readonly string[] => {
  const faults: string[] = [];
  const need = (good: boolean, words: string): void => {
    if (!good) faults.push(words);
  };
  need(
    /^[\p{L}\p{N}][\p{L}\p{N}._-]{0,79}$/u.test(kind.slug),
    'its slug is not a word of letters, digits, - . _',
  );
  need(kind.name.trim() !== '' && kind.name.length <= 200, 'it has no name of 1 to 200 characters');
  need(kind.massKg >= 0 && kind.massKg <= 1e5, `its mass is ${kind.massKg} kg`);
  for (const [side, mm] of Object.entries({ length: kind.sizeMm.lengthMm, width: kind.sizeMm.widthMm }))
    need(mm >= 0 && mm <= 1e6, `its ${side} is ${mm} mm`);
  const { load, inlets, outlets, ways, dataIn, dataOut, dcIn, dcOut } = partsOf(kind);
  if (load) faults.push(...loadFaults(load));
  for (const [words, list] of Object.entries({
    inlets,
    outlets,
    ways,
    'data inputs': dataIn,
    'data outputs': dataOut,
    'direct-current inputs': dcIn,
    'direct-current outputs': dcOut,
  }))
    need(
      new Set(list?.map((x) => x.id)).size === (list?.length ?? 0),
      `two of its ${words} have the same id`,
    );
  if (kind.family === 'fixture') {
    need(
      new Set(kind.modes.map((m) => m.id)).size === kind.modes.length,
      'two of its modes have the same id',
    );
    need(
      kind.modes.every((m) => m.slots <= 32_768),
      'a mode has more slots than 64 universes',
    );
  }
  if (kind.family === 'fixture' && kind.clearanceMm) {
    const { cloth = 0, surface = 0 } = kind.clearanceMm;
    need(cloth >= 0 && surface >= 0, `its least distances are ${cloth} and ${surface} mm`);
  }
  if (kind.family === 'stand') {
    need(kind.ratedLoadKg >= 0, `its rated load is ${kind.ratedLoadKg} kg`);
    need(kind.heightMinMm <= kind.heightMaxMm, 'its least height is above its greatest');
  }
  if (kind.family === 'cable') {
    need(kind.ampacityA > 0, `its ampacity is ${kind.ampacityA} A`);
    need(
      kind.stockLengthsMm.every((mm) => mm > 0),
      'a stock length is not above zero',
    );
  }
  moreFaults(kind, need);
  return faults;
};

interface Parts {
  readonly load?: LoadSpec | undefined;
  readonly inlets?: readonly { readonly id: string }[] | undefined;
  readonly outlets?: readonly { readonly id: string }[];
  readonly ways?: readonly { readonly id: string }[];
  readonly dataIn?: readonly { readonly id: string }[];
  readonly dataOut?: readonly { readonly id: string }[];
  readonly dcIn?: readonly { readonly id: string }[];
  readonly dcOut?: readonly { readonly id: string }[];
}

const partsOf = (kind: Kind): Parts => {
  switch (kind.family) {
    case 'fixture':
      return { load: kind.load, inlets: kind.inlets, outlets: kind.outlets };
    case 'ballast':
    case 'box':
    case 'source':
    case 'dimmer':
    case 'adapter':
    case 'converter':
    case 'charger':
    case 'transmitter':
    case 'receiver':
    case 'repeater':
    case 'node':
    case 'dataSplitter':
    case 'video':
      return kind;
    default:
      return {};
  }
};

const loadFaults = (load: LoadSpec): readonly string[] => {
  const faults: string[] = [];
  if (!(load.wattsW >= 0 && load.wattsW <= 1e7)) faults.push(`its watts are ${load.wattsW}`);
  if (!(load.standbyW >= 0)) faults.push(`its standby watts are ${load.standbyW}`);
  if (!(load.powerFactor > 0 && load.powerFactor <= 1))
    faults.push(`its power factor is ${load.powerFactor}`);
  if (!(load.voltsMinV > 0 && load.voltsMinV <= load.voltsMaxV))
    faults.push(`its range of volts is ${load.voltsMinV} to ${load.voltsMaxV} V`);
  if (load.model === 'exponential' && (load.expP === undefined || load.expQ === undefined))
    faults.push('its load model needs two exponents');
  return faults;
};
