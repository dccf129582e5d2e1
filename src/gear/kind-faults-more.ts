import type { Kind } from '../plan/kinds/kinds.ts';

type Need = (good: boolean, words: string) => void;

/** Faults of rigging, grip, packs, chargers, converters, dimmers, adapters, radio and data gear. */
export const moreFaults = (kind: Kind, need: Need): void => {
  switch (kind.family) {
    case 'rigging':
      need(
        (kind.heightMinMm ?? 0) <= (kind.heightMaxMm ?? Number.POSITIVE_INFINITY),
        'its least height is above its greatest',
      );
      return;
    case 'grip':
      need((kind.areaM2 ?? 0) >= 0, `its face in the wind is ${kind.areaM2 ?? 0} m²`);
      need(
        (kind.windShare ?? 0) >= 0 && (kind.windShare ?? 0) <= 2,
        `its share of the wind is ${kind.windShare ?? 0}, not 0 to 2`,
      );
      return;
    case 'pack':
      need(
        kind.emptyV > 0 && kind.emptyV <= kind.voltsV && kind.voltsV <= kind.fullV,
        `its volts empty, nominal and full are ${kind.emptyV}, ${kind.voltsV} and ${kind.fullV} V, not rising`,
      );
      need(kind.energyWh > 0, `it holds ${kind.energyWh} Wh`);
      need(
        kind.continuousA > 0 && kind.continuousA <= kind.peakA,
        `it gives ${kind.continuousA} A, for a moment ${kind.peakA} A`,
      );
      return;
    case 'charger':
      need(kind.together <= kind.bays, `it charges ${kind.together} packs at once in ${kind.bays} bays`);
      need(kind.bayW > 0, `a bay gives ${kind.bayW} W`);
      need(kind.packVolts.minV <= kind.packVolts.maxV, 'its least pack volts are above the most');
      return;
    case 'converter':
      need(kind.efficiencyPct > 0 && kind.efficiencyPct <= 100, `its efficiency is ${kind.efficiencyPct} %`);
      need(kind.outputW > 0, `it gives ${kind.outputW} W`);
      need(kind.storedWh === undefined || kind.storedWh > 0, `its battery holds ${kind.storedWh ?? 0} Wh`);
      return;
    case 'dimmer':
      need(kind.wayW > 0, `a way carries ${kind.wayW} W`);
      need(kind.leastW >= 0 && kind.leastW <= kind.wayW, `it dims from ${kind.leastW} W up`);
      return;
    case 'adapter':
      need(kind.ampacityA === undefined || kind.ampacityA > 0, `its ampacity is ${kind.ampacityA ?? 0} A`);
      return;
    case 'dataCable':
      need(kind.longestMm > 0, `its longest run is ${kind.longestMm} mm`);
      need(kind.impedanceOhm > 0, `its impedance is ${kind.impedanceOhm} Ω`);
      need(
        kind.stockLengthsMm.every((mm) => mm > 0),
        'a stock length is not above zero',
      );
      return;
    case 'transmitter':
    case 'receiver':
    case 'repeater':
      need(
        kind.bands.every((b) => b.fromMhz > 0 && b.fromMhz < b.toMhz),
        'a band ends below its beginning',
      );
      need(
        kind.bands.every((b) => b.eirpDbm <= 60),
        'it radiates more than 1 kW',
      );
      need(
        kind.sensitivityDbm < 0 && kind.sensitivityDbm > -150,
        `the weakest signal it takes is ${kind.sensitivityDbm} dBm`,
      );
      return;
    default:
  }
};
