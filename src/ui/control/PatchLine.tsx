import type { ReactNode } from 'react';
import { ok, type Result } from '../../kernel/result.ts';
import { type Address, parseAddress, universeProblem } from '../../plan/address.ts';
import { Severity } from '../common/Severity.tsx';
import { useUi } from '../ui-state.ts';
import { CellField } from './CellField.tsx';
import type { TableRow } from './rows.ts';

export interface PatchRowProps {
  readonly row: TableRow;
  readonly index: number;
  readonly selected: boolean;
  readonly disabled: boolean;
  readonly onChoose: (id: string, add: boolean) => void;
}

const parseUniverse = (text: string): Result<number | undefined> => {
  const t = text.trim().replace(/^u\s*/i, '');
  if (t === '') return ok(undefined);
  const n = /^\d+$/.test(t) ? Number(t) : Number.NaN;
  const problem = universeProblem(n);
  return problem
    ? { ok: false, error: Number.isNaN(n) ? { what: `“${text.trim()}” is not a universe.` } : problem }
    : ok(n);
};

const parseSlot =
  (universe: number | undefined) =>
  (text: string): Result<Address | undefined> =>
    text.trim() === '' ? ok(undefined) : parseAddress(text, universe);

/** Universe and first slot of a row, edited where they stand. A commit gives words where it cannot be. */
export const AddressCells = (p: {
  /** What is patched, as it is called in labels: `unit 12`, `dimmer DM1`. */
  readonly name: string;
  readonly row: TableRow;
  readonly disabled: boolean;
  readonly onUniverse: (universe: number | undefined) => string | undefined;
  readonly onAddress: (at: Address | undefined) => string | undefined;
}) => (
  <>
    <td>
      <CellField
        label={`Universe of ${p.name}`}
        column="universe"
        className="short num"
        value={p.row.universe === undefined || Number.isNaN(p.row.universe) ? '' : `U${p.row.universe}`}
        parse={parseUniverse}
        disabled={p.disabled}
        onCommit={p.onUniverse}
      />
    </td>
    <td>
      <CellField
        label={`Address of ${p.name}`}
        column="address"
        className="short num strong"
        value={p.row.address === undefined ? '' : String(p.row.address)}
        parse={parseSlot(p.row.universe)}
        disabled={p.disabled}
        onCommit={p.onAddress}
      />
    </td>
    <td className="num soft">{p.row.last}</td>
  </>
);

/** A line of the patch table: what is chosen by it, its number and kind at the front, what the checks found at its end. */
export const PatchLine = ({
  row,
  index,
  selected,
  onChoose,
  id,
  name,
  number,
  kindName,
  locked,
  children,
}: Omit<PatchRowProps, 'disabled'> & {
  readonly id: string;
  readonly name: string;
  readonly number: string;
  readonly kindName: string | undefined;
  readonly locked: boolean;
  readonly children: ReactNode;
}) => {
  const setFindings = useUi((u) => u.setFindings);
  return (
    <tr
      aria-rowindex={index + 2}
      data-index={index}
      className={selected ? 'patch-row selected' : 'patch-row'}
      onClick={(e) => {
        if (e.target instanceof HTMLElement && e.target.closest('input,select,button')) return;
        onChoose(id, e.shiftKey || e.ctrlKey || e.metaKey);
      }}
    >
      <td>
        <input
          type="checkbox"
          aria-label={`Choose ${name}`}
          checked={selected}
          onChange={() => onChoose(id, true)}
        />
      </td>
      <th scope="row">{number}</th>
      <td title={kindName}>
        <span className="patch-kind">
          {kindName || 'kind missing'}
          {locked ? <span className="soft"> · locked</span> : null}
        </span>
      </td>
      {children}
      <td>
        {row.findings.length > 0 ? (
          <button type="button" className="rail-counts" onClick={() => setFindings(true)}>
            {row.findings.slice(0, 2).map((x) => (
              <Severity key={x.id} level={x.severity}>
                {x.number}
              </Severity>
            ))}
          </button>
        ) : null}
      </td>
    </tr>
  );
};
