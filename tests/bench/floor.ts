import { drawFloor } from '../../src/drawing/draw-floor.ts';
import { createScene } from '../../src/editor/scene.ts';
import { createSession } from '../../src/editor/session.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import { movedWith, moveRecords } from '../../src/plan/edits/arrange.ts';
import { fixturePlace, type Plan, recordsOf } from '../../src/plan/plan.ts';
import { placeOf } from '../../src/plan/ports.ts';
import { routeBetween } from '../../src/plan/route.ts';
import { rowsOf } from '../../src/ui/floor/table-rows.ts';
import { line, ms, quantile, ROUNDS, timed } from './measure.ts';

/** What the floor does between two frames: routes, the edit and the drawing of a drag, labels, rows of the table. */
export const benchFloor = (plan: Plan): void => {
  const floorId = recordsOf(plan, 'floor')[0]?.id;
  const unit = recordsOf(plan, 'fixture').find((f) => f.support.on === 'stand');
  if (!floorId || !unit) return;
  const runs = recordsOf(plan, 'cable').flatMap((c) => {
    const [from, to] = [placeOf(plan, c.from.recordId), placeOf(plan, c.to.recordId)];
    return from && to ? [[from, to] as const] : [];
  });
  const fresh = applyChanges(
    plan,
    moveRecords(plan, new Set([recordsOf(plan, 'wall')[0]?.id ?? '']), { xMm: 1, yMm: 0 }),
  );
  const each = runs.map(([from, to]) => timed(() => routeBetween(fresh, from, to)));
  line('floor: route of a cable, p50', ms(quantile(each)), `${runs.length} cables`);
  line('floor: route of a cable, p95', ms(quantile(each, 0.95)), `first of all ${ms(each[0] ?? 0)}`);

  const session = createSession(plan, (p) => p);
  session.set({ viewport: { widthPx: 1280, heightPx: 800 } });
  const scene = createScene(session, { labelsLater: true });
  line('floor: geometry at first', ms(timed(() => scene.list())));
  line('floor: all labels after it', ms(timed(() => scene.settle())));
  const ids = movedWith(plan, new Set([unit.id]));
  const steps = Array.from({ length: 20 * ROUNDS }, (_, i) =>
    timed(() => {
      session.set({ preview: moveRecords(plan, ids, { xMm: i * 7, yMm: i }) });
      scene.preview();
    }),
  );
  line('floor: one step of a drag, edit and drawing, p95', ms(quantile(steps, 0.95)));
  const edits = Array.from({ length: ROUNDS }, (_, i) =>
    timed(() => {
      session.commit('Move', moveRecords(session.getState().plan, ids, { xMm: i + 1, yMm: 0 }));
      scene.list();
    }),
  );
  line('floor: one edit until it is drawn', ms(quantile(edits)));
  line(
    'floor: rows of the table',
    ms(quantile(Array.from({ length: ROUNDS }, () => timed(() => rowsOf(plan, floorId, undefined))))),
  );
  const spots = recordsOf(plan, 'fixture').map((f) => fixturePlace(plan, f).at);
  const picks = spots.map((at) => timed(() => scene.picker.pick(at, 60)));
  line('floor: picking what is under the pointer, p95', ms(quantile(picks, 0.95)), `${picks.length} presses`);
  const whole = timed(() => drawFloor(plan, { floorId, setupId: undefined, nominalScale: 100 }));
  line('floor: drawn whole at another scale', ms(whole));
};
