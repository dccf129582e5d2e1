import { type ComponentType, useEffect } from 'react';
import { TabStrip } from '../common/TabStrip.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { type PowerTab, useUi } from '../ui-state.ts';
import { CircuitsTab } from './CircuitsTab.tsx';
import { MeasuredTab } from './MeasuredTab.tsx';
import { OneLineTab } from './OneLineTab.tsx';
import { PlugTab } from './PlugTab.tsx';
import { WhatIfTab } from './WhatIfTab.tsx';
import { WhereTab } from './WhereTab.tsx';
import './power.css';

const TABS: readonly { readonly id: PowerTab; readonly name: string; readonly Screen: ComponentType }[] = [
  { id: 'circuits', name: 'Circuits', Screen: CircuitsTab },
  { id: 'one-line', name: 'One-line', Screen: OneLineTab },
  { id: 'what-if', name: 'What if', Screen: WhatIfTab },
  { id: 'where', name: 'Where can I plug in', Screen: WhereTab },
  { id: 'plug', name: 'Plug and balance', Screen: PlugTab },
  { id: 'measured', name: 'Measured', Screen: MeasuredTab },
];

/** Keys the editor keeps for itself here; the others would move or delete what is chosen on a floor nobody sees. */
const isCommon = (e: React.KeyboardEvent): boolean =>
  e.key === '/' || e.key === '?' || ((e.ctrlKey || e.metaKey) && ['z', 'y'].includes(e.key.toLowerCase()));

/** The supply as tables, as a diagram, and what can be asked of it. */
export const PowerWorkspace = () => {
  const { session } = useServices();
  const chosen = useUi((u) => u.powerTab);
  const setTab = useUi((u) => u.setPowerTab);
  const message = useSessionSlice((s) => s.message);
  const at = Math.max(
    0,
    TABS.findIndex((t) => t.id === chosen),
  );
  const { Screen, name } = TABS[at] ?? { Screen: CircuitsTab, name: 'Circuits' };
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
        tabs={TABS}
        chosen={TABS[at]?.id ?? 'circuits'}
        onChoose={setTab}
        message={message}
      />
      <div id="power-panel" className="power-panel" role="tabpanel" aria-label={name} tabIndex={-1}>
        {at === 0 ? null : <h2 className="visually-hidden">{name}</h2>}
        <Screen />
      </div>
    </main>
  );
};
