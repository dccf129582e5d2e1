import { limitCitation, limitOf } from '../../derive/limits.ts';
import { formatAmps, formatWatts } from '../../kernel/units.ts';
import { levelOf, type Plan, planRecord, recordOf } from '../../plan/plan.ts';
import { beforeCutOff } from './cut-off.ts';
import { batteryUnits, cellC, drawAt, OWN_CELLS, runtimeAt } from './model.ts';
import { besideW } from './shared.ts';
import { chemistryOf, cutOffSource, type Range, temperatureSource } from './tables.ts';
import type { BatteryUnit, Runtime } from './types.ts';

/** One input of a working. */
export interface BatteryInput {
  readonly name: string;
  readonly value: string;
  readonly from: string;
  readonly assumed: boolean;
}

/** The arithmetic behind a runtime, as data. Same shape as the report's working. */
export interface BatteryWorking {
  readonly key: string;
  readonly title: string;
  readonly formula: string;
  readonly inputs: readonly BatteryInput[];
  readonly steps: readonly string[];
  readonly result: string;
  readonly rule: string;
  readonly source: string;
}

/** Key of a runtime for `explain`. */
export const runtimeKey = (fixtureId: string, setupId: string): string =>
  `runtimeMin@${fixtureId}@${setupId}`;

/** Minutes as people say them: `1 h 25 min`. */
export const formatMinutes = (minutes: number): string => {
  if (Number.isNaN(minutes)) return '–';
  if (!Number.isFinite(minutes)) return 'no end';
  const whole = Math.round(minutes);
  const h = Math.floor(whole / 60);
  return h === 0 ? `${whole} min` : `${h} h ${String(whole % 60).padStart(2, '0')} min`;
};

/** A runtime as an interval, worst to best. */
export const formatRuntime = (r: Range): string =>
  Number.isFinite(r.plan) ? `${formatMinutes(r.low)} to ${formatMinutes(r.high)}` : formatMinutes(r.plan);

const share = (x: number): string => `${Number((100 * x).toFixed(1))} %`;
const spread = (r: Range, f: (x: number) => string): string =>
  r.low === r.high ? f(r.plan) : `${f(r.plan)} (${f(r.low)} to ${f(r.high)})`;

/** The working of `runtimeMin@<fixture>@<setup>`; words where there is none. */
export const explainRuntime = (plan: Plan, key: string): BatteryWorking | { readonly why: string } => {
  const [, fixtureId = '', setupId = ''] = /^runtimeMin@(.+)@([^@]*)$/.exec(key) ?? [];
  const u = batteryUnits(plan).find((x) => x.fixture.id === fixtureId);
  if (!u) return { why: `Nothing called ${fixtureId} runs on packs or its own cells.` };
  const setup = recordOf(plan, 'setup', setupId);
  if (!setup) return { why: `There is no setup ${setupId} in this plan.` };
  if (u.problem !== undefined) return { why: `${u.label} is not computed: ${u.problem}.` };
  const level = levelOf(plan, setupId, fixtureId);
  const othersW = besideW(plan, u, setupId);
  const r = runtimeAt(u, level.levelPct, othersW);
  return {
    key,
    title: `Runtime of ${u.label}, ${setup.name}`,
    formula: 'energy × usable × health × temperature × rate ÷ watts drawn from the packs',
    inputs: inputsOf(plan, u, r, level),
    steps: stepsOf(u, r, othersW),
    result: formatRuntime(r.minutes),
    rule: 'battery-runtime',
    source:
      'Usable energy as a product of shares and runtime as energy over power: wattruntime-com.pages.dev, homepowercalc.com. Rate by Peukert’s law in its rated form, t = H × (C ÷ (I × H))^k. The pack maker’s own curves come first.',
  };
};

const inputsOf = (
  plan: Plan,
  u: BatteryUnit,
  r: Runtime,
  level: { readonly levelPct: number; readonly assumed: boolean },
): readonly BatteryInput[] => {
  const chemistry = u.pack?.chemistry ?? OWN_CELLS;
  const c = chemistryOf(chemistry);
  const given = planRecord(plan).batteries;
  const temp = limitOf(plan, 'battery-cell-temp');
  const knownSoh = u.soh.low === u.soh.high && u.soh.low !== 1;
  const line = (name: string, value: string, from: string, assumed = false): BatteryInput => ({
    name,
    value,
    from,
    assumed,
  });
  return [
    line(
      u.pack ? `energy on ${u.count === 1 ? 'the label' : `${u.count} labels`}` : 'energy of its own cells',
      `${u.ratedWh.toFixed(0)} Wh`,
      u.pack ? u.pack.name : u.kindName,
    ),
    line('usable share', spread(beforeCutOff(c.usable, u.cutOff), share), c.usableFrom, true),
    ...(u.cutOff
      ? [
          line(
            `left when it cuts out, ${u.cutOff.cellV.toFixed(2)} V a cell`,
            share(u.cutOff.left),
            cutOffSource,
            true,
          ),
        ]
      : []),
    line(
      'state of health',
      spread(u.soh, share),
      knownSoh ? 'the plan' : limitCitation(limitOf(plan, 'battery-soh')),
      !knownSoh,
    ),
    line(
      `share at ${cellC(plan)} °C in the cells`,
      spread(u.temperature, share),
      temperatureSource(chemistry),
      given?.cellC === undefined || temp.override !== undefined,
    ),
    line('share at this current', spread(r.rate, share), c.peukertFrom, true),
    line('watts at full', formatWatts(u.ratedW), 'the kind; what its mains supply loses is counted in', true),
    line(
      'level',
      `${level.levelPct} %`,
      level.assumed ? 'no level in this setup: full' : 'level in the setup',
      level.assumed,
    ),
    ...(u.efficiency < 1 || u.idleW > 0
      ? [
          line(
            'efficiency of the converter',
            `${share(u.efficiency)}${u.idleW > 0 ? `, ${u.idleW} W idle` : ''}`,
            'the kind',
          ),
        ]
      : []),
    ...(u.loopOhm > 0
      ? [
          line(
            `lead, out and back${u.lead ? `, ${(u.lead.lengthMm / 1000).toFixed(1)} m one way` : ''}`,
            `${u.loopOhm.toFixed(3)} Ω`,
            u.lead?.assumed
              ? 'conductor table at 40 °C; as long as the way on the floor and up to the unit, 2.5 mm²'
              : 'conductor table at 40 °C',
            u.lead?.assumed ?? false,
          ),
        ]
      : []),
  ];
};

const stepsOf = (u: BatteryUnit, r: Runtime, othersW: number): readonly string[] => {
  const w = (x: number): string => x.toFixed(1);
  return [
    `unit: ${u.standbyW} W + (${u.ratedW} W − ${u.standbyW} W) × ${r.levelPct} % = ${w(r.unitW)} W${r.unitW === u.maxW ? ', all it takes from packs' : ''}`,
    ...(u.efficiency < 1 || u.idleW > 0 || u.loopOhm > 0
      ? [`from the packs, with what converter and lead lose: ${w(drawAt(u, r.levelPct).packW)} W`]
      : []),
    ...(othersW > 0
      ? [
          `with the other units on ${u.floorPack?.label ?? 'the pack'}, ${w(othersW)} W: ${w(r.packW)} W in all`,
        ]
      : []),
    ...(u.pack
      ? [`current of one pack: ${w(r.packW)} W ÷ ${u.count} ÷ ${u.pack.voltsV} V = ${formatAmps(r.packA)}`]
      : []),
    ...(['low', 'plan', 'high'] as const).map(
      (k) =>
        `${{ low: 'worst', plan: 'planned with', high: 'best' }[k]}: ${u.ratedWh.toFixed(0)} Wh × ${share(u.usable[k])} × ${share(r.rate[k])} = ${w(r.usableWh[k])} Wh, ÷ ${w(r.packW)} W = ${formatMinutes(r.minutes[k])}`,
    ),
  ];
};
