import fc from 'fast-check';
import { expect, test } from 'vitest';
import { commands } from '../../src/editor/commands/index.ts';
import { NO_OVERLAY } from '../../src/editor/overlay.ts';
import { createToolbox } from '../../src/editor/tools/toolbox.ts';
import { needKind } from '../../src/gear/index.ts';
import { referenceProblems } from '../../src/plan/checks.ts';
import { readPlan, serialisePlan } from '../../src/plan/file.ts';
import { addBox, addMark, addUnit, floorRig, pointer } from '../support/floor.ts';

type Act =
  | { readonly what: 'command'; readonly index: number }
  | {
      readonly what: 'gesture';
      readonly tool: 'select' | 'place' | 'cable' | 'aim' | 'pan';
      readonly spots: readonly (readonly [number, number])[];
      readonly bail: boolean;
      readonly alt: boolean;
    };

/** Places where there is something to grab, so that random gestures do more than miss. */
const HOT: readonly (readonly [number, number])[] = [
  [1500, 1500],
  [4000, 1500],
  [3000, 4000],
  [4500, 4000],
  [5000, 3000],
];

const spot = fc.oneof(
  fc.constantFrom(...HOT),
  fc.tuple(fc.integer({ min: -500, max: 6500 }), fc.integer({ min: -500, max: 5500 })),
);

const act: fc.Arbitrary<Act> = fc.oneof(
  fc.record({
    what: fc.constant('command' as const),
    index: fc.nat({ max: commands.length - 1 }),
  }),
  fc.record({
    what: fc.constant('gesture' as const),
    tool: fc.constantFrom('select', 'place', 'cable', 'aim', 'pan'),
    spots: fc.array(spot, { minLength: 1, maxLength: 4 }),
    bail: fc.boolean(),
    alt: fc.boolean(),
  }),
);

const start = () => {
  const rig = floorRig();
  addUnit(rig, 'led-panel-60x60', 1500, 1500);
  addUnit(rig, 'led-spot-60w', 4000, 1500);
  addBox(rig, needKind('north-america', 'quad-box-20', 'box'), 3000, 4000);
  addBox(rig, needKind('north-america', 'quad-box-20', 'box'), 4500, 4000);
  addMark(rig, 5000, 3000);
  return { rig, box: createToolbox(rig.ctx) };
};

const perform = ({ rig, box }: ReturnType<typeof start>, a: Act): void => {
  const { session } = rig;
  if (a.what === 'command') {
    const c = commands[a.index];
    if (c?.enabled(session.getState())) c.perform(rig);
    return;
  }
  session.set({ tool: a.tool, placing: { kindSlug: 'discharge-par-575w' } });
  const at = ([x, y]: readonly [number, number]) => pointer(session, x, y, { alt: a.alt });
  const [first = [0, 0] as const, ...rest] = a.spots;
  box.pointerMove(at(first));
  box.pointerDown(at(first));
  for (const s of rest) box.pointerMove(at(s));
  if (a.bail) box.key('Escape');
  else box.pointerUp(at(rest.at(-1) ?? first));
};

test('undo of any gestures and commands restores the same bytes, redo the edited ones', () => {
  fc.assert(
    fc.property(fc.array(act, { maxLength: 14 }), (acts) => {
      const made = start();
      const { session } = made.rig;
      const before = serialisePlan(session.getState().plan);
      for (const a of acts) perform(made, a);
      // Undos among the acts leave the plan as the undo stack says: from there back is the start.
      const after = serialisePlan(session.getState().plan);
      const steps = session.getState().undoStack.length;
      expect(referenceProblems(session.getState().plan)).toEqual([]);
      const read = readPlan(after);
      expect(read.ok && serialisePlan(read.value.plan)).toBe(after);
      for (let i = 0; i < steps; i++) session.undo();
      expect(serialisePlan(session.getState().plan)).toBe(before);
      for (let i = 0; i < steps; i++) session.redo();
      expect(serialisePlan(session.getState().plan)).toBe(after);
      made.box.close();
    }),
    { numRuns: 60 },
  );
});

test('a gesture that is bailed out of leaves the plan, the history and the floor as they were', () => {
  fc.assert(
    fc.property(act, (a) => {
      if (a.what !== 'gesture') return;
      const made = start();
      const { session } = made.rig;
      const before = session.getState();
      perform(made, { ...a, bail: true });
      const after = session.getState();
      expect(after.plan).toBe(before.plan);
      expect(after.undoStack).toBe(before.undoStack);
      // The cable tool keeps its first end on a click; a second Escape lets go of that too.
      made.box.key('Escape');
      expect(session.getState().preview).toBeUndefined();
      expect(session.getState().overlay).toBe(NO_OVERLAY);
      made.box.close();
    }),
    { numRuns: 60 },
  );
});
