import { kindOf } from '../../plan/plan.ts';
import type { FloorPack } from '../../plan/records/index.ts';
import { floorPackRows, outletsLeft } from '../../report/floor-packs.ts';
import { AIR_SOURCE, airWords } from '../../report/pack-air.ts';
import { Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { FedUnits } from './FedUnits.tsx';
import './day.css';

/** A pack on the floor in the properties: what it feeds, the outlets that remain, how it travels. */
export const PackRows = ({ pack }: { readonly pack: FloorPack }) => {
  const { session } = useServices();
  const plan = useSessionSlice((s) => s.plan);
  const row = floorPackRows(plan).find((p) => p.record.id === pack.id);
  const kind = kindOf(plan, pack.kindId, 'pack');
  if (!row) return null;
  const air = kind ? airWords(kind.chemistry, kind.energyWh) : '';
  return (
    <>
      <h3 className="inspector-head">Feeds</h3>
      <FedUnits row={row} />
      <Row label="Outlets">
        {outletsLeft(row)}
        {row.outlets.length > 0 ? <span className="soft row-hint"> of {row.outlets.length}</span> : null}
      </Row>
      {air ? (
        <Row label="By air">
          <span title={AIR_SOURCE}>{air}</span>
        </Row>
      ) : null}
      <button type="button" className="link" onClick={() => session.set({ workspace: 'day' })}>
        runtimes and changes: Day
      </button>
    </>
  );
};
