import type { Scene } from './scene.ts';

const DIRECTIONS = 720;

/** Barriers by the direction they are seen in from one spot, so that a path is held against few of them. */
export const byDirection = (scene: Scene, x: number, y: number): readonly (readonly number[])[] => {
  const bins: number[][] = Array.from({ length: DIRECTIONS }, () => []);
  const turn = DIRECTIONS / (2 * Math.PI);
  scene.barriers.forEach((b, index) => {
    const n = b.xs.length;
    const seen = new Set<number>();
    for (let i = 0; i < (b.what === 'wall' ? n - 1 : n); i++) {
      const j = (i + 1) % n;
      const x1 = (b.xs[i] ?? 0) - x;
      const y1 = (b.ys[i] ?? 0) - y;
      const x2 = (b.xs[j] ?? 0) - x;
      const y2 = (b.ys[j] ?? 0) - y;
      const from = Math.atan2(y1, x1);
      // The shorter way round from one end to the other; a spot on the line sees it everywhere.
      const sweep = Math.atan2(x1 * y2 - y1 * x2, x1 * x2 + y1 * y2);
      const all = Math.abs(sweep) > Math.PI - 0.01 || Math.hypot(x1, y1) < 1e-6 || Math.hypot(x2, y2) < 1e-6;
      const low = all ? 0 : Math.floor(Math.min(from, from + sweep) * turn) - 1;
      const high = all ? DIRECTIONS - 1 : Math.floor(Math.max(from, from + sweep) * turn) + 1;
      for (let k = low; k <= high; k++) seen.add(((k % DIRECTIONS) + DIRECTIONS) % DIRECTIONS);
    }
    for (const k of seen) bins[k]?.push(index);
  });
  return bins;
};

/** The bin of `byDirection` that a direction falls into. */
export const binOf = (dx: number, dy: number): number => {
  const k = Math.floor((Math.atan2(dy, dx) * DIRECTIONS) / (2 * Math.PI));
  return ((k % DIRECTIONS) + DIRECTIONS) % DIRECTIONS;
};
