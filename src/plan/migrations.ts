/** Turns the data of a file of version n into version n + 1. */
export type Migration = (data: Record<string, unknown>) => Record<string, unknown>;

/** `migrations[0]` leads from version 1 to 2, and so on. Each keeps the keys it does not know. */
export const migrations: readonly Migration[] = [];

/** Brings the data of an older file to the present version. Throws where a step is missing: a programmer's mistake. */
export const migrate = (data: Record<string, unknown>, fromVersion: number): Record<string, unknown> => {
  let current = data;
  for (let v = fromVersion; v <= migrations.length; v++) {
    const step = migrations[v - 1];
    if (!step) throw new Error(`no migration from version ${v}`);
    current = step(current);
  }
  return current;
};
