import type { PartLevel } from '../../plan/records/index.ts';

/** Colour of a part without one of its own. */
export const PLAIN_PART = '#ffd9a0';

/** Parts of a unit as a thin strip. */
export const PartStrip = ({ parts }: { readonly parts: readonly PartLevel[] }) => (
  <svg
    className="part-strip"
    viewBox={`0 0 ${parts.length} 1`}
    preserveAspectRatio="none"
    aria-hidden="true"
    focusable="false"
  >
    {parts.map((p, i) => (
      <rect
        key={i}
        x={i}
        y={0}
        width={1.02}
        height={1}
        fill={p.color ?? PLAIN_PART}
        fillOpacity={p.levelPct / 100}
      />
    ))}
  </svg>
);
