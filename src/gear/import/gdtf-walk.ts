import type { Geometry, GeometryTree } from './gdtf-tree.ts';
import { composed, IDENTITY, type Matrix } from './gdtf-values.ts';
import type { Notices } from './notices.ts';

/** A geometry met on a walk, with the references that lead to it, outermost first. */
export interface Visit {
  readonly geometry: Geometry;
  readonly references: readonly Geometry[];
  readonly place: Matrix;
  /** Model of the reference that took the geometry's place. */
  readonly model: string | undefined;
}

/** Instances below one root. Real fixtures stay in the hundreds. */
const MAX_INSTANCES = 20_000;
/** Instances below all roots together, so that many modes do not add up to a stall. */
const MAX_ALL = 100_000;
const MAX_REFERENCE_DEPTH = 16;

/** Walks a fixture's geometries. Modes that begin at the same geometry share one walk. */
export class Walker {
  readonly #tree: GeometryTree;
  readonly #notices: Notices;
  readonly #known = new Map<Geometry, readonly Visit[] | undefined>();
  #left = MAX_ALL;

  constructor(tree: GeometryTree, notices: Notices) {
    this.#tree = tree;
    this.#notices = notices;
  }

  /**
   * A geometry and all below it, references followed once for each place they stand. Rings of references are told
   * and cut. Undefined where it grows beyond any real fixture.
   */
  visits(root: Geometry): readonly Visit[] | undefined {
    if (!this.#known.has(root)) {
      const found: Visit[] = [];
      const whole = this.#walk(root, [], IDENTITY, undefined, { found, path: new Set([root]) });
      this.#known.set(root, whole ? found : undefined);
    }
    return this.#known.get(root);
  }

  #walk(
    g: Geometry,
    references: readonly Geometry[],
    outer: Matrix,
    model: string | undefined,
    at: { readonly found: Visit[]; readonly path: Set<Geometry> },
  ): boolean {
    if (at.found.length >= MAX_INSTANCES || this.#left-- <= 0) return false;
    const place = composed(outer, g.place);
    at.found.push({ geometry: g, references, place, model: model ?? g.model });
    const enter = (child: Geometry, refs: readonly Geometry[], as?: string): boolean => {
      at.path.add(child);
      const whole = this.#walk(child, refs, place, as, at);
      at.path.delete(child);
      return whole;
    };
    const target = g.target === undefined ? undefined : this.#tree.byName.get(g.target);
    if (g.target !== undefined && !target)
      this.#notices.add(`Reference “${g.label}” names a geometry that is not there; its part is left out.`);
    else if (target && (at.path.has(target) || references.length >= MAX_REFERENCE_DEPTH))
      this.#notices.add(`Reference “${g.label}” leads back to the geometry it is in; it was not followed.`);
    else if (target && !enter(target, [...references, g], g.model)) return false;
    return g.children.every((c) => enter(c, references));
  }
}
