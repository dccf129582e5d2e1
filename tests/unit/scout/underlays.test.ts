import { beforeEach, describe, expect, test } from 'vitest';
import { drawFloor, floorExtents } from '../../../src/drawing/draw-floor.ts';
import { createScaleTool } from '../../../src/editor/tools/scale.ts';
import { createSelectTool } from '../../../src/editor/tools/select.ts';
import { distanceMm, point } from '../../../src/kernel/geometry.ts';
import { blobOf } from '../../../src/plan/blobs.ts';
import { removeRecords, rotateRecords } from '../../../src/plan/edits/arrange.ts';
import { addPhoto } from '../../../src/plan/edits/photos.ts';
import {
  addUnderlay,
  replaceUnderlay,
  restackUnderlay,
  scaleUnderlay,
  underlayCentre,
  underlayPoint,
  underlaysOn,
} from '../../../src/plan/edits/underlays.ts';
import { lineWorkBlob } from '../../../src/plan/line-work.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import type { Underlay } from '../../../src/plan/records/index.ts';
import { click, drag, type FloorRig, floorRig } from '../../support/floor.ts';
import { pngOf } from '../../support/pictures.ts';
import { need } from '../../support/storage-world.ts';

let rig: FloorRig;
beforeEach(() => {
  rig = floorRig(undefined, 'metric');
});

const plan = (): Plan => rig.session.getState().plan;
const scan = (name = 'scan', w = 400, h = 300) => ({
  name,
  what: 'image' as const,
  blob: blobOf(
    pngOf(w / 10, h / 10, (x) => [x, name.length, 0]),
    'image/png',
  ),
  widthUnits: w,
  heightUnits: h,
});
const lay = (source: Parameters<typeof addUnderlay>[1]['source'] = scan()): Underlay => {
  const what = { source, floorId: rig.floorId, centre: point(3000, 2500), guessWidthMm: 4000 };
  const made = need(addUnderlay(plan(), what, rig.session.newId));
  rig.session.commit('Lay', made.changes);
  return now(made.underlay.id);
};
const now = (id: string): Underlay => {
  const u = recordOf(plan(), 'underlay', id);
  if (!u) throw new Error('the underlay is gone');
  return u;
};

describe('an underlay', () => {
  test('lies with its middle where it is wanted, of the guessed width, not yet to scale; line work is locked', () => {
    const u = lay();
    expect(underlayCentre(u)).toEqual(point(3000, 2500));
    expect(u).toMatchObject({ mmPerUnit: 10, scaled: false });
    const lines = lay({
      name: 'barn',
      what: 'lines',
      blob: lineWorkBlob({ layers: [{ name: 'W', paths: [[0, 0, 100, 50]] }], texts: [] }),
      widthUnits: 100,
      heightUnits: 50,
      mmPerUnit: 25.4,
    });
    expect(lines).toMatchObject({ mmPerUnit: 25.4, scaled: true, locked: true });
    expect(lines.order).toBeGreaterThan(u.order);
  });

  test('is scaled from one known length: the stretch is that long, and its first spot stays', () => {
    const u = { ...lay(), rotationDeg: 30 };
    rig.add({ added: [], updated: [{ from: now(u.id), to: u }], removed: [] });
    const [a, b] = [underlayPoint(u, 50, 60), underlayPoint(u, 350, 200)];
    rig.session.commit('Scale', need(scaleUnderlay(plan(), u.id, a, b, 7620)));
    const after = now(u.id);
    const [a2, b2] = [underlayPoint(after, 50, 60), underlayPoint(after, 350, 200)];
    expect(distanceMm(a2, b2)).toBeCloseTo(7620, 6);
    expect(distanceMm(a, a2)).toBeCloseTo(0, 6);
    expect(after).toMatchObject({ scaled: true, rotationDeg: 30 });
    for (const [p, q, mm] of [
      [a, a, 100],
      [a, b, 0],
      [a, b, -5],
    ] as const) {
      const r = scaleUnderlay(plan(), u.id, p, q, mm);
      expect(r.ok ? '' : r.error.what).not.toBe('');
    }
  });

  test('turns about its middle', () => {
    const u = lay();
    const before = underlayCentre(u);
    rig.session.commit('Turn', rotateRecords(plan(), new Set([u.id]), 72));
    expect(now(u.id).rotationDeg).toBeCloseTo(72, 9);
    expect(distanceMm(underlayCentre(now(u.id)), before)).toBeLessThan(1e-6);
  });

  test('several have an order that can be changed', () => {
    const [a, b, c] = [lay(scan('a')), lay(scan('bb')), lay(scan('ccc'))];
    const order = () => underlaysOn(plan(), rig.floorId).map((u) => u.id);
    expect(order()).toEqual([a.id, b.id, c.id]);
    rig.session.commit('Raise', restackUnderlay(plan(), a.id, 1));
    expect(order()).toEqual([b.id, a.id, c.id]);
    rig.session.commit('Lower', restackUnderlay(plan(), b.id, -1));
    expect(order()).toEqual([b.id, a.id, c.id]);
  });

  test('replaced, it covers the same width, and the old picture goes with one step that undo brings back', () => {
    const u = lay();
    rig.session.commit('Scale', need(scaleUnderlay(plan(), u.id, point(0, 0), point(1000, 0), 2000)));
    const old = now(u.id);
    rig.session.commit('Replace', need(replaceUnderlay(plan(), u.id, scan('better', 800, 600))));
    const next = now(u.id);
    expect(next.widthUnits * next.mmPerUnit).toBeCloseTo(old.widthUnits * old.mmPerUnit, 6);
    expect(next.scaled).toBe(true);
    expect(recordsOf(plan(), 'blob').map((b) => b.id)).toEqual([next.blobId]);
    rig.session.undo();
    expect(recordsOf(plan(), 'blob').map((b) => b.id)).toEqual([old.blobId]);
  });

  test('deleted, it takes its picture along unless something else shows it', () => {
    const [a, b] = [lay(), lay()];
    expect(recordsOf(plan(), 'blob')).toHaveLength(1);
    rig.session.commit('Delete', removeRecords(plan(), new Set([a.id])));
    expect(recordsOf(plan(), 'blob')).toHaveLength(1);
    rig.session.commit('Delete', removeRecords(plan(), new Set([b.id])));
    expect(recordsOf(plan(), 'blob')).toHaveLength(0);
    rig.session.undo();
    expect(recordOf(plan(), 'blob', b.blobId)).toBeDefined();
  });

  test('is drawn below everything, faded, and does not count for the extents of a floor with walls', () => {
    const before = floorExtents(plan(), rig.floorId);
    const u = lay(scan('wide', 40000, 30000));
    expect(floorExtents(plan(), rig.floorId)).toEqual(before);
    const list = drawFloor(plan(), { floorId: rig.floorId, setupId: undefined, nominalScale: 50 });
    expect(list.items[0]).toMatchObject({ recordId: u.id, layer: 'underlay' });
    expect(list.items[0]?.primitives[0]).toMatchObject({ kind: 'image', opacity: 0.5, widthMm: 4000 });
  });
});

describe('the scale tool', () => {
  const keys = (tool: ReturnType<typeof createScaleTool>, text: string): void => {
    for (const k of text) tool.onKey(rig.ctx, k);
  };

  test('two presses, a typed measure and Enter', () => {
    const u = lay();
    const tool = createScaleTool();
    click(rig, tool, 2000, 2000);
    click(rig, tool, 4000, 2000);
    keys(tool, '5.5');
    expect(rig.session.getState().overlay.entry?.text).toBe('5.5');
    tool.onKey(rig.ctx, 'Enter');
    expect(now(u.id).mmPerUnit).toBeCloseTo(10 * (5500 / 2000), 9);
    expect(rig.session.getState()).toMatchObject({ tool: 'select', selection: new Set([u.id]) });
    expect(rig.session.getState().undoStack.at(-1)?.label).toBe('Scale scan');
  });

  test('banana is told and costs nothing; Escape goes back one step at a time', () => {
    const u = lay();
    const tool = createScaleTool();
    click(rig, tool, 2000, 2000);
    click(rig, tool, 4000, 2000);
    keys(tool, '5banana');
    tool.onKey(rig.ctx, 'Enter');
    expect(rig.session.getState().message).toContain('is not a length');
    expect(now(u.id).scaled).toBe(false);
    expect([1, 2, 3].map(() => tool.onKey(rig.ctx, 'Escape'))).toEqual([true, true, true]);
    expect(tool.onKey(rig.ctx, 'Escape')).toBe(false);
    expect(rig.session.getState().overlay.measures ?? []).toEqual([]);
  });

  test('without an underlay it says so', () => {
    click(rig, createScaleTool(), 2000, 2000);
    expect(rig.session.getState().message).toContain('no underlay');
  });
});

describe('by hand', () => {
  test('a selected underlay is dragged; one that is locked or not selected is not', () => {
    const u = lay();
    const tool = createSelectTool();
    const path = [
      [2500, 2200],
      [3000, 2200],
      [3500, 2200],
    ] as const;
    const alt = { ctrl: true };
    drag(rig, tool, path);
    expect(now(u.id).at).toEqual(u.at);
    rig.session.set({ selection: new Set([u.id]) });
    drag(rig, tool, path, alt);
    expect(now(u.id).at.xMm - u.at.xMm).toBeCloseTo(1000, 6);
    rig.add({ added: [], updated: [{ from: now(u.id), to: { ...now(u.id), locked: true } }], removed: [] });
    rig.session.set({ selection: new Set([u.id]) });
    const was = now(u.id).at;
    drag(rig, tool, path, alt);
    expect(now(u.id).at).toEqual(was);
  });
});

describe('a photo', () => {
  test('gets a label of its own, hangs on a note, and lets go when it is deleted', () => {
    const note = {
      id: 'note',
      type: 'mark' as const,
      floorId: rig.floorId,
      what: 'note' as const,
      at: point(0, 0),
      heightMm: 0,
      facingDeg: 0,
      name: 'Panel',
    };
    rig.session.commit('Note', { added: [note], updated: [], removed: [] });
    const blob = blobOf(pngOf(16, 12), 'image/png');
    const what = {
      floorId: rig.floorId,
      at: point(500, 0),
      blob,
      widthPx: 16,
      heightPx: 12,
      caption: 'Panel open',
    };
    const ids = [1, 2].map(() => {
      const made = need(addPhoto(plan(), { ...what, noteId: 'note' }, rig.session.newId));
      rig.session.commit('Pin', made.changes);
      return made.photo.id;
    });
    expect(recordsOf(plan(), 'photo').map((p) => p.label)).toEqual(['PH1', 'PH2']);
    expect(recordsOf(plan(), 'blob')).toHaveLength(1);
    expect(recordOf(plan(), 'mark', 'note')?.photoIds).toEqual(ids);
    rig.session.commit('Delete', removeRecords(plan(), new Set(ids)));
    expect(recordOf(plan(), 'mark', 'note')?.photoIds).toBeUndefined();
    expect(recordsOf(plan(), 'blob')).toHaveLength(0);
  });
});
