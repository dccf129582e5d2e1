import { describe, expect, test } from 'vitest';
import { withLayer } from '../../../src/editor/floor-view.ts';
import { recalled, seenNow, withLook } from '../../../src/editor/views.ts';
import { addView, removeView, renameView, retakeView, viewsOf } from '../../../src/plan/edits/views.ts';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { floorRig } from '../../support/floor.ts';

const rigWithView = () => {
  const rig = floorRig();
  const s = () => rig.session.getState();
  rig.session.set({
    camera: { center: { xMm: 1000, yMm: 2000 }, pxPerMm: 0.2 },
    floorView: {
      ...withLayer(withLayer(s().floorView, 'beams', { shown: false }), 'architecture', { locked: true }),
      labelFields: ['channel', 'address'],
    },
  });
  const seen = seenNow(s());
  if (!seen) throw new Error('nothing seen');
  const { changes, view } = addView(s().plan, { ...seen, name: 'Control' }, rig.session.newId);
  rig.session.commit('Save view', changes);
  return { rig, s, view };
};

describe('saved views', () => {
  test('what was seen comes back: place, zoom, layers and label fields, in the file too', () => {
    const { rig, s, view } = rigWithView();
    const was = s();
    rig.session.set({
      camera: { center: { xMm: 0, yMm: 0 }, pxPerMm: 0.02 },
      floorView: { ...withLayer(s().floorView, 'beams', { shown: true }), labelFields: ['kind'] },
    });
    const read = readPlan(serialisePlan(s().plan));
    if (!read.ok) throw new Error(read.error.what);
    const kept = viewsOf(read.value.plan)[0];
    if (!kept) throw new Error('no view in the file');
    expect(kept).toEqual(view);
    rig.session.set(recalled(s(), kept));
    expect(s().camera).toEqual(was.camera);
    expect(s().floorView.layers).toEqual(was.floorView.layers);
    expect(s().floorView.labelFields).toEqual(['channel', 'address']);
  });

  test('names stay apart; a view is renamed, taken anew and deleted', () => {
    const { rig, s, view } = rigWithView();
    const seen = seenNow(s());
    if (!seen) throw new Error('nothing seen');
    const second = addView(s().plan, { ...seen, name: 'Control' }, rig.session.newId);
    expect(second.view.name).toBe('Control 2');
    rig.session.commit('Rename', renameView(s().plan, view.id, 'Wide'));
    rig.session.set({ camera: { center: { xMm: 5, yMm: 5 }, pxPerMm: 0.1 } });
    const now = seenNow(s());
    if (!now) throw new Error('nothing seen');
    rig.session.commit('Retake', retakeView(s().plan, view.id, now));
    expect(viewsOf(s().plan)).toEqual([{ ...now, id: view.id, type: 'view', name: 'Wide' }]);
    rig.session.commit('Delete', removeView(s().plan, view.id));
    expect(viewsOf(s().plan)).toEqual([]);
  });

  test('a remembered look that cannot be read changes only what it can', () => {
    const { s } = rigWithView();
    const view = s().floorView;
    expect(withLook(view, 'nonsense')).toBe(view);
    const half = withLook(view, {
      layers: { beams: { shown: 'yes', faded: true } },
      labelFields: ['gel', 7],
    });
    expect(half.layers.beams).toEqual({ shown: false, faded: true, locked: false });
    expect(half.labelFields).toEqual(['gel']);
  });
});
