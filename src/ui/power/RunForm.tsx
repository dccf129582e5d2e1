import { useMemo, useState } from 'react';
import { formatAmps, formatCableLength, formatPct, formatVolts, parseLengthMm } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { Practice } from '../../plan/records/index.ts';
import { headroomInput, runWorking } from '../../report/explain-size.ts';
import { type RunAsked, sizeRun } from '../../report/size-cable.ts';
import { TriedFigure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import type { MakeWorking } from '../ui-state.ts';

const numberOf = (t: string): number => (t.trim() === '' ? Number.NaN : Number(t.trim().replace(',', '.')));

/** The lightest cable for one run that is not in the plan: amps, length, legs and the most volts that may be lost. */
export const RunForm = ({
  practice,
  headroomPct,
}: {
  readonly practice: Practice;
  readonly headroomPct: number;
}) => {
  const { book } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const units = planRecord(plan).lengthUnits;
  const [amps, setAmps] = useState('');
  const [length, setLength] = useState('');
  const [legs, setLegs] = useState(3);
  const [drop, setDrop] = useState('3');
  const volts = practice === 'europe' ? 230 : 120;
  const parsed = parseLengthMm(length, units);
  const lengthMm = parsed.ok ? parsed.value : Number.NaN;
  const loadA = numberOf(amps) * (1 + headroomPct / 100);
  const dropPct = numberOf(drop);
  const asked = loadA > 0 && lengthMm > 0 && dropPct > 0;
  const run = useMemo(
    (): RunAsked => ({
      amps: loadA,
      // Legs that are even load the neutral with nothing; one leg alone with all of it.
      neutralA: legs === 1 ? loadA : 0,
      legs,
      neutral: true,
      lengthMm,
      volts,
      powerFactor: 1,
      dropPct,
      breakerA: undefined,
    }),
    [loadA, legs, lengthMm, volts, dropPct],
  );
  const found = useMemo(
    () => (asked ? sizeRun(plan, run, book.kinds()) : undefined),
    [asked, plan, run, book],
  );
  const working: MakeWorking = (p) =>
    runWorking(p, 'one run by itself', run, found, [headroomInput(1 + headroomPct / 100)]);
  const wrong = [
    amps.trim() !== '' && !(numberOf(amps) > 0) ? 'amps above 0, like 100' : '',
    length.trim() !== '' && !(lengthMm > 0)
      ? `a length like ${units === 'imperial' ? '200 ft' : '60 m'}`
      : '',
    !(dropPct > 0) ? 'per cent above 0, like 3' : '',
  ].filter(Boolean);
  return (
    <section className="power-run" aria-label="One run by itself">
      <h3 className="power-source">
        One run by itself <span className="soft">not in the plan, with the headroom above</span>
      </h3>
      <div className="power-head">
        <label>
          Amps a leg{' '}
          <input
            className="input power-watts"
            inputMode="decimal"
            value={amps}
            onChange={(e) => setAmps(e.target.value)}
          />
        </label>
        <label>
          Length{' '}
          <input
            className="input power-watts"
            placeholder={units === 'imperial' ? '200 ft' : '60 m'}
            value={length}
            onChange={(e) => setLength(e.target.value)}
          />
        </label>
        <label>
          Legs{' '}
          <select className="input" value={legs} onChange={(e) => setLegs(Number(e.target.value))}>
            {[1, 2, 3].map((n) => (
              <option key={n}>{n}</option>
            ))}
          </select>
        </label>
        <label>
          Lose at most, %{' '}
          <input
            className="input power-watts"
            inputMode="decimal"
            value={drop}
            onChange={(e) => setDrop(e.target.value)}
          />
        </label>
      </div>
      {wrong.length > 0 ? (
        <p className="field-error" role="alert">
          Write {wrong.join('; ')}.
        </p>
      ) : null}
      <p role="status">
        {!asked ? (
          <span className="soft">Type amps and a length.</span>
        ) : found ? (
          <>
            <span className="strong">
              {found.sets > 1 ? `${found.sets} × ` : ''}
              {found.kind.name}
            </span>{' '}
            for {formatAmps(loadA)} over {formatCableLength(lengthMm, units)} at {volts} V: carries{' '}
            <TriedFigure working={working}>{formatAmps(found.ampacityA)}</TriedFigure>, loses{' '}
            <TriedFigure working={working}>
              {formatVolts(found.dropV)} ({formatPct(found.dropPct)})
            </TriedFigure>
            . Legs are taken as even, at power factor 1. The breaker ahead must not pass the ampacity.
          </>
        ) : (
          'No cable of the book carries that so far with so little lost.'
        )}
      </p>
    </section>
  );
};
