import { describe, expect, it } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { findKind } from '../../../src/gear/index.ts';
import { cableList } from '../../../src/papers/lists.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { gradientParts } from '../../../src/plan/edits/parts.ts';
import { tickSteps } from '../../../src/plan/edits/ticks.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { LineRig } from '../../support/line-rig.ts';
import { textsOf, touchingTexts } from '../../support/page-texts.ts';

const pages = (plan: Plan, sheet: string) =>
  paperSet(plan, assess(plan, { revision: 0 }), {
    revision: 'A',
    date: '2027-03-09',
    programVersion: '0',
    sheets: [sheet],
  }).pages;

const words = (plan: Plan, sheet: string): readonly string[] =>
  pages(plan, sheet).flatMap((p) => textsOf(p).map((t) => t.text));

const rig = () => {
  const r = new LineRig();
  r.device('D1', 'desk-2', { 'out-1': 1 });
  r.device('S1', 'split-data-4');
  const units = [r.unit(4), r.unit(8)];
  r.line('L1', 'd-D1', 'out-1', [{ id: 'd-S1' }], { terminated: false });
  r.line('L2', 'd-S1', 'out-1', units);
  return { r, units };
};

describe('the sheet of data lines', () => {
  it('has each line stop by stop with its cables and terminator, ports, and the network', () => {
    const { r } = rig();
    const list = words(r.plan(), 'lines');
    for (const w of ['L1  U1', 'L2  U1', 'Unit 1', 'Unit 2', 'terminator', '239.255.0.1'])
      expect(list, w).toContain(w);
    expect(list.some((t) => t.includes('no terminator'))).toBe(true);
    for (const p of pages(r.plan(), 'lines')) expect(touchingTexts(p)).toEqual([]);
  });

  it('is left out without lines and control gear', () => {
    const r = new LineRig();
    r.unit(1);
    expect(pages(r.plan(), 'lines')).toEqual([]);
  });
});

describe('the cable list', () => {
  it('counts the cables of data lines under their kind', () => {
    const { r } = rig();
    const kind = findKind('europe', 'data-cable-5-pin');
    if (!kind) throw new Error('no data cable');
    r.b.put(kind);
    const l = r.b.records.get('l-L2');
    if (l?.type !== 'line') throw new Error('no line');
    r.b.put({ ...l, kindId: kind.id });
    const rows = cableList(r.plan()).rows;
    expect(rows.filter((x) => x[0] === kind.name).map((x) => [x[2], x[3]])).toEqual([[5, 2]]);
    expect(rows.some((x) => String(x[0]).includes('kind not said'))).toBe(true);
  });
});

describe('the set-up list', () => {
  it('tells what is still to do and who did what is done', () => {
    const { r, units } = rig();
    const id = units[0]?.id ?? '';
    const plan = applyChanges(
      r.plan(),
      tickSteps(r.plan(), id, ['reset', 'mode', 'address'], 'Robin', '2027-03-09T08:00:00Z'),
    );
    const list = words(plan, 'setup-list');
    expect(list).toContain('Robin');
    expect(list).toContain('all');
    expect(list.some((t) => t.includes('Identify'))).toBe(true);
    for (const p of pages(plan, 'setup-list')) expect(touchingTexts(p)).toEqual([]);
  });
});

describe('the sheet of part levels', () => {
  it('has a row for each unit with parts in each setup, and is left out without any', () => {
    const r = new LineRig();
    r.b.fixtureKind('px', {}, { style: 'pixel-bar', modes: [{ id: 'm', name: 'm', slots: 24, parts: 8 }] });
    const f = r.b.fixture('px', { id: 'px1', unit: '77' });
    r.b.put({ id: 's', type: 'setup', order: 1, name: 'Night', scene: '12' });
    expect(pages(r.plan(), 'parts')).toEqual([]);
    const made = gradientParts(r.plan(), 's', f.id, { levelPct: 0, color: '#ff0000' }, { levelPct: 70 });
    if (!made.ok) throw new Error(made.error.what);
    const list = words(applyChanges(r.plan(), made.value), 'parts');
    for (const w of ['12 Night', '77', '35 %', '70', '0']) expect(list, w).toContain(w);
  });
});

describe('data lines on the drawing', () => {
  it('are dashed on a layer of their own, with label and universe, and hidden when told so', () => {
    const { r } = rig();
    const draw = () => drawFloor(r.plan(), { floorId: 'floor', setupId: undefined, nominalScale: 50 });
    const items = draw().items.filter((i) => i.layer === 'data');
    expect(items.map((i) => i.recordId)).toEqual(['l-L2']);
    const [path] = items[0]?.primitives ?? [];
    expect(path?.kind === 'path' && path.stroke).toMatchObject({ role: 'data' });
    expect(path?.kind === 'path' && path.stroke?.dashMm?.length).toBe(2);
    const texts = draw()
      .items.flatMap((i) => i.primitives)
      .flatMap((p) => (p.kind === 'text' ? [p.text] : []));
    expect(texts).toContain('L2 · U1');
    const l = r.b.records.get('l-L2');
    if (l?.type === 'line') r.b.put({ ...l, hidden: true });
    expect(draw().items.filter((i) => i.layer === 'data')).toEqual([]);
  });
});
