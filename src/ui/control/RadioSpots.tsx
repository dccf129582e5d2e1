import { useEffect, useRef, useState } from 'react';
import { recordLabel } from '../../derive/labels.ts';
import { formatLength } from '../../kernel/units.ts';
import { putTransmitters } from '../../plan/edits/radio.ts';
import { type Plan, planRecord, recordsOf } from '../../plan/plan.ts';
import type { Device } from '../../plan/records/index.ts';
import { computeRadio, formatDb, type SpotChoice, type Spots, VERDICT_WORDS } from '../../report/radio.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

/** Looks for the best places for one or two transmitters, shows them on the floor, and takes one as one undo step. */
export const RadioSpots = ({ device }: { readonly device: Device | undefined }) => {
  const { session, radio, book } = useServices();
  const { plan, readOnly, floorId, units } = useSessionSlice((s) => ({
    plan: s.plan,
    readOnly: s.readOnly,
    floorId: s.floorId,
    units: planRecord(s.plan).lengthUnits,
  }));
  const [count, setCount] = useState<1 | 2>(1);
  const [found, setFound] = useState<
    { spots: Spots; plan: unknown; deviceId: string | undefined } | undefined
  >();
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const running = useRef<AbortController | undefined>(undefined);
  useEffect(() => () => running.current?.abort(), []);
  const floor = recordsOf(plan, 'floor').find((f) => f.id === (device?.floorId ?? floorId));

  const show = (choices: readonly SpotChoice[] | undefined): void => {
    const { floorView } = session.getState();
    const spots = choices && floor ? { floorId: floor.id, choices } : undefined;
    session.set({ floorView: { ...floorView, radio: { ...floorView.radio, spots } } });
  };
  const search = async (): Promise<void> => {
    if (!floor) return;
    const stop = new AbortController();
    running.current = stop;
    setBusy(true);
    setProblem('');
    const asked = plan;
    const r = await radio.spots(
      { floorId: floor.id, count, ...(device ? { senderId: device.id } : {}) },
      stop.signal,
    );
    if (running.current !== stop) return;
    setBusy(false);
    if (r.ok) {
      setFound({ spots: r.value, plan: asked, deviceId: device?.id });
      show(r.value.choices);
    } else setProblem(r.error.what);
  };
  const clear = (): void => {
    setFound(undefined);
    show(undefined);
  };
  const take = (c: SpotChoice): void => {
    if (!floor) return;
    const usual = book.find('transmitter-1-cell');
    const kind = usual?.family === 'transmitter' ? usual : undefined;
    const changes = putTransmitters(
      plan,
      {
        floorId: floor.id,
        places: c.places.map((p, i) => ({ ...p, facingDeg: c.facingDeg?.[i] })),
        deviceId: device?.id,
        kind,
        universeIds: universesOf(plan, found?.spots.listenerIds ?? []),
      },
      session.newId,
    );
    session.commit(
      device
        ? c.places.length > 1
          ? `Move ${device.label} and add another transmitter`
          : `Move ${device.label}`
        : 'Put up a transmitter',
      changes,
    );
    session.set({
      message: device
        ? `${device.label} is at its new place. Undo brings it back.`
        : 'The transmitter is up: plug it in and run it a line. Undo takes it away.',
    });
    clear();
  };
  const stale = found !== undefined && (found.plan !== plan || found.deviceId !== device?.id);

  return (
    <section aria-label="Where to put it">
      <h3 className="inspector-head">Where to put it</h3>
      <div className="radio-search">
        <select
          className="input"
          aria-label="Transmitters to place"
          value={count}
          onChange={(e) => setCount(e.target.value === '2' ? 2 : 1)}
        >
          <option value="1">one transmitter</option>
          <option value="2">two that share the units</option>
        </select>
        {busy ? (
          <button type="button" className="button" onClick={() => running.current?.abort()}>
            Stop
          </button>
        ) : (
          <button type="button" className="button primary" onClick={() => void search()} disabled={!floor}>
            Find places
          </button>
        )}
        {found ? (
          <button type="button" className="button quiet" onClick={clear}>
            Clear
          </button>
        ) : null}
      </div>
      <p className="soft small" role="status">
        {busy
          ? 'Trying every free place …'
          : problem
            ? problem
            : found
              ? (found.spots.why ??
                `${found.spots.placesTried} free places tried for ${found.spots.listenerIds.length} receivers.${
                  found.spots.nowDb === undefined ? '' : ` Now the worst has ${formatDb(found.spots.nowDb)}.`
                }${stale ? ' The plan has changed since.' : ''}`)
              : 'Every free place of the floor, and stands with nothing on them: the place where the worst unit has the most margin.'}
      </p>
      {found && found.spots.choices.length > 0 ? (
        <ol className="radio-spots">
          {found.spots.choices.map((c) => (
            <li key={c.places.map((p) => `${p.xMm},${p.yMm}`).join(' ')}>
              <span>
                {c.places
                  .map(
                    (p) =>
                      `${formatLength(p.xMm, units)} across, ${formatLength(p.yMm, units)} down${
                        p.standId === undefined ? '' : ', on a stand that is there'
                      }`,
                  )
                  .join(' and ')}
                <span className="row-hint">
                  worst {recordLabel(plan, plan.records.get(c.worstId))} {formatDb(c.worstDb)},{' '}
                  {VERDICT_WORDS[c.verdict]}
                </span>
              </span>
              <button type="button" className="button" disabled={readOnly || stale} onClick={() => take(c)}>
                {device ? 'Move it here' : 'Put one here'}
              </button>
            </li>
          ))}
        </ol>
      ) : null}
    </section>
  );
};

/** Universes of some receivers by number. */
const universesOf = (plan: Plan, listenerIds: readonly string[]): readonly string[] => {
  const { listeners } = computeRadio(plan).model;
  const ids = new Set(listenerIds.flatMap((id) => listeners.get(id)?.universeIds ?? []));
  return recordsOf(plan, 'universe')
    .filter((u) => ids.has(u.id))
    .sort((a, b) => a.number - b.number)
    .map((u) => u.id);
};
