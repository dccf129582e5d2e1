import { memo } from 'react';
import type { Address } from '../../plan/address.ts';
import { setDimmerPatch } from '../../plan/edits/dimmer-patch.ts';
import { useServices } from '../services.ts';
import { AddressCells, PatchLine, type PatchRowProps } from './PatchLine.tsx';
import { commitOr, freeSlots } from './patching.ts';

/** One dimmer of the patch table: a slot a way, its first slot edited where it stands. */
export const PatchDimmer = memo(({ row, index, selected, disabled, onChoose }: PatchRowProps) => {
  const { session } = useServices();
  const { dimmer: b, slots = 0 } = row;
  if (!b) return null;
  const off = disabled || b.locked === true;
  const name = `dimmer ${b.label}`;
  const put = (at: Address | undefined): string | undefined =>
    commitOr(
      session,
      at ? `Address of ${name}` : `Take the address of ${name} away`,
      setDimmerPatch(session.getState().plan, b.id, at),
    );
  return (
    <PatchLine
      row={row}
      index={index}
      selected={selected}
      onChoose={onChoose}
      id={b.id}
      name={name}
      number={b.label}
      kindName={row.kindName}
      locked={b.locked === true}
    >
      <td className="soft">dimmer</td>
      <td />
      <td className="soft">{slots === 1 ? '1 · one way' : `${slots} · a way each`}</td>
      <AddressCells
        name={name}
        row={row}
        disabled={off}
        onUniverse={(universe) => {
          if (universe === undefined) return put(undefined);
          const stays = universe === row.universe ? row.address : undefined;
          return put({ universe, address: stays ?? freeSlots(session.getState().plan, slots, universe) });
        }}
        onAddress={put}
      />
      <td />
      <td className="soft">{row.link ? `line ${row.link}` : ''}</td>
    </PatchLine>
  );
});
