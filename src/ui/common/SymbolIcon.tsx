import { symbolPath } from '../../drawing/symbols.ts';

/** A plot symbol at list size, from the same drawing the floor and the papers use. */
export const SymbolIcon = ({
  symbolId,
  size = 26,
}: {
  readonly symbolId: string;
  readonly size?: number;
}) => {
  const { viewBox, paths } = symbolPath(symbolId);
  const unit = Math.max(viewBox[2], viewBox[3]) / size;
  return (
    <svg className="symbol-icon" width={size} height={size} viewBox={viewBox.join(' ')} aria-hidden="true">
      {paths.map((p, i) => (
        <path
          key={i}
          d={p.d}
          fill={p.line === 'solid' ? 'currentColor' : 'none'}
          stroke={p.line === 'solid' ? 'none' : 'currentColor'}
          strokeWidth={(p.line === 'outline' ? 1.4 : 0.9) * unit}
          strokeLinejoin="round"
        />
      ))}
    </svg>
  );
};
