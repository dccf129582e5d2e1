import { useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { inletsOf } from '../../plan/ports.ts';
import type { LoadRow } from '../../report/summary.ts';
import { PlugDialog } from '../floor/PlugDialog.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { SelectName } from './circuit-parts.tsx';
import { DRAGGED } from './use-move.ts';

/** Loads that no source reaches: to drag to a way, to plug in one by one, or all at once. */
export const Unfed = ({ loads }: { readonly loads: readonly LoadRow[] }) => {
  const setPowerTab = useUi((u) => u.setPowerTab);
  const sorted = [...loads].sort((a, b) => compareNatural(a.label, b.label));
  return (
    <section aria-label="Not plugged">
      <h3 className="power-source">
        Not plugged <span className="soft">drag one to a way, or</span>{' '}
        <button type="button" className="link soft" onClick={() => setPowerTab('plug')}>
          plug everything in…
        </button>
      </h3>
      <ul className="power-unfed">
        {sorted.map((l) => (
          <UnfedLoad key={l.key} load={l} />
        ))}
      </ul>
    </section>
  );
};

const UnfedLoad = ({ load }: { readonly load: LoadRow }) => {
  const { session } = useServices();
  const readOnly = useSessionSlice((s) => s.readOnly);
  const [plugging, setPlugging] = useState(false);
  const inlet = inletsOf(session.getState().plan, load.recordId)[0];
  return (
    <li
      draggable={inlet !== undefined && !readOnly}
      onDragStart={(e) => {
        e.dataTransfer.setData(DRAGGED, load.recordId);
        e.dataTransfer.effectAllowed = 'move';
      }}
    >
      <SelectName load={load} />
      {inlet ? (
        <button
          type="button"
          className="link power-move"
          disabled={readOnly}
          aria-label={`Plug in ${load.label}`}
          onClick={() => setPlugging(true)}
        >
          plug in…
        </button>
      ) : null}
      {inlet && plugging ? (
        <PlugDialog
          inlet={{ recordId: load.recordId, portId: inlet.id }}
          onClose={() => setPlugging(false)}
        />
      ) : null}
    </li>
  );
};
