import { kindOf, type Plan } from '../../plan/plan.ts';
import {
  ballastKg,
  fromBehind,
  type Mass,
  type Moments,
  momentsOf,
  type Push,
  tiltDeg,
  windForceN,
} from './calc.ts';
import type { Base, Carried, Factors, Model, Sail, StandUse } from './model.ts';

/** What one base stands up against. */
export interface Tipping {
  readonly base: Base;
  readonly masses: readonly Mass[];
  /** Pushes of the wind that the plan gives; none where it gives no wind. */
  readonly pushes: readonly Push[];
  /** Moments in the worse of the two directions along an arm, the plan's wind included. */
  readonly moments: Moments;
  /** Push at the top that tips it with no wind, newtons; not above zero where it tips by itself. */
  readonly pushN: number;
  readonly topMm: number;
  /** Slope it tips on. */
  readonly tiltDeg: number;
  /** Wind that tips it; NaN where it has no face in the wind, 0 where it tips by itself. */
  readonly windMps: number;
  readonly bagsNow: number;
  /** Bags on each stand for the planning factor, those there included; infinite where none help. */
  readonly bagsWanted: number;
}

/** Face of a fixture in the wind, m²: its width times its height, or its width squared where the book gives no height. */
export const unitFace = (plan: Plan, c: Carried): { readonly areaM2: number; readonly assumed: boolean } => {
  const size = kindOf(plan, c.fixture.kindId)?.sizeMm;
  if (!size) return { areaM2: 0, assumed: false };
  const tall = size.heightMm ?? size.widthMm;
  return { areaM2: Math.max(0, (size.widthMm * tall) / 1e6), assumed: size.heightMm === undefined };
};

/** Force on a sail at a speed, newtons. */
export const sailForceN = (f: Factors, s: Sail, speedMps: number): number =>
  windForceN(f.pressure, speedMps, f.boardCf * s.share, s.areaM2);

const RAD = Math.PI / 180;

/** The part of a sail's force that pushes to the side; the whole of it on an upright one. */
export const sideForceN = (f: Factors, s: Sail, speedMps: number): number =>
  sailForceN(f, s, speedMps) * (s.tiltDeg === 0 ? 1 : Math.cos(s.tiltDeg * RAD));

/** The force that lifts a leaning or flat sail: q × uplift coefficient × area × share × sin of its lean, newtons. */
export const liftForceN = (f: Factors, s: Sail, speedMps: number): number =>
  windForceN(f.pressure, speedMps, f.upliftCf * s.share, s.areaM2) * Math.sin(s.tiltDeg * RAD);

/** Pushes on a base at a speed. */
export const pushesAt = (m: Model, base: Base, speedMps: number): readonly Push[] => [
  ...base.sails.map((s) => ({
    name: `wind on ${s.kind.name}`,
    forceN: sideForceN(m.factors, s, speedMps),
    heightMm: s.grip.heightMm,
    ...(s.tiltDeg > 0
      ? {
          upN: liftForceN(m.factors, s, speedMps),
          radiusMm: Math.min(...base.uses.map((u) => u.radiusMm)),
        }
      : {}),
  })),
  ...base.uses.flatMap((u) =>
    u.carried.map((c) => ({
      name: `wind on unit ${c.fixture.unit}`,
      forceN: windForceN(m.factors.pressure, speedMps, m.factors.unitCf, unitFace(m.plan, c).areaM2),
      heightMm: u.stand.heightMm,
    })),
  ),
];

/** Masses on a stand. With a leg under the arm a load counts by its distance square to the two edges beside that leg. */
const massesOn = (m: Model, u: StandUse): readonly Mass[] => {
  const { factors } = m;
  const radiusMm = u.radiusMm;
  const top = u.stand.heightMm;
  const at = (name: string, massKg: number, heightMm: number, outMm = 0): Mass => ({
    name,
    massKg,
    outMm,
    heightMm,
    radiusMm,
  });
  const list = [at(u.kind.name, u.kind.massKg, top * factors.standShare)];
  if (u.bagsKg > 0)
    list.push(at(u.stand.bags === 1 ? '1 sand bag' : `${u.stand.bags} sand bags`, u.bagsKg, factors.bagMm));
  for (const c of u.carried) {
    const square = c.fixture.arm?.overLeg ? Math.cos(Math.PI / (u.kind.legs ?? 3)) : 1;
    const armKg = c.arm?.massKg ?? 0;
    list.push(at(`unit ${c.fixture.unit}`, c.massKg - armKg, top, c.outMm * square));
    if (c.arm) list.push(at(c.arm.name, armKg, top, (c.outMm / 2) * square));
    const { counterKg = 0, counterMm = 0 } = c.fixture.arm ?? {};
    if (c.arm && counterKg > 0) list.push(at('counterweight', counterKg, top, -Math.max(0, counterMm)));
  }
  return list;
};

/** All masses of a base: what is on its stands, and its frames, each on the smallest of its circles. */
export const massesOf = (m: Model, base: Base): readonly Mass[] => {
  const least = Math.min(...base.uses.map((u) => u.radiusMm));
  return [
    ...base.uses.flatMap((u) => massesOn(m, u)),
    ...base.sails.map((s) => ({
      name: s.kind.name,
      massKg: s.massKg,
      outMm: 0,
      heightMm: s.grip.heightMm,
      radiusMm: least,
    })),
  ];
};

const worse = (g: number, masses: readonly Mass[], pushes: readonly Push[]): Moments => {
  const out = momentsOf(g, masses, pushes);
  const back = momentsOf(g, fromBehind(masses), pushes);
  return net(back) < net(out) || (net(back) === net(out) && back.factor < out.factor) ? back : out;
};

const net = (m: Moments): number => m.restoringNm - m.overturningNm;

/** How a base stands up at a speed of wind; `undefined` means without wind. */
export const momentsAt = (m: Model, base: Base, speedMps: number | undefined): Moments =>
  worse(m.factors.g, massesOf(m, base), speedMps === undefined ? [] : pushesAt(m, base, speedMps));

/** Bags on each stand that bring the base to the planning factor at these moments, those there included. */
export const bagsFor = (m: Model, base: Base, moments: Moments): number => {
  const least = Math.min(...base.uses.map((u) => u.radiusMm));
  const more = ballastKg(m.factors.g, moments, least, m.factors.tipFactor);
  const now = base.uses.reduce((sum, u) => sum + Math.max(0, u.stand.bags ?? 0), 0);
  if (!(m.factors.bagKg > 0)) return Number.NaN;
  // The small share keeps a sum of fractions from asking for one bag too many.
  const wanted = now + Math.ceil(more / m.factors.bagKg - 1e-9);
  return more === 0 ? Math.ceil(now / base.uses.length) : Math.ceil(wanted / base.uses.length);
};

/** Everything about how one base stands. */
export const tippingOf = (m: Model, base: Base): Tipping => {
  const { factors } = m;
  const masses = massesOf(m, base);
  const pushes = factors.windMps === undefined ? [] : pushesAt(m, base, factors.windMps);
  const moments = worse(factors.g, masses, pushes);
  const still = worse(factors.g, masses, []);
  const topMm = Math.max(
    ...base.uses.map((u) => u.stand.heightMm),
    ...base.sails.map((s) => s.grip.heightMm),
  );
  const perSpeed = momentsOf(factors.g, [], pushesAt(m, base, 1)).overturningNm;
  return {
    base,
    masses,
    pushes,
    moments,
    pushN: topMm > 0 ? net(still) / (topMm / 1000) : Number.NaN,
    topMm,
    tiltDeg: Math.min(tiltDeg(masses), tiltDeg(fromBehind(masses))),
    windMps: perSpeed > 0 ? Math.sqrt(Math.max(0, net(still)) / perSpeed) : Number.NaN,
    bagsNow: base.uses.reduce((sum, u) => sum + Math.max(0, u.stand.bags ?? 0), 0),
    bagsWanted: bagsFor(m, base, moments),
  };
};
