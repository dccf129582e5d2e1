import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawFloor } from '../../src/drawing/draw-floor.ts';
import { hatchLines } from '../../src/drawing/hatch.ts';
import { fitText, showable, textWidthMm, wrapText } from '../../src/drawing/text.ts';
import { listToCsv } from '../../src/output/csv.ts';
import { paperSet } from '../../src/papers/paper-set.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { AnyRecord } from '../../src/plan/records/index.ts';
import { assess } from '../../src/report/assess.ts';
import { textsOf, touchingTexts } from '../support/page-texts.ts';
import { samplePlan } from '../support/sample-plan.ts';

const base = samplePlan();

/** The sample with its stands thrown about and texts of all sorts in it. */
const shaken = fc.record({
  spots: fc.array(
    fc.record({ x: fc.integer({ min: -20000, max: 30000 }), y: fc.integer({ min: -20000, max: 30000 }) }),
    { minLength: 8, maxLength: 8 },
  ),
  use: fc.string({ unit: 'grapheme', maxLength: 60 }),
  unit: fc.string({ unit: 'binary', maxLength: 12 }),
  sheet: fc.constantFrom('A4', 'A3', 'ANSI B', 'ARCH C', 'no such sheet'),
  landscape: fc.boolean(),
  scale: fc.option(fc.integer({ min: 1, max: 2000 }), { nil: undefined }),
});

type Shake = typeof shaken extends fc.Arbitrary<infer T> ? T : never;

const shakenPlan = ({ spots, use, unit, sheet, landscape, scale }: Shake): Plan => {
  const patch = (id: string, p: Record<string, unknown>) => {
    const from = base.records.get(id);
    if (!from) throw new Error(id);
    return { from, to: { ...from, ...p } as AnyRecord };
  };
  const stands = [...base.records.values()].filter((r) => r.type === 'stand');
  return applyChanges(base, {
    added: [],
    removed: [],
    updated: [
      ...stands
        .slice(0, 8)
        .map((s, i) => patch(s.id, { at: { xMm: spots[i]?.x ?? 0, yMm: spots[i]?.y ?? 0 } })),
      patch('fx-10', { use, unit }),
      patch('plan', { paper: scale === undefined ? { sheet, landscape } : { sheet, landscape, scale } }),
    ],
  });
};

describe('any drawing', () => {
  it('comes out the same whatever was drawn before, with a place or a count for every unit', () => {
    fc.assert(
      fc.property(shaken, fc.constantFrom(24, 48, 100, 192), (shake, nominalScale) => {
        const plan = shakenPlan(shake);
        const ask = { floorId: 'fl-1', setupId: 'su-1', nominalScale };
        const a = drawFloor(plan, ask);
        drawFloor(base, ask);
        expect(JSON.stringify(drawFloor(plan, ask).items)).toBe(JSON.stringify(a.items));
        expect(a.labels.full + a.labels.numberOnly.length + a.labels.leftOut.length).toBe(14);
        for (const i of a.items) for (const v of Object.values(i.box)) expect(Number.isFinite(v)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  it('makes papers on which no text touches another and all is inside the sheet', () => {
    fc.assert(
      fc.property(shaken, (shake) => {
        const plan = shakenPlan(shake);
        const set = paperSet(plan, assess(plan, { revision: 1 }), {
          revision: 'A',
          date: '',
          programVersion: '0',
        });
        for (const page of set.pages) {
          expect(touchingTexts(page), page.title).toEqual([]);
          for (const t of textsOf(page)) {
            const w = textWidthMm(t.text, t.capMm, t.weight);
            const left = t.xMm - (t.align === 'left' ? 0 : t.align === 'center' ? w / 2 : w);
            if (t.rotationDeg) continue;
            expect(left, t.text).toBeGreaterThan(0);
            expect(left + w, t.text).toBeLessThan(page.widthMm);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});

describe('any text', () => {
  const cap = fc.constantFrom(1.8, 2.5, 5);
  const weight = fc.constantFrom('regular' as const, 'semibold' as const);
  const width = fc.integer({ min: 4, max: 120 });

  it('fits its width once fitted or wrapped, and loses no word in wrapping', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 300 }),
        cap,
        weight,
        width,
        (raw, capMm, w, widthMm) => {
          const text = showable(raw).text;
          const fitted = fitText(text, capMm, w, widthMm);
          if (fitted !== '…') expect(textWidthMm(fitted, capMm, w)).toBeLessThanOrEqual(widthMm + 1e-9);
          const lines = wrapText(text, capMm, w, widthMm);
          for (const line of lines) {
            if ([...line].length > 1) expect(textWidthMm(line, capMm, w)).toBeLessThanOrEqual(widthMm + 1e-9);
          }
          expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
        },
      ),
    );
  });

  it('can be read back from CSV as it was, but for the apostrophe before formulas', () => {
    const parse = (csv: string): string[] => {
      const cells: string[] = [];
      const rest = csv.slice(csv.indexOf('\r\n') + 2, -2);
      for (const m of rest.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,"]*))/g))
        cells.push(m[1]?.replaceAll('""', '"') ?? m[2] ?? '');
      return cells;
    };
    fc.assert(
      fc.property(fc.string(), fc.string(), (a, b) => {
        const guard = (s: string): string => (/^[=+\-@\t\r]/.test(s) ? `'${s}` : s);
        const csv = listToCsv({ name: 'x', head: ['p', 'q'], rows: [[`k${a}`, b]] });
        expect(parse(csv)).toEqual([`k${a}`, guard(b)]);
      }),
    );
  });
});

describe('any hatch', () => {
  it('of a convex shape stays in it and covers its area', () => {
    const spot = fc.record({ x: fc.integer({ min: -50, max: 50 }), y: fc.integer({ min: -50, max: 50 }) });
    fc.assert(
      fc.property(spot, spot, spot, fc.integer({ min: -90, max: 90 }), (a, b, c, deg) => {
        const area = Math.abs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)) / 2;
        fc.pre(area > 50);
        const lines = hatchLines([['M', a.x, a.y], ['L', b.x, b.y], ['L', c.x, c.y], ['Z']], deg, 0.25);
        const total = lines.reduce((s, [p, q]) => s + Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm), 0) * 0.25;
        const around =
          Math.hypot(a.x - b.x, a.y - b.y) +
          Math.hypot(b.x - c.x, b.y - c.y) +
          Math.hypot(c.x - a.x, c.y - a.y);
        expect(Math.abs(total - area)).toBeLessThan(around * 0.25);
      }),
    );
  });
});
