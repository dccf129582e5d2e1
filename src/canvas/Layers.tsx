import { memo } from 'react';
import { Layer } from 'react-konva/lib/ReactKonvaCore';
import type { DrawingLayer } from '../drawing/display-list.ts';
import { ringFor } from '../editor/handles.ts';
import { OPTIONS } from '../editor/options.ts';
import type { Scene } from '../editor/scene.ts';
import type { Session } from '../editor/session.ts';
import { Grid } from './Grid.tsx';
import { Item, PaintedItem } from './Item.tsx';
import { OverlayPaint } from './OverlayPaint.tsx';
import type { Palette } from './palette.ts';
import { useSession } from './use-session.ts';
import { ViewFurniture } from './ViewFurniture.tsx';

export interface LayerProps {
  readonly session: Session;
  readonly scene: Scene;
  readonly palette: Palette;
}

/** Attributes that make a layer's units floor millimetres. */
const useFloorUnits = (session: Session) => {
  const camera = useSession(session, (s) => s.camera);
  const view = useSession(session, (s) => s.viewport);
  return {
    x: view.widthPx / 2 - camera.center.xMm * camera.pxPerMm,
    y: view.heightPx / 2 - camera.center.yMm * camera.pxPerMm,
    scaleX: camera.pxPerMm,
    scaleY: camera.pxPerMm,
  };
};

const BACKGROUND: readonly DrawingLayer[] = ['underlay', 'architecture', 'set'];
const SMALL: readonly DrawingLayer[] = ['labels', 'dimensions'];

/** Apart from its layer, which renders at every step of the camera. */
const Items = memo(
  ({ session, scene, palette, shows }: LayerProps & { readonly shows: (layer: DrawingLayer) => boolean }) => {
    const items = useSession(session, () => scene.visible());
    const scale = scene.list()?.nominalScale ?? 50;
    return items
      .filter((i) => shows(i.layer))
      .map((i) => (
        <Item key={i.key} session={session} scene={scene} item={i} palette={palette} scale={scale} />
      ));
  },
);

const isBackground = (l: DrawingLayer): boolean => BACKGROUND.includes(l);
const isPlan = (l: DrawingLayer): boolean => !BACKGROUND.includes(l);
const isPlanFarOff = (l: DrawingLayer): boolean => isPlan(l) && !SMALL.includes(l);

/** Ground, grid, walls and set. */
export const BackgroundLayer = memo((props: LayerProps) => (
  <Layer listening={false} {...useFloorUnits(props.session)}>
    <Grid session={props.session} palette={props.palette} />
    <Items {...props} shows={isBackground} />
  </Layer>
));

/** Gear, stands, cables, beams, dimensions and labels. */
export const PlanLayer = memo((props: LayerProps) => {
  const near = useSession(props.session, (s) => s.camera.pxPerMm >= OPTIONS.labelMinPxPerMm);
  return (
    <Layer listening={false} {...useFloorUnits(props.session)}>
      <Items {...props} shows={near ? isPlan : isPlanFarOff} />
    </Layer>
  );
});

/** What moves under the hand, and the signs of selection. */
export const OverlayLayer = memo(
  ({ session, scene, palette, coarse }: LayerProps & { readonly coarse: boolean }) => {
    const items = useSession(session, () => scene.preview());
    const overlay = useSession(session, (s) => s.overlay);
    const selection = useSession(session, (s) => s.selection);
    const camera = useSession(session, (s) => s.camera);
    const readOnly = useSession(session, (s) => s.readOnly);
    const shown = useSession(session, () => scene.previewPlan());
    const ring = overlay.marquee ? undefined : ringFor(shown, { selection, camera, readOnly });
    const scale = scene.list()?.nominalScale ?? 50;
    return (
      <Layer listening={false} {...useFloorUnits(session)}>
        {items.map(({ item, dxMm, dyMm }) => (
          <PaintedItem
            key={item.key}
            item={item}
            palette={palette}
            scale={scale}
            selected={selection.has(item.recordId)}
            x={dxMm}
            y={dyMm}
          />
        ))}
        <OverlayPaint overlay={overlay} ring={ring} palette={palette} coarse={coarse} />
      </Layer>
    );
  },
);

/** Scale bar and north arrow. */
export const FurnitureLayer = memo(({ session, palette }: Omit<LayerProps, 'scene'>) => {
  useSession(session, (s) => s.camera);
  useSession(session, (s) => s.viewport);
  useSession(session, (s) => s.plan.records.get('plan'));
  useSession(session, (s) => (s.floorId ? s.plan.records.get(s.floorId) : undefined));
  return (
    <Layer listening={false}>
      <ViewFurniture session={session} palette={palette} />
    </Layer>
  );
});
