import { fail, ok, type Result } from '../../kernel/result.ts';
import { formatLength, parseLengthMm } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import type { FeatureWhat } from '../../plan/records/index.ts';
import { featureWhats } from '../../plan/records/scout.ts';
import { Field, Row } from '../common/Field.tsx';
import { parseHeight } from '../common/parse.ts';
import { useSessionSlice } from '../hooks.ts';
import { useServices } from '../services.ts';

export const FEATURE_WORDS: Readonly<Record<FeatureWhat, string>> = {
  ground: 'ground at another level',
  kerb: 'kerb',
  road: 'road',
  tree: 'tree',
  facade: 'facade',
  pole: 'pole',
  water: 'water',
  'wet-area': 'wet area',
  exit: 'exit to keep clear',
  'fire-lane': 'fire lane to keep clear',
  'power-line': 'overhead power line',
};

/** Volts as people write them: `11 kV`, `230000`, empty for not known. */
export const parseKilovolts = (t: string): Result<number | undefined> => {
  const m = /^\s*([\d.,]+)\s*(kv|v)?\s*$/i.exec(t);
  if (t.trim() === '') return ok(undefined);
  const n = Number(m?.[1]?.replace(',', '.'));
  const volts = /kv/i.test(m?.[2] ?? '') ? n * 1000 : n;
  return m && volts > 0 && volts <= 1_500_000
    ? ok(volts)
    : fail({
        what: `“${t}” is not a voltage.`,
        todo: 'Write what the utility said, like 11 kV; empty: not known.',
      });
};

export const formatKilovolts = (v: number | undefined): string =>
  v === undefined ? '' : v >= 1000 ? `${Math.round(v / 100) / 10} kV` : `${v} V`;

/** What the outdoors tool draws next. */
export const NextFeature = () => {
  const { session } = useServices();
  const { next, units } = useSessionSlice((s) => ({
    next: s.floorView.feature,
    units: planRecord(s.plan).lengthUnits,
  }));
  const set = (patch: Partial<typeof next>): void =>
    session.set({ floorView: { ...session.getState().floorView, feature: { ...next, ...patch } } });
  return (
    <section aria-label="Next outdoors">
      <h3 className="inspector-head">Next outdoors</h3>
      <Row label="What">
        <select
          className="inline-input"
          aria-label="Next outdoors is a"
          value={next.what}
          onChange={(e) => {
            const what = featureWhats.find((w) => w === e.target.value);
            if (what) set({ what });
          }}
        >
          {featureWhats.map((w) => (
            <option key={w} value={w}>
              {FEATURE_WORDS[w]}
            </option>
          ))}
        </select>
      </Row>
      <Field
        label={next.what === 'power-line' ? 'Lowest wire' : next.what === 'ground' ? 'Above floor' : 'Height'}
        value={next.heightMm}
        format={(mm) => (mm === 0 ? '' : formatLength(mm, units))}
        parse={(t) =>
          t.trim() === '' ? ok(0) : next.what === 'ground' ? parseLengthMm(t, units) : parseHeight(t, units)
        }
        hint={next.what === 'power-line' && next.heightMm === 0 ? 'empty: not known; its owner says' : ''}
        onCommit={(heightMm) => set({ heightMm })}
      />
      {next.what === 'power-line' ? (
        <Field
          label="Volts"
          value={next.voltsV}
          format={formatKilovolts}
          parse={parseKilovolts}
          hint={next.voltsV === undefined ? 'empty: not known' : ''}
          onCommit={(voltsV) => set({ voltsV })}
        />
      ) : null}
    </section>
  );
};

/** How the next cable crossings are. */
export const NextCrossing = () => {
  const { session } = useServices();
  const { next, units } = useSessionSlice((s) => ({
    next: s.floorView.crossing,
    units: planRecord(s.plan).lengthUnits,
  }));
  const set = (patch: Partial<typeof next>): void =>
    session.set({ floorView: { ...session.getState().floorView, crossing: { ...next, ...patch } } });
  return (
    <section aria-label="Next cable crossings">
      <h3 className="inspector-head">Next cable crossings</h3>
      <Row label="How">
        <select
          className="inline-input"
          aria-label="Next crossings are"
          value={next.how}
          onChange={(e) => set({ how: e.target.value === 'flown' ? 'flown' : 'ramp' })}
        >
          <option value="ramp">ramp on the ground</option>
          <option value="flown">flown over it</option>
        </select>
      </Row>
      {next.how === 'flown' ? (
        <Field
          label="Lowest cable"
          value={next.heightMm}
          format={(mm) => (mm === 0 ? '' : formatLength(mm, units))}
          parse={(t) => (t.trim() === '' ? ok(0) : parseHeight(t, units))}
          onCommit={(heightMm) => set({ heightMm })}
        />
      ) : null}
    </section>
  );
};
