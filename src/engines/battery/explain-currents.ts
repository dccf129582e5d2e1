import { formatAmps, formatVolts, formatWatts } from '../../kernel/units.ts';
import type { Plan } from '../../plan/plan.ts';
import { type PackCurrents, packCurrents } from './currents.ts';
import type { BatteryInput, BatteryWorking } from './explain.ts';
import { drawAt } from './model.ts';
import type { BatteryUnit } from './types.ts';

/** Key of the current of one pack at full, and of that at the moment of switching on, for `explain`. */
export const packFullKey = (id: string): string => `packFullA@${id}`;
export const packInrushKey = (id: string): string => `packInrushA@${id}`;

const input = (name: string, value: string, from: string, assumed = false): BatteryInput => ({
  name,
  value,
  from,
  assumed,
});

const drawInputs = (u: BatteryUnit): readonly BatteryInput[] => [
  input(`watts of ${u.label} at full`, formatWatts(drawAt(u, 100).unitW), u.kindName, true),
  ...(u.efficiency < 1 || u.idleW > 0
    ? [
        input(
          `converter of ${u.label}`,
          `${Number((100 * u.efficiency).toFixed(1))} %${u.idleW > 0 ? `, ${u.idleW} W idle` : ''}`,
          'the kind',
        ),
      ]
    : []),
  ...(u.loopOhm > 0
    ? [
        input(
          `lead of ${u.label}, out and back`,
          `${u.loopOhm.toFixed(3)} Ω`,
          'conductor table at 40 °C',
          u.lead?.assumed ?? false,
        ),
      ]
    : []),
];

const inputsOf = (c: PackCurrents, moment: boolean): readonly BatteryInput[] => [
  ...c.units.flatMap(drawInputs),
  ...(moment && c.inrush
    ? [
        input(
          `inrush of ${c.inrush.unit.label}`,
          `${c.inrush.multiple} × its watts`,
          c.inrush.inverter ? 'its mains supply, by the kind' : 'its inlet for packs, by the kind',
          true,
        ),
      ]
    : []),
  input('packs at once', String(c.count), 'the plan'),
  input('volts of one when nearly empty', formatVolts(c.pack.emptyV), c.pack.name),
  input(
    moment ? 'one gives for a moment' : 'one gives for long',
    formatAmps(moment ? c.pack.peakA : c.pack.continuousA),
    c.pack.name,
    true,
  ),
  ...(!moment && c.plateA !== undefined
    ? [input('a plate of the unit carries', formatAmps(c.plateA), c.units[0]?.kindName ?? '', true)]
    : []),
];

const share = (amps: number, of: number, what: string): string =>
  `${formatAmps(amps)} ÷ ${formatAmps(of)} = ${Math.round((100 * amps) / of)} % of ${what}`;

const stepsOf = (c: PackCurrents, moment: boolean): readonly string[] => {
  const each = c.units.map((u) => `${u.label} ${formatWatts(drawAt(u, 100).packW)}`);
  const amps = moment && c.inrush ? c.inrush.amps : c.amps;
  const watts = moment && c.inrush ? c.inrush.watts : c.watts;
  return [
    `from the packs at full${c.units.some((u) => u.loopOhm > 0 || u.efficiency < 1) ? ', with what converter and lead lose' : ''}: ${each.join(' + ')}${each.length > 1 ? ` = ${formatWatts(c.watts)}` : ''}`,
    ...(moment && c.inrush
      ? [
          `${c.inrush.unit.label} switched on${c.units.length > 1 ? ' last' : ''}, ${c.inrush.multiple} times its watts${c.inrush.inverter ? ' before its inverter' : ''}: ${formatWatts(watts)} in all for a moment`,
        ]
      : []),
    `${formatWatts(watts)} ÷ ${c.count} ÷ ${formatVolts(c.pack.emptyV)} = ${formatAmps(amps)} from each pack`,
    moment
      ? share(amps, c.pack.peakA, 'what one gives for a moment')
      : share(amps, c.pack.continuousA, 'what one gives for long'),
    ...(!moment && c.plateA !== undefined ? [share(amps, c.plateA, 'what a plate carries')] : []),
  ];
};

/** The working of `packFullA@<fixture or pack on the floor>` or `packInrushA@…`; undefined for other keys, words where there is none. */
export const explainCurrents = (
  plan: Plan,
  key: string,
): BatteryWorking | { readonly why: string } | undefined => {
  const [, what, id = ''] = /^pack(Full|Inrush)A@(.+)$/.exec(key) ?? [];
  if (what === undefined) return undefined;
  const moment = what === 'Inrush';
  const c = packCurrents(plan, id);
  if (!c) return { why: `Nothing called ${id} runs on packs whose current can be reckoned.` };
  if (moment && !c.inrush)
    return { why: `${c.label} takes no more when it is switched on, or its kind does not say.` };
  return {
    key,
    title: moment
      ? `Current of one pack when switched on, ${c.label}`
      : `Current of one pack at full, ${c.label}`,
    formula: `watts drawn from the packs${moment ? ' for a moment' : ' at full'} ÷ packs at once ÷ volts of one when nearly empty`,
    inputs: inputsOf(c, moment),
    steps: stepsOf(c, moment),
    result: formatAmps(moment && c.inrush ? c.inrush.amps : c.amps),
    rule: moment ? 'battery-inrush' : 'battery-current',
    source:
      'I = P ÷ V at the cut-off volts of the pack. That a pack’s watts are limited by its current and not by its watt-hours: redsharknews.com. Limits by the kind of the pack; its maker’s label comes first.',
  };
};
