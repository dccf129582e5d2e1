import { recordLabel } from '../../derive/labels.ts';
import { limitCitation, limitOf } from '../../derive/limits.ts';
import { formatLength, formatPct } from '../../kernel/units.ts';
import { counterweightKg } from './calc.ts';
import type { RiggingUse } from './lifts.ts';
import type { StandUse } from './model.ts';
import { formatKg } from './words.ts';
import { BOOK, type Body, limitLine, line, type Subject } from './working-shared.ts';

export const standLoad = (s: Subject, use: StandUse, quantity: 'loadKg' | 'loadPct'): Body => {
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

export const hungLoad = (s: Subject, use: RiggingUse, quantity: 'loadKg' | 'loadPct'): Body => {
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

export const counter = (s: Subject, use: StandUse): Body | undefined => {
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

export const cableUp = (s: Subject, use: RiggingUse): Body => ({
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
