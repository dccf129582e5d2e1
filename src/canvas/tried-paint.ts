import type { TriedState } from '../editor/tried.ts';
import type { Point } from '../kernel/geometry.ts';
import { FONT_FAMILY } from './painter.ts';
import type { Palette } from './palette.ts';

const WORD: Readonly<Record<TriedState, string>> = {
  dark: 'dark',
  'fewer legs': 'fewer legs',
  'wrong volts': 'volts!',
};

/** Marks every load that is hit: crossed out where it goes dark, ringed and named where it sees something else. */
export const paintTried = (
  c: CanvasRenderingContext2D,
  spots: readonly { readonly at: Point; readonly state: TriedState }[],
  p: Palette,
  px: number,
): void => {
  for (const { at, state } of spots) {
    const { xMm, yMm } = at;
    const r = 11 * px;
    c.strokeStyle = state === 'wrong volts' ? p.roles.stop : p.roles.ink;
    c.fillStyle = p.ground;
    c.lineWidth = 2 * px;
    c.globalAlpha = 0.85;
    c.beginPath();
    c.arc(at.xMm, at.yMm, r, 0, Math.PI * 2);
    c.fill();
    c.globalAlpha = 1;
    c.stroke();
    if (state === 'dark') {
      const d = r * 0.5;
      c.beginPath();
      c.moveTo(xMm - d, yMm - d);
      c.lineTo(xMm + d, yMm + d);
      c.moveTo(xMm + d, yMm - d);
      c.lineTo(xMm - d, yMm + d);
      c.stroke();
      continue;
    }
    c.save();
    c.translate(xMm, yMm);
    c.scale(px, px);
    c.font = `600 11px ${FONT_FAMILY}`;
    c.textAlign = 'left';
    c.textBaseline = 'middle';
    const w = c.measureText(WORD[state]).width;
    c.fillStyle = p.ground;
    c.fillRect(13, -8, w + 6, 16);
    c.fillStyle = state === 'wrong volts' ? p.roles.stop : p.roles.ink;
    c.fillText(WORD[state], 16, 0.5);
    c.font = `700 13px ${FONT_FAMILY}`;
    c.textAlign = 'center';
    c.fillText(state === 'wrong volts' ? '!' : '–', 0, 0.5);
    c.restore();
  }
};
