// biome-ignore-all lint/a11y/useSemanticElements: it is a row of a grid that cannot be a table
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid holds the focus
import { formatWatts } from '../../kernel/units.ts';
import { levelOf, recordsOf, type setupsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';

/** Under each setup how many units are on and what the sources give for it. */
export const GridFoot = ({
  setups,
  columns,
  widthPx,
}: {
  readonly setups: ReturnType<typeof setupsOf>;
  readonly columns: string;
  readonly widthPx: number;
}) => {
  const { plan, assessment } = useSessionSlice((s) => ({ plan: s.plan, assessment: s.assessment }));
  const fixtures = recordsOf(plan, 'fixture');
  const sources = assessment?.entities.filter((e) => e.what === 'source') ?? [];
  const watts = (setupId: string): number => {
    const at = assessment?.figures.setupIds.indexOf(setupId) ?? -1;
    return sources.reduce((sum, e) => {
      const w = assessment?.figures.get(e.key, 'loadW', at) ?? Number.NaN;
      return Number.isNaN(w) ? sum : sum + w;
    }, 0);
  };
  return (
    <div className="grid-row grid-foot" role="row" style={{ gridTemplateColumns: columns, width: widthPx }}>
      <span
        role="rowheader"
        className="grid-corner"
        title="Units that are on; real power of what hangs on the sources at nominal volts, cable loss left out"
      >
        On, from the sources
      </span>
      {setups.map((s) => (
        <span key={s.id} role="gridcell" className="grid-sum">
          <span>{fixtures.filter((f) => levelOf(plan, s.id, f.id).levelPct > 0).length} on</span>
          <b>{sources.length > 0 ? formatWatts(watts(s.id)) : '–'}</b>
        </span>
      ))}
    </div>
  );
};
