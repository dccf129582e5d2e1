import { useVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useEffect, useRef } from 'react';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { PatchDimmer } from './PatchDimmer.tsx';
import { PatchRow } from './PatchRow.tsx';
import type { SortBy, TableRow } from './rows.ts';

const ROW_PX = 28;
const COLUMNS = [
  'check',
  'unit',
  'kind',
  'use',
  'channel',
  'mode',
  'universe',
  'address',
  'last',
  'paired',
  'link',
  'findings',
];

interface PatchTableProps {
  readonly rows: readonly TableRow[];
  readonly sort: SortBy;
  readonly onSort: (s: SortBy) => void;
}

/** The patch as a table. Only the rows in sight are there; arrow keys and Enter go from row to row in a column. */
export const PatchTable = ({ rows, sort, onSort }: PatchTableProps) => {
  const { session } = useServices();
  const { selection, readOnly } = useSessionSlice((s) => ({ selection: s.selection, readOnly: s.readOnly }));
  const scroll = useRef<HTMLDivElement>(null);
  const list = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroll.current,
    estimateSize: () => ROW_PX,
    overscan: 12,
    scrollPaddingStart: 30,
    scrollPaddingEnd: 60,
    paddingEnd: 40,
  });
  const items = list.getVirtualItems();

  // What is chosen on the map comes into sight here.
  const only = selection.size === 1 ? [...selection][0] : undefined;
  useEffect(() => {
    const at = only === undefined ? -1 : rows.findIndex((r) => r.id === only);
    if (at >= 0) list.scrollToIndex(at, { align: 'auto' });
  }, [only, rows, list]);

  const choose = useCallback(
    (id: string, add: boolean): void => {
      const next = new Set(add ? session.getState().selection : []);
      if (add && next.has(id)) next.delete(id);
      else next.add(id);
      session.set({ selection: next });
    },
    [session],
  );

  const goTo = (index: number, column: string): void => {
    if (index < 0 || index >= rows.length) return;
    list.scrollToIndex(index, { align: 'auto' });
    requestAnimationFrame(() => {
      const cell = scroll.current?.querySelector(`tr[data-index="${index}"] [data-column="${column}"]`);
      if (cell instanceof HTMLElement) {
        cell.focus();
        if (cell instanceof HTMLInputElement) cell.select();
      }
    });
  };

  const top = items[0]?.start ?? 0;
  const bottom = list.getTotalSize() - (items.at(-1)?.end ?? 0);
  const head = (id: SortBy, words: string, num = false) => (
    <th scope="col" className={num ? 'num' : undefined} aria-sort={sort === id ? 'ascending' : 'none'}>
      <button type="button" className="patch-sort" onClick={() => onSort(id)}>
        {words}
        <span aria-hidden="true">{sort === id ? ' ▾' : ''}</span>
      </button>
    </th>
  );

  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys of the fields inside come up to here
    <div
      ref={scroll}
      className="patch-scroll"
      onKeyDown={(e) => {
        const cell = e.target;
        if (!(cell instanceof HTMLInputElement) || !cell.dataset.column) return;
        const index = Number(cell.closest('tr')?.dataset.index);
        const step = e.key === 'ArrowDown' || e.key === 'Enter' ? 1 : e.key === 'ArrowUp' ? -1 : 0;
        if (step === 0 || e.shiftKey) return;
        e.preventDefault();
        goTo(index + step, cell.dataset.column);
      }}
    >
      <table className="table patch-table" aria-rowcount={rows.length + 1}>
        <colgroup>
          {COLUMNS.map((c) => (
            <col key={c} className={`patch-col-${c}`} />
          ))}
        </colgroup>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">
              <span className="visually-hidden">Chosen</span>
            </th>
            {head('unit', 'Unit')}
            {head('kind', 'Kind')}
            <th scope="col">Use</th>
            {head('channel', 'Channel')}
            <th scope="col">Slots · mode</th>
            <th scope="col" className="num">
              Universe
            </th>
            {head('address', 'Address', true)}
            <th scope="col" className="num">
              Last
            </th>
            <th scope="col">Paired</th>
            {head('link', 'Link')}
            <th scope="col">Findings</th>
          </tr>
        </thead>
        <tbody>
          {top > 0 ? <tr style={{ height: top }} /> : null}
          {items.map((item) => {
            const row = rows[item.index];
            if (!row) return null;
            const Row = row.dimmer ? PatchDimmer : PatchRow;
            return (
              <Row
                key={row.id}
                row={row}
                index={item.index}
                selected={selection.has(row.id)}
                disabled={readOnly}
                onChoose={choose}
              />
            );
          })}
          {bottom > 0 ? <tr style={{ height: bottom }} /> : null}
        </tbody>
      </table>
      {rows.length === 0 ? (
        <p className="patch-none soft">No unit matches. Change what is shown above.</p>
      ) : null}
    </div>
  );
};
