import { limitOf } from '../../derive/limits.ts';
import { shootingDays } from '../../derive/schedule.ts';
import { tripWords } from '../../engines/power/index.ts';
import { formatVoltAmps, formatWatts } from '../../kernel/units.ts';
import { curveSchema } from '../../plan/kinds/ports.ts';
import { DEAD_FIRST, DEFER, type Writer, type WriterContext } from './context.ts';

/** ` on leg B` where there is more than one. */
const onLeg = (c: WriterContext): string => (c.num('legs') > 1 ? ` on leg ${c.text('leg')}` : '');

const ratingPf = (c: WriterContext): number => limitOf(c.plan, 'generator-rating-pf').value;

/** What a set gives where it stands, where that is less than its rating. */
const derated = (c: WriterContext, gives: string): string =>
  c.text('shareFrom') === 'plan'
    ? `, of which it gives ${gives} by its maker`
    : c.text('shareFrom') === 'table'
      ? `, of which it gives ${gives} at this height and heat`
      : '';

const arithmetic = (c: WriterContext, thing: string): string => {
  const eased =
    c.num('limitA') === c.num('ratingA')
      ? `the ${thing} is rated ${c.amps('ratingA')}`
      : `the ${thing} is rated ${c.amps('ratingA')}, of which ${c.amps('limitA')} may be used here`;
  return `${c.amps('amps')}${onLeg(c)}${c.setups}; ${eased}: ${c.pct('pct')}.`;
};

/** The load rule in words, where it eases a breaker to less than its rating. */
const continuous = (c: WriterContext): string =>
  c.northAmerica && c.num('limitA') < c.num('ratingA')
    ? shootingDays(c.plan).length > 0
      ? ' It counts as running three hours or more: the shooting day does not show it to be less.'
      : ' Every load counts as running three hours or more, since no shooting day is given (assumed).'
    : '';

/** How long the breaker bears it, where its curve is known: a band of its standard. */
const bears = (c: WriterContext): string => {
  const curve = curveSchema.safeParse(c.f.params.curve);
  const words = curve.success ? tripWords(c.plan, curve.data, c.num('ratingA'), c.num('amps')) : '';
  return words && ` ${words}`;
};

const over =
  (thing: string, todo: string): Writer =>
  (c) => ({
    head: `${c.text('label')}: ${c.amps('amps')} on a limit of ${c.amps('limitA')}`,
    body: `${arithmetic(c, thing)}${continuous(c)}${bears(c)} ${DEFER}`,
    todo: `${todo} ${DEAD_FIRST}`,
    citation: c.cite('limitRow'),
  });

export const overloadTexts: Readonly<Record<string, Writer>> = {
  'power-breaker': over('breaker', 'Move a load to a way with room, or lower a level.'),
  'power-main-breaker': over(
    'main breaker',
    'Move loads to another source or box, spread them over the legs, or lower levels.',
  ),
  'power-connector': over('connector', 'Use a larger connector or move load to another run.'),
  'power-outlet': over('outlet', 'Move load to another outlet.'),
  'power-cable': over(
    'cable',
    'Use a heavier cable, run a second one, take it off its drum or out of its bundle, or move load to another run.',
  ),
  'power-generator-leg': over(
    'set, leg by leg,',
    'Move loads to the other legs, use a larger set, or lower levels.',
  ),
  'power-transformer': over(
    'output of the transformer, leg by leg,',
    'Move loads to another transformer or another leg, use a larger one, or lower levels.',
  ),
  'power-dimmer': over('way of the dimmer', 'Move a lamp to another way, or lower a level.'),
  'power-adapter': over('adapter', 'Use a heavier adapter or move load to another run.'),
  'power-inverter-over': over(
    'inverter',
    'Move load off it: it passes no more on from its mains than it gives by itself.',
  ),
  'power-close': (c) => ({
    head: `${c.text('label')}: ${c.amps('amps')}, close to the ${c.amps('limitA')} it may carry`,
    body: `${arithmetic(c, c.text('setBy').replace('-', ' '))}${continuous(c)} ${DEFER}`,
    todo: 'Keep other loads off it. Move a load if more is to come.',
    citation: c.cite('limitRow'),
  }),
  'power-neutral': (c) => ({
    head: `${c.text('label')}: neutral carries ${c.amps('amps')} on a limit of ${c.amps('limitA')}`,
    body: `The legs put ${c.amps('amps')} on the neutral${c.setups}${c.num('thirdA') > 0 ? `, of it ${c.amps('thirdA')} third harmonic that adds up instead of cancelling` : ''}; its ${c.text('setBy')} is rated ${c.amps('ratingA')}: ${c.pct('pct')}. ${DEFER}`,
    todo: `Spread the load more evenly over the legs, use units with corrected supplies, or use a heavier neutral. ${DEAD_FIRST}`,
    citation: c.cite('limitRow'),
  }),
  'power-generator-kw': (c) => ({
    head: `${c.text('label')}: ${formatWatts(c.num('watts'))} on a set ${c.text('shareFrom') === 'rating' ? 'of' : 'that gives'} ${formatWatts(c.num('ratedW'))}`,
    body: `${formatWatts(c.num('watts'))} drawn${c.setups}, cable loss included; the set is rated ${formatWatts(c.num('plateW'))}${c.text('derived') === 'kw' ? ` (from its kVA at a power factor of ${ratingPf(c)}, assumed)` : ''}${derated(c, formatWatts(c.num('ratedW')))}: ${c.pct('pct')}. ${DEFER}`,
    todo: 'Use a larger set, a second set, or lower levels.',
    citation: c.cite('generator-kw-factor'),
  }),
  'power-generator-kva': (c) => ({
    head: `${c.text('label')}: ${formatVoltAmps(c.num('va'))} on a set ${c.text('shareFrom') === 'rating' ? 'of' : 'that gives'} ${formatVoltAmps(c.num('ratedVa'))}`,
    body: `${formatVoltAmps(c.num('va'))} drawn${c.setups}, cable loss included; the set is rated ${formatVoltAmps(c.num('plateVa'))}${c.text('derived') === 'kva' ? ` (from its kW at a power factor of ${ratingPf(c)}, assumed)` : ''}${derated(c, formatVoltAmps(c.num('ratedVa')))}: ${c.pct('pct')}. ${DEFER}`,
    todo: 'Use a larger set, a second set, units with a better power factor, or lower levels.',
    citation: c.cite('generator-kva-factor'),
  }),
  'power-generator-step': (c) => ({
    head: `${c.text('label')}: ${formatWatts(c.num('watts'))} may come on in one step`,
    body: `${c.text('what')} brings ${formatWatts(c.num('watts'))} at once, ${c.pct('pct')} of the ${formatWatts(c.num('ratedW'))} the set gives, against about ${c.num('limitPct')} %. Volts and hertz may sag for a moment; discharge units may go out.`,
    todo: 'Bring units on one after another, the largest first.',
    citation: c.cite('generator-step'),
  }),
  'power-generator-light': (c) => ({
    head: `${c.text('label')}: runs light, ${c.pct('pct')} of its rating`,
    body: `Only ${formatWatts(c.num('watts'))} of ${formatWatts(c.num('ratedW'))} are drawn${c.setups}. A diesel set that runs for long below about ${c.num('limitPct')} % fouls itself.`,
    todo: 'Use a smaller set, or ask its owner about a load bank.',
    citation: c.cite('generator-light-load'),
  }),
  'power-unbalance': (c) => ({
    head: `${c.text('label')}: leg ${c.text('leg')} is ${c.amps('deviationA')} off the mean of the legs`,
    body: `Leg currents${c.setups}: ${c.text('legsText')}; mean ${c.amps('meanA')}. The largest deviation is ${c.pct('pct')} of the leg rating of ${c.amps('ratingA')}.`,
    todo: 'Move plugs between ways of different legs to even them out.',
    citation: c.cite('leg-balance'),
  }),
  'power-weaker': (c) => ({
    head: `${c.text('label')}: ${c.amps('ratingA')} ${c.text('what')} behind a ${c.amps('breakerA')} breaker`,
    body: `The ${c.text('what')} is rated ${c.amps('ratingA')}; the smallest breaker ahead of it, at ${c.text('ahead')}, is ${c.amps('breakerA')}, so no breaker guards it against overload. ${DEFER}`,
    todo: 'Use a heavier one, or feed it from a smaller breaker.',
    citation: c.northAmerica
      ? 'NEC 240.5, 210.21(B) (from memory: verify)'
      : 'In ≤ Iz: IEC 60364-4-43 clause 433.1; BS 7671 433.1.1 (from memory: verify)',
  }),
  'power-inverter-feed': (c) => ({
    head: `${c.text('label')}: takes ${c.amps('amps')} at ${c.text('feedV')} V from what feeds it`,
    body: `${formatWatts(c.num('watts'))} of mains at most ÷ ${c.text('efficiencyPct')} % + ${c.text('idleW')} W of its own = ${formatWatts(c.num('feedW'))}, over ${c.text('feedV')} V: ${c.amps('amps')}${Number.isFinite(c.num('mostA')) ? ` on an inlet made for ${c.amps('mostA')}` : ''}. The nearly empty battery has fewer volts and gives more amps. What feeds it is not in this plan.`,
    todo: 'Look at the battery, its fuse and its leads for that current.',
    citation: c.cite('battery-inverter-idle'),
  }),
  'power-bypass': (c) => ({
    head: `${c.text('label')}: ${formatWatts(c.num('watts'))} hang on its battery when its mains fail${Number.isFinite(c.num('minutes')) ? `, for about ${Math.round(c.num('minutes'))} min` : ''}`,
    body: `While its mains live they pass through it, with what it draws for itself; that of charging is not counted. ${
      Number.isFinite(c.num('minutes'))
        ? `${c.text('storedWh')} Wh × ${c.text('usablePct')} % ÷ (${formatWatts(c.num('watts'))} ÷ ${c.text('efficiencyPct')} % + ${c.text('idleW')} W) = ${Math.round(c.num('minutes'))} min from full, new and warm.`
        : 'What its battery holds is not given: the time is not computed.'
    }`,
    todo: 'Say who watches it. A battery that is old or cold lasts less.',
    citation: c.cite('battery-inverter-idle'),
  }),
  'power-breaker-size': (c) => ({
    head: `${c.text('label')}: a breaker of ${c.amps('breakerA')} is no standard size`,
    body: `Standard sizes about it: ${c.text('sizes')}. Figures are reckoned with the ${c.amps('breakerA')} of the plan.`,
    todo: 'Read the breaker again, and set it right.',
    citation: c.text('source'),
  }),
  'power-unguarded': (c) => ({
    head: `${c.text('label')}: no breaker is known ahead of it`,
    body: `From the source to ${c.text('label')} the plan names no breaker. ${DEFER}`,
    todo: 'Give the source or box its main breaker, or have a qualified person say what protects this run.',
    citation: c.northAmerica ? 'NEC 240.21 (from memory: verify)' : 'IEC 60364-4-43 (from memory: verify)',
  }),
};
