import { useState } from 'react';
import { problemText } from '../../kernel/result.ts';
import { type LengthUnits, parseLengthMm } from '../../kernel/units.ts';
import type { NewPlan } from '../../plan/edits/new-plan.ts';
import { COUNTRIES } from '../common/practices.ts';

/** One small form: what it is called, whose rules, which units, how large the room. */
export const NewPlanForm = ({
  busy,
  onNew,
}: {
  readonly busy: boolean;
  readonly onNew: (p: NewPlan) => void;
}) => {
  const [title, setTitle] = useState('');
  const [practice, setPractice] = useState<NewPlan['practice']>('north-america');
  const [country, setCountry] = useState<NonNullable<NewPlan['country']> | ''>('');
  const [units, setUnits] = useState<LengthUnits>('imperial');
  const [length, setLength] = useState('');
  const [width, setWidth] = useState('');
  const [error, setError] = useState('');

  const submit = (): void => {
    const base = {
      title: title.trim() || 'Untitled plan',
      production: '',
      practice,
      lengthUnits: units,
      ...(country === '' ? {} : { country }),
    };
    if (!length.trim() && !width.trim()) return onNew(base);
    const l = parseLengthMm(length, units);
    const w = parseLengthMm(width, units);
    if (!l.ok) return setError(problemText(l.error));
    if (!w.ok) return setError(problemText(w.error));
    if (l.value < 500 || w.value < 500 || l.value > 500_000 || w.value > 500_000) {
      return setError('A room side should be between half a metre (20″) and 500 m (1,640′).');
    }
    onNew({ ...base, roomMm: { lengthMm: l.value, widthMm: w.value } });
  };

  return (
    <form
      className="new-form"
      onSubmit={(e) => {
        e.preventDefault();
        submit();
      }}
    >
      <label>
        Name
        <input
          className="input"
          value={title}
          placeholder="Untitled plan"
          onChange={(e) => setTitle(e.target.value)}
        />
      </label>
      <label>
        Practice
        <select
          className="input"
          value={practice}
          onChange={(e) => {
            const next = e.target.value as NewPlan['practice'];
            setPractice(next);
            setCountry('');
            setUnits(next === 'north-america' ? 'imperial' : 'metric');
          }}
        >
          <option value="north-america">North America, 120 V, 60 Hz</option>
          <option value="europe">Europe, 230 V, 50 Hz</option>
        </select>
      </label>
      <label>
        Country
        <select
          className="input"
          value={country}
          onChange={(e) => setCountry(e.target.value as typeof country)}
        >
          <option value="">Not said</option>
          {COUNTRIES[practice].map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label>
        Units
        <select className="input" value={units} onChange={(e) => setUnits(e.target.value as LengthUnits)}>
          <option value="imperial">Feet and inches</option>
          <option value="metric">Metres</option>
        </select>
      </label>
      <div className="new-sizes">
        <label>
          Room length
          <input
            className="input"
            value={length}
            placeholder={units === 'imperial' ? `24' 6"` : '7.5'}
            onChange={(e) => setLength(e.target.value)}
          />
        </label>
        <label>
          Room width
          <input
            className="input"
            value={width}
            placeholder={units === 'imperial' ? `18'` : '5.5'}
            onChange={(e) => setWidth(e.target.value)}
          />
        </label>
      </div>
      <p className="soft small">Leave the sizes empty for an open floor.</p>
      {error ? (
        <p className="field-error" role="alert">
          {error}
        </p>
      ) : null}
      <button type="submit" className="button primary" disabled={busy}>
        Start plan
      </button>
    </form>
  );
};
