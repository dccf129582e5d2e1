import type { Writer } from './context.ts';

export const controlTexts: Readonly<Record<string, Writer>> = {
  'control-universe': (c) => ({
    head: `${c.text('label')}: its universe is not in the plan`,
    body: 'Its patch names a universe that is not there, so its slots are not counted.',
    todo: 'Choose a universe or take its patch away.',
    citation: '',
  }),
  'control-mode': (c) => ({
    head: `${c.text('label')}: its mode is not among the modes of its kind`,
    body: `Mode ${c.text('modeId')} is not there, so its footprint is not known.`,
    todo: 'Choose one of the modes of its kind.',
    citation: '',
  }),
  'control-address': (c) => ({
    head: `${c.text('label')}: address ${c.text('address')} does not fit universe ${c.text('universe')}`,
    body: `Its mode takes ${c.text('slots')} slots, so its address is a whole number from 1 to ${c.text('highest')}.`,
    todo: `Choose an address from 1 to ${c.text('highest')}.`,
    citation: c.cite('universe-slots'),
  }),
  'control-overlap': (c) => ({
    head: `${c.text('other')} and ${c.text('label')} share slots of universe ${c.text('universe')}`,
    body: `Both take ${c.num('from') === c.num('to') ? `slot ${c.text('from')}` : `slots ${c.text('from')} to ${c.text('to')}`} of universe ${c.text('universe')}.`,
    todo: 'Move one of them, or mark both as paired if they are to follow one another.',
    citation: c.cite('universe-slots'),
  }),
};
