import { describe, expect, it } from 'vitest';
import { formatAmps } from '../../../src/kernel/units.ts';
import { balanceLegs } from '../../../src/report/balance.ts';
import { explainBalance } from '../../../src/report/explain-balance.ts';
import { explainBalanceBound } from '../../../src/report/explain-balance-bound.ts';
import { demoPlan } from '../../support/demo-plan.ts';

describe.each(['street', 'stage', 'study'] as const)('workings of a balance on “%s”', (name) => {
  const plan = demoPlan(name);
  const { sources, moves } = balanceLegs(plan);

  it('power-balance: every score as it is, as offered and of the trade-off ends in the figure shown', () => {
    expect(sources.length).toBeGreaterThan(0);
    for (const s of sources) {
      const rows = [
        ['before', s.before],
        ['after', s.after],
        ...s.trade.map((t, i) => [i, t] as const),
      ] as const;
      for (const [which, score] of rows) {
        const result = (f: Parameters<typeof explainBalance>[3]) => explainBalance(plan, s, which, f)?.result;
        expect(result('worstLegA'), `${s.label} ${which}`).toBe(formatAmps(score.worstLegA));
        expect(result('neutralA'), `${s.label} ${which}`).toBe(formatAmps(score.neutralA));
        expect(result('overloads'), `${s.label} ${which}`).toBe(`${score.overloads}`);
        expect(result('moves'), `${s.label} ${which}`).toBe(`${score.moves}`);
      }
    }
  });

  it('power-balance: the plugs named for the worst leg add up to it, and the moves are those offered', () => {
    const amps = (text: string): number => Number(text.replace(/[^0-9.]/g, ''));
    for (const s of sources) {
      const w = explainBalance(plan, s, 'after', 'worstLegA');
      const sum = (w?.inputs ?? []).reduce((n, i) => n + amps(i.value), 0);
      // Each line is rounded to a tenth.
      expect(Math.abs(sum - s.after.worstLegA)).toBeLessThan(0.05 * ((w?.inputs.length ?? 0) + 2));
      const moved = explainBalance(plan, s, 'after', 'moves')?.inputs.map((i) => i.value) ?? [];
      const offered = moves.filter((m) => m.sourceId === s.sourceId).map((m) => m.toLabel);
      for (const to of moved) expect(offered).toContain(to);
    }
  });

  it('power-balance: bound and gap are explained where the answer is not proved', () => {
    for (const s of balanceLegs(plan, { moves: 1 }).sources) {
      expect(s.proved).toBe(false);
      const bound = explainBalanceBound(plan, s, 'boundA');
      expect(bound?.result).toBe(formatAmps(s.boundA));
      expect(bound?.steps.at(-1)).toContain(formatAmps(s.boundA));
      expect(explainBalanceBound(plan, s, 'gapPct')?.result).toBe(`${s.gapPct.toFixed(1)} %`);
    }
  });
});
