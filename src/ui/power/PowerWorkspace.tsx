import { type ComponentType, useEffect } from 'react';
import { TabStrip } from '../common/TabStrip.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { POWER_TABS, type PowerTab, useUi } from '../ui-state.ts';
import { CircuitsTab } from './CircuitsTab.tsx';
import { MeasuredTab } from './MeasuredTab.tsx';
import { OneLineTab } from './OneLineTab.tsx';
import { PlugTab } from './PlugTab.tsx';
import { SizeTab } from './SizeTab.tsx';
import { WhatIfTab } from './WhatIfTab.tsx';
import { WhereTab } from './WhereTab.tsx';
import './power.css';

const SCREENS: Readonly<Record<PowerTab, ComponentType>> = {
  circuits: CircuitsTab,
  'one-line': OneLineTab,
  'what-if': WhatIfTab,
  where: WhereTab,
  plug: PlugTab,
  size: SizeTab,
  measured: MeasuredTab,
};

/** Keys the editor keeps for itself here; the others would move or delete what is chosen on a floor nobody sees. */
const isCommon = (e: React.KeyboardEvent): boolean =>
  e.key === '/' || e.key === '?' || ((e.ctrlKey || e.metaKey) && ['z', 'y'].includes(e.key.toLowerCase()));

/** The supply as tables, as a diagram, and what can be asked of it. */
export const PowerWorkspace = () => {
  const { session } = useServices();
  const chosen = useUi((u) => u.powerTab);
  const setTab = useUi((u) => u.setPowerTab);
  const message = useSessionSlice((s) => s.message);
  const name = POWER_TABS.find((t) => t.id === chosen)?.name ?? '';
  const Screen = SCREENS[chosen];
  // What is said here is about this screen.
  useEffect(() => () => session.set({ message: '' }), [session]);

  return (
    <main
      className="power"
      aria-label="Power"
      onKeyDown={(e) => {
        if (!isCommon(e)) e.stopPropagation();
      }}
    >
      <TabStrip
        label="Power"
        id="power"
        tabs={POWER_TABS}
        chosen={chosen}
        onChoose={setTab}
        message={message}
      />
      <div id="power-panel" className="power-panel" role="tabpanel" aria-label={name} tabIndex={-1}>
        {chosen === 'circuits' ? null : <h2 className="visually-hidden">{name}</h2>}
        <Screen />
      </div>
    </main>
  );
};
