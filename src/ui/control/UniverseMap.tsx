import { useVirtualizer } from '@tanstack/react-virtual';
import { Plus, X } from 'lucide-react';
import { useEffect, useMemo, useRef, useState } from 'react';
import { bandwidthKbps, multicastGroup, type UniverseUse, universeUse } from '../../engines/control/index.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { universeProblem } from '../../plan/address.ts';
import {
  addUniverse,
  changeUniverse,
  freeUniverseNumber,
  removeUniverse,
} from '../../plan/edits/universes.ts';
import { recordOf } from '../../plan/plan.ts';
import { anyText } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { gridFor, gridHeight, type Zoom } from './blocks.ts';
import { CellField } from './CellField.tsx';
import { UNIVERSE_COLORS, universeColor, universeColorName, universeHatch } from './palette.ts';
import { commitOr } from './patching.ts';
import { UniverseStrip } from './UniverseStrip.tsx';
import { useBlockDrag } from './use-block-drag.ts';

const HEAD_PX = 46;
const BETWEEN_PX = 10;
const SIDE_PX = 26;

const ZOOMS: readonly { readonly id: Zoom; readonly words: string }[] = [
  { id: 'far', words: 'one row each' },
  { id: 'near', words: '128 to a row' },
  { id: 'close', words: '64 to a row' },
];

const parseNumber = (t: string): Result<number> => {
  const s = t.trim().replace(/^u\s*/i, '');
  const n = /^\d+$/.test(s) ? Number(s) : Number.NaN;
  const problem = universeProblem(n);
  return problem ? fail(Number.isNaN(n) ? { what: `“${t.trim()}” is not a universe.` } : problem) : ok(n);
};

/** All universes as maps of their slots. A block can be dragged, or moved with Alt and the arrow keys. */
export const UniverseMap = () => {
  const { session } = useServices();
  const { plan, selection, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    selection: s.selection,
    readOnly: s.readOnly,
  }));
  const scroll = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(480);
  const [zoom, setZoom] = useState<Zoom>('near');
  const uses = useMemo(() => universeUse(plan), [plan]);
  const grid = useMemo(() => gridFor(zoom, width), [zoom, width]);
  const { drag, grab } = useBlockDrag(grid, scroll);
  const rowPx = HEAD_PX + gridHeight(grid) + BETWEEN_PX;
  const list = useVirtualizer({
    count: uses.length,
    getScrollElement: () => scroll.current,
    estimateSize: () => rowPx,
    overscan: 3,
  });

  useEffect(() => {
    const el = scroll.current;
    if (!el) return;
    const watch = new ResizeObserver(() => setWidth(Math.max(256, Math.floor(el.clientWidth - SIDE_PX))));
    watch.observe(el);
    return () => watch.disconnect();
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: rows change height with the zoom only
  useEffect(() => list.measure(), [rowPx]);

  const add = (): void => {
    const why = commitOr(session, 'Add universe', addUniverse(plan, freeUniverseNumber(plan)));
    session.set({ message: why ?? '' });
  };
  const mbps = bandwidthKbps(uses.length) / 1000;

  return (
    <section className="universes" aria-label="Universes">
      <div className="universes-head">
        <h2>Universes</h2>
        <label>
          <span className="visually-hidden">Slots in a row</span>
          <select className="input" value={zoom} onChange={(e) => setZoom(e.target.value as Zoom)}>
            {ZOOMS.map((z) => (
              <option key={z.id} value={z.id}>
                {z.words}
              </option>
            ))}
          </select>
        </label>
        <button type="button" className="button" disabled={readOnly} onClick={add}>
          <Plus size={14} aria-hidden="true" /> Universe
        </button>
      </div>
      <div ref={scroll} className="universes-scroll">
        {uses.length === 0 ? (
          <p className="soft">
            No universe yet. Assign addresses, write one in the table, or add a universe here.
          </p>
        ) : null}
        <div className="universes-list" style={{ height: list.getTotalSize() }}>
          {list.getVirtualItems().map((item) => {
            const use = uses[item.index];
            const u = use && recordOf(plan, 'universe', use.universeId);
            if (!use || !u) return null;
            return (
              <article
                key={u.id}
                className="universe"
                aria-label={`Universe ${u.number}`}
                style={{ transform: `translateY(${item.start}px)` }}
              >
                <div className="universe-head">
                  <button
                    type="button"
                    className="universe-swatch"
                    disabled={readOnly}
                    title={`Colour: ${universeColorName(u.colorIndex)}. Choose the next one.`}
                    aria-label={`Colour of universe ${u.number}: ${universeColorName(u.colorIndex)}. Next`}
                    onClick={() =>
                      commitOr(
                        session,
                        `Colour of universe ${u.number}`,
                        changeUniverse(plan, u.id, {
                          colorIndex: (u.colorIndex + 1) % UNIVERSE_COLORS.length,
                        }),
                      )
                    }
                  >
                    <svg width="20" height="14" aria-hidden="true">
                      <rect width="20" height="14" fill={universeColor(u.colorIndex)} />
                      <rect width="20" height="14" fill={universeHatch(u.colorIndex)} />
                    </svg>
                  </button>
                  <span className="universe-number">
                    <CellField
                      label={`Number of universe ${u.number}`}
                      column="number"
                      className="strong"
                      value={`U${u.number}`}
                      parse={parseNumber}
                      disabled={readOnly}
                      onCommit={(number) =>
                        commitOr(session, `Number universe ${number}`, changeUniverse(plan, u.id, { number }))
                      }
                    />
                  </span>
                  <span className="universe-name">
                    <CellField
                      label={`Name of universe ${u.number}`}
                      column="name"
                      value={u.name}
                      parse={anyText}
                      disabled={readOnly}
                      onCommit={(name) =>
                        commitOr(session, `Name universe ${u.number}`, changeUniverse(plan, u.id, { name }))
                      }
                    />
                  </span>
                  <span className="universe-used">
                    <strong>{use.usedSlots}</strong> of 512 used
                  </span>
                  <button
                    type="button"
                    className="button quiet icon"
                    disabled={readOnly}
                    title={removeWords(use)}
                    aria-label={removeWords(use)}
                    onClick={() => {
                      session.commit(removeWords(use), removeUniverse(plan, u.id));
                      session.set({ message: `Universe ${u.number} is gone. Undo brings it back.` });
                    }}
                  >
                    <X size={14} aria-hidden="true" />
                  </button>
                </div>
                <p className="universe-figures soft">{figures(use)}</p>
                <UniverseStrip
                  plan={plan}
                  use={use}
                  all={uses}
                  colorIndex={u.colorIndex}
                  grid={grid}
                  selection={selection}
                  drag={drag}
                  onGrab={grab}
                />
              </article>
            );
          })}
        </div>
      </div>
      <p className="universes-foot" role="status">
        {drag ? (
          <span className={drag.problem ? 'over' : ''}>
            {`U${recordOf(plan, 'universe', drag.universeId)?.number} ${drag.address}: ${drag.problem || 'free'}`}
          </span>
        ) : (
          <span className="soft">
            {uses.length} {uses.length === 1 ? 'universe' : 'universes'} as streaming ACN at 44 Hz:{' '}
            {mbps.toFixed(2)} Mbit/s on the wire. Drag a block, or Alt and arrows.
          </span>
        )}
      </p>
    </section>
  );
};

const removeWords = (u: UniverseUse): string =>
  `Remove universe ${u.number}${u.fixtures > 0 ? ` and the addresses of ${u.fixtures} ${u.fixtures === 1 ? 'unit' : 'units'}` : ''}`;

/** The universe in figures: who listens, how often it can be sent, and where on a network. */
const figures = (u: UniverseUse): string => {
  const group = multicastGroup(u.number);
  return [
    `${u.fixtures} ${u.fixtures === 1 ? 'unit' : 'units'}`,
    `to slot ${u.highestSlot}: ${(u.packetUs / 1000).toFixed(1)} ms, at most ${u.refreshHz.toFixed(1)} Hz`,
    group.ok ? group.value : 'no network number',
  ].join(' · ');
};
