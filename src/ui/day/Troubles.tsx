import type { DaySummary } from '../../report/day.ts';
import { dayTroubles } from '../../report/day-words.ts';

/** What goes wrong on the day, at the top where it is seen at once. */
export const Troubles = ({
  summary,
  onPacks,
}: {
  readonly summary: DaySummary;
  readonly onPacks: () => void;
}) => {
  const all = dayTroubles(summary);
  if (all.length === 0) return null;
  return (
    <section className="day-troubles" aria-label="What goes wrong on this day">
      <ul>
        {all.slice(0, 4).map((t) => (
          <li key={t.text} data-dark={t.dark}>
            <span aria-hidden="true">{t.dark ? '◆' : '□'}</span> {t.text}
          </li>
        ))}
        {all.length > 4 ? <li className="soft">and {all.length - 4} more</li> : null}
      </ul>
      {summary.pools.some((p) => p.short) ? (
        <button type="button" className="button" onClick={onPacks}>
          Packs at hand…
        </button>
      ) : null}
    </section>
  );
};
