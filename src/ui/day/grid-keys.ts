import type { Facet } from './facets.ts';
import { type Choice, type GridSize, step } from './grid-model.ts';

/** What a key does in the grid while nothing is typed. */
export type GridAct =
  | { readonly do: 'go'; readonly to: Choice }
  | { readonly do: 'choose'; readonly to: Choice }
  | { readonly do: 'fill'; readonly way: 'down' | 'right' }
  | { readonly do: 'clear' }
  | { readonly do: 'open' }
  | { readonly do: 'type'; readonly text: string };

const STEPS: Readonly<Record<string, readonly [row: number, col: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

const FAR = 1e6;

/** The act a key stands for; undefined where the grid does not take it. */
export const actOf = (
  e: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
  choice: Choice,
  size: GridSize,
  begins: Facet<never>['begins'],
): GridAct | undefined => {
  const mod = e.ctrlKey || e.metaKey;
  const key = e.key.toLowerCase();
  const by = STEPS[e.key];
  const go = (row: number, col: number): GridAct => ({
    do: 'go',
    to: step(choice, { row, col }, size, e.shiftKey),
  });
  if (by) return go(by[0] * (mod ? FAR : 1), by[1] * (mod ? FAR : 1));
  if (e.key === 'Home' || e.key === 'End') {
    const far = e.key === 'Home' ? -FAR : FAR;
    return go(mod ? far : 0, far);
  }
  if (mod && key === 'a')
    return {
      do: 'choose',
      to: { from: { row: 0, col: 0 }, to: { row: size.rows - 1, col: size.cols - 1 } },
    };
  if (mod && key === 'd') return { do: 'fill', way: 'down' };
  if (mod && key === 'r') return { do: 'fill', way: 'right' };
  if (e.key === 'Delete' || e.key === 'Backspace') return { do: 'clear' };
  if (e.key === 'Enter' || e.key === 'F2') return { do: 'open' };
  if (!mod && !e.altKey && begins(e.key)) return { do: 'type', text: e.key };
  return undefined;
};
