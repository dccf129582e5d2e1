import { formatLength } from '../../kernel/units.ts';
import type { Tipping } from './tipping.ts';
import { formatFactor, formatKg, formatNewtons, formatWind } from './words.ts';
import { BOOK, type Body, limitLine, line, type RiggingLine, type Subject } from './working-shared.ts';
import { windGiven } from './working-wind.ts';

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

export const moments = (s: Subject, t: Tipping, quantity: 'tipFactor' | 'bags'): Body => {
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
          `${formatNewtons(p.forceN, s.units)} at ${formatLength(p.heightMm, s.units)}${p.upN ? `, and ${formatNewtons(p.upN, s.units)} upwards` : ''}`,
          'plan’s wind',
        ),
      ),
      ...(factors.windMps === undefined
        ? [line('wind', 'not given: no wind in this factor', 'plan')]
        : [windGiven(s, factors.windMps)]),
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

export const bare = (s: Subject, t: Tipping, quantity: 'tipPushN' | 'tipTiltDeg' | 'tipWindMps'): Body => {
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
