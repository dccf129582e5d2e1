import type { DaySummary } from '../../report/day.ts';

/** What a pulled plug does to control gear and to units with cells of their own. */
export const BackUps = ({ summary }: { readonly summary: DaySummary }) =>
  summary.backUps.length === 0 ? null : (
    <section aria-label="Back-up cells">
      <h3>When a plug is pulled</h3>
      <table className="table">
        <caption className="visually-hidden">Back-up cells</caption>
        <thead>
          <tr>
            <th scope="col">Plugged in</th>
            <th scope="col" className="num">
              On its own cell
            </th>
            <th scope="col">Then</th>
          </tr>
        </thead>
        <tbody>
          {summary.backUps.map((b) => (
            <tr key={b.id}>
              <th scope="row">{b.label}</th>
              <td className="num">
                {b.minutes > 0 ? `${Math.round(b.minutes)} min` : 'none'}
                {b.minutes > 0 && b.measured ? ' measured' : ''}
              </td>
              <td className={b.minutes === 0 && b.feeds.length > 0 ? 'day-fault' : undefined}>{b.text}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
