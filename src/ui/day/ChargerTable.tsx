import { useState } from 'react';
import { compareNatural } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatWatts } from '../../kernel/units.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { addCharger } from '../../plan/edits/day.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { portName } from '../../plan/names.ts';
import { kindOf, recordsOf } from '../../plan/plan.ts';
import { feedOf, inletsOf } from '../../plan/ports.ts';
import type { Charger } from '../../plan/records/index.ts';
import { TypedCell } from '../common/TypedCell.tsx';
import { PlugDialog } from '../floor/PlugDialog.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useChargerKinds } from './pack-kinds.ts';

/** The chargers: bays in use, and what they are plugged into. */
export const ChargerTable = () => {
  const { session } = useServices();
  const { plan, readOnly, floorId, camera } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    floorId: s.floorId,
    camera: s.camera,
  }));
  const kinds = useChargerKinds();
  const chargers = [...recordsOf(plan, 'charger')].sort((a, b) => compareNatural(a.label, b.label));
  return (
    <section aria-label="Chargers">
      <h3>Chargers</h3>
      {chargers.length === 0 ? <p className="day-empty">No charger yet: what is empty stays empty.</p> : null}
      {chargers.length > 0 ? (
        <table className="table">
          <caption className="visually-hidden">Chargers</caption>
          <thead>
            <tr>
              <th scope="col">Charger</th>
              <th scope="col">Kind</th>
              <th scope="col">Bays in use</th>
              <th scope="col" className="num">
                Takes at most
              </th>
              <th scope="col">Plugged</th>
              <th scope="col">
                <span className="visually-hidden">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {chargers.map((c) => (
              <ChargerLine key={c.id} charger={c} />
            ))}
          </tbody>
        </table>
      ) : null}
      <label className="packs-add">
        <span className="soft">Add a charger</span>{' '}
        <select
          className="input"
          disabled={readOnly || !floorId}
          value=""
          onChange={(e) => {
            const kind = kinds.find((k) => k.id === e.target.value);
            if (kind && floorId)
              session.commit('Add charger', addCharger(plan, kind, floorId, camera.center, session.newId));
          }}
        >
          <option value="">choose a kind</option>
          {kinds.map((k) => (
            <option key={k.id} value={k.id}>
              {k.name}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
};

const ChargerLine = ({ charger: c }: { readonly charger: Charger }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const [plugging, setPlugging] = useState(false);
  const kind = kindOf(plan, c.kindId, 'charger');
  const inlet = inletsOf(plan, c.id)[0];
  const ref = inlet && { recordId: c.id, portId: inlet.id };
  const feed = ref && feedOf(plan, ref);
  const most = kind?.bays ?? 0;
  const bays = (t: string): Result<number> => {
    const n = Number(t.trim());
    return t.trim() !== '' && Number.isInteger(n) && n >= 0 && n <= most
      ? ok(n)
      : fail({ what: `It has ${most} bays.` });
  };
  return (
    <tr>
      <th scope="row">{c.label}</th>
      <td className="soft">{kind?.name ?? 'kind not in the plan'}</td>
      <td>
        <TypedCell
          label={`Bays in use of ${c.label}`}
          value={c.bays ?? most}
          format={String}
          parse={bays}
          disabled={readOnly}
          onCommit={(n) => {
            const r = changeRecord(plan, c, { bays: n });
            if (r.ok) session.commit('Bays in use', r.value);
          }}
        />
        {kind && kind.together < kind.bays ? <span className="soft"> {kind.together} at once</span> : null}
      </td>
      <td className="num">{formatWatts(kind?.load.wattsW ?? Number.NaN)}</td>
      <td>
        <button type="button" className="link" disabled={readOnly || !ref} onClick={() => setPlugging(true)}>
          {feed ? portName(plan, feed.from) : 'Plug in…'}
        </button>
        {feed ? null : <span className="soft"> in no figure until it is</span>}
        {plugging && ref ? <PlugDialog inlet={ref} onClose={() => setPlugging(false)} /> : null}
      </td>
      <td>
        <button
          type="button"
          className="button quiet"
          disabled={readOnly}
          aria-label={`Remove charger ${c.label}`}
          onClick={() => session.commit('Remove charger', removeRecords(plan, new Set([c.id])))}
        >
          Remove
        </button>
      </td>
    </tr>
  );
};
