import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { type Complex, type FeederAnswer, solveFeeder } from '../../engines/power/index.ts';
import { canonicalJson } from '../../kernel/canonical.ts';
import { type Command, EXIT, orRefuse, Refusal } from '../command.ts';
import { readFeeder } from '../feeder-file.ts';
import { onePath } from '../plan-out.ts';

const size = (c: Complex): number => Math.hypot(c[0], c[1]);
const degrees = (c: Complex): number => (Math.atan2(c[1], c[0]) * 180) / Math.PI;
const WIRES = ['A', 'B', 'C', 'N'] as const;

const rowsOf = (a: FeederAnswer) =>
  a.nodes.map((node) => ({
    node,
    volts: WIRES.map((_, w) => size(a.volts(node, w))),
    degrees: WIRES.map((_, w) => degrees(a.volts(node, w))),
    amps: WIRES.map((_, w) => size(a.amps(node, w))),
    ampDegrees: WIRES.map((_, w) => degrees(a.amps(node, w))),
  }));

const kilo = (c: Complex): string => `${(c[0] / 1000).toFixed(3)} kW, ${(c[1] / 1000).toFixed(3)} kvar`;

const text = (name: string, a: FeederAnswer): string => {
  const wires = WIRES.map((w, i) => ({ w, i })).filter(({ i }) =>
    a.nodes.some((n) => size(a.volts(n, i)) > 1e-6 || size(a.amps(n, i)) > 1e-9),
  );
  const node = (n: string): string =>
    `${n}: ${wires
      .map(
        ({ w, i }) =>
          `${w} ${size(a.volts(n, i)).toFixed(2)} V ${degrees(a.volts(n, i)).toFixed(2)}°, ${size(a.amps(n, i)).toFixed(2)} A`,
      )
      .join(' | ')}`;
  return `${[
    ...(name ? [name] : []),
    `at rest after ${a.passes} passes; the last changed no volt by more than ${a.changeV.toExponential(1)} V`,
    ...a.nodes.map(node),
    `source gives ${kilo(a.sourceVa)}; loads take ${kilo(a.loadVa)}; lost ${kilo(a.lossVa)}`,
  ].join('\n')}\n`;
};

export const feeder: Command = {
  usage: 'feeder FILE [--json]',
  summary: 'solve a radial feeder given as JSON, such as a published test feeder',
  details:
    '  --json   print volts, amps and powers as JSON\n\n' +
    'The file: {"format": "lampwright-feeder", "version": 1, "source": NODE, "sourceV": [{"volts", "degrees"}, …],\n' +
    ' "configurations": {NAME: {"ohm": matrix, "siemens"?: matrix} or {"z1", "z0"}},   per unit of length\n' +
    ' "segments": [{"from", "to", "line": NAME, "length"} or {"from", "to", "ohm": matrix}, with "parallel"?,\n' +
    '   "transformer"?: {"connection", "turns"}, {"regulator": [a, b, c]}, {"openDeltaRegulator": [ab, cb]} or {"ratio": matrix}],\n' +
    ' "loads": [{"node", "from", "to", "watts", "vars", "nominalV", "expP"?, "expQ"?}],\n' +
    ' "spread": [{"along": [FROM, TO], and as a load}], "spreadAt": "middle", "ends" or "quarter"}\n\n' +
    'A complex number is [re, im]. Wires are 0 1 2 for the legs and 3 for the neutral; a 3×3 matrix has the neutral folded in.\n' +
    'Exponents: 0 constant power (when absent), 1 current, 2 impedance. A capacitor has negative vars and exponents of 2.\n' +
    'Connections: wyeWye, deltaWye (low side behind), deltaWyeAhead, deltaDelta, wyeDelta, openDelta, openWyeOpenDelta; turns\n' +
    'are volts of a winding out over in. Amps are those into the stretch that leads to a node.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean' } },
    });
    const path = onePath(positionals);
    const file = await readFile(path, 'utf8').catch(() => {
      throw new Refusal({ what: `${path} cannot be read.`, todo: 'Name a file that is there.' });
    });
    const { name, spec } = orRefuse(readFeeder(file));
    const a = orRefuse(solveFeeder(spec));
    if (!a.settled)
      throw new Refusal({
        what: `This feeder has no answer${a.blame ? `: the stretch from ${a.blame[0]} to ${a.blame[1]} loses most` : ''}.`,
        todo: 'Give it less load or less impedance.',
      });
    const { passes, changeV, sourceVa, loadVa, lossVa } = a;
    output.out(
      values.json
        ? `${canonicalJson({ format: 'lampwright-feeder-answer', version: 1, name, passes, changeV, nodes: rowsOf(a), sourceVa, loadVa, lossVa })}\n`
        : text(name, a),
    );
    return EXIT.done;
  },
};
