import { describe, expect, test } from 'vitest';
import { toFloor, toScreen } from '../../../src/editor/camera.ts';
import { command } from '../../../src/editor/commands/index.ts';
import { fitBox } from '../../../src/editor/fit.ts';
import { pinch, wheelZoom } from '../../../src/editor/gestures.ts';
import { OPTIONS, scaleBar } from '../../../src/editor/options.ts';
import { scaleForZoom } from '../../../src/editor/scale-choice.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import { addUnit, floorRig, pointer } from '../../support/floor.ts';

const view = { widthPx: 1000, heightPx: 800 };
const camera = { center: { xMm: 3000, yMm: 2500 }, pxPerMm: 0.1 };

describe('the view', () => {
  test('the wheel zooms about the pointer', () => {
    const under = toFloor(camera, view, 200, 700);
    for (const deltaY of [-120, 60, 400]) {
      const next = wheelZoom(camera, view, { x: 200, y: 700, deltaY, deltaMode: 0, ctrl: false });
      expect(next.pxPerMm > camera.pxPerMm).toBe(deltaY < 0);
      const at = toScreen(next, view, under);
      expect(at.x).toBeCloseTo(200, 6);
      expect(at.y).toBeCloseTo(700, 6);
    }
  });

  test('two fingers keep the floor under them', () => {
    const was = [
      { x: 300, y: 300 },
      { x: 500, y: 300 },
    ] as const;
    const now = [
      { x: 250, y: 350 },
      { x: 650, y: 350 },
    ] as const;
    const next = pinch(camera, view, was, now);
    expect(next.pxPerMm).toBeCloseTo(0.2, 9);
    was.forEach((finger, i) => {
      const at = toScreen(next, view, toFloor(camera, view, finger.x, finger.y));
      expect(at.x).toBeCloseTo(now[i]?.x ?? 0, 6);
      expect(at.y).toBeCloseTo(now[i]?.y ?? 0, 6);
    });
  });

  test('fitting leaves the margin free and never magnifies a small thing without end', () => {
    const box = { minX: 0, minY: 0, maxX: 8000, maxY: 2000 };
    const fit = fitBox(box, view);
    expect(fit && toScreen(fit, view, { xMm: 0, yMm: 0 }).x).toBeCloseTo(OPTIONS.fitToolsPx, 6);
    expect(fitBox({ minX: 0, minY: 0, maxX: 10, maxY: 10 }, view)?.pxPerMm).toBe(OPTIONS.fitMaxPxPerMm);
    expect(fitBox(undefined, view)).toBeUndefined();
    expect(fitBox(box, { widthPx: 0, heightPx: 0 })).toBeUndefined();
  });

  test('fit all brings every thing into view', () => {
    const rig = floorRig();
    const far = addUnit(rig, 'led-spot-60w', 20_000, -6000);
    rig.session.set({ viewport: view });
    command('fit-all').perform(rig);
    const s = rig.session.getState();
    const unit = s.plan.records.get(far);
    const at = unit?.type === 'fixture' ? toScreen(s.camera, view, unit.at) : { x: -1, y: -1 };
    expect(at.x > 0 && at.x < view.widthPx && at.y > 0 && at.y < view.heightPx).toBe(true);
  });

  test('text keeps its least size at every zoom the scales reach', () => {
    for (const units of ['imperial', 'metric'] as const) {
      for (let px = 0.02; px < 0.3; px *= 1.07) {
        expect(scaleForZoom(px, units) * px).toBeGreaterThanOrEqual(OPTIONS.paperMinPxPerMm - 1e-9);
      }
    }
  });

  test('the nominal scale does not flicker around its step', () => {
    const at = OPTIONS.paperMinPxPerMm / 48;
    expect(scaleForZoom(at * 1.01, 'imperial')).toBe(48);
    expect(scaleForZoom(at * 0.99, 'imperial')).toBe(64);
    for (const last of [48, 64])
      for (const k of [0.95, 1.05]) expect(scaleForZoom(at * k, 'imperial', last)).toBe(last);
    expect(scaleForZoom(at * 0.8, 'imperial', 48)).toBe(64);
  });

  test('the scale bar is round and fits the view', () => {
    expect(scaleBar(0.0656, 'imperial')).toEqual({ lengthMm: 3048, half: '5', full: '10 ft' });
    expect(scaleBar(0.08, 'metric')).toEqual({ lengthMm: 2000, half: '1', full: '2 m' });
  });
});

describe('toolbox', () => {
  test('a change of tool ends what the last one had begun and says what the new one waits for', () => {
    const rig = floorRig();
    addUnit(rig, 'led-spot-60w', 2000, 2000);
    const box = createToolbox(rig.ctx);
    box.pointerDown(pointer(rig.session, 2000, 2000));
    box.pointerMove(pointer(rig.session, 2600, 2000));
    expect(rig.session.getState().preview).toBeDefined();
    command('tool-cable').perform(rig);
    expect(rig.session.getState().preview).toBeUndefined();
    expect(rig.session.getState().message).toContain('takes the power');
    box.close();
  });

  test('the pointer is lent to moving the view without changing the tool', () => {
    const rig = floorRig();
    const box = createToolbox(rig.ctx);
    box.lend('pan');
    box.pointerDown(pointer(rig.session, 3000, 2500));
    box.pointerMove({ ...pointer(rig.session, 3000, 2500), x: 600, y: 400 });
    box.pointerUp({ ...pointer(rig.session, 3000, 2500), x: 600, y: 400 });
    box.lend(undefined);
    expect(rig.session.getState().camera.center.xMm).toBeCloseTo(2000, 6);
    expect(rig.session.getState().tool).toBe('select');
    expect(rig.session.getState().undoStack).toHaveLength(0);
    box.close();
  });
});
