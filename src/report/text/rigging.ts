import { formatFactor, formatKg, formatNewtons, formatWind } from '../../engines/rigging/index.ts';
import { formatLength } from '../../kernel/units.ts';
import { mountsWords } from '../../plan/kinds/mount-words.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Writer, WriterContext } from './context.ts';

/** Ends every text about stands: what the figure is worth, and who decides. */
const RIGGER = 'Figures from this plan and its gear book; the label on the real one and the rigger decide.';

/** Said with everything overhead and with lifts. */
const OVERHEAD = 'Overhead work is for qualified riggers; every part above people has a second bond.';

const units = (c: WriterContext) => planRecord(c.plan).lengthUnits;
const kg = (c: WriterContext, name: string): string => formatKg(c.num(name), units(c));
const len = (c: WriterContext, name: string): string => formatLength(c.num(name), units(c));
const wind = (c: WriterContext, name: string): string => formatWind(c.num(name), units(c));

const mounts = (c: WriterContext, name: string): string => mountsWords(c.text(name).split(' '), units(c));

const bagsText = (c: WriterContext): string => {
  const bags = c.num('bags');
  const each = c.num('stands') > 1 ? ' on each stand' : '';
  const of = `of ${kg(c, 'bagKg')}`;
  if (!Number.isFinite(bags))
    return 'No number of bags brings the factor there: bring the load in or take a wider stand.';
  const lines =
    bags > c.num('bagsMost') ? ' That is more than bags are for: lines, other stands, or take it down.' : '';
  return `Bags for a factor of ${c.text('wanted')}: ${bags} ${of}${each}, hung on the stand.${lines}`;
};

const DOWN = {
  watch: 'Watch them; a hand stays on each.',
  hands: 'More hands and lines on each, or take them down.',
  down: 'Take them down.',
} as const;

export const riggingTexts: Readonly<Record<string, Writer>> = {
  'rigging-kind': (c) => ({
    head: `${c.text('label')}: its kind is not in the plan`,
    body: 'Its mass, face and rating are not known, so nothing of it is computed.',
    todo: 'Replace it by a kind from the gear book.',
    citation: '',
  }),
  'rigging-load': (c) => ({
    head: `${c.text('label')}: ${kg(c, 'loadKg')} on a stand rated for ${kg(c, 'ratedKg')}`,
    body: `${c.text('kind')} carries fixtures, accessories and frames of ${kg(c, 'loadKg')}; its rated load is ${kg(c, 'ratedKg')}. Cable and gel are not counted. ${RIGGER}`,
    todo: 'Take a stand with a higher rated load, or take weight off.',
    citation: c.cite('rigging-load-factor'),
  }),
  'rigging-arm-load': (c) => ({
    head: `${c.text('label')}: ${kg(c, 'loadKg')} on an arm rated for ${kg(c, 'ratedKg')}`,
    body: `${c.text('arm')} carries ${kg(c, 'loadKg')} at its end; its rated load there is ${kg(c, 'ratedKg')}. ${RIGGER}`,
    todo: 'Take a stronger arm, or put the stand under the load.',
    citation: c.cite('rigging-load-factor'),
  }),
  'rigging-receiver': (c) => ({
    head: `${c.text('label')} does not fit ${c.text('kind')}`,
    body: `It goes on ${mounts(c, 'has')}; the stand offers ${mounts(c, 'receives')}, and no accessory joins the two.`,
    todo: 'Take another stand, or add the adapter or head to its accessories.',
    citation: '',
  }),
  'rigging-height': (c) => ({
    head: `${c.text('label')}: ${len(c, 'heightMm')} is outside what the stand reaches`,
    body: `${c.text('kind')} goes from ${len(c, 'minMm')} to ${len(c, 'maxMm')}.`,
    todo: 'Change the height or take another stand.',
    citation: '',
  }),
  'rigging-tip': (c) => ({
    head: `${c.text('label')}: tip-over factor ${formatFactor(c.num('factor'))}${c.num('windMps') > 0 ? ` in wind of ${wind(c, 'windMps')}` : ''}`,
    body:
      `What holds it down is ${c.num('restoringNm').toFixed(0)} N·m, what tips it ${c.num('overturningNm').toFixed(0)} N·m; ` +
      `a factor of ${c.text('wanted')} is planned for. ${c.num('guyed') > 0 ? 'Its lines are not counted in this factor. ' : ''}${RIGGER}`,
    todo: `${bagsText(c)} Put a leg under the load, bring it in, or take it lower.`,
    citation: c.cite('rigging-tip-factor'),
  }),
  'rigging-tilt': (c) => ({
    head: `${c.text('label')}: top-heavy, tips on a slope of ${c.num('tiltDeg').toFixed(1)}°`,
    body: `A slope of ${c.text('least')}° is planned for. ${RIGGER}`,
    todo: 'Hang a sand bag on it, go lower, or take a wider stand.',
    citation: c.cite('rigging-tilt'),
  }),
  'rigging-frame-stands': (c) => ({
    head: `${c.text('label')} stands on ${c.text('stands')} of ${c.text('wanted')} stands`,
    body: `A frame of this size takes ${c.text('wanted')} stands. ${RIGGER}`,
    todo: 'Add stands, or hang it on rigging.',
    citation: '',
  }),
  'rigging-guys': (c) => ({
    head: `${c.text('label')}: ${c.text('guys')} of ${c.text('wanted')} lines`,
    body: `In wind a frame of this size is held with ${c.text('wanted')} lines besides stands and bags, with people on them. ${RIGGER}`,
    todo: 'Plan the lines and their anchors with the rigger, or leave the frame down.',
    citation: 'Common practice, no published source.',
  }),
  'rigging-wind-open': (c) => ({
    head: `Wind is not known; ${c.text('label')}${c.num('count') > 1 ? ` and ${c.num('count') - 1} more catch` : ' catches'} it`,
    body: `Nothing is assumed. As an example, wind of ${wind(c, 'tableMps')} pushes on it with ${formatNewtons(c.num('forceN'), units(c))} with a solid cloth. ${RIGGER}`,
    todo: 'Give the wind to reckon with, gusts included; 0 indoors.',
    citation: c.cite('rigging-wind-pressure'),
  }),
  'rigging-wind': (c) => ({
    head: `Wind of ${wind(c, 'windMps')} and ${c.num('count') > 1 ? `${c.text('count')} large frames` : `a large frame, ${c.text('label')}`}`,
    body: `That is ${c.text('beaufort')} on the Beaufort scale. A frame is never left without people outdoors. ${RIGGER}`,
    todo: `${DOWN[c.text('step') as keyof typeof DOWN]} The local authority’s limit may be lower.`,
    citation: c.cite('row'),
  }),
  'rigging-hung-load': (c) => ({
    head: `${c.text('label')}: ${kg(c, 'loadKg')} on what is rated for ${kg(c, 'ratedKg')}`,
    body: `Gear ${kg(c, 'gearKg')}${c.num('people') > 0 ? `, ${c.text('people')} people with tools ${kg(c, 'peopleKg')}` : ''}. Cable is not counted. ${RIGGER} ${OVERHEAD}`,
    todo: 'Take weight or people off, or have other rigging designed.',
    citation: c.cite('rigging-load-factor'),
  }),
  'rigging-rating': (c) => ({
    head: `${c.text('label')}: rated load not known`,
    body: `The plan hangs ${kg(c, 'loadKg')} on it, cable not counted. What it may carry is not in the gear book, so nothing is compared. ${OVERHEAD}`,
    todo: 'Read the plate, the maker’s table or the engineer’s paper and write the load in.',
    citation: '',
  }),
  'rigging-people': (c) => ({
    head: `${c.text('label')}: ${c.text('people')} people where ${c.text('most')} may ride`,
    body: `The number on the plate holds. ${RIGGER}`,
    todo: 'Take people out, or take a larger platform.',
    citation: '',
  }),
  'rigging-reach': (c) => ({
    head: `${c.text('label')} does not reach that far`,
    body: `Wanted: ${len(c, 'heightMm')} high, ${len(c, 'reachMm')} to the side. At most ${len(c, 'maxHeightMm')} high and ${len(c, 'maxReachMm')} to the side, and not both at once: the maker’s chart tells.`,
    todo: 'Move it closer, go lower, or take a larger one.',
    citation: '',
  }),
  'rigging-lift-wind': (c) => ({
    head: `${c.text('label')}: wind of ${wind(c, 'windMps')} is above its limit of ${wind(c, 'limitMps')}`,
    body: `${c.num('limitMps') === 0 ? 'It is made for use indoors.' : 'Above the limit on its plate a lift comes down.'} Frames and cloths in a basket are sails its limit does not count. ${RIGGER}`,
    todo: 'Plan without it in this wind.',
    citation: 'Limit of the kind in the gear book; the plate on the machine holds.',
  }),
  'rigging-operator': (c) => ({
    head: `${c.text('label')}: no one is named to work it`,
    body: `Worked by ${c.text('operator') || 'a person trained for it'}. ${OVERHEAD}`,
    todo: 'Write in who works it.',
    citation: '',
  }),
  'rigging-cable-up': (c) => ({
    head: `Cable to ${c.text('label')} is short for the arm`,
    body: `Along ${c.text('rigging')} it is ${len(c, 'upMm')} to the head; the run needs ${len(c, 'needMm')} and its pieces come to ${len(c, 'totalMm')}. Bends and slack for moving come on top.`,
    todo: 'Add a piece, and plan how it is tied along the arm.',
    citation: 'Geometry of a straight arm.',
  }),
  'rigging-wall': (c) => ({
    head: `${c.text('label')}: no room for the legs`,
    body: `${c.text('kind')} opens to ${len(c, 'legCircleMm')} across; however it is turned, a leg meets a wall.`,
    todo: 'Move it off the wall, or use a wall plate, a spring pole or a smaller base.',
    citation: '',
  }),
  'rigging-door': (c) => ({
    head: `${c.text('label')}: its legs reach into a ${c.text('what') === 'door' ? 'door' : 'passage'}`,
    body: `${c.text('kind')} opens to ${len(c, 'legCircleMm')} across, into the way through or the sweep of the leaf. Ways out stay free.`,
    todo: 'Move the stand.',
    citation: 'Local fire code and the authority having jurisdiction.',
  }),
  'rigging-set': (c) =>
    c.text('how') === 'in'
      ? {
          head: `${c.text('label')}: its stand is drawn in ${c.text('piece')}`,
          body: `${c.text('kind')} stands inside the outline. On a platform its legs need an edge and a floor that carries them. ${RIGGER}`,
          todo: 'Move it off, or check that it can stand on it and is held from sliding.',
          citation: '',
        }
      : {
          head: `${c.text('label')}: its legs meet ${c.text('piece')}`,
          body: `${c.text('kind')} opens to ${len(c, 'legCircleMm')} across; however it is turned, a leg meets it.`,
          todo: 'Move one of them, or use a stand with a sliding leg or a smaller base.',
          citation: '',
        },
  'rigging-legs': (c) => ({
    head: `${c.text('label')} and ${c.text('other')}: their stands’ legs cross`,
    body: 'They stand so close that the legs lie over one another, whichever way they are turned.',
    todo: 'Move one of them, or check on the floor that both stand flat.',
    citation: '',
  }),
};
