import type { Context } from 'konva/lib/Context';
import { Shape } from 'react-konva/lib/ReactKonvaCore';
import { lengthUnitsOf, northDegOf } from '../editor/floor-facts.ts';
import { gridMm, scaleBar } from '../editor/options.ts';
import type { Session } from '../editor/session.ts';
import { sunOnFloor } from '../editor/sun.ts';
import { FONT_FAMILY } from './painter.ts';
import type { Palette } from './palette.ts';

const MARGIN = 26;
const BAR_HEIGHT = 4;
const FIELDS = 10;

/** Scale bar and north arrow, fixed on the view. Pixels. */
export const ViewFurniture = ({
  session,
  palette,
}: {
  readonly session: Session;
  readonly palette: Palette;
}) => (
  <Shape
    listening={false}
    perfectDrawEnabled={false}
    sceneFunc={(context: Context) => {
      const c = context._context;
      const s = session.getState();
      const { widthPx, heightPx } = s.viewport;
      const units = lengthUnitsOf(s.plan);
      const bar = scaleBar(s.camera.pxPerMm, units);
      const x = MARGIN;
      const y = heightPx - 42;
      const field = (bar.lengthMm * s.camera.pxPerMm) / FIELDS;
      c.globalAlpha = 0.85;
      c.fillStyle = palette.ground;
      c.fillRect(x - 12, y - 9, field * FIELDS + 200, 34);
      c.globalAlpha = 1;
      c.lineWidth = 1;
      c.strokeStyle = palette.roles['ink-soft'];
      c.setLineDash([]);
      for (let i = 0; i < FIELDS; i++) {
        c.fillStyle = i % 2 === 0 ? palette.roles.ink : palette.ground;
        c.fillRect(x + i * field, y, field, BAR_HEIGHT);
      }
      c.strokeRect(x, y, field * FIELDS, BAR_HEIGHT);
      c.font = `400 12px ${FONT_FAMILY}`;
      c.fillStyle = palette.roles['ink-soft'];
      c.textBaseline = 'alphabetic';
      c.textAlign = 'center';
      const end = x + field * FIELDS;
      c.fillText('0', x, y + 18);
      c.fillText(bar.half, x + (field * FIELDS) / 2, y + 18);
      c.fillText(bar.full, end, y + 18);
      c.textAlign = 'left';
      const grid = gridMm(units);
      const light = grid.light * s.camera.pxPerMm >= 7;
      const words =
        units === 'imperial'
          ? light
            ? 'grid 1 ft, heavy 5 ft'
            : 'grid 5 ft'
          : light
            ? 'grid 0.5 m, heavy 2.5 m'
            : 'grid 2.5 m';
      c.fillText(words, end + 40, y + 5);
      north(c, palette, widthPx - 34, heightPx - 44, northDegOf(s));
      const sun = sunOnFloor(s);
      if (sun) paintSun(c, palette, widthPx - 120, heightPx - 56, sun);
    }}
  />
);

const RING = 30;

/** A ring with the sun where it stands, an arrow the way its light runs, and its figures. Hollow under the horizon. */
const paintSun = (
  c: CanvasRenderingContext2D,
  palette: Palette,
  x: number,
  y: number,
  sun: { readonly deg: number; readonly elevationDeg: number; readonly azimuthDeg: number },
): void => {
  const up = sun.elevationDeg > 0;
  const rad = (sun.deg * Math.PI) / 180;
  c.save();
  c.translate(x, y);
  c.globalAlpha = 0.85;
  c.fillStyle = palette.ground;
  c.beginPath();
  c.arc(0, 0, RING + 9, 0, Math.PI * 2);
  c.fill();
  c.globalAlpha = 1;
  c.lineWidth = 1;
  c.strokeStyle = palette.roles['ink-soft'];
  c.setLineDash([]);
  c.beginPath();
  c.arc(0, 0, RING, 0, Math.PI * 2);
  c.stroke();
  c.rotate(rad);
  c.strokeStyle = palette.roles.ink;
  c.fillStyle = up ? palette.roles.beam : palette.ground;
  c.lineWidth = 1.5;
  if (up) {
    c.beginPath();
    c.moveTo(RING - 9, 0);
    c.lineTo(-RING + 8, 0);
    c.moveTo(-RING + 15, -5);
    c.lineTo(-RING + 8, 0);
    c.lineTo(-RING + 15, 5);
    c.stroke();
  }
  c.beginPath();
  c.arc(RING, 0, 7, 0, Math.PI * 2);
  c.fill();
  c.stroke();
  c.rotate(-rad);
  c.font = `400 12px ${FONT_FAMILY}`;
  c.textAlign = 'center';
  c.textBaseline = 'alphabetic';
  const words = up
    ? `sun ${Math.round(sun.azimuthDeg)}°, ${Math.round(sun.elevationDeg)}° high`
    : 'sun under the horizon';
  const half = c.measureText(words).width / 2 + 4;
  c.fillStyle = palette.ground;
  c.fillRect(-half, RING + 10, half * 2, 16);
  c.fillStyle = palette.roles['ink-soft'];
  c.fillText(words, 0, RING + 22);
  c.restore();
};

const north = (c: CanvasRenderingContext2D, palette: Palette, x: number, y: number, deg: number): void => {
  c.save();
  c.translate(x, y);
  c.rotate(((deg + 90) * Math.PI) / 180);
  c.fillStyle = palette.roles.ink;
  c.beginPath();
  c.moveTo(0, -16);
  c.lineTo(9, 15);
  c.lineTo(0, 9);
  c.lineTo(-9, 15);
  c.closePath();
  c.fill();
  c.translate(0, -24);
  c.rotate((-(deg + 90) * Math.PI) / 180);
  c.font = `400 12px ${FONT_FAMILY}`;
  c.textAlign = 'center';
  c.textBaseline = 'middle';
  c.fillText('N', 0, 0);
  c.restore();
};
