import { daySummary } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { BackUps } from './BackUps.tsx';
import { ChargerTable } from './ChargerTable.tsx';
import { FewestPacks } from './FewestPacks.tsx';
import { FloorPacks } from './FloorPacks.tsx';
import { PackSettings } from './PackSettings.tsx';
import { PackUnits } from './PackUnits.tsx';
import { StockTable } from './StockTable.tsx';

/** What runs on packs or its own cells, how many packs and bays there are, and how many are needed. */
export const PacksView = ({ day }: { readonly day: number }) => {
  const plan = useSessionSlice((s) => s.plan);
  const summary = daySummary(plan, day);
  return (
    <div className="packs">
      <PackUnits summary={summary} />
      <FloorPacks summary={summary} />
      <StockTable summary={summary} />
      <FewestPacks day={day} summary={summary} />
      <ChargerTable />
      <BackUps summary={summary} />
      <PackSettings />
      <p className="soft">
        Runtimes are planning values for packs of usual health, from worst to best. The packs’ own state, cold
        and age decide; their makers’ instructions come first.
      </p>
    </div>
  );
};
