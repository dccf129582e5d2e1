import { formatAmps, formatVolts, formatWatts } from '../../kernel/units.ts';
import { explainFault, type FaultFigure } from '../../report/explain-fault.ts';
import { restrikeWords, voltsTaken } from '../../report/explain-fault-kind.ts';
import type { Fault, FaultLoad, WhatIf } from '../../report/whatif.ts';
import { TriedFigure } from '../common/Figure.tsx';
import { useServices } from '../services.ts';

const STATE: Readonly<Record<FaultLoad['state'], string>> = {
  dark: 'dark',
  'fewer legs': 'on fewer legs',
  'wrong volts': 'outside its volts',
  'as before': 'as before',
};

/** A fault case: what each load sees, and the meters of the source. */
export const FaultCase = ({ result, fault }: { readonly result: WhatIf; readonly fault: Fault }) => {
  const { session } = useServices();
  const figure = (f: FaultFigure, text: string) => (
    <TriedFigure working={(plan) => explainFault(plan, fault, result.setupId, f)}>{text}</TriedFigure>
  );
  const hit = result.loads.filter((l) => l.state !== 'as before');
  const rest = result.loads.length - hit.length;
  return (
    <article aria-label={result.title}>
      <h3 className="power-source">
        {result.title} <span className="soft">in {result.setup || 'the plan'}</span>
      </h3>
      <p className="soft">
        {hit.length === 0 ? 'No load is hit. ' : ''}
        {rest} of {result.loads.length} loads as before.
        {result.voltsKnown ? '' : ' Volts are reckoned from nominal: the house volts are not known.'}
      </p>
      {result.meter ? (
        <table className="table power-table power-wires">
          <caption>Amps at {result.meter.label}</caption>
          <thead>
            <tr>
              <th scope="col">Wire</th>
              {result.meter.wires.map((w) => (
                <th key={w.name} scope="col" className="num">
                  {w.name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {(['before', 'after'] as const).map((when) => (
              <tr key={when}>
                <th scope="row">{when}</th>
                {(result.meter?.wires ?? []).map((w) => (
                  <td key={w.name} className={when === 'after' ? 'num strong' : 'num'}>
                    {figure({ wire: w.name, when }, formatAmps(when === 'before' ? w.beforeA : w.afterA))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      {hit.length > 0 ? (
        <>
          <table className="table power-table power-fit">
            <thead>
              <tr>
                <th scope="col">Load</th>
                <th scope="col">What it sees</th>
                <th scope="col" className="num">
                  Volts
                </th>
                <th scope="col" className="num">
                  Takes
                </th>
                <th scope="col" className="num">
                  Watts there
                </th>
                <th scope="col">Restrike</th>
              </tr>
            </thead>
            <tbody>
              {hit.map((l) => (
                <tr key={l.key}>
                  <th scope="row">
                    <button
                      type="button"
                      className="link"
                      onClick={() => session.set({ selection: new Set([l.recordId]), workspace: 'floor' })}
                    >
                      {l.label}
                    </button>
                  </th>
                  <td className={l.state === 'wrong volts' ? 'over' : 'strong'}>{STATE[l.state]}</td>
                  <td className="num">
                    {l.state === 'dark' ? '–' : figure({ load: l.key, of: 'volts' }, formatVolts(l.voltsV))}
                  </td>
                  <td className="num">
                    {Number.isFinite(l.voltsMinV) ? figure({ load: l.key, of: 'takes' }, voltsTaken(l)) : '–'}
                  </td>
                  <td className="num">
                    {l.state === 'dark' || !Number.isFinite(l.wattsW)
                      ? '–'
                      : figure({ load: l.key, of: 'watts' }, formatWatts(l.wattsW))}
                  </td>
                  <td>
                    {l.restrikeMin === undefined
                      ? ''
                      : figure({ load: l.key, of: 'restrike' }, restrikeWords(l.restrikeMin))}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <p>
            <button
              type="button"
              className="button"
              onClick={() =>
                session.set({ selection: new Set(hit.map((l) => l.recordId)), workspace: 'floor' })
              }
            >
              Show them on the floor
            </button>
          </p>
        </>
      ) : null}
      {result.notes.map((n) => (
        <p key={n} className="soft">
          {n}
        </p>
      ))}
    </article>
  );
};
