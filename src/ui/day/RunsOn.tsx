import { kindOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import { floorPackRows, outletsLeft } from '../../report/floor-packs.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { usePackKinds } from './pack-kinds.ts';
import { floorChoice, runOn, runsOn } from './run-on.ts';

/** What a unit runs on: its own cells, packs on itself, or a pack on the floor it shares with others. */
export const RunsOn = ({
  fixture: f,
  label,
  className,
}: {
  readonly fixture: Fixture;
  readonly label: string;
  readonly className: string;
}) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const packs = usePackKinds();
  const kind = kindOf(plan, f.kindId, 'fixture');
  const usual = kind?.packIn;
  const suits = packs.filter((p) => usual?.plates.includes(p.plate));
  const others = packs.filter((p) => !usual?.plates.includes(p.plate));
  const floor = floorPackRows(plan);
  return (
    <select
      className={className}
      aria-label={label}
      disabled={readOnly || f.locked === true}
      value={runsOn(f)}
      onChange={(e) => session.commit('Choose packs', runOn(plan, f, e.target.value, packs))}
    >
      <option value="">{kind?.ownCellsWh ? `own cells, ${kind.ownCellsWh} Wh` : 'not chosen'}</option>
      {floor.length > 0 ? (
        <optgroup label="A pack on the floor, shared">
          {floor.map((p) => (
            <option key={p.record.id} value={floorChoice(p.record.id)}>
              {`${p.label} · ${p.kindName} · ${outletsLeft(p)}`}
            </option>
          ))}
        </optgroup>
      ) : null}
      {suits.length > 0 ? (
        <optgroup label="On its plate or inlet">
          {suits.map((p) => (
            <option key={p.id} value={p.id}>
              {p.name}
            </option>
          ))}
        </optgroup>
      ) : null}
      <optgroup label={suits.length > 0 ? 'Other plates' : 'Packs'}>
        {others.map((p) => (
          <option key={p.id} value={p.id}>
            {p.name}
          </option>
        ))}
      </optgroup>
      {f.packs && !f.packFrom && !packs.some((p) => p.id === f.packs?.kindId) ? (
        <option value={f.packs.kindId}>not in the plan</option>
      ) : null}
      {f.packFrom && !floor.some((p) => p.record.id === f.packFrom?.packId) ? (
        <option value={runsOn(f)}>a pack that is gone</option>
      ) : null}
    </select>
  );
};
