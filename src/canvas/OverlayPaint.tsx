import type { Context } from 'konva/lib/Context';
import type { Shape as ShapeNode } from 'konva/lib/Shape';
import { useEffect, useRef } from 'react';
import { Shape } from 'react-konva/lib/ReactKonvaCore';
import { type CornerHandle, cornersFor } from '../editor/corners.ts';
import { ringFor, type SelectionRing } from '../editor/handles.ts';
import { OPTIONS } from '../editor/options.ts';
import type { Overlay } from '../editor/overlay.ts';
import type { Scene } from '../editor/scene.ts';
import type { Session } from '../editor/session.ts';
import { triedSpots } from '../editor/tried.ts';
import { FONT_FAMILY } from './painter.ts';
import type { Palette } from './palette.ts';
import { paintTried } from './tried-paint.ts';

interface Props {
  readonly session: Session;
  readonly scene: Scene;
  readonly palette: Palette;
  /** Fingers get larger handles. */
  readonly coarse: boolean;
}

/** Ring, handles, guides, marquee, measures and rubber line, above everything. */
export const OverlayPaint = ({ session, scene, palette, coarse }: Props) => {
  const node = useRef<ShapeNode>(null);
  useEffect(
    () =>
      session.subscribe((now, was) => {
        if (
          now.overlay !== was.overlay ||
          now.tried !== was.tried ||
          now.selection !== was.selection ||
          now.plan !== was.plan ||
          now.preview !== was.preview ||
          now.readOnly !== was.readOnly
        )
          node.current?.getLayer()?.batchDraw();
      }),
    [session],
  );
  return (
    <Shape
      ref={node}
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context: Context) => {
        const c = context._context;
        const { overlay, selection, camera, readOnly, tried, floorId } = session.getState();
        const px = 1 / camera.pxPerMm;
        const shown = scene.previewPlan();
        const look = { selection, camera, readOnly };
        const handlePx = coarse ? OPTIONS.touchHandlePx : OPTIONS.handlePx;
        c.setLineDash([]);
        if (tried) paintTried(c, triedSpots(shown, floorId, tried), palette, px);
        guides(c, overlay, palette, px);
        rubber(c, overlay, palette, px);
        measures(c, overlay, palette, px);
        if (!overlay.marquee && !overlay.loop) {
          const ring = ringFor(shown, look);
          if (ring) paintRing(c, ring, palette, px, handlePx);
          for (const h of cornersFor(shown, look)) corner(c, h, palette, px, handlePx);
        }
        marquee(c, overlay, palette, px);
      }}
    />
  );
};

const measures = (c: CanvasRenderingContext2D, o: Overlay, p: Palette, px: number): void => {
  for (const m of o.measures ?? []) {
    c.strokeStyle = p.roles.accent;
    c.lineWidth = 1.4 * px;
    line(c, m.from, m.to);
    c.save();
    c.translate((m.from.xMm + m.to.xMm) / 2, (m.from.yMm + m.to.yMm) / 2);
    c.scale(px, px);
    c.font = `600 13px ${FONT_FAMILY}`;
    c.textAlign = 'center';
    c.textBaseline = 'middle';
    const w = c.measureText(m.text).width + 10;
    c.fillStyle = p.ground;
    c.fillRect(-w / 2, -10, w, 20);
    c.fillStyle = p.roles.accent;
    c.fillText(m.text, 0, 0.5);
    c.restore();
  }
};

const corner = (
  c: CanvasRenderingContext2D,
  h: CornerHandle,
  p: Palette,
  px: number,
  handlePx: number,
): void => {
  const r = handlePx * px * (h.what === 'between' ? 0.55 : 0.85);
  c.strokeStyle = p.roles.accent;
  c.fillStyle = p.ground;
  c.lineWidth = 1.6 * px;
  c.beginPath();
  c.rect(h.at.xMm - r, h.at.yMm - r, 2 * r, 2 * r);
  c.fill();
  c.stroke();
};

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
    const cable = o.rubber.what !== 'aim';
    const role = o.rubber.what === 'data' ? p.roles.data : p.roles.cable;
    c.strokeStyle = cable && o.rubber.fits ? role : cable ? p.roles['ink-soft'] : p.roles.accent;
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
  if (o.loop && o.loop.length > 1) {
    c.fillStyle = p.accentSoft;
    c.strokeStyle = p.roles.accent;
    c.lineWidth = px;
    c.beginPath();
    for (const q of o.loop) c.lineTo(q.xMm, q.yMm);
    c.closePath();
    c.fill();
    c.stroke();
  }
  if (!o.marquee) return;
  const { minX, minY, maxX, maxY } = o.marquee;
  c.fillStyle = p.accentSoft;
  c.strokeStyle = p.roles.accent;
  c.lineWidth = px;
  c.fillRect(minX, minY, maxX - minX, maxY - minY);
  c.strokeRect(minX, minY, maxX - minX, maxY - minY);
};
