import { parseArgs } from 'node:util';
import { gearBook } from '../../gear/index.ts';
import { canonicalJson } from '../../kernel/canonical.ts';
import { planRecord } from '../../plan/plan.ts';
import { CAUTION_LINE } from '../../report/cautions.ts';
import { sizePlan } from '../../report/size.ts';
import { type Command, EXIT, planFrom } from '../command.ts';
import { onePath, wholeNumber } from '../plan-out.ts';

const WORDS = {
  fits: 'the present one is it',
  larger: 'the present one is larger than needed',
  'too small': 'the present one does not carry it with that headroom',
} as const;

export const size: Command = {
  usage: 'size PLAN [--headroom PCT] [--json]',
  summary: 'print the smallest standard generator and boxes that carry the plan, with reasons',
  details:
    '  --headroom PCT   share kept free over the largest load, 20 when absent\n' +
    '  --json           as JSON',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { headroom: { type: 'string' }, json: { type: 'boolean' } },
    });
    const path = onePath(positionals);
    const headroomPct = wholeNumber(values.headroom, '--headroom') ?? 20;
    const plan = await planFrom(path, output);
    const rows = sizePlan(plan, { headroomPct, book: gearBook(planRecord(plan).practice) });
    if (values.json) {
      const told = rows.map(({ kind, ...r }) => ({ ...r, kind: kind?.slug, kindName: kind?.name }));
      output.out(`${canonicalJson({ format: 'lampwright-size', version: 1, headroomPct, sizes: told })}\n`);
      return EXIT.done;
    }
    for (const r of rows)
      output.out(
        `${r.label} (${r.nowName}): ${r.kind?.name ?? 'nothing in the book'}; ${WORDS[r.now]}\n${r.reasons.map((x) => `  ${x}\n`).join('')}`,
      );
    if (rows.length === 0) output.out('No generator or box of this plan carries anything.\n');
    output.out(`${CAUTION_LINE}\n`);
    return EXIT.done;
  },
};
