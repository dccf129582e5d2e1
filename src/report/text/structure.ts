import { DEFER, type Writer } from './context.ts';

const LEFT_OUT = 'It and what hangs on it are not computed; what feeds it is computed without it.';

export const structureTexts: Readonly<Record<string, Writer>> = {
  'power-loop': (c) => ({
    head: `Fed in a circle: ${c.text('label')}`,
    body: `Each of these gets its power from another of them, and none from a source. ${LEFT_OUT}`,
    todo: 'Take one of the cables away and feed it from a source.',
    citation: '',
  }),
  'power-two-into-one': (c) => ({
    head: `${c.text('label')}: more than one cable into inlet ${c.text('inlet')}`,
    body: `These cables go into one inlet: ${c.text('cables')}. ${LEFT_OUT}`,
    todo: 'Leave one of them.',
    citation: '',
  }),
  'power-second-feed': (c) => ({
    head: `${c.text('label')}: fed twice`,
    body: `These cables feed it: ${c.text('cables')}. Two feeds into one thing are not computed. ${LEFT_OUT}`,
    todo: 'Leave one feed. Two supplies in reach of one another are for a qualified person.',
    citation: '',
  }),
  'power-cable-end': (c) => ({
    head: `${c.text('label')}: one end is nowhere`,
    body: `It ${c.text('which')} ${c.text('end')}. ${LEFT_OUT}`,
    todo: 'Plug its end in again, or remove it.',
    citation: '',
  }),
  'power-mate': (c) => ({
    head: `${c.text('label')}: its connectors do not mate at ${c.text('other')}`,
    body: `The outlet is ${c.text('outlet')}, the plug ${c.text('plug')}. ${LEFT_OUT}`,
    todo: 'Use a cable that fits, or an adapter.',
    citation: 'connector table',
  }),
  'power-way-legs': (c) => ({
    head: `${c.text('label')}: sits on a leg that is not there`,
    body: `It wants leg ${c.text('wants')} and ${c.text('has')} reach it. ${LEFT_OUT}`,
    todo: 'Feed the box with a cable that has all its legs, or use other ways.',
    citation: '',
  }),
  'power-outlet-legs': (c) => ({
    head: `${c.text('label')}: outlet ${c.text('port')} has ${c.text('wants')} legs, ${c.text('has')} reach it`,
    body: `The outlet ${c.text('port')} has more legs than what feeds it. What is plugged in there is not computed.`,
    todo: 'Use another outlet, or set the outlet’s legs right.',
    citation: '',
  }),
  'power-load-legs': (c) => ({
    head: `${c.text('label')}: cannot be connected so`,
    body: `${cap(c.text('problem'))}. ${LEFT_OUT}`,
    todo: 'Feed it from an outlet that has its legs and its neutral.',
    citation: '',
  }),
  'power-outlet-shared': (c) => ({
    head: `${c.text('label')}: ${c.text('plugs')} plugs in outlet ${c.text('port')}`,
    body: `It has ${c.num('sockets') === 1 ? 'one socket' : `${c.text('sockets')} sockets`}${c.num('assumed') === 1 ? ', the usual number for its connector (assumed)' : ''}, and the plan has ${c.text('plugs')} plugs in it. Their currents are added up.`,
    todo: 'Use a splitter box or another outlet, or set its number of sockets right.',
    citation: '',
  }),
  'power-outlet-way': (c) => ({
    head: `${c.text('label')}: its circuit is not there`,
    body: `It hangs on circuit ${c.text('wayId')} of ${c.text('source')}, which is not in the plan. ${LEFT_OUT}`,
    todo: 'Choose the circuit it hangs on.',
    citation: '',
  }),
  'power-box-unfed': (c) => ({
    head: `${c.text('label')}: nothing feeds it`,
    body: `No cable goes into its inlet. ${LEFT_OUT}`,
    todo: 'Run a cable to it.',
    citation: '',
  }),
  'power-unplugged': (c) => ({
    head: `${c.text('label')}: not plugged in`,
    body: 'No cable goes into its inlet, so its load is in no figure.',
    todo: 'Plug it in, or mark it as running on packs.',
    citation: '',
  }),
  'power-no-ballast': (c) => ({
    head: `${c.text('label')}: has no ballast`,
    body: 'Its kind runs on a ballast and the plan has none for it, so its load is in no figure.',
    todo: 'Add its ballast.',
    citation: '',
  }),
  'power-kind': (c) => ({
    head: `${c.text('label')}: its kind is not in the plan`,
    body: `The kind ${c.text('kindId')} is missing or is something else. ${LEFT_OUT}`,
    todo: 'Replace it by a kind from the gear book.',
    citation: '',
  }),
  'power-value': (c) => ({
    head: `${c.text('label')}: ${c.text('problem')}`,
    body: `That cannot be computed with. ${LEFT_OUT} ${DEFER}`,
    todo: 'Set the value right.',
    citation: '',
  }),
  'power-level': (c) => ({
    head: `${c.text('label')}: its level in ${c.text('setup')} is ${c.text('levelPct')} %`,
    body: `A level is 0 to 100 %. ${LEFT_OUT}`,
    todo: 'Set the level right.',
    citation: '',
  }),
  'power-zero-watts': (c) => ({
    head: `${c.text('label')}: its kind draws 0 W`,
    body: 'It is counted as drawing nothing.',
    todo: 'Give the kind its input watts, or mark the unit as running on packs.',
    citation: '',
  }),
  'plan-limit': (c) => ({
    head: `${c.text('set')}: set in this plan and used by nothing`,
    body: `The plan sets this limit${c.text('reason') ? ` (${c.text('reason')})` : ''}, but ${c.text('why')}. The checks go by their tables.`,
    todo: 'Set the limit that is meant in the settings, and take this one out of the plan.',
    citation: '',
  }),
  'plan-reference': (c) => ({
    head: c.text('what'),
    body: 'What depends on it is left out.',
    todo: c.text('todo'),
    citation: '',
  }),
};

const cap = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
