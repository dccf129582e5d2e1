import { recordLabel } from '../../derive/labels.ts';
import { limitCitation, limitOf } from '../../derive/limits.ts';
import { formatLength, formatPct, type LengthUnits } from '../../kernel/units.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import { counterweightKg } from './calc.ts';
import { computeRigging, guyAt, type RiggingResult, topOf } from './figures.ts';
import { parseRiggingKey, type RiggingQuantity } from './keys.ts';
import type { RiggingUse } from './lifts.ts';
import type { Sail, StandUse } from './model.ts';
import { sailForceN, type Tipping } from './tipping.ts';
import { formatFactor, formatKg, formatNewtons, formatWind } from './words.ts';

/** One input of a working. */
export interface RiggingLine {
  readonly name: string;
  readonly value: string;
  readonly from: string;
  readonly assumed: boolean;
}

/** The arithmetic behind one figure, as data. Same shape as the report's working. */
export interface RiggingWorking {
  readonly key: string;
  readonly title: string;
  readonly formula: string;
  readonly inputs: readonly RiggingLine[];
  readonly steps: readonly string[];
  readonly result: string;
  readonly rule: string;
  readonly source: string;
}

type Body = Omit<RiggingWorking, 'key'>;

interface Subject {
  readonly plan: Plan;
  readonly r: RiggingResult;
  readonly units: LengthUnits;
  readonly label: string;
}

/**
 * The arithmetic behind one figure of the stands engine, recomputed from the plan; `why` says in words why there is none.
 * Undefined for a key that is not this engine's.
 */
export const explainRigging = (
  plan: Plan,
  key: string,
): RiggingWorking | { readonly why: string } | undefined => {
  const asked = parseRiggingKey(key);
  if (!asked) return undefined;
  const record = plan.records.get(asked.recordId);
  const r = computeRigging(plan);
  if (!record) return { why: `There is nothing ${asked.recordId} in this plan.` };
  const s: Subject = { plan, r, units: planRecord(plan).lengthUnits, label: recordLabel(plan, record) };
  const body = bodyOf(s, asked.quantity, asked.recordId);
  return body ? { key, ...body } : { why: `${s.label} has no figure “${asked.quantity}”.` };
};

const bodyOf = (s: Subject, quantity: RiggingQuantity, id: string): Body | undefined => {
  const { r } = s;
  const use = r.stands.get(id);
  const rigging = r.rigging.get(id);
  const sail = r.sails.get(id);
  const tipping = r.tipping.get(id);
  switch (quantity) {
    case 'loadKg':
    case 'loadPct':
      return use ? standLoad(s, use, quantity) : rigging ? hungLoad(s, rigging, quantity) : undefined;
    case 'tipFactor':
    case 'bags':
      return tipping && moments(s, tipping, quantity);
    case 'tipPushN':
    case 'tipTiltDeg':
    case 'tipWindMps':
      return tipping && bare(s, tipping, quantity);
    case 'windN':
      return sail && wind(s, sail);
    case 'guyN':
      return sail && guys(s, sail);
    case 'counterKg':
      return use && counter(s, use);
    case 'cableUpMm':
      return rigging && cableUp(s, rigging);
  }
};

const line = (name: string, value: string, from: string, assumed = false): RiggingLine => ({
  name,
  value,
  from,
  assumed,
});

const limitLine = (s: Subject, id: string): RiggingLine => {
  const l = limitOf(s.plan, id);
  return line(
    id.replace('rigging-', '').replaceAll('-', ' '),
    `${l.value} ${l.unit}`,
    limitCitation(l),
    !l.override,
  );
};

const BOOK = 'gear book; the label on the real one comes first';

const standLoad = (s: Subject, use: StandUse, quantity: 'loadKg' | 'loadPct'): Body => {
  const kg = (n: number): string => formatKg(n, s.units);
  const rated = use.kind.ratedLoadKg;
  const parts = [
    ...use.carried.map((c) => line(`${recordLabel(s.plan, c.fixture)} with accessories`, kg(c.massKg), BOOK)),
    ...use.sails.map((x) =>
      line(`share of ${x.kind.name}`, kg(x.massKg / new Set(x.grip.supports).size), BOOK),
    ),
  ];
  const pct = (100 * use.loadKg) / (rated * s.r.model.factors.loadFactor);
  return {
    title: `Load on ${s.label}`,
    formula: 'load = Σ (fixture + accessories) + frame and cloth over the stands that carry it',
    inputs: [...parts, line('rated load', kg(rated), BOOK)],
    steps: [
      `${parts.map((p) => p.value).join(' + ') || '0'} = ${kg(use.loadKg)}`,
      'cable and gel are not counted',
    ],
    result: quantity === 'loadKg' ? kg(use.loadKg) : `${formatPct(pct)} of the rated load`,
    rule: 'rigging-load',
    source: limitCitation(limitOf(s.plan, 'rigging-load-factor')),
  };
};

const hungLoad = (s: Subject, use: RiggingUse, quantity: 'loadKg' | 'loadPct'): Body => {
  const kg = (n: number): string => formatKg(n, s.units);
  const { ratedKg } = use;
  return {
    title: `Load on ${s.label}`,
    formula: 'load = gear + people × mass of a person + tools',
    inputs: [
      line('gear', kg(use.gearKg), BOOK),
      line('people', String(use.rigging.people), 'plan'),
      limitLine(s, 'rigging-person'),
      limitLine(s, 'rigging-person-tools'),
      line(
        'rated load',
        ratedKg === undefined ? 'not known: read the plate' : kg(ratedKg),
        use.ratedAssumed ? BOOK : 'plan',
        use.ratedAssumed,
      ),
    ],
    steps: [`${kg(use.gearKg)} + ${kg(use.peopleKg)} = ${kg(use.loadKg)}`],
    result:
      quantity === 'loadKg' || ratedKg === undefined
        ? kg(use.loadKg)
        : `${formatPct((100 * use.loadKg) / ratedKg)} of the rated load`,
    rule: 'rigging-hung-load',
    source: limitCitation(limitOf(s.plan, 'rigging-person')),
  };
};

const baseInputs = (s: Subject, t: Tipping): readonly RiggingLine[] => [
  ...t.base.uses.map((u) =>
    line(
      `tipping radius of ${u.kind.name}`,
      `${Math.round(u.radiusMm)} mm (leg circle ${u.kind.legCircleMm} mm, ${u.kind.legs ?? 3} legs: R · cos(π/n))`,
      BOOK,
    ),
  ),
  ...t.masses.map((m) => line(m.name, `${formatKg(m.massKg, s.units)}, ${Math.round(m.outMm)} mm out`, BOOK)),
];

const moments = (s: Subject, t: Tipping, quantity: 'tipFactor' | 'bags'): Body => {
  const { factors } = s.r.model;
  const { restoringNm, overturningNm, factor } = t.moments;
  const nm = (n: number): string => `${n.toFixed(1)} N·m`;
  const result =
    quantity === 'tipFactor'
      ? formatFactor(factor)
      : Number.isFinite(t.bagsWanted)
        ? `${t.bagsWanted} bags of ${formatKg(factors.bagKg, s.units)} on each stand`
        : 'no number of bags is enough';
  return {
    title: `${quantity === 'tipFactor' ? 'Tip-over factor' : 'Sand bags'}, ${s.label}`,
    formula:
      'factor = Σ g·m·(r − out) of what is inside the tipping edge ÷ (Σ g·m·(out − r) of what is beyond + Σ F·h)',
    inputs: [
      ...baseInputs(s, t),
      ...t.pushes.map((p) =>
        line(
          p.name,
          `${formatNewtons(p.forceN, s.units)} at ${formatLength(p.heightMm, s.units)}`,
          'plan’s wind',
        ),
      ),
      ...(factors.windMps === undefined
        ? [line('wind', 'not given: no wind in this factor', 'plan')]
        : [line('wind', formatWind(factors.windMps, s.units), 'plan')]),
      limitLine(s, 'rigging-tip-factor'),
      limitLine(s, 'rigging-bag'),
    ],
    steps: [
      `holds down: ${nm(restoringNm)}`,
      `tips: ${nm(overturningNm)}`,
      `factor ${formatFactor(factor)}; ${factors.tipFactor} is planned for`,
      `ballast = (${factors.tipFactor} × ${nm(overturningNm)} − ${nm(restoringNm)}) ÷ (g · r), hung on the column`,
    ],
    result,
    rule: 'rigging-tip',
    source: 'moments about the tipping edge; the rigger decides',
  };
};

const bare = (s: Subject, t: Tipping, quantity: 'tipPushN' | 'tipTiltDeg' | 'tipWindMps'): Body => {
  const made = {
    tipPushN: {
      title: 'Push at the top that tips',
      formula: 'F = (M holding down − M tipping) ÷ height of the top, no wind',
      result: formatNewtons(t.pushN, s.units),
    },
    tipTiltDeg: {
      title: 'Slope that tips',
      formula: 'tan θ = Σ m·(r − out) ÷ Σ m·h',
      result: `${t.tiltDeg.toFixed(1)}°`,
    },
    tipWindMps: {
      title: 'Wind that tips',
      formula: 'v = √((M holding down − M tipping) ÷ Σ 0.613·c·A·h)',
      result: Number.isNaN(t.windMps) ? 'it has no face in the wind' : formatWind(t.windMps, s.units),
    },
  }[quantity];
  return {
    ...made,
    title: `${made.title} ${s.label}`,
    inputs: [
      ...baseInputs(s, t),
      line('height of the top', formatLength(t.topMm, s.units), 'plan'),
      ...(quantity === 'tipWindMps'
        ? [
            limitLine(s, 'rigging-wind-pressure'),
            limitLine(s, 'rigging-wind-cf'),
            limitLine(s, 'rigging-wind-cf-unit'),
          ]
        : []),
      ...(quantity === 'tipTiltDeg'
        ? [limitLine(s, 'rigging-stand-mass-height'), limitLine(s, 'rigging-bag-height')]
        : []),
    ],
    steps: ['lines, brakes and soft ground are not counted'],
    rule: quantity === 'tipTiltDeg' ? 'rigging-tilt' : 'rigging-tip',
    source: 'moments about the tipping edge; the rigger decides',
  };
};

/** Speed that a frame's wind figures are worked out for: the plan's, else one of the table. */
const TABLE_MPS = 5;

const windLineOf = (s: Subject): { readonly mps: number; readonly line: RiggingLine } => {
  const given = s.r.model.factors.windMps;
  return given === undefined
    ? {
        mps: TABLE_MPS,
        line: line('wind', formatWind(TABLE_MPS, s.units), 'example: the plan gives no wind', true),
      }
    : { mps: given, line: line('wind', formatWind(given, s.units), 'plan') };
};

const wind = (s: Subject, x: Sail): Body => {
  const v = windLineOf(s);
  const { factors } = s.r.model;
  const q = factors.pressure * v.mps ** 2;
  return {
    title: `Wind on ${s.label}`,
    formula: 'F = q · c · A · share, q = 0.613 · v²',
    inputs: [
      v.line,
      limitLine(s, 'rigging-wind-pressure'),
      limitLine(s, 'rigging-wind-cf'),
      line('face', `${x.areaM2.toFixed(2)} m²`, 'gear book'),
      line(
        'share of a solid board',
        String(x.share),
        x.shareAssumed ? 'no cloth in the plan: counted as solid' : 'gear book',
        x.shareAssumed,
      ),
    ],
    steps: [
      `q = ${q.toFixed(1)} N/m²`,
      `${q.toFixed(1)} × ${factors.boardCf} × ${x.areaM2.toFixed(2)} × ${x.share} = ${Math.round(sailForceN(factors, x, v.mps))} N`,
      'the force may lie a quarter of the width off the middle',
    ],
    result: formatNewtons(sailForceN(factors, x, v.mps), s.units),
    rule: 'rigging-wind-force',
    source: limitCitation(limitOf(s.plan, 'rigging-wind-pressure')),
  };
};

const guys = (s: Subject, x: Sail): Body => {
  const v = windLineOf(s);
  const forceN = sailForceN(s.r.model.factors, x, v.mps);
  const pull = guyAt(s.r.model, x, v.mps);
  return {
    title: `Pull in a line of ${s.label}`,
    formula: 'T = F · h ÷ (height of the top · windward lines · cos angle)',
    inputs: [
      v.line,
      line('wind on it', formatNewtons(forceN, s.units), 'see its own working'),
      line('height of its middle', formatLength(x.grip.heightMm, s.units), 'plan'),
      line('height of its top', formatLength(topOf(x), s.units), 'plan and gear book'),
      line('lines', String(x.grip.guys), 'plan'),
      limitLine(s, 'rigging-guy-angle'),
    ],
    steps: ['half of the lines, rounded down, are to windward', 'anchors and knots are the rigger’s'],
    result: Number.isFinite(pull) ? formatNewtons(pull, s.units) : 'no line to windward',
    rule: 'rigging-guys',
    source: limitCitation(limitOf(s.plan, 'rigging-guy-angle')),
  };
};

const counter = (s: Subject, use: StandUse): Body | undefined => {
  const c = use.carried.find((x) => x.arm && x.outMm > 0);
  if (!c?.arm) return undefined;
  const out = c.fixture.arm?.counterMm;
  const massKg = c.massKg - c.arm.massKg;
  if (!out || !(out > 0)) return undefined;
  return {
    title: `Counterweight for ${recordLabel(s.plan, c.fixture)}`,
    formula: 'm′ = m · d ÷ d′ (the arm’s own mass left out)',
    inputs: [
      line('load', formatKg(massKg, s.units), BOOK),
      line('out from the column', `${Math.round(c.outMm)} mm`, 'plan or gear book'),
      line('counterweight from the column', `${Math.round(out)} mm`, 'plan'),
    ],
    steps: [],
    result: formatKg(counterweightKg(massKg, c.outMm, out), s.units),
    rule: 'rigging-counterweight',
    source: 'balance of moments',
  };
};

const cableUp = (s: Subject, use: RiggingUse): Body => ({
  title: `Cable up ${s.label}`,
  formula: 'length = √(reach² + height²)',
  inputs: [
    line('height', formatLength(use.rigging.heightMm, s.units), 'plan'),
    line('reach', formatLength(use.rigging.reachMm ?? 0, s.units), 'plan'),
  ],
  steps: ['bends at a knuckle and slack for moving come on top'],
  result: formatLength(use.cableUpMm, s.units),
  rule: 'rigging-cable-up',
  source: 'geometry of a straight arm',
});
