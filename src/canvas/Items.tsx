import type { Context } from 'konva/lib/Context';
import type { Shape as ShapeNode } from 'konva/lib/Shape';
import { useEffect, useRef } from 'react';
import { Shape } from 'react-konva/lib/ReactKonvaCore';
import type { DrawingLayer } from '../drawing/display-list.ts';
import { viewBox } from '../editor/fit.ts';
import { OPTIONS } from '../editor/options.ts';
import type { Scene } from '../editor/scene.ts';
import type { Session } from '../editor/session.ts';
import { boxesMeet } from '../kernel/geometry.ts';
import { type Look, paintItem } from './painter.ts';
import type { Palette } from './palette.ts';
import { onPicture } from './pictures.ts';

interface Props {
  readonly session: Session;
  readonly scene: Scene;
  readonly palette: Palette;
  readonly shows: (layer: DrawingLayer) => boolean;
}

const SMALL: readonly DrawingLayer[] = ['labels', 'dimensions'];
const FADED = 0.3;

const sameKeys = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean => {
  if (a === b) return true;
  if (a.size !== b.size) return false;
  for (const k of a) if (!b.has(k)) return false;
  return true;
};

/**
 * The items of some layers, painted as one node straight from the display list: a node per item would cost more than
 * its painting. Drawn again only when the items in view, what a drag hides, the selection or the layers are others.
 */
export const Items = ({ session, scene, palette, shows }: Props) => {
  const node = useRef<ShapeNode>(null);
  useEffect(() => {
    const look = () => {
      const { selection, floorView } = session.getState();
      return { items: scene.visible(), hidden: scene.hidden(), selection, layers: floorView.layers };
    };
    let was = look();
    return session.subscribe(() => {
      const now = look();
      if (
        now.items !== was.items ||
        now.selection !== was.selection ||
        now.layers !== was.layers ||
        !sameKeys(now.hidden, was.hidden)
      )
        node.current?.getLayer()?.batchDraw();
      was = now;
    });
  }, [session, scene]);
  useEffect(() => onPicture(() => node.current?.getLayer()?.batchDraw()), []);
  return (
    <Shape
      ref={node}
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context: Context) => {
        const { camera, viewport, selection, floorView } = session.getState();
        const view = viewBox(camera, viewport);
        const near = camera.pxPerMm >= OPTIONS.labelMinPxPerMm;
        const hidden = scene.hidden();
        const base = { palette, scale: scene.list()?.nominalScale ?? 50, pxPerMm: camera.pxPerMm };
        for (const item of scene.visible()) {
          const layer = floorView.layers[item.layer];
          if (!shows(item.layer) || !layer.shown || hidden.has(item.key) || !boxesMeet(item.box, view))
            continue;
          if (!near && SMALL.includes(item.layer)) continue;
          const look: Look = {
            ...base,
            selected: selection.has(item.recordId),
            alpha: layer.faded ? FADED : 1,
          };
          paintItem(context._context, look, item);
        }
      }}
    />
  );
};

/** What moves under the hand. */
export const MovingItems = ({ session, scene, palette }: Omit<Props, 'shows'>) => {
  const node = useRef<ShapeNode>(null);
  useEffect(() => {
    let was = scene.preview();
    return session.subscribe(() => {
      const now = scene.preview();
      if (now !== was) node.current?.getLayer()?.batchDraw();
      was = now;
    });
  }, [session, scene]);
  return (
    <Shape
      ref={node}
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context: Context) => {
        const { camera, selection, floorView } = session.getState();
        const c = context._context;
        for (const { item, dxMm, dyMm } of scene.preview()) {
          if (!floorView.layers[item.layer].shown) continue;
          c.save();
          c.translate(dxMm, dyMm);
          paintItem(
            c,
            {
              palette,
              scale: scene.list()?.nominalScale ?? 50,
              pxPerMm: camera.pxPerMm,
              selected: selection.has(item.recordId),
            },
            item,
          );
          c.restore();
        }
      }}
    />
  );
};
