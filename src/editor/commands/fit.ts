import { emptyBox, point, unionBox } from '../../kernel/geometry.ts';
import { fitBox } from '../fit.ts';
import { fitFloor } from '../fit-floor.ts';
import { poseOf } from '../handles.ts';
import type { SessionState } from '../session.ts';
import { along } from '../snap-targets.ts';
import type { Command } from './command.ts';

const hasView = (s: SessionState): boolean => s.viewport.widthPx > 0;

export const fitAll: Command = {
  id: 'fit-all',
  label: 'Show the whole floor',
  keys: ['Home'],
  enabled: hasView,
  perform: ({ session }) => {
    const camera = fitFloor(session.getState());
    if (camera) session.set({ camera });
  },
};

/** Box around a selection: every thing with room for its size, walls and cables by their points. */
export const selectionBox = (s: SessionState): Parameters<typeof fitBox>[0] => {
  let box = emptyBox;
  for (const id of s.selection) {
    const pose = poseOf(s.plan, id);
    const r = s.plan.records.get(id);
    const points = pose
      ? [0, 90, 180, 270].map((deg) => along(pose.center, deg, pose.reachMm))
      : r?.type === 'wall'
        ? [r.from, r.to]
        : r?.type === 'cable'
          ? [...r.route.points, ...[r.from, r.to].flatMap((e) => poseOf(s.plan, e.recordId)?.center ?? [])]
          : [];
    for (const p of points.map((q) => point(q.xMm, q.yMm)))
      box = unionBox(box, { minX: p.xMm, minY: p.yMm, maxX: p.xMm, maxY: p.yMm });
  }
  return box;
};

export const fitSelection: Command = {
  id: 'fit-selection',
  label: 'Show the selection',
  keys: ['Shift+Home'],
  enabled: (s) => hasView(s) && s.selection.size > 0,
  perform: ({ session }) => {
    const camera = fitBox(selectionBox(session.getState()), session.getState().viewport);
    if (camera) session.set({ camera });
  },
};
