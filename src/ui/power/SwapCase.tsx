import { formatPct } from '../../kernel/units.ts';
import type { SourceSwap, SwapFinding } from '../../report/swap-source.ts';
import { Severity } from '../common/Severity.tsx';
import { swapFigure } from './trying.ts';

/** Another source in place of one: its meters before and after, and the findings that come and go. */
export const SwapCase = ({ result }: { readonly result: SourceSwap }) => (
  <article aria-label={result.title}>
    <h3 className="power-source">{result.title}</h3>
    <table className="table power-table power-trade">
      <thead>
        <tr>
          <th scope="col">Worst setup</th>
          <th scope="col" className="num">
            As it is
          </th>
          <th scope="col" className="num">
            of limit
          </th>
          <th scope="col" className="num">
            With the other
          </th>
          <th scope="col" className="num">
            of limit
          </th>
        </tr>
      </thead>
      <tbody>
        {result.lines.map((l) => (
          <tr key={l.name}>
            <th scope="row">{l.name}</th>
            <td className="num">{swapFigure(l, l.before)}</td>
            <td className={l.beforePct > 100 ? 'num over' : 'num soft'}>
              {Number.isFinite(l.beforePct) ? formatPct(l.beforePct) : '–'}
            </td>
            <td className="num strong">{swapFigure(l, l.after)}</td>
            <td className={l.afterPct > 100 ? 'num over' : 'num soft'}>
              {Number.isFinite(l.afterPct) ? formatPct(l.afterPct) : '–'}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
    {result.unfed.length > 0 ? (
      <p className="over">
        {result.unfed.length} {result.unfed.length === 1 ? 'load is' : 'loads are'} not computed with it: they
        hang on a joint that does not mate. What goes with them is not counted as better.
      </p>
    ) : null}
    <div className="try-lists">
      <Findings title="Stops and warns that come" list={result.appear} />
      <Findings title="Stops and warns that go" list={result.go} />
    </div>
    {result.unfit.length > 0 ? (
      <>
        <h4>What no longer fits and stays as it is</h4>
        <ul>
          {result.unfit.map((u) => (
            <li key={u}>{u}</li>
          ))}
        </ul>
      </>
    ) : null}
    <p className="soft small">
      Computed from this plan; other loads are not known. Connecting a source is for a qualified person.
    </p>
  </article>
);

const Findings = ({ title, list }: { readonly title: string; readonly list: readonly SwapFinding[] }) => (
  <section>
    <h4>{title}</h4>
    {list.length === 0 ? <p className="soft">none</p> : null}
    <ul>
      {list.map((f, i) => (
        <li key={`${i} ${f.head}`}>
          <Severity level={f.severity} /> {f.head}
        </li>
      ))}
    </ul>
  </section>
);
