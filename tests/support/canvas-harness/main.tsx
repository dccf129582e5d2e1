// A bare page around the floor canvas, for looking at it and driving it with a real mouse:
// npx vite --config tests/support/canvas-harness/vite.config.ts, then ?plan=study|street|stage|crowd&scheme=bench|truck
import { createRoot } from 'react-dom/client';
import { demoMakers } from '../../../demo-sets/make/all.ts';
import { FloorCanvas } from '../../../src/canvas/FloorCanvas.tsx';
import { bookForPlan } from '../../../src/editor/book.ts';
import { commands } from '../../../src/editor/commands/index.ts';
import { createSession } from '../../../src/editor/session.ts';
import { idMaker } from '../../../src/kernel/ids.ts';
import { crowd } from './crowd.ts';

const query = new URLSearchParams(location.search);
const name = query.get('plan') ?? 'study';
let seed = 1;
const newId = idMaker(() => {
  seed = (seed * 16807) % 2147483647;
  return seed / 2147483647;
});
const plan = name === 'crowd' ? crowd(600) : demoMakers[name]?.();
if (!plan) throw new Error(`no plan ${name}`);
const session = createSession(plan, newId);
const book = bookForPlan(plan);
const root = document.getElementById('root');
if (!root) throw new Error('no root');
createRoot(root).render(
  <FloorCanvas session={session} book={book} scheme={query.get('scheme') === 'truck' ? 'truck' : 'bench'} />,
);
Object.assign(window, { session, book, commands });
