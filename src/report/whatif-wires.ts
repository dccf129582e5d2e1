import type { SupplyNode, SupplyTree } from '../derive/supply-types.ts';

/** What becomes of a wire when a leg of the source is lost. `half`: a leg of a three-phase transformer with half its volts. */
export type Wire = 'whole' | 'half' | 'dead';

const RANK: Readonly<Record<Wire, number>> = { whole: 0, half: 1, dead: 2 };

export const worse = (a: Wire = 'whole', b: Wire = 'whole'): Wire => (RANK[a] >= RANK[b] ? a : b);

/**
 * The wires at a node with one leg of its source lost. A winding between a lost leg and another wire gives nothing; of three
 * windings in delta, the two on the lost leg lie in series over the other two legs and give half each.
 */
export const wiresWithout = (tree: SupplyTree, node: SupplyNode, leg: number): readonly Wire[] => {
  const transformers = [];
  for (let n: SupplyNode | undefined = node; n; n = tree.nodes[n.parent])
    if (n.transformer) transformers.unshift(n.transformer);
  let wires: Wire[] = [0, 1, 2, 3].map((w) => (w === leg ? 'dead' : 'whole'));
  for (const t of transformers) {
    const feed = wires;
    const three = t.shape.legs === 3;
    wires = [0, 1, 2, 3].map((w): Wire => {
      const winding = t.windings.find((x) => x.leg === w);
      if (!winding) return 'whole';
      const state = worse(feed[winding.from], feed[winding.to]);
      return three && state === 'dead' ? 'half' : state;
    });
  }
  return wires;
};
