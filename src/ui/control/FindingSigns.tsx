import type { Finding } from '../../report/types.ts';
import { Severity } from '../common/Severity.tsx';
import { useUi } from '../ui-state.ts';

/** Findings about each record, by its id. */
export const findingsBy = (findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> => {
  const map = new Map<string, Finding[]>();
  for (const f of findings)
    if (f.rule.startsWith('control-'))
      for (const id of new Set(f.recordIds)) {
        const list = map.get(id);
        if (list) list.push(f);
        else map.set(id, [f]);
      }
  return map;
};

/** Signs of findings that open the list of them. */
export const FindingSigns = ({ findings }: { readonly findings: readonly Finding[] }) => {
  const setFindings = useUi((u) => u.setFindings);
  if (findings.length === 0) return null;
  return (
    <button type="button" className="rail-counts" onClick={() => setFindings(true)}>
      {findings.slice(0, 2).map((x) => (
        <Severity key={x.id} level={x.severity}>
          {x.number}
        </Severity>
      ))}
    </button>
  );
};
