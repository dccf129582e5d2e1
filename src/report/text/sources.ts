import { formatCableLength } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { DEFER, type Writer } from './context.ts';

const earth = (northAmerica: boolean): string => (northAmerica ? 'grounds' : 'earths');

export const sourceTexts: Readonly<Record<string, Writer>> = {
  'power-two-sources': (c) => ({
    head: `${c.text('source')} and ${c.text('otherSource')}: two supplies in reach of one another`,
    body: `${c.text('label')} (${c.text('source')}) and ${c.text('other')} (${c.text('otherSource')}) stand ${formatCableLength(c.num('apartMm'), planRecord(c.plan).lengthUnits)} apart. With a fault on either, there may be dangerous volts between their metal parts unless their ${earth(c.northAmerica)} are joined. ${DEFER}`,
    todo: `Have a qualified person say how the ${earth(c.northAmerica)} of both supplies are to be joined, or keep what they feed further apart.`,
    citation: c.cite('arms-reach'),
  }),
  'power-shared-data': (c) => ({
    head: `${c.text('label')}: a data line joins units on ${c.text('source')} and ${c.text('otherSource')}`,
    body: `${c.text('one')} and ${c.text('other')} are fed by different supplies, and the shield of the data cable joins them. Volts between the two ${earth(c.northAmerica)} drive a current through it, which can destroy the electronics. ${DEFER}`,
    todo: `Put an isolating data splitter or a radio link between them, and have a qualified person look at the ${earth(c.northAmerica)}.`,
    citation: 'common practice, no published source',
  }),
  'power-connector-volts': (c) => ({
    head: `${c.text('label')}: ${c.volts('nominalV')} on a connector made for ${c.volts('ratedV')}`,
    body: `The ${c.text('connector')} is made for ${c.volts('ratedV')} and carries ${c.volts('nominalV')} nominal here. ${DEFER}`,
    todo: 'Feed it through a transformer, or use gear made for these volts.',
    citation: 'volts rating of the connector',
  }),
};
