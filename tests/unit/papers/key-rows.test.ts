import { describe, expect, it } from 'vitest';
import { bookOf } from '../../../src/editor/book.ts';
import { placeThere } from '../../../src/editor/placing.ts';
import { gearBook } from '../../../src/gear/index.ts';
import { keyRows } from '../../../src/papers/key-rows.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { smallPlan } from '../../support/small-plan.ts';

const book = bookOf(gearBook('europe'));
let n = 0;
const placed = (plan: Plan, ...slugs: readonly string[]): Plan =>
  slugs.reduce((p, slug) => {
    const made = placeThere(
      p,
      book,
      { slug, floorId: 'floor-1', at: { xMm: 0, yMm: 0 }, facingDeg: 0 },
      (prefix) => `${prefix}-${++n}`,
    );
    if (!made.ok) throw new Error(made.error.what);
    return applyChanges(p, made.value.changes);
  }, plan);

describe('the rows of the key', () => {
  const plan = placed(
    smallPlan('Key', 0),
    'led-panel-60x60',
    'tungsten-fresnel-5kw',
    'led-panel-60x60',
    'discharge-fresnel-575w',
    'c-stand-40',
    'box-63-12x16',
    'dimmer-line-2kw',
    'node-2',
    'camera-dolly',
    'sofa-two',
  );
  const rows = keyRows(plan, 'floor-1', 'metric');
  const of = (symbolId: string) => rows.find((r) => r.symbolId === symbolId);

  it('hold every symbol on the floor, lights first, the most power first', () => {
    expect(rows.filter((r) => r.light).map((r) => r.symbolId)).toEqual([
      'tungsten-fresnel-large',
      'discharge-fresnel',
      'led-panel-2x2',
    ]);
    for (const symbol of ['node', 'camera-dolly', 'sofa-two', 'c-stand'])
      expect(of(symbol), symbol).toBeDefined();
    expect(rows.some((r) => r.symbolId.startsWith('ballast'))).toBe(true);
    expect(rows.some((r) => r.symbolId.startsWith('box'))).toBe(true);
    expect(rows.some((r) => r.symbolId.startsWith('dimmer'))).toBe(true);
  });

  it('count them and give the input watts of one, with the ballast’s loss for a discharge head', () => {
    expect(of('led-panel-2x2')).toMatchObject({ count: 2, eachW: 300, mount: '28 mm spigot' });
    // A 575 W lamp on its ballast takes more than 575 W.
    expect(of('discharge-fresnel')?.eachW).toBeGreaterThan(575);
    expect(of('node')?.eachW).toBeGreaterThan(0);
    expect(of('sofa-two')?.eachW).toBeUndefined();
    expect(of('c-stand')).toMatchObject({ circle: true, count: 1 });
  });

  it('say mounts in inches on a plan in feet', () => {
    expect(keyRows(plan, 'floor-1', 'imperial').find((r) => r.symbolId === 'led-panel-2x2')?.mount).toBe(
      '1-1/8 in spigot',
    );
  });

  it('are of one floor, or of all', () => {
    expect(keyRows(plan, 'another', 'metric')).toEqual([]);
    expect(keyRows(plan, undefined, 'metric')).toHaveLength(rows.length);
  });
});
