import Konva from 'konva/lib/Core';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Stage } from 'react-konva/lib/ReactKonvaCore';
import type { Book } from '../editor/book.ts';
import { fitFloor } from '../editor/fit-floor.ts';
import { selectionWords } from '../editor/floor-facts.ts';
import { OPTIONS } from '../editor/options.ts';
import { createScene, type Scene } from '../editor/scene.ts';
import { selectUnder } from '../editor/select-under.ts';
import type { Session } from '../editor/session.ts';
import { createToolbox } from '../editor/tools/toolbox.ts';
import { BackgroundLayer, FurnitureLayer, OverlayLayer, PlanLayer } from './Layers.tsx';
import { FONT_FAMILY } from './painter.ts';
import { PALETTES, type Scheme } from './palette.ts';
import { usePointer } from './use-pointer.ts';
import { useSession } from './use-session.ts';

/** Set before the first layer is made: a layer keeps the ratio it began with. */
if (typeof window !== 'undefined')
  Konva.pixelRatio = Math.min(OPTIONS.pixelRatioCap, window.devicePixelRatio || 1);

export interface FloorCanvasProps {
  readonly session: Session;
  readonly book: Book;
  readonly scheme: Scheme;
  /** Whether the first measure also fits the floor into the view; false where a remembered view came first. */
  readonly fitAtFirst?: boolean;
  /** A menu was asked for at this spot of the page, about what is selected then. */
  readonly onMenu?: (spot: { readonly x: number; readonly y: number }) => void;
}

/** The floor: drawn from the display list, worked on with the tools. Fills its parent. */
export const FloorCanvas = ({ session, book, scheme, fitAtFirst = true, onMenu }: FloorCanvasProps) => {
  const container = useRef<HTMLDivElement>(null);
  const [coarse, setCoarse] = useState(false);
  const view = useSession(session, (s) => s.viewport);
  const scene = useMemo(() => createScene(session, { labelsLater: true }), [session]);
  const placing = useLabelsLater(session, scene);
  const toolbox = useMemo(
    () => createToolbox({ session, book, picker: scene.picker }),
    [session, book, scene],
  );
  useEffect(() => () => toolbox.close(), [toolbox]);
  useViewport(container, session, fitAtFirst);
  const asked = useCallback(
    (spot: { readonly x: number; readonly y: number }, type: 'mouse' | 'touch' | 'pen') => {
      if (session.getState().tool !== 'select')
        session.set({ tool: 'select', placing: undefined, message: '' });
      selectUnder(session, scene.picker, spot, type);
      const r = container.current?.getBoundingClientRect();
      onMenu?.({ x: spot.x + (r?.left ?? 0), y: spot.y + (r?.top ?? 0) });
    },
    [session, scene, onMenu],
  );
  usePointer(container, session, toolbox, setCoarse, asked);
  const palette = PALETTES[scheme];
  const fonts = useFontsLoaded();
  const layer = { session, scene, palette };

  return (
    <div
      ref={container}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: keys act on the floor, so it takes the focus
      tabIndex={0}
      role="application"
      aria-label="Floor drawing"
      aria-describedby="floor-selection"
      className="floor-canvas"
      style={{ position: 'absolute', inset: 0, overflow: 'hidden', touchAction: 'none' }}
    >
      <Stage key={fonts} width={view.widthPx} height={view.heightPx} listening={false}>
        <BackgroundLayer {...layer} />
        <PlanLayer {...layer} />
        <OverlayLayer {...layer} coarse={coarse} />
        <FurnitureLayer session={session} palette={palette} />
      </Stage>
      <SelectionWords session={session} />
      {placing ? (
        <div className="floor-busy" role="status">
          placing labels…
        </div>
      ) : null}
    </div>
  );
};

const HIDDEN = {
  position: 'absolute',
  width: 1,
  height: 1,
  margin: -1,
  overflow: 'hidden',
  clipPath: 'inset(50%)',
  whiteSpace: 'nowrap',
} as const;

const SelectionWords = ({ session }: { readonly session: Session }) => {
  const words = useSession(session, selectionWords);
  return (
    <div id="floor-selection" aria-live="polite" style={HIDDEN}>
      {words}
    </div>
  );
};

/**
 * Places labels once what changed is on the screen, and not while a drag or a move of the view goes on. True while that
 * takes long enough to be told.
 */
const useLabelsLater = (session: Session, scene: Scene): boolean => {
  const [busy, setBusy] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let movedAt = 0;
    /** When labels fell behind; a person is told only where it takes long enough to notice. */
    let since: number | undefined;
    const settle = (): void => {
      timer = undefined;
      if (session.getState().preview || performance.now() - movedAt < OPTIONS.stillMs) return wait(120);
      const end = performance.now() + OPTIONS.labelSliceMs;
      if (!scene.settle(() => performance.now() < end)) {
        since ??= end;
        if (end - since > OPTIONS.busyMs) setBusy(true);
        return wait(0);
      }
      since = undefined;
      setBusy(false);
      // Painters look at the scene whenever the session speaks.
      session.set({});
    };
    const wait = (ms: number): void => {
      clearTimeout(timer);
      timer = setTimeout(settle, ms);
    };
    const look = (): void => {
      if (scene.unsettled()) {
        if (timer === undefined) timer = setTimeout(() => requestAnimationFrame(() => wait(0)), 0);
      }
    };
    look();
    const stop = session.subscribe((now, was) => {
      if (now.camera !== was.camera) movedAt = performance.now();
      look();
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, [session, scene]);
  return busy;
};

/** Keeps the session's viewport the size of the container; the first size also fits the floor into view. */
const useViewport = (
  container: { readonly current: HTMLDivElement | null },
  session: Session,
  fitAtFirst: boolean,
): void => {
  useEffect(() => {
    const el = container.current;
    if (!el) return;
    const measure = (): void => {
      const viewport = { widthPx: el.clientWidth, heightPx: el.clientHeight };
      const was = session.getState().viewport;
      if (was.widthPx === viewport.widthPx && was.heightPx === viewport.heightPx) return;
      const first = fitAtFirst && (was.widthPx === 0 || was.heightPx === 0);
      const camera = first ? fitFloor({ ...session.getState(), viewport }) : undefined;
      session.set(camera ? { viewport, camera } : { viewport });
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(el);
    return () => observer.disconnect();
  }, [container, session, fitAtFirst]);
};

/** Text drawn before the font arrived would stay in another one, so the stage is made anew once. */
const useFontsLoaded = (): string => {
  const [loaded, setLoaded] = useState('before-fonts');
  useEffect(() => {
    let here = true;
    const faces = [`400 12px ${FONT_FAMILY}`, `600 12px ${FONT_FAMILY}`];
    Promise.all(faces.map((f) => document.fonts.load(f))).then(
      () => here && setLoaded('with-fonts'),
      // A missing font file is no reason to show nothing: the page's own font takes its place.
      () => here && setLoaded('with-fonts'),
    );
    return () => {
      here = false;
    };
  }, []);
  return loaded;
};
