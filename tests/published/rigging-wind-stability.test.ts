import { describe, expect, it } from 'vitest';
import { limitOf } from '../../src/derive/limits.ts';
import {
  ballastKg,
  beaufort,
  counterweightKg,
  guyPullN,
  type Mass,
  momentsOf,
  tiltDeg,
  windForceN,
} from '../../src/engines/rigging/calc.ts';
import { computeRigging, windLine } from '../../src/engines/rigging/index.ts';
import { RiggingRig } from '../support/rigging-rig.ts';

// The sources below were not at hand when this was written: their figures are from memory unless a line says otherwise.
const plan = new RiggingRig().plan();
const of = (id: string): number => limitOf(plan, `rigging-${id}`).value;
const PRESSURE = of('wind-pressure');
const G = of('gravity');

// Exact by definition.
const MPH = 1609.344 / 3600;
const FT_M = 0.3048;
const LB_KG = 0.45359237;
const LBF = LB_KG * 9.80665;

const mass = (massKg: number, outMm: number, more: Partial<Mass> = {}): Mass => ({
  name: '',
  massKg,
  outMm,
  heightMm: 0,
  radiusMm: 0,
  ...more,
});

describe('velocity pressure, against standards', () => {
  it('rigging-wind-force: is half the density of the standard atmosphere times the speed squared', () => {
    // ISO 2533:1975, sea level, 15 °C: 1.225 kg/m³ (from memory). Half of it is 0.6125.
    expect(Math.abs(PRESSURE / (0.5 * 1.225) - 1)).toBeLessThan(0.001);
  });

  it('rigging-wind-force: is the 0.00256 of ASCE 7 when it is worked out in pounds, feet and miles an hour', () => {
    // ASCE 7 commentary: ½ · 0.0765 lb/ft³ ÷ 32.2 ft/s² · (5280 ft/mi ÷ 3600 s/h)² = 0.00256 (from memory).
    const printed = 0.5 * (0.0765 / 32.2) * (5280 / 3600) ** 2;
    expect(printed).toBeCloseTo(0.00256, 5);
    expect(windForceN(PRESSURE, MPH, 1, FT_M ** 2) / LBF).toBeCloseTo(0.00256, 5);
  });

  it.each([
    // Uniform Building Code 1997, table 16-F, wind stagnation pressure at 33 ft (from memory): mph, psf, rounded up.
    [70, 12.6],
    [80, 16.4],
    [90, 20.8],
    [100, 25.6],
    [110, 31],
    [120, 36.9],
    [130, 43.3],
  ])('rigging-wind-force: %i mph gives %d lbf/ft² to the tenth above', (mph, psf) => {
    const own = windForceN(PRESSURE, mph * MPH, 1, FT_M ** 2) / LBF;
    expect(own).toBeLessThanOrEqual(psf + 0.05);
    expect(own).toBeGreaterThan(psf - 0.1);
  });

  it.each([
    // DIN EN 1991-1-4/NA, wind zones 1 to 4 (from memory): q = ½ · 1.25 kg/m³ · v², formula 4.10 of EN 1991-1-4: m/s, kN/m².
    [22.5, 0.32],
    [25, 0.39],
    [27.5, 0.47],
    [30, 0.56],
  ])('rigging-wind-force: %d m/s gives %d kN/m² with the density of EN 1991-1-4', (mps, kn) => {
    expect(windForceN(0.5 * 1.25, mps, 1, 1) / 1000).toBeCloseTo(kn, 2);
    // The density the program takes is that of 15 °C at sea level, 1.9 % less than that standard's.
    expect(windForceN(PRESSURE, mps, 1, 1) / windForceN(0.5 * 1.25, mps, 1, 1)).toBeCloseTo(0.981, 3);
  });

  it('rigging-wind-force: 35 m/s on a wall of 10 m² is 7.35 kN in air of 1.2 kg/m³', () => {
    // Worked example "wind load on a wall", engineeringtoolbox.com (from memory).
    expect(windForceN(0.5 * 1.2, 35, 1, 10)).toBeCloseTo(7350, 6);
    // With the program's density a little more: 7.51 kN.
    expect(windForceN(PRESSURE, 35, 1, 10)).toBeCloseTo(7509, 0);
  });

  it('rigging-wind: Beaufort by the formula of its mean speeds, v = 0.836 B^1.5 m/s', () => {
    // World Meteorological Organization, code 1100 (from memory).
    const numbers = Array.from({ length: 12 }, (_, i) => i + 1);
    expect(numbers.map((b) => beaufort(0.836 * b ** 1.5))).toEqual(numbers);
  });
});

describe('force coefficients, against handbooks', () => {
  it('rigging-wind-force: a lamp head is a square plate, a flag no narrower than a long strip', () => {
    // Plates square to the stream, by width over height (White, Fluid Mechanics, table of drag coefficients; from memory):
    // 1: 1.18; 5: 1.2; 10: 1.3; 20: 1.5; endless: 2.0.
    expect(Math.abs(of('wind-cf-unit') / 1.18 - 1)).toBeLessThan(0.02);
    expect(of('wind-cf')).toBeGreaterThan(1.5);
    expect(of('wind-cf')).toBeLessThan(2);
  });

  it('rigging-wind-force: a 1.2 m square board in 10 m/s: between the square plate and the endless strip', () => {
    // Worked by hand with those coefficients: 1.18 · 0.613 · 100 · 1.44 = 104.2 N; with 2.0 it is 176.5 N.
    const b = new RiggingRig({ windMps: 10 });
    b.gripKind('board', { areaM2: 1.44, windShare: 1 });
    const g = b.grip('board');
    const r = computeRigging(b.plan());
    const sail = r.sails.get(g.id);
    const newtons = sail ? windLine(r, sail, 10).forceN : Number.NaN;
    expect(newtons).toBeGreaterThan(104.2);
    expect(newtons).toBeLessThan(176.5);
  });
});

describe('moments and standing up, against textbooks', () => {
  it('rigging-counterweight: 26.0 kg at 1.60 m is balanced by 32.0 kg at 1.30 m', () => {
    // OpenStax, College Physics, example 9.1, "She saw torques on a seesaw" (from memory).
    expect(counterweightKg(26, 1600, 1300)).toBeCloseTo(32, 9);
    const m = momentsOf(G, [mass(26, -1600), mass(32, 1300)], []);
    expect(m.factor).toBeCloseTo(1, 9);
  });

  it('rigging-arm: three masses on a metre stick, balanced by 316.7 g', () => {
    // OpenStax, University Physics volume 1, example 12.1, "The torque balance" (from memory): 50 g 70 cm, 75 g 40 cm and the
    // stick's own 150 g 20 cm to the left of the fulcrum, the last mass 30 cm to the right.
    const left = [mass(0.05, -700), mass(0.075, -400), mass(0.15, -200)];
    const alone = momentsOf(G, [...left, mass(0.1, 300)], []);
    expect(momentsOf(G, [...left, mass(0.3167, 300)], []).factor).toBeCloseTo(1, 3);
    expect(alone.factor).toBeCloseTo(316.7 / 100, 2);
  });

  it.each([
    // A uniform block tips on a slope of atan(width ÷ height), from any text on statics: width, height, degrees.
    [1, 1, 45],
    [1, 2, 26.57],
    [1, 4, 14.04],
  ])('rigging-tilt: a block %d wide and %d high tips at %d°', (width, height, deg) => {
    const block = mass(10, 0, { radiusMm: width * 500, heightMm: height * 500 });
    expect(tiltDeg([block])).toBeCloseTo(deg, 2);
  });

  it('rigging-push: a block is pushed over at its top by half its weight times width over height', () => {
    // From any text on statics: about the edge, P · h = W · b/2. A crate of 100 kg, 0.6 m wide, pushed 1.5 m up: 196.2 N.
    const crate = mass(100, 0, { radiusMm: 300, heightMm: 750 });
    const at = (forceN: number): number =>
      momentsOf(9.81, [crate], [{ name: '', forceN, heightMm: 1500 }]).factor;
    expect(at(196.2)).toBeCloseTo(1, 9);
    expect(at(196.2 / 1.5)).toBeCloseTo(1.5, 9);
  });

  it('rigging-tip: is held to the factor that building codes ask of a wall against turning over', () => {
    // International Building Code, 1807.2.3: a factor of 1.5 against sliding and overturning (from memory).
    expect(of('tip-factor')).toBe(1.5);
    // The ballast for it, worked by hand: (1.5 · 90 − 60) N·m ÷ (9.81 m/s² · 0.5 m) = 15.29 kg.
    const moments = { restoringNm: 60, overturningNm: 90, factor: 60 / 90 };
    expect(ballastKg(9.81, moments, 500, 1.5)).toBeCloseTo(15.29, 2);
  });

  it('rigging-guy: one line of a mast 4 m high, anchored 3 m out, pulls 5/3 of the push at the top', () => {
    // The triangle of 3, 4 and 5 of any text on statics: 100 N at the top make 400 N·m and 166.7 N in the one windward line.
    const angle = (Math.atan2(4, 3) * 180) / Math.PI;
    expect(guyPullN(400, 4000, 2, angle)).toBeCloseTo(500 / 3, 6);
  });
});
