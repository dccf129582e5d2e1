import { figureKey } from '../../derive/types.ts';
import { formatAmps, formatPct, formatVoltAmps, formatVolts, formatWatts } from '../../kernel/units.ts';
import type { LoadRow, Meter as MeterFigures, SourceRow, SupplySummary } from '../../report/summary.ts';
import { Figure } from '../common/Figure.tsx';
import { inSetup, worstKey } from '../common/figure-keys.ts';
import { Meter } from '../common/Meter.tsx';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

const SHOWN_CIRCUITS = 4;

/** Meters of one source: by circuit for a house panel, else by leg. */
export const SourceMeters = ({ source }: { readonly source: SourceRow }) => {
  const openSettings = useUi((u) => u.openSettings);
  const byCircuit = metersByCircuit(source);
  const circuits = source.circuits
    .filter((c) => c.amps.worstA > 0)
    .sort((a, b) => b.amps.worstPct - a.amps.worstPct)
    .slice(0, SHOWN_CIRCUITS);
  const neutralUsed = source.neutral.worstA > 0.05 && source.legs.length > 1;
  return (
    <section className={byCircuit ? 'rail-source circuits' : 'rail-source'} aria-label={source.label}>
      <h2 className="rail-head">
        <span className="strong">{source.label}</span> <span className="soft">{source.kindName}</span>
      </h2>
      {source.notComputed ? <p className="soft">Not computed: {source.notComputed}</p> : null}
      {byCircuit
        ? circuits.map((c) => <MeterLine key={c.key} name={c.label} meter={c.amps} />)
        : source.legs.map((m) => (
            <MeterLine key={m.name} name={m.name} meter={m} derated={source.set?.legA} leg />
          ))}
      {!byCircuit && neutralUsed ? <MeterLine name="N" meter={source.neutral} leg /> : null}
      {byCircuit && circuits.length === 0 ? <p className="soft">nothing plugged</p> : null}
      {source.set ? null : (
        <p className="rail-power small soft">
          <Figure figureKey={source.watts.figureKey}>{formatWatts(source.watts.now)}</Figure>,{' '}
          <Figure figureKey={source.voltAmps.figureKey}>{formatVoltAmps(source.voltAmps.now)}</Figure> now;
          worst{' '}
          <Figure figureKey={inSetup(source.watts.figureKey, source.watts.worstSetupId)}>
            {formatWatts(source.watts.worst)}
          </Figure>
          {source.watts.rated !== undefined ? ` of ${formatWatts(source.watts.rated)}` : ''}
          {source.voltsV === undefined ? (
            <>
              {' · '}
              <button type="button" className="link" onClick={() => openSettings('sources')}>
                volts not known
              </button>
            </>
          ) : null}
        </p>
      )}
    </section>
  );
};

/** The ways that come nearest to what they may carry, over all sources, in the worst setup. */
export const Fullest = ({ supply }: { readonly supply: SupplySummary }) => {
  const ways = supply.sources
    .filter((s) => !metersByCircuit(s))
    .flatMap((s) => s.circuits)
    .filter((c) => c.loads.length > 0 && Number.isFinite(c.amps.worstPct))
    .sort((a, b) => b.amps.worstPct - a.amps.worstPct)
    .slice(0, SHOWN_CIRCUITS);
  if (ways.length === 0) return null;
  return (
    <section className="rail-source circuits" aria-label="Fullest ways">
      <h2 className="rail-head soft">Fullest ways</h2>
      {ways.map((c) => (
        <MeterLine key={c.key} name={c.label} meter={c.amps} />
      ))}
    </section>
  );
};

/** The units that see the least volts against their source, in the worst setup. */
export const LeastVolts = ({ supply }: { readonly supply: SupplySummary }) => {
  const { session } = useServices();
  const loads = supply.sources
    .flatMap((s) => s.circuits.flatMap((c) => c.loads))
    .filter((l) => Number.isFinite(l.least.dropPct))
    .sort((a, b) => b.least.dropPct - a.least.dropPct)
    .slice(0, SHOWN_CIRCUITS);
  if (loads.length === 0) return null;
  return (
    <section className="rail-source narrow" aria-label="Least volts">
      <h2 className="rail-head soft">Most volts lost, worst setup</h2>
      {loads.map((l) => (
        <p key={l.key} className="rail-volts">
          <button
            type="button"
            className="link"
            onClick={() => session.set({ selection: new Set([l.recordId]) })}
          >
            {l.label}
          </button>
          <span className="num">
            {Number.isFinite(l.least.voltsV) ? (
              <Figure figureKey={leastKey(l, 'voltsV')}>{formatVolts(l.least.voltsV)}</Figure>
            ) : (
              'measure'
            )}
          </span>
          <span className="num soft">
            <Figure figureKey={leastKey(l, 'dropPct')}>−{formatPct(l.least.dropPct)}</Figure>
          </span>
        </p>
      ))}
    </section>
  );
};

/** Key of what a load sees in the setup in which it loses most. */
const leastKey = (l: LoadRow, q: 'voltsV' | 'dropPct'): string | undefined =>
  l.least.setupId === undefined ? undefined : figureKey(q, l.key, l.least.setupId);

/** A house panel is metered by circuit, because that is where it trips; anything else by leg. */
export const metersByCircuit = (source: SourceRow): boolean =>
  source.legs.every((l) => l.limitA === undefined) || source.what === 'wall-circuit';

const MeterLine = ({
  name,
  meter,
  derated,
  leg = false,
}: {
  readonly name: string;
  readonly meter: MeterFigures;
  readonly derated?: number | undefined;
  /** A leg or neutral, whose name is short. */
  readonly leg?: boolean;
}) => {
  const over = meter.limitA !== undefined && meter.worstA > meter.limitA;
  return (
    <div className={leg ? 'rail-line leg' : 'rail-line'}>
      <span className="rail-name strong" title={name}>
        {name}
      </span>
      <Meter
        now={meter.nowA}
        worst={meter.worstA}
        limit={meter.limitA}
        rating={meter.ratingA}
        derated={derated}
      />
      <span className="num">
        <Figure figureKey={meter.figureKey} title={`${name} in this setup: show the working`}>
          {Number.isFinite(meter.nowA) ? meter.nowA.toFixed(1) : '–'}
        </Figure>
      </span>
      <span
        className={over ? 'num over' : 'num'}
        title={meter.setBy === undefined ? undefined : `limit set by the ${meter.setBy.replace('-', ' ')}`}
      >
        <Figure
          figureKey={worstKey(meter)}
          title={meter.worstSetup ? `worst in ${meter.worstSetup}: show the working` : 'Show the working'}
        >
          <span className="strong">{Number.isFinite(meter.worstA) ? meter.worstA.toFixed(1) : '–'}</span>
        </Figure>
        <span className="soft"> / {meter.limitA === undefined ? '–' : formatAmps(meter.limitA)}</span>
      </span>
    </div>
  );
};
