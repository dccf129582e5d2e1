import { type Book, bookForPlan } from '../../src/editor/book.ts';
import { toScreen } from '../../src/editor/camera.ts';
import { createScene } from '../../src/editor/scene.ts';
import { createSession, type Session } from '../../src/editor/session.ts';
import type { PointerInfo, Tool, ToolContext } from '../../src/editor/tools/tool.ts';
import { needKind } from '../../src/gear/index.ts';
import type { Id, NewId } from '../../src/kernel/ids.ts';
import { applyChanges, type ChangeSet } from '../../src/plan/change-set.ts';
import { newPlan } from '../../src/plan/edits/new-plan.ts';
import { placeBox, placeFixture, placeMark } from '../../src/plan/edits/place.ts';
import type { CableKind, Kind } from '../../src/plan/kinds/kinds.ts';
import { type Plan, recordsOf } from '../../src/plan/plan.ts';

/** Ids that count up, so that tests read the same every time. */
export const countingIds = (): NewId => {
  let n = 0;
  return (prefix) => `${prefix}-${++n}`;
};

const bare = {
  also: [],
  massKg: 5,
  symbol: 'unit-plain',
  basis: {},
  origin: { book: 'user', version: '1' },
} as const;

/** A small cable for a plug pair; tests name their own so that they do not lean on the book. */
export const testCable = (slug: string, plug: string, socket: string, legs = 1): CableKind => ({
  ...bare,
  also: [],
  id: `${slug}@test`,
  type: 'kind',
  slug,
  name: `Cable ${slug}`,
  sizeMm: { lengthMm: 100, widthMm: 100 },
  family: 'cable',
  construction: 'multicore',
  legs,
  neutral: true,
  conductor: 'awg:12',
  parallel: 1,
  ampacityA: 20,
  plug,
  socket,
  stockLengthsMm: [7620, 15_240],
});

export interface FloorRig {
  readonly session: Session;
  readonly ctx: ToolContext;
  readonly book: Book;
  readonly floorId: Id;
  add(changes: ChangeSet): void;
}

/** A session over an empty 6 × 5 m room, imperial, with a view of 1000 × 800 pixels at 0.1 px/mm. */
export const floorRig = (start?: Plan, units: 'imperial' | 'metric' = 'imperial'): FloorRig => {
  const newId = countingIds();
  const plan =
    start ??
    newPlan(
      {
        title: 'Room',
        production: 'Room',
        practice: 'north-america',
        lengthUnits: units,
        roomMm: { lengthMm: 6000, widthMm: 5000 },
      },
      newId,
    );
  const session = createSession(plan, newId);
  session.set({
    viewport: { widthPx: 1000, heightPx: 800 },
    camera: { center: { xMm: 3000, yMm: 2500 }, pxPerMm: 0.1 },
  });
  const book = bookForPlan(plan);
  const scene = createScene(session);
  return {
    session,
    book,
    ctx: { session, book, picker: scene.picker },
    floorId: recordsOf(plan, 'floor')[0]?.id ?? '',
    add: (changes) => session.load(applyChanges(session.getState().plan, changes)),
  };
};

/** Where a floor point is in the rig's view, as a pointer event. */
export const pointer = (
  session: Session,
  xMm: number,
  yMm: number,
  more: Partial<PointerInfo> = {},
): PointerInfo => {
  const { camera, viewport } = session.getState();
  const { x, y } = toScreen(camera, viewport, { xMm, yMm });
  return { at: { xMm, yMm }, x, y, shift: false, alt: false, ctrl: false, pointerType: 'mouse', ...more };
};

type Spot = readonly [xMm: number, yMm: number];

/** A press, moves and a release. */
export const drag = (
  rig: FloorRig,
  tool: Tool,
  spots: readonly Spot[],
  more: Partial<PointerInfo> = {},
): void => {
  const { ctx, session } = rig;
  const [first, ...rest] = spots;
  if (!first) return;
  tool.onPointerDown(ctx, pointer(session, ...first, more));
  for (const s of rest) tool.onPointerMove(ctx, pointer(session, ...s, more));
  tool.onPointerUp(ctx, pointer(session, ...(rest.at(-1) ?? first), more));
};

export const click = (
  rig: FloorRig,
  tool: Tool,
  xMm: number,
  yMm: number,
  more: Partial<PointerInfo> = {},
): void => drag(rig, tool, [[xMm, yMm]], more);

/** Adds a unit of a kind of the built-in book to the rig's floor. */
export const addUnit = (rig: FloorRig, slug: string, xMm: number, yMm: number): Id => {
  const { plan } = rig.session.getState();
  const kind = needKind('north-america', slug, 'fixture');
  const placed = placeFixture(
    plan,
    { kind, floorId: rig.floorId, at: { xMm, yMm }, heightMm: 2000, facingDeg: 0 },
    rig.session.newId,
  );
  rig.add(placed.changes);
  return placed.fixture.id;
};

export const addBox = (
  rig: FloorRig,
  kind: Extract<Kind, { family: 'box' }>,
  xMm: number,
  yMm: number,
): Id => {
  const placed = placeBox(rig.session.getState().plan, kind, rig.floorId, { xMm, yMm }, rig.session.newId);
  rig.add(placed.changes);
  return placed.box.id;
};

export const addMark = (rig: FloorRig, xMm: number, yMm: number): Id => {
  const placed = placeMark(
    rig.session.getState().plan,
    'talent',
    rig.floorId,
    { xMm, yMm },
    rig.session.newId,
  );
  rig.add(placed.changes);
  return placed.mark.id;
};
