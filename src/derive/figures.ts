import type { Id } from '../kernel/ids.ts';
import { type FigureTable, QUANTITIES, type Quantity } from './types.ts';

const quantityIndex: ReadonlyMap<Quantity, number> = new Map(QUANTITIES.map((q, i) => [q, i]));

/** Position of a figure in the table's values: setups lie next to one another, then quantities, then entities. */
export const figureOffset = (row: number, quantity: number, setup: number, setups: number): number =>
  (row * QUANTITIES.length + quantity) * setups + setup;

/** A figure table over given values, laid out by `figureOffset`. */
export const figureTable = (
  entityKeys: readonly string[],
  setupIds: readonly Id[],
  values: Float64Array,
): FigureTable => {
  // Made when it is first asked: most tables are only read by place.
  let rows: ReadonlyMap<string, number> | undefined;
  const setups = setupIds.length;
  const at = (key: string, quantity: Quantity, setup: number): number => {
    rows ??= new Map(entityKeys.map((k, i) => [k, i]));
    const row = rows.get(key);
    const q = quantityIndex.get(quantity);
    if (row === undefined || q === undefined || setup < 0 || setup >= setups) return Number.NaN;
    return values[figureOffset(row, q, setup, setups)] ?? Number.NaN;
  };
  return {
    entityKeys,
    setupIds,
    values,
    get: at,
    worst: (key, quantity) => {
      let value = Number.NaN;
      let setupIndex = -1;
      for (let s = 0; s < setups; s++) {
        const v = at(key, quantity, s);
        if (Number.isNaN(v)) continue;
        if (setupIndex < 0 || (quantity === 'voltsV' ? v < value : v > value)) {
          value = v;
          setupIndex = s;
        }
      }
      return { value, setupIndex };
    },
  };
};
