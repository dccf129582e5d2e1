import { memo } from 'react';
import { Layer } from 'react-konva/lib/ReactKonvaCore';
import type { DrawingLayer } from '../drawing/display-list.ts';
import type { Scene } from '../editor/scene.ts';
import type { Session } from '../editor/session.ts';
import { Grid } from './Grid.tsx';
import { Items, MovingItems } from './Items.tsx';
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

const BACKGROUND: readonly DrawingLayer[] = ['underlay', 'coverage', 'architecture', 'set'];
const isBackground = (l: DrawingLayer): boolean => BACKGROUND.includes(l);
const isPlan = (l: DrawingLayer): boolean => !BACKGROUND.includes(l);

/** Ground, grid, walls and set. */
export const BackgroundLayer = memo((props: LayerProps) => (
  <Layer listening={false} {...useFloorUnits(props.session)}>
    <Grid session={props.session} palette={props.palette} />
    <Items {...props} shows={isBackground} />
  </Layer>
));

/** Gear, stands, cables, beams, dimensions and labels. */
export const PlanLayer = memo((props: LayerProps) => (
  <Layer listening={false} {...useFloorUnits(props.session)}>
    <Items {...props} shows={isPlan} />
  </Layer>
));

/** What moves under the hand, and the signs of selection. */
export const OverlayLayer = memo((props: LayerProps & { readonly coarse: boolean }) => (
  <Layer listening={false} {...useFloorUnits(props.session)}>
    <MovingItems session={props.session} scene={props.scene} palette={props.palette} />
    <OverlayPaint {...props} />
  </Layer>
));

/** Scale bar and north arrow. */
export const FurnitureLayer = memo(({ session, palette }: Omit<LayerProps, 'scene'>) => {
  useSession(session, (s) => s.camera);
  useSession(session, (s) => s.viewport);
  useSession(session, (s) => s.plan.records.get('plan'));
  useSession(session, (s) => s.floorView.sun);
  useSession(session, (s) => (s.floorId ? s.plan.records.get(s.floorId) : undefined));
  return (
    <Layer listening={false}>
      <ViewFurniture session={session} palette={palette} />
    </Layer>
  );
});
