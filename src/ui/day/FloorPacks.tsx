import { unpluggedWords } from '../../editor/words.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatAmps } from '../../kernel/units.ts';
import { removeRecords } from '../../plan/edits/arrange.ts';
import { addFloorPack, changeFloorPack } from '../../plan/edits/floor-packs.ts';
import type { DaySummary } from '../../report/day.ts';
import { type FloorPackRow, floorPackRows, outletsLeft } from '../../report/floor-packs.ts';
import { Figure } from '../common/Figure.tsx';
import { TypedCell } from '../common/TypedCell.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { FedUnits } from './FedUnits.tsx';
import { usePackKinds } from './pack-kinds.ts';

const count = (t: string): Result<number> => {
  const n = Number(t.trim());
  return Number.isInteger(n) && n >= 1 && n <= 12 ? ok(n) : fail({ what: 'One to twelve packs joined.' });
};

/** Packs that stand on the floor and feed several units by leads: what hangs on each, and how many outlets remain. */
export const FloorPacks = ({ summary }: { readonly summary: DaySummary }) => {
  const { session } = useServices();
  const { plan, readOnly, floorId, camera } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    floorId: s.floorId,
    camera: s.camera,
  }));
  const kinds = usePackKinds();
  const rows = floorPackRows(plan);
  // What has outlets for leads comes first: blocks and belts.
  const blocks = kinds.filter((k) => k.dcOut.some((o) => o.connector !== 'plate'));
  return (
    <section aria-label="Packs on the floor">
      <h3>Packs on the floor, for several units</h3>
      {rows.length === 0 ? (
        <p className="day-empty">
          A block or belt pack feeds several units by leads. Add one, then plug units into it.
        </p>
      ) : (
        <table className="table">
          <caption className="visually-hidden">Packs on the floor</caption>
          <thead>
            <tr>
              <th scope="col">Pack</th>
              <th scope="col">Kind</th>
              <th scope="col">Joined</th>
              <th scope="col">Feeds</th>
              <th scope="col">Outlets</th>
              <th scope="col">At full, of it</th>
              <th scope="col">Runtime, worst to best</th>
              <th scope="col">
                <span className="visually-hidden">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((r) => (
              <FloorPackLine key={r.record.id} row={r} summary={summary} />
            ))}
          </tbody>
        </table>
      )}
      <label className="packs-add">
        <span className="soft">Add a pack on the floor</span>{' '}
        <select
          className="input"
          disabled={readOnly || !floorId}
          value=""
          onChange={(e) => {
            const kind = kinds.find((k) => k.id === e.target.value);
            if (kind && floorId)
              session.commit(
                'Add pack',
                addFloorPack(plan, kind, floorId, camera.center, session.newId).changes,
              );
          }}
        >
          <option value="">choose a kind</option>
          {blocks.map((k) => (
            <option key={k.id} value={k.id}>
              {`${k.name} · ${k.dcOut.length} ${k.dcOut.length === 1 ? 'outlet' : 'outlets'}`}
            </option>
          ))}
        </select>
      </label>
    </section>
  );
};

const FloorPackLine = ({ row, summary }: { readonly row: FloorPackRow; readonly summary: DaySummary }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const p = row.record;
  const lane = summary.sharedPacks.find((x) => x.id === p.id);
  return (
    <tr>
      <th scope="row">{row.label}</th>
      <td className="soft">{row.kindName}</td>
      <td>
        <TypedCell
          label={`Packs joined in ${row.label}`}
          value={p.count}
          format={String}
          parse={count}
          disabled={readOnly}
          onCommit={(n) => session.commit('Packs joined', changeFloorPack(plan, p.id, { count: n }))}
        />
        {p.count > 1 ? (
          <select
            className="cell-select"
            aria-label={`How the packs of ${row.label} are joined`}
            disabled={readOnly}
            value={p.joined}
            onChange={(e) =>
              session.commit(
                'Join packs',
                changeFloorPack(plan, p.id, { joined: e.target.value as 'parallel' | 'series' }),
              )
            }
          >
            <option value="parallel">in parallel</option>
            <option value="series">in series</option>
          </select>
        ) : null}
        <label className="day-check small">
          <input
            type="checkbox"
            checked={p.hotSwap}
            disabled={readOnly}
            onChange={(e) =>
              session.commit('Second pack', changeFloorPack(plan, p.id, { hotSwap: e.target.checked }))
            }
          />{' '}
          a second one takes over
        </label>
      </td>
      <td>
        <FedUnits row={row} />
      </td>
      <td className={row.left !== undefined && row.left < 0 ? 'day-fault' : undefined}>
        {outletsLeft(row)}
        {row.outlets.length > 0 ? <span className="soft"> of {row.outlets.length}</span> : null}
      </td>
      <td className={lane && lane.fullA > lane.continuousA ? 'over' : undefined}>
        {lane ? (
          <Figure figureKey={lane.currents[0]?.key}>
            {formatAmps(lane.fullA)} of {formatAmps(lane.continuousA)}
          </Figure>
        ) : (
          '–'
        )}
      </td>
      <td>
        {lane?.runtimes.map((r) => (
          <span key={r.setupId} className="packs-runtime">
            <span className="soft">{r.setupName}</span> {r.text}
          </span>
        ))}
      </td>
      <td>
        <button
          type="button"
          className="button quiet"
          disabled={readOnly}
          aria-label={`Remove pack ${row.label}`}
          onClick={() => {
            session.commit('Remove pack', removeRecords(plan, new Set([p.id])));
            session.set({
              message: `Pack ${row.label} removed.${unpluggedWords(plan, session.getState().plan)} Undo brings it back.`,
            });
          }}
        >
          Remove
        </button>
      </td>
    </tr>
  );
};
