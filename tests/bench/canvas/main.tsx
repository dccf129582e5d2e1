// The canvas with a large plan (?scene=ours), or its primitives as a bare scene (?scene=bare), for tests/bench/canvas.ts.
import { createRoot } from 'react-dom/client';
import { FloorCanvas } from '../../../src/canvas/FloorCanvas.tsx';
import { bookForPlan } from '../../../src/editor/book.ts';
import { toScreen } from '../../../src/editor/camera.ts';
import { createScene } from '../../../src/editor/scene.ts';
import { createSession } from '../../../src/editor/session.ts';
import { idMaker } from '../../../src/kernel/ids.ts';
import { fixturePlace, recordsOf } from '../../../src/plan/plan.ts';
import { largePlan } from '../large-plan.ts';
import { bareScene } from './bare.ts';

const plan = largePlan();
const session = createSession(
  plan,
  idMaker(() => 0.5),
);
const root = document.querySelector<HTMLDivElement>('#root');
if (!root) throw new Error('no root');
const [first] = recordsOf(plan, 'fixture').filter((f) => f.support.on === 'stand');
if (!first) throw new Error('no fixture on a stand');

createRoot(root).render(
  <FloorCanvas session={session} book={bookForPlan(plan)} scheme="bench" fitAtFirst={false} />,
);

/** The unit that is dragged is in the middle of the view. Same view in both scenes. */
const ready = async (pxPerMm: number, bare: boolean): Promise<{ x: number; y: number; items: number }> => {
  while (session.getState().viewport.widthPx === 0) await new Promise(requestAnimationFrame);
  const { at } = fixturePlace(plan, first);
  session.set({ camera: { center: at, pxPerMm }, selection: new Set() });
  await document.fonts.ready;
  const scene = createScene(session);
  if (bare) {
    const own = document.createElement('div');
    own.style.cssText = 'position:absolute;inset:0';
    root.replaceWith(own);
    bareScene(own, session, scene, first.id);
  }
  const { camera, viewport } = session.getState();
  const spot = toScreen(camera, viewport, at);
  return { x: spot.x, y: spot.y, items: scene.visible().length };
};

declare global {
  interface Window {
    ready(pxPerMm: number, bare: boolean): Promise<{ x: number; y: number; items: number }>;
    movedFixture(): boolean;
  }
}
window.ready = ready;
window.movedFixture = () => session.getState().plan.records.get(first.id) !== first;
