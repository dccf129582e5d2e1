import { describe, expect, it } from 'vitest';
import { overnight } from '../../../src/engines/battery/index.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { daySummary } from '../../../src/report/day.ts';
import { dayTroubles } from '../../../src/report/day-words.ts';
import { findingText } from '../../../src/report/text.ts';
import { batteryRig } from '../../support/battery-plan.ts';

const one = { kindId: 'brick', count: 1, joined: 'parallel' as const };

/** One unit from 20:00 to 23:00 on three bricks of about 75 min, then again from `from` on day 2 for so many minutes. */
const twoDays = (
  from: number,
  minutes: number,
  more: { readonly dates?: readonly string[]; readonly bays?: number; readonly stock?: number } = {},
): Plan => {
  const r = batteryRig(more.dates ? { dates: [...more.dates] } : {});
  r.unit('1', one);
  r.block(1200, 1380);
  r.block(from, from + minutes, { day: 2 });
  r.stock('brick', more.stock ?? 3);
  if (more.bays !== 0) r.placeCharger('c1', more.bays);
  return r.b.plan();
};

describe('packs from one day to the next', () => {
  it('battery-overnight: what is not charged by the time the next day wants it is told', () => {
    // Bricks come off at 21:11, 22:23 and 23:00; at 5 % left a charge takes 2 h 40, so by 00:30 only the first is full.
    const [o] = overnight(twoDays(30, 180));
    expect(o).toMatchObject({ day: 1, nextDay: 2, wants: 3, full: 1, bays: 2, wantedMin: 1470 });
    const plan = twoDays(30, 180);
    const finding = assess(plan, { revision: 1 }).findings.find((f) => f.rule === 'battery-overnight');
    expect(finding?.severity).toBe('warn');
    expect(finding && findingText(plan, finding).head).toContain('3 full packs (brick), only 1 is by then');
    expect(
      dayTroubles(daySummary(plan, 1))
        .map((t) => t.text)
        .join(),
    ).toContain('only 1 is full by then');
    expect(dayTroubles(daySummary(plan, 2))).toEqual([]);
  });

  it('battery-overnight: nothing is told where the night is long, the dates lie apart, or the next day needs no more than is full', () => {
    expect(overnight(twoDays(480, 180))).toEqual([]);
    expect(overnight(twoDays(30, 180, { dates: ['2027-03-04', '2027-03-06'] }))).toEqual([]);
    expect(overnight(twoDays(30, 60))).toEqual([]);
    expect(overnight(twoDays(30, 180, { stock: 6 }))).toEqual([]);
  });

  it('battery-overnight: in one bay charges follow one another; dates in the wrong order count as days in a row', () => {
    const [o] = overnight(twoDays(480, 180, { bays: 1, stock: 3 }));
    // Three charges one after the other from 21:11: two and a half to eight hours, done before 08:00.
    expect(o).toBeUndefined();
    const early = overnight(twoDays(240, 180, { bays: 1, dates: ['2027-03-06', '2027-03-04'] }))[0];
    expect(early).toMatchObject({ wantedMin: 1680, full: 2 });
    expect(early?.readyMin).toBeGreaterThan(1680);
    expect(early?.readyMin).toBeLessThan(1920);
  });

  it('battery-overnight: without a bay in the plan it is a note that they must be charged elsewhere', () => {
    const plan = twoDays(480, 180, { bays: 0 });
    const finding = assess(plan, { revision: 1 }).findings.find((f) => f.rule === 'battery-overnight');
    expect(finding?.severity).toBe('note');
    expect(dayTroubles(daySummary(plan, 1))[0]?.text).toContain('must be charged elsewhere');
  });
});
