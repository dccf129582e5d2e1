import { ok } from '../../kernel/result.ts';
import { type Address, parseAddress, printAddress } from '../../plan/address.ts';
import { dimmerSlots, setDimmerPatch } from '../../plan/edits/dimmer-patch.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import type { Box } from '../../plan/records/index.ts';
import { Field } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { commitOr } from './patching.ts';

const addressOf = (plan: Plan, b: Box): Address | undefined => {
  const universe = b.patch && recordOf(plan, 'universe', b.patch.universeId)?.number;
  return b.patch && universe !== undefined ? { universe, address: b.patch.address } : undefined;
};

/** Where a dimmer listens: its first slot; a way a slot from there on. Nothing for a knob or another box. */
export const DimmerRows = ({ box }: { readonly box: Box }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const slots = dimmerSlots(plan, box);
  if (slots === 0) return null;
  const at = addressOf(plan, box);
  return (
    <>
      <h3 className="inspector-head">Control</h3>
      <Field<Address | undefined>
        label="Address"
        value={at}
        format={(a) => (a ? printAddress(a) : '')}
        parse={(t) => (t.trim() === '' ? ok(undefined) : parseAddress(t, at?.universe))}
        disabled={readOnly || box.locked === true}
        hint={
          !at
            ? `like U3 418; takes ${slots} ${slots === 1 ? 'slot' : 'slots'}`
            : slots > 1
              ? `${slots} slots, to ${at.address + slots - 1}: a way each`
              : '1 slot'
        }
        onCommit={(a) =>
          session.set({
            message:
              commitOr(
                session,
                a ? `Address of ${box.label}` : `Take the address of ${box.label} away`,
                setDimmerPatch(session.getState().plan, box.id, a),
              ) ?? '',
          })
        }
      />
    </>
  );
};
