import type { LoadRow } from '../../report/summary.ts';
import { Severity } from '../common/Severity.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';

/** A load by name; choosing it selects it on the floor. */
export const SelectName = ({ load }: { readonly load: LoadRow }) => {
  const { session } = useServices();
  return (
    <button
      type="button"
      className="link"
      onClick={() => session.set({ selection: new Set([load.recordId]), workspace: 'floor' })}
    >
      {load.label} <span className="soft">{load.kindName}</span>
    </button>
  );
};

/** Findings whose main record is this one, as their numbers; choosing one opens the list. */
export const FindingMarks = ({
  recordIds,
  wayKey,
}: {
  readonly recordIds: readonly string[];
  readonly wayKey: string | undefined;
}) => {
  const findings = useSessionSlice((s) => s.assessment?.findings);
  const setFindings = useUi((u) => u.setFindings);
  const found = (findings ?? []).filter((f) =>
    wayKey !== undefined ? f.id.endsWith(`:${wayKey}`) : recordIds.includes(f.recordIds[0] ?? ''),
  );
  if (found.length === 0) return null;
  return (
    <button type="button" className="rail-counts" onClick={() => setFindings(true)}>
      {found.slice(0, 3).map((f) => (
        <Severity key={f.id} level={f.severity}>
          {f.number}
        </Severity>
      ))}
    </button>
  );
};

/** What a load would see while something is tried, beside its name. */
export const TriedMark = ({ recordId }: { readonly recordId: string }) => {
  const state = useSessionSlice((s) => s.tried?.get(recordId));
  if (!state) return null;
  return <span className={state === 'wrong volts' ? 'power-hit wrong' : 'power-hit'}>{state}</span>;
};
