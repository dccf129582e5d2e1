import { memo } from 'react';
import { ok, type Result } from '../../kernel/result.ts';
import { type Address, parseAddress, universeProblem } from '../../plan/address.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { setPaired } from '../../plan/edits/patch.ts';
import { footprintOf } from '../../plan/footprint.ts';
import { anyText } from '../common/parse.ts';
import { Severity } from '../common/Severity.tsx';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { CellField } from './CellField.tsx';
import { changePatch, commitOr, unpatch } from './patching.ts';
import type { TableRow } from './rows.ts';

export interface PatchRowProps {
  readonly row: TableRow;
  readonly index: number;
  readonly selected: boolean;
  readonly disabled: boolean;
  readonly onChoose: (id: string, add: boolean) => void;
}

export const parseUniverse = (text: string): Result<number | undefined> => {
  const t = text.trim().replace(/^u\s*/i, '');
  if (t === '') return ok(undefined);
  const n = /^\d+$/.test(t) ? Number(t) : Number.NaN;
  const problem = universeProblem(n);
  return problem
    ? { ok: false, error: Number.isNaN(n) ? { what: `“${text.trim()}” is not a universe.` } : problem }
    : ok(n);
};

export const parseSlot =
  (universe: number | undefined) =>
  (text: string): Result<Address | undefined> =>
    text.trim() === '' ? ok(undefined) : parseAddress(text, universe);

/** What the checks found about a row. */
export const FindingsCell = ({ row }: { readonly row: TableRow }) => {
  const setFindings = useUi((u) => u.setFindings);
  return row.findings.length > 0 ? (
    <button type="button" className="rail-counts" onClick={() => setFindings(true)}>
      {row.findings.slice(0, 2).map((x) => (
        <Severity key={x.id} level={x.severity}>
          {x.number}
        </Severity>
      ))}
    </button>
  ) : null;
};

/** One unit of the patch table, each cell edited where it stands. */
export const PatchRow = memo(({ row, index, selected, disabled, onChoose }: PatchRowProps) => {
  const { session } = useServices();
  const { fixture: f, kind, mode } = row;
  if (!f) return null;
  const off = disabled || f.locked === true;
  const unit = `unit ${f.unit}`;

  return (
    <tr
      aria-rowindex={index + 2}
      data-index={index}
      className={selected ? 'patch-row selected' : 'patch-row'}
      onClick={(e) => {
        if (e.target instanceof HTMLElement && e.target.closest('input,select,button')) return;
        onChoose(f.id, e.shiftKey || e.ctrlKey || e.metaKey);
      }}
    >
      <td>
        <input
          type="checkbox"
          aria-label={`Choose ${unit}`}
          checked={selected}
          onChange={() => onChoose(f.id, true)}
        />
      </td>
      <th scope="row">{f.unit}</th>
      <td title={kind?.name}>
        <span className="patch-kind">
          {kind?.name ?? 'kind missing'}
          {f.locked ? <span className="soft"> · locked</span> : null}
        </span>
      </td>
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
          <td>
            <CellField
              label={`Universe of ${unit}`}
              column="universe"
              className="short num"
              value={row.universe === undefined || Number.isNaN(row.universe) ? '' : `U${row.universe}`}
              parse={parseUniverse}
              disabled={off}
              onCommit={(universe) =>
                universe === undefined
                  ? unpatch(session, [f.id], `Take the address of ${unit} away`)
                  : changePatch(session, f.id, { universe })
              }
            />
          </td>
          <td>
            <CellField
              label={`Address of ${unit}`}
              column="address"
              className="short num strong"
              value={row.address === undefined ? '' : String(row.address)}
              parse={parseSlot(row.universe)}
              disabled={off}
              onCommit={(at) =>
                at === undefined
                  ? unpatch(session, [f.id], `Take the address of ${unit} away`)
                  : changePatch(session, f.id, at)
              }
            />
          </td>
          <td className="num soft">{row.last}</td>
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
      <td>
        <FindingsCell row={row} />
      </td>
    </tr>
  );
});
