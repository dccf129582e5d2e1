import type { Context } from 'konva/lib/Context';
import { Shape } from 'react-konva/lib/ReactKonvaCore';
import { viewBox } from '../editor/fit.ts';
import { lengthUnitsOf } from '../editor/floor-facts.ts';
import { gridMm } from '../editor/options.ts';
import type { Session } from '../editor/session.ts';
import type { Palette } from './palette.ts';

/** Light lines closer together than this are left out. */
const LEAST_GAP_PX = 7;

/** The ground and its grid, painted for the view as it is. */
export const Grid = ({ session, palette }: { readonly session: Session; readonly palette: Palette }) => (
  <Shape
    listening={false}
    perfectDrawEnabled={false}
    sceneFunc={(context: Context) => {
      const c = context._context;
      const { camera, viewport, plan } = session.getState();
      const box = viewBox(camera, viewport);
      c.fillStyle = palette.ground;
      c.fillRect(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY);
      const { light, heavy } = gridMm(lengthUnitsOf(plan));
      c.lineWidth = 1 / camera.pxPerMm;
      const rule = (step: number, color: string): void => {
        if (step * camera.pxPerMm < LEAST_GAP_PX) return;
        c.strokeStyle = color;
        c.beginPath();
        for (let x = Math.ceil(box.minX / step) * step; x <= box.maxX; x += step) {
          c.moveTo(x, box.minY);
          c.lineTo(x, box.maxY);
        }
        for (let y = Math.ceil(box.minY / step) * step; y <= box.maxY; y += step) {
          c.moveTo(box.minX, y);
          c.lineTo(box.maxX, y);
        }
        c.stroke();
      };
      rule(light, palette.gridLight);
      rule(heavy, palette.gridHeavy);
    }}
  />
);
