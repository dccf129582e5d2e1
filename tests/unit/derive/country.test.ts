import { describe, expect, it } from 'vitest';
import { colourLine, wireColours } from '../../../src/derive/colours.ts';
import { limitCitation, limitOf } from '../../../src/derive/limits.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const plan = (practice: 'north-america' | 'europe', country?: 'us' | 'canada' | 'uk' | 'eu' | 'australia') =>
  new PlanBuilder({ practice, ...(country ? { country } : {}) }).plan();

describe('the country of a plan', () => {
  it('power-limit: lays its own rows over those of the practice, and the plan’s own over both', () => {
    expect(limitOf(plan('north-america'), 'continuous-hours').value).toBe(3);
    expect(limitOf(plan('north-america', 'us'), 'continuous-hours').value).toBe(3);
    const canada = limitOf(plan('north-america', 'canada'), 'continuous-hours');
    expect(canada.value).toBe(1);
    expect(limitCitation(canada)).toMatch(/CEC rule 8-104.*from memory/);
    const own = new PlanBuilder({
      country: 'canada',
      limits: [{ limit: 'continuous-hours', value: 2, reason: 'the inspector says so' }],
    }).plan();
    expect(limitOf(own, 'continuous-hours')).toMatchObject({ value: 2, override: { tableValue: 1 } });
  });

  it('power-legs: colours follow country and volts: black, red, blue; brown, orange, yellow; brown, black, grey; blue neutral (electrical-contractor.net; IEC 60445)', () => {
    expect(colourLine(plan('north-america', 'us'), '120/208')).toBe(
      'A black, B red, C blue, neutral white or grey, ground green, or bare',
    );
    expect(wireColours(plan('north-america', 'us'), '277/480')?.legs).toEqual(['brown', 'orange', 'yellow']);
    expect(wireColours(plan('north-america', 'us'), '120/240-delta')?.legs).toEqual([
      'black',
      'orange',
      'blue',
    ]);
    expect(wireColours(plan('north-america', 'canada'), '347/600')).toMatchObject({
      legs: ['red', 'black', 'blue'],
      fromMemory: true,
    });
    expect(colourLine(plan('europe', 'uk'), '230/400')).toBe(
      'L1 brown, L2 black, L3 grey, neutral blue, earth green and yellow',
    );
    expect(wireColours(plan('europe', 'uk'), '230')?.old).toMatch(/black neutral before 2004/);
    expect(colourLine(plan('europe'), '230-it')).not.toMatch(/neutral/);
  });
});
