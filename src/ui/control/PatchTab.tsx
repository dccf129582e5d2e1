import { useMemo, useState } from 'react';
import { utf8Bytes } from '../../kernel/canonical.ts';
import { writePatchCsv } from '../../plan/edits/patch-csv.ts';
import { recordsOf } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { AssignDialog } from './AssignDialog.tsx';
import { ChannelsDialog } from './ChannelsDialog.tsx';
import { CsvDialog } from './CsvDialog.tsx';
import { HatchDefs } from './HatchDefs.tsx';
import { PatchTable } from './PatchTable.tsx';
import { unpatch } from './patching.ts';
import { filterRows, SHOWS, type Show, type SortBy, shows, tableRows } from './rows.ts';
import { UniverseMap } from './UniverseMap.tsx';

const takeWords = (n: number): string =>
  n === 0 ? 'Take addresses away' : `Take ${n} ${n === 1 ? 'address' : 'addresses'} away`;

/** Who listens where: the patch as a table, the universes as maps, and what gives addresses. */
export const PatchTab = () => {
  const { session, deliver } = useServices();
  const { plan, findings, selection, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    findings: s.assessment?.findings,
    selection: s.selection,
    readOnly: s.readOnly,
  }));
  const [query, setQuery] = useState('');
  const [show, setShow] = useState<Show>('all');
  const [universe, setUniverse] = useState<number | undefined>(undefined);
  const [sort, setSort] = useState<SortBy>('unit');
  const [dialog, setDialog] = useState<'assign' | 'channels' | 'import' | undefined>(undefined);
  const all = useMemo(() => tableRows(plan, findings ?? []), [plan, findings]);
  const rows = useMemo(
    () => filterRows(all, { query, show, universe, sort }),
    [all, query, show, universe, sort],
  );
  const numbers = recordsOf(plan, 'universe')
    .map((u) => u.number)
    .sort((a, b) => a - b);
  const chosen = all.filter((r) => selection.has(r.id) && r.patched).map((r) => r.id);

  return (
    <div className="control-patch">
      <section className="patch" aria-label="Patch">
        <div className="patch-head">
          <h2>Patch</h2>
          <input
            className="input patch-find"
            type="search"
            aria-label="Find a unit"
            placeholder="Find a unit, kind, use or u3"
            value={query}
            onChange={(e) => setQuery(e.target.value)}
          />
          <select
            className="input patch-filter"
            aria-label="Show"
            value={show}
            onChange={(e) => setShow(e.target.value as Show)}
          >
            {SHOWS.map((s) => (
              <option key={s.id} value={s.id}>
                {s.words} ({all.filter((r) => shows(r, s.id)).length})
              </option>
            ))}
          </select>
          <select
            className="input patch-filter"
            aria-label="Universe shown"
            value={universe ?? ''}
            onChange={(e) => setUniverse(e.target.value === '' ? undefined : Number(e.target.value))}
          >
            <option value="">any universe</option>
            {numbers.map((n) => (
              <option key={n} value={n}>
                universe {n}
              </option>
            ))}
          </select>
        </div>
        <div className="patch-tools">
          <button
            type="button"
            className="button primary"
            disabled={readOnly}
            onClick={() => setDialog('assign')}
          >
            Assign addresses…
          </button>
          <button
            type="button"
            className="button"
            disabled={readOnly || chosen.length === 0}
            onClick={() => unpatch(session, chosen, takeWords(chosen.length))}
          >
            {takeWords(chosen.length)}
          </button>
          <button type="button" className="button" disabled={readOnly} onClick={() => setDialog('channels')}>
            Number channels…
          </button>
          <button type="button" className="button" disabled={readOnly} onClick={() => setDialog('import')}>
            Import CSV…
          </button>
          <button
            type="button"
            className="button"
            onClick={() => void deliver('patch.csv', utf8Bytes(`\uFEFF${writePatchCsv(plan)}`), 'text/csv')}
          >
            Export CSV
          </button>
        </div>
        {all.length === 0 ? (
          <p className="patch-none soft">No units yet. Place fixtures on the floor; they show here.</p>
        ) : (
          <PatchTable rows={rows} sort={sort} onSort={setSort} />
        )}
      </section>
      <UniverseMap />
      <HatchDefs />
      {dialog === 'assign' ? <AssignDialog onClose={() => setDialog(undefined)} /> : null}
      {dialog === 'channels' ? <ChannelsDialog onClose={() => setDialog(undefined)} /> : null}
      {dialog === 'import' ? <CsvDialog onClose={() => setDialog(undefined)} /> : null}
    </div>
  );
};
