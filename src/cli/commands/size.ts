import { parseArgs } from 'node:util';
import { gearBook } from '../../gear/index.ts';
import { canonicalJson } from '../../kernel/canonical.ts';
import { formatAmps, formatCableLength, formatPct, parseLengthMm } from '../../kernel/units.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import { CAUTION_LINE } from '../../report/cautions.ts';
import { sizePlan } from '../../report/size.ts';
import { sizeRun } from '../../report/size-cable.ts';
import { SIZED_NOW_WORDS } from '../../report/size-types.ts';
import { type Command, EXIT, orRefuse, planFrom, UsageError } from '../command.ts';
import { onePath, wholeNumber } from '../plan-out.ts';

interface RunValues {
  readonly amps?: string | undefined;
  readonly length?: string | undefined;
  readonly legs?: string | undefined;
  readonly drop?: string | undefined;
}

const positive = (text: string | undefined, name: string, otherwise?: number): number => {
  const n = text === undefined ? otherwise : Number(text);
  if (n === undefined || !(n > 0) || !Number.isFinite(n))
    throw new UsageError(`Give ${name} as a number above 0.`);
  return n;
};

/** The lightest cable of the practice's book for a load, a length and a drop, without a plan's own runs. */
const runText = (
  plan: Plan,
  v: RunValues,
  headroomPct: number,
): { readonly json: object; readonly text: string } => {
  const { practice, lengthUnits } = planRecord(plan);
  const amps = positive(v.amps, '--amps') * (1 + headroomPct / 100);
  if (v.length === undefined) throw new UsageError('Give the length of the run: --length 60m.');
  const lengthMm = orRefuse(parseLengthMm(v.length, lengthUnits));
  const legs = positive(v.legs, '--legs', 3);
  if (![1, 2, 3].includes(legs)) throw new UsageError('--legs is 1, 2 or 3.');
  const volts = practice === 'europe' ? 230 : 120;
  const asked = {
    amps,
    // Legs that are even load the neutral with nothing; one leg alone with all of it.
    neutralA: legs === 1 ? amps : 0,
    legs,
    neutral: true,
    lengthMm,
    volts,
    powerFactor: 1,
    dropPct: positive(v.drop, '--drop', 3),
    breakerA: undefined,
  };
  const c = sizeRun(plan, asked, gearBook(practice));
  const head = `${formatAmps(amps)} on each of ${legs} ${legs === 1 ? 'leg' : 'legs'} at ${volts} V, ${formatCableLength(lengthMm, lengthUnits)}, at most ${asked.dropPct} % lost`;
  const line = c
    ? `${c.sets > 1 ? `${c.sets} × ` : ''}${c.kind.name}: carries ${formatAmps(c.ampacityA)}, loses ${c.dropV.toFixed(2)} V (${formatPct(c.dropPct)})`
    : 'no cable of the book does';
  return {
    json: {
      format: 'lampwright-size-run',
      version: 1,
      amps,
      lengthMm,
      legs,
      volts,
      mostDropPct: asked.dropPct,
      kind: c?.kind.slug,
      kindName: c?.kind.name,
      sets: c?.sets,
      ampacityA: c?.ampacityA,
      dropV: c?.dropV,
      dropPct: c?.dropPct,
    },
    text: `${head}\n  ${line}\n  Headroom ${headroomPct} % is in the amps; legs are taken as even. The breaker ahead must not pass the ampacity.\n${CAUTION_LINE}\n`,
  };
};

export const size: Command = {
  usage: 'size PLAN [--headroom PCT] [--amps A --length L [--legs N] [--drop PCT]] [--json]',
  summary: 'print the smallest standard generator, boxes and cables that carry the plan, with reasons',
  details:
    '  --headroom PCT   share kept free over the largest load, 20 when absent\n' +
    '  --amps A --length L   in place of that, the lightest cable for a run of A amps over L (like 60m or 200ft)\n' +
    '  --legs N         legs of that run, with a neutral; 3 when absent\n' +
    '  --drop PCT       most of the volts that may be lost in it; 3 when absent\n' +
    '  --json           as JSON\n\n' +
    'A cable that is not named is large enough and no larger than needed.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        headroom: { type: 'string' },
        amps: { type: 'string' },
        length: { type: 'string' },
        legs: { type: 'string' },
        drop: { type: 'string' },
        json: { type: 'boolean' },
      },
    });
    const path = onePath(positionals);
    const headroomPct = wholeNumber(values.headroom, '--headroom') ?? 20;
    const plan = await planFrom(path, output);
    if (values.amps !== undefined || values.length !== undefined) {
      const told = runText(plan, values, headroomPct);
      output.out(values.json ? `${canonicalJson(told.json)}\n` : told.text);
      return EXIT.done;
    }
    const rows = sizePlan(plan, { headroomPct, book: gearBook(planRecord(plan).practice) });
    if (values.json) {
      const told = rows.map(({ kind, ...r }) => ({ ...r, kind: kind?.slug, kindName: kind?.name }));
      output.out(`${canonicalJson({ format: 'lampwright-size', version: 1, headroomPct, sizes: told })}\n`);
      return EXIT.done;
    }
    const fine = rows.filter((r) => r.what === 'cable' && r.now === 'fits').length;
    for (const r of rows.filter((x) => x.what !== 'cable' || x.now !== 'fits'))
      output.out(
        `${r.label} (${r.nowName}): ${r.sets !== undefined && r.sets > 1 ? `${r.sets} × ` : ''}${r.kind?.name ?? 'nothing in the book'}; ${SIZED_NOW_WORDS[r.now]}\n${r.reasons.map((x) => `  ${x}\n`).join('')}`,
      );
    if (rows.length === 0) output.out('No generator, box or cable of this plan carries anything.\n');
    if (fine > 0) output.out(`${fine} ${fine === 1 ? 'cable is' : 'cables are'} what this load asks for.\n`);
    output.out(`${CAUTION_LINE}\n`);
    return EXIT.done;
  },
};
