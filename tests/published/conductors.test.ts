import { describe, expect, it } from 'vitest';
import { conductor, resistanceOhmPerKm } from '../../src/derive/conductors.ts';
import { supplyTree } from '../../src/derive/supply.ts';
import { sourceRating } from '../../src/engines/power/index.ts';
import { nodeLimits } from '../../src/engines/power/limits.ts';
import { generatorRig } from '../support/plan-builder.ts';

const row = (id: string) => {
  const c = conductor(id);
  if (!c) throw new Error(id);
  return c;
};

describe('conductor resistance against printed relations', () => {
  it('power-impedance: R at 20 °C over R at 60, 75 and 90 °C is 0.862, 0.820, 0.781 within 0.5 % (uecables.com)', () => {
    const c = row('mm2:2.5');
    const printed: readonly (readonly [number, number])[] = [
      [60, 0.862],
      [75, 0.82],
      [90, 0.781],
    ];
    for (const [t, factor] of printed)
      expect(Math.abs(resistanceOhmPerKm(c, 20) / resistanceOhmPerKm(c, t) / factor - 1)).toBeLessThan(0.005);
  });

  it('power-impedance: both temperature rules agree with the 234.5/254.5 form of FAA AC 43.13-1B 11-66', () => {
    const form = (from: number, to: number): number => (234.5 + to) / (234.5 + from);
    expect(resistanceOhmPerKm(row('mm2:16'), 75) / resistanceOhmPerKm(row('mm2:16'), 20)).toBeCloseTo(
      form(20, 75),
      3,
    );
    expect(resistanceOhmPerKm(row('awg:12'), 20) / resistanceOhmPerKm(row('awg:12'), 75)).toBeCloseTo(
      form(75, 20),
      3,
    );
  });

  it('power-impedance: at 20 °C a stranded AWG conductor is about 82 % of the 75 °C table (voltdropcalc.com)', () => {
    expect(resistanceOhmPerKm(row('awg:12'), 20) / row('awg:12').ohmPerKm).toBeCloseTo(0.82, 2);
  });

  it('power-impedance: R times circular mils gives K of about 12.9 ohm-cmil/ft for every AWG size (energycalculate.com, tradelicenseprep.com)', () => {
    const cmil = {
      '14': 4110,
      '12': 6530,
      '10': 10380,
      '8': 16510,
      '6': 26240,
      '4': 41740,
      '2': 66360,
      '1/0': 105600,
      '2/0': 133100,
      '3/0': 167800,
      '4/0': 211600,
    };
    for (const [size, area] of Object.entries(cmil)) {
      const k = ((row(`awg:${size}`).ohmPerKm * 0.3048) / 1000) * area;
      expect(Math.abs(k - 12.9)).toBeLessThan(0.1);
    }
  });

  it('power-impedance: every AWG row brought to 20 °C is copper of 17.241 ohm mm²/km plus 1 to 3 % of stranding (IACS; ASTM B8)', () => {
    for (const size of ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1/0', '2/0', '3/0', '4/0']) {
      const c = row(`awg:${size}`);
      const rho = resistanceOhmPerKm(c, 20) * c.areaMm2;
      expect(rho / 17.241).toBeGreaterThan(1.01);
      expect(rho / 17.241).toBeLessThan(1.03);
    }
  });
});

describe('ratings against printed examples', () => {
  it('power-rating: a set of 100 kVA is 80 kW (kalkulator.pezal.com prints 10 kVA as 8 kW)', () => {
    const { b, source } = generatorRig({}, 100);
    b.sourceKind('set', { system: '120/208', ratedKva: 10 });
    expect(sourceRating(b.plan(), source.id).kw).toBeCloseTo(8, 9);
  });

  it('power-limit: a continuous 16 A needs a 20 A breaker: a 20 A breaker may carry 16 A (joshthesparky.com; NEC 210.20(A))', () => {
    const { b, box } = generatorRig();
    const tree = supplyTree(b.plan());
    const way = tree.byKey.get(`${box.id}/1`);
    expect(nodeLimits(b.plan(), tree)[way?.index ?? -1]?.leg?.limitA).toBe(16);
  });
});
