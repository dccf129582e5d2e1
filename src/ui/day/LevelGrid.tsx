// biome-ignore-all lint/a11y/useSemanticElements: rows that are drawn only where they are looked at cannot be a table's
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid holds the focus and names the cell it is on
import { useVirtualizer } from '@tanstack/react-virtual';
import { useMemo, useRef, useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { kindOf, recordsOf, setupsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import type { Facet } from './facets.ts';
import { GridCell } from './GridCell.tsx';
import { actOf } from './grid-keys.ts';
import {
  bounds,
  type Cell,
  type CellValue,
  type Choice,
  cellsIn,
  choose,
  copyText,
  fillCells,
  holds,
  pasteCells,
  step,
} from './grid-model.ts';

const ROW_PX = 28;
const HEAD_PX = 230;
const COL_PX = { level: 128, color: 168 } as const;

interface LevelGridProps<V> {
  readonly facet: Facet<V>;
  /** What is above the grid, with the grid's own buttons in it. */
  readonly bar: (tools: React.ReactNode) => React.ReactNode;
}

/** Units by setups with one value in each cell, worked on by keys, mouse and clipboard. Rows out of sight are not made. */
export const LevelGrid = <V,>({ facet, bar }: LevelGridProps<V>) => {
  const { session } = useServices();
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const setups = setupsOf(plan);
  const list = recordsOf(plan, 'fixture');
  const fixtures = useMemo(() => [...list].sort((a, b) => compareNatural(a.unit, b.unit)), [list]);
  const size = { rows: fixtures.length, cols: setups.length };
  const [kept, setChoice] = useState<Choice>({ from: { row: 0, col: 0 }, to: { row: 0, col: 0 } });
  const [draft, setDraft] = useState<string | undefined>(undefined);
  const choice: Choice = { from: choose(kept.from, size).from, to: choose(kept.to, size).to };
  const grid = useRef<HTMLDivElement>(null);
  const dragging = useRef(false);
  const rows = useVirtualizer({
    count: size.rows,
    getScrollElement: () => grid.current,
    estimateSize: () => ROW_PX,
    overscan: 12,
    scrollPaddingStart: 60,
  });

  const at = (cell: Cell): V | undefined => {
    const [f, s] = [fixtures[cell.row], setups[cell.col]];
    return f && s ? facet.at(plan, s.id, f.id) : undefined;
  };
  const commit = (label: string, cells: readonly CellValue<V>[]): void => {
    const values = cells.flatMap(({ row, col, value }) => {
      const [f, s] = [fixtures[row], setups[col]];
      return f && s ? [{ fixtureId: f.id, setupId: s.id, value }] : [];
    });
    session.commit(label, facet.edit(plan, values));
  };
  const say = (message: string): void => session.set({ message });
  const count = (n: number): string => `${n} ${n === 1 ? facet.one : facet.many}`;
  const go = (to: Choice): void => {
    setChoice(to);
    rows.scrollToIndex(to.to.row);
    const s = setups[to.to.col];
    if (s && s.id !== session.getState().setupId) session.set({ setupId: s.id });
  };
  /** Puts what was typed into everything that is chosen. */
  const enter = (typed: string): boolean => {
    const r = facet.read(typed);
    if (!r.ok) {
      say(problemText(r.error));
      return false;
    }
    commit(
      `Set ${facet.one}`,
      cellsIn(choice).map((c) => ({ ...c, value: r.value })),
    );
    say('');
    return true;
  };
  const endTyping = (keep: boolean): boolean => {
    const done = draft === undefined || !keep || enter(draft);
    if (done) setDraft(undefined);
    if (done) grid.current?.focus();
    return done;
  };
  const open = (cell: Cell): void => {
    const now = at(cell);
    setDraft(now === undefined ? '' : facet.text(now));
  };
  const fill = (way: 'down' | 'right'): void =>
    commit(way === 'down' ? 'Fill down' : 'Fill right', fillCells(choice, way, at));

  const onTyping = (e: React.KeyboardEvent): void => {
    if (e.key === 'Escape') endTyping(false);
    else if (e.key === 'Enter' || e.key === 'Tab') {
      e.preventDefault();
      const back = e.shiftKey ? -1 : 1;
      if (endTyping(true))
        go(step(choice, e.key === 'Tab' ? { row: 0, col: back } : { row: back, col: 0 }, size, false));
    }
  };
  const onKeyDown = (e: React.KeyboardEvent): void => {
    if (draft !== undefined) return onTyping(e);
    const act = actOf(e, choice, size, facet.begins);
    if (!act) return;
    if (act.do === 'go' || act.do === 'choose') {
      e.preventDefault();
      if (act.do === 'go') go(act.to);
      else setChoice(act.to);
      return;
    }
    if (readOnly) return;
    e.preventDefault();
    if (act.do === 'fill') fill(act.way);
    else if (act.do === 'open') open(choice.to);
    else if (act.do === 'type') setDraft(act.text);
    else
      commit(
        `Clear ${facet.one}`,
        cellsIn(choice).map((c) => ({ ...c, value: undefined })),
      );
  };

  const b = bounds(choice);
  const many = b.top !== b.bottom || b.left !== b.right;
  const colPx = COL_PX[facet.id];
  const width = HEAD_PX + colPx * size.cols;
  const columns = `${HEAD_PX}px repeat(${size.cols}, ${colPx}px)`;
  const chooseRange = (top: number, left: number, bottom: number, right: number): void => {
    if (!endTyping(true)) return;
    grid.current?.focus();
    go({ from: { row: bottom, col: right }, to: { row: top, col: left } });
  };

  if (size.rows === 0)
    return <p className="day-empty">There is no unit in this plan yet. Place one on the floor.</p>;
  return (
    <div className="setups">
      {bar(
        <>
          <button
            type="button"
            className="button"
            disabled={readOnly || !many}
            title="Ctrl+D"
            onClick={() => fill('down')}
          >
            Fill down
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly || !many}
            title="Ctrl+R"
            onClick={() => fill('right')}
          >
            Fill right
          </button>
        </>,
      )}
      <p className="soft small setups-keys">
        {facet.help} Arrows move, with Shift they choose; Ctrl+C and Ctrl+V copy to and from any spreadsheet.
      </p>
      <div
        ref={grid}
        className="grid"
        role="grid"
        aria-label={`${facet.name} by unit and setup`}
        aria-rowcount={size.rows + 1}
        aria-colcount={size.cols + 1}
        aria-multiselectable="true"
        aria-readonly={readOnly}
        aria-activedescendant={`cell-${choice.to.row}-${choice.to.col}`}
        tabIndex={0}
        onKeyDown={onKeyDown}
        onCopy={(e) => {
          if (draft !== undefined) return;
          e.preventDefault();
          e.clipboardData.setData('text/plain', copyText(choice, at, facet.text));
          say(`${count(cellsIn(choice).length)} copied.`);
        }}
        onPaste={(e) => {
          if (draft !== undefined || readOnly) return;
          e.preventDefault();
          const cells = pasteCells(e.clipboardData.getData('text/plain'), choice, size, facet.read);
          if (cells.ok) commit(`Paste ${facet.many}`, cells.value);
          say(cells.ok ? `${count(cells.value.length)} pasted.` : problemText(cells.error));
        }}
        onPointerUp={() => {
          dragging.current = false;
        }}
      >
        <div
          className="grid-row grid-top"
          role="row"
          aria-rowindex={1}
          style={{ gridTemplateColumns: columns, width }}
        >
          <span role="columnheader" className="grid-corner">
            Unit
          </span>
          {setups.map((s, col) => (
            <span
              key={s.id}
              role="columnheader"
              className="grid-setup"
              data-shown={s.id === setupId}
              title={[s.scene, s.name].filter(Boolean).join(' · ')}
              onPointerDown={(e) => {
                e.preventDefault();
                chooseRange(0, col, size.rows - 1, col);
              }}
            >
              <b>{s.scene || '\u00a0'}</b>
              <span>{s.name}</span>
            </span>
          ))}
        </div>
        <div role="rowgroup" className="grid-body" style={{ height: rows.getTotalSize(), width }}>
          {rows.getVirtualItems().map((v) => {
            const f = fixtures[v.index];
            if (!f) return null;
            return (
              <div
                key={f.id}
                role="row"
                aria-rowindex={v.index + 2}
                className="grid-row"
                style={{ gridTemplateColumns: columns, transform: `translateY(${v.start}px)` }}
              >
                <span
                  role="rowheader"
                  className="grid-unit"
                  onPointerDown={(e) => {
                    e.preventDefault();
                    chooseRange(v.index, 0, v.index, size.cols - 1);
                  }}
                >
                  <b>{f.unit}</b> <span className="soft">{f.use || kindOf(plan, f.kindId)?.name}</span>
                </span>
                {setups.map((s, col) => {
                  const cell = { row: v.index, col };
                  const active = choice.to.row === cell.row && choice.to.col === col;
                  return (
                    <GridCell
                      key={s.id}
                      plan={plan}
                      facet={facet.id}
                      fixture={f}
                      setup={s}
                      cell={cell}
                      active={active}
                      chosen={holds(choice, cell)}
                      draft={draft}
                      onDraft={setDraft}
                      onPress={(e) => {
                        if (active && draft !== undefined) return;
                        e.preventDefault();
                        if (!endTyping(true)) return;
                        grid.current?.focus();
                        dragging.current = true;
                        go(e.shiftKey ? { from: choice.from, to: cell } : { from: cell, to: cell });
                      }}
                      onEnter={() => {
                        if (dragging.current) setChoice({ from: choice.from, to: cell });
                      }}
                      onOpen={() => {
                        if (!readOnly) open(cell);
                      }}
                    />
                  );
                })}
              </div>
            );
          })}
        </div>
      </div>
    </div>
  );
};
