import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import ampacity from '../../../shared/ampacity.json' with { type: 'json' };
import conductors from '../../../shared/conductors.json' with { type: 'json' };
import { systemShape } from '../../../src/derive/systems.ts';
import { symbolIds } from '../../../src/drawing/symbols.ts';
import {
  findKind,
  gearBook,
  gearBookPage,
  isBuiltIn,
  kindHash,
  kindRecord,
  needKind,
  searchGear,
} from '../../../src/gear/index.ts';
import { SYNONYMS } from '../../../src/gear/synonyms.ts';
import { connector, mates } from '../../../src/plan/connectors.ts';
import {
  type BallastKind,
  type BoxKind,
  type CableKind,
  type FixtureKind,
  type Kind,
  kindSchema,
  type SourceKind,
} from '../../../src/plan/kinds/kinds.ts';

/**
 * Lumens of a beam with so many candela in the middle. Soft beams fall off as I0·cosⁿγ, flux 2π·I0/(n+1). Hard-edged
 * ones go in straight lines from 1 to 0.5 over the beam and on to 0.1 over the field, summed in small rings.
 * Beams of 170° and more count as that part of a sphere.
 */
const fluxLm = (beamDeg: number, cd: number, hardFieldDeg?: number): number => {
  const rad = Math.PI / 360;
  if (hardFieldDeg !== undefined) {
    let sum = 0;
    const steps = 500;
    for (let i = 0; i < steps; i++) {
      const full = ((i + 0.5) / steps) * hardFieldDeg;
      const share =
        full <= beamDeg
          ? 1 - (0.5 * full) / beamDeg
          : 0.5 - (0.4 * (full - beamDeg)) / (hardFieldDeg - beamDeg);
      sum += share * Math.sin(full * rad) * ((hardFieldDeg * rad) / steps);
    }
    return 2 * Math.PI * cd * sum;
  }
  if (beamDeg >= 170) return 2 * Math.PI * cd * (1 - Math.cos(beamDeg * rad));
  const n = Math.log(0.5) / Math.log(Math.cos(beamDeg * rad));
  return (2 * Math.PI * cd) / (n + 1);
};

const family = <F extends Kind['family']>(kinds: readonly Kind[], f: F) =>
  kinds.filter((k): k is Extract<Kind, { family: F }> => k.family === f);

for (const practice of ['north-america', 'europe'] as const) {
  const kinds = gearBook(practice);
  const fixtures = family(kinds, 'fixture') as FixtureKind[];
  const ballasts = family(kinds, 'ballast') as BallastKind[];
  const boxes = family(kinds, 'box') as BoxKind[];
  const sources = family(kinds, 'source') as SourceKind[];
  const cables = family(kinds, 'cable') as CableKind[];

  describe(`gear book, ${practice}`, () => {
    it('is large enough to light a stage and reads back as kinds', () => {
      expect(kinds.length).toBeGreaterThan(450);
      expect(fixtures.length).toBeGreaterThanOrEqual(120);
      for (const k of kinds) expect(kindSchema.parse(k), k.name).toEqual(k);
    });

    it('names and slugs every kind once, by description', () => {
      expect(new Set(kinds.map((k) => k.name)).size).toBe(kinds.length);
      expect(new Set(kinds.map((k) => k.slug)).size).toBe(kinds.length);
      for (const k of kinds) {
        expect(k.name, k.slug).not.toMatch(/[{}|]/);
        // A letter stuck to digits reads as a model number; units, sizes and standards' own names do not.
        const rest = k.name.replace(/\b\d*G\d+(\.\d)?\b/g, '');
        expect(rest, k.slug).not.toMatch(/\b[A-Za-z]+-?\d{2,}|\d+[A-Za-z]+\d*\b/);
      }
      for (const k of [...fixtures, ...ballasts]) expect(k.name, k.slug).toMatch(/\d k?W\b/);
    });

    it('draws every kind with a symbol of the set', () => {
      for (const k of kinds) expect(symbolIds, `${k.slug}: ${k.symbol}`).toContain(k.symbol);
    });

    it('says where its figures are from', () => {
      for (const k of kinds) expect(k.basis.all, k.slug).toBeTruthy();
    });

    it('draws no more at nominal volts than its own plug carries, at the volts of that plug', () => {
      for (const k of [...fixtures, ...ballasts]) {
        if (!k.load) continue;
        expect(k.inlets, k.slug).toHaveLength(1);
        for (const inlet of k.inlets) {
          const c = connector(inlet.connector);
          const volts = practice === 'europe' ? 230 : inlet.legs === 2 ? 208 : 120;
          expect(c, `${k.slug}: ${inlet.connector}`).toBeDefined();
          const amps = k.load.wattsW / (volts * k.load.powerFactor);
          expect(amps, `${k.slug} on ${inlet.connector}`).toBeLessThanOrEqual(c?.ratingA ?? 0);
          expect(c?.voltsV ?? 0, k.slug).toBeGreaterThanOrEqual(volts);
          expect(volts, k.slug).toBeGreaterThanOrEqual(k.load.voltsMinV);
          expect(volts, k.slug).toBeLessThanOrEqual(k.load.voltsMaxV);
        }
      }
    });

    it('gives every port the legs and neutral of its connector', () => {
      for (const k of [...fixtures, ...ballasts, ...boxes, ...sources])
        for (const p of [...('inlets' in k ? (k as BoxKind).inlets : []), ...k.outlets]) {
          const c = connector(p.connector);
          expect({ legs: p.legs, neutral: p.neutral }, `${k.slug} ${p.id}`).toEqual({
            legs: c?.legs,
            neutral: c?.neutral,
          });
        }
      for (const k of cables)
        for (const end of [k.plug, k.socket]) {
          const c = connector(end);
          expect({ legs: k.legs, neutral: k.neutral }, k.slug).toEqual({
            legs: c?.legs,
            neutral: c?.neutral,
          });
        }
    });

    it('has a cable for every outlet and every inlet', () => {
      for (const k of [...boxes, ...sources])
        for (const o of k.outlets)
          expect(
            cables.some((c) => mates(o.connector, c.plug)),
            `${k.slug} outlet ${o.connector}`,
          ).toBe(true);
      for (const k of [...fixtures, ...ballasts, ...boxes])
        for (const i of k.inlets)
          expect(
            cables.some((c) => mates(c.socket, i.connector)),
            `${k.slug} inlet ${i.connector}`,
          ).toBe(true);
    });

    it('reaches every load from some box or source of the book', () => {
      const given = [...boxes, ...sources].flatMap((k) => k.outlets.map((o) => o.connector));
      for (const k of [...fixtures, ...ballasts])
        for (const i of k.inlets)
          expect(
            cables.some((c) => mates(c.socket, i.connector) && given.some((o) => mates(o, c.plug))),
            `${k.slug} ${i.connector}`,
          ).toBe(true);
    });

    it('has a ballast for every discharge head, and every ballast a head', () => {
      for (const k of fixtures) {
        const own = ballasts.filter((b) => b.heads.includes(k.slug));
        if (k.needsBallast) expect(own.length, k.slug).toBeGreaterThan(0);
        else expect(k.load, k.slug).toBeDefined();
      }
      for (const b of ballasts) {
        expect(b.heads.length, b.slug).toBeGreaterThan(0);
        for (const h of b.heads) expect(findKind(practice, h)?.family, b.slug).toBe('fixture');
        const lampW = Number(/-(\d+)w/.exec(b.slug)?.[1]);
        expect(b.load.wattsW, b.slug).toBeGreaterThan(lampW);
      }
    });

    it('keeps ways inside the legs of their box or source, one neutral-less port per way shape', () => {
      for (const k of [...boxes, ...sources]) {
        const count = k.family === 'source' ? (systemShape(k.system)?.legs ?? 0) : (k.inlets[0]?.legs ?? 0);
        for (const w of k.ways) {
          expect(w.legs.length, `${k.slug} way ${w.id}`).toBe(w.poles);
          expect(new Set(w.legs).size).toBe(w.legs.length);
          for (const l of w.legs) expect(l, `${k.slug} way ${w.id}`).toBeLessThan(count);
          const outlets = k.outlets.filter((o) => o.wayId === w.id || o.circuitWayIds?.includes(w.id));
          expect(outlets.length, `${k.slug} way ${w.id}`).toBeGreaterThan(0);
          for (const o of outlets) expect(o.legs, `${k.slug} outlet ${o.id}`).toBe(w.poles);
        }
        for (const o of k.outlets)
          if (o.wayId) expect(k.ways.some((w) => w.id === o.wayId)).toBe(true);
          else if (o.circuitWayIds)
            for (const id of o.circuitWayIds)
              expect(
                k.ways.some((w) => w.id === id),
                `${k.slug} ${o.id}`,
              ).toBe(true);
          else expect(o.legs).toBe(count);
      }
    });

    it('makes every cable of a conductor the table knows', () => {
      const known = new Set(conductors.rows.map((r) => r.id));
      for (const k of cables) {
        expect(known.has(k.conductor), `${k.slug}: ${k.conductor}`).toBe(true);
        expect(k.ampacityA, k.slug).toBeGreaterThan(0);
        expect(
          [...k.stockLengthsMm].sort((a, b) => a - b),
          k.slug,
        ).toEqual(k.stockLengthsMm);
      }
    });

    it('rates every cable as the row of the ampacity table it names', () => {
      const column = (from: string, legs: number): [table: string, field: string] => {
        if (from.startsWith('NEC Table 400.5(A)(1)'))
          return ['nec-400.5(A)(1)', legs > 1 && /three/.test(from) ? 'loaded3A' : 'loaded2A'];
        if (from.startsWith('NEC Table 400.5(A)(2)'))
          return [
            'nec-400.5(A)(2)',
            `c${/90 °C/.test(from) ? 90 : 75}${/column E/.test(from) ? 'Two' : 'Three'}`,
          ];
        if (from.startsWith('NEC Table 520.44(C)(2)')) return ['nec-520.44(C)(2)', 'c75A'];
        const table = /Table (4F\w+)/.exec(from)?.[1];
        return [`bs7671-${table}`, legs > 1 || /three-phase/.test(from) ? 'threePhaseA' : 'onePhaseA'];
      };
      for (const k of cables) {
        const [table, field] = column(k.basis.ampacityA ?? '', k.legs);
        const row = ampacity.rows.find((r) => r.table === table && r.conductor === k.conductor);
        // Several circuits in one cable carry less each: the factor stands beside the table.
        const factor = Number(/by the factor (0\.\d+)/.exec(k.basis.ampacityA ?? '')?.[1] ?? 1);
        const printed = Number((row as Record<string, unknown> | undefined)?.[field]);
        expect(Math.floor(printed * factor * 10) / 10, `${k.slug} in ${table} ${field}`).toBe(k.ampacityA);
      }
    });

    it('spreads the ways of a box over its legs', () => {
      for (const k of boxes) {
        const legs = k.inlets[0]?.legs ?? 0;
        if (k.ways.length < legs) continue;
        const used = new Set(k.ways.flatMap((w) => w.legs));
        expect(used.size, k.slug).toBe(legs);
      }
    });

    it('makes no more light from a watt than its sort of lamp can', () => {
      // Upper bounds at the fixture in lumens per watt: lamp efficacies of the trade, nothing lost on the way.
      const most = { tungsten: 30, discharge: 105, led: 150, fluorescent: 90 };
      for (const k of fixtures) {
        if (k.candelaCd === undefined || k.beamDeg === undefined) continue;
        const lampW =
          k.load?.wattsW ?? Number(/-(\d+)(k?)w/.exec(k.slug)?.[1]) * (/kw/.test(k.slug) ? 1000 : 1);
        const per =
          fluxLm(k.beamDeg, k.candelaCd, k.style === 'ellipsoidal' ? k.fieldDeg : undefined) / lampW;
        expect(per, k.slug).toBeGreaterThan(1);
        expect(per, k.slug).toBeLessThan(most[k.source]);
        if (k.spot) {
          expect(k.spot.beamDeg, k.slug).toBeLessThan(k.beamDeg);
          expect(k.spot.candelaCd, k.slug).toBeGreaterThan(k.candelaCd);
          expect(fluxLm(k.spot.beamDeg, k.spot.candelaCd) / lampW, k.slug).toBeLessThan(most[k.source]);
        }
        if (k.fieldDeg !== undefined) expect(k.fieldDeg, k.slug).toBeGreaterThan(k.beamDeg);
      }
    });

    it('weighs and measures plausibly', () => {
      for (const k of [...fixtures, ...ballasts]) {
        expect(k.massKg, k.slug).toBeGreaterThan(0.01);
        expect(k.massKg, k.slug).toBeLessThan(100);
        expect(Math.min(k.sizeMm.lengthMm, k.sizeMm.widthMm), k.slug).toBeGreaterThan(10);
        expect(Math.max(k.sizeMm.lengthMm, k.sizeMm.widthMm), k.slug).toBeLessThanOrEqual(5000);
      }
      for (const k of family(kinds, 'stand')) {
        expect(k.heightMaxMm, k.slug).toBeGreaterThanOrEqual(k.heightMinMm);
        expect(k.ratedLoadKg, k.slug).toBeGreaterThan(0);
      }
    });

    it('has a stand for every fixture that takes one', () => {
      const stands = family(kinds, 'stand');
      for (const k of fixtures) {
        const tops = k.mount.fits.filter((m) => m === 'pin-16' || m === 'spigot-28');
        if (tops.length === 0) continue;
        const fits = stands.some(
          (s) => s.ratedLoadKg >= k.massKg && s.receives.some((r) => tops.some((t) => t === r)),
        );
        expect(fits, k.slug).toBe(true);
      }
    });

    it('has units of an older build whose address is set by switches, small enough to be reached by nine of them', () => {
      const switched = kinds.filter((k) => k.family === 'fixture' && k.addressBy === 'switches');
      expect(switched.length).toBeGreaterThanOrEqual(2);
      for (const k of switched)
        if (k.family === 'fixture') for (const m of k.modes) expect(m.slots, k.slug).toBeLessThan(16);
    });

    it('finds kinds the way people ask', () => {
      const first = (q: string, n = 1) =>
        searchGear(practice, q)
          .slice(0, n)
          .map((k) => k.slug);
      expect(first('650')).toEqual(['tungsten-fresnel-650w']);
      expect(first('650 fresnel')).toEqual(['tungsten-fresnel-650w']);
      expect(first('2k', 2)).toContain('tungsten-fresnel-2kw');
      expect(first('1.2k led')).toEqual(['led-spot-1200w']);
      expect(first('2.5kw ballast')).toEqual(['ballast-2500w']);
      expect(first('panel 60x60')).toEqual(['led-panel-60x60']);
      expect(searchGear(practice, 'tube').every((k) => /tube/i.test(`${k.name} ${k.also.join(' ')}`))).toBe(
        true,
      );
      expect(searchGear(practice, 'stand', { families: ['stand'], limit: 5 })).toHaveLength(5);
      expect(searchGear(practice, '65').some((k) => k.slug === 'tungsten-fresnel-1650w')).toBe(false);
      expect(searchGear(practice, 'qqzz')).toEqual([]);
    });

    it.each([
      ['console', 'device', /desk/i],
      ['lighting board', 'device', /desk/i],
      ['quad box', 'box', /4 outlets/],
      ['stinger', 'cable', /./],
      ['stingers', 'cable', /./],
      ['distro', 'box', /box/i],
      ['lunch box', 'box', /box/i],
      ['spider box', 'box', /box/i],
      ['genny', 'source', /generator/i],
      ['dimmer rack', 'dimmer', /dimmer/i],
      ['metal halide', 'fixture', /discharge/i],
      ['arc light', 'fixture', /discharge/i],
    ] as const)('finds gear by the trade word %s', (word, family, name) => {
      const [first] = searchGear(practice, word);
      expect(first?.name).toMatch(name);
      if (family !== 'device') expect(first?.family).toBe(family);
    });

    it('has gear for every trade word of the table', () => {
      for (const [word] of SYNONYMS) expect(searchGear(practice, word).length, word).toBeGreaterThan(0);
    });

    it('finds what mixes colours by rgb, and nothing else', () => {
      const found = searchGear(practice, 'rgb', { limit: 500 });
      expect(found.length).toBeGreaterThan(5);
      for (const k of found) expect(k.family === 'fixture' && k.cct?.color, k.name).toBe(true);
    });
  });
}

describe('kind identity', () => {
  const kind = needKind('europe', 'led-spot-600w', 'fixture');

  it('comes from what the kind says, not from its id or origin', () => {
    expect(kind.id).toBe(`led-spot-600w@${kindHash(kind).slice(0, 8)}`);
    expect(kindRecord({ ...kind, id: 'x' })).toEqual(kind);
    expect(kindHash({ ...kind, massKg: 8 })).not.toBe(kindHash(kind));
  });

  it('believes “built-in” only of an unchanged kind', () => {
    expect(isBuiltIn(kind)).toBe(true);
    expect(isBuiltIn({ ...kind, massKg: 8 })).toBe(false);
    expect(isBuiltIn({ ...kind, origin: { book: 'user', version: '1' } })).toBe(false);
  });

  it('throws for a kind the book does not have', () => {
    expect(() => needKind('europe', 'nema-box', 'box')).toThrow(/no box/);
  });
});

describe('the gear book page', () => {
  it('is up to date (UPDATE_GEAR_BOOK=1 writes it)', () => {
    const file = new URL('../../../shared/gear-book.md', import.meta.url);
    if (process.env.UPDATE_GEAR_BOOK) writeFileSync(file, gearBookPage());
    expect(readFileSync(file, 'utf8')).toBe(gearBookPage());
  });
});
