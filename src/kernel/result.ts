/** The outcome of something a user or a file can get wrong. Programmer mistakes throw instead. */
export type Result<T, E = Problem> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E };

/** What went wrong, where, and what to do about it, in the user's words. */
export interface Problem {
  readonly what: string;
  readonly where?: string;
  readonly todo?: string;
}

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });
export const fail = <E>(error: E): { readonly ok: false; readonly error: E } => ({ ok: false, error });

/** One line for a person: what, where, what to do. */
export const problemText = (p: Problem): string =>
  [p.what, p.where ? `At: ${p.where}.` : '', p.todo ?? ''].filter(Boolean).join(' ');

/** Marks a state that cannot be reached unless the program itself is wrong. */
export const unreachable = (value: never): never => {
  throw new Error(`unexpected value: ${String(value)}`);
};
