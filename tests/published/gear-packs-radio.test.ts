import { describe, expect, it } from 'vitest';
import { radioLimitDbm } from '../../src/gear/data/radio.ts';
import { gearBook } from '../../src/gear/index.ts';

const PRACTICES = ['north-america', 'europe'] as const;
const dBm = (mW: number): number => 10 * Math.log10(mW);

/**
 * Minutes from empty to full: constant current to 80 %, then a taper to a twentieth of the capacity whose charge is the
 * rest. t = s·C/I + τ·ln(I/I_end), τ = (1 − s)·C/(I − I_end).
 */
const chargeMinutes = (capacityAh: number, amps: number, endA = 0.05 * capacityAh): number => {
  const s = 0.8;
  const tau = ((1 - s) * capacityAh) / (amps - endA);
  return 60 * ((s * capacityAh) / amps + tau * Math.log(amps / endA));
};

describe('packs against published figures', () => {
  it('fall under the three classes of air travel by watt-hours', () => {
    // 49 CFR 175.10(a)(18) and IATA DGR 2.3: to 100 Wh in the cabin; to 160 Wh with the operator's approval; above, as cargo.
    const lithium = gearBook('europe').flatMap((k) =>
      k.family === 'pack' && (k.chemistry === 'li-ion' || k.chemistry === 'lifepo4') ? [k] : [],
    );
    const count = (from: number, to: number): number =>
      lithium.filter((k) => k.energyWh > from && k.energyWh <= to).length;
    expect(count(0, 100)).toBeGreaterThanOrEqual(4);
    expect(count(100, 160)).toBeGreaterThanOrEqual(2);
    expect(count(160, Number.POSITIVE_INFINITY)).toBeGreaterThanOrEqual(6);
    // The class follows from volts times ampere-hours too, where a label gives only those.
    const airClass = (wh: number): number => (wh <= 100 ? 0 : wh <= 160 ? 1 : 2);
    for (const k of lithium) expect(airClass(k.voltsV * k.capacityAh), k.slug).toBe(airClass(k.energyWh));
    for (const k of lithium) expect(k.notes, k.slug).toMatch(/ask the operator/);
  });

  it('stand at the volts printed for four cells', () => {
    // A maker's article on camera batteries: 4 × 3.6 V = 14.4 V. A stabiliser's manual: full at 16.8 V.
    for (const k of gearBook('north-america'))
      if (k.family === 'pack' && k.cells === 4) {
        expect(k.voltsV, k.slug).toBeCloseTo(14.4, 9);
        expect(k.fullV, k.slug).toBeCloseTo(16.8, 9);
      }
  });

  it('charge in the time of constant current and taper', () => {
    // The same manual, p. 28: a 14.8 V 6 Ah pack at 3 A is at 80 % after just over 90 min and full after about 160 min.
    expect(((0.8 * 6) / 3) * 60).toBeCloseTo(96, 9);
    expect(Math.abs(chargeMinutes(6, 3) - 160) / 160).toBeLessThan(0.02);
    for (const k of gearBook('europe')) {
      if (k.family !== 'pack' || (k.chemistry !== 'li-ion' && k.chemistry !== 'lifepo4')) continue;
      const model = chargeMinutes(k.capacityAh, k.chargeW / k.fullV);
      expect(Math.abs(k.chargeMin - model) / model, k.slug).toBeLessThan(0.1);
    }
  });
});

describe('radio against published limits', () => {
  it('keeps to 1 W at the socket and less above 6 dBi in North America', () => {
    // 47 CFR 15.247: 1 W conducted, antenna gain above 6 dBi reduces it dB for dB: 36 dBm radiated.
    expect(radioLimitDbm('north-america', '2.4', 2).conductedDbm).toBeCloseTo(dBm(1000), 9);
    expect(radioLimitDbm('north-america', '2.4', 6).eirpDbm).toBeCloseTo(36, 9);
    expect(radioLimitDbm('north-america', '2.4', 12)).toEqual({ conductedDbm: 24, eirpDbm: 36 });
  });

  it('keeps to 100 mW radiated in Europe', () => {
    // EN 300 328: 20 dBm (100 mW) radiated at 2400–2483.5 MHz; from memory. EN 300 220: 25 mW ERP below 1 GHz; from memory.
    expect(radioLimitDbm('europe', '2.4', 5).eirpDbm).toBeCloseTo(20, 9);
    expect(radioLimitDbm('europe', 'sub', 2).eirpDbm).toBeCloseTo(16.13, 2);
  });

  it('radiates no more than that from any kind of the book, inside the bands', () => {
    const bands = {
      'north-america': [
        [902, 928],
        [2400, 2483.5],
        [5725, 5850],
      ],
      europe: [
        [863, 870],
        [2400, 2483.5],
        [5725, 5875],
      ],
    } as const;
    for (const practice of PRACTICES)
      for (const k of gearBook(practice)) {
        if (k.family !== 'transmitter' && k.family !== 'receiver' && k.family !== 'repeater') continue;
        for (const b of k.bands) {
          const at = bands[practice].findIndex(([from, to]) => b.fromMhz >= from && b.toMhz <= to);
          expect(at, `${practice} ${k.slug} ${b.fromMhz} MHz`).toBeGreaterThanOrEqual(0);
          const most = practice === 'north-america' ? 36 : [dBm(25) + 2.15, 20, dBm(25)][at];
          expect(b.eirpDbm, `${practice} ${k.slug}`).toBeLessThanOrEqual(most ?? Number.NaN);
        }
      }
  });
});
