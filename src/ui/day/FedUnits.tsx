import { compareNatural } from '../../kernel/ids.ts';
import { setPackFrom } from '../../plan/edits/floor-packs.ts';
import { kindOf, recordsOf } from '../../plan/plan.ts';
import type { FloorPackRow } from '../../report/floor-packs.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Units on a pack on the floor: each can be unplugged, others plugged in. */
export const FedUnits = ({ row }: { readonly row: FloorPackRow }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const fed = new Set(row.fed.map((x) => x.id));
  const free = [...recordsOf(plan, 'fixture')]
    .filter((f) => !fed.has(f.id) && !f.locked)
    .sort((a, b) => Number(b.onPacks) - Number(a.onPacks) || compareNatural(a.unit, b.unit));
  return (
    <>
      <ul className="fed">
        {row.fed.map((f) => (
          <li key={f.id}>
            {f.label}
            <button
              type="button"
              className="button quiet"
              disabled={readOnly}
              aria-label={`Unplug ${f.label} from ${row.label}`}
              onClick={() => session.commit(`Unplug ${f.label}`, setPackFrom(plan, [f.id], undefined))}
            >
              ×
            </button>
          </li>
        ))}
      </ul>
      <select
        className="cell-select"
        aria-label={`Plug a unit into ${row.label}`}
        disabled={readOnly}
        value=""
        onChange={(e) =>
          session.commit(
            `Plug into ${row.label}`,
            setPackFrom(plan, [e.target.value], { packId: row.record.id }),
          )
        }
      >
        <option value="">plug in a unit…</option>
        {free.map((f) => (
          <option key={f.id} value={f.id}>
            {[f.unit, kindOf(plan, f.kindId)?.name, f.onPacks ? '' : 'on mains'].filter(Boolean).join(' · ')}
          </option>
        ))}
      </select>
    </>
  );
};
