import { describe, expect, it } from 'vitest';
import { gearBook } from '../../../src/gear/book.ts';
import {
  formatAmps,
  formatCableLength,
  formatPct,
  formatVolts,
  formatWatts,
} from '../../../src/kernel/units.ts';
import { kindOf, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { explainFault } from '../../../src/report/explain-fault.ts';
import { explainLoop } from '../../../src/report/explain-loop.ts';
import { explainPlace, explainRoom } from '../../../src/report/explain-place.ts';
import { explainSwap, swapFigure } from '../../../src/report/explain-swap.ts';
import { faultLevels } from '../../../src/report/faults.ts';
import { roomLeft } from '../../../src/report/room.ts';
import { sizePlan } from '../../../src/report/size.ts';
import { swapSource } from '../../../src/report/swap-source.ts';
import { type Fault, whatIf } from '../../../src/report/whatif.ts';
import { whereToPlug } from '../../../src/report/where-to-plug.ts';
import { demoPlan } from '../../support/demo-plan.ts';
import { generatorRig } from '../../support/plan-builder.ts';

const done = <T>(r: { ok: true; value: T } | { ok: false; error: { what: string } }): T => {
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};

/** All that can befall a demo plan: the first used ways, every leg and the neutral of every source. */
const faultsOf = (plan: ReturnType<typeof demoPlan>): readonly Fault[] => {
  const a = assess(plan, { revision: 0 });
  const used = new Set(a.entities.map((e) => e.parentKey));
  return a.entities.flatMap((e): readonly Fault[] => {
    if (e.what === 'way' && e.wayId !== undefined && used.has(e.key) && e.notComputed === undefined)
      return [{ trip: { ownerId: e.recordId, wayId: e.wayId } }];
    if (e.what !== 'source' || e.notComputed !== undefined) return [];
    return [
      ...e.legs.map((leg) => ({ loseLeg: { sourceId: e.recordId, leg } })),
      ...(e.neutral && e.legs.length > 1 ? [{ loseNeutral: { recordId: e.recordId } }] : []),
    ];
  });
};

describe.each(['street', 'stage', 'study'] as const)('workings of what is tried on “%s”', (name) => {
  const plan = demoPlan(name);

  it('power-what-if: every figure of a fault opens a working that ends in that figure', () => {
    let shown = 0;
    const faults = faultsOf(plan);
    // Ways are many and alike: a few of them, all legs and neutrals.
    const some = [...faults.filter((f) => 'trip' in f).slice(0, 3), ...faults.filter((f) => !('trip' in f))];
    for (const fault of some) {
      const r = whatIf(plan, fault);
      if (!r.ok) continue;
      for (const w of r.value.meter?.wires ?? [])
        for (const when of ['before', 'after'] as const) {
          const value = when === 'before' ? w.beforeA : w.afterA;
          if (!Number.isFinite(value)) continue;
          const working = explainFault(plan, fault, r.value.setupId, { wire: w.name, when });
          expect(working?.result, `${r.value.title}, ${w.name} ${when}`).toBe(formatAmps(value));
          shown++;
        }
      for (const l of r.value.loads
        .filter((x) => x.state !== 'as before' && x.state !== 'dark')
        .slice(0, 4)) {
        const of = (what: 'volts' | 'watts') =>
          explainFault(plan, fault, r.value.setupId, { load: l.key, of: what });
        expect(of('volts')?.result, l.label).toBe(formatVolts(l.voltsV));
        expect(of('watts')?.result, l.label).toBe(formatWatts(l.wattsW));
        expect(of('volts')?.steps.length).toBeGreaterThan(1);
        shown++;
      }
    }
    expect(shown).toBeGreaterThan(3);
  });

  it('power-fault-loop: loop, current and what opens have workings that end in the figure shown', () => {
    const rows = faultLevels(plan);
    expect(rows.length).toBeGreaterThan(3);
    for (const l of [...rows.slice(0, 4), ...rows.slice(-4)]) {
      expect(explainLoop(plan, l.key, 'runsOhm')?.result).toBe(`${l.runsOhm.toFixed(3)} Ω`);
      // The parts of the loop add up to it: the last step is the sum itself.
      expect(explainLoop(plan, l.key, 'runsOhm')?.steps.at(-1)).toContain(`= ${l.runsOhm.toFixed(3)} Ω`);
      expect(explainLoop(plan, l.key, 'loopOhm')?.result).toBe(
        l.loopOhm === undefined ? undefined : `${l.loopOhm.toFixed(3)} Ω`,
      );
      expect(explainLoop(plan, l.key, 'faultA')?.result).toBe(
        l.faultA === undefined ? undefined : formatAmps(l.faultA),
      );
      expect(explainLoop(plan, l.key, 'opens')?.inputs.length).toBeGreaterThan(2);
    }
  });

  it('power-size: every size says its inputs and ends in what is offered', () => {
    const rows = sizePlan(plan, { book: gearBook(planRecord(plan).practice) });
    for (const r of rows) {
      expect(r.working.result, r.label).toContain(r.kind?.name ?? 'nothing in the book');
      expect(r.working.inputs.map((i) => i.name)).toContain('headroom');
    }
    expect(rows.length).toBeGreaterThan(0);
  });
});

describe('workings of a swap and of a place to plug in', () => {
  it('power-rating: figures with another source are explained by the plan with that source', () => {
    const plan = demoPlan('street');
    const source = recordsOf(plan, 'source').find(
      (s) => kindOf(plan, s.kindId, 'source')?.what === 'generator',
    );
    const kinds = gearBook(planRecord(plan).practice).flatMap((k) => (k.family === 'source' ? [k] : []));
    let seen = 0;
    for (const kind of kinds) {
      const r = source && swapSource(plan, source.id, kind);
      if (!r?.ok) continue;
      for (const l of r.value.lines) {
        const w = explainSwap(plan, r.value, l.name, 'after', 'figure');
        if (!Number.isFinite(l.after) || !w) continue;
        expect(w.result).toBe(swapFigure(l, l.after));
        const share = explainSwap(plan, r.value, l.name, 'after', 'share');
        expect(share?.result).toBe(Number.isFinite(l.afterPct) ? formatPct(l.afterPct) : undefined);
        seen++;
      }
      if (seen > 4) break;
    }
    expect(seen).toBeGreaterThan(2);
  });

  it('power-where: length, amps, room and volts of a place are explained', () => {
    const r = generatorRig();
    r.b.fixtureKind('f', { wattsW: 1200 });
    r.plug('f', 1, 3000);
    const plan = r.b.plan();
    const a = assess(plan, { revision: 1 });
    const floorId = [...recordsOf(plan, 'floor')][0]?.id ?? '';
    const connectors = [
      ...new Set(recordsOf(plan, 'kind').flatMap((k) => (k.family === 'fixture' ? k.inlets : []))),
    ];
    const asked = {
      floorId,
      at: { xMm: 4000, yMm: 2500 },
      loadW: 600,
      powerFactor: 0.9,
      connector: connectors[0]?.connector ?? '',
    };
    const [place] = whereToPlug(plan, a, asked);
    if (!place) throw new Error('no place');
    const units = planRecord(plan).lengthUnits;
    const of = (f: Parameters<typeof explainPlace>[4]) => explainPlace(plan, a, asked, place, f);
    expect(of('neededMm')?.result).toBe(formatCableLength(place.neededMm, units));
    const way = a.entities.find((e) => e.what === 'way' && roomLeft(a, e.key) !== undefined);
    const room = roomLeft(a, way?.key ?? '');
    expect(explainRoom(plan, a, way?.key ?? '')?.result).toBe(formatAmps(room?.freeA ?? Number.NaN));
    expect(explainRoom(plan, a, 'none')).toBeUndefined();
    expect(of('loadA')?.result).toBe(formatAmps(600 / 0.9 / 120));
    expect(of('loadA')?.result).toBe(formatAmps(place.loadA));
    expect(of('freeAfterA')?.result).toBe(formatAmps(place.freeAfterA));
    expect(of('voltsV')?.result).toBe(place.voltsV === undefined ? undefined : formatVolts(place.voltsV));
  });

  it('power-what-if: a load that is dark has no volts to explain, and a fault that is none has no working', () => {
    const { b, box, plug } = (() => {
      const rig = generatorRig();
      rig.b.fixtureKind('f', { wattsW: 1200 });
      return { ...rig };
    })();
    const unit = plug('f', 2, 0).fixture;
    const plan = b.plan();
    const fault = { trip: { ownerId: box.id, wayId: '2' } };
    const w = done(whatIf(plan, fault));
    expect(w.loads.find((l) => l.recordId === unit.id)?.state).toBe('dark');
    expect(explainFault(plan, fault, w.setupId, { load: unit.id, of: 'volts' })).toBeUndefined();
    expect(
      explainFault(plan, { trip: { ownerId: 'none', wayId: '1' } }, undefined, { wire: 'A', when: 'after' }),
    ).toBeUndefined();
  });
});
