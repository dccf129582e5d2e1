import { useMemo, useState } from 'react';
import { formatAmps, formatCableLength, formatVolts } from '../../kernel/units.ts';
import { connector } from '../../plan/connectors.ts';
import { bridgeWords } from '../../plan/edits/adapters.ts';
import { replug } from '../../plan/edits/replug.ts';
import { recordName } from '../../plan/names.ts';
import { planRecord } from '../../plan/plan.ts';
import { inletsOf } from '../../plan/ports.ts';
import { explainPlace, type PlaceFigure } from '../../report/explain-place.ts';
import { type WhereAsked, type WherePlace, whereToPlug } from '../../report/where-to-plug.ts';
import { TriedFigure } from '../common/Figure.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { useUi } from '../ui-state.ts';
import { chosenLoad, inletConnectors, spotOf, spotsOn } from './where-load.ts';

/** Choice of the spot that was pointed at on the floor. */
const POINTED = 'pointed';

/** Outlets of one way of a thing are alike: the first of them stands for all. */
const onePerWay = (places: readonly WherePlace[]): readonly WherePlace[] => {
  const seen = new Set<string>();
  return places.filter((p) => {
    const key = `${p.ref.recordId} ${p.label} ${p.kind?.slug ?? ''}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
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
  const pointed = useUi((u) => u.whereAt);
  const [typed, setTyped] = useState(pointed !== undefined);
  const [watts, setWatts] = useState('600');
  const [plug, setPlug] = useState('');
  const [spot, setSpot] = useState(pointed ? POINTED : '');
  const [pf, setPf] = useState('1');
  const loadW = Number(watts.replace(',', '.'));
  const powerFactor = Number(pf.replace(',', '.'));
  const valid = Number.isFinite(loadW) && loadW > 0 && powerFactor > 0 && powerFactor <= 1;
  const byHand = typed || !unit;
  const asked = useMemo((): WhereAsked | undefined => {
    const more = { most: 12, book: book.cables(), adapters: book.adapters() };
    if (!byHand && unit) return { ...unit.asked, ...more };
    const to = plug || connectors[0];
    if (floorId === undefined || !valid || to === undefined) return undefined;
    return {
      floorId,
      at: (spot === POINTED ? pointed : undefined) ?? spotOf(plan, spot) ?? camera.center,
      loadW,
      powerFactor,
      connector: to,
      ...more,
    };
  }, [
    byHand,
    unit,
    plug,
    connectors,
    floorId,
    valid,
    loadW,
    powerFactor,
    camera.center,
    book,
    plan,
    spot,
    pointed,
  ]);
  const places = useMemo(
    () => (assessment && asked ? onePerWay(whereToPlug(plan, assessment, asked)) : []),
    [plan, assessment, asked],
  );
  const units = planRecord(plan).lengthUnits;

  const figure = (p: WherePlace, f: PlaceFigure, text: string) =>
    assessment && asked ? (
      <TriedFigure working={(now) => explainPlace(now, assessment, asked, p, f)}>{text}</TriedFigure>
    ) : (
      text
    );

  const take = (p: WherePlace): void => {
    if (!unit || !p.kind) return;
    const inlet = inletsOf(plan, unit.recordId)[0];
    if (!inlet) return;
    session.commit(
      `Plug ${recordName(plan, unit.recordId)} into ${p.label}`,
      replug(
        plan,
        { recordId: unit.recordId, portId: inlet.id },
        { ref: p.ref, kind: p.kind, ...(p.bridge ? { bridge: p.bridge } : {}) },
        session.newId,
      ),
    );
    session.set({
      message: `${recordName(plan, unit.recordId)} is on ${p.label} now. De-energize before re-plugging.`,
    });
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
                {pointed ? <option value={POINTED}>where you pointed on the floor</option> : null}
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
            <label>
              Power factor{' '}
              <input
                className="input power-watts"
                inputMode="decimal"
                value={pf}
                aria-invalid={!(powerFactor > 0 && powerFactor <= 1)}
                onChange={(e) => setPf(e.target.value)}
              />
            </label>
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
        <table className="table power-table power-fit">
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
                <th scope="row">
                  <button
                    type="button"
                    className="link"
                    title="Show it on the floor"
                    onClick={() => session.set({ selection: new Set([p.ref.recordId]), workspace: 'floor' })}
                  >
                    {p.label}
                  </button>
                </th>
                <td>{p.legs}</td>
                <td>{p.bridge ? bridgeWords(p.bridge) : 'its own lead'}</td>
                <td className="num">{figure(p, 'neededMm', formatCableLength(p.neededMm, units))}</td>
                <td>{p.piecesMm.map((mm) => formatCableLength(mm, units)).join(' + ')}</td>
                <td className="num">{figure(p, 'loadA', formatAmps(p.loadA))}</td>
                <td className="num">{figure(p, 'freeAfterA', formatAmps(p.freeAfterA))}</td>
                <td className="num">
                  {p.voltsV === undefined ? 'measure' : figure(p, 'voltsV', formatVolts(p.voltsV))}
                </td>
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
      <p className="soft small">
        Nearest first. Room is the least of what is left on the outlet and all that feeds it, over every
        setup. Computed from this plan; other loads on the circuits are not known. De-energize before
        re-plugging.
      </p>
    </section>
  );
};
