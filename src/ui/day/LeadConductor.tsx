import { leadChoices } from './leads.ts';

/** The conductor of a lead from packs, chosen from those leads are made of. */
export const LeadConductor = (p: {
  readonly value: string;
  readonly disabled: boolean;
  readonly onChange: (conductor: string) => void;
}) => (
  <select
    className="inline-input"
    aria-label="Conductor of the lead"
    disabled={p.disabled}
    value={p.value}
    onChange={(e) => p.onChange(e.target.value)}
  >
    {leadChoices(p.value).map((c) => (
      <option key={c.id} value={c.id}>
        {c.name}
      </option>
    ))}
  </select>
);
