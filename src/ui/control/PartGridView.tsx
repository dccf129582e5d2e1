import { useRef } from 'react';
import type { PartGrid } from '../../plan/part-levels.ts';
import type { PartLevel } from '../../plan/records/index.ts';
import { PLAIN_PART } from './PartStrip.tsx';

const WIDTH = 860;

interface Props {
  readonly parts: readonly PartLevel[];
  readonly grid: PartGrid;
  readonly picked: ReadonlySet<number>;
  readonly onPick: (picked: ReadonlySet<number>) => void;
}

/** Parts of one unit as cells with their levels, to be chosen by mouse or keys. */
export const PartGridView = ({ parts, grid, picked, onPick }: Props) => {
  const drag = useRef<number | undefined>(undefined);
  const at = useRef(0);
  const w = WIDTH / grid.columns;
  const h = grid.rows === 1 ? 44 : Math.min(w, 60);
  const between = (a: number, b: number): ReadonlySet<number> => {
    const [ca, cb] = [a % grid.columns, b % grid.columns];
    const [ra, rb] = [Math.floor(a / grid.columns), Math.floor(b / grid.columns)];
    const out = new Set<number>();
    for (let r = Math.min(ra, rb); r <= Math.max(ra, rb); r++)
      for (let c = Math.min(ca, cb); c <= Math.max(ca, cb); c++) out.add(r * grid.columns + c);
    return out;
  };
  const cellAt = (e: React.PointerEvent<HTMLDivElement>): number | undefined => {
    const box = e.currentTarget.getBoundingClientRect();
    const c = Math.floor(((e.clientX - box.left) / box.width) * grid.columns);
    const r = Math.floor(((e.clientY - box.top) / box.height) * grid.rows);
    const i = r * grid.columns + c;
    return c >= 0 && c < grid.columns && r >= 0 && r < grid.rows ? i : undefined;
  };
  const step = (e: React.KeyboardEvent): void => {
    const by = { ArrowRight: 1, ArrowLeft: -1, ArrowDown: grid.columns, ArrowUp: -grid.columns }[e.key];
    if (e.key === 'Escape') return onPick(new Set());
    if (e.key === 'a' && (e.ctrlKey || e.metaKey)) {
      e.preventDefault();
      return onPick(new Set(parts.map((_, i) => i)));
    }
    if (by === undefined) return;
    e.preventDefault();
    const start = picked.size === 0 ? -Math.abs(by) : at.current;
    const next = Math.max(0, Math.min(parts.length - 1, picked.size === 0 ? 0 : start + by));
    at.current = next;
    onPick(e.shiftKey ? new Set([...picked, next]) : new Set([next]));
  };
  return (
    <div
      className="part-grid"
      role="listbox"
      aria-label="Parts"
      aria-multiselectable="true"
      tabIndex={0}
      onKeyDown={step}
      onPointerDown={(e) => {
        const i = cellAt(e);
        if (i === undefined) return;
        e.currentTarget.setPointerCapture(e.pointerId);
        drag.current = i;
        at.current = i;
        if (!e.shiftKey && picked.size === 1 && picked.has(i)) {
          drag.current = undefined;
          onPick(new Set());
        } else onPick(new Set(e.shiftKey ? [...picked, i] : [i]));
      }}
      onPointerMove={(e) => {
        const i = cellAt(e);
        if (drag.current === undefined || i === undefined) return;
        const swept = between(drag.current, i);
        onPick(e.shiftKey ? new Set([...picked, ...swept]) : swept);
      }}
      onPointerUp={() => {
        drag.current = undefined;
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${h * grid.rows}`}>
        <title>Parts</title>
        {parts.map((p, i) => {
          const x = (i % grid.columns) * w;
          const y = Math.floor(i / grid.columns) * h;
          return (
            <g
              key={i}
              role="option"
              aria-selected={picked.has(i)}
              aria-label={`Part ${i + 1}: ${p.levelPct} %`}
            >
              <rect className="part-ground" x={x} y={y} width={w} height={h} />
              <rect
                x={x}
                y={y}
                width={w}
                height={h}
                fill={p.color ?? PLAIN_PART}
                fillOpacity={p.levelPct / 100}
              />
              <rect
                className={picked.has(i) ? 'part-edge picked' : 'part-edge'}
                x={x + 1}
                y={y + 1}
                width={w - 2}
                height={h - 2}
              />
              {w >= 22 ? (
                <text className="part-number" x={x + w / 2} y={y + h / 2 + 4}>
                  {Math.round(p.levelPct)}
                </text>
              ) : null}
            </g>
          );
        })}
      </svg>
    </div>
  );
};
