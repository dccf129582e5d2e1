import type { PathCommand } from '../../drawing/display-list.ts';
import { outlineOf } from '../../drawing/outline.ts';
import { scaledSymbol, symbolShape } from '../../drawing/symbols.ts';
import { formatLength, type LengthUnits } from '../../kernel/units.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';

const text = (d: readonly PathCommand[]): string =>
  d.map(([letter, ...n]) => letter + n.map((v) => Number(v.toFixed(1))).join(' ')).join('');

interface Shape {
  readonly line: 'outline' | 'detail' | 'solid';
  readonly d: string;
}

/** A kind as the drawing shows it: its symbol, or the top view it brought along, at its true size with the throw to the right. */
const shapesOf = (
  kind: Kind,
): { readonly shapes: readonly Shape[]; readonly box: readonly [number, number, number, number] } => {
  const own = outlineOf(kind);
  if (own)
    return {
      shapes: own.paths.map((d, i) => ({ line: i === 0 ? 'outline' : 'detail', d: text(d) })),
      box: [-own.lengthMm / 2, -own.widthMm / 2, own.lengthMm / 2, own.widthMm / 2],
    };
  const lengthMm = Math.max(1, kind.sizeMm.lengthMm);
  const widthMm = Math.max(1, kind.sizeMm.widthMm);
  const s = symbolShape(kind.symbol);
  const [kx, ky] = [lengthMm / s.lengthMm, widthMm / s.widthMm];
  return {
    shapes: scaledSymbol(kind.symbol, lengthMm, widthMm).map((p) => ({ line: p.line, d: text(p.d) })),
    box: [s.box[0] * kx, s.box[1] * ky, s.box[2] * kx, s.box[3] * ky],
  };
};

/** Squares to each side of the middle before they get too fine. */
const MANY = 15;

/** Squares of half a metre or two feet, so that the size is seen. */
const stepMm = (units: LengthUnits): number => (units === 'imperial' ? 304.8 : 500);

/** How a kind will be drawn, to scale on squares of half a metre (or a foot), with its beam where it has one. */
export const DrawingPreview = ({ kind, units }: { readonly kind: Kind; readonly units: LengthUnits }) => {
  const { shapes, box } = shapesOf(kind);
  const least = stepMm(units);
  const reach = Math.max(box[2] - box[0], box[3] - box[1], 2 * least) * 0.7;
  // What is long gets wider squares, so that they are still seen apart.
  const step = reach > MANY * least ? 10 * least : least;
  const cx = (box[0] + box[2]) / 2;
  const cy = (box[1] + box[3]) / 2;
  const [x0, y0, size] = [cx - reach, cy - reach, 2 * reach];
  const lines = (from: number): number[] => {
    const out: number[] = [];
    for (let v = Math.ceil(from / step) * step; v <= from + size && out.length < 80; v += step) out.push(v);
    return out;
  };
  const beam = kind.family === 'fixture' ? kind.beamDeg : undefined;
  const half = beam === undefined ? undefined : (Math.min(160, beam) * Math.PI) / 360;
  return (
    <figure className="drawing-preview">
      <svg viewBox={`${x0} ${y0} ${size} ${size}`} role="img" aria-label={`${kind.name} as it is drawn`}>
        {lines(x0).map((x) => (
          <line key={`x${x}`} className="preview-grid" x1={x} y1={y0} x2={x} y2={y0 + size} />
        ))}
        {lines(y0).map((y) => (
          <line key={`y${y}`} className="preview-grid" x1={x0} y1={y} x2={x0 + size} y2={y} />
        ))}
        {half === undefined ? null : (
          <path
            className="preview-beam"
            d={`M${box[2]} ${cy}L${box[2] + size} ${cy - size * Math.tan(half)}L${box[2] + size} ${cy + size * Math.tan(half)}Z`}
          />
        )}
        {shapes.map((s) => (
          <path key={s.line + s.d} className={`preview-${s.line}`} d={s.d} />
        ))}
      </svg>
      <figcaption className="soft small">
        {formatLength(kind.sizeMm.widthMm, units)} across, {formatLength(kind.sizeMm.lengthMm, units)} deep;
        squares of {formatLength(step, units)}
      </figcaption>
    </figure>
  );
};
