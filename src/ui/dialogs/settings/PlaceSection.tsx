import { formatWind, parseWind } from '../../../kernel/units.ts';
import { recordName } from '../../../plan/names.ts';
import { planRecord, recordsOf } from '../../../plan/plan.ts';
import { Field } from '../../common/Field.tsx';
import { anyText, text } from '../../common/parse.ts';
import { formatAltitude, formatTemp, parseAltitude, parseDates, parseTemp } from './numbers.ts';
import type { SectionProps } from './sections.ts';

/** The production and its days, and what the place does to gear: air, height, wet. */
export const PlaceSection = ({ draft, disabled, onSet }: SectionProps) => {
  const head = planRecord(draft);
  const units = head.lengthUnits;
  const places = [...recordsOf(draft, 'box'), ...recordsOf(draft, 'outlet')];
  const line = (label: string, key: 'production' | 'title' | 'scene' | 'location') => (
    <Field
      label={label}
      value={head[key]}
      format={text}
      parse={anyText}
      disabled={disabled}
      onCommit={(v) => onSet('plan', { [key]: v })}
    />
  );
  return (
    <>
      {line('Production', 'production')}
      {line('Title', 'title')}
      {line('Scene or set', 'scene')}
      {line('Location', 'location')}
      <Field
        label="Days"
        value={head.dates as readonly string[]}
        format={(v) => v.filter(Boolean).join(', ')}
        parse={parseDates}
        disabled={disabled}
        hint="dates of the shooting days in their order, like 2027-03-04, 2027-03-05"
        onCommit={(dates) => onSet('plan', { dates: [...dates] })}
      />
      <Field
        label="Air"
        value={head.ambientC}
        format={(c) => formatTemp(c, units)}
        parse={parseTemp(units)}
        disabled={disabled}
        hint="where the cable lies and the sets stand: less ampacity and less power when warm"
        onCommit={(ambientC) => onSet('plan', { ambientC })}
      />
      <Field
        label="Altitude"
        value={head.altitudeM}
        format={(m) => formatAltitude(m, units)}
        parse={parseAltitude(units)}
        disabled={disabled}
        hint={head.altitudeM === undefined ? 'not said: sets are not derated for height' : 'above the sea'}
        onCommit={(altitudeM) => onSet('plan', { altitudeM })}
      />
      <Field
        label="Wind"
        value={head.windMps}
        format={(v) => (v === undefined ? '' : formatWind(v, units))}
        parse={parseWind}
        disabled={disabled}
        hint={
          head.windMps === undefined
            ? 'not known; 0 indoors'
            : head.windIsMean
              ? 'mean of a forecast'
              : 'gusts included'
        }
        onCommit={(windMps) => onSet('plan', { windMps })}
      />
      <h3 className="inspector-head">Outdoors or wet</h3>
      {places.length === 0 ? (
        <p className="soft">No box or wall outlet is in the plan yet.</p>
      ) : (
        <>
          <p className="soft small">
            Outlets outdoors or in wet places are asked for a residual-current device. Where nothing is said,
            wet areas drawn on the floor count.
          </p>
          <ul className="settings-wet">
            {places.map((r) => (
              <li key={r.id}>
                <span className="strong">{recordName(draft, r)}</span>
                <select
                  className="inline-input"
                  aria-label={`Where ${recordName(draft, r)} stands`}
                  value={r.wet === undefined ? '' : r.wet ? 'wet' : 'dry'}
                  disabled={disabled}
                  onChange={(e) =>
                    onSet(r.id, { wet: e.target.value === '' ? undefined : e.target.value === 'wet' })
                  }
                >
                  <option value="">by the floor</option>
                  <option value="wet">outdoors or wet</option>
                  <option value="dry">indoors and dry</option>
                </select>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
};
