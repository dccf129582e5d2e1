import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cornersFor } from '../../../src/editor/corners.ts';
import { pullCorner } from '../../../src/editor/pull.ts';
import { createLineTool } from '../../../src/editor/tools/line.ts';
import { needKind } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { parseUniverses, setPortUniverses } from '../../../src/plan/edits/devices.ts';
import {
  addLine,
  insertStop,
  letHop,
  moveStop,
  setHopRoute,
  setStart,
  setStops,
} from '../../../src/plan/edits/lines.ts';
import { placeDevice } from '../../../src/plan/edits/place.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { addUnit, click, floorRig, pointer } from '../../support/floor.ts';
import { LineRig } from '../../support/line-rig.ts';

const rigged = () => {
  const rig = floorRig();
  const state = () => rig.session.getState();
  const kind = needKind('north-america', 'desk-2', 'node');
  const made = placeDevice(state().plan, kind, rig.floorId, { xMm: 1000, yMm: 4000 }, rig.session.newId);
  rig.add(made.changes);
  const units = [1000, 2500, 4000].map((x) => addUnit(rig, 'led-panel-60x60', x, 1000));
  const tool = createLineTool();
  return { rig, tool, state, desk: made.device.id, units, lines: () => recordsOf(state().plan, 'line') };
};

describe('data line tool', () => {
  test('presses on things in order make one line, one undo step, ended by Enter', () => {
    const { rig, tool, state, desk, units, lines } = rigged();
    click(rig, tool, 1000, 4000);
    for (const x of [1000, 2500, 4000]) click(rig, tool, x, 1000);
    expect(state().preview).toBeDefined();
    expect(lines()).toHaveLength(0);
    expect(tool.onKey(rig.ctx, 'Enter')).toBe(true);
    expect(lines()).toMatchObject([{ label: 'L1', from: { recordId: desk, portId: 'out-1' }, stops: units }]);
    expect(state().undoStack).toHaveLength(1);
    expect(state().preview).toBeUndefined();
    rig.session.undo();
    expect(lines()).toHaveLength(0);
  });

  test('the next line takes the next free port, and wire goes before network', () => {
    const { rig, tool, lines } = rigged();
    for (const x of [1000, 2500]) {
      click(rig, tool, 1000, 4000);
      click(rig, tool, x, 1000);
      tool.onKey(rig.ctx, 'Enter');
    }
    expect(lines().map((l) => l.from.portId)).toEqual(['out-1', 'out-2']);
  });

  test('Backspace takes the last stop away, Escape leaves nothing', () => {
    const { rig, tool, state, lines } = rigged();
    click(rig, tool, 1000, 4000);
    click(rig, tool, 1000, 1000);
    click(rig, tool, 2500, 1000);
    tool.onKey(rig.ctx, 'Backspace');
    expect(state().message).toContain('1 stop');
    expect(tool.onKey(rig.ctx, 'Escape')).toBe(true);
    expect(lines()).toHaveLength(0);
    expect(state().preview).toBeUndefined();
  });

  test('a press on the last unit of a line goes on with it', () => {
    const { rig, tool, state, units, lines } = rigged();
    click(rig, tool, 1000, 4000);
    click(rig, tool, 1000, 1000);
    tool.onKey(rig.ctx, 'Enter');
    click(rig, tool, 1000, 1000);
    click(rig, tool, 2500, 1000);
    tool.onKey(rig.ctx, 'Enter');
    expect(lines().map((l) => l.stops)).toEqual([[units[0], units[1]]]);
    expect(state().undoStack).toHaveLength(2);
  });

  test('what takes no data, and what is on the line already, is refused in words', () => {
    const { rig, tool, state } = rigged();
    addUnit(rig, 'tungsten-fresnel-650w', 5000, 3000);
    click(rig, tool, 1000, 4000);
    click(rig, tool, 5000, 3000);
    expect(state().message).toContain('Nothing that takes data');
    click(rig, tool, 1000, 1000);
    click(rig, tool, 2500, 1000);
    click(rig, tool, 1000, 1000);
    expect(state().message).toContain('on the line already');
  });

  test('a stretch is pulled by hand, and found anew when it is let go', () => {
    const { rig, tool, state, lines } = rigged();
    click(rig, tool, 1000, 4000);
    click(rig, tool, 4000, 1000);
    tool.onKey(rig.ctx, 'Enter');
    const line = lines()[0];
    if (!line) throw new Error('no line');
    const [handle] = cornersFor(state().plan, state()).filter((h) => h.what === 'between');
    if (!handle) throw new Error('no handle');
    const pulled = pullCorner(state().plan, handle, { xMm: 5000, yMm: 4500 });
    if (!pulled.ok) throw new Error(pulled.error.what);
    rig.session.commit('Pull', pulled.value);
    expect(lines()[0]?.routes).toMatchObject([{ hop: 0 }]);
    rig.session.commit('Let', letHop(state().plan, line.id, 0));
    expect(lines()[0]?.routes).toEqual([]);
  });

  test('moving the pointer shows where the line would go and changes nothing', () => {
    const { rig, tool, state } = rigged();
    click(rig, tool, 1000, 4000);
    tool.onPointerMove(rig.ctx, pointer(rig.session, 2500, 1000));
    expect(state().overlay.rubber).toMatchObject({ fits: true, to: { xMm: 2500, yMm: 1000 } });
    expect(state().undoStack).toHaveLength(0);
  });
});

const lineOf = (n: number) => {
  const r = new LineRig();
  r.device('D1', 'desk-2', { 'out-1': 1 });
  const units = Array.from({ length: n }, (_, i) => r.unit(i));
  const line = r.line('L1', 'd-D1', 'out-1', units);
  return { r, line, units };
};

describe('edits of data lines', () => {
  test('a hop laid by hand stays with the two things it joins when the order changes', () => {
    const { r, line } = lineOf(4);
    const plan = applyChanges(r.plan(), setHopRoute(r.plan(), line.id, 2, [{ xMm: 1500, yMm: 900 }]));
    const moved = moveStop(plan, line.id, 0, 3);
    if (!moved.ok) throw new Error(moved.error.what);
    const after = recordOf(applyChanges(plan, moved.value), 'line', line.id);
    expect(after?.stops).toEqual(['f2', 'f3', 'f4', 'f1']);
    expect(after?.routes).toMatchObject([{ hop: 1, points: [{ xMm: 1500, yMm: 900 }] }]);
  });

  test('a line that loses its last stop goes; a thing cannot be on it twice', () => {
    const { r, line } = lineOf(1);
    const gone = setStops(r.plan(), line.id, []);
    expect(gone.ok && gone.value.removed).toHaveLength(1);
    expect(insertStop(r.plan(), line.id, 0, 'f1').ok).toBe(false);
    expect(addLine(r.plan(), { recordId: 'd-D1', portId: 'out-9' }, ['f1'], () => 'x').ok).toBe(false);
    expect(setStart(r.plan(), line.id, { recordId: 'f1', portId: 'through' }).ok).toBe(false);
  });

  test('moving stops keeps every one of them, whatever the moves', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.array(fc.tuple(fc.nat(7), fc.integer({ min: -9, max: 9 })), { maxLength: 12 }),
        (n, moves) => {
          const { r, line, units } = lineOf(n);
          let plan = r.plan();
          for (const [i, by] of moves) {
            const m = moveStop(plan, line.id, i % n, by);
            if (!m.ok) throw new Error(m.error.what);
            plan = applyChanges(plan, m.value);
          }
          const stops = recordOf(plan, 'line', line.id)?.stops ?? [];
          expect([...stops].sort()).toEqual(units.map((u) => u.id).sort());
        },
      ),
    );
  });

  test('universes of a port: typed as lists and ranges, added to the plan, refused where there is no such thing', () => {
    expect(parseUniverses('1, U2 5-7')).toEqual({ ok: true, value: [1, 2, 5, 6, 7] });
    expect(parseUniverses('')).toEqual({ ok: true, value: [] });
    for (const bad of ['x', '0', '64000', '7-5', '1.5']) expect(parseUniverses(bad).ok, bad).toBe(false);
    const { r } = lineOf(1);
    const set = setPortUniverses(r.plan(), 'd-D1', 'out-2', [9]);
    if (!set.ok) throw new Error(set.error.what);
    const after = applyChanges(r.plan(), set.value);
    expect(recordsOf(after, 'universe').some((u) => u.number === 9)).toBe(true);
    expect(recordOf(after, 'device', 'd-D1')?.ports.map((p) => p.portId)).toEqual(['out-1', 'out-2']);
    expect(setPortUniverses(r.plan(), 'd-D1', 'nowhere', [1]).ok).toBe(false);
    expect(setPortUniverses(r.plan(), 'd-D1', 'out-1', [64000]).ok).toBe(false);
  });
});
