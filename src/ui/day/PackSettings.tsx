import { limitOf } from '../../derive/limits.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { setBatterySettings } from '../../plan/edits/day.ts';
import { planRecord } from '../../plan/plan.ts';
import type { BatterySettings } from '../../plan/records/index.ts';
import { Field } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const between =
  (low: number, high: number, unit: string) =>
  (t: string): Result<number | undefined> => {
    if (t.trim() === '') return ok(undefined);
    const n = Number(t.replace('−', '-').replace(/[^0-9.+-]/g, ''));
    return Number.isFinite(n) && n >= low && n <= high
      ? ok(n)
      : fail({ what: `From ${low} to ${high} ${unit}.` });
  };

const ROWS: readonly {
  readonly key: keyof BatterySettings & ('cellC' | 'sohPct' | 'swapAtPct' | 'swapMin');
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly row: string;
}[] = [
  { key: 'cellC', label: 'Cells at', unit: '°C', low: -40, high: 60, row: 'battery-cell-temp' },
  { key: 'sohPct', label: 'Health', unit: '%', low: 20, high: 100, row: 'battery-soh' },
  { key: 'swapAtPct', label: 'Changed at', unit: '%', low: 0, high: 50, row: 'battery-swap-at' },
  { key: 'swapMin', label: 'Per change', unit: 'min', low: 0, high: 60, row: 'battery-swap-min' },
];

/** What holds for all packs. An empty field gives a value back to the table. */
export const PackSettings = () => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const given = planRecord(plan).batteries;
  return (
    <section aria-label="For all packs" className="packs-settings">
      <h3>For all packs</h3>
      {ROWS.map((r) => (
        <Field
          key={r.key}
          label={r.label}
          value={given?.[r.key] as number | undefined}
          format={(v) => (v === undefined ? '' : `${v} ${r.unit}`)}
          parse={between(r.low, r.high, r.unit)}
          disabled={readOnly}
          hint={given?.[r.key] === undefined ? `${limitOf(plan, r.row).value} ${r.unit} assumed` : undefined}
          onCommit={(v) =>
            session.commit(`Change ${r.label.toLowerCase()}`, setBatterySettings(plan, { [r.key]: v }))
          }
        />
      ))}
      <label className="day-check small">
        <input
          type="checkbox"
          checked={given?.byAir === true}
          disabled={readOnly}
          onChange={(e) =>
            session.commit(
              e.target.checked ? 'Packs travel by air' : 'Packs do not travel by air',
              setBatterySettings(plan, { byAir: e.target.checked ? true : undefined }),
            )
          }
        />{' '}
        travel by passenger aircraft
      </label>
      {given?.byAir ? (
        <Field
          label="Carried by"
          value={given.travellers}
          format={(v) => (v === undefined ? '' : `${v}`)}
          parse={between(1, 500, 'people')}
          disabled={readOnly}
          hint={given.travellers === undefined ? 'how many people are not known' : 'people'}
          onCommit={(v) =>
            session.commit(
              'Change who carries the packs',
              setBatterySettings(plan, { travellers: v === undefined ? undefined : Math.round(v) }),
            )
          }
        />
      ) : null}
    </section>
  );
};
