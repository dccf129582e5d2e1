import { useId, useState } from 'react';
import { type PatchRow, placeProblem, type UniverseUse } from '../../engines/control/index.ts';
import { problemText } from '../../kernel/result.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import { useServices } from '../services.ts';
import { boxesOf, type Grid, gridHeight, slotAt, widest } from './blocks.ts';
import { universeColor, universeHatch } from './palette.ts';
import { type BlockDrag, commitMove } from './use-block-drag.ts';

interface UniverseStripProps {
  readonly plan: Plan;
  readonly use: UniverseUse;
  readonly all: readonly UniverseUse[];
  readonly colorIndex: number;
  readonly grid: Grid;
  readonly selection: ReadonlySet<string>;
  readonly drag: BlockDrag | undefined;
  readonly onGrab: (row: PatchRow, slot: number, x: number, y: number) => void;
}

const LABEL_PX = 7;

/** The 512 slots of one universe with a block for each fixture and the free gaps between. */
export const UniverseStrip = (p: UniverseStripProps) => {
  const { session } = useServices();
  const id = useId();
  const { use, grid } = p;
  const blocks = use.rows.filter((r) => r.slots > 0);
  // Kept by name: a block that is dragged past others stays the one at hand.
  const [active, setActive] = useState('');
  const nameOf = (r: PatchRow): string => `${r.fixtureId}-${r.fromSlot}`;
  const current = blocks.find((r) => nameOf(r) === active) ?? blocks[0];
  const unitOf = (r: PatchRow): string =>
    recordOf(p.plan, 'fixture', r.fixtureId)?.unit ?? recordOf(p.plan, 'box', r.fixtureId)?.label ?? '';
  const optionId = (r: PatchRow): string => `${id}-${nameOf(r)}`;

  const choose = (r: PatchRow, add: boolean): void => {
    const next = new Set(add ? session.getState().selection : []);
    if (add && next.has(r.fixtureId)) next.delete(r.fixtureId);
    else next.add(r.fixtureId);
    session.set({ selection: next, message: '' });
  };

  /** Moves the block at hand by keyboard, where it may go. */
  const shift = (r: PatchRow, universeId: string, address: number): void => {
    if (session.getState().readOnly) return;
    const problem = placeProblem(p.plan, r, universeId, address);
    if (problem) session.set({ message: `Not moved: ${problemText(problem)}` });
    else commitMove(session, r, universeId, address);
  };

  const onKey = (e: React.KeyboardEvent): void => {
    if (!current) return;
    const at = blocks.indexOf(current);
    const step = e.key === 'ArrowRight' ? 1 : e.key === 'ArrowLeft' ? -1 : 0;
    const up = e.key === 'ArrowDown' ? 1 : e.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0 && e.altKey)
      shift(current, use.universeId, current.address + step * (e.shiftKey ? 10 : 1));
    else if (up !== 0 && e.altKey) {
      const other = p.all[p.all.indexOf(use) + up];
      if (other) shift(current, other.universeId, current.address);
    } else if (step !== 0) {
      const next = Math.min(blocks.length - 1, Math.max(0, at + step));
      const block = blocks[next];
      if (!block) return;
      setActive(nameOf(block));
      choose(block, false);
    } else if (e.key === 'Enter' || e.key === ' ') choose(current, e.key === ' ');
    else return;
    e.preventDefault();
  };

  const ghost = p.drag?.universeId === use.universeId ? p.drag : undefined;
  const cells = boxesOf(grid, 1, 512);
  const map = (
    <svg
      role="presentation"
      data-universe={use.universeId}
      width={grid.widthPx}
      height={gridHeight(grid)}
      viewBox={`0 0 ${grid.widthPx} ${gridHeight(grid)}`}
    >
      {cells.map((c) => (
        <rect key={c.y} className="universe-cells" x={0} y={c.y} width={grid.widthPx} height={c.h} />
      ))}
      {use.gaps.map((g) => {
        const box = widest(boxesOf(grid, g.from, g.to));
        const words = `${g.to - g.from + 1} free`;
        return box && box.w > words.length * 6 + 8 ? (
          <text key={g.from} className="universe-free" x={box.x + 4} y={box.y + box.h / 2 + 4}>
            {words}
          </text>
        ) : null;
      })}
      {blocks.map((r) => (
        <Block
          key={nameOf(r)}
          id={optionId(r)}
          row={r}
          unit={unitOf(r)}
          grid={grid}
          colorIndex={p.colorIndex}
          selected={p.selection.has(r.fixtureId)}
          active={r === current}
          away={p.drag?.row.fixtureId === r.fixtureId && p.drag.row.fromSlot === r.fromSlot}
          onDown={(e, svg) => {
            if (e.button !== 0) return;
            setActive(nameOf(r));
            choose(r, e.shiftKey || e.ctrlKey || e.metaKey);
            const box = svg.getBoundingClientRect();
            p.onGrab(r, slotAt(grid, e.clientX - box.left, e.clientY - box.top), e.clientX, e.clientY);
          }}
        />
      ))}
      {ghost
        ? boxesOf(
            grid,
            Math.max(1, ghost.address),
            Math.min(512, Math.max(1, ghost.address + ghost.row.slots - 1)),
          ).map((b) => (
            <rect
              key={b.y}
              className={ghost.problem === '' ? 'block-ghost' : 'block-ghost bad'}
              x={b.x + 1}
              y={b.y + 1}
              width={Math.max(2, b.w - 2)}
              height={b.h - 2}
            />
          ))
        : null}
    </svg>
  );
  const label = `Slots of universe ${use.number}`;
  if (!current) return <div className="universe-strip">{map}</div>;
  return (
    <div
      role="listbox"
      tabIndex={0}
      className="universe-strip"
      aria-label={label}
      aria-multiselectable="true"
      aria-activedescendant={optionId(current)}
      onKeyDown={onKey}
    >
      {map}
    </div>
  );
};

interface BlockProps {
  readonly id: string;
  readonly row: PatchRow;
  readonly unit: string;
  readonly grid: Grid;
  readonly colorIndex: number;
  readonly selected: boolean;
  readonly active: boolean;
  readonly away: boolean;
  readonly onDown: (e: React.PointerEvent, svg: SVGElement) => void;
}

const Block = ({ id, row, unit, grid, colorIndex, selected, active, away, onDown }: BlockProps) => {
  const boxes = boxesOf(grid, row.address, row.last);
  const label = widest(boxes);
  const range = row.slots > 1 ? `${row.address}–${row.last}` : String(row.address);
  const names = `Unit ${unit}, ${row.slots > 1 ? 'slots' : 'slot'} ${row.address}${row.slots > 1 ? ` to ${row.last}` : ''}${row.fromSlot > 1 ? `, from its slot ${row.fromSlot} on` : ''}`;
  const both = label !== undefined && label.w > (unit.length + range.length + 2) * LABEL_PX + 8;
  return (
    <g
      id={id}
      role="option"
      aria-selected={selected}
      aria-label={names}
      className={`block${selected ? ' selected' : ''}${active ? ' active' : ''}${away ? ' away' : ''}`}
      onPointerDown={(e) => {
        const svg = e.currentTarget.ownerSVGElement;
        if (svg) onDown(e, svg);
      }}
    >
      <title>{`${names} · ${row.modeName}`}</title>
      {boxes.map((b) => (
        <g key={b.y}>
          <rect className="block-back" x={b.x} y={b.y} width={b.w} height={b.h} />
          <rect
            fill={universeColor(colorIndex)}
            fillOpacity="0.28"
            x={b.x}
            y={b.y}
            width={b.w}
            height={b.h}
          />
          <rect fill={universeColor(colorIndex)} x={b.x} y={b.y} width={b.w} height={5} />
          <rect fill={universeHatch(colorIndex)} x={b.x} y={b.y} width={b.w} height={5} />
          <rect
            className="block-line"
            x={b.x + 0.5}
            y={b.y + 0.5}
            width={Math.max(0, b.w - 1)}
            height={b.h - 1}
          />
        </g>
      ))}
      {label && label.w > unit.length * LABEL_PX + 3 ? (
        <text className="block-text" x={label.x + 3} y={label.y + label.h - 5}>
          {unit}
          {both ? <tspan className="block-range"> {range}</tspan> : null}
        </text>
      ) : null}
    </g>
  );
};
