import { useLayoutEffect, useMemo, useRef, useState } from 'react';
import { formatPct } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { SourceRow, SupplySummary } from '../../report/summary.ts';
import { useSessionSlice } from '../hooks.ts';
import { Fullest, LeastVolts, metersByCircuit, SourceMeters } from './RailPanels.tsx';
import { fitRail, type RailPanel } from './rail-fit.ts';
import { SetMeters } from './SetMeters.tsx';

const LEGS_PX = 236;
const CIRCUITS_PX = 262;
const NARROW_PX = 214;
const GAP_PX = 16;
const FULLEST = 'fullest';
const VOLTS = 'volts';

/** The blocks of meters, as many as there is room for; where there is too little, a switch between them. */
export const RailMeters = ({
  supply,
  lightPct,
}: {
  readonly supply: SupplySummary;
  readonly lightPct: number;
}) => {
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const [picked, setPicked] = useState<string | undefined>(undefined);
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(Number.POSITIVE_INFINITY);
  useLayoutEffect(() => {
    const box = frame.current;
    if (!box) return;
    setWidth(box.clientWidth);
    const watch = new ResizeObserver(() => setWidth(box.clientWidth));
    watch.observe(box);
    return () => watch.disconnect();
  }, []);
  const panels = useMemo(() => panelsOf(supply), [supply]);
  const { shown, folded } = fitRail(panels, width, picked);
  return (
    <div ref={frame} className="rail-meters">
      {folded ? (
        <fieldset className="rail-switch" aria-label="Meters shown">
          {panels.map((p) => {
            const pct = Number.isFinite(p.pct) ? formatPct(p.pct) : '';
            return (
              <button
                key={p.id}
                type="button"
                className="rail-pick"
                aria-pressed={shown.has(p.id)}
                title={`${p.name}${pct ? `: its fullest wire or circuit is at ${pct} of its limit in the worst setup` : ''}`}
                onClick={() => setPicked(p.id)}
              >
                <span className="rail-pick-name">{p.name}</span>
                <span className={p.pct > 100 ? 'num over' : 'num soft'}>{pct}</span>
              </button>
            );
          })}
        </fieldset>
      ) : null}
      {supply.sources.map((s) =>
        shown.has(s.id) ? (
          <div key={s.id} className="rail-of-source">
            <SourceMeters source={s} />
            <SetMeters source={s} units={units} lightPct={lightPct} />
          </div>
        ) : null,
      )}
      {shown.has(FULLEST) ? <Fullest supply={supply} /> : null}
      {shown.has(VOLTS) ? <LeastVolts supply={supply} /> : null}
    </div>
  );
};

const panelsOf = (supply: SupplySummary): readonly (RailPanel & { readonly name: string })[] => {
  const loads = supply.sources.flatMap((s) => s.circuits.flatMap((c) => c.loads));
  const ways = supply.sources.filter((s) => !metersByCircuit(s)).flatMap((s) => s.circuits);
  return [
    ...supply.sources.map((s) => ({
      id: s.id,
      name: s.label || s.kindName,
      widthPx: (metersByCircuit(s) ? CIRCUITS_PX : LEGS_PX) + (s.set ? GAP_PX + NARROW_PX : 0),
      pct: fullestPct(s),
    })),
    ...(ways.some((c) => c.loads.length > 0 && Number.isFinite(c.amps.worstPct))
      ? [{ id: FULLEST, name: 'Fullest ways', widthPx: CIRCUITS_PX, pct: Number.NaN }]
      : []),
    ...(loads.some((l) => Number.isFinite(l.least.dropPct))
      ? [{ id: VOLTS, name: 'Volts lost', widthPx: NARROW_PX, pct: Number.NaN }]
      : []),
  ];
};

/** Per cent of its limit that the fullest wire, circuit or rating of a source is at, in the worst setup. */
const fullestPct = (s: SourceRow): number => {
  const all = [
    ...[...s.legs, s.neutral, ...s.circuits.map((c) => c.amps)].map((m) => m.worstPct),
    s.watts.worstPct,
    s.voltAmps.worstPct,
  ].filter(Number.isFinite);
  return all.length === 0 ? Number.NaN : Math.max(...all);
};
