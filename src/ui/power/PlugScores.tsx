import { formatAmps } from '../../kernel/units.ts';
import type { BalancedSource } from '../../report/balance.ts';
import { type BalanceScore, explainBalance, type ScoreFigure } from '../../report/explain-balance.ts';
import { explainBalanceBound } from '../../report/explain-balance-bound.ts';
import { TriedFigure } from '../common/Figure.tsx';

/** Before, after and what each number of moves would bring. */
export const PlugScores = ({
  source,
  onCap,
}: {
  readonly source: BalancedSource;
  readonly onCap: (moves: number) => void;
}) => {
  const figure = (which: BalanceScore, f: ScoreFigure, text: string) => (
    <TriedFigure working={(plan) => explainBalance(plan, source, which, f)}>{text}</TriedFigure>
  );
  const score = (which: 'before' | 'after', f: 'worstLegA' | 'neutralA') =>
    figure(which, f, formatAmps(source[which][f]));
  const bound = (f: 'boundA' | 'gapPct', text: string) => (
    <TriedFigure working={(plan) => explainBalanceBound(plan, source, f)}>{text}</TriedFigure>
  );
  return (
    <div className="power-scores">
      <h3 className="power-source">
        {source.label}{' '}
        <span className="soft">
          worst leg {score('before', 'worstLegA')} → {score('after', 'worstLegA')}, neutral{' '}
          {score('before', 'neutralA')} → {score('after', 'neutralA')}, overloads{' '}
          {figure('before', 'overloads', `${source.before.overloads}`)} →{' '}
          {figure('after', 'overloads', `${source.after.overloads}`)}, re-plugs{' '}
          {figure('after', 'moves', `${source.after.moves}`)}
        </span>
      </h3>
      <p className="soft">
        {source.proved ? (
          'Proved: no assignment of these plugs has fewer overloads and a lower worst leg.'
        ) : (
          <>
            No assignment of these plugs has a worst leg below {bound('boundA', formatAmps(source.boundA))}
            {'; '}this one is {bound('gapPct', `${source.gapPct.toFixed(1)} %`)} above that.
          </>
        )}
      </p>
      <table className="table power-table power-trade">
        <caption className="visually-hidden">The best with so many re-plugs of {source.label}</caption>
        <thead>
          <tr>
            <th scope="col" className="num">
              Re-plugs
            </th>
            <th scope="col" className="num">
              Worst leg
            </th>
            <th scope="col" className="num">
              Neutral
            </th>
            <th scope="col" className="num">
              Overloads
            </th>
            <th scope="col">
              <span className="visually-hidden">Show</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {source.trade.map((t, i) => (
            <tr key={i}>
              <th scope="row" className="num">
                {i}
              </th>
              <td className="num">{figure(i, 'worstLegA', formatAmps(t.worstLegA))}</td>
              <td className="num">{figure(i, 'neutralA', formatAmps(t.neutralA))}</td>
              <td className="num">{figure(i, 'overloads', `${t.overloads}`)}</td>
              <td>
                <button
                  type="button"
                  className="link"
                  onClick={() => onCap(i)}
                  aria-label={`Show with ${i} re-plugs`}
                >
                  show
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};
