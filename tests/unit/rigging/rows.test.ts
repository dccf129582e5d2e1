import { describe, expect, it } from 'vitest';
import { checkCommand } from '../../../src/cli/check.ts';
import { frameRows, riggingRows, standRows } from '../../../src/engines/rigging/index.ts';
import { cautions } from '../../../src/report/cautions.ts';
import { RiggingRig } from '../../support/rigging-rig.ts';

const rig = () => {
  const b = new RiggingRig({ windMps: 5 });
  b.standKind('c-stand', { massKg: 6.2, legCircleMm: 950, ratedLoadKg: 10, name: 'C-stand' });
  b.riggingKind('arm', {
    what: 'arm',
    massKg: 0.5,
    reachMm: 1000,
    fits: ['grip-head'],
    receives: ['pin-16'],
  });
  b.riggingKind('lift', {
    what: 'lift',
    people: 2,
    ratedLoadKg: 230,
    windLimitMps: 12.5,
    reachMm: 9000,
    heightMaxMm: 12_000,
    operator: 'trained people',
  });
  b.gripKind('flag', { areaM2: 1.5 });
  const s = b.stand('c-stand', { heightMm: 2500, bags: 1 });
  const lamp = b.on(s.id, 3, { accessories: ['arm'], arm: { overLeg: true, outMm: 800 } });
  const f = b.stand('c-stand');
  const g = b.grip('flag', { supports: [f.id] });
  const l = b.hung('lift', { people: 1, heightMm: 8000, reachMm: 6000, operator: '' });
  return { plan: b.plan(), s, f, g, l, lamp };
};

describe('rows for lists', () => {
  it('standRows: load, rating, use, factor, bags and legs of every stand', () => {
    const { plan, s, f, lamp } = rig();
    const rows = standRows(plan);
    expect(rows.map((r) => r.id).sort()).toEqual([s.id, f.id].sort());
    const row = rows.find((r) => r.id === s.id);
    expect(row).toMatchObject({
      kind: 'C-stand',
      fixtureIds: [lamp.id],
      armMm: 800,
      bags: 1,
      legs: 3,
      ratedKg: 10,
    });
    expect(row?.loadKg).toBeCloseTo(3.5, 9);
    expect(row?.usePct).toBeCloseTo(35, 9);
    expect(row?.tipFactor).toBeGreaterThan(1);
  });

  it('riggingRows and frameRows: people, wind limits, forces', () => {
    const { plan, l, g } = rig();
    expect(riggingRows(plan).find((r) => r.id === l.id)).toMatchObject({
      people: 1,
      peopleKg: 120,
      loadKg: 120,
      ratedKg: 230,
      windLimitMps: 12.5,
      cableUpMm: 10_000,
      operator: '',
      operatorAsked: 'trained people',
    });
    const frame = frameRows(plan).find((r) => r.id === g.id);
    expect(frame?.windN).toBeCloseTo(0.613 * 25 * 1.8 * 1.5, 9);
    expect(frame?.table.map((t) => t.speedMps)).toEqual([3, 5, 8, 10, 15]);
  });

  it('check prints them, and gives them as JSON with null for what is not known', () => {
    const { plan, s } = rig();
    const text = checkCommand(plan, { json: false }).text;
    expect(text).toContain('Stands and rigging');
    expect(text).toMatch(
      /3\.5 kg \(7\.7 lb\) of 10 kg \(22 lb\) \(35 %\) on C-stand at 8′-2½″; tip factor \d/,
    );
    expect(text).toContain('overhead work is for qualified riggers');
    const json = JSON.parse(checkCommand(plan, { json: true }).text) as {
      rigging: {
        stands: { id: string; usePct: number; tipFactor: number | null }[];
        carriers: unknown[];
        frames: { guyN: number | null }[];
      };
    };
    expect(json.rigging.stands.find((r) => r.id === s.id)?.usePct).toBeCloseTo(35, 6);
    expect(json.rigging.carriers).toHaveLength(1);
    expect(json.rigging.frames[0]?.guyN).toBeNull();
  });

  it('a standing caution says who decides overhead', () => {
    const text = cautions('europe').find((c) => c.id === 'overhead')?.text;
    expect(text).toContain('Overhead work is for qualified riggers');
    expect(text).toContain('the rigger');
  });
});
