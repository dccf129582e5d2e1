import { legNames } from '../../derive/systems.ts';
import { figureKey } from '../../derive/types.ts';
import { formatAmps, formatPct, formatVolts, formatWatts } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Assessment } from '../../report/types.ts';
import { Row } from '../common/Field.tsx';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';

/** What a load draws and sees in this setup and at worst. Every figure opens its working. */
export const LoadFigures = ({ recordId }: { readonly recordId: string }) => {
  const { assessment, setupId, plan, revision } = useSessionSlice((s) => ({
    assessment: s.assessment,
    setupId: s.setupId,
    plan: s.plan,
    revision: s.revision,
  }));
  const entity = assessment?.entities.find((e) => e.recordId === recordId && e.what === 'load');
  if (!assessment) return <p className="soft small">computing…</p>;
  if (!entity) return <p className="soft small">Not plugged, so nothing is computed for it.</p>;
  if (entity.notComputed) return <p className="soft small">Not computed: {entity.notComputed}</p>;
  const at = assessment.setups.findIndex((s) => s.id === setupId);
  const worst = worstLeg(assessment, entity.key, entity.legs);
  const now = Math.max(...entity.legs.map((l) => assessment.figures.get(entity.key, legQuantity(l), at)));
  const volts = assessment.figures.worst(entity.key, 'voltsV');
  const drop = assessment.figures.get(entity.key, 'dropPct', volts.setupIndex);
  const key = (q: Parameters<typeof figureKey>[0], i: number): string | undefined => {
    const setup = assessment.setups[i];
    return setup ? figureKey(q, entity.key, setup.id) : undefined;
  };
  const firstLeg = legQuantity(entity.legs[0] ?? 0);
  return (
    <div className={assessment.revision === revision ? undefined : 'stale'}>
      <Row label="Draws">
        <Figure figureKey={key(firstLeg, at)}>{formatAmps(now)}</Figure>
        <span className="row-hint">
          {formatWatts(assessment.figures.get(entity.key, 'loadW', at))} · leg
          {entity.legs.length > 1 ? 's' : ''}{' '}
          {legNames(planRecord(plan).practice, entity.system, entity.legs)} · worst{' '}
          <Figure figureKey={key(firstLeg, worst.setupIndex)}>{formatAmps(worst.value)}</Figure>
        </span>
      </Row>
      <Row label="Sees">
        {Number.isFinite(volts.value) ? (
          <>
            <Figure figureKey={key('voltsV', volts.setupIndex)}>{formatVolts(volts.value)}</Figure>
            <span className="row-hint">−{formatPct(drop)}, worst setup</span>
          </>
        ) : (
          <>
            <span>measure</span>
            <span className="row-hint">
              house volts not known
              {Number.isFinite(drop) ? `; drop ${formatPct(drop)}` : ''}
            </span>
          </>
        )}
      </Row>
    </div>
  );
};

export const legQuantity = (leg: number): 'leg0A' | 'leg1A' | 'leg2A' =>
  leg === 0 ? 'leg0A' : leg === 1 ? 'leg1A' : 'leg2A';

/** The largest current on any of these legs over all setups. */
export const worstLeg = (
  a: Assessment,
  key: string,
  legs: readonly number[],
): { value: number; setupIndex: number } => {
  let best = { value: Number.NaN, setupIndex: -1 };
  for (const leg of legs) {
    const w = a.figures.worst(key, legQuantity(leg));
    if (!(w.value <= best.value)) best = w;
  }
  return best;
};
