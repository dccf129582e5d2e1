import { formatFuel, formatPct, formatVoltAmps, formatWatts, type LengthUnits } from '../../kernel/units.ts';
import { explainSet, type SetFigure, tankHours } from '../../report/explain-set.ts';
import type { PowerMeter, SourceRow } from '../../report/summary.ts';
import { Figure, TriedFigure } from '../common/Figure.tsx';
import { inSetup } from '../common/figure-keys.ts';
import { Meter } from '../common/Meter.tsx';
import { useSessionSlice } from '../hooks.ts';

/** A set as a whole: kilowatts and kVA apart, what it gives where it stands, fuel. */
export const SetMeters = ({
  source,
  units,
  lightPct,
}: {
  readonly source: SourceRow;
  readonly units: LengthUnits;
  /** Load in per cent of its rating below which a set fouls itself. */
  readonly lightPct: number;
}) => {
  const { assessment, setupId } = useSessionSlice((s) => ({
    assessment: s.assessment,
    setupId: s.setupId,
  }));
  const { set } = source;
  if (!set) return null;
  const figure = (f: SetFigure, text: string) =>
    assessment ? (
      <TriedFigure working={(plan) => explainSet(plan, assessment, source, setupId, f)}>{text}</TriedFigure>
    ) : (
      text
    );
  const fuel = set.fuelNowLph;
  return (
    <section className="rail-source narrow" aria-label={`${source.label} as a set`}>
      <h2 className="rail-head">
        <span className="soft">Set {source.label}</span>{' '}
        {source.watts.rated === undefined ? '' : formatWatts(source.watts.rated)}
        {source.voltAmps.rated === undefined ? '' : `, ${formatVoltAmps(source.voltAmps.rated)}`}
      </h2>
      <PowerLine name="kW" meter={source.watts} />
      <PowerLine name="kVA" meter={source.voltAmps} />
      <p className="rail-power small soft">
        {set.share === 1 ? (
          figure('share', 'gives its rating here')
        ) : (
          <>
            derated to {figure('share', formatPct(100 * set.share))}:{' '}
            {set.givesW === undefined ? '–' : figure('givesW', formatWatts(set.givesW))},{' '}
            {set.givesVa === undefined ? '–' : figure('givesVa', formatVoltAmps(set.givesVa))}
          </>
        )}
        {set.lightestPct < lightPct ? (
          <> · light running, {figure('lightest', formatPct(set.lightestPct))}</>
        ) : null}
      </p>
      <p className="rail-power small soft" title={set.fuelSource}>
        {fuel === undefined ? (
          'fuel not known'
        ) : (
          <>
            fuel about {figure('fuel', `${formatFuel(fuel, units)} an hour`)}
            {set.tankNowH === undefined ? null : (
              <>
                , tank {figure('tank', tankHours(set.tankNowH))}
                {set.tankAssumed ? ' (assumed)' : ''}
              </>
            )}
          </>
        )}
      </p>
    </section>
  );
};

const PowerLine = ({ name, meter }: { readonly name: string; readonly meter: PowerMeter }) => {
  const k = (n: number | undefined): number | undefined => (n === undefined ? undefined : n / 1000);
  const figure = (n: number): string => (Number.isFinite(n) ? (n / 1000).toFixed(1) : '–');
  const over = meter.worstPct > 100;
  return (
    <div className="rail-line watts">
      <span className="rail-name strong">{name}</span>
      <Meter
        now={meter.now / 1000}
        worst={meter.worst / 1000}
        limit={k(meter.gives)}
        rating={k(meter.rated)}
        unit={name}
      />
      <span className="num">
        <Figure figureKey={meter.figureKey} title={`${name} in this setup: show the working`}>
          {figure(meter.now)}
        </Figure>
      </span>
      <span className={over ? 'num over' : 'num'} title={`worst in ${meter.worstSetup}`}>
        <Figure
          figureKey={inSetup(meter.figureKey, meter.worstSetupId)}
          title={`${name} in ${meter.worstSetup || 'the worst setup'}: show the working`}
        >
          <span className="strong">{figure(meter.worst)}</span>
        </Figure>
        <span className="soft"> / {meter.gives === undefined ? '–' : figure(meter.gives)}</span>
      </span>
    </div>
  );
};
