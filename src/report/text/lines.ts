import { formatLength } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Writer } from './context.ts';

const DMX = 'ANSI E1.11';
const WIRE = 'A line is one wire from unit to unit (EIA-485); it branches in a splitter only.';

/** Texts about data lines, ports and what reaches whom. */
export const lineTexts: Readonly<Record<string, Writer>> = {
  'control-line-universe': (c) => ({
    head: `${c.text('to')} is on ${c.text('own')}, its line carries ${c.text('carries')}`,
    body: `${c.text('label')} carries ${c.text('carries')}; the unit is patched at ${c.text('address')}. A wire never joins two universes, so nothing it is meant to hear comes by this line.`,
    todo: 'Hang it on a line of its universe, or give it an address in the universe of this line.',
    citation: DMX,
  }),
  'control-line-unpatched': (c) => ({
    head: `${c.text('to')} is on a data line and has no address`,
    body: `${c.text('label')} reaches it, but it is not patched.`,
    todo: 'Assign its address, or take it off the line.',
    citation: '',
  }),
  'control-line-port': (c) =>
    c.text('what') === 'start'
      ? {
          head: `${c.text('label')} starts from a port that is not there`,
          body: `${c.text('from')} has no such data output.`,
          todo: 'Choose one of its ports, or start the line from something else.',
          citation: '',
        }
      : {
          head: `${c.text('to')} has no ${c.text('needs')} data input`,
          body: `${c.text('label')} cannot be plugged into it.`,
          todo: 'Take it off the line, or put between what changes one into the other: a node, a receiver.',
          citation: '',
        },
  'control-line-unset': (c) => ({
    head: `${c.text('label')}: its port names no universe`,
    body: `${c.text('from')}, ${c.text('port')}: which universe comes out of it is not said, so what it reaches is not checked.`,
    todo: 'Give the port a universe in Control, Lines.',
    citation: '',
  }),
  'control-line-dead': (c) => ({
    head: `${c.text('label')} brings no data`,
    body: `${c.text('from')} gets no data over any line itself.`,
    todo: `Run a line to ${c.text('from')}.`,
    citation: '',
  }),
  'control-line-ring': (c) => ({
    head: `${c.text('label')} leads back into itself`,
    body: `${c.text('from')} would get its own data back. What hangs on it is not checked.`,
    todo: 'Take one of the lines out.',
    citation: '',
  }),
  'control-line-split': (c) => ({
    head: `A splitter is needed at ${c.text('at')}`,
    body:
      c.text('how') === 'port'
        ? `${c.text('label')} and ${c.text('other')} both start from one port. ${WIRE}`
        : c.text('how') === 'middle'
          ? `${c.text('label')} goes on from the middle of ${c.text('other')}. ${WIRE}`
          : `More lines come to it than it has inputs. ${WIRE}`,
    todo: 'Put a data splitter there and start a line from each of its outputs, or join the lines into one.',
    citation: 'EIA-485: one daisy chain, a stub of 0.3 m at most (oksid.ch on DMX512)',
  }),
  'control-line-loads': (c) => ({
    head: `${c.text('label')} has ${c.text('loads')} unit loads`,
    body: `${c.text('stops')} units and devices hang on it without a splitter between. One driver feeds ${c.text('most')} unit loads; a unit counts as one where its kind does not say.`,
    todo: 'Put in a splitter: each of its outputs is a new line with its own count.',
    citation: c.cite('line-loads'),
  }),
  'control-line-many': (c) => ({
    head: `${c.text('label')} has ${c.text('stops')} units`,
    body: `That is within the ${c.text('most')} unit loads of one driver, and more than the ${c.text('advised')} of cautious practice.`,
    todo: 'A splitter half way makes it two lines, so that one bad cable takes fewer units.',
    citation: c.cite('line-devices'),
  }),
  'control-line-length': (c) => ({
    head: `${c.text('label')} is ${formatLength(c.num('lengthMm'), planRecord(c.plan).lengthUnits)} long`,
    body: `Its cable from end to end, rises and slack with it, is past ${c.text('limitM')} m.`,
    todo: 'Put in a splitter or booster, bring the universe by a network to a node nearby, or by radio.',
    citation: c.cite('row'),
  }),
  'control-line-hop': (c) => ({
    head: `${c.text('label')}: ${formatLength(c.num('lengthMm'), planRecord(c.plan).lengthUnits)} to ${c.text('to')}`,
    body: `${c.text('kind')} is meant for ${c.text('limitM')} m at most from end to end.`,
    todo: 'Put a switch, node or splitter between, or another kind of cable.',
    citation: c.text('row') === '' ? 'the kind of cable, as it is in the gear book' : c.cite('row'),
  }),
  'control-line-end': (c) => ({
    head: `${c.text('label')} has no terminator`,
    body: `Its last unit is ${c.text('end')}. Without a terminator of 120 Ω the signal comes back from the open end.`,
    todo: `Plug a terminator into the through of ${c.text('end')} and tick it on the line.`,
    citation: 'EIA-485 practice: 120 Ω at the last unit of a line and nowhere else (in many units’ manuals)',
  }),
  'control-line-remote': (c) => ({
    head: `${c.text('at')} lets no remote management through`,
    body: `${c.text('label')} is marked for remote management. ${c.text('kind')} passes data one way only.`,
    todo: 'Use gear that works both ways, or take the mark off the line.',
    citation: 'ANSI E1.20: every active device between has to pass the answers back',
  }),
  'control-line-chain': (c) => ({
    head: `${c.text('count')} units pass on both power and data`,
    body: `On ${c.text('lines')}: what hangs behind such a unit gets both through it, ${c.text('behind')} units in all. One pulled plug takes power and data from all behind it.`,
    todo: 'Where that matters, feed the far end from another way, or run the line the other way round.',
    citation: 'common practice, no published source',
  }),
  'control-no-data': (c) => ({
    head:
      c.text('link') === 'parted'
        ? `${c.text('label')} gets no data for ${c.text('universe')}`
        : `${c.text('label')} is patched, and nothing brings it data`,
    body:
      c.text('link') === 'parted'
        ? `It is parted over several universes, and none of its lines carries ${c.text('universe')}.`
        : c.text('link') === 'radio'
          ? `It is to be reached by radio, but nothing in the plan sends ${c.text('universe')}.`
          : `No line and no radio link reaches it with ${c.text('universe')}.`,
    todo:
      c.text('link') === 'radio'
        ? 'Place a transmitter with a port on that universe, or run a line.'
        : c.text('link') === 'parted'
          ? 'Run a line of that universe to it too, or patch it in one universe.'
          : 'Put it on a line, or set its link to radio.',
    citation: '',
  }),
  'control-port-twice': (c) => ({
    head: `${c.text('label')} has ${c.text('universe')} on two ports`,
    body:
      c.text('one') === c.text('two')
        ? `Its port ${c.text('one')} names it twice.`
        : c.num('radio') === 1
          ? `Ports ${c.text('one')} and ${c.text('two')} send the same universe, so units linked to one hear what the other sends.`
          : `Ports ${c.text('one')} and ${c.text('two')} give out the same universe. That is right where two lines share it.`,
    todo: 'Give one of them another universe, or leave it where it is meant.',
    citation: '',
  }),
  'control-port-full': (c) => ({
    head: `${c.text('at')}: ${c.text('count')} universes on a port that carries ${c.text('most')}`,
    body: `It is set to ${c.text('universes')}.`,
    todo: 'Spread them over more ports or nodes.',
    citation: '',
  }),
  'control-port-missing': (c) => ({
    head: `${c.text('label')} has no port ${c.text('port')}`,
    body: 'A universe is set for a port its kind does not have.',
    todo: 'Set the universe on one of its ports.',
    citation: '',
  }),
  'control-device-full': (c) => ({
    head: `${c.text('label')} is set to ${c.text('count')} universes and makes ${c.text('most')}`,
    body: `It is set to ${c.text('universes')}.`,
    todo: 'Take universes off its ports, or use a larger one.',
    citation: '',
  }),
  'control-port-dead': (c) => ({
    head: `${c.text('label')} gets no data for ${c.text('universes')}`,
    body:
      c.num('lines') === 0
        ? 'No line comes to it, so what hangs on it hears nothing.'
        : c.text('brings') === ''
          ? 'What comes to it carries no data itself.'
          : `Its lines bring ${c.text('brings')} only.`,
    todo: 'Run a line that carries that universe to it.',
    citation: 'common practice, no published source: a port that gets no data is a fault worth showing',
  }),
};
