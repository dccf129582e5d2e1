import { parseArgs } from 'node:util';
import { recordLabel } from '../../derive/labels.ts';
import { legName, systemShape } from '../../derive/systems.ts';
import { canonicalJson } from '../../kernel/canonical.ts';
import { formatAmps, formatVolts } from '../../kernel/units.ts';
import { kindOf, type Plan, planRecord, recordOf, setupsOf } from '../../plan/plan.ts';
import { waysOf } from '../../plan/ports.ts';
import { type Fault, type WhatIf, whatIf } from '../../report/whatif.ts';
import { type Command, EXIT, orRefuse, planFrom, Refusal, UsageError } from '../command.ts';
import { onePath } from '../plan-out.ts';
import { faultsPrinted } from '../what-if-faults.ts';
import { swapPrinted } from '../what-if-swap.ts';

/** A record by its id or by what people call it. */
const recordId = (plan: Plan, asked: string): string => {
  if (plan.records.has(asked)) return asked;
  const found = [...plan.records.values()].filter((r) => recordLabel(plan, r) === asked);
  const [one, ...more] = found;
  if (one && more.length === 0) return one.id;
  throw new Refusal({
    what: one
      ? `“${asked}” is the name of ${found.length} things.`
      : `The plan has nothing called “${asked}”.`,
    todo: 'Name it by its id, as “check --json” prints it.',
  });
};

const split = (text: string): readonly [string, string] => {
  const at = text.lastIndexOf('/');
  if (at <= 0) throw new UsageError(`“${text}” needs two parts with a / between.`);
  return [text.slice(0, at), text.slice(at + 1)];
};

const faultOf = (plan: Plan, trip: string | undefined, lose: string | undefined): Fault => {
  if ((trip === undefined) === (lose === undefined))
    throw new UsageError(
      'Name one fault: --trip BOX/WAY, --lose leg=SOURCE/LEG, --lose neutral=THING or --swap SOURCE=KIND.',
    );
  if (trip !== undefined) {
    const [owner, way] = split(trip);
    const ownerId = recordId(plan, owner);
    const known = waysOf(plan, ownerId).find((w) => w.id === way || w.label === way);
    return { trip: { ownerId, wayId: known?.id ?? way } };
  }
  const [what, thing] = [lose?.split('=', 1)[0], lose?.slice(lose.indexOf('=') + 1) ?? ''];
  if (what === 'neutral') return { loseNeutral: { recordId: recordId(plan, thing) } };
  if (what !== 'leg') throw new UsageError(`“${lose ?? ''}” is neither leg=… nor neutral=….`);
  const [source, name] = split(thing);
  const sourceId = recordId(plan, source);
  const record = recordOf(plan, 'source', sourceId);
  const kind = record && kindOf(plan, record.kindId, 'source');
  const shape = kind && systemShape(kind.system);
  const { practice } = planRecord(plan);
  const legs = Array.from({ length: shape?.legs ?? 0 }, (_, l) => legName(practice, kind?.system, l));
  const leg = legs.indexOf(name);
  if (leg < 0)
    throw new Refusal({
      what: `${source} has no leg “${name}”.`,
      todo: `It has: ${legs.join(', ') || 'none'}.`,
    });
  return { loseLeg: { sourceId, leg } };
};

const WORDS = {
  'wrong volts': 'WRONG VOLTS',
  dark: 'dark',
  'fewer legs': 'on fewer legs',
  'as before': 'as before',
} as const;

const text = (w: WhatIf): string => {
  const rows = w.loads.map((l) => {
    const volts = Number.isNaN(l.voltsV) ? '' : `, ${formatVolts(l.voltsV)}`;
    const limits =
      l.state === 'wrong volts' ? ` (takes ${formatVolts(l.voltsMinV)} to ${formatVolts(l.voltsMaxV)})` : '';
    const restrike = l.restrikeMin === undefined ? '' : `, about ${l.restrikeMin} min to restrike`;
    return `  ${l.label}: ${WORDS[l.state]}${l.state === 'dark' ? '' : volts}${limits}${restrike}`;
  });
  const meter = w.meter
    ? [
        `${w.meter.label}: ${w.meter.wires.map((x) => `${x.name} ${formatAmps(x.beforeA)} → ${formatAmps(x.afterA)}`).join(', ')}`,
      ]
    : [];
  return `${[`${w.title}, in “${w.setup}”`, ...rows, ...meter, ...w.notes].join('\n')}\n`;
};

export const whatIfCommand: Command = {
  usage:
    'what-if PLAN (--trip BOX/WAY | --lose leg=SOURCE/LEG | --lose neutral=THING | --swap SOURCE=KIND | --loops) [--setup NAME] [--json]',
  summary: 'print what a fault would do: what goes dark, what remains, what volts each unit sees',
  details:
    '  --trip BOX/WAY          a breaker opens, like K1/4\n' +
    '  --lose leg=SOURCE/LEG   a leg of a source is lost, like leg=G1/B\n' +
    '  --lose neutral=THING    the neutral comes off ahead of a source, box, cable or outlet\n' +
    '  --swap SOURCE=KIND      another source of the gear book in place of one, like G1=generator-60kw-3ph\n' +
    '  --loops                 a short at the end of each run: its loop, its current, and what opens\n' +
    '  --setup NAME            in this setup; else the first (a swap is told for the worst of all)\n' +
    '  --json                  as JSON\n\n' +
    'Things are named by their label or their id. The plan is not changed.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        trip: { type: 'string' },
        lose: { type: 'string' },
        swap: { type: 'string' },
        loops: { type: 'boolean' },
        setup: { type: 'string' },
        json: { type: 'boolean' },
      },
    });
    const plan = await planFrom(onePath(positionals), output);
    if (values.loops) {
      if ([values.trip, values.lose, values.swap, values.setup].some((v) => v !== undefined))
        throw new UsageError('Give --loops by itself.');
      output.out(faultsPrinted(plan, values.json === true));
      return EXIT.done;
    }
    if (values.swap !== undefined) {
      const at = values.swap.lastIndexOf('=');
      if (at <= 0 || values.trip !== undefined || values.lose !== undefined || values.setup !== undefined)
        throw new UsageError('Give --swap SOURCE=KIND by itself.');
      const sourceId = recordId(plan, values.swap.slice(0, at));
      output.out(swapPrinted(plan, sourceId, values.swap.slice(at + 1), values.json === true));
      return EXIT.done;
    }
    const fault = faultOf(plan, values.trip, values.lose);
    const setup = setupsOf(plan).find((s) => s.id === values.setup || s.name === values.setup);
    if (values.setup !== undefined && !setup)
      throw new Refusal({
        what: `The plan has no setup “${values.setup}”.`,
        todo: `It has: ${
          setupsOf(plan)
            .map((s) => s.name)
            .join(', ') || 'none'
        }.`,
      });
    const result = orRefuse(whatIf(plan, fault, setup?.id));
    const number = (n: number): number | null => (Number.isFinite(n) ? n : null);
    output.out(
      values.json
        ? `${canonicalJson({
            format: 'lampwright-what-if',
            version: 1,
            ...result,
            loads: result.loads.map((l) => ({
              ...l,
              voltsV: number(l.voltsV),
              wattsW: number(l.wattsW),
              voltsMinV: number(l.voltsMinV),
              voltsMaxV: number(l.voltsMaxV),
            })),
          })}\n`
        : text(result),
    );
    return EXIT.done;
  },
};
