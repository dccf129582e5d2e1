/** A set of listeners that are told the same thing. */
export class Listeners<A extends readonly unknown[]> {
  readonly #all = new Set<(...args: A) => void>();

  /** Adds one and gives the way to take it off again. */
  readonly add = (listener: (...args: A) => void): (() => void) => {
    this.#all.add(listener);
    return () => this.#all.delete(listener);
  };

  tell(...args: A): void {
    for (const l of [...this.#all]) l(...args);
  }
}
