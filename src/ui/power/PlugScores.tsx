import { formatAmps } from '../../kernel/units.ts';
import type { BalancedSource } from '../../report/balance.ts';

/** Before, after and what each number of moves would bring. */
export const PlugScores = ({
  source,
  onCap,
}: {
  readonly source: BalancedSource;
  readonly onCap: (moves: number) => void;
}) => (
  <div className="power-scores">
    <h3 className="power-source">
      {source.label}{' '}
      <span className="soft">
        worst leg {formatAmps(source.before.worstLegA)} → {formatAmps(source.after.worstLegA)}, neutral{' '}
        {formatAmps(source.before.neutralA)} → {formatAmps(source.after.neutralA)}, overloads{' '}
        {source.before.overloads} → {source.after.overloads}
      </span>
    </h3>
    <p className="soft">
      {source.proved
        ? 'Proved: no assignment of these plugs has fewer overloads and a lower worst leg.'
        : `No assignment of these plugs has a worst leg below ${formatAmps(source.boundA)}; this one is ${source.gapPct.toFixed(1)} % above that.`}
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
            <td className="num">{formatAmps(t.worstLegA)}</td>
            <td className="num">{formatAmps(t.neutralA)}</td>
            <td className="num">{t.overloads}</td>
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
