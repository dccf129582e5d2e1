import { always, type EngineFinding } from '../../../derive/findings.ts';
import type { DcPort } from '../../../plan/kinds/pack.ts';
import { kindOf, type Plan } from '../../../plan/plan.ts';
import { packFullKey, packInrushKey } from '../explain-currents.ts';
import { inrushOf } from '../inrush.ts';
import { drawAt, packsV } from '../model.ts';
import { fullLoad, type SharedPack, sharedPacks } from '../shared.ts';

/** What is wrong with packs on the floor as a whole: what all their units draw together, and the outlets their leads are in. */
export const floorPackFindings = (plan: Plan): readonly EngineFinding[] =>
  sharedPacks(plan).flatMap((s) => [...weak(plan, s), ...inrush(plan, s), ...outlets(plan, s)]);

const say = (
  s: SharedPack,
  rule: string,
  severity: EngineFinding['severity'],
  params: EngineFinding['params'],
  figure: number,
  about = s.record.id,
  figureKey?: string,
): EngineFinding => ({
  ...always(rule, severity, about, [s.record.id, ...s.units.map((u) => u.fixture.id)], {
    label: s.label,
    packs: s.record.count,
    ...params,
  }),
  figure,
  ...(figureKey === undefined ? {} : { figureKey }),
});

/** Current of one of its packs with every unit at full and the packs nearly empty, against what it gives for long and for a moment. */
const weak = (plan: Plan, s: SharedPack): EngineFinding[] => {
  const pack = kindOf(plan, s.record.kindId, 'pack');
  const { watts, amps } = fullLoad(s);
  if (!pack || !(amps > pack.continuousA * (1 + 1e-9))) return [];
  const pct = (100 * amps) / pack.continuousA;
  return [
    say(
      s,
      'battery-shared-weak',
      amps > pack.peakA ? 'stop' : 'warn',
      {
        pack: pack.name,
        sum: s.units.map((u) => `${u.label} ${Math.round(drawAt(u, 100).packW)} W`).join(' + '),
        watts,
        amps,
        continuousA: pack.continuousA,
        peakA: pack.peakA,
        cutOffV: pack.emptyV,
        pct,
      },
      pct,
      s.record.id,
      packFullKey(s.record.id),
    ),
  ];
};

/** All units at full and the one with the greatest inrush switched on last, against what the packs give for a moment. */
const inrush = (plan: Plan, s: SharedPack): EngineFinding[] => {
  const pack = kindOf(plan, s.record.kindId, 'pack');
  const { watts, amps: steadyA } = fullLoad(s);
  const extras = s.units.map((u) => {
    const i = inrushOf(plan, u);
    return { u, extraW: i ? i.watts - drawAt(u, 100).packW : 0, multiple: i?.multiple ?? 1 };
  });
  const [worst] = extras.sort((a, b) => b.extraW - a.extraW);
  // Where the packs are too weak for what burns for long, that is told.
  if (!pack || !worst || !(worst.extraW > 0) || steadyA > pack.peakA) return [];
  const amps = (watts + worst.extraW) / s.record.count / pack.emptyV;
  if (!(amps > pack.peakA * (1 + 1e-9))) return [];
  const pct = (100 * amps) / pack.peakA;
  return [
    say(
      s,
      'battery-shared-inrush',
      'warn',
      {
        pack: pack.name,
        unit: worst.u.label,
        multiple: worst.multiple,
        watts: watts + worst.extraW,
        amps,
        peakA: pack.peakA,
        cutOffV: pack.emptyV,
        pct,
      },
      pct,
      s.record.id,
      packInrushKey(s.record.id),
    ),
  ];
};

/** Leads against outlets: more of them than the packs have, an outlet that is not there or taken twice, or one that carries less. */
const outlets = (plan: Plan, s: SharedPack): EngineFinding[] => {
  const pack = kindOf(plan, s.record.kindId, 'pack');
  const ports = pack?.dcOut ?? [];
  if (!pack || ports.length === 0) return [];
  const out: EngineFinding[] = [];
  // Packs in a row have their outlets once; side by side each has its own.
  const each = s.record.joined === 'series' ? 1 : Math.max(1, s.record.count);
  const there = ports.length * each;
  if (s.units.length > there)
    out.push(
      say(
        s,
        'battery-outlets',
        'warn',
        { pack: pack.name, leads: s.units.length, outlets: there },
        s.units.length - there,
      ),
    );
  const left = Array.from({ length: each }, () => ports).flat();
  const named = [...s.units].sort(
    (a, b) =>
      Number(a.fixture.packFrom?.outletId === undefined) -
        Number(b.fixture.packFrom?.outletId === undefined) || drawAt(b, 100).packW - drawAt(a, 100).packW,
  );
  for (const u of named) {
    const id = u.fixture.packFrom?.outletId;
    if (id !== undefined && !left.some((p) => p.id === id)) {
      const gone = !ports.some((p) => p.id === id);
      out.push(
        say(
          s,
          'battery-outlet-taken',
          'warn',
          { pack: pack.name, unit: u.label, outlet: id, gone: gone ? 1 : 0 },
          1,
          `${s.record.id}/${u.fixture.id}`,
        ),
      );
      continue;
    }
    const amps = drawAt(u, 100).packW / packsV(u, (p) => p.emptyV);
    const port = portFor(left, id, amps);
    if (!port) continue;
    left.splice(left.indexOf(port), 1);
    if (amps > port.maxA * (1 + 1e-9)) {
      const pct = (100 * amps) / port.maxA;
      const params = {
        pack: pack.name,
        unit: u.label,
        outlet: port.label ?? port.id,
        amps,
        maxA: port.maxA,
        pct,
      };
      out.push(say(s, 'battery-outlet-current', 'warn', params, pct, `${s.record.id}/${u.fixture.id}`));
    }
  }
  return out;
};

/** The outlet a lead is in: the one named, else the weakest of those left that carries it, else the strongest. */
const portFor = (left: readonly DcPort[], id: string | undefined, amps: number): DcPort | undefined => {
  if (id !== undefined) return left.find((p) => p.id === id);
  const sorted = [...left].sort((a, b) => a.maxA - b.maxA);
  return sorted.find((p) => p.maxA >= amps) ?? sorted.at(-1);
};
