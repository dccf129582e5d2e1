import { formatClock } from '../../kernel/units.ts';
import type { DaySummary } from '../../report/day.ts';
import { type DayEvent, dayEvents } from '../../report/day-events.ts';

const words = (e: DayEvent): string => {
  if (!e.swap)
    return `${e.label} dark until ${formatClock(e.untilMin ?? e.atMin)}${e.because ? `: ${e.because}` : ''}`;
  const { out, outPct, into, darkMin } = e.swap;
  return `${e.label}: ${out ? `${out} off (${Math.round(outPct)} % left), ` : ''}${into} on${darkMin > 0 ? `, ${darkMin} min dark` : ''}`;
};

/** Changes of packs and dark gaps in the order of the clock: the time line in words. */
export const EventList = ({ summary }: { readonly summary: DaySummary }) => {
  const events = dayEvents(summary);
  if (events.length === 0) return null;
  return (
    <section aria-label="Changes of packs" className="day-events">
      <h3>Changes of packs</h3>
      <ol>
        {events.map((e) => (
          <li key={e.key} data-dark={e.swap === undefined}>
            <span className="day-when">{formatClock(e.atMin)}</span> {words(e)}
          </li>
        ))}
      </ol>
    </section>
  );
};
