import type { Context } from 'konva/lib/Context';
import { Shape } from 'react-konva/lib/ReactKonvaCore';
import type { SelectionRing } from '../editor/handles.ts';
import { OPTIONS } from '../editor/options.ts';
import type { Overlay } from '../editor/overlay.ts';
import type { Palette } from './palette.ts';

interface Props {
  readonly overlay: Overlay;
  readonly ring: SelectionRing | undefined;
  readonly palette: Palette;
  /** Fingers get larger handles. */
  readonly coarse: boolean;
}

/** Ring, handles, guides, marquee and rubber line, above everything. */
export const OverlayPaint = ({ overlay, ring, palette, coarse }: Props) => (
  <Shape
    listening={false}
    perfectDrawEnabled={false}
    sceneFunc={(context: Context, shape) => {
      const c = context._context;
      const px = 1 / (shape.getLayer()?.scaleX() ?? 1);
      c.setLineDash([]);
      guides(c, overlay, palette, px);
      rubber(c, overlay, palette, px);
      if (ring) paintRing(c, ring, palette, px, coarse ? OPTIONS.touchHandlePx : OPTIONS.handlePx);
      marquee(c, overlay, palette, px);
    }}
  />
);

const line = (
  c: CanvasRenderingContext2D,
  from: { xMm: number; yMm: number },
  to: { xMm: number; yMm: number },
): void => {
  c.beginPath();
  c.moveTo(from.xMm, from.yMm);
  c.lineTo(to.xMm, to.yMm);
  c.stroke();
};

const guides = (c: CanvasRenderingContext2D, o: Overlay, p: Palette, px: number): void => {
  c.strokeStyle = p.roles.accent;
  c.lineWidth = px;
  c.setLineDash([4 * px, 3 * px]);
  for (const g of o.guides) line(c, g.from, g.to);
  c.setLineDash([]);
};

const rubber = (c: CanvasRenderingContext2D, o: Overlay, p: Palette, px: number): void => {
  if (o.rubber) {
    const cable = o.rubber.what === 'cable';
    c.strokeStyle = cable && o.rubber.fits ? p.roles.cable : cable ? p.roles['ink-soft'] : p.roles.accent;
    c.lineWidth = (cable ? 2 : 1.2) * px;
    // A run that does not fit is broken as well as grey.
    c.setLineDash(cable && o.rubber.fits ? [] : [7 * px, 4 * px]);
    line(c, o.rubber.from, o.rubber.to);
    c.setLineDash([]);
  }
  if (o.target) {
    c.strokeStyle = p.roles.accent;
    c.lineWidth = 2 * px;
    c.beginPath();
    c.arc(o.target.xMm, o.target.yMm, 13 * px, 0, Math.PI * 2);
    c.stroke();
  }
};

const paintRing = (
  c: CanvasRenderingContext2D,
  ring: SelectionRing,
  p: Palette,
  px: number,
  handlePx: number,
): void => {
  c.strokeStyle = p.roles.accent;
  c.lineWidth = 1.4 * px;
  c.beginPath();
  c.arc(ring.center.xMm, ring.center.yMm, ring.radiusMm, 0, Math.PI * 2);
  c.stroke();
  for (const h of ring.handles) {
    c.fillStyle = p.ground;
    c.lineWidth = 1.8 * px;
    c.beginPath();
    if (h.what === 'aim') c.arc(h.at.xMm, h.at.yMm, handlePx * px, 0, Math.PI * 2);
    else {
      const r = handlePx * px * 0.85;
      c.rect(h.at.xMm - r, h.at.yMm - r, 2 * r, 2 * r);
    }
    c.fill();
    c.stroke();
  }
};

const marquee = (c: CanvasRenderingContext2D, o: Overlay, p: Palette, px: number): void => {
  if (!o.marquee) return;
  const { minX, minY, maxX, maxY } = o.marquee;
  c.fillStyle = p.accentSoft;
  c.strokeStyle = p.roles.accent;
  c.lineWidth = px;
  c.fillRect(minX, minY, maxX - minX, maxY - minY);
  c.strokeRect(minX, minY, maxX - minX, maxY - minY);
};
