import { formatDb, HINT } from '../../engines/radio/index.ts';
import { formatLength, type LengthUnits } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Writer, WriterContext } from './context.ts';

const units = (c: WriterContext): LengthUnits => planRecord(c.plan).lengthUnits;
const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;
const lasts = (minutes: number): string =>
  minutes >= 120 ? `about ${Math.round(minutes / 60)} h` : `about ${Math.round(minutes)} min`;

export const radioTexts: Readonly<Record<string, Writer>> = {
  'radio-no-transmitter': (c) => ({
    head: `${many(c.num('count'), 'unit is', 'units are')} linked by radio and no transmitter is on the plan`,
    body: `By radio: ${c.text('labels')}. Without a transmitter there is no margin to compute.`,
    todo: 'Place a transmitter and give it the universes, or link the units by line.',
    citation: '',
  }),
  'radio-link': (c) => ({
    head: `${c.text('label')} is linked to nothing that sends`,
    body: `Its link names ${c.text('what')}, which is no transmitter, repeater or receiver of this plan with a link of its own.`,
    todo: 'Choose the transmitter it is linked to.',
    citation: '',
  }),
  'radio-unpatched': (c) => ({
    head: `${many(c.num('count'), 'receiver listens', 'receivers listen')} for no universe`,
    body: `Linked by radio without a universe, so that no transmitter can be told to carry it: ${c.text('labels')}.`,
    todo: 'Assign addresses or set the universe, or take the radio link away.',
    citation: '',
  }),
  'radio-universe': (c) => ({
    head: `${c.text('sender')} does not carry ${c.text('universe')} for ${c.text('label')}`,
    body: `${c.text('label')} is linked to ${c.text('sender')}; none of its ports is set to ${c.text('universe')}.`,
    todo: 'Set a port of the transmitter to that universe, or link the unit to one that carries it.',
    citation: '',
  }),
  'radio-carrier': (c) => ({
    head: `${c.text('label')}: no transmitter carries ${c.text('universe')}`,
    body: `It is linked by radio, and ${c.text('universe')} is on no transmitter of the plan.`,
    todo: 'Set a port of a transmitter to that universe.',
    citation: '',
  }),
  'radio-band': (c) => ({
    head: `${c.text('label')} does not hear the band of ${c.text('sender')}`,
    body: `It takes ${c.text('bands')}; ${c.text('sender')} sends on ${c.text('sends')}.`,
    todo: 'Change the band of the transmitter, or link the unit to another one.',
    citation: '',
  }),
  'radio-no-way': (c) => ({
    head: `${c.text('label')}: its link to ${c.text('sender')} is not computed`,
    body: `Not computed: ${c.text('why')}.`,
    todo: 'Give the floors their levels, and repeaters what they listen to.',
    citation: '',
  }),
  'radio-margin': (c) => ({
    head:
      c.num('marginDb') < 0
        ? `${c.text('label')}: ${c.text('sender')} is not expected to reach it`
        : `${c.text('label')}: weak link to ${c.text('sender')}`,
    body: `Margin ${formatDb(c.num('marginDb'))} by the planning estimate. ${
      c.text('better') === '' || c.text('better') === '–'
        ? ''
        : `${c.text('better')} would have ${formatDb(c.num('betterDb'))}. `
    }${HINT}`,
    todo: 'Bring the transmitter nearer, lift both aerials above heads, add a repeater, or run a line.',
    citation: `ITU-R P.525, P.526, P.1238; losses of walls are estimates. ${c.cite('radio-margin-fair')}`,
  }),
  'radio-hops': (c) => ({
    head: `${c.text('label')}: no way of ${c.text('most')} hops from ${c.text('sender')} reaches it`,
    body: `Every unit of the mesh passes on what it hears, ${c.text('most')} times at most; no such way is left with a margin above 0 dB. ${HINT}`,
    todo: 'Bring the bridge nearer, or put a unit of the mesh in between.',
    citation: '',
  }),
  'radio-receiver': (c) => ({
    head: `${many(c.num('count'), 'unit is', 'units are')} linked by radio with a receiver that is not known`,
    body: `${c.text('labels')}: no receiver is built into the kind and none is plugged in; ${c.text('sensitivityDbm').replace('-', '−')} dBm is assumed.`,
    todo: 'Plug a receiver into the unit on the plan, or give its kind the receiver it has.',
    citation: c.cite('radio-sensitivity'),
  }),
  'radio-same-circuit': (c) => ({
    head: `${c.text('label')} hangs on the breaker of what it controls`,
    body: `${c.text('way')} feeds ${c.text('label')} and ${c.text('units')}. When it opens, both go; ${
      c.num('backup') === 1
        ? `the transmitter lasts ${lasts(c.num('minutes'))} on its own cell.`
        : 'the transmitter has no cell of its own, and its links drop with it.'
    }`,
    todo: 'Feed the transmitter from a circuit that carries no fixtures of its own links.',
    citation: 'Common practice, no published source',
  }),
  'radio-no-backup': (c) => ({
    head: `${c.text('label')} has no cell of its own`,
    body: `When its plug is pulled, ${many(c.num('count'), 'receiver loses', 'receivers lose')} their data at once: ${c.text('units')}. What they do then is set in their menus.`,
    todo: 'Take a transmitter with a back-up cell, or guard its plug.',
    citation: c.cite('radio-backup-least'),
  }),
  'radio-backup': (c) => ({
    head: `${c.text('label')} lasts ${lasts(c.num('minutes'))} once its plug is pulled`,
    body: `On its own cell it goes on for ${lasts(c.num('minutes'))}; then ${many(c.num('count'), 'receiver loses', 'receivers lose')} their data: ${c.text('units')}.`,
    todo: 'See that someone notices in time, or feed it from a pack.',
    citation: c.cite('radio-backup-least'),
  }),
  'radio-empty': (c) => ({
    head: `${c.text('label')} carries no universe`,
    body: 'None of its ports is set to a universe, so that nothing is on the air.',
    todo: 'Set its ports in Control, Radio.',
    citation: '',
  }),
  'radio-links': (c) => ({
    head: `${c.text('label')} has more links than it takes`,
    body: `${c.text('count')} receivers are linked to it; it takes ${c.text('most')}.`,
    todo: 'Share the receivers between two transmitters.',
    citation: 'Gear book or plan',
  }),
  'radio-low': (c) => ({
    head: `${c.text('label')} stands below head height`,
    body: `Its aerial is at ${formatLength(c.num('heightMm'), units(c))}; people stand up to ${formatLength(c.num('headMm'), units(c))}, and bodies take radio away.`,
    todo: 'Lift it above the heads, on a stand or from the rig.',
    citation: 'Common practice, no published source',
  }),
  'radio-repeater': (c) => ({
    head: `${c.text('label')} repeats nothing`,
    body: 'It names no transmitter or repeater of the plan that it listens to.',
    todo: 'Choose what it listens to in Control, Radio.',
    citation: '',
  }),
  'radio-ring': (c) => ({
    head: `Repeaters in a ring: ${c.text('labels')}`,
    body: 'Each listens to the next, and no transmitter is among them: nothing comes out.',
    todo: 'Let one of them listen to a transmitter.',
    citation: '',
  }),
  'radio-near': (c) => ({
    head: `${c.text('label')} and ${c.text('other')} stand side by side`,
    body: `${formatLength(c.num('distanceMm'), units(c))} apart on one band; each makes the other’s receivers deaf.`,
    todo: `Move them ${formatLength(c.num('apartMm'), units(c))} apart or more.`,
    citation: c.cite('radio-apart'),
  }),
  'radio-wifi': (c) => ({
    head: `Wi-Fi leaves ${c.text('free')} of ${c.text('all')} hop channels at 2.4 GHz`,
    body: `Wi-Fi channels ${c.text('channels')} are in use; a link that avoids busy channels needs ${c.text('least')}, so some hops still land on Wi-Fi.`,
    todo: 'Move the Wi-Fi on set to 5 GHz or to fewer channels, or use another band.',
    citation: c.cite('radio-hops-least'),
  }),
  'radio-kind': (c) => ({
    head: `${c.text('label')}: its kind is not in the plan`,
    body: 'Nothing of it is computed.',
    todo: 'Replace it with a kind of the gear book.',
    citation: '',
  }),
};
