import { point } from '../../kernel/geometry.ts';
import type { PathCommand } from '../display-list.ts';
import { arcPath, ellipsePath } from '../prims.ts';
import { CAP, type Sketch } from '../sketch.ts';
import { symbolShape } from '../symbols.ts';
import { BREAKER_MM, LINE, SOURCE_R_MM } from './metrics.ts';

/** A source: a circle with G for a generator, a sine for a supply from outside, plates for a battery power station. */
export const sourceSign = (s: Sketch, what: string, x: number, y: number, r = SOURCE_R_MM): void => {
  s.circle(x, y, r, { weightMm: LINE.device, fill: 'paper' });
  if (what === 'generator') {
    const cap = Math.max(CAP.note, r * 0.62);
    s.text(x, y + cap / 2, 'G', { capMm: cap, weight: 'semibold', align: 'center' });
    return;
  }
  if (what === 'power-station') {
    for (const [dx, half] of [
      [-0.36, 0.42],
      [-0.12, 0.22],
      [0.12, 0.42],
      [0.36, 0.22],
    ] as const)
      s.line(x + dx * r, y - half * r, x + dx * r, y + half * r, LINE.cable);
    return;
  }
  const w = r * 0.5;
  const d: PathCommand[] = [
    ['M', x - w, y],
    ['C', x - w * 0.7, y - r * 0.5, x - w * 0.3, y - r * 0.5, x, y],
    ['C', x + w * 0.3, y + r * 0.5, x + w * 0.7, y + r * 0.5, x + w, y],
  ];
  s.path(d, { weightMm: LINE.cable });
};

/** A breaker: a square in the line with its amps in it. */
export const breakerSign = (s: Sketch, amps: number | undefined, x: number, y: number): void => {
  const h = BREAKER_MM / 2;
  s.rect(x - h, y, BREAKER_MM, BREAKER_MM, { weightMm: LINE.device, fill: 'paper' });
  const text = amps === undefined ? '?' : String(Number(amps.toFixed(1)));
  s.text(x, y + h + (text.length > 3 ? CAP.note : CAP.value) / 2, text, {
    capMm: text.length > 3 ? CAP.note : CAP.value,
    weight: 'semibold',
    align: 'center',
    maxMm: BREAKER_MM - 0.8,
  });
};

/** A transformer: two windings as rings that overlap, in the room of a breaker. */
export const transformerSign = (s: Sketch, x: number, y: number): void => {
  const r = BREAKER_MM * 0.31;
  for (const at of [y + r, y + BREAKER_MM - r])
    s.path(ellipsePath(point(x, at), r, r), { weightMm: LINE.device });
};

/** A residual-current device: a ring around the conductor. */
export const residualSign = (s: Sketch, x: number, y: number): void =>
  s.path(ellipsePath(point(x, y), 2.1, 0.9), { weightMm: LINE.frame });

/** An outlet: a half disc that opens to the load. */
export const outletSign = (s: Sketch, x: number, y: number): void => {
  const r = 1.9;
  const c = point(x, y);
  const left = arcPath(c, r, 180, 270);
  const right = arcPath(c, r, 270, 360);
  s.path([...left, ...right.slice(1), ['Z']], { weightMm: LINE.device, fill: 'paper' });
};

/** A node that figures belong to. */
export const nodeSign = (s: Sketch, x: number, y: number): void =>
  s.circle(x, y, 0.75, { weightMm: LINE.cable, fill: 'paper' });

/** Strokes across a conductor with the number of wires. */
export const wiresSign = (s: Sketch, wires: number, x: number, y: number): void => {
  s.line(x - 1.4, y + 1.4, x + 1.4, y - 1.4, LINE.cable);
  s.text(x + 1.8, y - 0.7, String(wires));
};

/** A flag at a conductor's end, pointing on to where the diagram goes on, or from where it comes. */
export const flagSign = (s: Sketch, x: number, y: number): void =>
  s.path(
    [
      ['M', x - 3, y],
      ['L', x + 3, y],
      ['L', x + 3, y + 3.6],
      ['L', x, y + 6.4],
      ['L', x - 3, y + 3.6],
      ['Z'],
    ],
    { weightMm: LINE.cable, fill: 'paper' },
  );

/** A box to write a measured or asked value in. */
export const writeInSign = (s: Sketch, x: number, baseline: number, w: number): void =>
  s.rect(x, baseline - 3.1, w, 4.1, { weightMm: LINE.frame, fill: 'paper' });

/** A dashed frame around what one box or panel holds. */
export const frameSign = (s: Sketch, x: number, y: number, w: number, h: number): void =>
  s.rect(x, y, w, h, { weightMm: LINE.frame, dashMm: [2.4, 1.2] });

/** The symbol of a unit as on the plot, at most `boxMm` across, its middle at (x, y), the throw downwards. */
export const unitSign = (
  s: Sketch,
  symbolId: string,
  look: { readonly lengthMm: number; readonly widthMm: number },
  x: number,
  y: number,
  boxMm: number,
  broken: boolean,
): void => {
  const k = Math.min(boxMm / Math.max(look.widthMm, 1), boxMm / Math.max(look.lengthMm, 1));
  const shape = symbolShape(symbolId);
  const lengthMm = Math.max(2.4, look.lengthMm * k);
  const widthMm = Math.max(2.4, look.widthMm * k);
  const mx = ((shape.box[0] + shape.box[2]) / 2) * (lengthMm / shape.lengthMm);
  const my = ((shape.box[1] + shape.box[3]) / 2) * (widthMm / shape.widthMm);
  s.symbol(symbolId, x + my, y - mx, { lengthMm, widthMm }, 90, broken);
};
