export const ROUNDS = 7;

/** The value in the middle, or at any other share of the sorted list. */
export const quantile = (values: readonly number[], share = 0.5): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

export const ms = (n: number): string => `${n < 10 ? n.toFixed(2) : n.toFixed(1)} ms`;
export const times = (n: number): string => `${n < 10 ? n.toFixed(2) : n.toFixed(0)} ×`;
export const kilobytes = (bytes: number): string => `${Math.round(bytes / 1024)} kB`;

export const line = (name: string, value: string, note = ''): void =>
  console.log(`${name.padEnd(58)}${value.padStart(12)}${note ? `   ${note}` : ''}`);

/** Milliseconds of one call. */
export const timed = (work: () => unknown): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

/** Runs each of the works once per round, in turn, so that what slows the machine slows all of them; gives the medians. */
export const interleaved = <K extends string>(
  works: Readonly<Record<K, () => number>>,
): Record<K, number> => {
  const names = Object.keys(works) as K[];
  const seen = Object.fromEntries(names.map((n) => [n, []])) as unknown as Record<K, number[]>;
  for (let round = 0; round < ROUNDS; round++) for (const name of names) seen[name].push(works[name]());
  return Object.fromEntries(names.map((n) => [n, quantile(seen[n])])) as Record<K, number>;
};
