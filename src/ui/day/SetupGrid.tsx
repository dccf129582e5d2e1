import { useState } from 'react';
import { setupsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { COLORS, type Facet, LEVELS, PLACES } from './facets.ts';
import { LevelGrid } from './LevelGrid.tsx';
import { SetupBar } from './SetupBar.tsx';

// Kept while other views are shown.
let lastFacet: Facet<never>['id'] = 'level';

/** Units by setups: the level of each, or its colour, edited like a spreadsheet. */
export const SetupGrid = () => {
  const { plan, setupId } = useSessionSlice((s) => ({ plan: s.plan, setupId: s.setupId }));
  const [facet, setFacet] = useState(lastFacet);
  const setups = setupsOf(plan);
  const show = (id: typeof facet): void => {
    lastFacet = id;
    setFacet(id);
  };
  const shared = {
    bar: (tools: React.ReactNode) => (
      <SetupBar
        setup={setups.find((s) => s.id === setupId)}
        count={setups.length}
        index={setups.findIndex((s) => s.id === setupId)}
      >
        <fieldset className="switch">
          <legend className="visually-hidden">The grid shows</legend>
          {[LEVELS, COLORS, PLACES].map((f) => (
            <button
              key={f.id}
              type="button"
              className="switch-part"
              aria-pressed={facet === f.id}
              onClick={() => show(f.id)}
            >
              {f.name}
            </button>
          ))}
        </fieldset>
        {tools}
      </SetupBar>
    ),
  };
  return facet === 'level' ? (
    <LevelGrid key="level" facet={LEVELS} {...shared} />
  ) : facet === 'color' ? (
    <LevelGrid key="color" facet={COLORS} {...shared} />
  ) : (
    <LevelGrid key="place" facet={PLACES} {...shared} />
  );
};
