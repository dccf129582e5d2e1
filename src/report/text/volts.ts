import { formatCableLength } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { DEFER, type Writer, type WriterContext } from './context.ts';

/** Volts with a second decimal where one would print the limit itself. */
const fine = (c: WriterContext): string =>
  c.volts('volts') === c.volts('limitV') ? `${c.num('volts').toFixed(2)} V` : c.volts('volts');

export const voltsTexts: Readonly<Record<string, Writer>> = {
  'power-drop': (c) => ({
    head: `${c.text('label')}: ${c.pct('pct')} of the volts lost on the way`,
    body: `${c.num('dropV').toFixed(1)} V of ${c.volts('baseV')} are lost to ${c.text('load')}${c.setups}: ${c.pct('pct')}, against an advice of ${c.num('limitPct')} %${c.text('part') === 'branch' ? ' from the breaker on' : ' in all'}.${c.text('basis') === 'unknown' ? ' Reckoned at nominal volts; the volts of the source are not known.' : ''}`,
    todo: 'Use a heavier or shorter cable, or feed it from nearer. This is advice, not a limit.',
    citation: c.cite('limitRow'),
  }),
  'power-volts-low': (c) => ({
    head: `${c.text('label')}: ${fine(c)}, it wants ${c.volts('limitV')} or more`,
    body: `${fine(c)} reach it${c.setups}; its kind gives ${c.volts('limitV')} as the least. It may go out, flicker or run dim.`,
    todo: 'Use a heavier or shorter cable, or raise the set’s volts (a qualified person).',
    citation: 'volts range of the kind',
  }),
  'power-volts-high': (c) => ({
    head: `${c.text('label')}: ${fine(c)}, it takes ${c.volts('limitV')} at most`,
    body: `${fine(c)} reach it${c.setups}; its kind gives ${c.volts('limitV')} as the most. More can destroy it. ${DEFER}`,
    todo: 'Do not plug it in there. Check the volts of the source and of each leg against the neutral.',
    citation: 'volts range of the kind',
  }),
  'power-wrong-volts': (c) => ({
    head: `${c.text('label')}: on ${c.volts('nominalV')} nominal, it takes ${c.volts('minV')} to ${c.volts('maxV')}`,
    body: `It is connected to ${c.volts('nominalV')} nominal; its kind takes ${c.volts('minV')} to ${c.volts('maxV')}. ${DEFER}`,
    todo: 'Feed it from another system or another connection, or set the kind’s volts right.',
    citation: 'volts range of the kind',
  }),
  'power-high-leg': (c) => ({
    head: `${c.text('label')}: on the high leg, ${c.volts('nominalV')} to neutral`,
    body: `Leg ${c.text('leg')} of this delta stands ${c.volts('nominalV')} off the neutral, the other legs ${c.volts('othersV')}; it takes ${c.volts('maxV')} at most. ${DEFER}`,
    todo: 'Do not plug it in there. Feed it from one of the other legs, and measure each leg against the neutral first.',
    citation: c.northAmerica
      ? 'NEC 110.15 and 408.3(E): the leg with the higher volts to ground is marked (from memory: verify)'
      : 'volts range of the kind',
  }),
  'power-volts-unknown': (c) => ({
    head: `${c.text('label')}: volts not known, measure them`,
    body: `Currents are reckoned at nominal ${c.volts('nominalV')}; volts at the units are not computed. The volts of a place are never assumed.`,
    todo: 'Measure the volts under load and write them into the source.',
    citation: '',
  }),
  'power-unsettled': (c) => ({
    head: `${c.text('label')}: the load flow does not settle`,
    body: `${c.setups ? `The volts do not come to rest${c.setups}` : 'The volts do not come to rest'}: there is more load than ${c.text('run')} can carry. It would lose ${c.num('dropV').toFixed(0)} V of ${c.volts('baseV')} at nominal current. Nothing on this source is computed there.`,
    todo: 'Shorten the run, use heavier cable, or take load off it.',
    citation: 'backward/forward sweep: no solution within its passes',
  }),
  'power-cable-short': (c) => {
    const units = planRecord(c.plan).lengthUnits;
    return {
      head: `${c.text('label')}: ${formatCableLength(c.num('totalMm'), units)} chosen, ${formatCableLength(c.num('neededMm'), units)} needed`,
      body: `The pieces chosen by hand make ${formatCableLength(c.num('totalMm'), units)}; the drawn run with rises and slack needs ${formatCableLength(c.num('neededMm'), units)}.`,
      todo: 'Add a piece, choose longer ones, or leave the choice to the program.',
      citation: c.cite('slack-pct'),
    };
  },
  'power-ambient': (c) => ({
    head: `${c.num('ambientC')} °C is beyond the ambient table`,
    body: `The ampacity of cables is corrected for warm air up to ${c.num('maxC')} °C; above that the last factor is used, which is too kind.`,
    todo: 'Have a qualified person size the cables.',
    citation: 'NEC table 310.15(B)(1), 60 °C column',
  }),
};
