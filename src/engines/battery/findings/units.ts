import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import type { FixtureKind, PackKind } from '../../../plan/kinds/kinds.ts';
import { kindOf, type Plan } from '../../../plan/plan.ts';
import { leadEnd } from '../calc.ts';
import { packFullKey, packInrushKey } from '../explain-currents.ts';
import { inrushOf } from '../inrush.ts';
import { converterIdOf, drawAt, MAINS_ONLY, packsV } from '../model.ts';
import type { BatteryUnit } from '../types.ts';
import { converterFits } from './converters.ts';

/** What is wrong with the packs of a unit, whatever the day: nothing fits, too weak, wrong volts, a lead that loses too much. */
export const unitFindings = (plan: Plan, u: BatteryUnit): readonly EngineFinding[] => {
  const about = u.fixture.id;
  const kind = kindOf(plan, u.fixture.kindId, 'fixture');
  if (!kind) return [];
  const say = (
    rule: string,
    severity: EngineFinding['severity'],
    params: EngineFinding['params'] = {},
    figure?: number,
    figureKey?: string,
  ): EngineFinding => ({
    ...always(rule, severity, about, [about], { label: u.label, kind: u.kindName, ...params }),
    ...(figure === undefined ? {} : { figure }),
    ...(figureKey === undefined ? {} : { figureKey }),
  });
  if (u.mode === 'own-cells') return [];
  if (u.problem === MAINS_ONLY) return [say('battery-mains-only', 'warn', { pack: u.pack?.name ?? '' })];
  if (u.problem !== undefined) return [say('battery-no-pack', 'warn', { why: u.problem })];
  if (!u.pack) return [];
  return [
    ...fits(plan, u, kind, u.pack, say),
    // What a pack on the floor gives is checked for all its units together.
    ...(u.floorPack
      ? []
      : [...current(u, u.pack, say), ...plateCurrent(u, kind, u.pack, say), ...inrush(plan, u, u.pack, say)]),
    ...converter(plan, u, say),
    ...lead(plan, u, kind, u.pack, say),
  ];
};

type Say = (
  rule: string,
  severity: EngineFinding['severity'],
  params?: EngineFinding['params'],
  figure?: number,
  figureKey?: string,
) => EngineFinding;

/** Whether packs can be put on at all: a unit for mains only, the wrong plate, volts outside its window. */
const fits = (plan: Plan, u: BatteryUnit, kind: FixtureKind, pack: PackKind, say: Say): EngineFinding[] => {
  const converterId = converterIdOf(u.fixture);
  const converter = converterId === undefined ? undefined : kindOf(plan, converterId, 'converter');
  if (converter) return converterFits(u, kind, converter, pack, say);
  const dc = kind.packIn;
  if (!dc) return [say('battery-mains-only', 'warn', { pack: pack.name })];
  const out: EngineFinding[] = [];
  if (!u.floorPack && !dc.plates.includes(pack.plate))
    out.push(
      say('battery-plate', 'warn', { pack: pack.name, plate: pack.plate, takes: dc.plates.join(', ') }),
    );
  if (!u.floorPack && u.count > dc.packs && u.loopOhm === 0)
    out.push(
      say(
        'battery-plates',
        'warn',
        { pack: pack.name, packs: u.count, plates: dc.packs },
        u.count - dc.packs,
      ),
    );
  const full = packsV(u, (p) => p.fullV);
  const empty = packsV(u, (p) => p.emptyV);
  const volts = {
    pack: pack.name,
    fullV: full,
    emptyV: empty,
    minV: dc.minV,
    maxV: dc.maxV,
    packs: u.count,
    joined: u.joined,
    leftPct: 100 * (u.cutOff?.left ?? 0),
  };
  if (full > dc.maxV) out.push(say('battery-volts-high', 'stop', volts, full));
  else if (empty < dc.minV) out.push(say('battery-volts-low', 'note', volts, dc.minV - empty));
  return out;
};

/** Current of one pack at full level and its cut-off volts, against what it gives for long and for a moment. */
const current = (u: BatteryUnit, pack: PackKind, say: Say): EngineFinding[] => {
  const draw = drawAt(u, 100);
  const amps = draw.packW / u.count / pack.emptyV;
  if (!(amps > pack.continuousA * (1 + 1e-9))) return [];
  return [
    say(
      'battery-weak',
      amps > pack.peakA ? 'stop' : 'warn',
      {
        pack: pack.name,
        watts: draw.packW,
        amps,
        continuousA: pack.continuousA,
        peakA: pack.peakA,
        cutOffV: pack.emptyV,
        packs: u.count,
        mostW: u.count * pack.continuousA * pack.emptyV,
        pct: (100 * amps) / pack.continuousA,
      },
      (100 * amps) / pack.continuousA,
      packFullKey(u.fixture.id),
    ),
  ];
};

/** Current through one of the unit's plates at full level with packs nearly empty, where its kind says what one carries. */
const plateCurrent = (u: BatteryUnit, kind: FixtureKind, pack: PackKind, say: Say): EngineFinding[] => {
  const maxA = u.fixture.packs?.converterId === undefined ? kind.packIn?.maxA : undefined;
  const amps = drawAt(u, 100).packW / u.count / pack.emptyV;
  if (maxA === undefined || !(amps > maxA * (1 + 1e-9))) return [];
  const pct = (100 * amps) / maxA;
  return [
    say(
      'battery-plate-current',
      'warn',
      { pack: pack.name, amps, maxA, packs: u.count, pct },
      pct,
      packFullKey(u.fixture.id),
    ),
  ];
};

/** Current of one pack at the moment the unit is switched on at full with packs nearly empty, against what it gives for a moment. */
const inrush = (plan: Plan, u: BatteryUnit, pack: PackKind, say: Say): EngineFinding[] => {
  const i = inrushOf(plan, u);
  if (!i) return [];
  const steadyA = drawAt(u, 100).packW / u.count / pack.emptyV;
  const amps = i.watts / u.count / pack.emptyV;
  // Where the pack is too weak for what the unit takes for long, that is told.
  if (steadyA > pack.peakA || !(amps > pack.peakA * (1 + 1e-9))) return [];
  return [
    say(
      'battery-inrush',
      'warn',
      {
        pack: pack.name,
        watts: i.watts,
        amps,
        peakA: pack.peakA,
        cutOffV: pack.emptyV,
        multiple: i.multiple,
        packs: u.count,
        inverter: i.inverter ? 1 : 0,
      },
      (100 * amps) / pack.peakA,
      packInrushKey(u.fixture.id),
    ),
  ];
};

const converter = (plan: Plan, u: BatteryUnit, say: Say): EngineFinding[] => {
  const id = converterIdOf(u.fixture);
  const kind = id === undefined ? undefined : kindOf(plan, id, 'converter');
  const watts = drawAt(u, 100).unitW;
  if (id !== undefined && !kind)
    return [say('battery-no-pack', 'warn', { why: 'the kind of its converter is not in the plan' })];
  if (!kind || watts <= kind.outputW) return [];
  const pct = (100 * watts) / kind.outputW;
  return [say('battery-converter', 'warn', { converter: kind.name, watts, outputW: kind.outputW, pct }, pct)];
};

/** Volts at the end of the lead when the packs are nearly empty. */
const lead = (plan: Plan, u: BatteryUnit, kind: FixtureKind, pack: PackKind, say: Say): EngineFinding[] => {
  if (u.loopOhm === 0) return [];
  const watts = drawAt({ ...u, loopOhm: 0 }, 100).packW;
  const emptyV = packsV(u, (p) => p.emptyV);
  const end = leadEnd(emptyV, watts, u.loopOhm);
  const common = { pack: pack.name, watts, emptyV, ohm: u.loopOhm };
  if (!end) return [say('battery-lead-start', 'stop', { ...common, mostW: emptyV ** 2 / (4 * u.loopOhm) })];
  const minV = kind.packIn?.minV ?? 0;
  const limitPct = limitOf(plan, 'battery-drop').value;
  if (end.voltsV >= minV && end.dropPct <= limitPct) return [];
  return [
    say(
      'battery-lead',
      'warn',
      {
        ...common,
        volts: end.voltsV,
        dropV: end.dropV,
        pct: end.dropPct,
        amps: end.amps,
        minV,
        leftPct: 100 * (u.cutOff?.left ?? 0),
        limitPct,
        limitRow: 'battery-drop',
      },
      end.dropPct,
    ),
  ];
};
