/** Lines of each hatch in a square of eight, as a path; the first universe is plain. */
const HATCHES = [
  '',
  'M-2 2L2 -2M0 8L8 0M6 10L10 6',
  'M-2 6L2 10M0 0L8 8M6 -2L10 2',
  'M0 2H8M0 6H8',
  'M2 0V8M6 0V8',
  'M0 0L8 8M0 8L8 0',
  'M1 1H3V3H1ZM5 5H7V7H5Z',
  'M0 4H8M4 0V8',
];

/** The hatches of the universes; one for all maps of a page. */
export const HatchDefs = () => (
  <svg className="visually-hidden" aria-hidden="true">
    <defs>
      {HATCHES.map((d, i) => (
        <pattern key={i} id={`universe-hatch-${i}`} width="8" height="8" patternUnits="userSpaceOnUse">
          <path d={d} className="universe-hatch" />
        </pattern>
      ))}
    </defs>
  </svg>
);
