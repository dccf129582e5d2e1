import { mountWords } from '../../plan/kinds/mount-words.ts';
import { planRecord } from '../../plan/plan.ts';
import { useSessionSlice } from '../hooks.ts';
import { FAMILY_WORDS, type GearFilters, noFilters } from './filters.ts';

interface Props {
  readonly filters: GearFilters;
  readonly onChange: (f: GearFilters) => void;
  readonly count: number;
}

const MOUNTS = ['pin-16', 'spigot-28', 'clamp', 'clip', 'hung', 'socket', 'floor'] as const;

export const GearFilterBar = ({ filters: f, onChange, count }: Props) => {
  const units = useSessionSlice((s) => planRecord(s.plan).lengthUnits);
  const set = (patch: Partial<GearFilters>): void => onChange({ ...f, ...patch });
  const number = (text: string): number | undefined =>
    text.trim() === '' || !(Number(text) > 0) ? undefined : Number(text);
  const filtered = JSON.stringify({ ...f, query: '', sort: 'book' }) !== JSON.stringify(noFilters);
  return (
    <div className="gear-filters">
      <input
        className="input"
        type="search"
        aria-label="Find a kind"
        placeholder="Find a kind by name, type or watts"
        value={f.query}
        onChange={(e) => set({ query: e.target.value })}
      />
      <div className="gear-filter-grid">
        <label>
          Family
          <select
            className="input"
            value={f.family}
            onChange={(e) => set({ family: e.target.value as GearFilters['family'] })}
          >
            <option value="all">all</option>
            {Object.entries(FAMILY_WORDS).map(([id, words]) => (
              <option key={id} value={id}>
                {words}
              </option>
            ))}
          </select>
        </label>
        <label>
          Mount
          <select className="input" value={f.mount} onChange={(e) => set({ mount: e.target.value })}>
            <option value="">any</option>
            {MOUNTS.map((id) => (
              <option key={id} value={id}>
                {mountWords(id, units)}
              </option>
            ))}
          </select>
        </label>
        <label>
          At most, W
          <input
            className="input"
            inputMode="numeric"
            value={f.maxWattsW ?? ''}
            onChange={(e) => set({ maxWattsW: number(e.target.value) })}
          />
        </label>
        <label>
          At most, kg
          <input
            className="input"
            inputMode="numeric"
            value={f.maxMassKg ?? ''}
            onChange={(e) => set({ maxMassKg: number(e.target.value) })}
          />
        </label>
        <label>
          Takes, V
          <select
            className="input"
            value={f.supplyV ?? ''}
            onChange={(e) => set({ supplyV: number(e.target.value) })}
          >
            <option value="">any</option>
            {[120, 208, 230, 240].map((v) => (
              <option key={v} value={v}>
                {v} V
              </option>
            ))}
          </select>
        </label>
        <label>
          Battery
          <select
            className="input"
            value={f.battery}
            onChange={(e) => set({ battery: e.target.value as GearFilters['battery'] })}
          >
            <option value="">any</option>
            <option value="cells">cells of its own</option>
            <option value="packs">takes packs</option>
          </select>
        </label>
        <label>
          Sort by
          <select
            className="input"
            value={f.sort}
            onChange={(e) => set({ sort: e.target.value as GearFilters['sort'] })}
          >
            <option value="book">the book</option>
            <option value="name">name</option>
            <option value="watts">watts</option>
            <option value="mass">mass</option>
          </select>
        </label>
        <label>
          Mode, slots at most
          <input
            className="input"
            inputMode="numeric"
            value={f.maxSlots ?? ''}
            onChange={(e) => set({ maxSlots: number(e.target.value) })}
          />
        </label>
      </div>
      <div className="gear-checks">
        <label>
          <input type="checkbox" checked={f.ownOnly} onChange={(e) => set({ ownOnly: e.target.checked })} />{' '}
          own kinds
        </label>
        <span className="soft" role="status">
          {count} kinds
        </span>
        {filtered ? (
          <button
            type="button"
            className="link"
            onClick={() => onChange({ ...noFilters, query: f.query, sort: f.sort })}
          >
            no filters
          </button>
        ) : null}
      </div>
    </div>
  );
};
