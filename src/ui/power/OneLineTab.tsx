import { useEffect, useMemo, useRef, useState } from 'react';
import { ENDLESS, oneLineSheets } from '../../drawing/one-line/index.ts';
import { planRecord } from '../../plan/plan.ts';
import { bondingWord } from '../../report/cautions.ts';
import { largestLegA, pctOf, readerOf } from '../../report/reader.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { ChosenPart } from './ChosenPart.tsx';
import { MiniMap } from './MiniMap.tsx';
import { FarLabels, FigureZones, OneLineItem } from './OneLineInk.tsx';
import { fitted, LEGIBLE, legible, usePanZoom } from './one-line-view.ts';
import { leafBoxes, useFolded } from './use-folded.ts';
import './one-line.css';

const STEP_PX = 60;
/** Below this many pixels for a millimetre the names of boxes are written large over the diagram. */
const FAR = 2.2;
const PAN: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** The one-line diagram of the network, the same as on paper, to pan, zoom and fold. Choosing a part selects its record. */
export const OneLineTab = () => {
  const { session, scheme } = useServices();
  const { plan, assessment, revision, setupId, selection, tried } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    revision: s.revision,
    setupId: s.setupId,
    selection: s.selection,
    tried: s.tried,
  }));
  const frame = useRef<SVGSVGElement>(null);
  const drag = useRef<{ x: number; y: number; moved: boolean } | undefined>(undefined);
  const { view, size, setView, pan, zoom } = usePanZoom(frame);
  const [topId, setTop] = useState<string | undefined>(undefined);
  const [partKey, setPartKey] = useState<string | undefined>(undefined);
  const current = assessment?.revision === revision;
  const entities = useMemo(() => new Map((assessment?.entities ?? []).map((e) => [e.key, e])), [assessment]);
  const reader = useMemo(
    () => (assessment ? readerOf(assessment, setupId) : undefined),
    [assessment, setupId],
  );
  const { folded, toggle, setFolded } = useFolded(entities, selection);
  const sheet = useMemo(
    () =>
      assessment && current
        ? oneLineSheets(plan, assessment, setupId, ENDLESS, { topId, folded })[0]
        : undefined,
    [plan, assessment, current, setupId, topId, folded],
  );
  const extent = useMemo(() => ({ width: sheet?.widthMm ?? 0, height: sheet?.heightMm ?? 0 }), [sheet]);

  const fitView = (): void => {
    if (size && extent.width > 0) setView(fitted(size, extent));
  };
  const readView = (): void => {
    const box = sheet?.items.find((i) => selection.has(i.recordId))?.box;
    if (size && extent.width > 0)
      setView(legible(size, extent, box && { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }));
  };
  // At first what cannot be read at once is folded; then and for every other top the texts can be read.
  const ready = size !== undefined && extent.width > 0;
  const placedFor = useRef<string | undefined>(undefined);
  useEffect(() => {
    const top = topId ?? 'all';
    if (!ready || !size || placedFor.current === top) return;
    if (placedFor.current === undefined && folded.size === 0 && fitted(size, extent).k < LEGIBLE) {
      const leaves = leafBoxes(entities, selection);
      if (leaves.size > 0) {
        placedFor.current = 'folding';
        return setFolded(leaves);
      }
    }
    placedFor.current = top;
    readView();
  });

  const chosen = selection.size === 1 ? [...selection][0] : undefined;
  const part =
    (partKey !== undefined && entities.get(partKey)?.recordId === chosen
      ? entities.get(partKey)
      : undefined) ??
    (chosen === undefined ? undefined : [...entities.values()].find((e) => e.recordId === chosen));

  const openWorking = useUi((u) => u.openWorking);
  const [figureAt, setFigureAt] = useState(-1);
  /** Chooses the part after or before the chosen one, in the order of the network, and brings it into sight. */
  const choose = (by: 1 | -1): void => {
    const shown = new Map((sheet?.items ?? []).map((i) => [i.key.split('#')[0] ?? '', i.box]));
    const keys = [...entities.keys()].filter((k) => shown.has(k));
    const at = keys.indexOf(part?.key ?? '');
    const key = keys[at < 0 ? (by > 0 ? 0 : keys.length - 1) : (at + by + keys.length) % keys.length];
    const to = key === undefined ? undefined : entities.get(key);
    const box = key === undefined ? undefined : shown.get(key);
    if (!to || !box || !view || !size) return;
    setPartKey(to.key);
    setFigureAt(-1);
    session.set({ selection: new Set([to.recordId]) });
    const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
    setView({ ...view, x: size.width / 2 - x * view.k, y: size.height / 2 - y * view.k });
  };

  /** Figures of the chosen part, and the one that is picked among them. */
  const own = part ? (sheet?.figures.filter((f) => f.entityKey === part.key) ?? []) : [];
  const figure = own[figureAt];
  const act = (key: string): boolean => {
    const shift = PAN[key];
    if (shift) pan(shift[0] * STEP_PX, shift[1] * STEP_PX);
    else if (key === '+' || key === '=') zoom(1.25);
    else if (key === '-') zoom(0.8);
    else if (key === '0') fitView();
    else if (key === '1') readView();
    else if (key === 'n' || key === 'p') choose(key === 'n' ? 1 : -1);
    else if (key === 'f' && own.length > 0) setFigureAt((figureAt + 1) % own.length);
    else if (key === 'Enter' && own[0]) openWorking((figure ?? own[0]).key);
    else return false;
    return true;
  };
  const tops = [...entities.values()].filter((e) => e.what === 'source' || (e.what === 'box' && e.sourceId));
  const onTop = (id: string): void => {
    setTop(id || undefined);
    if (id) setFolded(new Set([...folded].filter((f) => f !== id)));
  };
  // A way shares its record with its box: where one was pointed at, it alone is marked.
  const exact = part !== undefined && part.key === partKey ? partKey : undefined;

  return (
    <section className="one-line" aria-label="One-line diagram">
      <div className="one-line-tools">
        <label>
          Show{' '}
          <select className="input" value={topId ?? ''} onChange={(e) => onTop(e.target.value)}>
            <option value="">the whole network</option>
            {tops.map((e) => (
              <option key={e.key} value={e.recordId}>
                {e.label}
              </option>
            ))}
          </select>
        </label>
        <button type="button" className="button" onClick={() => setFolded(leafBoxes(entities, new Set()))}>
          Fold boxes
        </button>
        <button
          type="button"
          className="button"
          disabled={folded.size === 0}
          onClick={() => setFolded(new Set())}
        >
          Unfold all
        </button>
        <button type="button" className="button" onClick={fitView} title="All of it in sight (0)">
          Fit
        </button>
        <button
          type="button"
          className="button"
          onClick={readView}
          title="So large that every text can be read (1)"
        >
          Readable
        </button>
        <button type="button" className="button" onClick={() => zoom(1.25)} title="Nearer (+)">
          Nearer
        </button>
        <button type="button" className="button" onClick={() => zoom(0.8)} title="Further (−)">
          Further
        </button>
        <span className="soft small one-line-hint">
          Click a part to choose it, a figure for its working. Keys: arrows, + −, 0 fit, 1 readable, N P next
          part, F figure, Enter working.
        </span>
      </div>
      {current && !sheet ? <p className="soft">There is no source of power in this plan yet.</p> : null}
      <div className="one-line-body">
        <div className="one-line-frame">
          <svg
            ref={frame}
            className="one-line-view"
            role="application"
            aria-label="One-line diagram, pan and zoom"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: it pans and zooms by keys
            tabIndex={0}
            onKeyDown={(e) => {
              if (!e.ctrlKey && !e.metaKey && act(e.key)) e.preventDefault();
            }}
            onPointerDown={(e) => {
              drag.current = { x: e.clientX, y: e.clientY, moved: false };
            }}
            onPointerMove={(e) => {
              const from = drag.current;
              if (!from || e.buttons === 0) return;
              const dx = e.clientX - from.x;
              const dy = e.clientY - from.y;
              if (!from.moved && Math.hypot(dx, dy) < 4) return;
              if (!from.moved) e.currentTarget.setPointerCapture(e.pointerId);
              drag.current = { x: e.clientX, y: e.clientY, moved: true };
              pan(dx, dy);
            }}
            onPointerUp={(e) => {
              const moved = drag.current?.moved;
              drag.current = undefined;
              if (moved) return;
              const at = (e.target as Element).closest('[data-record]');
              const fold = at?.getAttribute('data-fold');
              if (fold) return toggle(fold);
              const figure = at?.getAttribute('data-figure');
              if (figure) return openWorking(figure);
              const id = at?.getAttribute('data-record');
              setPartKey(at?.getAttribute('data-key') ?? undefined);
              setFigureAt(-1);
              session.set({ selection: new Set(id ? [id] : []) });
            }}
          >
            {view ? (
              <g
                transform={`translate(${view.x} ${view.y}) scale(${view.k})`}
                fill="none"
                className="one-line-ink"
              >
                {sheet?.items.map((i) => (
                  <OneLineItem
                    key={i.key}
                    item={i}
                    chosen={
                      selection.has(i.recordId) && (exact === undefined || i.key.split('#')[0] === exact)
                    }
                    hit={tried?.get(i.recordId)}
                    scheme={scheme}
                  />
                ))}
                {sheet && view.k >= FAR ? <FigureZones figures={sheet.figures} picked={figure} /> : null}
                {sheet && reader && view.k < FAR ? (
                  <FarLabels
                    items={sheet.items}
                    entities={entities}
                    percentOf={(e) => pctOf(largestLegA(reader, e, 'worst'), e.legLimit?.limitA)}
                    k={view.k}
                  />
                ) : null}
              </g>
            ) : null}
          </svg>
          {sheet && view && size ? (
            <MiniMap items={sheet.items} sheet={extent} frame={size} view={view} onView={setView} />
          ) : null}
        </div>
        {assessment ? <ChosenPart entity={part} assessment={assessment} onTop={onTop} /> : null}
      </div>
      <p className="soft small">
        {bondingWord(planRecord(plan).practice)}, tie-ins and single-pole connectors: as the qualified person
        directs. Nothing drawn here is leave to connect or to energize.
      </p>
    </section>
  );
};
