import { useState } from 'react';
import { skyOf } from '../../derive/sun.ts';
import { sunnyWindows } from '../../drawing/sun.ts';
import { sunOf } from '../../editor/sun.ts';
import { ok } from '../../kernel/result.ts';
import { parseClock } from '../../plan/clock.ts';
import { planRecord } from '../../plan/plan.ts';
import { Field, Row } from '../common/Field.tsx';
import { PlaceDialog } from '../day/PlaceDialog.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';
import { Panel } from './Panel.tsx';
import './scout.css';

const clock = (min: number | undefined): string =>
  min === undefined
    ? 'not that day'
    : `${String(Math.floor(min / 60) % 24).padStart(2, '0')}:${String(Math.round(min) % 60).padStart(2, '0')}`;

const POINTS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'];
const compass = (deg: number): string => POINTS[Math.round(deg / 45) % 8] ?? '';

/** Where the sun stands at a date and time, when it rises and sets, and which windows it comes in by. */
export const SunPanel = () => {
  const { session, today } = useServices();
  const { plan, floorId, floorView } = useSessionSlice((s) => ({
    plan: s.plan,
    floorId: s.floorId,
    floorView: s.floorView,
  }));
  const [placing, setPlacing] = useState(false);
  const { place, dates } = planRecord(plan);
  const { sun } = floorView;
  const date = sun?.date ?? dates[0] ?? today();
  const minute = sun?.minute ?? 12 * 60;
  const set = (next: Partial<{ date: string; minute: number }> | undefined): void =>
    session.set({
      floorView: {
        ...session.getState().floorView,
        sun: next === undefined ? undefined : { date, minute, ...next },
      },
    });
  const spot = sunOf({ plan, floorId, floorView });
  const sky = place ? skyOf(place, date) : undefined;
  const windows = spot && floorId !== undefined ? sunnyWindows(plan, floorId, spot) : [];
  return (
    <Panel
      title={`Sun${spot ? `: ${Math.round(spot.azimuthDeg)}°, ${Math.round(spot.elevationDeg)}° high` : ''}`}
    >
      {() => (
        <>
          <div className="scout-rows">
            {place ? (
              <>
                <label className="state-check">
                  <input
                    type="checkbox"
                    checked={sun !== undefined}
                    onChange={(e) => set(e.target.checked ? {} : undefined)}
                  />
                  show it on the drawing
                </label>
                <Field
                  label="Date"
                  value={date}
                  format={(v) => v}
                  parse={(t) =>
                    /^\d{4}-\d{2}-\d{2}$/.test(t.trim()) && skyOf(place, t.trim())
                      ? ok(t.trim())
                      : {
                          ok: false,
                          error: { what: `“${t}” is not a date.`, todo: 'Write it like 2027-03-04.' },
                        }
                  }
                  onCommit={(d) => set({ date: d })}
                />
                <Field
                  label="Time"
                  value={minute}
                  format={clock}
                  parse={parseClock}
                  onCommit={(m) => set({ minute: m })}
                />
                <input
                  className="sun-slider"
                  type="range"
                  aria-label="Time of the day"
                  min={0}
                  max={1439}
                  step={5}
                  value={minute}
                  onChange={(e) => set({ minute: Number(e.target.value) })}
                />
                <Row label="Sun">
                  {spot
                    ? spot.elevationDeg > -0.833
                      ? `${compass(spot.azimuthDeg)}, ${Math.round(spot.azimuthDeg)}° from north, ${Math.round(spot.elevationDeg)}° high`
                      : 'under the horizon'
                    : 'not shown'}
                </Row>
                <Row label="Rises">
                  {clock(sky?.sunriseMin)} <span className="row-hint">sets {clock(sky?.sunsetMin)}</span>
                </Row>
                <Row label="Comes in">
                  {windows.length === 0
                    ? spot
                      ? 'by no window of this floor'
                      : ''
                    : `by ${windows.length} ${windows.length === 1 ? 'window' : 'windows'}`}
                  {windows.length > 0 ? (
                    <button
                      type="button"
                      className="link row-hint"
                      onClick={() => session.set({ selection: new Set(windows.map((w) => w.opening.id)) })}
                    >
                      select
                    </button>
                  ) : null}
                </Row>
                <p className="soft small">
                  Flat horizon; trees and houses opposite are not counted. Check north in Floors.
                </p>
              </>
            ) : (
              <p className="soft small">The sun needs a place on earth and the clocks there.</p>
            )}
            <p className="scout-buttons">
              <button type="button" className="button" onClick={() => setPlacing(true)}>
                Place and date…
              </button>
            </p>
          </div>
          {placing ? <PlaceDialog day={1} onClose={() => setPlacing(false)} /> : null}
        </>
      )}
    </Panel>
  );
};
