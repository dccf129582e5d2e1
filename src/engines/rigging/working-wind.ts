import { limitCitation, limitOf } from '../../derive/limits.ts';
import { formatLength } from '../../kernel/units.ts';
import { guyAt, topOf } from './figures.ts';
import type { Sail } from './model.ts';
import { liftForceN, sailForceN, sideForceN } from './tipping.ts';
import { formatNewtons, formatWind } from './words.ts';
import { type Body, limitLine, line, type RiggingLine, type Subject } from './working-shared.ts';

/** Speed that a frame's wind figures are worked out for: the plan's, else one of the table. */
const TABLE_MPS = 5;

const windLineOf = (s: Subject): { readonly mps: number; readonly line: RiggingLine } => {
  const given = s.r.model.factors.windMps;
  return given === undefined
    ? {
        mps: TABLE_MPS,
        line: line('wind', formatWind(TABLE_MPS, s.units), 'example: the plan gives no wind', true),
      }
    : { mps: given, line: windGiven(s, given) };
};

/** The plan's wind, with the gusts reckoned from a mean where it gives that. */
export const windGiven = (s: Subject, mps: number): RiggingLine => {
  const { meanMps } = s.r.model.factors;
  if (meanMps === undefined) return line('wind', formatWind(mps, s.units), 'plan');
  const gust = limitOf(s.plan, 'rigging-gust');
  return line(
    'wind in gusts',
    `${formatWind(meanMps, s.units)} × ${gust.value} = ${formatWind(mps, s.units)}`,
    `mean given by the plan; ${limitCitation(gust)}`,
  );
};

export const wind = (s: Subject, x: Sail): Body => {
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
      ...(x.tiltDeg > 0
        ? [
            `it leans ${Math.round(x.tiltDeg)}°: ${Math.round(sideForceN(factors, x, v.mps))} N to the side, ` +
              `q × ${factors.upliftCf} × ${x.areaM2.toFixed(2)} × ${x.share} × sin ${Math.round(x.tiltDeg)}° = ${Math.round(liftForceN(factors, x, v.mps))} N upwards`,
          ]
        : []),
      'the force may lie a quarter of the width off the middle',
    ],
    result: formatNewtons(sailForceN(factors, x, v.mps), s.units),
    rule: 'rigging-wind-force',
    source: limitCitation(limitOf(s.plan, 'rigging-wind-pressure')),
  };
};

export const guys = (s: Subject, x: Sail): Body => {
  const v = windLineOf(s);
  const forceN = sideForceN(s.r.model.factors, x, v.mps);
  const pull = guyAt(s.r.model, x, v.mps);
  return {
    title: `Pull in a line of ${s.label}`,
    formula:
      x.tiltDeg > 0
        ? 'T = F · h ÷ (height of the top · windward lines · cos angle) + uplift ÷ (lines · sin angle)'
        : 'T = F · h ÷ (height of the top · windward lines · cos angle)',
    inputs: [
      v.line,
      line('wind on it', formatNewtons(forceN, s.units), 'see its own working'),
      ...(x.tiltDeg > 0
        ? [
            line(
              'uplift',
              formatNewtons(liftForceN(s.r.model.factors, x, v.mps), s.units),
              'see its own working',
            ),
          ]
        : []),
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
