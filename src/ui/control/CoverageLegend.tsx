import { coverageTones } from '../../drawing/coverage.ts';
import { scaleColor } from '../../drawing/scale-color.ts';
import { formatLength } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { HINT } from '../../report/radio.ts';
import { useSessionSlice } from '../hooks.ts';
import './radio.css';

/** What the tones of the coverage picture stand for, in dB, with the words of the verdict. */
export const CoverageLegend = () => {
  const { picture, shown, plan } = useSessionSlice((s) => ({
    picture: s.floorView.radio.picture,
    shown: s.floorView.layers.coverage.shown,
    plan: s.plan,
  }));
  if (!picture || !shown) return null;
  const tones = coverageTones();
  const w = 34;
  const label = (id: string): string =>
    (plan.records.get(id) as { label?: string } | undefined)?.label ?? 'transmitter';
  return (
    <figure className="coverage-legend">
      <figcaption>
        Margin of {picture.senderIds.map(label).join(', ')} at{' '}
        {formatLength(picture.heightM * 1000, planRecord(plan).lengthUnits)}
      </figcaption>
      <svg
        width={w * tones.length + 8}
        height="40"
        role="img"
        aria-label="Scale from 0 dB, dark, to 40 dB and more, light"
      >
        {tones.map((t, i) => (
          <g key={t.fromDb}>
            <rect
              x={i * w + 4}
              y="2"
              width={w}
              height="12"
              fill={scaleColor(t.scale)}
              fillOpacity={t.opacity}
              className="legend-tone"
            />
            <text x={i * w + 4} y="25" className="legend-text" textAnchor="start">
              {t.fromDb}
            </text>
          </g>
        ))}
        <text x={4} y="37" className="legend-text">
          weak
        </text>
        <text x={4 + 2 * w} y="37" className="legend-text">
          fair
        </text>
        <text x={4 + 4 * w} y="37" className="legend-text">
          good
        </text>
        <text x={4 + 7 * w} y="25" className="legend-text" textAnchor="end">
          dB
        </text>
      </svg>
      <p className="soft small">No tone: not expected to reach. {HINT}</p>
    </figure>
  );
};
