export const ROOT: string;
export class Stop extends Error {}
export const runMain: (main: () => Promise<number | undefined> | number | undefined) => Promise<void>;
export const checkNode: (version?: string) => void;
export const ensureInstalled: (log: (line: string) => void) => void;
export const ensureBuilt: (target: 'app' | 'cli', log: (line: string) => void) => string;
