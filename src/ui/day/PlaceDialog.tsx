import { fail, ok, type Result } from '../../kernel/result.ts';
import { setDayDate, setGeoPlace } from '../../plan/edits/day.ts';
import { planRecord } from '../../plan/plan.ts';
import type { GeoPlace } from '../../plan/records/index.ts';
import { Field } from '../common/Field.tsx';
import { Modal } from '../common/Modal.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const parseDate = (t: string): Result<string> =>
  t.trim() === '' || (/^\d{4}-\d{2}-\d{2}$/.test(t.trim()) && !Number.isNaN(Date.parse(t.trim())))
    ? ok(t.trim())
    : fail({ what: `“${t}” is not a date.`, todo: 'Write it like 2027-03-04.' });

const degrees =
  (most: number) =>
  (t: string): Result<number | undefined> => {
    if (t.trim() === '') return ok(undefined);
    const n = Number(t.replace('°', '').replace('−', '-').replace(',', '.').trim());
    return Number.isFinite(n) && Math.abs(n) <= most
      ? ok(n)
      : fail({ what: `“${t}” is not an angle to ${most}°.`, todo: 'South and west are negative.' });
  };

const offset = (t: string): Result<number | undefined> => {
  if (t.trim() === '') return ok(undefined);
  const m = /^(?:utc\s*)?([+\-−]?)(\d{1,2})(?::?(\d{2}))?$/i.exec(t.trim());
  const minutes = m
    ? (m[1] === '' || m[1] === '+' ? 1 : -1) * (Number(m[2]) * 60 + Number(m[3] ?? 0))
    : Number.NaN;
  return Math.abs(minutes) <= 840
    ? ok(minutes)
    : fail({ what: `“${t}” is no offset from UTC.`, todo: 'Write it like −05:00 or +2.' });
};

const offsetText = (min: number | undefined): string => {
  if (min === undefined) return '';
  const abs = Math.abs(min);
  return `${min < 0 ? '−' : '+'}${String(Math.floor(abs / 60)).padStart(2, '0')}:${String(abs % 60).padStart(2, '0')}`;
};

/** Date of the day, and where on earth: for sun and moon. */
export const PlaceDialog = ({ day, onClose }: { readonly day: number; readonly onClose: () => void }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const head = planRecord(plan);
  const place = head.place;
  const set = (patch: Partial<{ [K in keyof GeoPlace]: number | undefined }>): void => {
    const next = {
      latDeg: place?.latDeg ?? 0,
      lonDeg: place?.lonDeg ?? 0,
      utcOffsetMin: place?.utcOffsetMin ?? 0,
      ...patch,
    };
    const { latDeg, lonDeg, utcOffsetMin } = next;
    session.commit(
      'Change place',
      setGeoPlace(
        plan,
        latDeg === undefined || lonDeg === undefined || utcOffsetMin === undefined
          ? undefined
          : { latDeg, lonDeg, utcOffsetMin },
      ),
    );
  };
  const number = (v: number | undefined): string => (v === undefined ? '' : String(v));
  return (
    <Modal title={`Day ${day}: date and place`} open onClose={onClose}>
      <Field
        label="Date"
        value={head.dates[day - 1] ?? ''}
        format={(v) => v}
        parse={parseDate}
        disabled={readOnly}
        hint="like 2027-03-04"
        onCommit={(date) => session.commit('Change date', setDayDate(plan, day, date))}
      />
      <Field
        label="Latitude"
        value={place?.latDeg}
        format={number}
        parse={degrees(90)}
        disabled={readOnly}
        hint="°, south negative"
        onCommit={(latDeg) => set({ latDeg })}
      />
      <Field
        label="Longitude"
        value={place?.lonDeg}
        format={number}
        parse={degrees(180)}
        disabled={readOnly}
        hint="°, west negative"
        onCommit={(lonDeg) => set({ lonDeg })}
      />
      <Field
        label="Clocks"
        value={place?.utcOffsetMin}
        format={offsetText}
        parse={offset}
        disabled={readOnly}
        hint="ahead of UTC on that day, summer time counted in"
        onCommit={(utcOffsetMin) => set({ utcOffsetMin })}
      />
      <p className="soft">
        Sun and moon are on a flat horizon, good to a minute or two. Taking a value away forgets the place.
      </p>
    </Modal>
  );
};
