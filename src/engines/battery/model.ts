import { recordLabel } from '../../derive/labels.ts';
import { limitOf } from '../../derive/limits.ts';
import { compareNatural } from '../../kernel/ids.ts';
import type { ConverterKind, FixtureKind, PackKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Fixture, FloorPack } from '../../plan/records/index.ts';
import { type LeadEnd, leadEnd, rateFactor, runtimeMinutes, temperatureFactor } from './calc.ts';
import { beforeCutOff, cutOffOf } from './cut-off.ts';
import { leadOf, leadOhm } from './lead.ts';
import { type Chemistry, chemistryOf, type Range } from './tables.ts';
import type { BatteryUnit, Draw, Runtime } from './types.ts';

/** Own cells of a unit are reckoned as lithium-ion; their kinds give watt-hours alone. */
export const OWN_CELLS: Chemistry = 'li-ion';
/** Nominal volts that own cells are reckoned with where a current is needed. */
const OWN_CELLS_V = 14.4;
const all = (value: number): Range => ({ low: value, plan: value, high: value });
const times = (...ranges: readonly Range[]): Range => ({
  low: ranges.reduce((p, r) => p * r.low, 1),
  plan: ranges.reduce((p, r) => p * r.plan, 1),
  high: ranges.reduce((p, r) => p * r.high, 1),
});

/** State of health of packs of a kind as a share: of the stock where it says so, of the plan, else the table's spread. */
export const sohOf = (plan: Plan, kindId: string): Range => {
  const own = recordsOf(plan, 'stock').find((s) => s.kindId === kindId && s.sohPct !== undefined)?.sohPct;
  const given = own ?? planRecord(plan).batteries?.sohPct;
  if (given !== undefined && given > 0) return all(Math.min(100, given) / 100);
  return {
    low: limitOf(plan, 'battery-soh-low').value / 100,
    plan: limitOf(plan, 'battery-soh').value / 100,
    high: 1,
  };
};

/** Temperature of the cells in °C. */
export const cellC = (plan: Plan): number =>
  planRecord(plan).batteries?.cellC ?? limitOf(plan, 'battery-cell-temp').value;

/** Share of what a pack can give at which it is changed. */
export const swapAt = (plan: Plan): number => {
  const pct = planRecord(plan).batteries?.swapAtPct ?? limitOf(plan, 'battery-swap-at').value;
  return Math.min(0.9, Math.max(0, pct / 100));
};

/** Volts of the packs of a unit, joined as they are. */
export const packsV = (u: BatteryUnit, one: (p: PackKind) => number): number =>
  u.pack ? one(u.pack) * (u.joined === 'series' ? u.count : 1) : OWN_CELLS_V;

/** Whether a converter changes what packs give: an inverter makes mains of it, the others other volts. */
const converterOf = (plan: Plan, f: Fixture): ConverterKind | undefined => {
  const id = converterIdOf(f);
  return id === undefined ? undefined : kindOf(plan, id, 'converter');
};

/** The kind of converter between packs and a unit, by id; undefined where there is none. */
export const converterIdOf = (f: Fixture): string | undefined =>
  f.packFrom ? f.packFrom.converterId : f.packs?.converterId;

/** Why a unit cannot be reckoned whose kind has no inlet for packs, with nothing between that makes mains of them. */
export const MAINS_ONLY = 'its kind takes mains only';

const problemOf = (
  f: Fixture,
  kind: FixtureKind | undefined,
  on: Packs,
  converter: ConverterKind | undefined,
): string | undefined => {
  if (!kind) return 'its kind is not in the plan';
  if (!kind.load) return 'its kind draws its power through a ballast';
  if (kind.load.unknown === true || !(kind.load.wattsW >= 0)) return 'its watts are not known';
  if (f.packFrom && !on.floor) return 'the pack on the floor it is fed from is not in the plan';
  if (!f.packFrom && !f.packs)
    return kind.ownCellsWh ? undefined : 'the plan does not say which packs it runs on';
  if (!on.pack) return 'its kind of pack is not in the plan';
  if (!(on.pack.energyWh > 0 && on.pack.voltsV > 0 && on.pack.capacityAh > 0))
    return 'the figures of its pack make no sense';
  if (!kind.packIn && converter?.what !== 'inverter') return MAINS_ONLY;
  return undefined;
};

/** Packs a fixture runs on, on itself or on the floor. */
interface Packs {
  readonly floor: FloorPack | undefined;
  readonly pack: PackKind | undefined;
  readonly count: number;
  readonly joined: 'parallel' | 'series';
  readonly hotSwap: boolean | undefined;
}

const packsOf = (plan: Plan, f: Fixture): Packs => {
  const floor = f.packFrom && recordOf(plan, 'pack', f.packFrom.packId);
  const use = f.packFrom ? floor : f.packs;
  return {
    floor,
    pack: use && kindOf(plan, use.kindId, 'pack'),
    count: Math.max(1, use?.count ?? 1),
    joined: use?.joined ?? 'parallel',
    hotSwap: use?.hotSwap,
  };
};

const unitOf = (plan: Plan, f: Fixture): BatteryUnit => {
  const kind = kindOf(plan, f.kindId, 'fixture');
  const on = packsOf(plan, f);
  const { pack } = on;
  const converter = converterOf(plan, f);
  const chemistry = pack?.chemistry ?? OWN_CELLS;
  const mode = f.packs === undefined && !f.packFrom && kind?.ownCellsWh ? 'own-cells' : 'packs';
  const count = mode === 'packs' ? on.count : 1;
  const soh = sohOf(plan, mode === 'packs' ? (pack?.id ?? '') : f.kindId);
  const temperature = temperatureFactor(chemistry, cellC(plan));
  const given = planRecord(plan).batteries?.swapMin;
  const lead = leadOf(plan, f);
  const inRow = on.joined === 'series' ? count : 1;
  const cutOff = mode === 'packs' && !converter ? cutOffOf(kind, pack, inRow, leadOhm(lead)) : undefined;
  return {
    fixture: f,
    label: recordLabel(plan, f),
    kindName: kind?.name ?? '',
    mode,
    pack,
    count,
    joined: on.joined,
    ratedWh: mode === 'packs' ? count * (pack?.energyWh ?? Number.NaN) : (kind?.ownCellsWh ?? Number.NaN),
    cutOff,
    usable: times(beforeCutOff(chemistryOf(chemistry).usable, cutOff), soh, temperature),
    soh,
    temperature,
    efficiency: converter && converter.efficiencyPct > 0 ? Math.min(100, converter.efficiencyPct) / 100 : 1,
    idleW: converter?.what === 'inverter' ? limitOf(plan, 'battery-inverter-idle').value : 0,
    floorPack: on.floor,
    lead,
    loopOhm: leadOhm(lead),
    ratedW: kind?.load?.wattsW ?? Number.NaN,
    standbyW: kind?.load?.standbyW ?? 0,
    maxW: (mode === 'packs' ? kind?.packIn?.maxW : undefined) ?? Number.POSITIVE_INFINITY,
    hotSwap: on.hotSwap ?? (f.packFrom ? false : (kind?.packIn?.hotSwap ?? false)),
    swapMin: given ?? limitOf(plan, mode === 'packs' ? 'battery-swap-min' : 'battery-own-exchange').value,
    problem: problemOf(f, kind, on, converter),
  };
};

/** A fixture on the mains that has cells of its own, as it would run on them at full; undefined for any other. */
export const unitOnCells = (plan: Plan, f: Fixture): BatteryUnit | undefined => {
  if (f.onPacks || !kindOf(plan, f.kindId, 'fixture')?.ownCellsWh) return undefined;
  const { packs: _packs, packFrom: _from, ...alone } = f;
  const u = unitOf(plan, { ...alone, onPacks: true });
  return u.problem === undefined ? u : undefined;
};

const memo = new WeakMap<Plan, readonly BatteryUnit[]>();

/** Fixtures that run on packs or their own cells, by unit number. */
export const batteryUnits = (plan: Plan): readonly BatteryUnit[] => {
  const known = memo.get(plan);
  if (known) return known;
  const units = recordsOf(plan, 'fixture')
    .filter((f) => f.onPacks)
    .map((f) => unitOf(plan, f))
    .sort((a, b) => compareNatural(a.fixture.unit, b.fixture.unit));
  memo.set(plan, units);
  return units;
};

/**
 * What a unit draws at a level: watts are standby + (rated − standby) × level; a converter adds its loss and its idle draw,
 * a lead I²R at nominal volts. What a kind
 * takes from packs at most is not passed. Packs share the power evenly, in series as in parallel.
 */
export const drawAt = (u: BatteryUnit, levelPct: number): Draw => {
  const unitW = Math.min(u.maxW, u.standbyW + ((u.ratedW - u.standbyW) * levelPct) / 100);
  const intoConverterW = unitW / u.efficiency + u.idleW;
  const nominalV = packsV(u, (p) => p.voltsV);
  const end = u.loopOhm > 0 ? leadEnd(nominalV, intoConverterW, u.loopOhm) : undefined;
  const packW = u.loopOhm === 0 ? intoConverterW : end === undefined ? Number.NaN : nominalV * end.amps;
  return { levelPct, unitW, ...burdened(u, packW) };
};

/** Current of one of a unit's packs and the share they give where so many watts are drawn from them in all. */
export const burdened = (u: BatteryUnit, packW: number): Pick<Draw, 'packW' | 'packA' | 'rate'> => {
  const nominalV = packsV(u, (p) => p.voltsV);
  const packA = u.pack ? packW / u.count / u.pack.voltsV : packW / nominalV;
  const c = chemistryOf(u.pack?.chemistry ?? OWN_CELLS);
  const ah = u.pack?.capacityAh ?? u.ratedWh / nominalV;
  const rate = (k: number): number => rateFactor(c.ratedHours, ah, packA, k);
  return {
    packW,
    packA,
    rate: { low: rate(c.peukert.low), plan: rate(c.peukert.plan), high: rate(c.peukert.high) },
  };
};

/** The end of a unit's lead at full level with its packs nearly empty; undefined where it cannot start. */
export const leadDrop = (u: BatteryUnit): LeadEnd | undefined =>
  leadEnd(
    packsV(u, (p) => p.emptyV),
    drawAt({ ...u, loopOhm: 0 }, 100).packW,
    u.loopOhm,
  );

/**
 * Runtime of a unit at a level: E × usable × health × temperature × rate ÷ watts drawn from the packs, with the low ends
 * together, the planning values together and the high ends together. `othersW` is what other units draw from the same packs.
 */
export const runtimeAt = (u: BatteryUnit, levelPct: number, othersW = 0): Runtime => {
  const own = drawAt(u, levelPct);
  const draw = othersW > 0 ? { ...own, ...burdened(u, own.packW + othersW) } : own;
  const share = times(u.usable, draw.rate);
  const wh = (k: keyof Range): number => (u.problem === undefined ? u.ratedWh * share[k] : Number.NaN);
  const usableWh = { low: wh('low'), plan: wh('plan'), high: wh('high') };
  const minutes = (k: keyof Range): number =>
    Number.isNaN(usableWh[k]) || Number.isNaN(draw.packW)
      ? Number.NaN
      : runtimeMinutes(usableWh[k], draw.packW);
  return {
    ...draw,
    usableWh,
    minutes: { low: minutes('low'), plan: minutes('plan'), high: minutes('high') },
  };
};
