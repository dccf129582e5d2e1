import { memo } from 'react';
import { changeRecord } from '../../plan/edits/document.ts';
import { setPaired } from '../../plan/edits/patch.ts';
import { footprintOf } from '../../plan/footprint.ts';
import { anyText } from '../common/parse.ts';
import { useServices } from '../services.ts';
import { CellField } from './CellField.tsx';
import { AddressCells, PatchLine, type PatchRowProps } from './PatchLine.tsx';
import { changePatch, commitOr, unpatch } from './patching.ts';

/** One unit of the patch table, each cell edited where it stands. */
export const PatchRow = memo(({ row, index, selected, disabled, onChoose }: PatchRowProps) => {
  const { session } = useServices();
  const { fixture: f, kind, mode } = row;
  if (!f) return null;
  const off = disabled || f.locked === true;
  const unit = `unit ${f.unit}`;

  return (
    <PatchLine
      row={row}
      index={index}
      selected={selected}
      onChoose={onChoose}
      id={f.id}
      name={unit}
      number={f.unit}
      kindName={kind?.name}
      locked={f.locked === true}
    >
      <td className="patch-cut soft" title={f.use}>
        {f.use}
      </td>
      <td>
        <CellField
          label={`Channel of ${unit}`}
          column="channel"
          className="short"
          value={f.channel}
          parse={anyText}
          disabled={off}
          onCommit={(channel) =>
            commitOr(session, `Channel of ${unit}`, changeRecord(session.getState().plan, f, { channel }))
          }
        />
      </td>
      {row.takesData ? (
        <>
          <td>
            <select
              className="inline-input cell-select"
              aria-label={`Mode of ${unit}`}
              data-column="mode"
              disabled={off}
              value={mode?.id ?? ''}
              onChange={(e) => {
                const why = changePatch(
                  session,
                  f.id,
                  f.patch
                    ? { modeId: e.target.value }
                    : { modeId: e.target.value, universe: row.universe ?? 1 },
                );
                session.set({ message: why ?? '' });
              }}
            >
              {mode ? null : <option value="">{f.patch ? 'mode missing' : 'choose'}</option>}
              {(kind?.modes ?? []).map((m) => (
                <option key={m.id} value={m.id}>
                  {footprintOf(m).slots} · {m.name}
                </option>
              ))}
            </select>
          </td>
          <AddressCells
            name={unit}
            row={row}
            disabled={off}
            onUniverse={(universe) =>
              universe === undefined
                ? unpatch(session, [f.id], `Take the address of ${unit} away`)
                : changePatch(session, f.id, { universe })
            }
            onAddress={(at) =>
              at === undefined
                ? unpatch(session, [f.id], `Take the address of ${unit} away`)
                : changePatch(session, f.id, at)
            }
          />
          <td>
            <input
              type="checkbox"
              aria-label={`${unit} is paired`}
              checked={f.patch?.paired ?? false}
              disabled={off || !f.patch}
              onChange={(e) =>
                session.commit(
                  e.target.checked ? `Pair ${unit}` : `Unpair ${unit}`,
                  setPaired(session.getState().plan, [f.id], e.target.checked),
                )
              }
            />
          </td>
        </>
      ) : (
        <td colSpan={6} className="soft">
          not on control data: {row.control}
        </td>
      )}
      {row.takesData ? (
        <td>
          <select
            className="inline-input cell-select"
            aria-label={`Link of ${unit}`}
            data-column="link"
            disabled={off}
            value={f.link}
            onChange={(e) =>
              commitOr(
                session,
                `Link of ${unit}`,
                changeRecord(session.getState().plan, f, { link: e.target.value as typeof f.link }),
              )
            }
          >
            <option value="none">not set</option>
            <option value="line">line{row.link && f.link === 'line' ? ` ${row.link}` : ''}</option>
            <option value="radio">radio{row.link && f.link === 'radio' ? ` ${row.link}` : ''}</option>
          </select>
        </td>
      ) : null}
    </PatchLine>
  );
});
