import { describe, expect, it } from 'vitest';
import { limitRows } from '../../src/derive/limits.ts';
import {
  availability,
  breakpointM,
  EDGE_FREE_NU,
  edgeDb,
  edgeNu,
  freeSpaceDb,
  freeSpaceM,
  fresnelM,
  groundDb,
  indoorDb,
  indoorNewDb,
  patternDb,
  wavelengthM,
} from '../../src/engines/radio/calc.ts';
import { computeRadio } from '../../src/engines/radio/index.ts';
import { conductivity, dbPerMetre, floorLoss, p2040Row, slabDb } from '../../src/engines/radio/materials.ts';
import {
  freeHopsMhz,
  freeShare,
  lowEnergyCentreMhz,
  wifiCentreMhz,
  wifiDb,
} from '../../src/engines/radio/wifi.ts';
import { RadioRig } from '../support/radio-rig.ts';

/** ITU-R P.525 prints its constant as 32.4, handbooks as 32.44 or 32.45: a spread of 0.05 dB. */
const CONSTANT_DB = 0.06;

const row = (id: string) => {
  const r = p2040Row(id);
  if (!r) throw new Error(`no row ${id}`);
  return r;
};

describe('free space (ITU-R P.525)', () => {
  it.each([
    // A public test log of a free-space script: 2.4 GHz over 100 m, 200 m, 300 m and 1 km.
    [2400, 100, 80.05],
    [2400, 200, 86.07],
    [2400, 300, 89.59],
    [2400, 1000, 100.05],
    // A university library's worked examples of 2.4 and 5.8 GHz links.
    [2400, 5000, 114.02],
    [2400, 10_000, 120.05],
    [5800, 5000, 121.69],
    [5800, 10_000, 127.71],
    // A wireless planner's table in feet: 1000 ft 90 dB, 400 ft 82, 100 ft 70, 50 ft 64, rounded to whole dB; recomputed here.
    [2400, 304.8, 89.73],
    [2400, 121.92, 81.77],
    [2400, 30.48, 69.73],
    [2400, 15.24, 63.7],
    // P.525 by its own formula, for the bands below 1 GHz and at 5 GHz.
    [900, 100, 71.53],
    [5200, 30, 76.31],
  ])('%d MHz over %d m costs %d dB', (mhz, m, db) => {
    expect(Math.abs(freeSpaceDb(mhz, m) - db)).toBeLessThan(CONSTANT_DB);
  });

  it('goes back from loss to distance', () => {
    // The same planner's table: 68 dB are left at about 80 ft (24.97 m) at 2.4 GHz.
    expect(freeSpaceM(2400, 68)).toBeCloseTo(24.97, 1);
  });

  it('gives the levels of worked links', () => {
    // A telecoms page: 10 W at 900 MHz over 2 km between unity aerials: −57.63 dBm with the wavelength rounded to 0.33 m.
    expect(Math.abs(40 - freeSpaceDb(900, 2000) - -57.63)).toBeLessThan(0.1);
    // A university library: 23 dBm with 24 dBi at each end over 5 km at 5.8 GHz: −50.69 dBm, 21.31 dB above −72 dBm.
    const dbm = 23 + 24 + 24 - freeSpaceDb(5800, 5000);
    expect(Math.abs(dbm - -50.69)).toBeLessThan(CONSTANT_DB);
    expect(Math.abs(dbm - -72 - 21.31)).toBeLessThan(CONSTANT_DB);
    // A textbook on mobile radio (from memory): 50 W at 900 MHz, −24.5 dBm at 100 m, −64.5 dBm at 10 km.
    const fifty = 10 * Math.log10(50_000);
    expect(Math.abs(fifty - freeSpaceDb(900, 100) - -24.5)).toBeLessThan(CONSTANT_DB);
    expect(Math.abs(fifty - freeSpaceDb(900, 10_000) - -64.5)).toBeLessThan(CONSTANT_DB);
  });

  it('gives the margin of a whole plan in the open', () => {
    // 20 dBm, −92 dBm, nothing in between, 3 dB reserve: what P.525 leaves at 100 m and 2400 MHz, far inside the break point.
    const b = new RadioRig();
    b.device(0, 0, { heightMm: 4500 });
    const u = b.unit(100, 0, { heightMm: 4500 });
    const m = computeRadio(b.plan()).links.get(u.id)?.marginDb ?? Number.NaN;
    expect(Math.abs(m - (20 + 92 - 3 - 80.05))).toBeLessThan(CONSTANT_DB);
  });
});

describe('indoors (ITU-R P.1238)', () => {
  it('agrees with a network simulator’s own test', () => {
    // ns-3, buildings-pathloss-test: residential, 2114 MHz, 30 m across and 9 m up, two floors of 4 dB: 88.3855 dB.
    expect(indoorDb(2114, Math.sqrt(981), 28, 8)).toBeCloseTo(88.3855, 3);
  });

  it.each([
    // To edition 9: N 30 in offices, 28 in homes, 22 in shops, at 2.4 GHz; 14 dB for one floor of an office (a university script).
    [20, 30, 0, 78.64],
    [10, 30, 14, 83.6],
    [30, 28, 0, 80.96],
    [50, 22, 0, 76.98],
  ])('over %d m with N %d and %d dB of floors it is %d dB', (m, n, floors, db) => {
    expect(indoorDb(2400, m, n, floors)).toBeCloseTo(db, 1);
  });

  it.each([
    // From edition 10 on (coefficients of P.1238-11, table 2, in an open script): industrial and office, with and without sight.
    ['industrial, in sight', { alpha: 2.31, beta: 24.52, gamma: 2.06 }, 30, 66.47],
    ['industrial, out of sight', { alpha: 3.79, beta: 21.01, gamma: 1.34 }, 30, 82.09],
    ['office, in sight', { alpha: 1.46, beta: 34.62, gamma: 2.03 }, 10, 56.94],
    ['corridor, in sight', { alpha: 1.63, beta: 28.12, gamma: 2.25 }, 100, 69.27],
  ])('%s', (_, c, m, db) => {
    expect(indoorNewDb(2400, m, c)).toBeCloseTo(db, 1);
  });

  it('stays within the spread of the newer industrial form on a stage', () => {
    // P.1238-11, industrial in sight, σ 2.69 dB: a stage without walls in the way, 10 to 40 m.
    for (const m of [10, 20, 30, 40]) {
      const b = new RadioRig();
      b.put({ ...b.records.get('floor'), ceilingMm: 8000 } as never);
      b.device(0, 0);
      const u = b.unit(m, 0);
      const margin = computeRadio(b.plan()).links.get(u.id)?.marginDb ?? Number.NaN;
      const loss = 20 + 92 - 3 - margin;
      const industrial = indoorNewDb(2400, m, { alpha: 2.31, beta: 24.52, gamma: 2.06 });
      expect(Math.abs(loss - industrial), `${m} m`).toBeLessThan(2 * 2.69 + 1.5);
    }
  });

  it('counts floors as the table has them', () => {
    // P.1238, table 3, office: 9, 19 and 24 dB at 0.9 GHz; 14 dB at 2.4 GHz; 16 dB at 5.2 GHz; 22 and 28 dB at 5.8 GHz.
    expect([1, 2, 3].map((n) => floorLoss(n, 900).db)).toEqual([9, 19, 24]);
    expect(floorLoss(1, 2440).db).toBe(14);
    expect(floorLoss(1, 5200).db).toBe(16);
    expect([1, 2].map((n) => floorLoss(n, 5800).db)).toEqual([22, 28]);
    expect(floorLoss(0, 2440).db).toBe(0);
  });

  it('fits a log-distance exercise', () => {
    // A course’s solved exercise: 40 dB at 1 m, exponent 3, 0 dBm, 6 dB of gain, −98 and −99 dBm: 136 and 147 m.
    const reach = (dbm: number): number => 10 ** ((0 + 6 - dbm - 40) / 30);
    expect(reach(-98)).toBeCloseTo(135.94, 1);
    expect(reach(-99)).toBeCloseTo(146.78, 1);
    expect(indoorDb(2440, 135.94, 30) - indoorDb(2440, 1, 30)).toBeCloseTo(64, 1);
  });
});

describe('Fresnel zones and edges (ITU-R P.526)', () => {
  it.each([
    // A radio amateur's page: 5.6 m half way of 1 km at 2.4 GHz.
    [2400, 500, 500, 5.588],
    // P.526 by its formula; 60 % of the second is 1.060 m.
    [2400, 50, 50, 1.767],
    [2400, 2500, 2500, 12.496],
    [2400, 10, 90, 1.06],
    [2400, 25, 75, 1.53],
    [900, 500, 500, 9.126],
    [5200, 15, 15, 0.658],
  ])('%d MHz, %d m and %d m: %d m', (mhz, a, b, m) => {
    expect(fresnelM(mhz, a, b)).toBeCloseTo(m, 2);
  });

  it('comes within half a per cent of the rule of thumb', () => {
    // P.526 (editions 8 to 14 alike): R = 550 · √(n d1 d2 ÷ ((d1 + d2) f)), km and MHz.
    for (const [d1, d2, f] of [
      [0.05, 0.05, 2400],
      [0.2, 0.8, 900],
      [1, 4, 5800],
    ] as const) {
      const thumb = 550 * Math.sqrt((d1 * d2) / ((d1 + d2) * f));
      expect(Math.abs(fresnelM(f, d1 * 1000, d2 * 1000) / thumb - 1)).toBeLessThan(0.005);
    }
    // A calculator page: half way R = 17.32 · √(km ÷ (4 GHz)).
    expect(Math.abs(fresnelM(2400, 500, 500) / (17.32 * Math.sqrt(1 / 9.6)) - 1)).toBeLessThan(0.005);
  });

  it.each([
    // The official implementation of P.1812 has the same constants, 6.9, 0.1 and −0.78.
    [0, 6.033],
    [0.5, 10.288],
    [1, 13.926],
    [1.5, 16.784],
    [2, 19.043],
    [2.4, 20.539],
    [3, 22.416],
    [-0.5, 1.959],
  ])('an edge at ν %d costs %d dB', (nu, db) => {
    expect(edgeDb(nu)).toBeCloseTo(db, 2);
  });

  it('costs nothing with the edge far below', () => {
    // P.526: J = 0 for ν below −0.78.
    expect(edgeDb(-0.78)).toBe(0);
    expect(edgeDb(-1)).toBe(0);
    expect(edgeDb(EDGE_FREE_NU + 1e-9)).toBeLessThan(0.01);
  });

  it('halves the field at grazing', () => {
    // A lecture on channel modelling: the exact theory gives one half of the field, 6.02 dB.
    expect(Math.abs(edgeDb(0) - 20 * Math.log10(2))).toBeLessThan(0.05);
  });

  it('gives the worked example of a hill', () => {
    // A textbook on mobile radio (from memory): λ 1/3 m, 25 m above the line, 1 km and 1 km: ν 2.74, about 21.7 dB.
    const mhz = 299_792_458 / (1 / 3) / 1e6;
    expect(edgeNu(mhz, 25, 1000, 1000)).toBeCloseTo(2.7386, 3);
    expect(edgeDb(edgeNu(mhz, 25, 1000, 1000))).toBeCloseTo(21.644, 2);
    // The usual approximation beyond 2.4: 13 + 20 log ν.
    expect(Math.abs(edgeDb(2.7386) - (13 + 20 * Math.log10(2.7386)))).toBeLessThan(0.2);
  });

  it('follows the pieces of the usual approximation between 0 and 2.4', () => {
    // A reference of mobile communication: 6 + 9 ν − 1.27 ν².
    for (let nu = 0.1; nu < 2.4; nu += 0.1)
      expect(Math.abs(edgeDb(nu) - (6 + 9 * nu - 1.27 * nu * nu)), `ν ${nu}`).toBeLessThan(0.35);
  });

  it('gives set-sized edges', () => {
    // P.526 by its formulas: 0.5 m above a 40 m line half way; 0.2 m above, 5 m and 15 m; 1 m above, 30 m and 10 m.
    expect(edgeNu(2400, 0.5, 20, 20)).toBeCloseTo(0.6327, 3);
    expect(edgeDb(edgeNu(2400, 0.5, 20, 20))).toBeCloseTo(11.332, 2);
    expect(edgeDb(edgeNu(2400, 0.2, 5, 15))).toBeCloseTo(9.58, 2);
    expect(edgeDb(edgeNu(2400, 1, 30, 10))).toBeCloseTo(16.59, 2);
    expect(edgeDb(edgeNu(2400, -0.5, 25, 25))).toBeCloseTo(1.48, 2);
  });

  it('costs next to nothing with 60 % of the first zone clear', () => {
    // The usual rule of link planning: keep 60 % of the first zone clear.
    const r = fresnelM(2400, 20, 20);
    expect(edgeDb(edgeNu(2400, -0.6 * r, 20, 20))).toBeLessThan(0.05);
    expect(edgeDb(edgeNu(2400, -0.3 * r, 20, 20))).toBeGreaterThan(1);
  });
});

describe('ground and fading', () => {
  it('breaks where 4 h1 h2 ÷ λ says', () => {
    // Several pages on two-ray ground reflection: 96.1 m for 2 m and 1.5 m at 2.4 GHz, 32 m for 1 m and 1 m.
    expect(breakpointM(2400, 2, 1.5)).toBeCloseTo(96.07, 1);
    expect(breakpointM(2400, 1, 1)).toBeCloseTo(32.02, 1);
    expect(breakpointM(900, 2, 1.5)).toBeCloseTo(36.03, 1);
  });

  it('costs 40 dB per decade beyond', () => {
    // The same pages: 98.42 dB at 500 m, 110.46 dB at 1 km for 2 m and 1.5 m.
    expect(groundDb(500, 2, 1.5)).toBeCloseTo(98.42, 1);
    expect(groundDb(1000, 2, 1.5)).toBeCloseTo(110.46, 1);
  });

  it.each([
    // The exponential law of received power (Rayleigh fading, one aerial).
    [5, 72.9],
    [10, 90.48],
    [20, 99.0],
    [30, 99.9],
  ])('a margin of %d dB holds %d %% of the time', (db, pct) => {
    expect(availability(db) * 100).toBeCloseTo(pct, 1);
  });

  it('loses 3 dB half a beam off the axis, and no more than the back', () => {
    // 3GPP TR 36.814, table A.2.1.1-2: −min(12 (φ ÷ φ3dB)², Am); 70° and 25 dB there.
    expect(patternDb(35, 70, 25)).toBeCloseTo(3, 9);
    expect(patternDb(180, 70, 25)).toBe(25);
  });

  it('has the wavelengths of the bands', () => {
    // c ÷ f: 12.5 cm at 2.4 GHz.
    expect(wavelengthM(2400)).toBeCloseTo(0.1249, 4);
  });
});

describe('materials (ITU-R P.2040)', () => {
  it('agrees with the 2015 edition’s worked conductivities', () => {
    // A simulation vendor's documentation, 9 GHz: concrete 0.19305 S/m, plasterboard 0.054914 S/m (P.2040-1 coefficients).
    expect(conductivity({ a: 5.31, b: 0, c: 0.0326, d: 0.8095 }, 9000)).toBeCloseTo(0.19305, 5);
    expect(conductivity({ a: 2.94, b: 0, c: 0.0116, d: 0.7076 }, 9000)).toBeCloseTo(0.054914, 5);
  });

  it.each([
    // Slab formula of P.2040 at normal incidence, coefficients of the newer table; 17.98 from memory of the Recommendation.
    ['concrete', 200, 2400, 14.57, 0.05],
    ['concrete', 100, 2400, 8.1, 0.06],
    ['plasterboard', 12.5, 2400, 1.07, 0.03],
    ['brick', 102.5, 2400, 3.4, 0.06],
    ['brick', 215, 2400, 5.7, 0.06],
    ['glass', 6, 2400, 1.9, 0.06],
    ['glass', 6, 5200, 3.3, 0.06],
    ['concrete', 200, 5200, 25.4, 0.1],
  ])('%s of %d mm at %d MHz takes %d dB', (id, mm, mhz, db, tolerance) => {
    expect(Math.abs(slabDb(row(id), mm, mhz) - db)).toBeLessThan(tolerance);
  });

  it('takes as much per metre as thick slabs show', () => {
    // What a slab of 400 mm takes more than one of 200 mm is the attenuation rate of P.2040, ripple aside.
    const more = slabDb(row('concrete'), 400, 2400) - slabDb(row('concrete'), 200, 2400);
    expect(Math.abs(more / 0.2 - dbPerMetre(row('concrete'), 2400))).toBeLessThan(3);
  });
});

describe('channels', () => {
  it.each([
    // A network training page and a kernel project's page: 2407 + 5 n MHz; 14 apart. 36 and 149 of the 5 GHz band.
    [1, 2412],
    [6, 2437],
    [11, 2462],
    [13, 2472],
    [14, 2484],
    [36, 5180],
    [149, 5745],
  ])('Wi-Fi %d lies at %d MHz', (n, mhz) => {
    expect(wifiCentreMhz(n)).toBe(mhz);
  });

  it('knows no other Wi-Fi channels', () => {
    expect([0, 15, 1.5, -1, 200].map(wifiCentreMhz)).toEqual(Array(5).fill(undefined));
  });

  it.each([
    // A university's notes on low-energy radio: f = 2402 + 2 k MHz; advertising at 2402, 2426 and 2480.
    [0, 2402],
    [12, 2426],
    [39, 2480],
  ])('low-energy channel %d lies at %d MHz', (k, mhz) => {
    expect(lowEnergyCentreMhz(k)).toBe(mhz);
  });

  it('leaves sixteen of 79 hop channels beside Wi-Fi on 1, 6 and 11', () => {
    // Widths of 20 MHz (2402–2422, 2427–2447, 2452–2472): 2423–2426, 2448–2451 and 2473–2480 stay free.
    expect(freeHopsMhz([1, 6, 11])).toEqual([
      2423, 2424, 2425, 2426, 2448, 2449, 2450, 2451, 2473, 2474, 2475, 2476, 2477, 2478, 2479, 2480,
    ]);
    expect(freeHopsMhz([])).toHaveLength(79);
  });

  it('takes a quarter of the hops for one Wi-Fi channel', () => {
    // The kernel project's page on coexistence: one channel of 20 MHz covers 20 of 79 hop channels, its rims one more.
    expect(79 - freeHopsMhz([6]).length).toBe(21);
    expect(wifiDb(freeShare(2400, 2483.5, [6]))).toBeCloseTo(-10 * Math.log10(58 / 79), 9);
  });

  it('keeps the reserve of two linear aerials at 45°', () => {
    // Malus: 20 log cos 45° = 3.01 dB.
    const reserve = limitRows.find((r) => r.id === 'radio-reserve')?.value ?? Number.NaN;
    expect(Math.abs(reserve + 20 * Math.log10(Math.cos(Math.PI / 4)))).toBeLessThan(0.02);
  });
});
