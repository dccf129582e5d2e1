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
    body:
      c.num('highest') < 1
        ? `Its mode takes ${c.text('slots')} slots, more than a universe has.`
        : `Its mode takes ${c.text('slots')} slots, so its address is a whole number from 1 to ${c.text('highest')}.`,
    todo:
      c.num('highest') < 1
        ? 'Assign its address in Control, which parts it where its mode allows, or choose a shorter mode.'
        : `Choose an address from 1 to ${c.text('highest')}.`,
    citation: c.cite('universe-slots'),
  }),
  'control-overlap': (c) => ({
    head: `${c.text('other')} and ${c.text('label')} share slots of universe ${c.text('universe')}`,
    body: `Both take ${c.num('from') === c.num('to') ? `slot ${c.text('from')}` : `slots ${c.text('from')} to ${c.text('to')}`} of universe ${c.text('universe')}.`,
    todo: 'Move one of them, or mark both as paired if they are to follow one another.',
    citation: c.cite('universe-slots'),
  }),
  'control-paired': (c) => ({
    head: `${c.text('other')} and ${c.text('label')} are paired but do not match`,
    body: `Both are marked as paired and share slots ${c.text('from')} to ${c.text('to')} of universe ${c.text('universe')}, but they do not start alike with as many slots, so they cannot follow one another.`,
    todo: 'Give both the same mode and address, or move one of them.',
    citation: '',
  }),
  'control-cut': (c) => ({
    head: `${c.text('label')}: it is parted where it has no joint`,
    body: `Its patch goes on elsewhere from its slot ${c.text('fromSlot')} of ${c.text('slots')}, which is inside a part or out of order. Its slots are not counted.`,
    todo: 'Assign its address anew: it is parted between parts only.',
    citation: '',
  }),
  'control-number': (c) => ({
    head: `There is no universe ${c.text('number')}`,
    body: 'Universes are numbered from 1 to 63999; no network carries another one.',
    todo: 'Give it another number.',
    citation: 'ANSI E1.31',
  }),
  'control-twice': (c) => ({
    head: `Two universes have number ${c.text('number')}`,
    body: 'They are checked apart here, but on a network they are one.',
    todo: 'Give one of them another number.',
    citation: '',
  }),
};
