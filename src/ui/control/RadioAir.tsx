import { fail, ok, type Result } from '../../kernel/result.ts';
import { changeRecord } from '../../plan/edits/document.ts';
import { planRecord } from '../../plan/plan.ts';
import type { RadioSettings } from '../../plan/records/index.ts';
import { freeHopsMhz, type RadioResult, wifiCentreMhz } from '../../report/radio.ts';
import { Field, Row } from '../common/Field.tsx';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

const parseChannels = (t: string): Result<readonly number[] | undefined> => {
  if (t.trim() === '') return ok(undefined);
  if (/^none$/i.test(t.trim())) return ok([]);
  const list = t
    .split(/[\s,;]+/)
    .filter(Boolean)
    .map(Number);
  const bad = list.findIndex((n) => wifiCentreMhz(n) === undefined);
  return bad < 0
    ? ok([...new Set(list)].sort((a, b) => a - b))
    : fail({
        what: `There is no Wi-Fi channel “${t.split(/[\s,;]+/)[bad] ?? t}”.`,
        todo: 'Write channels like 1, 6, 11 or 36; “none” for none; nothing where they are not known.',
      });
};

const parseCoefficient = (t: string): Result<number | undefined> => {
  if (t.trim() === '') return ok(undefined);
  const n = Number(t.replace(',', '.'));
  return n >= 10 && n <= 60
    ? ok(n)
    : fail({ what: 'A coefficient is between 10 and 60 dB per decade.', todo: 'Free space has 20.' });
};

/** What fills the air: people, Wi-Fi, how distance counts. What is not said is assumed, and says so. */
export const RadioAir = ({ result }: { readonly result: RadioResult }) => {
  const { session } = useServices();
  const { plan, readOnly } = useSessionSlice((s) => ({ plan: s.plan, readOnly: s.readOnly }));
  const record = planRecord(plan);
  const { air } = result.model;
  const free = freeHopsMhz(air.wifiChannels).length;
  const set = (label: string, patch: { [K in keyof RadioSettings]?: RadioSettings[K] | undefined }): void => {
    const radio = Object.fromEntries(
      Object.entries({ ...record.radio, ...patch }).filter(([, v]) => v !== undefined),
    );
    const r = changeRecord(plan, record, { radio });
    if (r.ok) session.commit(label, r.value);
    else session.set({ message: r.error.what });
  };
  return (
    <section aria-label="Air">
      <h3 className="inspector-head">The air</h3>
      <Row label="People">
        <select
          className="inline-input"
          aria-label="People between the aerials"
          disabled={readOnly}
          value={record.radio?.crowd ?? ''}
          onChange={(e) =>
            set('People between the aerials', {
              crowd: e.target.value === '' ? undefined : (e.target.value as RadioSettings['crowd']),
            })
          }
        >
          <option value="">not known: few, assumed</option>
          <option value="none">none between the aerials</option>
          <option value="few">few</option>
          <option value="many">many, a crowd</option>
        </select>
      </Row>
      <Field
        label="Wi-Fi"
        value={record.radio?.wifiChannels as readonly number[] | undefined}
        format={(v) => (v === undefined ? '' : v.length === 0 ? 'none' : v.join(', '))}
        parse={parseChannels}
        disabled={readOnly}
        hint={`${air.wifiAssumed ? `channel ${air.wifiChannels.join(', ')} assumed; ` : ''}${free} of 79 hop channels free`}
        onCommit={(v) => set('Wi-Fi channels in use', { wifiChannels: v === undefined ? undefined : [...v] })}
      />
      <Field
        label="Distance"
        value={record.radio?.distanceCoefficient}
        format={(v) => (v === undefined ? '' : String(v))}
        parse={parseCoefficient}
        disabled={readOnly}
        hint={
          record.radio?.distanceCoefficient === undefined
            ? '22 indoors, 20 outdoors, assumed'
            : 'dB per decade'
        }
        onCommit={(v) => set('Loss with distance', { distanceCoefficient: v })}
      />
    </section>
  );
};
