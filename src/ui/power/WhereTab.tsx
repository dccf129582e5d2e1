import { useMemo, useState } from 'react';
import type { Point } from '../../kernel/geometry.ts';
import { formatAmps, formatCableLength, formatVolts } from '../../kernel/units.ts';
import { connector } from '../../plan/connectors.ts';
import { replug } from '../../plan/edits/replug.ts';
import { recordName } from '../../plan/names.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import { feedOf, inletsOf, placeOf, powerInletRecord } from '../../plan/ports.ts';
import { type WhereAsked, type WherePlace, whereToPlug } from '../../report/where-to-plug.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** The unit that is chosen on the floor, as a load to plug in. */
const chosenLoad = (
  plan: Plan,
  ids: ReadonlySet<string>,
):
  | { readonly recordId: string; readonly asked: Omit<WhereAsked, 'book'>; readonly fed: boolean }
  | undefined => {
  const fixture = [...ids].flatMap((id) => recordOf(plan, 'fixture', id) ?? [])[0];
  if (!fixture) return undefined;
  const recordId = powerInletRecord(plan, fixture);
  const inlet = inletsOf(plan, recordId)[0];
  const place = placeOf(plan, recordId);
  const record = plan.records.get(recordId);
  const kind =
    record?.type === 'fixture' || record?.type === 'ballast'
      ? kindOf(plan, record.kindId, 'fixture', 'ballast')
      : undefined;
  if (!inlet || !place || !kind?.load) return undefined;
  return {
    recordId,
    fed: feedOf(plan, { recordId, portId: inlet.id }) !== undefined,
    asked: {
      floorId: place.floorId,
      at: place.at,
      heightMm: place.heightMm,
      loadW: kind.load.wattsW,
      powerFactor: kind.load.powerFactor,
      connector: inlet.connector,
      legs: inlet.legs,
      neutral: inlet.neutral,
    },
  };
};

/** Connectors that units of this plan have, for a load that is typed. */
const inletConnectors = (plan: Plan): readonly string[] => {
  const found = new Set<string>();
  for (const k of recordsOf(plan, 'kind'))
    if (k.family === 'fixture' || k.family === 'ballast') for (const i of k.inlets) found.add(i.connector);
  return [...found];
};

/** Things of a floor that say where: marks, stands and set pieces that have a name. */
const spotsOn = (
  plan: Plan,
  floorId: string | undefined,
): readonly { readonly id: string; readonly name: string }[] =>
  [...recordsOf(plan, 'mark'), ...recordsOf(plan, 'setPiece')]
    .filter((r) => r.floorId === floorId && (r.type === 'mark' ? r.name : r.label) !== '')
    .map((r) => ({ id: r.id, name: r.type === 'mark' ? r.name : r.label }));

const spotOf = (plan: Plan, id: string): Point | undefined => {
  const r = plan.records.get(id);
  return r?.type === 'mark' || r?.type === 'setPiece' ? r.at : undefined;
};

/** The nearest outlets with room in every setup for a chosen unit or a load that is typed. */
export const WhereTab = () => {
  const { session, book } = useServices();
  const { plan, assessment, selection, camera, floorId, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    selection: s.selection,
    camera: s.camera,
    floorId: s.floorId,
    readOnly: s.readOnly,
  }));
  const unit = useMemo(() => chosenLoad(plan, selection), [plan, selection]);
  const connectors = useMemo(() => inletConnectors(plan), [plan]);
  const [typed, setTyped] = useState(false);
  const [watts, setWatts] = useState('600');
  const [plug, setPlug] = useState('');
  const [spot, setSpot] = useState('');
  const loadW = Number(watts.replace(',', '.'));
  const valid = Number.isFinite(loadW) && loadW > 0;
  const byHand = typed || !unit;
  const asked = useMemo((): WhereAsked | undefined => {
    const more = { most: 12, book: book.cables() };
    if (!byHand && unit) return { ...unit.asked, ...more };
    const to = plug || connectors[0];
    if (floorId === undefined || !valid || to === undefined) return undefined;
    return {
      floorId,
      at: spotOf(plan, spot) ?? camera.center,
      loadW,
      powerFactor: 1,
      connector: to,
      ...more,
    };
  }, [byHand, unit, plug, connectors, floorId, valid, loadW, camera.center, book, plan, spot]);
  const places = useMemo(
    () => (assessment && asked ? whereToPlug(plan, assessment, asked) : []),
    [plan, assessment, asked],
  );
  const units = planRecord(plan).lengthUnits;

  const take = (p: WherePlace): void => {
    if (!unit || !p.kind) return;
    const inlet = inletsOf(plan, unit.recordId)[0];
    if (!inlet) return;
    session.commit(
      `Plug ${recordName(plan, unit.recordId)} into ${p.label}`,
      replug(
        plan,
        { recordId: unit.recordId, portId: inlet.id },
        { ref: p.ref, kind: p.kind },
        session.newId,
      ),
    );
    session.set({ message: `${recordName(plan, unit.recordId)} is on ${p.label} now.` });
  };

  return (
    <section className="power-ask" aria-label="Where can I plug in">
      <div className="power-head">
        <label>
          What{' '}
          <select
            className="input"
            value={byHand ? 'typed' : 'unit'}
            onChange={(e) => setTyped(e.target.value === 'typed')}
          >
            <option value="unit" disabled={!unit}>
              {unit ? recordName(plan, unit.recordId) : 'the chosen unit (choose one first)'}
            </option>
            <option value="typed">a load I type</option>
          </select>
        </label>
        {byHand ? (
          <>
            <label>
              Watts{' '}
              <input
                className="input power-watts"
                inputMode="decimal"
                value={watts}
                aria-invalid={!valid}
                onChange={(e) => setWatts(e.target.value)}
              />
            </label>
            <label>
              At{' '}
              <select className="input" value={spot} onChange={(e) => setSpot(e.target.value)}>
                <option value="">the middle of the floor view</option>
                {spotsOn(plan, floorId).map((s) => (
                  <option key={s.id} value={s.id}>
                    {s.name}
                  </option>
                ))}
              </select>
            </label>
            <label>
              Its plug{' '}
              <select
                className="input"
                value={plug || (connectors[0] ?? '')}
                onChange={(e) => setPlug(e.target.value)}
              >
                {connectors.map((id) => (
                  <option key={id} value={id}>
                    {connector(id)?.name ?? id}
                  </option>
                ))}
              </select>
            </label>
            <p className="soft">From the middle of what the floor shows, at power factor 1.</p>
          </>
        ) : (
          <p className="soft">
            {asked ? `${asked.loadW} W from where it stands.` : ''}
            {unit?.fed ? ' It is plugged in already; its own load counts where it is.' : ''}
          </p>
        )}
      </div>
      {places.length === 0 ? (
        <p className="soft">
          No free outlet on this floor takes it with room in every setup, by what this plan knows.
        </p>
      ) : (
        <table className="table power-table">
          <thead>
            <tr>
              <th scope="col">Outlet</th>
              <th scope="col">Leg</th>
              <th scope="col">Cable to run</th>
              <th scope="col" className="num">
                Length
              </th>
              <th scope="col">Pieces</th>
              <th scope="col" className="num">
                Takes
              </th>
              <th scope="col" className="num">
                Free after, worst
              </th>
              <th scope="col" className="num">
                Volts there
              </th>
              <th scope="col">
                <span className="visually-hidden">Do it</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {places.map((p) => (
              <tr key={`${p.ref.recordId}/${p.ref.portId}`}>
                <th scope="row">{p.label}</th>
                <td>{p.legs}</td>
                <td>{p.kind?.name ?? 'its own lead'}</td>
                <td className="num">{formatCableLength(p.neededMm, units)}</td>
                <td>{p.piecesMm.map((mm) => formatCableLength(mm, units)).join(' + ')}</td>
                <td className="num">{formatAmps(p.loadA)}</td>
                <td className="num">{formatAmps(p.freeAfterA)}</td>
                <td className="num">{p.voltsV === undefined ? 'measure' : formatVolts(p.voltsV)}</td>
                <td>
                  {byHand ? null : (
                    <button
                      type="button"
                      className="button"
                      disabled={readOnly || !p.kind}
                      onClick={() => take(p)}
                      aria-label={`Plug in at ${p.label}`}
                    >
                      Plug in
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="soft small">Computed from this plan; other loads on the circuits are not known.</p>
    </section>
  );
};
