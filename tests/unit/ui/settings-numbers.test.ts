import { describe, expect, test } from 'vitest';
import { leadOfAssumption, leadOfInput } from '../../../src/ui/dialogs/settings/lead.ts';
import {
  formatAltitude,
  formatTemp,
  optionalNumber,
  parseAltitude,
  parseDates,
  parseTemp,
} from '../../../src/ui/dialogs/settings/numbers.ts';

const value = <T>(r: { ok: true; value: T } | { ok: false }): T | undefined => (r.ok ? r.value : undefined);

describe('what is typed into the settings', () => {
  test('temperatures in either scale, the plan’s where none is said', () => {
    expect(value(parseTemp('imperial')('104'))).toBe(40);
    expect(value(parseTemp('imperial')('40 °C'))).toBe(40);
    expect(value(parseTemp('metric')('40'))).toBe(40);
    expect(value(parseTemp('metric')('104f'))).toBe(40);
    expect(value(parseTemp('metric')('−5'))).toBe(-5);
    expect(parseTemp('metric')('300').ok).toBe(false);
    expect(parseTemp('metric')('warm').ok).toBe(false);
    expect(formatTemp(40, 'imperial')).toBe('104 °F');
    expect(formatTemp(40, 'metric')).toBe('40 °C');
  });

  test('heights above the sea in feet and metres; nothing is not known', () => {
    expect(value(parseAltitude('imperial')('5250'))).toBe(1600);
    expect(value(parseAltitude('imperial')('1600 m'))).toBe(1600);
    expect(value(parseAltitude('metric')('5250 ft'))).toBe(1600);
    expect(parseAltitude('metric')('')).toEqual({ ok: true, value: undefined });
    expect(parseAltitude('metric')('9000').ok).toBe(false);
    expect(formatAltitude(1600, 'imperial')).toBe('5249 ft');
    expect(formatAltitude(undefined, 'metric')).toBe('');
  });

  test('a number keeps to its range and its unit', () => {
    const volts = optionalNumber('V', 1, 700, '118.5 V');
    expect(value(volts('118,5 v'))).toBe(118.5);
    expect(volts('')).toEqual({ ok: true, value: undefined });
    expect(volts('0').ok).toBe(false);
    expect(volts('118.5 A').ok).toBe(false);
  });

  test('days in a row', () => {
    expect(value(parseDates('2027-03-04, 2027-03-05'))).toEqual(['2027-03-04', '2027-03-05']);
    expect(parseDates('4 March').ok).toBe(false);
  });
});

describe('where an assumed value can be given', () => {
  test('by the assumption', () => {
    expect(leadOfAssumption('altitude')).toMatchObject({ to: 'settings', section: 'place' });
    expect(leadOfAssumption('volts:source-g1')).toMatchObject({ to: 'settings', section: 'sources' });
    expect(leadOfAssumption('slack')).toMatchObject({ to: 'settings', section: 'rules' });
    expect(leadOfAssumption('kind:x@1')).toMatchObject({ to: 'workspace', workspace: 'gear' });
    expect(leadOfAssumption('connector-loss')).toBeUndefined();
  });

  test('by the input of a working', () => {
    const input = (name: string, from: string) => ({ name, from, value: '', assumed: true });
    expect(leadOfInput(input('volts', 'nominal of the set, as if so set'))).toMatchObject({
      section: 'sources',
    });
    expect(leadOfInput(input('level', 'no level in this setup'))).toMatchObject({ workspace: 'day' });
    expect(leadOfInput(input('length', 'drawn, with slack'))).toMatchObject({ section: 'rules' });
  });
});
