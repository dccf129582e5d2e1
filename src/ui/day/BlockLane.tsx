import { useEffect, useMemo } from 'react';
import { formatClock } from '../../kernel/units.ts';
import { clampMinute } from '../../plan/clock.ts';
import { type BlockRow, formatMinutes } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { nameThatFits, stackBlocks, timeThatFits } from './block-layout.ts';
import type { Scale } from './scale.ts';
import { useTips } from './tips.ts';
import { type Grip, useBlockDrag } from './use-block-drag.ts';

const HEIGHT = 40;
const EDGE_PX = 8;
const WORDS_PX = 5;
/** Room that words keep before the end of their block. */
const LEAST_WORDS_PX = 80;
const KEYS = 'Arrow keys move this edge by 5 minutes, with Shift by 15; with Alt the whole block.';

/** Blocks as bars. Edges are dragged, or moved by arrow keys in steps of five minutes; the bar as a whole likewise. */
export const BlockLane = ({
  rows,
  scale,
  shiftRest,
}: {
  readonly rows: readonly BlockRow[];
  readonly scale: Scale;
  readonly shiftRest: boolean;
}) => {
  const setupId = useSessionSlice((s) => s.setupId);
  const drag = useBlockDrag(scale, shiftRest);
  const { rowOf, rows: deep } = useMemo(() => stackBlocks(rows.map((r) => r.block)), [rows]);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing is no form element
    <svg width={scale.widthPx} height={HEIGHT * deep} className="blocks-svg" role="group" aria-label="Blocks">
      {rows.map((row) => (
        <Bar
          key={row.id}
          row={row}
          scale={scale}
          drag={drag}
          topPx={HEIGHT * (rowOf.get(row.id) ?? 0)}
          shown={row.block.setupId !== undefined && row.block.setupId === setupId}
        />
      ))}
    </svg>
  );
};

const Bar = ({
  row,
  scale,
  drag,
  topPx,
  shown,
}: {
  readonly row: BlockRow;
  readonly scale: Scale;
  readonly drag: ReturnType<typeof useBlockDrag>;
  readonly topPx: number;
  readonly shown: boolean;
}) => {
  const tips = useTips();
  const times = drag.timesOf(row.id) ?? row.block;
  const [start, end] = [clampMinute(times.startMin), clampMinute(times.endMin)];
  const x = scale.x(start);
  const w = Math.max(3, (end - start) * scale.pxPerMin);
  const stop = {
    startMin: start,
    endMin: end,
    head: `${row.name}, ${formatClock(start)} to ${formatClock(end)}`,
    lines: [
      formatMinutes(end - start),
      ...(row.setupName && !row.name.includes(row.setupName) ? [`setup ${row.setupName}`] : []),
      row.fault
        ? `left out: ${row.fault}`
        : `${row.unitsOn} ${row.unitsOn === 1 ? 'unit' : 'units'} on${row.block.crew === 'rigging' ? ', rigging crew' : ''}`,
    ],
  };
  const edge = drag.edgeOf(row.id, start, end);
  // What is dragged is told by its new times, not by those at the last move of the pointer.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the words follow from the times
  useEffect(() => {
    const told = tips.get();
    if (edge !== undefined && told) tips.show({ ...told, stop, minute: edge });
  }, [edge, start, end]);
  const tell = (e: React.PointerEvent): void =>
    tips.show({
      stop,
      minute: edge ?? scale.fromMin + (e.clientX - left(e)) / scale.pxPerMin,
      xPx: e.clientX,
      yPx: e.clientY,
      byKeys: false,
    });
  const handle = (grip: Exclude<Grip, 'whole'>, minute: number) => (
    <rect
      className="block-edge"
      role="slider"
      tabIndex={0}
      aria-label={`${row.name}, ${grip === 'start' ? 'from' : 'to'}`}
      aria-valuemin={0}
      aria-valuemax={2160}
      aria-valuenow={minute}
      aria-valuetext={formatClock(minute)}
      x={scale.x(minute) - (grip === 'start' ? 0 : EDGE_PX)}
      y={topPx + 2}
      width={EDGE_PX}
      height={HEIGHT - 4}
      onFocus={(e) => {
        if (!e.currentTarget.matches(':focus-visible')) return;
        const box = e.currentTarget.getBoundingClientRect();
        tips.show({
          stop: { ...stop, lines: [...stop.lines, KEYS] },
          minute,
          xPx: box.left,
          yPx: box.bottom,
          byKeys: false,
        });
      }}
      onBlur={() => tips.show(undefined)}
      {...drag.on(row, grip)}
    />
  );
  return (
    <g onPointerMove={tell} onPointerLeave={() => tips.show(undefined)}>
      <rect
        className="block-bar"
        data-what={row.block.what}
        data-shown={shown}
        data-fault={row.fault !== undefined}
        x={x}
        y={topPx + 2}
        width={w}
        height={HEIGHT - 4}
        {...drag.on(row, 'whole')}
      />
      <svg
        x={x}
        y={topPx}
        width={Math.max(0, w - 2)}
        height={HEIGHT}
        aria-hidden="true"
        className="block-words"
      >
        {/* Of a block that begins out of sight the words stay in sight. */}
        <g
          style={{
            transform: `translateX(clamp(0px, calc(var(--scrolled, 0px) - ${x}px), ${Math.max(0, w - LEAST_WORDS_PX)}px))`,
          }}
        >
          <text x={WORDS_PX} y={17} className="block-name">
            {nameThatFits(row, w)}
          </text>
          <text x={WORDS_PX} y={31} className="block-time">
            {timeThatFits(formatClock(start), formatClock(end), w)}
          </text>
        </g>
      </svg>
      {handle('start', start)}
      {handle('end', end)}
    </g>
  );
};

/** Where the lane begins on the screen. */
const left = (e: React.PointerEvent): number =>
  e.currentTarget.closest('.blocks-svg')?.getBoundingClientRect().left ?? 0;
