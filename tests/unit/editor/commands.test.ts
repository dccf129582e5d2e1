import { describe, expect, test } from 'vitest';
import { command, commands, registerCommands } from '../../../src/editor/commands/index.ts';
import { runBetween } from '../../../src/editor/connect.ts';
import { needKind } from '../../../src/gear/index.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { addSetup } from '../../../src/plan/edits/document.ts';
import { placeRigging } from '../../../src/plan/edits/grip.ts';
import { moveLabel } from '../../../src/plan/edits/label-places.ts';
import { plug } from '../../../src/plan/edits/plug.ts';
import { setRoute } from '../../../src/plan/edits/routes.ts';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { levelOf, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { feedOf } from '../../../src/plan/ports.ts';
import { addBox, addMark, addUnit, floorRig } from '../../support/floor.ts';

/** Two units (one on a stand, one plugged), a box, a mark and two setups, with the units selected. */
const busyRig = () => {
  const rig = floorRig();
  const a = addUnit(rig, 'led-panel-60x60', 1500, 1500);
  const b = addUnit(rig, 'led-spot-60w', 4000, 1500);
  const box = addBox(rig, needKind('north-america', 'quad-box-20', 'box'), 3000, 4000);
  addMark(rig, 5000, 4000);
  const state = () => rig.session.getState();
  rig.add(addSetup(state().plan, 'Night', undefined, rig.session.newId));
  rig.session.set({ selection: new Set([a]) });
  command('put-on-stand').perform(rig);
  const run = runBetween(state().plan, box, b, rig.book.cables());
  if (!run.ok) throw new Error(run.error.what);
  rig.add(plug(state().plan, run.value.from, run.value.to, run.value.bridge.cable, rig.session.newId));
  rig.session.set({ selection: new Set([a, b]) });
  return { rig, a, b, box, state };
};

/** What some commands need before they can do anything. */
const prepare = (id: string, { rig, b, state }: ReturnType<typeof busyRig>): void => {
  const [wall] = recordsOf(state().plan, 'wall');
  const cable = recordsOf(state().plan, 'cable')[0]?.id ?? '';
  if (id === 'redo' || id === 'undo') command('nudge-left').perform(rig);
  if (id === 'redo') rig.session.undo();
  if (id.startsWith('paste')) command('copy').perform(rig);
  if (id === 'let-route') {
    rig.add(setRoute(state().plan, cable, [{ xMm: 500, yMm: 500 }]));
    rig.session.set({ selection: new Set([cable]) });
  }
  if (id === 'split-wall' || id === 'join-walls') rig.session.set({ selection: new Set([wall?.id ?? '']) });
  if (id === 'join-walls') {
    command('split-wall').perform(rig);
    const more = recordsOf(state().plan, 'wall').at(-1)?.id ?? '';
    rig.session.set({ selection: new Set([wall?.id ?? '', more]) });
  }
  if (id === 'hang') {
    const tube = needKind('north-america', 'pipe-steel-6', 'rigging');
    const at = { xMm: 3000, yMm: 1500 };
    const made = placeRigging(
      state().plan,
      { kind: tube, floorId: rig.floorId, at, rotationDeg: 0, heightMm: 3000 },
      rig.session.newId,
    );
    const { selection } = state();
    rig.add(made.changes);
    rig.session.set({ selection });
  }
  if (id === 'reset-labels') rig.session.commit('Move', moveLabel(state().plan, b, { xMm: 900, yMm: 900 }));
  if (id === 'unlock') command('lock').perform(rig);
  if (id === 'plug-in') rig.session.set({ selection: new Set([b]) });
  if (id === 'to-mains') command('on-packs').perform(rig);
  if (id === 'place-everywhere') command('own-place').perform(rig);
  if (id === 'show' || id === 'show-all') {
    const chosen = state().selection;
    command('hide').perform(rig);
    rig.session.set({ selection: chosen });
  }
  if (id === 'ungroup') command('group').perform(rig);
  if (id.startsWith('align') || id.startsWith('distribute'))
    rig.session.set({
      selection: new Set([b, ...recordsOf(state().plan, 'box').map((x) => x.id), ...state().selection]),
    });
};

describe('commands', () => {
  test('two commands on one key, however it is spelled, are refused', () => {
    const some = (id: string, key: string) => ({
      id,
      label: id,
      keys: [key],
      enabled: () => true,
      perform: () => undefined,
    });
    expect(() => registerCommands([some('a', 'Shift+$mod+KeyZ'), some('b', '$mod+Shift+KeyZ')])).toThrow(
      /a|b/,
    );
    expect(() => registerCommands([some('a', 'KeyZ'), some('a', 'KeyY')])).toThrow('called a');
    expect(registerCommands([some('a', 'KeyZ'), some('b', 'Shift+KeyZ')])).toHaveLength(2);
  });

  test.each(commands.map((c) => c.id))('%s: undo brings back the same bytes, redo the edit', (id) => {
    const busy = busyRig();
    const { rig, state } = busy;
    const c = command(id);
    prepare(id, busy);
    expect(c.enabled(state()), 'enabled').toBe(true);
    const before = serialisePlan(state().plan);
    const steps = state().undoStack.length;
    c.perform(rig);
    const after = serialisePlan(state().plan);
    if (id === 'undo' || id === 'redo') return expect(after).not.toBe(before);
    if (state().undoStack.length === steps) return expect(after).toBe(before);
    expect(state().undoStack.length).toBe(steps + 1);
    expect(after).not.toBe(before);
    rig.session.undo();
    expect(serialisePlan(state().plan)).toBe(before);
    rig.session.redo();
    expect(serialisePlan(state().plan)).toBe(after);
    const read = readPlan(after);
    expect(read.ok && serialisePlan(read.value.plan)).toBe(after);
    expect(referenceProblems(state().plan)).toEqual([]);
  });

  test('nothing that edits is enabled in a read-only plan', () => {
    const { rig, state } = busyRig();
    rig.session.set({ readOnly: true });
    const before = serialisePlan(state().plan);
    for (const c of commands) if (c.enabled(state())) c.perform(rig);
    expect(serialisePlan(state().plan)).toBe(before);
  });

  test('duplicate gives new units a stand of their own, next numbers and no cables', () => {
    const { rig, a, b, state } = busyRig();
    command('duplicate').perform(rig);
    const copies = [...state().selection].flatMap((id) => recordOf(state().plan, 'fixture', id) ?? []);
    expect(copies.map((f) => f.unit).sort()).toEqual(['3', '4']);
    expect(copies.some((f) => f.id === a || f.id === b)).toBe(false);
    const stands = recordsOf(state().plan, 'fixture').flatMap((f) =>
      f.support.on === 'stand' ? [f.support.standId] : [],
    );
    expect(new Set(stands).size).toBe(2);
    expect(recordsOf(state().plan, 'cable')).toHaveLength(1);
  });

  test('off and full in this setup leave the other setup alone', () => {
    const { rig, a, state } = busyRig();
    const [day, night] = recordsOf(state().plan, 'setup').map((s) => s.id);
    rig.session.set({ setupId: night });
    command('toggle-level').perform(rig);
    expect(levelOf(state().plan, night ?? '', a).levelPct).toBe(0);
    expect(levelOf(state().plan, day ?? '', a)).toEqual({ levelPct: 100, assumed: true });
    command('toggle-level').perform(rig);
    expect(levelOf(state().plan, night ?? '', a)).toEqual({ levelPct: 100, assumed: false });
  });

  test('unplug takes the feed off the selected units', () => {
    const { rig, b, state } = busyRig();
    command('unplug').perform(rig);
    expect(feedOf(state().plan, { recordId: b, portId: 'in' })).toBeUndefined();
    expect(command('unplug').enabled(state())).toBe(false);
  });

  test('a selection change never clears redo', () => {
    const { rig, state } = busyRig();
    command('nudge-left').perform(rig);
    command('undo').perform(rig);
    command('select-all').perform(rig);
    command('clear-selection').perform(rig);
    expect(command('redo').enabled(state())).toBe(true);
  });

  test('arrow keys go by round steps in the plan’s own units', () => {
    for (const [units, step] of [
      ['imperial', 25.4],
      ['metric', 10],
    ] as const) {
      const rig = floorRig(undefined, units);
      const id = addUnit(rig, 'led-spot-60w', 1000, 1000);
      rig.session.set({ selection: new Set([id]) });
      command('nudge-right').perform(rig);
      expect(recordOf(rig.session.getState().plan, 'fixture', id)?.at.xMm).toBeCloseTo(1000 + step, 9);
    }
  });
});
