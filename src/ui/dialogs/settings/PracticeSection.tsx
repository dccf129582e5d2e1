import { withPractice } from '../../../plan/edits/settings.ts';
import { planRecord } from '../../../plan/plan.ts';
import type { Practice } from '../../../plan/records/index.ts';
import { Row } from '../../common/Field.tsx';
import { COUNTRIES, PRACTICES } from '../../common/practices.ts';
import type { SectionProps } from './sections.ts';

/** Whose rules, names and colours, at which frequency, in which units. */
export const PracticeSection = ({ draft, disabled, onSet, onPlan }: SectionProps) => {
  const head = planRecord(draft);
  return (
    <>
      <Row label="Practice">
        <select
          className="inline-input"
          aria-label="Practice"
          value={head.practice}
          disabled={disabled}
          onChange={(e) => onPlan(withPractice(draft, e.target.value as Practice))}
        >
          {Object.entries(PRACTICES).map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
        <span className="row-hint">names of legs, load rules, advice on volts, devices</span>
      </Row>
      <Row label="Country">
        <select
          className="inline-input"
          aria-label="Country"
          value={head.country ?? ''}
          disabled={disabled}
          onChange={(e) => onSet('plan', { country: e.target.value || undefined })}
        >
          <option value="">Not said: the practice’s own</option>
          {COUNTRIES[head.practice].map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
        <span className="row-hint">its own rules and colours of conductors lie over the practice’s</span>
      </Row>
      <Row label="Mains">
        <select
          className="inline-input"
          aria-label="Mains frequency"
          value={head.frequencyHz}
          disabled={disabled}
          onChange={(e) => onSet('plan', { frequencyHz: Number(e.target.value) })}
        >
          <option value={60}>60 Hz</option>
          <option value={50}>50 Hz</option>
        </select>
        <span className="row-hint">volts belong to each source, under Sources</span>
      </Row>
      <Row label="Units">
        <select
          className="inline-input"
          aria-label="Units"
          value={head.lengthUnits}
          disabled={disabled}
          onChange={(e) => onSet('plan', { lengthUnits: e.target.value })}
        >
          <option value="imperial">Feet and inches</option>
          <option value="metric">Metres</option>
        </select>
      </Row>
      <p className="soft small">
        The adopted electrical code and the authority having jurisdiction prevail over every rule in this
        plan.
      </p>
    </>
  );
};
