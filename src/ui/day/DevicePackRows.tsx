import { setDevicePacks } from '../../plan/edits/floor-packs.ts';
import type { Device } from '../../plan/records/index.ts';
import { backUps } from '../../report/back-up.ts';
import { daySummary, daysOf } from '../../report/day.ts';
import { Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { usePackKinds } from './pack-kinds.ts';

/** The pack on a monitor or a piece of control gear that takes over when its plug is pulled, and for how long. */
export const DevicePackRows = ({ device }: { readonly device: Device }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const packs = usePackKinds();
  const [day = 1] = daysOf(plan);
  const row = backUps(plan, daySummary(plan, day)).find((b) => b.id === device.id);
  return (
    <>
      <h3 className="inspector-head">When its plug is pulled</h3>
      <Row label="Pack on it">
        <select
          className="inline-input"
          aria-label={`Pack on ${device.label}`}
          disabled={readOnly || device.locked === true}
          value={device.packs?.kindId ?? ''}
          onChange={(e) => {
            const kind = packs.find((p) => p.id === e.target.value);
            session.commit(
              kind ? 'Put a pack on it' : 'Take its pack off',
              setDevicePacks(
                plan,
                device.id,
                kind && { kindId: kind.id, count: 1, joined: 'parallel' },
                kind ? [kind] : [],
              ),
            );
          }}
        >
          <option value="">none</option>
          {packs.map((p) => (
            <option key={p.id} value={p.id}>
              {p.name}
            </option>
          ))}
        </select>
      </Row>
      {row ? <p className="row-hint">{row.text}</p> : null}
    </>
  );
};
