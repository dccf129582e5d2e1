import { describe, expect, test } from 'vitest';
import { createPlaceTool } from '../../../src/editor/tools/place.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { serialisePlan } from '../../../src/plan/file.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { addUnit, click, drag, floorRig, pointer } from '../../support/floor.ts';

const placing = (slug: string) => {
  const rig = floorRig();
  rig.session.set({ tool: 'place', placing: { kindSlug: slug } });
  return { rig, tool: createPlaceTool(), state: () => rig.session.getState() };
};

describe('place tool', () => {
  test('a click places with the next unit number, at the spot, as one undo step', () => {
    const { rig, tool, state } = placing('led-panel-60x60');
    addUnit(rig, 'led-spot-60w', 500, 500);
    rig.session.set({ tool: 'place', placing: { kindSlug: 'led-panel-60x60' } });
    click(rig, tool, 2222, 1333, { alt: true });
    const placed = recordsOf(state().plan, 'fixture').find((f) => f.unit === '2');
    expect(placed?.at).toEqual({ xMm: 2222, yMm: 1333 });
    expect([...state().selection]).toEqual([placed?.id]);
    expect(state().undoStack.map((t) => t.label)).toEqual(['Place unit 2']);
    expect(state().tool).toBe('place');
    click(rig, tool, 4000, 3000);
    expect(
      recordsOf(state().plan, 'fixture')
        .map((f) => f.unit)
        .sort(),
    ).toEqual(['1', '2', '3']);
  });

  test('the ghost is shown and never reaches the plan', () => {
    const { rig, tool, state } = placing('led-panel-60x60');
    const before = serialisePlan(state().plan);
    tool.onPointerMove(rig.ctx, pointer(rig.session, 2000, 2000));
    expect(state().preview?.added.some((r) => r.type === 'fixture')).toBe(true);
    expect(serialisePlan(state().plan)).toBe(before);
    tool.onPointerCancel(rig.ctx);
    expect(state().preview).toBeUndefined();
  });

  test('dragging from the spot turns the unit to the pointer; brackets turn it too', () => {
    const { rig, tool, state } = placing('led-panel-60x60');
    drag(
      rig,
      tool,
      [
        [2000, 2000],
        [2000, 2600],
        [2000, 3000],
      ],
      { alt: true },
    );
    expect(recordsOf(state().plan, 'fixture')[0]?.aim).toMatchObject({ facingDeg: 90 });
    tool.onKey(rig.ctx, ']');
    click(rig, tool, 4000, 2000);
    expect(recordsOf(state().plan, 'fixture').find((f) => f.unit === '2')?.aim).toMatchObject({
      facingDeg: 105,
    });
  });

  test('a discharge head comes with its ballast', () => {
    const { rig, tool, state } = placing('discharge-par-1200w');
    click(rig, tool, 2000, 2000);
    const head = recordsOf(state().plan, 'fixture')[0];
    expect(recordsOf(state().plan, 'ballast').map((b) => b.fixtureId)).toEqual([head?.id]);
  });

  test('boxes, sources, stands, furniture and marks are placed too', () => {
    for (const [slug, type] of [
      ['quad-box-20', 'box'],
      ['generator-45kw-3ph', 'source'],
      ['c-stand-40', 'stand'],
      ['table-desk', 'setPiece'],
      ['camera-dolly', 'mark'],
      ['mark:talent', 'mark'],
    ] as const) {
      const { rig, tool, state } = placing(slug);
      click(rig, tool, 2000, 2000);
      expect(recordsOf(state().plan, type), slug).toHaveLength(1);
    }
  });

  test('what cannot stand on the floor is refused in words', () => {
    for (const slug of ['cord-12-3', 'ballast-575w', 'no-such-kind']) {
      const { rig, tool, state } = placing(slug);
      click(rig, tool, 2000, 2000);
      expect(state().undoStack, slug).toHaveLength(0);
      expect(state().message.length, slug).toBeGreaterThan(20);
    }
  });

  test('Escape ends placing and takes the ghost away', () => {
    const { rig, state } = placing('led-panel-60x60');
    const box = createToolbox(rig.ctx);
    box.pointerMove(pointer(rig.session, 2000, 2000));
    expect(box.key('Escape')).toBe(true);
    expect(state()).toMatchObject({ tool: 'select', placing: undefined, preview: undefined });
    box.close();
  });
});
