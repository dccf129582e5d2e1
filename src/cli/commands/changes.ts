import { parseArgs } from 'node:util';
import { issuedPlan, issueState, issuesOf } from '../../plan/edits/issue.ts';
import type { Plan } from '../../plan/plan.ts';
import { type PlanChange, planChanges } from '../../report/changes.ts';
import { type Command, EXIT, orRefuse, planFrom, Refusal, UsageError } from '../command.ts';

/** The plan as it was issued under a revision letter. */
const asIssued = (plan: Plan, revision: string): Plan => {
  const issue = issuesOf(plan).find((i) => i.revision.toLowerCase() === revision.toLowerCase());
  if (!issue)
    throw new Refusal({
      what: `The plan has no issue ${revision}.`,
      todo:
        issuesOf(plan).length === 0
          ? 'It was never issued.'
          : `It has: ${issuesOf(plan)
              .map((i) => i.revision)
              .join(', ')}.`,
    });
  return orRefuse(issuedPlan(plan, issue));
};

interface Compared {
  readonly from: string;
  readonly to: string;
  readonly before: Plan;
  readonly after: Plan;
}

/** One plan: its last issue, or the one named, against what it is now or another issue. */
const within = (plan: Plan, from: string | undefined, to: string | undefined): Compared => {
  const state = issueState(plan);
  const last = to === undefined && from === undefined && !state.draft ? state.before : state.last;
  const since = from ?? last?.revision;
  if (since === undefined)
    throw new Refusal({
      what: state.last
        ? 'The plan is as first issued: there is nothing before it.'
        : 'The plan was never issued.',
      todo: 'Name two plan files to compare, or issue the papers first.',
    });
  return {
    from: `issue ${since.toUpperCase()}`,
    to: to === undefined ? 'the plan as it is now' : `issue ${to.toUpperCase()}`,
    before: asIssued(plan, since),
    after: to === undefined ? plan : asIssued(plan, to),
  };
};

const line = (c: PlanChange): string => `${c.words}.\n`;

export const changes: Command = {
  usage: 'changes PLAN [NEWER] [--from REVISION] [--to REVISION] [--json]',
  summary: 'list what changed between two plans, or since an issue',
  details:
    '  PLAN NEWER        two plan files: what is different in the second\n' +
    '  PLAN              one plan file: what changed since its last issue\n' +
    '  --from, --to      revision letters of issues kept in the plan\n' +
    '  --json            words, records, floor and place of each change',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { from: { type: 'string' }, to: { type: 'string' }, json: { type: 'boolean' } },
    });
    const [path, newer, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new UsageError('Name one plan file, or two.');
    if (newer !== undefined && (values.from !== undefined || values.to !== undefined))
      throw new UsageError('Name two files, or issues of one: not both.');
    const plan = await planFrom(path, output);
    const compared =
      newer === undefined
        ? within(plan, values.from, values.to)
        : { from: path, to: newer, before: plan, after: await planFrom(newer, output) };
    const list = planChanges(compared.before, compared.after);
    if (values.json) {
      output.out(
        `${JSON.stringify({ from: compared.from, to: compared.to, changes: list }, undefined, 1)}\n`,
      );
      return EXIT.done;
    }
    output.out(
      `From ${compared.from} to ${compared.to}: ${list.length} ${list.length === 1 ? 'change' : 'changes'}.\n`,
    );
    for (const c of list) output.out(line(c));
    return EXIT.done;
  },
};
