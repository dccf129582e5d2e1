import { memo } from 'react';
import type { Address } from '../../plan/address.ts';
import { setDimmerPatch } from '../../plan/edits/dimmer-patch.ts';
import { useServices } from '../services.ts';
import { CellField } from './CellField.tsx';
import { FindingsCell, type PatchRowProps, parseSlot, parseUniverse } from './PatchRow.tsx';
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
    <tr
      aria-rowindex={index + 2}
      data-index={index}
      className={selected ? 'patch-row selected' : 'patch-row'}
      onClick={(e) => {
        if (e.target instanceof HTMLElement && e.target.closest('input,select,button')) return;
        onChoose(b.id, e.shiftKey || e.ctrlKey || e.metaKey);
      }}
    >
      <td>
        <input
          type="checkbox"
          aria-label={`Choose ${name}`}
          checked={selected}
          onChange={() => onChoose(b.id, true)}
        />
      </td>
      <th scope="row">{b.label}</th>
      <td title={row.kindName}>
        <span className="patch-kind">
          {row.kindName || 'kind missing'}
          {b.locked ? <span className="soft"> · locked</span> : null}
        </span>
      </td>
      <td className="soft">dimmer</td>
      <td />
      <td className="soft">{slots === 1 ? '1 · one way' : `${slots} · a way each`}</td>
      <td>
        <CellField
          label={`Universe of ${name}`}
          column="universe"
          className="short num"
          value={row.universe === undefined || Number.isNaN(row.universe) ? '' : `U${row.universe}`}
          parse={parseUniverse}
          disabled={off}
          onCommit={(universe) =>
            put(
              universe === undefined
                ? undefined
                : universe === row.universe && row.address !== undefined
                  ? { universe, address: row.address }
                  : { universe, address: freeSlots(session.getState().plan, slots, universe) },
            )
          }
        />
      </td>
      <td>
        <CellField
          label={`Address of ${name}`}
          column="address"
          className="short num strong"
          value={row.address === undefined ? '' : String(row.address)}
          parse={parseSlot(row.universe)}
          disabled={off}
          onCommit={put}
        />
      </td>
      <td className="num soft">{row.last}</td>
      <td />
      <td className="soft">{row.link ? `line ${row.link}` : ''}</td>
      <td>
        <FindingsCell row={row} />
      </td>
    </tr>
  );
});
