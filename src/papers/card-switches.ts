import { DIP_WEIGHTS, dipSwitches } from '../report/control.ts';
import { CAP, type Ink } from './ink.ts';

const SLOT_W_MM = 3.4;
const SLOT_H_MM = 5.4;

/**
 * Nine address switches with those that are on, their numbers under them, for the sum being the address; the other
 * convention in words. Gives the height under it.
 */
export const drawSwitches = (ink: Ink, x: number, y: number, w: number, address: number): number => {
  const sum = dipSwitches(address, 'sum');
  const less = dipSwitches(address, 'sum-less-one');
  const step = Math.min(w / 10, 6);
  ink.text(x, y + 3.6, 'on', { role: 'ink-soft' });
  ink.text(x, y + 6.6, 'off', { role: 'ink-soft' });
  DIP_WEIGHTS.forEach((_, i) => {
    const sx = x + 6 + i * step;
    const on = sum.ok && sum.value.includes(i + 1);
    ink.rect(sx, y + 1, SLOT_W_MM, SLOT_H_MM, { weightMm: 0.18 });
    ink.rect(sx + 0.5, y + (on ? 1.5 : 3.9), SLOT_W_MM - 1, 2, { fill: 'ink' });
    ink.text(sx + SLOT_W_MM / 2, y + 9, String(i + 1), {
      align: 'center',
      weight: on ? 'semibold' : 'regular',
    });
  });
  const words = sum.ok ? `on ${sum.value.join(' ') || 'none'}` : 'not to be set as a sum';
  const other = less.ok ? `; where a unit counts from 0: on ${less.value.join(' ') || 'none'}` : '';
  ink.text(x, y + 12.6, `${words}${other}. See the manual.`, { capMm: CAP.note, maxMm: w, role: 'ink-soft' });
  return y + 14;
};
