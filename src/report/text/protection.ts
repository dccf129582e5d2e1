import { formatAmps } from '../../kernel/units.ts';
import { DEFER, type Writer } from './context.ts';

const ma = (n: number): string => `${Number(n.toFixed(1))} mA`;

export const protectionTexts: Readonly<Record<string, Writer>> = {
  'power-leakage': (c) => ({
    head: `${c.text('label')}: ${ma(c.num('leakageMa'))} standing leakage on a ${ma(c.num('tripMa'))} device`,
    body: `What is plugged in behind it leaks ${ma(c.num('leakageMa'))} by its kinds (planning values): ${c.pct('pct')} of the trip class, against ${c.num('limitPct')} %. It may open without a fault, dampness adds to it. ${DEFER}`,
    todo: 'Spread these units over more ways with devices of their own. Do not take the device out.',
    citation: c.cite('limitRow'),
  }),
  'power-device-type': (c) => ({
    head: `${c.text('label')}: its device is of type ${c.text('type')}${c.num('assumed') === 1 ? ' (assumed)' : ''}`,
    body:
      c.text('wants') === 'B'
        ? `${c.num('count') === 1 ? 'A three-leg electronic load hangs' : `${c.text('count')} three-leg electronic loads hang`} on it. A fault behind their rectifiers may leak smooth direct current, at which a device of type ${c.text('type')} need not open. ${DEFER}`
        : `${c.num('count') === 1 ? 'An electronic load or phase-cut dimmer hangs' : `${c.text('count')} electronic loads or phase-cut dimmers hang`} on it. Their fault may leak pulsating current, at which a device of type AC need not open. ${DEFER}`,
    todo: `Feed ${c.num('count') === 1 ? 'it' : 'them'} through a device of type ${c.text('wants')}, unless the maker of the load says that another will do.${c.num('assumed') === 1 ? ' Read the type off the device and give it to the way.' : ''}`,
    citation: 'IEC 60755; BS 7671 531.3.3 (from memory: verify)',
  }),
  'power-wet': (c) => ({
    head: `${c.text('label')}: ${c.num('tripMa') > 0 ? `its device opens at ${ma(c.num('tripMa'))}` : c.northAmerica ? 'no ground-fault protection' : 'no residual-current device'} in a wet place`,
    body: `It stands outdoors or in a wet place, and ${c.text('places')} ${c.num('tripMa') > 0 ? `has no device ahead of it that opens at ${ma(c.num('mostMa'))} or less` : 'has no such device ahead of it in this plan'}. ${DEFER}`,
    todo: c.northAmerica
      ? 'Feed it through ground-fault protection for people, and test it before use.'
      : 'Feed it through a residual-current device of 30 mA or less, and test it before use.',
    citation: c.cite('rcd-people-max'),
  }),
  'power-inrush': (c) => ({
    head: `${c.text('label')}: may open when it is switched on`,
    body: `Switched on together, ${c.num('loads') === 1 ? 'its load draws' : `its ${c.text('loads')} loads draw`} about ${formatAmps(c.num('amps'))} for a moment, as a magnetic release feels it: ${c.num('times').toFixed(1)} times the ${c.amps('breakerA')} breaker. ${c.text('curve') ? `Class ${c.text('curve')} opens at once` : 'Such a breaker opens at once'} somewhere between ${c.text('low')} and ${c.text('high')} times. Inrush is a planning value of the kinds.`,
    todo:
      c.num('loads') === 1
        ? 'Bring it up on its own dimmer after the breaker is on, or ask a qualified person about another class of breaker.'
        : `Switch the units on one after another, in ${c.text('steps')} steps or more, after the breaker is on.`,
    citation: c.cite('limitRow'),
  }),
  'power-volts-unbalance': (c) => ({
    head: `${c.text('label')}: volts between lines ${c.num('pct').toFixed(1)} % unbalanced`,
    body: `${c.volts('volts1')}, ${c.volts('volts2')} and ${c.volts('volts3')} between the lines${c.setups}: ${c.num('nemaPct').toFixed(1)} % by NEMA, ${c.num('negativePct').toFixed(1)} % negative over positive sequence, against ${c.num('limitPct')} %. Motors run hot on unbalanced volts.`,
    todo: 'Spread the load over the legs, or use heavier feeder.',
    citation: c.cite('volts-unbalance'),
  }),
};
