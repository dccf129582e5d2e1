import Konva from 'konva/lib/Core';
import { paintItem } from '../../../src/canvas/painter.ts';
import { PALETTES } from '../../../src/canvas/palette.ts';
import type { DisplayItem } from '../../../src/drawing/display-list.ts';
import type { Scene } from '../../../src/editor/scene.ts';
import type { Session } from '../../../src/editor/session.ts';

const BACKGROUND = ['underlay', 'architecture', 'set'];

/**
 * The same primitives as nodes of a plain scene, one each, in the same three layers and in the same view; nothing that
 * is not in the view. A press on the dragged record lifts its nodes to the top layer, and moves change their position;
 * with the middle button the layers move.
 */
export const bareScene = (root: HTMLDivElement, session: Session, scene: Scene, dragged: string): void => {
  const { camera, viewport } = session.getState();
  const stage = new Konva.Stage({
    container: root,
    width: viewport.widthPx,
    height: viewport.heightPx,
    listening: false,
  });
  const at = {
    x: viewport.widthPx / 2 - camera.center.xMm * camera.pxPerMm,
    y: viewport.heightPx / 2 - camera.center.yMm * camera.pxPerMm,
    scaleX: camera.pxPerMm,
    scaleY: camera.pxPerMm,
    listening: false,
  };
  const layers = [new Konva.Layer(at), new Konva.Layer(at), new Konva.Layer(at)] as const;
  stage.add(...layers);
  const look = {
    palette: PALETTES.bench,
    scale: scene.list()?.nominalScale ?? 50,
    pxPerMm: camera.pxPerMm,
    selected: false,
  };
  const moving: Konva.Shape[] = [];
  const add = (item: DisplayItem, layer: Konva.Layer): void => {
    for (const primitive of item.primitives) {
      const one = { ...item, primitives: [primitive] };
      const shape = new Konva.Shape({
        listening: false,
        perfectDrawEnabled: false,
        sceneFunc: (c) => paintItem(c._context, look, one),
      });
      layer.add(shape);
      if (item.recordId === dragged) moving.push(shape);
    }
  };
  for (const item of scene.visible()) add(item, BACKGROUND.includes(item.layer) ? layers[0] : layers[1]);

  let held: { button: number; x: number; y: number } | undefined;
  root.addEventListener('pointerdown', (e) => {
    held = { button: e.button, x: e.clientX, y: e.clientY };
    if (e.button === 0) for (const shape of moving) shape.moveTo(layers[2]);
  });
  root.addEventListener('pointerup', () => {
    held = undefined;
  });
  root.addEventListener('wheel', (e) => {
    e.preventDefault();
    const by = Math.exp(-e.deltaY * 0.0016);
    for (const layer of layers) {
      const p = layer.position();
      layer.position({ x: e.clientX + (p.x - e.clientX) * by, y: e.clientY + (p.y - e.clientY) * by });
      layer.scale({ x: layer.scaleX() * by, y: layer.scaleY() * by });
    }
  });
  root.addEventListener('pointermove', (e) => {
    if (!held) return;
    const dx = e.clientX - held.x;
    const dy = e.clientY - held.y;
    if (held.button === 0)
      for (const shape of moving) shape.position({ x: dx / camera.pxPerMm, y: dy / camera.pxPerMm });
    else for (const layer of layers) layer.position({ x: at.x + dx, y: at.y + dy });
  });
};
