import { describe, expect, it } from 'vitest';
import type { Primitive } from '../../src/drawing/display-list.ts';
import { drawFloor } from '../../src/drawing/draw-floor.ts';
import { listToCsv } from '../../src/output/csv.ts';
import { cableList, gearList, patchList } from '../../src/papers/lists.ts';
import { samplePlan } from '../support/sample-plan.ts';

const round = (n: number): number => Math.round(n);

/** A primitive in few words, so that a change of the drawing reads well in a diff. */
const words = (p: Primitive): string => {
  if (p.kind === 'text') return `text “${p.text}” at ${round(p.xMm)},${round(p.yMm)} ${p.align}`;
  if (p.kind === 'symbol') {
    return `symbol ${p.symbolId} ${round(p.lengthMm)}×${round(p.widthMm)} at ${round(p.xMm)},${round(p.yMm)} turned ${round(p.rotationDeg)}${p.broken ? ' broken' : ''}`;
  }
  if (p.kind === 'circle')
    return `circle ${round(p.rMm * 10) / 10} (${p.space}) at ${round(p.xMm)},${round(p.yMm)}`;
  if (p.kind === 'image') return `image ${p.blobId} at ${round(p.xMm)},${round(p.yMm)}`;
  const d = p.d
    .map(
      (c) =>
        `${c[0]}${c
          .slice(1)
          .map((n) => round(Number(n)))
          .join(' ')}`,
    )
    .join('');
  const fill = p.fill ? `${p.fill.hatch ? 'hatched' : 'filled'} ${p.fill.role}` : '';
  return `path ${[p.stroke ? `${p.stroke.role} ${p.stroke.weightMm}` : '', fill].filter(Boolean).join(', ')} ${d}`;
};

describe('the sample floor', () => {
  it('is drawn as accepted', async () => {
    const list = drawFloor(samplePlan(), { floorId: 'fl-1', setupId: 'su-1', nominalScale: 48 });
    const text = list.items
      .map((i) => [`${i.layer} ${i.key}`, ...i.primitives.map((p) => `  ${words(p)}`)].join('\n'))
      .join('\n');
    await expect(`${text}\n`).toMatchFileSnapshot('papers-out/sample-floor.txt');
  });

  it('gives the lists as accepted', async () => {
    for (const list of [cableList(samplePlan()), gearList(samplePlan()), patchList(samplePlan())])
      await expect(listToCsv(list)).toMatchFileSnapshot(`papers-out/${list.name}.csv`);
  });
});
