import { parseArgs } from 'node:util';
import { gearBook } from '../../gear/index.ts';
import { canonicalJson } from '../../kernel/canonical.ts';
import { formatAmps, formatCableLength } from '../../kernel/units.ts';
import { applyChanges } from '../../plan/change-set.ts';
import type { AdapterKind } from '../../plan/kinds/adapter.ts';
import type { CableKind } from '../../plan/kinds/kinds.ts';
import { planRecord, recordsOf } from '../../plan/plan.ts';
import { plugEverything } from '../../report/plug-all.ts';
import { type Command, EXIT, UsageError } from '../command.ts';
import { onePath, planToChange, repeatableIds, writePlanTo } from '../plan-out.ts';

export const plug: Command = {
  usage: 'plug PLAN --out NEW [--json]',
  summary: 'plug in every unit that has no feed, and write the plan anew',
  details:
    '  --out NEW   where the new plan goes; never the plan that is read\n' +
    '  --json      print what was plugged in, and what was not, as JSON\n\n' +
    'Nothing that is plugged in moves. Units are taken largest first, each by the shortest cable of the plan or the gear book\n' +
    'to an outlet with room in every setup.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { out: { type: 'string' }, json: { type: 'boolean' } },
    });
    const path = onePath(positionals);
    if (values.out === undefined) throw new UsageError('Say where the new plan goes: --out NEW.');
    const plan = await planToChange(path, output);
    const { practice, lengthUnits } = planRecord(plan);
    const isCable = (k: { family: string }): k is CableKind => k.family === 'cable';
    const kinds = [...recordsOf(plan, 'kind'), ...gearBook(practice)];
    const result = plugEverything(plan, {
      newId: repeatableIds(plan),
      book: kinds.filter(isCable),
      adapters: kinds.filter((k): k is AdapterKind => k.family === 'adapter' && k.what !== 'data'),
    });
    await writePlanTo(values.out, applyChanges(plan, result.changes), path);
    const steps = result.steps.map(({ changes: _, basis: __, ...s }) => s);
    if (values.json)
      output.out(
        `${canonicalJson({ format: 'lampwright-plug', version: 1, out: values.out, steps, left: result.left })}\n`,
      );
    else {
      for (const s of steps)
        output.out(
          `${s.label} to ${s.toLabel}: ${s.kindName}, ${formatCableLength(s.lengthMm, lengthUnits)}, ${formatAmps(s.amps)}\n`,
        );
      for (const l of result.left) output.out(`${l.label} stays unplugged: ${l.why}\n`);
      output.out(`${steps.length} plugged in, ${result.left.length} left. Written to ${values.out}.\n`);
    }
    return EXIT.done;
  },
};
