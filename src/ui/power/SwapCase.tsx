import { formatPct } from '../../kernel/units.ts';
import { explainSwap, swapFigure } from '../../report/explain-swap.ts';
import type { SourceSwap, SwapFinding, SwapLine } from '../../report/swap-source.ts';
import { TriedFigure } from '../common/Figure.tsx';
import { Severity } from '../common/Severity.tsx';

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
            <Cells result={result} line={l} when="before" />
            <Cells result={result} line={l} when="after" />
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

/** A figure of the swap and its share of what may be used, each with its working. */
const Cells = ({
  result,
  line,
  when,
}: {
  readonly result: SourceSwap;
  readonly line: SwapLine;
  readonly when: 'before' | 'after';
}) => {
  const [value, pct] = when === 'before' ? [line.before, line.beforePct] : [line.after, line.afterPct];
  const figure = (of: 'figure' | 'share', text: string) => (
    <TriedFigure working={(plan) => explainSwap(plan, result, line.name, when, of)}>{text}</TriedFigure>
  );
  return (
    <>
      <td className={when === 'after' ? 'num strong' : 'num'}>
        {Number.isFinite(value) ? figure('figure', swapFigure(line, value)) : '–'}
      </td>
      <td className={pct > 100 ? 'num over' : 'num soft'}>
        {Number.isFinite(pct) ? figure('share', formatPct(pct)) : '–'}
      </td>
    </>
  );
};

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
