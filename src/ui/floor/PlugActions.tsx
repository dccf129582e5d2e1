import { showRecords } from '../../editor/show-records.ts';
import { setOnPacks } from '../../plan/edits/day.ts';
import { kindOf, recordOf } from '../../plan/plan.ts';
import type { Finding } from '../../report/types.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

/** What a finding about a thing without power offers: the outlets it could take, and packs where it could run on them. */
export const PlugActions = ({ finding }: { readonly finding: Finding }) => {
  const { session } = useServices();
  const setFindings = useUi((u) => u.setFindings);
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const units = finding.recordIds.flatMap((id) => {
    const r = plan.records.get(id);
    return r?.type === 'ballast' ? (recordOf(plan, 'fixture', r.fixtureId) ?? r) : (r ?? []);
  });
  const first = units[0];
  const kind = first?.type === 'fixture' ? kindOf(plan, first.kindId, 'fixture') : undefined;
  const packs = kind?.ownCellsWh ? 'Run on its own cells' : kind?.packIn ? 'Run on packs' : undefined;
  if (!first || readOnly || first.locked) return null;
  return (
    <>
      <button
        type="button"
        className="link"
        onClick={() => {
          setFindings(false);
          showRecords(session, [first.id]);
          session.set({ floorView: { ...session.getState().floorView, ask: 'plug' } });
        }}
      >
        Plug in…
      </button>
      {packs ? (
        <button
          type="button"
          className="link"
          onClick={() => session.commit(packs, setOnPacks(plan, [first.id], true))}
        >
          {packs}
        </button>
      ) : null}
    </>
  );
};
