import { formatLength } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Writer, WriterContext } from './context.ts';

const len = (c: WriterContext, name: string): string =>
  formatLength(c.num(name), planRecord(c.plan).lengthUnits);

const capital = (t: string): string => t.charAt(0).toUpperCase() + t.slice(1);
const cables = (c: WriterContext): string =>
  c.num('count') === 1 ? 'one cable' : `${c.num('count')} cables`;
const volts = (c: WriterContext): string =>
  c.num('volts') > 0 ? `${Math.round(c.num('volts') / 100) / 10} kV` : 'volts not known';

/** Ends every text about overhead lines. */
const UTILITY =
  'Its owner and the authority having jurisdiction decide how near anything may come; ask them before anything is raised. Sag and swing of the wires are not counted.';

export const siteTexts: Readonly<Record<string, Writer>> = {
  'site-clear': (c) => ({
    head: `${capital(c.text('label'))} is not clear: ${c.text('names')}`,
    body: `${c.num('count') === 1 ? 'One thing stands' : `${c.num('count')} things stand`} ${c.text('what') === 'exit' ? 'in the way of an exit' : 'in a lane for fire engines'} as drawn. The fire marshal and the authority having jurisdiction decide what stays clear.`,
    todo: 'Move it out of the way.',
    citation: c.cite('keep-clear'),
  }),
  'site-crossing': (c) => ({
    head: `${capital(cables(c))} across ${c.text('label')} without a ramp`,
    body: `${capital(cables(c))} ${c.num('count') === 1 ? 'lies' : 'lie'} across ${c.text('label')} and no ramp or flown crossing takes ${c.num('count') === 1 ? 'it' : 'them'} there.`,
    todo: 'Place a cable crossing there, or lead the cable another way.',
    citation: c.cite('cable-crossing'),
  }),
  'site-door': (c) => ({
    head: `${capital(cables(c))} through ${c.text('label')}`,
    body: `${capital(cables(c))} ${c.num('count') === 1 ? 'passes' : 'pass'} through ${c.text('label')} on the floor, and no ramp or flown crossing takes ${c.num('count') === 1 ? 'it' : 'them'} there. The door may not close over it.`,
    todo: 'Place a cable crossing in the door, or fly the cable over it.',
    citation: c.cite('cable-crossing'),
  }),
  'site-overhead': (c) => ({
    head: `${capital(c.text('worst'))}: ${len(c, 'gapMm')} from ${c.text('label')}, ${len(c, 'needMm')} to keep`,
    body: `Within the distance to keep from the line (${volts(c)}, lowest wire at ${len(c, 'wireMm')}): ${c.text('names')}. The top of the nearest is at ${len(c, 'topMm')}. ${UTILITY}`,
    todo: 'Move it away, bring it down, or have the owner of the line make it dead.',
    citation: c.cite('limit'),
  }),
  'site-overhead-reach': (c) => ({
    head: `${capital(c.text('worst'))} can reach ${c.text('label')} when it is run up`,
    body: `At its full height of ${len(c, 'topMm')} it would come to ${len(c, 'gapMm')} from the line (${volts(c)}); ${len(c, 'needMm')} to keep. Also: ${c.text('names')}. ${UTILITY}`,
    todo: 'Put it where it cannot reach even run all the way up, or block its height.',
    citation: c.cite('limit'),
  }),
  'site-overhead-unknown': (c) => ({
    head: `${capital(c.text('label'))}: height not known, gear ${len(c, 'gapMm')} to its side`,
    body: `Within ${len(c, 'needMm')} to the side of the line: ${c.text('names')}. The plan does not say how high its lowest wire is, so the distance is not computed. ${UTILITY}`,
    todo: 'Ask its owner for height and volts, and write them into the plan. Never measure it by hand.',
    citation: c.cite('limit'),
  }),
};
