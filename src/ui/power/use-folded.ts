import { useEffect, useState } from 'react';
import type { SupplyEntity } from '../../derive/types.ts';

type Entities = ReadonlyMap<string, SupplyEntity>;

/** Boxes above the entities of these records, by record. */
const boxesAbove = (entities: Entities, ids: ReadonlySet<string>): ReadonlySet<string> => {
  const out = new Set<string>();
  for (const e of entities.values()) {
    if (!ids.has(e.recordId)) continue;
    for (let at = entities.get(e.parentKey ?? ''); at; at = entities.get(at.parentKey ?? ''))
      if (at.what === 'box' && !ids.has(at.recordId)) out.add(at.recordId);
  }
  return out;
};

/** Boxes that feed loads and no other box, without those that hold something that is to stay in sight. */
export const leafBoxes = (entities: Entities, keep: ReadonlySet<string>): ReadonlySet<string> => {
  const above = new Set<string>();
  const fed = new Set<string>();
  for (const e of entities.values()) {
    if (e.what !== 'box' && e.what !== 'load') continue;
    for (let at = entities.get(e.parentKey ?? ''); at; at = entities.get(at.parentKey ?? ''))
      if (at.what === 'box') (e.what === 'box' ? above : fed).add(at.recordId);
  }
  const needed = boxesAbove(entities, keep);
  return new Set([...fed].filter((id) => !above.has(id) && !needed.has(id)));
};

// Kept while other screens are shown: who comes back finds the diagram as it was.
let last: ReadonlySet<string> = new Set();

/** Folded boxes of the diagram; what is chosen elsewhere unfolds the boxes it hangs on. */
export const useFolded = (entities: Entities, selection: ReadonlySet<string>) => {
  const [folded, setFolded] = useState<ReadonlySet<string>>(last);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new choice unfolds, not another folding
  useEffect(() => {
    const needed = boxesAbove(entities, selection);
    const left = [...folded].filter((id) => !needed.has(id));
    if (left.length < folded.size) setFolded(new Set(left));
  }, [selection]);
  useEffect(() => {
    last = folded;
  }, [folded]);
  const toggle = (id: string): void => {
    const next = new Set(folded);
    if (!next.delete(id)) next.add(id);
    setFolded(next);
  };
  return { folded, toggle, setFolded };
};
