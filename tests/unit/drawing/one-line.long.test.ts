import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ENDLESS, oneLineSheets, type Room } from '../../../src/drawing/one-line/index.ts';
import { readPlan } from '../../../src/plan/file.ts';
import { type Plan, setupsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { crossings, touching } from '../../support/one-line-laws.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const folder = new URL('../../../demo-sets/', import.meta.url);
const files = readdirSync(folder).filter((f) => f.endsWith('.plan.json'));
const planOf = (file: string): Plan => {
  const read = readPlan(readFileSync(new URL(file, folder), 'utf8'), file);
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
};

const ROOMS: readonly (readonly [string, Room])[] = [
  ['ANSI B', { widthMm: 392, heightMm: 193 }],
  ['A4 upright', { widthMm: 170, heightMm: 211 }],
  ['A1', { widthMm: 801, heightMm: 508 }],
  ['a screen', ENDLESS],
];

describe.each(files)('the one-line diagram of %s', (file) => {
  const plan = planOf(file);
  const assessment = assess(plan, { revision: 0 });
  const fed = assessment.entities.filter((e) => e.sourceId !== undefined);

  it.each(ROOMS)('on %s: nothing touches, nothing crosses, nothing leaves the room', (_, room) => {
    for (const setup of setupsOf(plan)) {
      for (const sheet of oneLineSheets(plan, assessment, setup.id, room)) {
        expect(touching(sheet)).toEqual([]);
        expect(crossings(sheet)).toEqual([]);
        expect(sheet.widthMm).toBeLessThanOrEqual(room.widthMm);
        expect(sheet.heightMm).toBeLessThanOrEqual(room.heightMm);
        for (const i of sheet.items) {
          expect(i.box.minX).toBeGreaterThanOrEqual(-0.5);
          expect(i.box.maxX).toBeLessThanOrEqual(Math.min(room.widthMm, sheet.widthMm) + 0.5);
          expect(i.box.maxY).toBeLessThanOrEqual(Math.min(room.heightMm, sheet.heightMm) + 0.5);
        }
      }
    }
  });

  it.each(ROOMS)('on %s: every load, run, box and used way is drawn once', (_, room) => {
    const keys = oneLineSheets(plan, assessment, undefined, room).flatMap((s) => s.items.map((i) => i.key));
    const counts = new Map<string, number>();
    for (const k of keys) counts.set(k, (counts.get(k) ?? 0) + 1);
    for (const e of fed.filter((x) => x.what === 'load' || x.what === 'cable'))
      expect(counts.get(e.key), e.label).toBe(1);
    for (const e of fed.filter((x) => x.what === 'way'))
      if (fed.some((x) => x.parentKey === e.key)) expect(counts.get(`${e.key}#tap`), e.label).toBe(1);
  });

  it('names the sheet at both ends of what goes on elsewhere', () => {
    for (const [, room] of ROOMS) {
      const sheets = oneLineSheets(plan, assessment, undefined, room);
      for (const [i, s] of sheets.entries()) {
        for (const r of s.references) expect(sheets[r.toSheet]).toBeDefined();
        const flags = s.items.filter((x) => x.key.endsWith('#flag')).map((x) => x.key.replace('#flag', ''));
        for (const key of flags) {
          const to = sheets.findIndex((x) => x.items.some((y) => y.key === `${key}#origin`));
          expect(to, key).toBeGreaterThanOrEqual(0);
          expect(s.references.some((r) => r.toSheet === to)).toBe(true);
          expect(sheets[to]?.references.some((r) => r.toSheet === i)).toBe(true);
        }
      }
    }
  });
});

const wordsOf = (plan: Plan): readonly string[] =>
  oneLineSheets(plan, assess(plan, { revision: 0 }), undefined, ENDLESS).flatMap((s) =>
    s.items.flatMap((i) => i.primitives.flatMap((p) => (p.kind === 'text' ? [p.text] : []))),
  );

describe('what the one-line diagram says', () => {
  const house = (voltsV: number | undefined): Plan => {
    const b = new PlanBuilder();
    b.sourceKind('panel', {
      what: 'house-panel',
      system: '120',
      ways: [{ id: '7', label: '7', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
      outlets: [{ id: 'o', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: '7' }],
    });
    b.cableKind('lead', { plug: 'stage-pin-20', socket: 'stage-pin-20', conductor: 'awg:12' });
    b.fixtureKind('lamp', { wattsW: 1000 });
    const s = b.source('panel', voltsV === undefined ? {} : { voltsV });
    const f = b.fixture('lamp');
    b.cable('lead', [s.id, 'o'], [f.id, 'in'], 10_000);
    return b.plan();
  };

  it('leaves a box to write house volts in, and gives none', () => {
    const words = wordsOf(house(undefined));
    expect(words.some((w) => w.includes('measure'))).toBe(true);
    expect(words.some((w) => /^1\d\d\.\d V$/.test(w))).toBe(false);
    expect(wordsOf(house(118)).some((w) => w === '118.0 V')).toBe(true);
  });

  it('gives this setup, worst and limit at each way', () => {
    const words = wordsOf(house(118));
    expect(words).toContain('16 A limit');
    expect(words.filter((w) => /^\d+\.\d A this setup$/.test(w))).toHaveLength(1);
    expect(words).toContain('A worst');
  });

  it('leaves grounding and bonding to the qualified person, and draws no earth', () => {
    const words = planOf('street.plan.json');
    expect(wordsOf(words).join(' ')).toContain('Grounding and bonding: as the qualified person directs');
    // Where the trade says earth, the diagram does.
    const stage = wordsOf(planOf('stage.plan.json')).join(' ');
    expect(stage).toContain('Earthing and bonding: as the qualified person directs');
    expect(stage).not.toContain('Grounding');
  });
});
