import { formatWatts } from '../../kernel/units.ts';
import { DEAD_FIRST, DEFER, type Writer } from './context.ts';

export const dimmerTexts: Readonly<Record<string, Writer>> = {
  'power-dimmer-lamp': (c) => ({
    head: `${c.text('label')}: does not suit the ${c.text('how')} dimmer it is on`,
    body: `Its supply or ballast is not made for a ${c.text('how')} dimmer: it may flicker, hum, go out or be destroyed, also with the dimmer at full. ${DEFER}`,
    todo: `Feed it past the dimmer, from a way that only switches, and dim it by its own control. ${DEAD_FIRST}`,
    citation: 'common practice, no published source',
  }),
  'power-dimmer-least': (c) => ({
    head: `${c.text('label')}: ${formatWatts(c.num('watts'))} on a dimmer that wants ${formatWatts(c.num('leastW'))}`,
    body: `Below ${formatWatts(c.num('leastW'))} such a dimmer may not dim evenly or not go out (planning value of the kind).`,
    todo: 'Plug a small tungsten lamp in beside it, out of shot, or use a smaller dimmer.',
    citation: 'least load of the kind',
  }),
  'power-dimmer-neutral': (c) => ({
    head: `${c.text('label')}: neutral of ${c.amps('neutralA')} beside legs of ${c.amps('legA')}, ahead of phase-cut dimmers`,
    body: `The neutral's ampacity is ${c.pct('pct')} of a leg's, ${c.num('limitPct')} % (${c.amps('wantedA')}) are wanted: third harmonics of all legs add in it. ${DEFER}`,
    todo: 'Run a second neutral or a heavier one, by a qualified person.',
    citation: c.cite('dimmer-neutral'),
  }),
};
