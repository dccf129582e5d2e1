// biome-ignore-all lint/a11y/useSemanticElements: what is inside a drawing can be no form element
import { useRef, useState } from 'react';
import { formatClock } from '../../kernel/units.ts';
import { clampMinute } from '../../plan/clock.ts';
import { moveBlock, setBlockTimes } from '../../plan/edits/day.ts';
import type { Block } from '../../plan/records/index.ts';
import type { BlockRow } from '../../report/day.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import type { Scale } from './scale.ts';

const HEIGHT = 40;
const STEP_MIN = 5;
const EDGE_PX = 8;

const WORDS_PX = 6;
/** About the width of a letter of the name and of the time. */
const NAME_PX = 6.7;
const TIME_PX = 5.6;

/** Words for blocks too narrow for their name. */
const SHORT: Readonly<Record<Block['what'], string>> = {
  setup: '',
  'pre-light': 'Pre',
  meal: 'Meal',
  move: 'Move',
  wrap: 'Wrap',
  other: '',
};

/** The first of some texts that fits; the first one cut off where it has room for a few letters at least. */
const fitting = (widthPx: number, letterPx: number, texts: readonly string[]): string => {
  const room = widthPx - WORDS_PX - 2;
  const fits = texts.find((t) => t !== '' && t.length * letterPx <= room);
  return fits ?? (room > 8 * letterPx ? (texts[0] ?? '') : '');
};

type Grip = 'start' | 'end' | 'whole';

interface Drag {
  readonly id: string;
  readonly grip: Grip;
  readonly fromX: number;
  readonly byMin: number;
}

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
  const { session } = useServices();
  const { plan, setupId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    readOnly: s.readOnly,
  }));
  const [drag, setDrag] = useState<Drag | undefined>(undefined);
  const last = useRef<Drag | undefined>(undefined);
  const show = (d: Drag | undefined): void => {
    last.current = d;
    setDrag(d);
  };
  const change = (row: BlockRow, grip: Grip, byMin: number): void => {
    if (readOnly || byMin === 0) return;
    const { startMin, endMin } = row.block;
    if (grip === 'whole') session.commit('Move block', moveBlock(plan, row.id, byMin, shiftRest));
    else if (grip === 'start')
      session.commit('Change start', setBlockTimes(plan, row.id, { startMin: startMin + byMin }, false));
    else session.commit('Change end', setBlockTimes(plan, row.id, { endMin: endMin + byMin }, shiftRest));
  };
  const onKeyDown = (row: BlockRow, grip: Grip) => (e: React.KeyboardEvent) => {
    const way =
      e.key === 'ArrowLeft' || e.key === 'ArrowDown'
        ? -1
        : e.key === 'ArrowRight' || e.key === 'ArrowUp'
          ? 1
          : 0;
    if (way === 0) return;
    e.preventDefault();
    change(row, grip, way * STEP_MIN * (e.shiftKey ? 3 : 1));
  };
  const onPointerDown = (row: BlockRow, grip: Grip) => (e: React.PointerEvent) => {
    if (readOnly || e.button !== 0) return;
    e.currentTarget.setPointerCapture(e.pointerId);
    show({ id: row.id, grip, fromX: e.clientX, byMin: 0 });
  };
  const onPointerMove = (e: React.PointerEvent): void => {
    const d = last.current;
    if (d) show({ ...d, byMin: Math.round((e.clientX - d.fromX) / scale.pxPerMin / STEP_MIN) * STEP_MIN });
  };
  const onPointerUp = (row: BlockRow) => (): void => {
    const d = last.current;
    show(undefined);
    if (!d) return;
    change(row, d.grip, d.byMin);
    if (d.byMin === 0 && row.block.setupId) session.set({ setupId: row.block.setupId });
  };

  return (
    <svg width={scale.widthPx} height={HEIGHT} className="blocks-svg" role="group" aria-label="Blocks">
      {rows.map((row) => {
        const dragged = drag?.id === row.id ? drag : undefined;
        const by = (g: Grip): number =>
          dragged && (dragged.grip === g || dragged.grip === 'whole') ? dragged.byMin : 0;
        const start = clampMinute(row.block.startMin + by('start'));
        const end = clampMinute(row.block.endMin + by('end'));
        const x = scale.x(start);
        const w = Math.max(3, (end - start) * scale.pxPerMin);
        const edge = (grip: 'start' | 'end', minute: number) => (
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
            y={2}
            width={EDGE_PX}
            height={HEIGHT - 4}
            onKeyDown={onKeyDown(row, grip)}
            onPointerDown={onPointerDown(row, grip)}
            onPointerMove={onPointerMove}
            onPointerUp={onPointerUp(row)}
            onPointerCancel={() => show(undefined)}
          />
        );
        return (
          <g key={row.id}>
            <title>{`${row.name}: ${formatClock(start)} to ${formatClock(end)}, ${row.fault ? `left out: ${row.fault}` : `${row.unitsOn} units on`}`}</title>
            <rect
              className="block-bar"
              data-what={row.block.what}
              data-shown={row.block.setupId !== undefined && row.block.setupId === setupId}
              data-fault={row.fault !== undefined}
              x={x}
              y={2}
              width={w}
              height={HEIGHT - 4}
              onPointerDown={onPointerDown(row, 'whole')}
              onPointerMove={onPointerMove}
              onPointerUp={onPointerUp(row)}
              onPointerCancel={() => show(undefined)}
            />
            <svg
              x={x}
              y={0}
              width={Math.max(0, w - 2)}
              height={HEIGHT}
              aria-hidden="true"
              className="block-words"
            >
              <text x={WORDS_PX} y={17} className="block-name">
                {fitting(w, NAME_PX, [row.name, SHORT[row.block.what]])}
              </text>
              <text x={WORDS_PX} y={31} className="block-time">
                {fitting(w, TIME_PX, [`${formatClock(start)}–${formatClock(end)}`, formatClock(start)])}
              </text>
            </svg>
            {edge('start', start)}
            {edge('end', end)}
          </g>
        );
      })}
    </svg>
  );
};
