import fc from 'fast-check';
import { systemShape } from '../../src/derive/systems.ts';
import type { System } from '../../src/plan/kinds/kinds.ts';
import type { LoadSpec } from '../../src/plan/kinds/ports.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { PlanBuilder } from './plan-builder.ts';

/** One load of a random rig: which of the open outlets it takes, its kind's figures, its run, its levels by setup. */
export interface RandomLoad {
  readonly outlet: number;
  readonly wattsW: number;
  readonly powerFactor: number;
  readonly leading: boolean;
  readonly model: LoadSpec['model'];
  readonly lengthMm: number;
  readonly levels: readonly (number | undefined)[];
}

export interface RandomRig {
  readonly system: System;
  readonly what: 'generator' | 'house-panel';
  readonly boxes: readonly { readonly parent: number; readonly lengthMm: number }[];
  readonly loads: readonly RandomLoad[];
  readonly setups: number;
  readonly practice: 'north-america' | 'europe';
  readonly voltsV: number | undefined;
}

const FEED = 'single-pole-400-3';
const OUT = 'stage-pin-20';

const nominal = (system: System): { legs: number; volts: number } => {
  const shape = systemShape(system);
  if (!shape) throw new Error(system);
  return { legs: shape.legs, volts: shape.nominalV };
};

/** Random plans that can be built and solved: a source, a tree of boxes, loads on their ways, setups with levels. */
export const randomRig: fc.Arbitrary<RandomRig> = fc
  .record({
    system: fc.constantFrom<System>(
      '120',
      '120/240',
      '120/208',
      '120/240-delta',
      '277/480',
      '230',
      '230/400',
    ),
    what: fc.constantFrom<'generator' | 'house-panel'>('generator', 'house-panel'),
    practice: fc.constantFrom<'north-america' | 'europe'>('north-america', 'europe'),
    boxes: fc.array(fc.record({ parent: fc.nat(5), lengthMm: fc.integer({ min: 0, max: 60_000 }) }), {
      minLength: 1,
      maxLength: 6,
    }),
    setups: fc.integer({ min: 0, max: 3 }),
    given: fc.option(fc.double({ min: 0.9, max: 1.1, noNaN: true }), { nil: undefined }),
    loads: fc.array(
      fc.record({
        outlet: fc.nat(1000),
        wattsW: fc.integer({ min: 0, max: 1500 }),
        powerFactor: fc.double({ min: 0.4, max: 1, noNaN: true }),
        leading: fc.boolean(),
        model: fc.constantFrom<LoadSpec['model']>(
          'constant-power',
          'constant-current',
          'constant-impedance',
          'tungsten',
          'exponential',
        ),
        lengthMm: fc.integer({ min: 0, max: 30_000 }),
        levels: fc.array(fc.option(fc.integer({ min: 0, max: 100 }), { nil: undefined }), {
          minLength: 3,
          maxLength: 3,
        }),
      }),
      { maxLength: 16 },
    ),
  })
  .map(({ given, ...r }) => ({
    ...r,
    voltsV: given === undefined ? undefined : given * nominal(r.system).volts,
  }));

/** Builds the plan of a random rig. */
export const buildRig = (rig: RandomRig): { readonly plan: Plan; readonly builder: PlanBuilder } => {
  const { legs } = nominal(rig.system);
  const b = new PlanBuilder({ practice: rig.practice });
  const port = (id: string) => ({ id, connector: FEED, legs, neutral: true });
  const kind = rig.practice === 'europe' ? 'mm2:' : 'awg:';
  b.sourceKind('source', {
    what: rig.what,
    system: rig.system,
    mainBreakerA: 400,
    ...(rig.what === 'generator' ? { ratedKva: 100 } : {}),
    outlets: rig.boxes.map((_, i) => port(`o${i}`)),
  });
  b.cableKind('feeder', {
    legs,
    plug: FEED,
    socket: FEED,
    conductor: `${kind}${kind === 'awg:' ? '4/0' : '95'}`,
    ampacityA: 316,
  });
  b.cableKind('lead', { plug: OUT, socket: OUT, conductor: `${kind}${kind === 'awg:' ? '12' : '2.5'}` });
  b.boxKind('box', {
    inlets: [port('in')],
    ways: Array.from({ length: 6 }, (_, i) => ({
      id: `w${i}`,
      label: String(i + 1),
      breakerA: 20,
      poles: 1,
      curve: 'C' as const,
      legs: [i % legs],
    })),
    outlets: [
      ...Array.from({ length: 6 }, (_, i) => ({
        id: `w${i}`,
        connector: OUT,
        legs: 1,
        neutral: true,
        wayId: `w${i}`,
      })),
      ...rig.boxes.map((_, i) => port(`thru${i}`)),
    ],
  });
  const source = b.source('source', { ...(rig.voltsV === undefined ? {} : { voltsV: rig.voltsV }) });
  const boxes = rig.boxes.map((x, i) => {
    const box = b.box('box', { label: `K${i + 1}` });
    return { ...x, box };
  });
  boxes.forEach((x, i) => {
    const parent = x.parent < i ? boxes[x.parent] : undefined;
    b.cable(
      'feeder',
      parent ? [parent.box.id, `thru${i}`] : [source.id, `o${i}`],
      [x.box.id, 'in'],
      x.lengthMm,
    );
  });
  const setups = Array.from({ length: rig.setups }, (_, i) => b.setup(`Setup ${i + 1}`, i));
  const outlets = boxes.flatMap((x) => Array.from({ length: 6 }, (_, i) => [x.box.id, `w${i}`] as const));
  rig.loads.forEach((l, i) => {
    b.fixtureKind(`kind${i}`, {
      wattsW: l.wattsW,
      powerFactor: l.powerFactor,
      leading: l.leading,
      model: l.model,
      expP: 0.7,
      expQ: 1.8,
    });
    const f = b.fixture(`kind${i}`);
    const at = outlets[l.outlet % outlets.length];
    if (at) b.cable('lead', at, [f.id, 'in'], l.lengthMm);
    setups.forEach((s, k) => {
      const level = l.levels[k];
      if (level !== undefined) b.level(s.id, f.id, level);
    });
  });
  return { plan: b.plan(), builder: b };
};
