import type { SupplyEntity } from '../../derive/types.ts';
import { CAP, type Sketch } from '../sketch.ts';
import { LINE } from './metrics.ts';
import type { OneLineContext } from './types.ts';

const SIGN_MM = 4;

export const isFolded = (c: OneLineContext, e: SupplyEntity): boolean =>
  e.what === 'box' && c.folded?.has(e.recordId) === true;

/** Whether something hangs on a box that can be put out of sight, on a drawing where that is possible. */
export const canFold = (c: OneLineContext, e: SupplyEntity): boolean =>
  c.folded !== undefined && e.what === 'box' && c.r.children(e.key).some((x) => countBelow(c, x) > 0);

const countBelow = (c: OneLineContext, e: SupplyEntity): number =>
  (e.what === 'load' || e.what === 'box' ? 1 : 0) +
  c.r.children(e.key).reduce((n, x) => n + countBelow(c, x), 0);

const count = (c: OneLineContext, e: SupplyEntity, what: 'load' | 'box'): number =>
  c.r.children(e.key).reduce((n, x) => n + (x.what === what ? 1 : 0) + count(c, x, what), 0);

/** What a folded box keeps out of sight: `folded: 8 loads, 1 box`. */
export const foldedWords = (c: OneLineContext, e: SupplyEntity): string => {
  const loads = count(c, e, 'load');
  const boxes = count(c, e, 'box');
  const parts = [
    `${loads} ${loads === 1 ? 'load' : 'loads'}`,
    ...(boxes > 0 ? [`${boxes} ${boxes === 1 ? 'box' : 'boxes'}`] : []),
  ];
  return `folded: ${parts.join(', ')}`;
};

/** A small square with a plus where something is folded, a minus where it can be. */
export const foldSign = (s: Sketch, x: number, y: number, folded: boolean): void => {
  s.rect(x, y, SIGN_MM, SIGN_MM, { weightMm: LINE.frame, fill: 'paper' });
  s.text(x + SIGN_MM / 2, y + SIGN_MM / 2 + 0.9, folded ? '+' : '−', {
    align: 'center',
    weight: 'semibold',
    capMm: CAP.value,
  });
};
