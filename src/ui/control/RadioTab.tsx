import { useMemo } from 'react';
import { withLayer } from '../../editor/floor-view.ts';
import { setLinks } from '../../plan/edits/radio.ts';
import { planInSetup } from '../../plan/moves.ts';
import { recordOf, recordsOf } from '../../plan/plan.ts';
import { computeRadio, HINT } from '../../report/radio.ts';
import { FindingCard } from '../floor/FindingList.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { CoverageLegend } from './CoverageLegend.tsx';
import { RadioAir } from './RadioAir.tsx';
import { RadioLinks } from './RadioLinks.tsx';
import { RadioSender } from './RadioSender.tsx';
import { RadioSpots } from './RadioSpots.tsx';
import './radio.css';

/** Radio: every link with its margin on the left; transmitters, the air, the coverage picture and places on the right. */
export const RadioTab = () => {
  const { session } = useServices();
  const { plan, setupId, findings, radio, layers } = useSessionSlice((s) => ({
    plan: s.plan,
    setupId: s.setupId,
    findings: s.assessment?.findings,
    radio: s.floorView.radio,
    layers: s.floorView.layers,
  }));
  const result = useMemo(() => computeRadio(planInSetup(plan, setupId)), [plan, setupId]);
  const senders = [...result.model.senders.values()].sort((a, b) =>
    a.label.localeCompare(b.label, 'en', { numeric: true }),
  );
  const shown = senders.find((s) => s.id === radio.senderId) ?? senders[0];
  const device = shown && recordOf(plan, 'device', shown.id);
  const own = (findings ?? []).filter((f) => f.rule.startsWith('radio-'));
  const setRadio = (patch: Partial<typeof radio>): void => {
    const { floorView } = session.getState();
    session.set({ floorView: { ...floorView, radio: { ...floorView.radio, ...patch } } });
  };
  const showCoverage = (on: boolean): void => {
    const { floorView } = session.getState();
    session.set({ floorView: withLayer(floorView, 'coverage', { shown: on }) });
  };

  return (
    <div className="radio">
      <section className="radio-left" aria-label="Radio links">
        <div className="radio-head">
          <h2>Links</h2>
          <span className="soft">{HINT}</span>
          <LinkButtons />
        </div>
        <div className="radio-scroll">
          <RadioLinks result={result} />
          {own.length > 0 ? (
            <>
              <h3 className="inspector-head radio-findings-head">Findings</h3>
              <div className="radio-findings">
                {own.map((f) => (
                  <FindingCard key={f.id} finding={f} />
                ))}
              </div>
            </>
          ) : null}
        </div>
      </section>
      <aside className="radio-right" aria-label="Transmitters and air">
        <h2 className="radio-right-head">Transmitters</h2>
        {senders.length === 0 ? (
          <p className="soft">
            No transmitter on the plan yet. Place one from the gear shelf on the floor, or let one be put up
            below.
          </p>
        ) : (
          <select
            className="input radio-choice"
            aria-label="Transmitter"
            value={shown?.id ?? ''}
            onChange={(e) => setRadio({ senderId: e.target.value })}
          >
            {senders.map((s) => (
              <option key={s.id} value={s.id}>
                {s.label}
              </option>
            ))}
          </select>
        )}
        {device ? <RadioSender key={device.id} device={device} result={result} /> : null}
        <section aria-label="Coverage">
          <h3 className="inspector-head">Coverage picture</h3>
          <label className="radio-check">
            <input
              type="checkbox"
              checked={layers.coverage.shown}
              disabled={senders.length === 0}
              onChange={(e) => showCoverage(e.target.checked)}
            />{' '}
            show it on the floor
          </label>
          <select
            className="input radio-choice"
            aria-label="Coverage of"
            disabled={senders.length === 0}
            value={radio.senderId === undefined ? (radio.universeId ?? '') : 'one'}
            onChange={(e) => {
              const v = e.target.value;
              if (v === 'one') setRadio({ senderId: shown?.id, universeId: undefined });
              else setRadio({ senderId: undefined, universeId: v === '' ? undefined : v });
            }}
          >
            <option value="">all transmitters, the best at each place</option>
            {shown ? <option value="one">{shown.label} alone</option> : null}
            {[...recordsOf(plan, 'universe')]
              .sort((a, b) => a.number - b.number)
              .map((u) => (
                <option key={u.id} value={u.id}>
                  all that carry universe {u.number}
                </option>
              ))}
          </select>
          <CoverageLegend />
          {layers.coverage.shown ? (
            <button type="button" className="button" onClick={() => session.set({ workspace: 'floor' })}>
              Go to the floor
            </button>
          ) : null}
        </section>
        <RadioSpots key={device?.id ?? 'none'} device={device} />
        <RadioAir result={result} />
      </aside>
    </div>
  );
};

/** Links the chosen units by radio, or takes their link away. */
const LinkButtons = () => {
  const { session } = useServices();
  const { plan, selection, readOnly } = useSessionSlice((s) => ({
    plan: s.plan,
    selection: s.selection,
    readOnly: s.readOnly,
  }));
  const chosen = [...selection].flatMap((id) => recordOf(plan, 'fixture', id) ?? []);
  const wired = chosen.filter((f) => f.link !== 'radio');
  const linked = chosen.filter((f) => f.link === 'radio');
  const set = (list: typeof chosen, link: 'radio' | 'none', label: string): void =>
    session.commit(
      label,
      setLinks(
        plan,
        list.map((f) => f.id),
        link,
      ),
    );
  return (
    <span className="radio-head-buttons">
      <button
        type="button"
        className="button"
        disabled={readOnly || wired.length === 0}
        title="Units are chosen on the floor, in the patch or here"
        onClick={() => set(wired, 'radio', `Link ${wired.length} units by radio`)}
      >
        {wired.length === 0 ? 'Link chosen units by radio' : `Link ${wired.length} by radio`}
      </button>
      <button
        type="button"
        className="button quiet"
        disabled={readOnly || linked.length === 0}
        onClick={() => set(linked, 'none', `Take the radio link of ${linked.length} units away`)}
      >
        Unlink {linked.length > 0 ? linked.length : ''}
      </button>
    </span>
  );
};
