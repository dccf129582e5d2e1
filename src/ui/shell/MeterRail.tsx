import { limitsOf } from '../../derive/limits.ts';
import { planRecord } from '../../plan/plan.ts';
import { PRACTICES } from '../common/practices.ts';
import { Severity } from '../common/Severity.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useSupply } from '../supply.ts';
import { useUi } from '../ui-state.ts';
import { RailMeters } from './RailMeters.tsx';
import { WorstSetup } from './WorstSetup.tsx';
import './rail.css';

/** Along the bottom of every workspace: each source's legs now, at worst, and the limit; and the findings. */
export const MeterRail = () => {
  const supply = useSupply();
  const { assessment, revision, plan } = useSessionSlice((s) => ({
    assessment: s.assessment,
    revision: s.revision,
    plan: s.plan,
  }));
  const setFindings = useUi((u) => u.setFindings);
  const openSettings = useUi((u) => u.openSettings);
  const lightPct = limitsOf(plan).get('generator-light-load')?.value ?? 0;
  const count = (level: 'stop' | 'warn' | 'note'): number =>
    assessment?.findings.filter((f) => f.severity === level).length ?? 0;
  const behind = assessment !== undefined && assessment.revision !== revision;

  return (
    <section className="rail" aria-label="Meters">
      <div className={behind ? 'rail-sources stale' : 'rail-sources'}>
        {!supply ? <p className="soft">Computing…</p> : null}
        {supply?.sources.length === 0 ? (
          <p className="soft rail-empty">
            No source of power yet. Find “generator”, “panel” or “wall circuit” among the gear and place it.
          </p>
        ) : null}
        {supply && supply.sources.length > 0 ? <RailMeters supply={supply} lightPct={lightPct} /> : null}
      </div>
      <div className="rail-findings">
        <button type="button" className="rail-counts" onClick={() => setFindings(true)}>
          <span className="visually-hidden">Open the findings: </span>
          {(['stop', 'warn', 'note'] as const).map((level) => (
            <Severity key={level} level={level}>
              {count(level)}
            </Severity>
          ))}
        </button>
        <p className="soft small">
          {behind ? 'computing…' : supply ? `showing ${supply.setup}` : ''} ·{' '}
          <button
            type="button"
            className="link"
            title="Practice, country, units: plan settings"
            onClick={() => openSettings('practice')}
          >
            {PRACTICES[planRecord(plan).practice]}
          </button>
        </p>
        {supply && !behind ? <WorstSetup supply={supply} /> : null}
        <p className="rail-key small soft" aria-hidden="true">
          <span className="key-bar" /> worst <span className="key-now" /> this setup{' '}
          <span className="key-limit" /> limit <span className="key-rating" /> rating{' '}
          <span className="key-derated" /> set gives
        </p>
      </div>
    </section>
  );
};
