import type { InletPort, LoadModel } from '../plan/kinds/ports.ts';
import type { Practice } from '../plan/records/index.ts';

/**
 * How a unit meets the mains. `line` is leg to neutral; `high` is two legs (208 to 240 V) in North America and
 * 230 V in Europe; `chain` has a locking appliance connector in and through; `domestic` keeps the household plug.
 */
export type Feed = 'line' | 'high' | 'chain' | 'domestic';

/** Volts a unit is fed with: the nominal of the practice. */
export const feedVolts = (practice: Practice, feed: Feed): number =>
  practice === 'europe' ? 230 : feed === 'high' ? 208 : 120;

type Step = readonly [maxA: number, connector: string];

const STEPS: Readonly<Record<string, readonly Step[]>> = {
  'north-america line': [
    [12, 'nema-5-15'],
    [20, 'stage-pin-20'],
    [60, 'stage-pin-60'],
    [100, 'stage-pin-100'],
  ],
  'north-america high': [
    [16, 'nema-l6-20'],
    [60, 'stage-pin-60-2'],
    [100, 'stage-pin-100-2'],
  ],
  'north-america domestic': [[15, 'nema-5-15']],
  'europe line': [
    [16, 'iec-16-1'],
    [32, 'iec-32-1'],
    [63, 'iec-63-1'],
    [125, 'iec-125-1'],
  ],
  'europe domestic': [[16, 'schuko-16']],
};

/** The plug on the unit's own lead for so many amps at nominal volts. Throws for more than the largest plug carries. */
export const inletFor = (practice: Practice, feed: Feed, amps: number): InletPort => {
  if (feed === 'chain') return { id: 'in', connector: 'appliance-lock-20', legs: 1, neutral: true };
  const row = practice === 'europe' && feed === 'high' ? 'line' : feed;
  const step = STEPS[`${practice} ${row}`]?.find(([maxA]) => amps <= maxA);
  if (!step) throw new Error(`no ${practice} plug for ${amps} A (${feed})`);
  const twoLegs = practice === 'north-america' && feed === 'high';
  return { id: 'in', connector: step[1], legs: twoLegs ? 2 : 1, neutral: !twoLegs };
};

interface Profile {
  readonly powerFactor: number;
  readonly model: LoadModel;
  readonly thirdHarmonicPct: number;
  readonly inrushMultiple: number;
  readonly inrushMs: number;
  readonly leakageMa: number;
  readonly standbyW: number;
  readonly expP?: number;
  readonly expQ?: number;
  /** Least and most volts where the supply accepts a range; absent for lamps, which follow the nominal. */
  readonly range?: readonly [number, number];
}

/** Load behaviour by kind of circuit. Power factors and harmonics are planning values for the class, not of one unit. */
export const PROFILES = {
  tungsten: {
    powerFactor: 1,
    model: 'tungsten',
    thirdHarmonicPct: 0,
    inrushMultiple: 12,
    inrushMs: 5,
    leakageMa: 0.2,
    standbyW: 0,
  },
  led: {
    powerFactor: 0.95,
    model: 'constant-power',
    thirdHarmonicPct: 10,
    inrushMultiple: 30,
    inrushMs: 0.3,
    leakageMa: 0.7,
    standbyW: 8,
    range: [90, 264],
  },
  'led-small': {
    powerFactor: 0.6,
    model: 'constant-power',
    thirdHarmonicPct: 75,
    inrushMultiple: 40,
    inrushMs: 0.3,
    leakageMa: 0.3,
    standbyW: 2,
    range: [90, 264],
  },
  'led-high': {
    powerFactor: 0.97,
    model: 'constant-power',
    thirdHarmonicPct: 8,
    inrushMultiple: 20,
    inrushMs: 0.3,
    leakageMa: 1.5,
    standbyW: 20,
    range: [180, 264],
  },
  fluorescent: {
    powerFactor: 0.9,
    model: 'constant-power',
    thirdHarmonicPct: 15,
    inrushMultiple: 20,
    inrushMs: 0.5,
    leakageMa: 0.7,
    standbyW: 0,
  },
  'ballast-corrected': {
    powerFactor: 0.98,
    model: 'constant-power',
    thirdHarmonicPct: 8,
    inrushMultiple: 8,
    inrushMs: 5,
    leakageMa: 2.5,
    standbyW: 20,
  },
  'ballast-uncorrected': {
    powerFactor: 0.62,
    model: 'constant-power',
    thirdHarmonicPct: 70,
    inrushMultiple: 8,
    inrushMs: 5,
    leakageMa: 1.5,
    standbyW: 10,
    range: [90, 265],
  },
  'ballast-magnetic': {
    powerFactor: 0.9,
    model: 'exponential',
    expP: 1.8,
    expQ: 3,
    thirdHarmonicPct: 20,
    inrushMultiple: 15,
    inrushMs: 10,
    leakageMa: 1,
    standbyW: 0,
  },
} as const satisfies Record<string, Profile>;

/** Where the rest of a load comes from when only its watts are known of the class. */
export const CLASS_VALUES = {
  powerFactor: 'planning value of the class, assumed',
  thirdHarmonicPct: 'planning value of the class, assumed',
  inrushMultiple: 'planning value of the class, assumed',
  leakageMa: 'planning value of the class, assumed',
  standbyW: 'planning value of the class, assumed',
} as const;

export type ProfileName = keyof typeof PROFILES;

/** Amps at nominal volts: W / (V · power factor). */
export const nominalAmps = (practice: Practice, feed: Feed, wattsW: number, powerFactor: number): number =>
  wattsW / (feedVolts(practice, feed) * powerFactor);

/** The load and the inlet of a unit that draws so many watts. Lamps run from 90 % to 105 % of the nominal volts. */
export const mains = (
  practice: Practice,
  feed: Feed,
  name: ProfileName,
  wattsW: number,
  change: { powerFactor?: number; standbyW?: number } = {},
) => {
  const { range, ...profile } = { range: undefined, ...PROFILES[name], ...change };
  const v = feedVolts(practice, feed);
  const [voltsMinV, voltsMaxV] = range ?? [Math.round(v * 0.9), Math.round(v * (v > 200 ? 1.08 : 1.05))];
  return {
    load: { wattsW, ...profile, voltsMinV, voltsMaxV },
    inlets: [inletFor(practice, feed, nominalAmps(practice, feed, wattsW, profile.powerFactor))],
    outlets:
      feed === 'chain'
        ? [{ id: 'through', connector: 'appliance-lock-20', legs: 1, neutral: true, label: 'through' }]
        : [],
  };
};
