import { recordOf } from '../../plan/plan.ts';
import { CAP } from '../sketch.ts';
import { LINE, TEXT_MM, TRUNK_MM } from './metrics.ts';
import { flagSign } from './symbols.ts';
import type { Block, OneLineContext, Painter, Room, Root } from './types.ts';

export const FLAG_MM = 12;

/** What a flag says is on the other sheet. */
const nameOf = (root: Root): string =>
  root.what === 'under' ? `on ${root.entity.label}` : root.entity.label;

/** A flag at the end of a conductor: what hangs here is on another sheet. */
export const flagBlock = (c: OneLineContext, root: Root, room: Room): Block | undefined => {
  if (room.heightMm < FLAG_MM || room.widthMm < c.columnMm) return undefined;
  const units = root.what === 'under' ? c.r.children(root.entity.key).length : 0;
  return {
    w: c.columnMm,
    h: FLAG_MM,
    trunkX: TRUNK_MM,
    cuts: [root],
    draw: (p, x, y) => {
      const at = x + TRUNK_MM;
      p.item(
        root.entity,
        (s) => {
          s.line(at, y, at, y + 3, LINE.cable, 'cable');
          flagSign(s, at, y + 3);
          const name = root.what === 'under' ? `${units} ${units === 1 ? 'run' : 'runs'} more` : nameOf(root);
          s.text(at + TEXT_MM, y + 5.8, name, {
            capMm: root.what === 'under' ? CAP.note : CAP.value,
            weight: 'semibold',
            maxMm: c.textMm,
          });
        },
        'flag',
      );
      p.reference(root, at + TEXT_MM, y + 9.6, false);
    },
  };
};

/** Above a diagram that goes on from another sheet: where its conductor comes from. */
export const drawOrigin = (p: Painter, c: OneLineContext, root: Root, x: number, y: number): void => {
  const cable =
    root.what === 'box' && root.cable ? recordOf(c.plan, 'cable', root.cable.recordId) : undefined;
  const feed = root.what === 'box' ? (root.cable ?? root.entity) : root.entity;
  const from =
    root.what === 'under'
      ? root.entity.label
      : (c.r.entity(feed.parentKey ?? '')?.label ?? cable?.label ?? '');
  p.item(
    root.entity,
    (s) => {
      flagSign(s, x, y);
      s.line(x, y + 6.4, x, y + FLAG_MM, LINE.cable, 'cable');
      s.text(x + TEXT_MM, y + 3, `from ${from}`, { weight: 'semibold', maxMm: c.textMm + 12 });
    },
    'origin',
  );
  p.reference(root, x + TEXT_MM, y + 6.8, true);
};
