import { formatClock } from '../../kernel/units.ts';
import type { DaySummary } from '../../report/day.ts';

interface Event {
  readonly atMin: number;
  readonly key: string;
  readonly text: string;
  readonly dark: boolean;
}

const eventsOf = (s: DaySummary): readonly Event[] =>
  s.lanes
    .flatMap((l): Event[] => [
      ...l.swaps
        .filter((x) => !x.first)
        .map((x) => ({
          atMin: x.atMin,
          key: `${l.fixtureId}-${x.atMin}-swap`,
          text: `${l.label}: ${x.out ? `${x.out} off (${Math.round(x.outPct)} % left), ` : ''}${x.into} on${x.darkMin > 0 ? `, ${x.darkMin} min dark` : ''}`,
          dark: false,
        })),
      ...l.spans
        .filter((x) => x.state === 'dark')
        .map((x) => ({
          atMin: x.startMin,
          key: `${l.fixtureId}-${x.startMin}-dark`,
          text: `${l.label} dark until ${formatClock(x.endMin)}`,
          dark: true,
        })),
    ])
    .sort((a, b) => a.atMin - b.atMin || a.text.localeCompare(b.text));

/** Changes of packs and dark gaps in the order of the clock: the time line in words. */
export const EventList = ({ summary }: { readonly summary: DaySummary }) => {
  const events = eventsOf(summary);
  if (events.length === 0) return null;
  return (
    <section aria-label="Changes of packs" className="day-events">
      <h3>Changes of packs</h3>
      <ol>
        {events.map((e) => (
          <li key={e.key} data-dark={e.dark}>
            <span className="day-when">{formatClock(e.atMin)}</span> {e.text}
          </li>
        ))}
      </ol>
    </section>
  );
};
