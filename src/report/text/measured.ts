import type { Writer, WriterContext } from './context.ts';

const range = (c: WriterContext, unit: string): string =>
  c.num('least').toFixed(1) === c.num('most').toFixed(1)
    ? `${c.num('least').toFixed(1)} ${unit}`
    : `${c.num('least').toFixed(1)} to ${c.num('most').toFixed(1)} ${unit}`;

const who = (c: WriterContext): string => [c.text('by'), c.text('when')].filter((t) => t !== '').join(', ');

const gap =
  (unit: string, where = ''): Writer =>
  (c) => ({
    head: `${c.text('label')}${where}: measured ${c.num('measured').toFixed(1)} ${unit}, computed ${range(c, unit)}`,
    body: `Measured by ${who(c)}. It is ${c.pct('pct')} off what the plan gives, more than the ${c.num('limitPct')} % that is let pass.`,
    todo: 'Believe the meter. Find out what the plan does not know: another load, another length, other volts.',
    citation: c.cite('limitRow'),
  });

export const measuredTexts: Readonly<Record<string, Writer>> = {
  'power-measured-volts': gap('V'),
  'power-measured-amps': gap('A'),
  'power-measured-neutral': gap('A', ', neutral'),
  'power-measured-polarity': (c) => ({
    head: `${c.text('label')}: polarity measured wrong`,
    body: `Noted by ${who(c)}. Live and neutral, or the order of the legs, are not as they should be.`,
    todo: 'Keep it dead and unplugged until a qualified person has put it right and measured again.',
    citation: '',
  }),
  'power-measured-device': (c) => ({
    head: `${c.text('label')}: the residual-current device did not open when tested`,
    body: `Noted by ${who(c)}.`,
    todo: 'Take it out of use until a qualified person has replaced and tested it.',
    citation: '',
  }),
};
