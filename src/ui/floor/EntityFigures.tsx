import { legName } from '../../derive/systems.ts';
import { figureKey } from '../../derive/types.ts';
import { formatAmps, formatPct } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { Figure } from '../common/Figure.tsx';
import { Meter } from '../common/Meter.tsx';
import { useSessionSlice } from '../hooks.ts';
import { legQuantity } from './LoadFigures.tsx';

/** Leg currents of a box, source, way or cable: this setup, worst, limit. */
export const EntityFigures = ({
  recordId,
  wayId,
}: {
  readonly recordId: string;
  readonly wayId?: string | undefined;
}) => {
  const { assessment, setupId, plan } = useSessionSlice((s) => ({
    assessment: s.assessment,
    setupId: s.setupId,
    plan: s.plan,
  }));
  const key = wayId === undefined ? recordId : `${recordId}/${wayId}`;
  const entity = assessment?.entities.find((e) => e.key === key);
  if (!assessment || !entity) return null;
  if (entity.notComputed) return <p className="soft">Not computed: {entity.notComputed}</p>;
  const at = assessment.setups.findIndex((s) => s.id === setupId);
  const practice = planRecord(plan).practice;
  const rows = entity.legs.map((leg) => {
    const q = legQuantity(leg);
    const worst = assessment.figures.worst(entity.key, q);
    return {
      name: legName(practice, entity.system, leg),
      now: assessment.figures.get(entity.key, q, at),
      worst,
      limitA: entity.legLimit?.limitA,
      key: figureKey(q, entity.key, assessment.setups[worst.setupIndex]?.id ?? ''),
    };
  });
  return (
    <div className="entity-figures">
      {rows.map((r) => (
        <div key={r.name} className="meter-line">
          <span className="strong">{r.name}</span>
          <Meter now={r.now} worst={r.worst.value} limit={r.limitA} />
          <span className="num">
            <Figure figureKey={r.key}>{formatAmps(r.worst.value)}</Figure>
          </span>
          <span className="num soft">
            {r.limitA === undefined
              ? 'limit not known'
              : `of ${formatAmps(r.limitA)}, ${formatPct((100 * r.worst.value) / r.limitA)}`}
          </span>
        </div>
      ))}
      {entity.legLimit ? (
        <p className="soft small">Worst setup; limit set by the {entity.legLimit.setBy.replace('-', ' ')}.</p>
      ) : null}
    </div>
  );
};
