import { packCurrentRows } from '../../report/pack-currents.ts';
import { Figure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';

/** What one pack gives at full and when switched on, against what it may, each leading to its working. */
export const PackCurrents = ({ id }: { readonly id: string }) => {
  const plan = useSessionSlice((s) => s.plan);
  const rows = packCurrentRows(plan, id);
  if (rows.length === 0) return null;
  return (
    <>
      <h3 className="pack-dialog-head">Current of one pack, nearly empty</h3>
      {rows.map((r) => (
        <div key={r.key} className={r.over ? 'packs-runtime over' : 'packs-runtime'}>
          <span className="soft">{r.name}</span> <Figure figureKey={r.key}>{r.text}</Figure>
        </div>
      ))}
    </>
  );
};
