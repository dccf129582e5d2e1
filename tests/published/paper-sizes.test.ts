import { describe, expect, it } from 'vitest';
import { WEIGHT } from '../../src/drawing/prims.ts';
import { PAPER_COLORS } from '../../src/output/colors.ts';
import { PT_PER_MM } from '../../src/output/pdf-writer.ts';
import { frameOf, TITLE_WIDTH_MM } from '../../src/papers/frame.ts';
import { paperSet } from '../../src/papers/paper-set.ts';
import { SHEET_IDS, scalesFor, scaleText, sheetOf } from '../../src/papers/sheets.ts';
import { assess } from '../../src/report/assess.ts';
import { textsOf } from '../support/page-texts.ts';
import { samplePlan } from '../support/sample-plan.ts';

const sheet = (id: string, landscape = true) => {
  const s = sheetOf(id, landscape);
  if (!s) throw new Error(`no sheet ${id}`);
  return s;
};

describe('ISO 216:2007, A series', () => {
  // Section 3: A0 has an area of 1 m² and sides in the ratio 1 : √2; each next size is the one before halved across its
  // long side, rounded down to the millimetre.
  it('follows from one square metre and √2 by halving', () => {
    let long = Math.round(1000 * 2 ** 0.25);
    let short = Math.round(1000 / 2 ** 0.25);
    for (const id of ['A0', 'A1', 'A2', 'A3', 'A4']) {
      expect([sheet(id).widthMm, sheet(id).heightMm], id).toEqual([long, short]);
      [long, short] = [short, Math.floor(long / 2)];
    }
  });

  it('keeps the ratio √2 within the millimetre', () => {
    for (const id of ['A0', 'A1', 'A2', 'A3', 'A4'])
      expect(Math.abs(sheet(id).heightMm * Math.SQRT2 - sheet(id).widthMm)).toBeLessThan(1);
  });
});

describe('North American sheets', () => {
  // ASME Y14.1: A is 8½ × 11 in; each next letter doubles the short side, the long side of one is the short of the next.
  it('of the engineering series double from 8½ × 11 in', () => {
    let [short, long] = [8.5, 11];
    for (const id of ['ANSI A', 'ANSI B', 'ANSI C', 'ANSI D', 'ANSI E']) {
      expect(sheet(id).heightMm / 25.4, id).toBeCloseTo(short, 3);
      expect(sheet(id).widthMm / 25.4, id).toBeCloseTo(long, 3);
      [short, long] = [long, short * 2];
    }
  });

  // Architectural series: A is 9 × 12 in, doubled likewise (sizes B and D as printed by sheet makers; A, C, E from memory).
  it('of the architectural series double from 9 × 12 in', () => {
    let [short, long] = [9, 12];
    for (const id of ['ARCH A', 'ARCH B', 'ARCH C', 'ARCH D', 'ARCH E']) {
      expect(sheet(id).heightMm / 25.4, id).toBeCloseTo(short, 3);
      expect(sheet(id).widthMm / 25.4, id).toBeCloseTo(long, 3);
      [short, long] = [long, short * 2];
    }
  });

  it('have E1 as 30 × 42 in, which is no doubling (common practice)', () => {
    expect(
      [sheet('ARCH E1').heightMm / 25.4, sheet('ARCH E1').widthMm / 25.4].map((v) => Number(v.toFixed(3))),
    ).toEqual([30, 42]);
  });
});

describe('PDF points', () => {
  // ISO 32000-1, 8.3.2.3: the default unit is 1/72 in. Sizes in points as printed in printers' tables.
  it.each([
    ['A4', 841.9, 595.3],
    ['A3', 1190.6, 841.9],
    ['ANSI B', 1224, 792],
    ['ARCH D', 2592, 1728],
  ])('%s is %d × %d pt', (id, w, h) => {
    expect(sheet(id).widthMm * PT_PER_MM).toBeCloseTo(w, 1);
    expect(sheet(id).heightMm * PT_PER_MM).toBeCloseTo(h, 1);
  });
});

describe('ISO 5457:1999, sheet layout', () => {
  // Clause 4.3: border 20 mm at the left, 10 mm on the other sides (clause text from memory; 20/10 as taught from it).
  it.each([
    ['A0', true, 1159, 821],
    ['A1', true, 811, 574],
    ['A2', true, 564, 400],
    ['A3', true, 390, 277],
    ['A4', false, 180, 277],
  ] as const)('leaves %s (landscape %s) a drawing space of %d × %d mm', (id, landscape, w, h) => {
    const f = frameOf(sheet(id, landscape));
    expect([f.w, f.h]).toEqual([w, h]);
  });

  it('has a title block that fits the drawing space of A4 portrait (ISO 7200:2004: at most 180 mm)', () => {
    expect(TITLE_WIDTH_MM).toBe(frameOf(sheet('A4', false)).w);
  });
});

describe('ISO 7200:2004, title block', () => {
  // Tables 1 to 3: data fields that must be there (M) and those that may (O). From memory; the field names as printed there.
  const plan = samplePlan();
  const set = paperSet(plan, assess(plan, { revision: 0 }), {
    revision: 'A',
    date: '2026-03-09',
    programVersion: '0',
    sheets: ['plot'],
  });
  const texts = set.pages.flatMap(textsOf).map((t) => t.text);

  it.each([
    ['Legal owner'],
    ['Identification number'],
    ['Date of issue'],
    ['Sheet'],
    ['Title'],
    ['Approved (name, signature, date)'],
    ['Created by'],
    ['Document type'],
  ])('has the mandatory field %s', (caption) => {
    expect(texts).toContain(caption);
  });

  it.each([
    ['Revision'],
    ['Language'],
    ['Responsible department'],
    ['Technical reference'],
    ['Document status'],
    ['Paper'],
  ])('has the optional field %s', (caption) => {
    expect(texts).toContain(caption);
  });

  it('counts sheets: its own number and how many there are', () => {
    expect(texts).toContain('E-1, 1 of 1');
  });
});

describe('scales', () => {
  // An inch-foot scale is 12 in over the inches on paper.
  it.each([
    ['3″ = 1′-0″', 3],
    ['1½″ = 1′-0″', 1.5],
    ['1″ = 1′-0″', 1],
    ['¾″ = 1′-0″', 3 / 4],
    ['½″ = 1′-0″', 1 / 2],
    ['⅜″ = 1′-0″', 3 / 8],
    ['¼″ = 1′-0″', 1 / 4],
    ['3/16″ = 1′-0″', 3 / 16],
    ['⅛″ = 1′-0″', 1 / 8],
    ['3/32″ = 1′-0″', 3 / 32],
    ['1/16″ = 1′-0″', 1 / 16],
  ])('%s draws a foot as %d in', (text, inches) => {
    expect(scaleText(12 / inches, 'imperial')).toBe(text);
  });

  it('of ISO 5455:1979 step through 1, 2 and 5 by tens', () => {
    const own = scalesFor('metric').map((s) => s.ratio);
    for (const decade of [10, 100]) for (const k of [1, 2, 5]) expect(own).toContain(k * decade);
  });

  // Worked figures: 30 ft at ¼ in to the foot is 7½ in; 10 m at 1:50 is 200 mm.
  it('give 190.5 mm for 30 ft at ¼″ and 200 mm for 10 m at 1:50', () => {
    const quarter = scalesFor('imperial').find((s) => s.text === '¼″ = 1′-0″');
    const fifty = scalesFor('metric').find((s) => s.text === '1:50');
    expect((30 * 304.8) / (quarter?.ratio ?? 0)).toBeCloseTo(190.5, 9);
    expect(10_000 / (fifty?.ratio ?? 0)).toBeCloseTo(200, 9);
  });

  it('go from large to small, each once', () => {
    for (const units of ['imperial', 'metric'] as const) {
      const r = scalesFor(units).map((s) => s.ratio);
      expect([...new Set(r)].sort((a, b) => a - b)).toEqual(r);
    }
    expect(SHEET_IDS.length).toBe(16);
  });
});

describe('line widths', () => {
  // ISO 128-2 (128-20): 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1 mm, each √2 times the one before.
  it('are all of the standard series', () => {
    const series = Array.from({ length: 7 }, (_, i) => 0.125 * Math.SQRT2 ** i);
    for (const w of Object.values(WEIGHT)) {
      const nearest = Math.min(...series.map((s) => Math.abs(s - w) / s));
      expect(nearest, String(w)).toBeLessThan(0.05);
    }
  });
});

describe('contrast on white paper', () => {
  // WCAG 2.2, relative luminance and contrast ratio (definitions of the recommendation): 4.5 : 1 for text, 3 : 1 for
  // graphics that carry meaning. Check value from it: #767676 on white is 4.54.
  const linear = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
  const onWhite = (hex: string): number => {
    const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) =>
      linear(Number.parseInt(hex.slice(i, i + 2), 16) / 255),
    );
    return 1.05 / (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05);
  };

  it('is computed as published', () => {
    expect(onWhite('#767676')).toBeCloseTo(4.54, 2);
    expect(onWhite('#0072b2')).toBeCloseTo(5.19, 2);
  });

  it.each(['ink', 'ink-soft', 'aim', 'dimension', 'stop', 'warn', 'note', 'accent'] as const)(
    'of the text colour %s is 4.5 or more',
    (role) => {
      expect(onWhite(PAPER_COLORS[role])).toBeGreaterThanOrEqual(4.5);
    },
  );

  it.each([
    'wall',
    'gear',
    'cable',
    'feeder',
    'data',
    'glass',
    'set-piece',
    'beam',
    'stand',
    'ink-faint',
  ] as const)('of the line colour %s is 3 or more', (role) => {
    expect(onWhite(PAPER_COLORS[role])).toBeGreaterThanOrEqual(3);
  });
});
