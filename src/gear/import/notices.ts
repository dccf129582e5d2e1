import type { Problem } from '../../kernel/result.ts';

const MAX_LINES = 40;
const MAX_CHARS = 300;

/** Collects what a person should know about an import, each thing once and no more than a screenful. */
export class Notices {
  readonly #lines = new Set<string>();
  readonly #problems: Problem[] = [];
  #more = 0;

  add(line: string): void {
    const text = line.length > MAX_CHARS ? `${line.slice(0, MAX_CHARS - 1)}…` : line;
    if (this.#lines.has(text)) return;
    if (this.#lines.size >= MAX_LINES) this.#more++;
    else this.#lines.add(text);
  }

  /** Something that was left out of the result. */
  problem(p: Problem): void {
    if (this.#problems.length < MAX_LINES) this.#problems.push(p);
    else this.#more++;
  }

  get lines(): readonly string[] {
    return this.#more > 0 ? [...this.#lines, `… and ${this.#more} more of the same sort.`] : [...this.#lines];
  }

  get problems(): readonly Problem[] {
    return this.#problems;
  }
}
