import { SHEET_PRESETS } from '../../papers/presets.ts';
import { SHEET_CHOICES } from '../../papers/sheet-kinds.ts';
import { useUi } from '../ui-state.ts';

const same = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((x) => b.includes(x));

/** Which sheets are shown and issued: a preset for one of the crew, or any by hand. */
export const SheetChooser = () => {
  const sheets = useUi((u) => u.sheets) ?? SHEET_CHOICES.map((s) => s.id);
  const setSheets = useUi((u) => u.setSheets);
  const preset = SHEET_PRESETS.find((p) => same(p.sheets, sheets));
  const toggle = (id: string): void =>
    setSheets(sheets.includes(id) ? sheets.filter((s) => s !== id) : [...sheets, id]);
  return (
    <details className="papers-chooser">
      <summary>
        Choose sheets <span className="soft">{preset ? preset.name : `${sheets.length} kinds`}</span>
      </summary>
      <label className="papers-field">
        For
        <select
          className="input"
          value={preset?.id ?? ''}
          onChange={(e) => {
            const chosen = SHEET_PRESETS.find((p) => p.id === e.target.value);
            if (chosen) setSheets(chosen.sheets);
          }}
        >
          {preset ? null : <option value="">by hand</option>}
          {SHEET_PRESETS.map((p) => (
            <option key={p.id} value={p.id}>
              {p.name}
            </option>
          ))}
        </select>
      </label>
      <ul className="papers-checks" aria-label="Sheets to issue">
        {SHEET_CHOICES.map((s) => (
          <li key={s.id}>
            <label>
              <input type="checkbox" checked={sheets.includes(s.id)} onChange={() => toggle(s.id)} /> {s.name}
            </label>
          </li>
        ))}
      </ul>
    </details>
  );
};
