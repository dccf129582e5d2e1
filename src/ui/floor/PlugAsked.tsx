import { chosenInlet } from '../../editor/commands/plug-in.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { closeAsk } from './ask.ts';
import { PlugDialog } from './PlugDialog.tsx';

/** The outlets for the one thing that is selected. */
export const PlugAsked = () => {
  const { session } = useServices();
  const s = useSessionSlice((x) => ({ plan: x.plan, selection: x.selection }));
  const inlet = chosenInlet(s);
  return inlet ? <PlugDialog inlet={inlet} onClose={() => closeAsk(session)} /> : null;
};
