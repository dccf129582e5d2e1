import { recordOf } from '../../plan/plan.ts';
import type { SupplySummary } from '../../report/summary.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Goes to the setup in which something is fullest of all, from whatever is shown. */
export const WorstSetup = ({ supply }: { readonly supply: SupplySummary }) => {
  const { session } = useServices();
  const { plan, setupId } = useSessionSlice((s) => ({ plan: s.plan, setupId: s.setupId }));
  const meters = supply.sources.flatMap((s) => [...s.legs, s.neutral, ...s.circuits.map((c) => c.amps)]);
  const [worst] = [...meters].sort(
    (a, b) => (Number.isFinite(b.worstPct) ? b.worstPct : 0) - (Number.isFinite(a.worstPct) ? a.worstPct : 0),
  );
  const setup = worst?.worstSetupId === undefined ? undefined : recordOf(plan, 'setup', worst.worstSetupId);
  if (!setup || !(worst && worst.worstPct > 0)) return null;
  const name = setup.scene || setup.name;
  return setup.id === setupId ? (
    <span className="soft small">this is the worst setup</span>
  ) : (
    <button
      type="button"
      className="link small"
      title={`The setup in which something is fullest: ${[setup.scene, setup.name].filter(Boolean).join(' · ')}`}
      onClick={() => session.set({ setupId: setup.id })}
    >
      go to the worst setup, {name}
    </button>
  );
};
