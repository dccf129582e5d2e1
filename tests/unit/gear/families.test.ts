import { describe, expect, it } from 'vitest';
import { gearBook, kindFaults } from '../../../src/gear/index.ts';
import { connector, mates } from '../../../src/plan/connectors.ts';
import type { DataPort, Kind } from '../../../src/plan/kinds/kinds.ts';

type Of<F extends Kind['family']> = Extract<Kind, { family: F }>;

/** Watt-hours a kilogram of pack may hold, case and plate included, by cells. */
const WH_PER_KG = { 'li-ion': [85, 190], lifepo4: [70, 130], nimh: [30, 80], 'lead-acid': [25, 45] } as const;
const CELL_V = { 'li-ion': 3.6, lifepo4: 3.2, nimh: 1.2, 'lead-acid': 2 } as const;

for (const practice of ['north-america', 'europe'] as const) {
  const kinds = gearBook(practice);
  const of = <F extends Kind['family']>(...families: F[]): Of<F>[] =>
    kinds.filter((k): k is Of<F> => (families as string[]).includes(k.family));
  const volts = practice === 'europe' ? 230 : 120;
  const cables = of('cable');
  const packs = of('pack');
  const chargers = of('charger');
  const dimmers = of('dimmer');
  const adapters = of('adapter');
  const radio = of('transmitter', 'receiver', 'repeater');

  describe(`families of the gear book, ${practice}`, () => {
    it('are as full as a list for a truck needs them', () => {
      const least: readonly (readonly [number, ...Kind['family'][]])[] = [
        [110, 'fixture'],
        [40, 'stand', 'rigging'],
        [30, 'grip'],
        [25, 'box', 'dimmer', 'source'],
        [30, 'cable', 'adapter'],
        [15, 'pack', 'charger'],
        [15, 'transmitter', 'receiver', 'node', 'dataSplitter'],
        [5, 'camera'],
        [15, 'furniture', 'vehicle'],
      ];
      for (const [n, ...families] of least)
        expect(of(...families).length, families.join(', ')).toBeGreaterThanOrEqual(n);
    });

    it('hold data cables by connector, each no longer than its longest run', () => {
      const data = of('dataCable');
      expect(new Set(data.map((k) => k.connector))).toEqual(new Set(['xlr-5', 'xlr-3', 'ethernet']));
      for (const k of data) {
        expect(Math.max(...k.stockLengthsMm), k.slug).toBeLessThanOrEqual(k.longestMm);
        // ISO/IEC 11801 and TIA-568: 100 m of 100 Ω pairs. EIA-485 as ANSI E1.11 uses it: 120 Ω pairs.
        expect(k.impedanceOhm, k.slug).toBe(k.connector === 'ethernet' ? 100 : 120);
        if (k.connector === 'ethernet') expect(k.longestMm, k.slug).toBe(100_000);
        expect(k.massKg, k.slug).toBeCloseTo((Math.max(...k.stockLengthsMm) / 1000) * k.massKgPerM, 0);
      }
    });

    it('have no faults', () => {
      for (const k of kinds) expect(kindFaults(k), k.slug).toEqual([]);
    });

    it('say what their planning values are', () => {
      for (const k of [...packs, ...chargers, ...radio, ...of('converter', 'dimmer', 'node', 'dataSplitter')])
        expect(
          Object.entries(k.basis).some(([field, from]) => field !== 'all' && /assumed/.test(from)),
          k.slug,
        ).toBe(true);
    });

    it('hold packs of cells in a row, volts times ampere-hours, at a mass that such cells have', () => {
      for (const p of packs) {
        expect(p.voltsV, p.slug).toBeCloseTo(p.cells * CELL_V[p.chemistry], 1);
        expect(Math.abs(p.voltsV * p.capacityAh - p.energyWh) / p.energyWh, p.slug).toBeLessThan(0.01);
        const [least, most] = WH_PER_KG[p.chemistry];
        expect(p.energyWh / p.massKg, p.slug).toBeGreaterThan(least);
        expect(p.energyWh / p.massKg, p.slug).toBeLessThan(most);
        // Cells of these packs give one to three times their capacity, belts and blocks less.
        expect(p.continuousA / p.capacityAh, p.slug).toBeGreaterThan(0.4);
        expect(p.continuousA / p.capacityAh, p.slug).toBeLessThan(3);
        // What goes in is more than comes out, and no more than three times.
        const inWh = (p.chargeW * p.chargeMin) / 60;
        expect(inWh, p.slug).toBeGreaterThan(p.energyWh);
        expect(inWh, p.slug).toBeLessThan(2 * p.energyWh);
        for (const port of p.dcOut)
          expect(port.maxA, `${p.slug} ${port.id}`).toBeLessThanOrEqual(p.continuousA);
      }
    });

    it('have a charger for every pack, and a pack for every charger', () => {
      const fits = (c: Of<'charger'>, p: Of<'pack'>): boolean =>
        c.plates.includes(p.plate) &&
        c.chemistries.includes(p.chemistry) &&
        c.packVolts.minV <= p.voltsV &&
        p.voltsV <= c.packVolts.maxV;
      for (const p of packs)
        expect(
          chargers.some((c) => fits(c, p)),
          p.slug,
        ).toBe(true);
      for (const c of chargers)
        expect(
          packs.some((p) => fits(c, p)),
          c.slug,
        ).toBe(true);
    });

    it('draw more at the charger than goes into the packs', () => {
      for (const c of chargers) {
        const given = Math.min(c.together * c.bayW, c.sharedW ?? Number.POSITIVE_INFINITY);
        expect(c.load.wattsW, c.slug).toBeGreaterThan(given);
        expect(c.load.wattsW, c.slug).toBeLessThan(1.4 * given);
        expect(c.together, c.slug).toBeLessThanOrEqual(c.bays);
        if (c.sharedW !== undefined) expect(c.sharedW, c.slug).toBeLessThan(c.bays * c.bayW);
      }
    });

    it('correct the power factor of small supplies above 75 W', () => {
      for (const k of [...chargers, ...of('converter', 'node')])
        if (k.load)
          expect(k.load.powerFactor >= 0.9, `${k.slug} ${k.load.wattsW} W`).toBe(k.load.wattsW > 75);
    });

    it('draw no more than their plug carries', () => {
      for (const k of [...chargers, ...radio, ...of('converter', 'node', 'dataSplitter')])
        for (const inlet of k.load ? k.inlets : [])
          expect((k.load?.wattsW ?? 0) / (volts * (k.load?.powerFactor ?? 1)), k.slug).toBeLessThanOrEqual(
            connector(inlet.connector)?.ratingA ?? 0,
          );
    });

    it('give no more than they take', () => {
      for (const k of of('converter')) {
        expect(k.efficiencyPct, k.slug).toBeLessThan(100);
        if (k.load)
          expect(k.load.wattsW * (k.efficiencyPct / 100), k.slug).toBeGreaterThanOrEqual(k.outputW - 1);
        for (const p of k.dcIn)
          expect(p.voltsV * p.maxA * (k.efficiencyPct / 100) * 1.03, k.slug).toBeGreaterThanOrEqual(
            k.outputW,
          );
        for (const p of k.dcOut)
          expect(p.voltsV * p.maxA, `${k.slug} ${p.id}`).toBeLessThanOrEqual(k.outputW * 1.03);
        if (k.what !== 'transformer') continue;
        const three = k.inlets[0]?.legs === 3;
        const inA = k.outputW / ((k.inputV ?? 0) * (three ? Math.sqrt(3) : 1) * (k.efficiencyPct / 100));
        expect(inA, `${k.slug} at its inlet`).toBeLessThanOrEqual(
          1.02 * (connector(k.inlets[0]?.connector ?? '')?.ratingA ?? 0),
        );
        const outA = k.outlets.reduce((sum, o) => sum + (connector(o.connector)?.ratingA ?? 0), 0);
        const legs = Math.max(...k.outlets.map((o) => o.legs));
        expect(k.outputW / (k.outputV ?? volts) / legs, `${k.slug} at its outlets`).toBeLessThanOrEqual(outA);
      }
    });

    it('take plates for which there is a pack', () => {
      for (const k of of('converter'))
        for (const plate of k.plates)
          expect(
            packs.some((p) => p.plate === plate),
            `${k.slug} ${plate}`,
          ).toBe(true);
    });

    it('carry the watts of a dimmer’s way on its breaker, outlet and inlet', () => {
      for (const k of dimmers) {
        const legs = k.inlets[0]?.legs ?? 1;
        const wayV = k.inlets[0]?.connector.endsWith('-2') ? 208 : volts;
        for (const w of k.ways) {
          expect(k.wayW, `${k.slug} way ${w.id}`).toBeLessThanOrEqual(w.breakerA * wayV);
          for (const o of k.outlets.filter((x) => x.wayId === w.id))
            expect(w.breakerA, `${k.slug} outlet ${o.id}`).toBeLessThanOrEqual(
              connector(o.connector)?.ratingA ?? 0,
            );
        }
        const onALeg = Math.ceil(k.ways.length / (wayV === 208 ? 1 : legs));
        const inletA = k.mainBreakerA ?? connector(k.inlets[0]?.connector ?? '')?.ratingA ?? 0;
        expect((onALeg * k.wayW) / wayV, `${k.slug} inlet`).toBeLessThanOrEqual(inletA);
        expect(k.slots === 0 || k.slots === k.ways.length, `${k.slug} slots`).toBe(true);
        expect(k.dataIn.length > 0, `${k.slug} data`).toBe(k.slots > 0);
        expect(k.leastW, k.slug).toBeLessThan(k.wayW);
      }
    });

    it('have cables for dimmers, transformers and adapters', () => {
      const gives = [...of('box', 'source', 'dimmer', 'adapter')].flatMap((k) =>
        k.outlets.map((o) => o.connector),
      );
      for (const k of dimmers) {
        for (const i of k.inlets)
          expect(
            cables.some((c) => mates(c.socket, i.connector)),
            k.slug,
          ).toBe(true);
        for (const o of k.outlets)
          expect(
            cables.some((c) => mates(o.connector, c.plug)),
            k.slug,
          ).toBe(true);
      }
      for (const k of adapters)
        for (const i of k.inlets) {
          if (i.connector === 'bare-tails') continue;
          const onto =
            cables.some((c) => mates(c.socket, i.connector)) || gives.some((o) => mates(o, i.connector));
          expect(onto, `${k.slug} ${i.connector}`).toBe(true);
        }
    });

    it('let no adapter pass more than its ends and conductors carry, or say what breaker it needs', () => {
      for (const k of adapters) {
        if (k.what === 'data' || k.ampacityA === undefined) continue;
        for (const p of [...k.inlets, ...k.outlets])
          expect(connector(p.connector), `${k.slug} ${p.id}`).toBeDefined();
        // Single-pole sets and bare tails have no plug that limits them: their feeder's breaker does.
        const open = k.inlets.some((i) => /single-pole|bare/.test(i.connector)) && k.upstreamA === undefined;
        if (open) continue;
        const inA = Math.min(
          ...k.inlets.map((i) => connector(i.connector)?.ratingA || Number.POSITIVE_INFINITY),
          k.upstreamA ?? Number.POSITIVE_INFINITY,
        );
        expect(k.ampacityA, `${k.slug} conductor`).toBeGreaterThanOrEqual(inA);
        for (const o of k.outlets)
          expect(connector(o.connector)?.ratingA ?? 0, `${k.slug} ${o.id}`).toBeGreaterThanOrEqual(inA);
      }
    });

    it('part a multi into as many circuits as it holds', () => {
      for (const k of adapters) {
        if (k.what !== 'break-in' && k.what !== 'break-out') continue;
        expect(k.what === 'break-in' ? k.inlets.length : k.outlets.length, k.slug).toBe(k.circuits);
        expect(
          cables.some((c) => c.circuits === k.circuits),
          k.slug,
        ).toBe(true);
      }
    });

    it('carry their universes on their ports', () => {
      const all = (ports: readonly DataPort[]): number => ports.reduce((sum, p) => sum + p.universes, 0);
      for (const k of radio) {
        for (const ports of [k.dataIn, k.dataOut])
          if (ports.length > 0) expect(all(ports), k.slug).toBe(k.universes);
        const air = k.family === 'transmitter' ? k.dataOut : k.dataIn;
        expect(
          air.map((p) => p.connector),
          k.slug,
        ).toEqual(['radio']);
      }
      for (const k of [...radio, ...of('node', 'dataSplitter')])
        for (const p of [...k.dataIn, ...k.dataOut])
          if (p.connector === 'xlr-5' || p.connector === 'xlr-3')
            expect(p.universes, `${k.slug} ${p.id}`).toBe(1);
      for (const k of of('node'))
        expect(k.dataOut.filter((p) => p.connector === 'xlr-5').length, k.slug).toBeLessThanOrEqual(
          Math.max(k.universes, k.what === 'desk' ? 8 : 0),
        );
      for (const k of of('dataSplitter')) {
        expect(k.dataIn, k.slug).toHaveLength(1);
        expect(k.dataOut.length, k.slug).toBeGreaterThan(2);
        expect(k.unitLoads, k.slug).toBeLessThanOrEqual(1);
      }
    });

    it('radiate what their socket and aerial make of it, and hear what such receivers hear', () => {
      for (const k of radio) {
        expect(k.sensitivityDbm, k.slug).toBeGreaterThanOrEqual(-105);
        expect(k.sensitivityDbm, k.slug).toBeLessThanOrEqual(-85);
        for (const b of k.bands) expect(b.toMhz, k.slug).toBeGreaterThan(b.fromMhz);
        if (k.family === 'receiver') continue;
        const most = Math.max(...k.bands.map((b) => b.eirpDbm));
        expect(most, k.slug).toBeCloseTo(k.conductedDbm + k.antennaGainDbi, 2);
        expect(k.supplyW, k.slug).toBeGreaterThan(10 ** (k.conductedDbm / 10) / 1000);
      }
    });

    it('run twenty minutes and more on a back-up cell', () => {
      for (const k of [...radio, ...of('node', 'dataSplitter')])
        if (k.backupWh !== undefined) expect(k.backupWh / k.supplyW, k.slug).toBeGreaterThan(1 / 3);
    });

    it('bridge about an hour where a transmitter on the mains has a cell too, and say that it is the trade’s word', () => {
      const bridged = of('transmitter').filter((k) => k.backupWh !== undefined && k.load !== undefined);
      expect(bridged.length).toBeGreaterThan(0);
      for (const k of bridged) {
        const hours = (k.backupWh ?? 0) / k.supplyW;
        expect(hours, k.slug).toBeGreaterThanOrEqual(1);
        expect(hours, k.slug).toBeLessThanOrEqual(1.25);
        expect(k.basis.backupWh, k.slug).toMatch(/no published source: about an hour/);
      }
    });

    it('have a receiver built in where small battery units do, marked as assumed, on a band a transmitter has', () => {
      const hearing = of('fixture').filter((k) => k.radioIn !== undefined);
      const slugs = hearing.map((k) => k.slug);
      expect(slugs).toEqual(expect.arrayContaining(['led-tube-120', 'pixel-tube-120', 'led-panel-30x30']));
      for (const k of of('fixture'))
        if (/tube/.test(k.style) && k.source === 'led') expect(k.radioIn, k.slug).toBeDefined();
      const bands = of('transmitter').flatMap((k) => k.bands);
      for (const k of hearing) {
        expect(k.basis.radioIn, k.slug).toMatch(/assumed/);
        const { fromMhz = 0, toMhz = 0 } = k.radioIn ?? {};
        expect(
          bands.some((b) => b.fromMhz >= fromMhz && b.toMhz <= toMhz),
          k.slug,
        ).toBe(true);
      }
    });

    it('hold for power stations what lasts half an hour and more at full power', () => {
      for (const k of of('source')) {
        if (k.what !== 'power-station') continue;
        const hours = (k.storedWh ?? 0) / 1000 / (k.ratedKw ?? 1);
        expect(hours, k.slug).toBeGreaterThan(0.5);
        expect(hours, k.slug).toBeLessThan(3);
        expect((k.storedWh ?? 0) / k.massKg, k.slug).toBeLessThan(130);
      }
    });

    it('give discharge gear its head cables, times and flicker', () => {
      for (const k of of('ballast')) {
        expect(k.headCablesMm.length, k.slug).toBeGreaterThan(0);
        expect(k.flicker, k.slug).toBe(/magnetic/.test(k.slug) ? 'twice-mains' : 'even');
      }
      for (const k of of('fixture')) {
        if (!k.needsBallast) continue;
        expect(k.warmUpMin, k.slug).toBeGreaterThan(0);
        expect(k.hotRestrikeMin, k.slug).toBeDefined();
      }
    });

    it('keep hot units further from cloth and walls the more watts they have', () => {
      const groups = new Map<string, { wattsW: number; cloth: number; surface: number; slug: string }[]>();
      for (const k of of('fixture')) {
        const hot = k.source === 'discharge' || (k.source === 'tungsten' && k.style === 'fresnel');
        if (hot) expect(k.clearanceMm, k.slug).toBeDefined();
        if (!k.clearanceMm) continue;
        expect(k.basis.clearanceMm, k.slug).toMatch(/assumed/);
        const wattsW =
          k.load?.wattsW ?? Number(/-(\d+)k?w/.exec(k.slug)?.[1]) * (/kw/.test(k.slug) ? 1000 : 1);
        const { cloth = 0, surface = 0 } = k.clearanceMm;
        expect(surface, k.slug).toBeGreaterThanOrEqual(cloth);
        const key = `${k.source} ${k.style}`;
        groups.set(key, [...(groups.get(key) ?? []), { wattsW, cloth, surface, slug: k.slug }]);
      }
      for (const rows of groups.values()) {
        rows.sort((a, b) => a.wattsW - b.wattsW);
        rows.slice(1).forEach((r, i) => {
          expect(r.cloth, r.slug).toBeGreaterThanOrEqual(rows[i]?.cloth ?? 0);
          expect(r.surface, r.slug).toBeGreaterThanOrEqual(rows[i]?.surface ?? 0);
        });
      }
    });
  });
}
