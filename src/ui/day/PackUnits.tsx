import { useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength } from '../../kernel/units.ts';
import { setOnPacks, setPacks } from '../../plan/edits/day.ts';
import { kindOf, planRecord, recordsOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';
import type { DaySummary } from '../../report/day.ts';
import { Figure } from '../common/Figure.tsx';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { betweenText, PackDialog } from './PackDialog.tsx';
import { RunsOn } from './RunsOn.tsx';

const count = (t: string): Result<number> => {
  const n = Number(t.trim());
  return Number.isInteger(n) && n >= 1 && n <= 12 ? ok(n) : fail({ what: 'One to twelve packs at once.' });
};

const WHEN = { none: 'goes dark', recharge: 'charged when off', exchange: 'exchanged' } as const;

/** Units that run on packs or cells, and any others to put on packs. */
export const PackUnits = ({ summary }: { readonly summary: DaySummary }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const all = [...recordsOf(plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));
  const units = all.filter((f) => f.onPacks);
  const others = all.filter((f) => !f.onPacks);
  return (
    <section aria-label="Units on packs">
      <h3>Units on packs and on their own cells</h3>
      {units.length === 0 ? (
        <p className="day-empty">No unit runs on packs. Put one on packs below.</p>
      ) : null}
      {units.length > 0 ? (
        <table className="table">
          <caption className="visually-hidden">Units on packs</caption>
          <thead>
            <tr>
              <th scope="col">Unit</th>
              <th scope="col">Kind</th>
              <th scope="col">Runs on</th>
              <th scope="col">At once</th>
              <th scope="col">Between, when empty</th>
              <th scope="col">Runtime, worst to best</th>
              <th scope="col">
                <span className="visually-hidden">Back to mains</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {units.map((f) => (
              <UnitLine key={f.id} fixture={f} summary={summary} />
            ))}
          </tbody>
        </table>
      ) : null}
      <label className="packs-add">
        <span className="soft">Put on packs</span>{' '}
        <select
          className="input"
          disabled={readOnly || others.length === 0}
          value=""
          onChange={(e) => session.commit('Put on packs', setOnPacks(plan, [e.target.value], true))}
        >
          <option value="">choose a unit</option>
          {others.map((f) => (
            <option key={f.id} value={f.id}>
              {[f.unit, kindOf(plan, f.kindId)?.name, f.use].filter(Boolean).join(' · ')}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
};

const UnitLine = ({ fixture: f, summary }: { readonly fixture: Fixture; readonly summary: DaySummary }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const kind = kindOf(plan, f.kindId, 'fixture');
  const lane = summary.lanes.find((l) => l.fixtureId === f.id);
  const [open, setOpen] = useState(false);
  const from = f.packFrom && summary.sharedPacks.find((p) => p.id === f.packFrom?.packId);
  const lead = from?.units.find((u) => u.fixtureId === f.id);
  const between = f.packFrom
    ? `lead ${lead ? formatLength(lead.leadMm, planRecord(plan).lengthUnits) : ''}${lead?.leadAssumed ? ', assumed' : ''}`
    : f.packs
      ? betweenText(plan, f.packs, kind) || 'straight on'
      : kind?.ownCellsWh
        ? WHEN[f.ownCells?.when ?? 'none']
        : 'choose…';
  return (
    <tr>
      <th scope="row">{f.unit}</th>
      <td className="soft">{kind?.name}</td>
      <td>
        <RunsOn fixture={f} label={`Packs of unit ${f.unit}`} className="cell-select" />
      </td>
      <td>
        {f.packFrom ? (
          <span className="soft">shared</span>
        ) : f.packs ? (
          <TypedCell
            label={`Packs at once on unit ${f.unit}`}
            value={f.packs.count}
            format={String}
            parse={count}
            disabled={readOnly}
            onCommit={(n) =>
              f.packs && session.commit('Packs at once', setPacks(plan, [f.id], { ...f.packs, count: n }))
            }
          />
        ) : null}
      </td>
      <td>
        <button
          type="button"
          className="link"
          aria-label={`${between}: packs of unit ${f.unit}`}
          onClick={() => setOpen(true)}
        >
          {between}
        </button>
        {open ? <PackDialog fixtureId={f.id} summary={summary} onClose={() => setOpen(false)} /> : null}
      </td>
      <td>
        {lane?.problem ? <span className="day-fault">{lane.problem}</span> : null}
        {lane?.runtimes.map((r) => (
          <span key={r.setupId} className="packs-runtime">
            <span className="soft">{r.setupName}</span> <Figure figureKey={r.key}>{r.text}</Figure>
          </span>
        ))}
      </td>
      <td>
        <button
          type="button"
          className="button quiet"
          disabled={readOnly}
          aria-label={`Unit ${f.unit} back to mains`}
          onClick={() => session.commit('Back to mains', setOnPacks(plan, [f.id], false))}
        >
          To mains
        </button>
      </td>
    </tr>
  );
};
