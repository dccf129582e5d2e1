import { describe, expect, it } from 'vitest';
import { gearBook, needKind } from '../../src/gear/index.ts';

const PRACTICES = ['north-america', 'europe'] as const;
const FOOT_M = 0.3048;
const LUX_PER_FC = 10.76391;

/** Diameter of a beam at a distance: 2·d·tan(α/2). */
const wide = (beamDeg: number, at: number): number => 2 * at * Math.tan((beamDeg * Math.PI) / 360);
const footCandles = (cd: number, feet: number): number => cd / (feet * FOOT_M) ** 2 / LUX_PER_FC;

describe('gear against published figures', () => {
  it('lights as far and as wide as the course page prints for a 150 W fresnel', () => {
    // Instruments and photometrics, THEA 332, homepages.wmich.edu: 10 ft spot 65 fc, 2.8 ft; 15 ft 29 fc, 4.2 ft;
    // 10 ft flood 16 fc, 11.1 ft.
    const k = needKind('north-america', 'tungsten-fresnel-150w', 'fixture');
    expect(footCandles(k.spot?.candelaCd ?? 0, 10)).toBeCloseTo(65, 1);
    expect(footCandles(k.spot?.candelaCd ?? 0, 15)).toBeCloseTo(28.9, 1);
    expect(wide(k.spot?.beamDeg ?? 0, 10)).toBeCloseTo(2.8, 1);
    expect(wide(k.spot?.beamDeg ?? 0, 15)).toBeCloseTo(4.2, 1);
    expect(footCandles(k.candelaCd ?? 0, 10)).toBeCloseTo(16, 1);
    expect(wide(k.beamDeg ?? 0, 10)).toBeCloseTo(11.1, 1);
  });

  it('spreads ellipsoidals over their printed diameters', () => {
    // stagelightingprimer.com and homepages.wmich.edu list multiplying factors 0.92 to 0.93 for 50°, 0.45 to 0.46 for 26°.
    const fifty = needKind('europe', 'ellipsoidal-50-575w', 'fixture');
    const narrow = needKind('europe', 'ellipsoidal-26-750w', 'fixture');
    expect(wide(fifty.fieldDeg ?? 0, 1)).toBeCloseTo(0.93, 2);
    expect(wide(narrow.fieldDeg ?? 0, 1)).toBeCloseTo(0.46, 2);
  });

  it('draws what an uncorrected 800 W discharge unit is printed to draw', () => {
    // Generator sizing and power factor, imaginenews.com: 800 W at 110 V and power factor 0.58 is 12.5 A, not 7.2 A.
    const k = needKind('north-america', 'ballast-800w-uncorrected', 'ballast');
    expect(800 / (110 * k.load.powerFactor)).toBeCloseTo(12.54, 2);
  });

  it('keeps ballast losses where the installation guide has them', () => {
    // electrical-installation.org, lamps: electronic ballasts add 5 to 10 %, magnetic ones about 25 %.
    for (const practice of PRACTICES)
      for (const k of gearBook(practice)) {
        if (k.family !== 'ballast') continue;
        const lampW = Number(/^ballast-(\d+)w/.exec(k.slug)?.[1]);
        const loss = k.load.wattsW / lampW;
        if (k.slug.endsWith('magnetic')) expect(loss, k.slug).toBeCloseTo(1.25, 2);
        else {
          expect(loss, k.slug).toBeGreaterThanOrEqual(1.05);
          expect(loss, k.slug).toBeLessThanOrEqual(1.1);
        }
      }
  });

  it('rates generators at a power factor of 0.8, and their main within full load', () => {
    // kalkulator.pezal.com prints 10 kVA = 8 kW; so 80 kW is 100 kVA.
    expect(needKind('europe', 'generator-80kw-3ph', 'source').ratedKva).toBeCloseTo(100, 9);
    const volts: Readonly<Record<string, number>> = {
      '120': 120,
      '120/240': 240,
      '120/208': 208 * Math.sqrt(3),
      '230': 230,
      '230/400': 400 * Math.sqrt(3),
    };
    for (const practice of PRACTICES)
      for (const k of gearBook(practice)) {
        if (k.family !== 'source' || k.what !== 'generator') continue;
        const fullLoadA = ((k.ratedKva ?? 0) * 1000) / (volts[k.system] ?? Number.NaN);
        // The next size is allowed where full load falls just short of a standard one.
        expect(k.mainBreakerA ?? 0, k.slug).toBeLessThanOrEqual(fullLoadA * 1.17);
        expect(k.mainBreakerA ?? 0, k.slug).toBeGreaterThan(fullLoadA * 0.6);
      }
  });
});
