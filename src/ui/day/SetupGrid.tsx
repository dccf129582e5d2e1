// biome-ignore-all lint/a11y/useSemanticElements: rows that are drawn only where they are looked at cannot be a table's
// biome-ignore-all lint/a11y/useFocusableInteractive: the grid holds the focus and names the cell it is on
import { useVirtualizer } from '@tanstack/react-virtual';
import { useMemo, useRef, useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { problemText } from '../../kernel/result.ts';
import { setLevelCells } from '../../plan/edits/day.ts';
import { kindOf, levelId, recordOf, recordsOf, setupsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import {
  bounds,
  type Cell,
  type CellLevel,
  type Choice,
  cellsIn,
  choose,
  copyText,
  fillCells,
  holds,
  pasteCells,
  readLevel,
  step,
} from './grid-model.ts';
import { SetupBar } from './SetupBar.tsx';

const ROW_PX = 28;
const HEAD_PX = 230;
const COL_PX = 116;

const STEPS: Readonly<Record<string, readonly [row: number, col: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Units by setups: the level of each, edited like a spreadsheet. Rows out of sight are not made. */
export const SetupGrid = () => {
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

  const levelAt = (cell: Cell): number | undefined => {
    const [f, s] = [fixtures[cell.row], setups[cell.col]];
    return f && s ? recordOf(plan, 'level', levelId(s.id, f.id))?.levelPct : undefined;
  };
  const commit = (label: string, cells: readonly CellLevel[]): void => {
    const edits = cells.flatMap(({ row, col, levelPct }) => {
      const [f, s] = [fixtures[row], setups[col]];
      return f && s ? [{ fixtureId: f.id, setupId: s.id, levelPct }] : [];
    });
    session.commit(label, setLevelCells(plan, edits));
  };
  const say = (message: string): void => session.set({ message });
  const go = (to: Choice): void => {
    setChoice(to);
    rows.scrollToIndex(to.to.row);
    const s = setups[to.to.col];
    if (s && s.id !== session.getState().setupId) session.set({ setupId: s.id });
  };
  /** Puts the typed level into everything that is chosen. */
  const enter = (typed: string): boolean => {
    const level = readLevel(typed);
    if (!level.ok) {
      say(problemText(level.error));
      return false;
    }
    commit(
      'Set level',
      cellsIn(choice).map((c) => ({ ...c, levelPct: level.value })),
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
  const fill = (way: 'down' | 'right'): void =>
    commit(way === 'down' ? 'Fill down' : 'Fill right', fillCells(choice, way, levelAt));

  const onKeyDown = (e: React.KeyboardEvent): void => {
    const stepBy = STEPS[e.key];
    if (draft !== undefined) {
      if (e.key === 'Escape') endTyping(false);
      else if (e.key === 'Enter' || e.key === 'Tab') {
        e.preventDefault();
        if (endTyping(true))
          go(
            step(
              choice,
              e.key === 'Tab' ? { row: 0, col: e.shiftKey ? -1 : 1 } : { row: e.shiftKey ? -1 : 1, col: 0 },
              size,
              false,
            ),
          );
      }
      return;
    }
    const mod = e.ctrlKey || e.metaKey;
    if (stepBy) {
      e.preventDefault();
      const far = mod ? 1e6 : 1;
      go(step(choice, { row: stepBy[0] * far, col: stepBy[1] * far }, size, e.shiftKey));
    } else if (e.key === 'Home' || e.key === 'End') {
      e.preventDefault();
      go(step(choice, { row: 0, col: e.key === 'Home' ? -1e6 : 1e6 }, size, e.shiftKey));
    } else if (mod && e.key.toLowerCase() === 'a') {
      e.preventDefault();
      setChoice({ from: { row: 0, col: 0 }, to: { row: size.rows - 1, col: size.cols - 1 } });
    } else if (readOnly) return;
    else if (mod && (e.key.toLowerCase() === 'd' || e.key.toLowerCase() === 'r')) {
      e.preventDefault();
      fill(e.key.toLowerCase() === 'd' ? 'down' : 'right');
    } else if (e.key === 'Delete' || e.key === 'Backspace') {
      e.preventDefault();
      commit(
        'Clear level',
        cellsIn(choice).map((c) => ({ ...c, levelPct: undefined })),
      );
    } else if (e.key === 'Enter' || e.key === 'F2') {
      e.preventDefault();
      const now = levelAt(choice.to);
      setDraft(now === undefined ? '' : String(now));
    } else if (!mod && !e.altKey && /^[0-9of]$/i.test(e.key)) {
      e.preventDefault();
      setDraft(e.key);
    }
  };

  const b = bounds(choice);
  const many = b.top !== b.bottom || b.left !== b.right;
  const width = HEAD_PX + COL_PX * size.cols;
  const columns = `${HEAD_PX}px repeat(${size.cols}, ${COL_PX}px)`;

  if (size.rows === 0)
    return <p className="day-empty">There is no unit in this plan yet. Place one on the floor.</p>;
  return (
    <div className="setups">
      <SetupBar
        setup={setups.find((s) => s.id === setupId)}
        count={size.cols}
        index={setups.findIndex((s) => s.id === setupId)}
      >
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
      </SetupBar>
      <p className="soft small setups-keys">
        Type a level, 0 for off; Delete clears it (full, assumed). Arrows move, with Shift they choose; Ctrl+C
        and Ctrl+V copy to and from any spreadsheet.
      </p>
      <div
        ref={grid}
        className="grid"
        role="grid"
        aria-label="Levels by unit and setup"
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
          e.clipboardData.setData('text/plain', copyText(choice, levelAt));
          const n = cellsIn(choice).length;
          say(`${n} ${n === 1 ? 'level' : 'levels'} copied.`);
        }}
        onPaste={(e) => {
          if (draft !== undefined || readOnly) return;
          e.preventDefault();
          const cells = pasteCells(e.clipboardData.getData('text/plain'), choice, size);
          if (cells.ok) commit('Paste levels', cells.value);
          say(
            cells.ok
              ? `${cells.value.length} ${cells.value.length === 1 ? 'level' : 'levels'} pasted.`
              : problemText(cells.error),
          );
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
          {setups.map((s) => (
            <span
              key={s.id}
              role="columnheader"
              className="grid-setup"
              data-shown={s.id === setupId}
              title={[s.scene, s.name].filter(Boolean).join(' · ')}
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
                <span role="rowheader" className="grid-unit">
                  <b>{f.unit}</b> <span className="soft">{f.use || kindOf(plan, f.kindId)?.name}</span>
                </span>
                {setups.map((s, col) => {
                  const cell = { row: v.index, col };
                  const level = levelAt(cell);
                  const active = choice.to.row === cell.row && choice.to.col === col;
                  return (
                    <span
                      key={s.id}
                      id={`cell-${cell.row}-${col}`}
                      role="gridcell"
                      tabIndex={-1}
                      aria-colindex={col + 2}
                      aria-selected={holds(choice, cell)}
                      className={active ? 'grid-cell active' : 'grid-cell'}
                      data-state={level === undefined ? 'assumed' : level <= 0 ? 'off' : 'on'}
                      title={level === undefined ? 'no level: full, assumed' : undefined}
                      onPointerDown={(e) => {
                        if (active && draft !== undefined) return;
                        e.preventDefault();
                        if (!endTyping(true)) return;
                        grid.current?.focus();
                        dragging.current = true;
                        go(e.shiftKey ? { from: choice.from, to: cell } : { from: cell, to: cell });
                      }}
                      onPointerEnter={() => {
                        if (dragging.current) setChoice({ from: choice.from, to: cell });
                      }}
                      onDoubleClick={() => {
                        if (!readOnly) setDraft(level === undefined ? '' : String(level));
                      }}
                    >
                      {active && draft !== undefined ? (
                        <input
                          className="grid-input"
                          aria-label={`Level of unit ${f.unit} in ${s.name}`}
                          // biome-ignore lint/a11y/noAutofocus: typing goes on where it began
                          autoFocus
                          value={draft}
                          onChange={(e) => setDraft(e.target.value)}
                          onBlur={() => setDraft(undefined)}
                        />
                      ) : (
                        <>
                          <i
                            className="grid-bar"
                            style={{ width: `${Math.max(0, Math.min(100, level ?? 100))}%` }}
                          />
                          <span>{level === undefined ? '100' : level <= 0 ? 'off' : level}</span>
                        </>
                      )}
                    </span>
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
