import type { AnyRecord } from './records/index.ts';

/** Gives every record that is in one list and not in the other, or not the same. Both are in id order. */
export const differences = (
  a: readonly AnyRecord[],
  b: readonly AnyRecord[],
  touch: (r: AnyRecord) => void,
): void => {
  if (a === b) return;
  let i = 0;
  let j = 0;
  while (i < a.length || j < b.length) {
    const [x, y] = [a[i], b[j]];
    if (x === y) {
      i++;
      j++;
    } else if (x && (!y || x.id < y.id)) {
      touch(x);
      i++;
    } else if (y && (!x || y.id < x.id)) {
      touch(y);
      j++;
    } else {
      if (x) touch(x);
      if (y) touch(y);
      i++;
      j++;
    }
  }
};
