// The canvas with 2,000 things and their labels, or its primitives as a bare scene, for tests/bench/canvas.ts.
import { createRoot } from 'react-dom/client';
import { FloorCanvas } from '../../../src/canvas/FloorCanvas.tsx';
import { bookForPlan } from '../../../src/editor/book.ts';
import { type Camera, toScreen } from '../../../src/editor/camera.ts';
import { createScene } from '../../../src/editor/scene.ts';
import { createSession, type Session } from '../../../src/editor/session.ts';
import { idMaker } from '../../../src/kernel/ids.ts';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { fixturePlace, type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { FloorTable } from '../../../src/ui/floor/FloorTable.tsx';
import { type Services, ServicesContext } from '../../../src/ui/services.ts';
import { placedCount, planWithPlaced } from '../large-plan-size.ts';
import '../../../src/ui/tokens.css';
import '../../../src/ui/base.css';
import '../../../src/ui/floor/floor.css';
import { bareScene } from './bare.ts';

const made = planWithPlaced(2000);
const text = serialisePlan(made);

const rootOf = (): HTMLDivElement => {
  const root = document.querySelector<HTMLDivElement>('#root');
  if (!root) throw new Error('no root');
  return root;
};

const frame = (): Promise<unknown> => new Promise(requestAnimationFrame);

const sessionOf = (plan: Plan): Session =>
  createSession(
    plan,
    idMaker(() => 0.5),
  );

const mount = (session: Session, fit: boolean): void =>
  createRoot(rootOf()).render(
    <FloorCanvas
      session={session}
      book={bookForPlan(session.getState().plan)}
      scheme="bench"
      fitAtFirst={fit}
    />,
  );

let session: Session | undefined;
let dragged = '';
let moved = false;

/** The unit that is dragged is in the middle of the view. Same view in both scenes; labels are placed in both. */
const ready = async (
  pxPerMm: number,
  bare: boolean,
): Promise<{ x: number; y: number; items: number; placed: number }> => {
  const [first] = recordsOf(made, 'fixture').filter((f) => f.support.on === 'stand');
  if (!first) throw new Error('no fixture on a stand');
  dragged = first.id;
  session = sessionOf(made);
  mount(session, false);
  while (session.getState().viewport.widthPx === 0) await frame();
  const { at } = fixturePlace(made, first);
  session.set({ camera: { center: at, pxPerMm }, selection: new Set() });
  await document.fonts.ready;
  const scene = createScene(session);
  const items = scene.visible().length;
  if (bare) {
    const own = document.createElement('div');
    own.style.cssText = 'position:absolute;inset:0';
    rootOf().replaceWith(own);
    bareScene(own, session, scene, first.id);
  } else {
    // The canvas places its own labels in idle time; it is measured once they stand.
    const settled = createScene(session, { labelsLater: true });
    settled.list();
    for (let quiet = 0; quiet < 40; quiet++) await frame();
  }
  session.subscribe((s) => {
    if (s.preview?.updated.some((u) => u.to.id === dragged || u.from.id === dragged)) moved = true;
  });
  const { camera, viewport } = session.getState();
  const spot = toScreen(camera, viewport, at);
  return { x: spot.x, y: spot.y, items, placed: placedCount(made) };
};

/** A camera that shows all of a plan, by its walls. */
const whole = (plan: Plan, widthPx: number, heightPx: number): Camera => {
  const xs = recordsOf(plan, 'wall').flatMap((w) => [w.from.xMm, w.to.xMm]);
  const ys = recordsOf(plan, 'wall').flatMap((w) => [w.from.yMm, w.to.yMm]);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return {
    center: { xMm: (minX + maxX) / 2, yMm: (minY + maxY) / 2 },
    pxPerMm: 0.9 * Math.min(widthPx / (maxX - minX), heightPx / (maxY - minY)),
  };
};

/** Milliseconds from the text of the plan to the first frame with its geometry; or to that of the bare scene. */
const firstPaint = async (bare: boolean): Promise<number> => {
  const root = rootOf();
  const viewport = { widthPx: root.clientWidth, heightPx: root.clientHeight };
  if (bare) {
    // What is drawn is known beforehand: the bare scene pays for parsing, nodes and painting only.
    const known = sessionOf(made);
    known.set({ viewport, camera: whole(made, viewport.widthPx, viewport.heightPx) });
    known.set({
      floorView: {
        ...known.getState().floorView,
        layers: {
          ...known.getState().floorView.layers,
          labels: { shown: false, faded: false, locked: false },
        },
      },
    });
    const scene = createScene(known);
    scene.visible();
    await frame();
    const start = performance.now();
    JSON.parse(text);
    bareScene(root, known, scene, '');
    await frame();
    await frame();
    return performance.now() - start;
  }
  await frame();
  const start = performance.now();
  const read = readPlan(text);
  if (!read.ok) throw new Error(read.error.what);
  const opened = sessionOf(read.value.plan);
  opened.set({ camera: whole(read.value.plan, viewport.widthPx, viewport.heightPx) });
  mount(opened, false);
  while (opened.getState().viewport.widthPx === 0) await frame();
  await frame();
  await frame();
  return performance.now() - start;
};

/** Milliseconds of the main thread's work from the text of the plan until all labels stand. */
const table = async (): Promise<{ rows: number }> => {
  session = sessionOf(made);
  const lent = { session } as unknown as Services;
  createRoot(rootOf()).render(
    <ServicesContext value={lent}>
      <FloorTable />
    </ServicesContext>,
  );
  await frame();
  await frame();
  return { rows: placedCount(made) };
};

const bench = { ready, firstPaint, table, moved: () => moved };
declare global {
  interface Window {
    bench: typeof bench;
  }
}
window.bench = bench;
