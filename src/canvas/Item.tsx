import type { Context } from 'konva/lib/Context';
import { memo } from 'react';
import { Shape } from 'react-konva/lib/ReactKonvaCore';
import type { DisplayItem } from '../drawing/display-list.ts';
import type { Scene } from '../editor/scene.ts';
import type { Session } from '../editor/session.ts';
import { type Look, paintItem } from './painter.ts';
import type { Palette } from './palette.ts';
import { useSession } from './use-session.ts';

interface Props {
  readonly session: Session;
  readonly scene: Scene;
  readonly item: DisplayItem;
  readonly palette: Palette;
  readonly scale: number;
}

/** One item as one node. It renders again when the item, the scheme, or its own selection changes. */
export const Item = memo(({ session, scene, item, palette, scale }: Props) => {
  const selected = useSession(session, (s) => s.selection.has(item.recordId));
  const hidden = useSession(session, () => scene.hidden().has(item.key));
  return <PaintedItem item={item} palette={palette} scale={scale} selected={selected} visible={!hidden} />;
});

/** One item with no ties to the session. */
export const PaintedItem = ({
  item,
  palette,
  scale,
  selected,
  visible = true,
  x = 0,
  y = 0,
}: Omit<Props, 'session' | 'scene'> & {
  readonly selected: boolean;
  readonly visible?: boolean;
  readonly x?: number;
  readonly y?: number;
}) => (
  <Shape
    x={x}
    y={y}
    visible={visible}
    listening={false}
    perfectDrawEnabled={false}
    sceneFunc={(context: Context, shape) => {
      const pxPerMm = shape.getLayer()?.scaleX() ?? 1;
      const look: Look = { palette, scale, pxPerMm, selected };
      paintItem(context._context, look, item);
    }}
  />
);
