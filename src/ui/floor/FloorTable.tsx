// biome-ignore-all lint/a11y/useSemanticElements: rows that are drawn only where they are looked at cannot be a table's
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid holds the focus and names the cell it is on
// biome-ignore-all lint/a11y/useKeyWithClickEvents: the grid takes the keys for its cells
import { useVirtualizer } from '@tanstack/react-virtual';
import { useMemo, useRef, useState } from 'react';
import type { Id } from '../../kernel/ids.ts';
import { compareNatural } from '../../kernel/ids.ts';
import { type Problem, problemText } from '../../kernel/result.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { COLUMNS, type Column, rowsOf, type TableRow, typeRank } from './table-rows.ts';

const ROW_PX = 28;

interface Cell {
  readonly row: number;
  readonly column: number;
}

/** Everything on the floor as a table: sorted, narrowed and changed in place, with the selection of the drawing. */
export const FloorTable = () => {
  const { session, book } = useServices();
  const s = useSessionSlice((x) => ({
    plan: x.plan,
    floorId: x.floorId,
    setupId: x.setupId,
    selection: x.selection,
    readOnly: x.readOnly,
  }));
  const [query, setQuery] = useState('');
  const [sort, setSort] = useState<{ readonly column: number; readonly down: boolean }>({
    column: 0,
    down: false,
  });
  const [at, setAt] = useState<Cell>({ row: 0, column: 1 });
  const [typed, setTyped] = useState<string | undefined>(undefined);
  const [problem, setProblem] = useState<Problem | undefined>(undefined);
  const scroller = useRef<HTMLDivElement>(null);
  const all = useMemo(() => rowsOf(s.plan, s.floorId, s.setupId), [s.plan, s.floorId, s.setupId]);
  const rows = useMemo(() => {
    const words = query.toLowerCase().split(/\s+/).filter(Boolean);
    const found = all.filter((r) => {
      const text = r.cells.join(' ').toLowerCase();
      return words.every((w) => text.includes(w));
    });
    const way = sort.down ? -1 : 1;
    return [...found].sort(
      (a, b) =>
        way * (sort.column === 0 ? typeRank(a.type) - typeRank(b.type) : 0) ||
        way * compareNatural(a.cells[sort.column] ?? '', b.cells[sort.column] ?? '') ||
        compareNatural(a.cells[1] ?? '', b.cells[1] ?? '') ||
        compareNatural(a.id, b.id),
    );
  }, [all, query, sort]);
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => ROW_PX,
    overscan: 12,
    // The head stays over the rows.
    scrollPaddingStart: ROW_PX,
  });

  const choose = (id: Id, add: boolean): void => {
    const next = new Set(add ? s.selection : []);
    if (add && next.has(id)) next.delete(id);
    else next.add(id);
    session.set({ selection: next });
  };
  const go = (row: number, column: number): void => {
    const to = {
      row: Math.max(0, Math.min(rows.length - 1, row)),
      column: Math.max(0, Math.min(COLUMNS.length - 1, column)),
    };
    setAt(to);
    virtual.scrollToIndex(to.row);
    // Columns beyond the edge come into sight too.
    requestAnimationFrame(() =>
      document
        .getElementById(`cell-${to.row}-${to.column}`)
        ?.scrollIntoView({ block: 'nearest', inline: 'nearest' }),
    );
  };
  // Taking the focus away from the cell blurs it; what Enter has committed is not committed again.
  const ended = useRef(true);
  const begin = (text: string): void => {
    ended.current = false;
    setTyped(text);
  };
  const stop = (): void => {
    ended.current = true;
    setTyped(undefined);
    setProblem(undefined);
    scroller.current?.focus();
  };
  const commit = (row: TableRow, column: Column): void => {
    if (ended.current) return;
    if (typed === undefined || !column.edit) return stop();
    if (typed === row.cells[COLUMNS.indexOf(column)]) return stop();
    const record = s.plan.records.get(row.id);
    const made =
      record &&
      column.edit(s.plan, record, typed, s.setupId, {
        cables: book.cables(),
        adapters: book.adapters(),
        newId: session.newId,
      });
    if (made && !made.ok) return setProblem(made.error);
    if (made) session.commit(`Change ${column.name.toLowerCase()}`, made.value);
    stop();
  };
  const mayEdit = (row: TableRow, column: Column): boolean =>
    !s.readOnly && column.edit !== undefined && column.for.includes(row.type);

  const keys = (e: React.KeyboardEvent): void => {
    if (typed !== undefined || e.ctrlKey || e.metaKey || e.altKey) return;
    const row = rows[at.row];
    const column = COLUMNS[at.column];
    const step: Readonly<Record<string, readonly [number, number]>> = {
      ArrowUp: [-1, 0],
      ArrowDown: [1, 0],
      ArrowLeft: [0, -1],
      ArrowRight: [0, 1],
      PageUp: [-20, 0],
      PageDown: [20, 0],
      Home: [-rows.length, 0],
      End: [rows.length, 0],
    };
    const by = step[e.key];
    if (by) {
      go(at.row + by[0], at.column + by[1]);
      const next = rows[Math.max(0, Math.min(rows.length - 1, at.row + by[0]))];
      if (by[0] !== 0 && next) choose(next.id, e.shiftKey);
    } else if (e.key === ' ' && row) choose(row.id, true);
    else if ((e.key === 'Enter' || e.key === 'F2') && row && column && mayEdit(row, column))
      begin(row.cells[at.column] ?? '');
    else return;
    e.preventDefault();
    e.stopPropagation();
  };

  return (
    <section className="floor-table" aria-label="Everything on this floor">
      <div className="floor-table-find">
        <input
          className="input"
          type="search"
          aria-label="Narrow the table"
          placeholder="Narrow: type, name, kind, circuit…"
          value={query}
          onChange={(e) => setQuery(e.target.value)}
        />
        <span className="soft">
          {rows.length === all.length ? `${all.length} things` : `${rows.length} of ${all.length}`}
        </span>
        <span className="soft small">Arrows move, Enter changes a cell, Space selects, Delete removes.</span>
      </div>
      <div
        ref={scroller}
        className="floor-table-rows"
        role="grid"
        aria-label="Floor table"
        aria-rowcount={rows.length}
        aria-colcount={COLUMNS.length}
        aria-activedescendant={`cell-${at.row}-${at.column}`}
        tabIndex={0}
        onKeyDown={keys}
      >
        <div className="floor-table-head" role="row">
          {COLUMNS.map((c, i) => (
            <div
              key={c.name}
              role="columnheader"
              aria-sort={sort.column !== i ? 'none' : sort.down ? 'descending' : 'ascending'}
            >
              <button
                type="button"
                className="floor-table-sort"
                aria-label={`Sort by ${c.name}`}
                aria-pressed={sort.column === i}
                onClick={() => setSort({ column: i, down: sort.column === i && !sort.down })}
              >
                {c.name}
                {sort.column === i ? (sort.down ? ' ▾' : ' ▴') : ''}
              </button>
            </div>
          ))}
        </div>
        <div className="floor-table-body" style={{ height: virtual.getTotalSize() }} role="presentation">
          {virtual.getVirtualItems().map((v) => {
            const row = rows[v.index];
            if (!row) return null;
            return (
              <div
                key={row.id}
                role="row"
                aria-rowindex={v.index + 1}
                aria-selected={s.selection.has(row.id)}
                className="floor-table-row"
                style={{ transform: `translateY(${v.start}px)` }}
              >
                {COLUMNS.map((c, i) => {
                  const here = at.row === v.index && at.column === i;
                  return (
                    <div
                      key={c.name}
                      id={`cell-${v.index}-${i}`}
                      role="gridcell"
                      tabIndex={-1}
                      aria-colindex={i + 1}
                      data-here={here}
                      data-edit={mayEdit(row, c)}
                      className="floor-table-cell"
                      onClick={(e) => {
                        setAt({ row: v.index, column: i });
                        choose(row.id, e.shiftKey || e.ctrlKey || e.metaKey);
                        scroller.current?.focus();
                      }}
                      onDoubleClick={() => (mayEdit(row, c) ? begin(row.cells[i] ?? '') : undefined)}
                    >
                      {here && typed !== undefined ? (
                        <input
                          className="floor-table-input"
                          aria-label={`${c.name} of ${row.cells[1] ?? ''}`}
                          aria-invalid={problem !== undefined}
                          ref={(el) => {
                            if (el && document.activeElement !== el) el.focus();
                          }}
                          value={typed}
                          onChange={(e) => {
                            setTyped(e.target.value);
                            setProblem(undefined);
                          }}
                          onBlur={() => (problem ? stop() : commit(row, c))}
                          onClick={(e) => e.stopPropagation()}
                          onKeyDown={(e) => {
                            if (e.key === 'Enter') commit(row, c);
                            else if (e.key === 'Escape') stop();
                            else return;
                            e.preventDefault();
                            e.stopPropagation();
                          }}
                        />
                      ) : (
                        row.cells[i]
                      )}
                    </div>
                  );
                })}
              </div>
            );
          })}
        </div>
      </div>
      {problem ? (
        <p className="field-error" role="alert">
          {problemText(problem)}
        </p>
      ) : null}
    </section>
  );
};
