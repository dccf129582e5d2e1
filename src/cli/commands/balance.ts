import { parseArgs } from 'node:util';
import { canonicalJson } from '../../kernel/canonical.ts';
import { formatAmps } from '../../kernel/units.ts';
import { applyChanges } from '../../plan/change-set.ts';
import { type BalancedSource, balanceLegs, type Score } from '../../report/balance.ts';
import { type Command, EXIT, UsageError } from '../command.ts';
import { onePath, planToChange, wholeNumber, writePlanTo } from '../plan-out.ts';

const score = (s: Score): string =>
  `${s.overloads} overloads, worst leg ${formatAmps(s.worstLegA)}, neutral ${formatAmps(s.neutralA)}`;

const lines = (s: BalancedSource): string[] => [
  `${s.label}`,
  `  before: ${score(s.before)}`,
  `  after:  ${score(s.after)}, ${s.after.moves} moves`,
  `  bound:  no assignment has a worst leg below ${formatAmps(s.boundA)}; this one is ${s.gapPct.toFixed(1)} % above${s.proved ? ', proved the best' : ''}`,
  ...s.trade.map((t, k) => `  with at most ${k} ${k === 1 ? 'move' : 'moves'}: ${score(t)}`),
];

export const balance: Command = {
  usage: 'balance PLAN --out NEW [--moves N] [--json]',
  summary: 'move plugs between ways to even out the legs, and write the plan anew',
  details:
    '  --out NEW     where the new plan goes; never the plan that is read\n' +
    '  --moves N     at most so many plugs are moved\n' +
    '  --json        print the moves, scores and bounds as JSON\n\n' +
    'Fewest overloads in any setup first, then the least worst leg over all setups, then neutral, moves and cable.\n' +
    'Currents are nominal. De-energize before re-plugging.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { out: { type: 'string' }, moves: { type: 'string' }, json: { type: 'boolean' } },
    });
    const path = onePath(positionals);
    if (values.out === undefined) throw new UsageError('Say where the new plan goes: --out NEW.');
    const moves = wholeNumber(values.moves, '--moves');
    const plan = await planToChange(path, output);
    const result = balanceLegs(plan, { moves });
    await writePlanTo(values.out, applyChanges(plan, result.changes), path);
    const told = result.moves.map(({ changes: _, ...m }) => m);
    const sources = result.sources.map(({ basis: _, ...s }) => s);
    if (values.json)
      output.out(
        `${canonicalJson({ format: 'lampwright-balance', version: 1, out: values.out, moves: told, sources })}\n`,
      );
    else {
      for (const s of result.sources) output.out(`${lines(s).join('\n')}\n`);
      for (const m of told) output.out(`Move ${m.label} from ${m.fromLabel} to ${m.toLabel}\n`);
      output.out(`${told.length} moves. De-energize before re-plugging. Written to ${values.out}.\n`);
    }
    return EXIT.done;
  },
};
