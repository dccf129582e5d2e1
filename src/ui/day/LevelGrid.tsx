// biome-ignore-all lint/a11y/useSemanticElements: rows that are drawn only where they are looked at cannot be a table's
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid holds the focus and names the cell it is on
import { useVirtualizer } from '@tanstack/react-virtual';
import { useLayoutEffect, useRef, useState } from 'react';
import { kindOf } from '../../plan/plan.ts';
import type { Facet } from './facets.ts';
import { GridCell } from './GridCell.tsx';
import { GridFoot } from './GridFoot.tsx';
import { bounds } from './grid-model.ts';
import { useLevelGrid } from './use-level-grid.ts';
import { useSetupDrag } from './use-setup-drag.ts';

const ROW_PX = 28;
const HEAD_PX = 230;
/** Columns are as wide as there is room, within bounds. */
const COL_PX = { level: [128, 190], color: [168, 230], place: [150, 210] } as const;

interface LevelGridProps<V> {
  readonly facet: Facet<V>;
  /** What is above the grid, with the grid's own buttons in it. */
  readonly bar: (tools: React.ReactNode) => React.ReactNode;
}

/** Units by setups with one value in each cell, worked on by keys, mouse and clipboard. Rows out of sight are not made. */
export const LevelGrid = <V,>({ facet, bar }: LevelGridProps<V>) => {
  const scroll = useRef<(row: number) => void>(() => {});
  const g = useLevelGrid(facet, (row) => scroll.current(row));
  const rows = useVirtualizer({
    count: g.size.rows,
    getScrollElement: () => g.grid.current,
    estimateSize: () => ROW_PX,
    overscan: 12,
    scrollPaddingStart: 60,
    scrollPaddingEnd: 40,
  });
  scroll.current = (row) => rows.scrollToIndex(row);
  const outer = useRef<HTMLDivElement>(null);
  const [roomPx, setRoom] = useState(1200);
  useLayoutEffect(() => {
    const el = outer.current;
    if (!el) return;
    const watch = new ResizeObserver(() => setRoom(el.clientWidth));
    watch.observe(el);
    return () => watch.disconnect();
  }, []);

  const b = bounds(g.choice);
  const many = b.top !== b.bottom || b.left !== b.right;
  const [least, most] = COL_PX[facet.id];
  const colPx = Math.max(
    least,
    Math.min(most, Math.floor((roomPx - HEAD_PX - 20) / Math.max(1, g.size.cols))),
  );
  const width = HEAD_PX + colPx * g.size.cols;
  const columns = `${HEAD_PX}px repeat(${g.size.cols}, ${colPx}px)`;

  const drag = useSetupDrag(g.grid, g.setups, HEAD_PX, colPx, g.readOnly, (col) =>
    g.chooseRange({ row: b.top, col }, { row: b.bottom, col }),
  );
  const onKeyDown = (e: React.KeyboardEvent): void => {
    const by = e.key === 'ArrowLeft' ? -1 : e.key === 'ArrowRight' ? 1 : 0;
    if (by === 0 || !e.altKey || !e.shiftKey || e.ctrlKey || e.metaKey || g.draft !== undefined)
      return g.onKeyDown(e);
    e.preventDefault();
    drag.step(g.choice.to.col, by);
  };

  if (g.size.rows === 0)
    return <p className="day-empty">There is no unit in this plan yet. Place one on the floor.</p>;
  return (
    <div className="setups" ref={outer}>
      {bar(
        <>
          <button
            type="button"
            className="button"
            disabled={g.readOnly || !many}
            title={
              many ? 'Copies the first row of what is chosen down (Ctrl+D)' : 'Choose several cells first'
            }
            onClick={() => g.fill('down')}
          >
            Fill down
          </button>
          <button
            type="button"
            className="button"
            disabled={g.readOnly || !many}
            title={
              many
                ? 'Copies the first column of what is chosen to the right (Ctrl+R)'
                : 'Choose several cells first'
            }
            onClick={() => g.fill('right')}
          >
            Fill right
          </button>
        </>,
      )}
      <p className="soft small setups-keys">
        {facet.help} Arrows move, with Shift they choose, Ctrl and a press adds; draw the corner of what is
        chosen to fill.
        {facet.id === 'place' ? '' : ' Ctrl+C, Ctrl+X and Ctrl+V work with any spreadsheet.'} Drag the head of
        a setup, or press Alt+Shift and an arrow, to put it elsewhere in the order.
      </p>
      <div
        ref={g.grid}
        className="grid"
        role="grid"
        aria-label={`${facet.name} by unit and setup`}
        aria-rowcount={g.size.rows + 1}
        aria-colcount={g.size.cols + 1}
        aria-multiselectable="true"
        aria-readonly={g.readOnly}
        aria-activedescendant={`cell-${g.choice.to.row}-${g.choice.to.col}`}
        tabIndex={0}
        onKeyDown={onKeyDown}
        onCopy={(e) => g.copy(e, false)}
        onCut={(e) => g.copy(e, true)}
        onPaste={g.paste}
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
          {g.setups.map((s, col) => (
            <span
              key={s.id}
              role="columnheader"
              className="grid-setup"
              data-shown={s.id === g.setupId}
              data-drop={drag.mark(col)}
              title={`${[s.scene, s.name].filter(Boolean).join(' · ')}; drag it to another place in the order (Alt+Shift+arrows)`}
              onPointerDown={(e) => {
                e.preventDefault();
                drag.press(e, col);
                g.chooseRange({ row: 0, col: e.shiftKey ? b.left : col }, { row: g.size.rows - 1, col });
              }}
            >
              <b>{s.scene || '\u00a0'}</b>
              <span>{s.name}</span>
            </span>
          ))}
        </div>
        <div role="rowgroup" className="grid-body" style={{ height: rows.getTotalSize(), width }}>
          {rows.getVirtualItems().map((v) => {
            const f = g.fixtures[v.index];
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
                  title={[f.use, kindOf(g.plan, f.kindId)?.name].filter(Boolean).join(' · ')}
                  onPointerDown={(e) => {
                    e.preventDefault();
                    g.chooseRange(
                      { row: e.shiftKey ? b.top : v.index, col: 0 },
                      { row: v.index, col: g.size.cols - 1 },
                    );
                  }}
                >
                  <b>{f.unit}</b> <span className="soft">{f.use || kindOf(g.plan, f.kindId)?.name}</span>
                </span>
                {g.setups.map((s, col) => {
                  const cell = { row: v.index, col };
                  return (
                    <GridCell
                      key={s.id}
                      plan={g.plan}
                      facet={facet.id}
                      fixture={f}
                      setup={s}
                      cell={cell}
                      active={g.choice.to.row === cell.row && g.choice.to.col === col}
                      chosen={g.isChosen(cell)}
                      filled={g.isFilled(cell)}
                      corner={g.canGrip && b.bottom === cell.row && b.right === col ? g.grip : undefined}
                      draft={g.draft}
                      onDraft={g.setDraft}
                      onPress={(e) => g.press(cell, e)}
                      onEnter={() => g.enterCell(cell)}
                      onOpen={() => g.open(cell)}
                    />
                  );
                })}
              </div>
            );
          })}
        </div>
        <GridFoot setups={g.setups} columns={columns} widthPx={width} />
      </div>
    </div>
  );
};
